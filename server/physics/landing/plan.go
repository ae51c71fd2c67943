package landing

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// What a zero field of Plan stands for.
const (
	DefaultApproachRatio  = 1.3 // approach speed over stall speed
	DefaultTouchdownRatio = 1.1 // touchdown speed over stall speed
	DefaultFlareLoad      = 0.1 // load factor of the flare above one
	DefaultSteepest       = 12 * math.Pi / 180
	DefaultCoverage       = 1.645 // standard deviations that leave 5 % below
)

// Plan is how a landing is to be flown. A model without an engine, or with a dead one, has a nil Idle.
type Plan struct {
	ApproachSpeed  float64 // airspeed, m/s; zero means ApproachRatio times the stall speed
	ApproachRatio  float64 // zero means 1.3
	TouchdownRatio float64 // airspeed at touchdown over stall speed; zero means 1.1
	// Angle is the slope wanted, over the ground, rad below the horizon. Zero means what idle thrust and drag give, 12 degrees at the most.
	Angle float64
	// AimPoint is where the slope meets the ground, m beyond the threshold. Flare and float carry the touchdown beyond it.
	AimPoint     float64
	ScreenHeight float64 // from which the landing distance counts, m over the threshold
	FlareLoad    float64 // load factor of the flare above one; zero means 0.1
	// Idle is the thrust left with the throttle closed, N, at an airspeed, m/s. Nil means none.
	Idle func(speed float64) float64
	// Shutdown stops the engine at touchdown.
	Shutdown bool
	// Belly slides on the belly: Friction is that of sliding, and neither the drag of wheels nor brakes count.
	Belly    bool
	Friction float64 // rolling or sliding friction over normal force
	// BrakeFriction replaces Friction from BrakeDelay (s) after touchdown; zero means no brakes.
	BrakeFriction, BrakeDelay float64
	Slope                     float64 // of the strip along the landing, rad, uphill positive
	Obstacles                 []Obstacle
	// Coverage is how many standard deviations of an obstacle's place and top its lower clearance allows for; zero means 1.645.
	Coverage float64
	// Room holds the steps of the flare and is used again by the next landing with the same one, which ends the use of the landing before; nil means
	// room of its own.
	Room *motion.Room
}

// withDefaults fills in what is zero.
func (p Plan) withDefaults() Plan {
	p.ApproachRatio = orElse(p.ApproachRatio, DefaultApproachRatio)
	p.TouchdownRatio = orElse(p.TouchdownRatio, DefaultTouchdownRatio)
	p.FlareLoad = orElse(p.FlareLoad, DefaultFlareLoad)
	p.Coverage = orElse(p.Coverage, DefaultCoverage)
	return p
}

// orElse returns a value, or another where it is zero.
func orElse(value, other float64) float64 {
	if value == 0 {
		return other
	}
	return value
}

// idle returns the thrust with the throttle closed.
func (p *Plan) idle(speed float64) float64 {
	if p.Idle == nil {
		return 0
	}
	return p.Idle(max(speed, 0))
}

// Check returns an error that names the first impossible value.
func (p Plan) Check() error {
	err := firstOutside([]limited{
		{"approach speed", p.ApproachSpeed, 0, 300},
		{"approach ratio", p.ApproachRatio, 0, 5},
		{"touchdown ratio", p.TouchdownRatio, 0, 5},
		{"approach angle", p.Angle, 0, 1},
		{"aim point", p.AimPoint, -1e4, 1e4},
		{"screen height", p.ScreenHeight, 0, 1000},
		{"flare load", p.FlareLoad, 0, 5},
		{"friction", p.Friction, 0, 5},
		{"brake friction", p.BrakeFriction, 0, 5},
		{"brake delay", p.BrakeDelay, 0, 60},
		{"slope", p.Slope, -0.5, 0.5},
		{"coverage", p.Coverage, 0, 10},
	})
	for i, o := range p.Obstacles {
		if err == nil {
			err = o.check(i)
		}
	}
	return err
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

// Errors of Fly and GoAround.
var (
	ErrNoWay   = errors.New("headwind: the approach speed makes no way over the ground against it")
	ErrNoSpeed = errors.New("approach speed: below the stall speed")
	ErrNoLift  = errors.New("aircraft: area, greatest lift and density must be above zero")
)

// flight is one landing being computed.
type flight struct {
	model  *motion.Aircraft
	air    *motion.Conditions
	plan   Plan
	weight float64 // N
	stall  float64 // m/s
	speed  float64 // airspeed of the approach, m/s
	slope  Slope
	rise   float64 // tangent of the strip's slope
}

// newFlight checks what is given and settles the slope.
func newFlight(a *motion.Aircraft, air *motion.Conditions, plan Plan) (*flight, error) {
	for _, err := range []error{a.Check(), air.Check(), plan.Check()} {
		if err != nil {
			return nil, err
		}
	}
	if !(a.Area > 0 && a.CLMax > 0 && air.Density > 0) {
		return nil, ErrNoLift
	}
	f := &flight{model: a, air: air, plan: plan.withDefaults()}
	f.weight, f.rise = float64(a.Mass*f.gravity()), elementary.Tan(f.plan.Slope)
	f.stall = a.StallSpeed(*air)
	f.speed = orElse(f.plan.ApproachSpeed, f.plan.ApproachRatio*f.stall)
	if !(f.speed >= f.stall) || f.speed > 1e3 {
		return nil, ErrNoSpeed
	}
	return f, f.settle()
}

// gravity returns the acceleration of free fall.
func (f *flight) gravity() float64 { return orElse(f.air.Gravity, motion.Gravity) }

// headwind returns the wind against the landing with the wheels at a height over the ground, m/s.
func (f *flight) headwind(clearance float64) float64 {
	return float64(f.air.Headwind * f.air.Profile.Factor(max(clearance, 0)+f.model.WingHeight))
}

// pressureArea returns dynamic pressure times area, N, with the sign of the airspeed.
func (f *flight) pressureArea(speed float64) float64 {
	return float64(0.5 * f.air.Density * speed * math.Abs(speed) * f.model.Area)
}

// ground returns the height of the ground at a distance: level before the threshold.
func (f *flight) ground(distance float64) float64 {
	return float64(f.rise * max(distance, 0))
}
