package footprint

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

// Model is what the fall needs to know of a model.
type Model struct {
	Mass          float64 // at the time of loss, kg
	Area          float64 // reference wing area, m2
	Width         float64 // span, m
	CD0           float64 // zero-lift drag coefficient with the engine running
	StoppedDrag   float64 // drag coefficient added by a stopped engine
	InducedFactor float64 // drag coefficient over lift coefficient squared
	CLMax         float64 // greatest lift coefficient
	// NeutralLift is the lift coefficient at which the surfaces trim when neutral; zero means what carries the weight at the speed of the state.
	NeutralLift float64
	// PathDamping is damping ratio of the slow pitching motion on top of what drag gives; zero leaves the drag's own.
	PathDamping float64
	// LevelTime is the time in which a bank left alone with neutral surfaces falls to 1/e, s; zero means at once. A model that stays in its bank
	// has a very large one. It is the time constant of the spiral mode.
	LevelTime float64
	// SpiralBank is the bank of the spiral, rad, positive to the right, and RollTime the time constant of reaching it, s; zero means at once.
	SpiralBank, RollTime float64
	// SpiralLift is the lift coefficient held in the spiral; zero means as NeutralLift.
	SpiralLift float64
	// DragArea is drag over dynamic pressure of the model tumbling, m2 (drag coefficient times area). Breakup needs it.
	DragArea float64
	// RunDown is the time constant of the thrust falling when the engine is cut or brought to idle, s; zero means at once.
	RunDown float64
	// IdleThrust and FullThrust are net thrusts, N.
	IdleThrust, FullThrust float64
	// ThrustSlope is thrust lost with airspeed, N per m/s, at the throttle of the loss; it falls with the thrust of an engine that runs down.
	ThrustSlope float64
	// HoldEndurance, IdleEndurance and FullEndurance are the times to the end of the fuel at the throttle held, at idle and at full power, s.
	HoldEndurance, IdleEndurance, FullEndurance float64
}

// Release is the state in which the link is lost.
type Release struct {
	Place   field.Point
	Height  float64 // over the ground the model comes down on, m
	Heading float64 // of travel through the air, rad
	Speed   float64 // airspeed, m/s
	Climb   float64 // angle of the path through the air over the horizontal, rad
	Bank    float64 // rad, positive to the right
}

// bounded is a value with the range it must lie in.
type bounded struct {
	name               string
	value, least, most float64
}

// firstOutside returns an error for the first value outside its range or not a number.
func firstOutside(values []bounded) error {
	for _, v := range values {
		if !(v.value >= v.least && v.value <= v.most) {
			return fmt.Errorf("%s: %g is outside %g to %g", v.name, v.value, v.least, v.most)
		}
	}
	return nil
}

// Limits of what is taken.
const (
	leastSpeed    = 0.1
	longestFlight = 7200.0
	steepest      = 85 * math.Pi / 180
	farthest      = 1e6
)

// Check returns an error that names the first impossible value.
func (m Model) Check() error {
	return firstOutside([]bounded{
		{"model mass", m.Mass, 1e-3, 1e4},
		{"model area", m.Area, 1e-4, 1e3},
		{"model width", m.Width, 0, 100},
		{"model zero-lift drag", m.CD0, 0, 10},
		{"model stopped drag", m.StoppedDrag, 0, 10},
		{"model induced factor", m.InducedFactor, 0, 10},
		{"model greatest lift", m.CLMax, 0.05, 10},
		{"model neutral lift", m.NeutralLift, 0, 10},
		{"model path damping", m.PathDamping, 0, 2},
		{"model level time", m.LevelTime, 0, 1e9},
		{"model spiral bank", m.SpiralBank, -steepest, steepest},
		{"model roll time", m.RollTime, 0, 1e3},
		{"model spiral lift", m.SpiralLift, 0, 10},
		{"model drag area", m.DragArea, 0, 100},
		{"model run-down", m.RunDown, 0, 600},
		{"model idle thrust", m.IdleThrust, 0, 1e5},
		{"model full thrust", m.FullThrust, 0, 1e5},
		{"model thrust slope", m.ThrustSlope, 0, 1e3},
		{"model hold endurance", m.HoldEndurance, 0, longestFlight},
		{"model idle endurance", m.IdleEndurance, 0, longestFlight},
		{"model full endurance", m.FullEndurance, 0, longestFlight},
	})
}

// Check returns an error that names the first impossible value.
func (r Release) Check() error {
	return firstOutside([]bounded{
		{"place east", r.Place.X, -farthest, farthest},
		{"place north", r.Place.Y, -farthest, farthest},
		{"height", r.Height, 0, 2000},
		{"heading", r.Heading, -1e3, 1e3},
		{"speed", r.Speed, leastSpeed, 300},
		{"climb angle", r.Climb, -math.Pi / 2, math.Pi / 2},
		{"bank", r.Bank, -steepest, steepest},
	})
}

// velocity returns the velocity through the air.
//
//	V (sin(h) cos(c), cos(h) cos(c), sin(c))
//
// where h is the heading and c the climb angle. Source: spherical coordinates.
func (r Release) velocity() Vector {
	level := float64(r.Speed * elementary.Cos(r.Climb))
	return Vector{
		X: float64(level * elementary.Sin(r.Heading)),
		Y: float64(level * elementary.Cos(r.Heading)),
		Z: float64(r.Speed * elementary.Sin(r.Climb)),
	}
}

// Vector is a velocity: east, north, up, m/s.
type Vector struct{ X, Y, Z float64 }

// Level returns the size of the horizontal part.
func (v Vector) Level() float64 { return math.Sqrt(float64(v.X*v.X) + float64(v.Y*v.Y)) }

// Length returns the size of the vector.
func (v Vector) Length() float64 {
	return math.Sqrt(float64(v.X*v.X) + float64(v.Y*v.Y) + float64(v.Z*v.Z))
}

// standardGravity stands in where no acceleration of free fall is given, m/s2.
const standardGravity = motion.Gravity
