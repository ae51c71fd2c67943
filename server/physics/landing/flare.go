package landing

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// Places in the state of flare, float and go-around.
const (
	atDistance = iota // m
	atHeight          // over the threshold, m
	atForward         // speed over the ground, m/s
	atUpward          // m/s
	places            // how many there are
)

// longestPart is the longest time a part of the landing is followed, s.
const longestPart = 300.0

// solver is the integrator of all parts.
var solver = motion.Integrator{Tolerance: 1e-8, MaxSteps: mostSteps, Places: places, EndOnly: true}

const (
	mostSteps      = 3000  // of one part
	roughTolerance = 1e-5  // of the flares that look for the height to start at
	stallTolerance = 1e-11 // of a flare through the stall, where the lift has a kink
	closeEnough    = 1e-3  // height at which the path must run along the ground, m
)

// through is what a state means in the air.
type through struct {
	speed, sine, cosine float64
	clearance           float64 // of the wheels over the ground, m
}

// through returns airspeed, path through the air and clearance of a state.
func (f *flight) through(s motion.State) through {
	m := through{clearance: s[atHeight] - f.ground(s[atDistance]), cosine: 1}
	forward := s[atForward] + f.headwind(m.clearance)
	m.speed = math.Sqrt(float64(forward*forward) + float64(s[atUpward]*s[atUpward]))
	if m.speed > 0 {
		m.sine, m.cosine = s[atUpward]/m.speed, forward/m.speed
	}
	return m
}

// accelerate returns the change of a state with a load factor asked for, kept below the stall, and a thrust along the path.
//
//	m dVx/dt = (T - D) cos(g) - L sin(g),  m dVh/dt = (T - D) sin(g) + L cos(g) - W,  L = min(n W, q S CLmax)
//
// where g is the path angle through the air. Valid for: point mass, drag in ground effect. Source: Newton's second law.
func (f *flight) accelerate(s motion.State, m through, load, thrust float64) motion.State {
	q := f.pressureArea(m.speed)
	lift := min(max(load, 0)*f.weight, float64(q*f.model.CLMax))
	drag := 0.0
	if q > 0 {
		drag = float64(q * f.model.DragCoefficient(lift/q, max(m.clearance, 0)+f.model.WingHeight))
	}
	along := thrust - drag
	return motion.State{
		atDistance: s[atForward],
		atHeight:   s[atUpward],
		atForward:  (float64(along*m.cosine) - float64(lift*m.sine)) / f.model.Mass,
		atUpward:   (float64(along*m.sine)+float64(lift*m.cosine))/f.model.Mass - f.gravity(),
	}
}

// state returns the state of a point.
func (p Point) state() motion.State {
	return motion.State{atDistance: p.Distance, atHeight: p.Height, atForward: p.GroundSpeed, atUpward: -p.Sink}
}

// pointAt returns the point of a state at a time.
func (f *flight) pointAt(t float64, s motion.State) Point {
	m := f.through(s)
	return Point{Time: t, Distance: s[atDistance], Height: s[atHeight], Airspeed: m.speed, GroundSpeed: s[atForward], Sink: -s[atUpward]}
}

// Events of the flare.
const (
	flareLevel = iota
	flareContact
)

// flare integrates the flare from a point of the slope until the path runs along the ground or meets it.
func (f *flight) flare(from Point, tolerance float64) (motion.Solution, error) {
	rate := func(_ float64, s motion.State) motion.State {
		m := f.through(s)
		return f.accelerate(s, m, 1+f.plan.FlareLoad, f.plan.idle(m.speed))
	}
	level := func(_ float64, s motion.State) float64 { return s[atUpward] - float64(f.rise*s[atForward]) }
	contact := func(_ float64, s motion.State) float64 { return s[atHeight] - f.ground(s[atDistance]) }
	return motion.Integrator{Tolerance: tolerance, MaxSteps: mostSteps, Places: places, EndOnly: tolerance == roughTolerance, Room: f.plan.Room}.Solve(rate, 0, from.state(), longestPart,
		motion.Event{Value: level, Direction: motion.Rising, Terminal: true},
		motion.Event{Value: contact, Direction: motion.Falling, Terminal: true})
}

