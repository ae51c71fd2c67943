package landing

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// Measured is a measured value with its standard deviation, in the same unit.
type Measured struct {
	Value, Spread float64
}

// Errors of the rolling tests.
var (
	ErrPull    = errors.New("pull: force and mass must be above zero")
	ErrRollOut = errors.New("roll-out: speed, distance and mass must be above zero")
	ErrTimes   = errors.New("roll-out times: the marks must be passed one after the other, ever slower")
	ErrSlope   = errors.New("rolling test slope: outside -0.5 to 0.5 rad")
	ErrDrag    = errors.New("roll-out drag: density, area and coefficients must not be below zero, the lift's not above 20")
)

// RollDrag is what slows a model in a roll-out besides the wheels. The zero RollDrag leaves drag out.
type RollDrag struct {
	Density float64 // kg/m3
	Area    float64 // m2
	Drag    float64 // drag coefficient on the wheels
	Lift    float64 // lift coefficient on the wheels
}

// PullFriction returns rolling friction from the force (N) that keeps a model of a mass (kg) rolling slowly along a slope (rad, uphill positive).
//
//	mu = F / (m g cos(s)) - tan(s)
//
// Valid for: steady slow pull along the ground. Source: balance of forces along the slope; spread by propagation of errors.
func PullFriction(force, mass Measured, slope float64) (Measured, error) {
	switch {
	case !(math.Abs(slope) <= 0.5):
		return Measured{}, ErrSlope
	case !finite(force, mass) || !(force.Value > 0 && mass.Value > 0):
		return Measured{}, ErrPull
	}
	ratio := force.Value / (mass.Value * motion.Gravity * elementary.Cos(slope))
	relative := math.Sqrt(square(force.Spread/force.Value) + square(mass.Spread/mass.Value))
	return Measured{ratio - elementary.Tan(slope), ratio * relative}, nil
}

// RollOutFriction returns rolling friction from the distance (m) a model of a mass (kg) rolls to rest from a speed (m/s), engine stopped, still air.
//
//	mu + tan(s) = k v^2 / (g cos(s) (exp(2 k x) - 1)),  k = rho S (CD - mu CL)/(2 m)
//
// where s is the slope (rad, uphill positive). Valid for: constant coefficients, no wind. Source: Newton's second law integrated to rest; solved for mu
// by iteration because lift unloads the wheels; spread by central differences.
func RollOutFriction(speed, distance Measured, mass, slope float64, air RollDrag) (Measured, error) {
	switch {
	case !(math.Abs(slope) <= 0.5):
		return Measured{}, ErrSlope
	case !finite(speed, distance) || !(speed.Value > 0 && distance.Value > 0 && mass > 0 && mass < 1e6):
		return Measured{}, ErrRollOut
	case !air.sound():
		return Measured{}, ErrDrag
	}
	at := func(v, x float64) float64 { return rollOut(v, x, mass, slope, air) }
	v, x := speed.Value, distance.Value
	bySpeed := slopeOf(func(d float64) float64 { return at(v+d, x) }, float64(1e-5*v)) * speed.Spread
	byDistance := slopeOf(func(d float64) float64 { return at(v, x+d) }, float64(1e-5*x)) * distance.Spread
	return Measured{at(v, x), math.Sqrt(square(bySpeed) + square(byDistance))}, nil
}

// TimedFriction returns rolling friction from a roll past three marks: the times (s) from the first to a second and a third mark, and their distances
// (m) from the first, engine stopped, still air.
//
//	a = 2 (x1/t1 - x2/t2)/(t2 - t1),  mu = a/(g cos(s)) - tan(s) - k v^2/(g cos(s)) at the mean speed v = x2/t2
//
// Valid for: a speed that changes by less than half between the marks. Source: constant deceleration; drag at the mean speed with k as in RollOutFriction.
func TimedFriction(first, second Measured, firstDistance, secondDistance, mass, slope float64, air RollDrag) (Measured, error) {
	switch {
	case !(math.Abs(slope) <= 0.5):
		return Measured{}, ErrSlope
	case !finite(first, second) || !(first.Value > 0 && second.Value > first.Value && firstDistance > 0 && secondDistance > firstDistance && secondDistance < 1e5 && mass > 0):
		return Measured{}, ErrTimes
	case !air.sound():
		return Measured{}, ErrDrag
	}
	at := func(t1, t2 float64) float64 { return timed(t1, t2, firstDistance, secondDistance, mass, slope, air) }
	t1, t2 := first.Value, second.Value
	if !(firstDistance/t1 > secondDistance/t2) {
		return Measured{}, ErrTimes
	}
	byFirst := slopeOf(func(d float64) float64 { return at(t1+d, t2) }, float64(1e-6*t1)) * first.Spread
	bySecond := slopeOf(func(d float64) float64 { return at(t1, t2+d) }, float64(1e-6*t2)) * second.Spread
	return Measured{at(t1, t2), math.Sqrt(square(byFirst) + square(bySecond))}, nil
}

// rollOut is the friction of RollOutFriction.
func rollOut(v, x, mass, slope float64, air RollDrag) float64 {
	level := float64(motion.Gravity * elementary.Cos(slope))
	mu := float64(v * v / (2 * level * x))
	for range 60 {
		k := air.factor(mu-elementary.Tan(slope), mass)
		total := float64(v * v / (2 * x * level) * decay(2*k*x))
		if math.Abs(total-mu) < 1e-15 {
			break
		}
		mu = total
	}
	return mu - elementary.Tan(slope)
}

// decay returns y/(exp(y) - 1), 1 at zero.
func decay(y float64) float64 {
	if math.Abs(y) < 1e-5 {
		return 1 - float64(y/2)
	}
	return y / (elementary.Exp(min(y, 500)) - 1)
}

// timed is the friction of TimedFriction.
func timed(t1, t2, x1, x2, mass, slope float64, air RollDrag) float64 {
	level := float64(motion.Gravity * elementary.Cos(slope))
	slowing := 2 * (x1/t1 - x2/t2) / (t2 - t1)
	mean := x2 / t2
	total := slowing / level
	mu := total
	for range 60 {
		next := total - float64(air.factor(mu-elementary.Tan(slope), mass)*mean*mean)/level
		if math.Abs(next-mu) < 1e-15 {
			break
		}
		mu = next
	}
	return mu - elementary.Tan(slope)
}

// factor returns drag less friction times lift over mass and speed squared, 1/m: rho S (CD - mu CL)/(2 m).
func (r RollDrag) factor(friction, mass float64) float64 {
	return r.Density * r.Area * (r.Drag - float64(min(max(friction, 0), 5)*r.Lift)) / (2 * mass)
}

// sound reports whether the drag is possible.
func (r RollDrag) sound() bool {
	return r.Density >= 0 && r.Density <= 100 && r.Area >= 0 && r.Area <= 1e4 && r.Drag >= 0 && r.Drag <= 20 && math.Abs(r.Lift) <= 20
}

// finite reports whether values and spreads are numbers, spreads not below zero.
func finite(values ...Measured) bool {
	for _, m := range values {
		if math.IsNaN(m.Value-m.Value) || !(m.Spread >= 0 && m.Spread < 1e12) {
			return false
		}
	}
	return true
}

// slopeOf returns the slope of a value at zero by a central difference of a width.
func slopeOf(value func(float64) float64, width float64) float64 {
	return (value(width) - value(-width)) / (2 * width)
}

// square returns the square of a value.
func square(x float64) float64 { return float64(x * x) }
