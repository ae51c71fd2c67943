package motion

// Run launches a model from letting go to the screen, or as far as asked, in the air of the day.
//
// A wheeled model rolls with its ground lift, is rotated at the lift-off speed or when its controls can, and leaves the ground when its lift carries
// it. A ramp or catapult lets go at the end of its stroke whatever the speed; a bungee where its hook lets go, and a model too slow to fly then slides
// on. Any but a thrown model may be held to a release force first. A thrown model starts in the air. After that the model flies as flight.lift says. An
// error names impossible input; a launch that comes to nothing is a Result with its flags set.
func (l Launch) Run(a Aircraft, air Conditions) (Result, error) {
	if err := l.check(a, air); err != nil {
		return Result{}, err
	}
	l = l.withDefaults()
	g := newGround(&l)
	f := newFlight(&l, &a, &air, g)
	result := Result{Path: l.Room.pathOf(2 * l.Samples)}
	start, state, left, err := l.leave(&result, f)
	if err != nil || !left {
		result.NeverLiftsOff = !left
		return result, err
	}
	err = f.fly(&result, start, state)
	return result, err
}

// pathOf ends the use of the result before and returns room for as many points of a path.
func (r *Room) pathOf(count int) []PathPoint {
	if r == nil {
		return make([]PathPoint, 0, count)
	}
	r.kept = 0
	if cap(r.path) < count {
		r.path = make([]PathPoint, 0, count)
	}
	return r.path
}

// check returns an error that names the first impossible value.
func (l Launch) check(a Aircraft, air Conditions) error {
	if err := l.Check(); err != nil {
		return err
	}
	if err := a.Check(); err != nil {
		return err
	}
	return air.Check()
}

// leave brings the model into the air and returns the time and state of the flight's start, and whether it got there.
func (l *Launch) leave(result *Result, f *flight) (float64, State, bool, error) {
	r := newRun(l, f.model, f.air, f.ground)
	if l.Method == Hand {
		state := State{atHeight: l.HandHeight, atForward: l.HandSpeed * r.level(), atUpward: l.HandSpeed * r.sine(0)}
		result.leaves(f.point(l.ThrustTime, state), 0)
		return l.ThrustTime, state, true, nil
	}
	if l.ReleaseForce > 0 && !l.release(result, r) {
		return 0, State{}, false, nil
	}
	result.trace.run = r
	time, state, left, err := r.travel(result)
	if err != nil || !left {
		return 0, State{}, false, err
	}
	return time, r.airborne(result, time, state), true, nil
}

// release waits for the release force, and reports whether it is reached.
func (l *Launch) release(result *Result, r *run) bool {
	time, reached := r.holdTime()
	result.HoldTime = time - l.ThrustTime
	result.NeverReleased = !reached
	l.ThrustTime = time
	return reached
}

// airborne notes where a run leaves the ground or launcher and returns the state of flight there.
func (r *run) airborne(result *Result, time float64, state State) State {
	end := r.point(time, state)
	result.leaves(end, state[0])
	sine := r.sine(state[0])
	return State{
		atDistance: end.Distance, atHeight: end.Height,
		atForward: state[1] * cosine(sine), atUpward: state[1] * sine,
	}
}

// level returns the cosine of the slope at the start.
func (r *run) level() float64 { return cosine(r.sine(0)) }

// leaves notes where the model leaves the ground or launcher.
func (r *Result) leaves(p PathPoint, travel float64) {
	r.Airspeed, r.GroundSpeed = p.Airspeed, p.GroundSpeed
	r.Run, r.Time, r.Distance, r.Height = travel, p.Time, p.Distance, p.Height
}

// travel follows the run to its end.
func (r *run) travel(result *Result) (float64, State, bool, error) {
	if r.launch.Method == Wheels {
		return r.roll(result, r.launch.ThrustTime, State{})
	}
	return r.push(result, r.launch.ThrustTime, State{})
}

