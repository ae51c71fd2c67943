// Package motion moves a model: one adaptive integrator with events, the launch from the ground, a ramp, a bungee, a catapult or the hand up to the
// screen and over the obstacles, what comes of it when the thrust is lost, the circuit, level turns, glides and slowing down. Units are SI, angles
// radians; heights are in m over the ground at the place the launch starts.
//
//	a launch                 Launch.Run -> Result: At, HeightAt, LowestBetween, LeastClearance, FirstAbove, TailGap, Track
//	its dolly                Launch.DollyFall
//	thrust lost              Launch.FailureSweep, WorstFailure; on wheels Launch.AbortPoint
//	a circuit                Wish.Lay -> Plan, Circuit.Path, Fit, LongestLeg, Lap
//	seeing it                SightRange, VisualRange, Lap.Seen
//	steady flight            LevelDrag, TopSpeed, ClimbAngleAt, BestGlide, TurnRadius and their like
package motion
