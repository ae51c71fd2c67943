package motion

// stillTravel is the travel below which a model has not moved, m.
const stillTravel = 1e-6

// stage is one attitude of a wheeled model's roll and the airspeed at which it ends.
type stage struct {
	lift, until float64
	mark        *Mark
}

// roll follows a wheeled model from a place of its roll until it lifts off: tail down until the tail comes up, then level until both the planned speed
// and that of the controls are reached, then rotated until the wing carries it.
//
// A model that the wing carries before it is rotated lifts off there when the controls set the time (RotationSpeed or TailUpSpeed); otherwise it is held
// down to the planned speed.
func (r *run) roll(result *Result, time float64, state State) (float64, State, bool, error) {
	l := r.launch
	stages := []stage{{r.model.CLGround, max(l.LiftoffSpeed, l.RotationSpeed), &result.Rotation}}
	if l.TailUpSpeed > 0 {
		stages = []stage{{l.CLTailDown, l.TailUpSpeed, &result.TailUp}, stages[0]}
	}
	floats := l.TailUpSpeed > 0 || l.RotationSpeed > 0
	for _, s := range stages {
		r.lift = s.lift
		next, there, met, err := r.until(result, time, state, func(t float64, at State) float64 {
			return r.readiness(t, at, s.until, floats)
		})
		if err != nil || !met {
			return next, there, met, err
		}
		time, state = next, there
		if r.airspeed(state) < s.until-1e-9 {
			result.FloatsOff = true
			return time, state, true, nil
		}
		*s.mark = r.mark(time, state)
	}
	result.WaitsForControl = l.RotationSpeed > l.LiftoffSpeed
	r.lift = l.ClimbLift * r.model.CLMax
	return r.until(result, time, state, r.surplus)
}

// readiness returns how far a stage of the roll is past its end: by airspeed, m/s, or by the lift beyond the weight where that comes first.
func (r *run) readiness(t float64, s State, speed float64, floats bool) float64 {
	ready := r.airspeed(s) - speed
	if floats {
		return max(ready, r.surplus(t, s))
	}
	return ready
}

// mark notes a place of a run.
func (r *run) mark(time float64, state State) Mark {
	return Mark{Reached: true, Distance: state[0], Airspeed: r.airspeed(state), Time: time - r.launch.ThrustTime}
}

// push follows a launcher to where it lets go. A bungee that lets go of a model too slow to fly leaves it sliding on the ground under its own
// thrust until the wing carries it or it stops.
func (r *run) push(result *Result, time float64, state State) (float64, State, bool, error) {
	stroke := r.launch.stroke()
	time, state, left, err := r.until(result, time, state, func(_ float64, s State) float64 { return s[0] - stroke })
	if err != nil || !left {
		return time, state, left, err
	}
	result.Release = r.mark(time, state)
	if r.launch.Method != Bungee {
		return time, state, true, nil
	}
	return r.slide(result, time, state)
}

// slide follows a model that is free of its bungee until the lift held in the climb carries it.
func (r *run) slide(result *Result, time float64, state State) (float64, State, bool, error) {
	r.pull = nil
	r.inertia = r.model.Mass
	carries := func(t float64, s State) float64 { return r.surplusWith(r.launch.ClimbLift*r.model.CLMax, t, s) }
	if carries(time, state) >= 0 {
		return time, state, true, nil
	}
	result.Slides = true
	from := state[0]
	time, state, left, err := r.until(result, time, state, carries)
	result.SlideDistance = state[0] - from
	return time, state, left, err
}