// until follows the run until a value rises through zero, and reports whether it did. A run that starts beyond it is over at once.
func (r *run) until(result *Result, time float64, state State, value func(float64, State) float64) (float64, State, bool, error) {
	if value(time, state) >= 0 {
		return time, state, true, nil
	}
	events := []Event{
		{Value: value, Direction: Rising, Terminal: true},
		{Value: func(_ float64, s State) float64 { return s[1] }, Direction: Falling, Terminal: true},
		{Value: func(_ float64, s State) float64 { return s[0] - longestRun }, Direction: Rising, Terminal: true},
	}
	in := Integrator{Tolerance: r.launch.Tolerance, MaxStep: 1, Places: runPlaces, Room: r.launch.Room}
	s, err := in.Solve(r.rate, time, state, time+longestTime, events...)
	if err != nil {
		return 0, State{}, false, err
	}
	r.launch.Room.keep(&s)
	result.Path = sample(result.Path, &s, max(2, r.launch.Samples/3), r.point)
	result.notePeak(r, &s)
	result.trace.stretches = append(result.trace.stretches, stretch{s, r.lift, r.launch.Method == Bungee && r.pull == nil})
	event, stopped := s.Stopped()
	result.Held = s.last[0] < stillTravel
	return s.end, s.last, stopped && event == 0, nil
}

// notePeak keeps the greatest acceleration of a run, at the ends of its steps.
func (r *Result) notePeak(by *run, s *Solution) {
	r.PeakAcceleration = max(r.PeakAcceleration, by.rate(s.start, s.first)[1], by.rate(s.end, s.last)[1])
	for i := range s.pieces {
		t := s.pieces[i].start
		r.PeakAcceleration = max(r.PeakAcceleration, by.rate(t, s.pieces[i].r[0])[1])
	}
}

// fly follows the flight to its end and notes what it comes to.
func (f *flight) fly(result *Result, start float64, state State) error {
	in := Integrator{Tolerance: f.launch.Tolerance, MaxStep: 0.5, Places: flightPlaces, Room: f.launch.Room}
	s, err := in.Solve(f.rate, start, state, start+longestTime, f.events()...)
	if err != nil {
		return err
	}
	result.Path = sample(result.Path, &s, f.launch.Samples, f.point)
	f.note(result, &s)
	result.trace.flight, result.trace.flown, result.trace.hasFlight = f, s, true
	return nil
}

// note fills in what a flight comes to.
func (f *flight) note(result *Result, s *Solution) {
	f.noteLowest(result, s)
	event, stopped := s.Stopped()
	result.TouchesGround = stopped && event == eventContact
	if result.TouchesGround {
		result.ContactAt = s.last[atDistance]
	}
	result.ReachesFarthest = s.last[atDistance] >= f.launch.Distance
	if t, state, met := f.meetsScreen(s); met {
		f.noteScreen(result, t, state)
	}
}

// meetsScreen returns where a flight first reaches the screen: at its start, on the way, or at its end, where the event that it is done may come a
// hair before the event of the screen.
func (f *flight) meetsScreen(s *Solution) (float64, State, bool) {
	if f.screenGap(s.first) >= 0 {
		return s.start, s.first, true
	}
	if c, met := s.First(eventScreen); met {
		return c.Time, c.State, true
	}
	return s.end, s.last, f.screenGap(s.last) >= -contactMargin
}

// noteScreen notes where the flight reaches the screen.
func (f *flight) noteScreen(result *Result, t float64, s State) {
	p := f.point(t, s)
	result.ReachesScreen = true
	result.ScreenDistance, result.ScreenTime, result.ScreenSpeed = p.Distance, p.Time, p.Airspeed
}

// noteLowest notes the lowest point of a flight up to the screen: its start, its end, or where it stops sinking.
func (f *flight) noteLowest(result *Result, s *Solution) {
	lowest := s.first
	if s.last[atHeight] < lowest[atHeight] {
		lowest = s.last
	}
	for _, c := range s.Crossings {
		if c.Event == eventLowest && c.State[atHeight] < lowest[atHeight] {
			lowest = c.State
		}
	}
	result.LowestDistance, result.LowestHeight = lowest[atDistance], lowest[atHeight]
	result.Sink = max(0, s.first[atHeight]-lowest[atHeight])
}
