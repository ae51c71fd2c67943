// Package landing computes a landing: the approach down a straight slope at one airspeed over the obstacles before the threshold, the flare, the float
// in ground effect, and the roll on wheels or the slide on the belly to rest; the go-around from any height of the approach; and rolling friction from a
// test on the field. Distances run from the threshold along the landing, m, negative before it; heights are over the threshold, m, unless said
// otherwise. Units are SI, angles radians. It uses the integrator, the aircraft and the conditions of package motion: conditions' headwind blows against
// the landing.
package landing
