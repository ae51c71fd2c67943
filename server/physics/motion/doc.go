// Package motion moves a model: one adaptive integrator with events, the launch from the ground, a ramp, a bungee, a catapult or the hand up to the
// screen and over the obstacles, the circuit, level turns, glides and slowing down. Units are SI, angles radians; heights are in m over
// the ground at the place the launch starts.
package motion
