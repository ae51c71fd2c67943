package motion

import (
	"fmt"
	"math"

	"pitgate/server/physics/weather"
)

// Gravity is the standard acceleration of free fall, m/s2.
const Gravity = 9.80665

// Aircraft is what the motion needs to know of a model.
type Aircraft struct {
	Mass          float64 // kg
	Area          float64 // reference wing area, m2
	Span          float64 // m; zero means no ground effect
	CD0           float64 // zero-lift drag coefficient
	InducedFactor float64 // drag coefficient over lift coefficient squared, out of ground effect
	CLMax         float64 // greatest lift coefficient
	CLGround      float64 // lift coefficient while rolling, or on the cradle of a ramp or skid
	GroundDrag    float64 // drag coefficient added while on wheels or dolly
	WingHeight    float64 // wing over the wheels' contact, m
	ThrustAngle   float64 // thrust line over the flight path, rad, pulling up positive
	// Thrust is the net thrust, N, at an airspeed, m/s, and a time since the throttle was opened, s. Nil means none.
	Thrust func(speed, time float64) float64
}

// Conditions is the air the model moves in.
type Conditions struct {
	Density   float64 // kg/m3
	Headwind  float64 // mean wind against the launch heading at the profile's reference height, m/s
	Crosswind float64 // mean wind from the right of it, m/s
	Profile   weather.Profile
	Gravity   float64 // m/s2; zero means standard
}

// gravity returns the acceleration of free fall.
func (c Conditions) gravity() float64 {
	if c.Gravity > 0 {
		return c.Gravity
	}
	return Gravity
}

// Check returns an error that names the first impossible value.
func (a Aircraft) Check() error {
	return firstOutside([]limited{
		{"aircraft mass", a.Mass, 1e-3, 1e6},
		{"aircraft area", a.Area, 0, 1e4},
		{"aircraft span", a.Span, 0, 1e3},
		{"aircraft zero-lift drag", a.CD0, 0, 10},
		{"aircraft induced factor", a.InducedFactor, 0, 100},
		{"aircraft greatest lift", a.CLMax, 0, 20},
		{"aircraft ground lift", a.CLGround, -5, 20},
		{"aircraft ground drag", a.GroundDrag, 0, 10},
		{"aircraft wing height", a.WingHeight, 0, 100},
		{"aircraft thrust angle", a.ThrustAngle, -1.6, 1.6},
	})
}

// Check returns an error that names the first impossible value.
func (c Conditions) Check() error {
	return firstOutside([]limited{
		{"air density", c.Density, 0, 100},
		{"headwind", c.Headwind, -200, 200},
		{"crosswind", c.Crosswind, -200, 200},
		{"roughness length", c.Profile.RoughnessLength, 0, 10},
		{"gravity", c.Gravity, 0, 1000},
	})
}

// limited is a value with the range it must lie in.
type limited struct {
	name               string
	value, least, most float64
}

// firstOutside returns an error for the first value outside its range or not a number.
func firstOutside(values []limited) error {
	for _, v := range values {
		if !(v.value >= v.least && v.value <= v.most) {
			return fmt.Errorf("%s: %g is outside %g to %g", v.name, v.value, v.least, v.most)
		}
	}
	return nil
}

// thrust returns the thrust, none where there is no engine.
func (a *Aircraft) thrust(speed, time float64) float64 {
	if a.Thrust == nil {
		return 0
	}
	return a.Thrust(max(speed, 0), time)
}

// GroundEffect returns induced drag near the ground over induced drag far from it.
//
//	phi = (16 h/b)^2 / (1 + (16 h/b)^2)
//
// where h is the wing's height over the ground and b the span (m).
// Valid for: level flight near level ground; other fits differ by 40 % at h/b = 0.1. Source: McCormick, Aerodynamics, Aeronautics and
// Flight Mechanics, as used by Anderson, Introduction to Flight, section 6.15.
func GroundEffect(height, span float64) float64 {
	if !(span > 0) {
		return 1
	}
	ratio := 16 * max(height, 0) / span
	square := float64(ratio * ratio)
	if square > 1e12 {
		return 1
	}
	return square / (1 + square)
}

// DragCoefficient returns the drag coefficient at a lift coefficient with the wing at a height over the ground.
//
//	CD = CD0 + phi K CL^2
//
// where phi is GroundEffect and K the induced factor. Valid for: attached flow. Source: parabolic polar.
func (a Aircraft) DragCoefficient(lift, wingHeight float64) float64 {
	return a.CD0 + float64(GroundEffect(wingHeight, a.Span)*a.InducedFactor*lift*lift)
}

// StallSpeed returns the airspeed (m/s) at which the greatest lift coefficient carries the weight.
//
//	Vs = sqrt(2 m g / (rho S CLmax))
//
// Valid for: steady flight at load factor 1. Source: lift equation.
func (a Aircraft) StallSpeed(air Conditions) float64 {
	return math.Sqrt(2 * a.Mass * air.gravity() / (air.Density * a.Area * a.CLMax))
}
