package landing

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// Places in the state of float and roll.
const (
	atTravel = iota // along the strip, m
	atSpeed         // over the ground, m/s
)

// longestTravel is the longest float or roll that is followed, m.
const longestTravel = 5000.0

// float integrates the flight along the ground in its effect until the airspeed has fallen to that of touchdown; settles is false when it does not.
//
//	m dv/dt = T - D - W sin(slope),  L = W cos(slope)
//
// Valid for: wheels just off the ground, thrust along the ground. Source: Newton's second law along the ground.
func (f *flight) float(from Point) (to Point, settles bool, err error) {
	sine, cosine := elementary.Sin(f.plan.Slope), elementary.Cos(f.plan.Slope)
	wind, wanted := f.headwind(0), float64(f.plan.TouchdownRatio*f.stall)
	if from.GroundSpeed+wind <= wanted {
		return from, true, nil
	}
	rate := func(_ float64, s motion.State) motion.State {
		u := s[atSpeed] + wind
		q := max(f.pressureArea(u), 1e-9)
		drag := float64(q * f.model.DragCoefficient(f.weight*cosine/q, f.model.WingHeight))
		return motion.State{s[atSpeed], (f.plan.idle(u) - drag - float64(f.weight*sine)) / f.model.Mass}
	}
	slow := func(_ float64, s motion.State) float64 { return s[atSpeed] + wind - wanted }
	solution, err := solver.Solve(rate, from.Time, motion.State{0, from.GroundSpeed}, from.Time+longestPart,
		motion.Event{Value: slow, Direction: motion.Falling, Terminal: true}, f.tooFar())
	if err != nil {
		return from, false, err
	}
	event, ended := solution.Stopped()
	return f.along(from, &solution), ended && event == 0, nil
}

// tooFar ends a solution after longestTravel.
func (f *flight) tooFar() motion.Event {
	return motion.Event{
		Value:     func(_ float64, s motion.State) float64 { return s[atTravel] - longestTravel },
		Direction: motion.Rising, Terminal: true,
	}
}

// along returns the point at the end of a solution along the ground.
func (f *flight) along(from Point, solution *motion.Solution) Point {
	t, s := solution.End()
	distance := from.Distance + float64(s[atTravel]*elementary.Cos(f.plan.Slope))
	speed := max(s[atSpeed], 0)
	return Point{Time: t, Distance: distance, Height: f.ground(distance), GroundSpeed: speed, Airspeed: speed + f.headwind(0)}
}

// roll integrates roll or slide to rest, brakes included; stops is false when thrust or slope keep the model going.
func (f *flight) roll(from Point) (to Point, stops bool, err error) {
	friction, braked := f.plan.Friction, f.plan.BrakeFriction
	if f.plan.Belly || braked == 0 {
		return f.stretch(from, friction, from.Time+longestPart)
	}
	to, stops, err = f.stretch(from, friction, from.Time+f.plan.BrakeDelay)
	if stops || err != nil {
		return to, stops, err
	}
	return f.stretch(to, braked, to.Time+longestPart)
}

// stretch integrates the roll with one friction until rest or a time.
//
//	m dv/dt = T - D - mu N - W sin(slope),  N = max(0, W cos(slope) - L)
//
// Valid for: constant lift coefficient on the ground; slope constant. Source: Newton's second law along the ground.
func (f *flight) stretch(from Point, friction, end float64) (to Point, stops bool, err error) {
	if !(end > from.Time) {
		return from, false, nil
	}
	sine, cosine, wind := elementary.Sin(f.plan.Slope), elementary.Cos(f.plan.Slope), f.headwind(0)
	coefficient := f.model.DragCoefficient(f.model.CLGround, f.model.WingHeight)
	if !f.plan.Belly {
		coefficient += f.model.GroundDrag
	}
	rate := func(_ float64, s motion.State) motion.State {
		u := s[atSpeed] + wind
		q := f.pressureArea(u)
		normal := max(0, float64(f.weight*cosine)-float64(max(q, 0)*f.model.CLGround))
		thrust := 0.0
		if !f.plan.Shutdown {
			thrust = f.plan.idle(u)
		}
		force := thrust - float64(q*coefficient) - float64(friction*normal) - float64(f.weight*sine)
		return motion.State{s[atSpeed], force / f.model.Mass}
	}
	rest := func(_ float64, s motion.State) float64 { return s[atSpeed] }
	solution, err := solver.Solve(rate, from.Time, motion.State{0, from.GroundSpeed}, end,
		motion.Event{Value: rest, Direction: motion.Falling, Terminal: true}, f.tooFar())
	if err != nil {
		return from, false, err
	}
	event, ended := solution.Stopped()
	return f.along(from, &solution), ended && event == 0, nil
}