// FlareHeight returns the height over the ground at which a flare on an arc starts, m.
//
//	h = R (1 - cos(g)),  R = V^2 / (g0 dn)
//
// where g is the slope (rad), V the airspeed (m/s), dn the load factor above one and g0 the acceleration of free fall (m/s2).
// Valid for: constant speed, small slopes. Source: Anderson, Aircraft Performance and Design, equations 6.106 and 6.107.
func FlareHeight(angle, speed, load, gravity float64) float64 {
	half := elementary.Sin(angle / 2)
	return float64(speed * speed / (gravity * load) * 2 * half * half)
}

// lowFlare integrates flares from different heights until one ends along the ground at no height, and returns it with its start. Levels is false when
// none does: the wing stalls first, or the wind falls off so fast near the ground that a flare either ends above it or meets it. The latter is followed then,
// from the greatest height that meets it.
func (f *flight) lowFlare() (start Point, arc motion.Solution, levels bool, err error) {
	guess := FlareHeight(f.slope.Angle, f.speed, f.plan.FlareLoad, f.gravity())
	height, meets, above := guess, 0.0, math.Inf(1)
	for range 40 {
		start = f.onSlope(height + f.ground(f.plan.AimPoint))
		if arc, err = f.flare(start, roughTolerance); err != nil {
			return start, arc, false, err
		}
		miss, level := f.miss(&arc)
		if math.Abs(miss) < closeEnough {
			arc, err = f.flare(start, solver.Tolerance)
			return start, arc, true, err
		}
		if level && miss > 0 {
			above = min(above, height)
		} else {
			meets = max(meets, height)
		}
		if height -= miss; height > float64(4*guess)+2 || above-meets < closeEnough {
			break
		}
		if !(height > meets && height < above) {
			height = meets + float64((above-meets)/2)
		}
	}
	if math.IsInf(above, 1) {
		meets = guess
	}
	start, arc, err = f.meeting(meets)
	return start, arc, false, err
}

// meeting returns the flare from the greatest height over the aim point, not above one, that meets the ground, to a millimetre: steps down grow until one
// does, and halves are taken back up.
func (f *flight) meeting(height float64) (start Point, arc motion.Solution, err error) {
	start, arc, level, err := f.flareFrom(height)
	above, step := height, closeEnough
	for err == nil && level && height > 0 {
		above, height = height, max(height-step, 0)
		step *= 2
		start, arc, level, err = f.flareFrom(height)
	}
	for err == nil && !level && above-height > 1.5*closeEnough {
		middle := height + float64(0.5*(above-height))
		from, along, runs, fault := f.flareFrom(middle)
		switch {
		case fault != nil:
			return start, arc, fault
		case runs:
			above = middle
		default:
			height, start, arc = middle, from, along
		}
	}
	return start, arc, err
}

// flareFrom follows the flare from a height over the aim point; level is false where it meets the ground first.
func (f *flight) flareFrom(height float64) (start Point, arc motion.Solution, level bool, err error) {
	start = f.onSlope(height + f.ground(f.plan.AimPoint))
	if arc, err = f.flare(start, stallTolerance); err == nil {
		_, level = f.miss(&arc)
	}
	return start, arc, level, err
}

// miss returns by how much the end of a flare misses the ground, m: its height where it ran along it, else the height its sink stands for, negative.
func (f *flight) miss(arc *motion.Solution) (height float64, level bool) {
	_, s := arc.End()
	if event, ended := arc.Stopped(); ended && event == flareLevel {
		return s[atHeight] - f.ground(s[atDistance]), true
	}
	sink := float64(f.rise*s[atForward]) - s[atUpward]
	return -sink * sink / (2 * f.gravity() * f.plan.FlareLoad), false
}
