package motion

import (
	"errors"
	"math"
)

// Stage is where a launch is when something happens.
type Stage int

// Stages of a launch.
const (
	OnGround   Stage = iota + 1 // rolling, or sliding free of its launcher
	OnLauncher                  // on the rails, the cord or the stroke
	Flying
)

// Trouble is how thrust is lost and what the pilot does about it.
type Trouble struct {
	// Reaction is the time after which the pilot acts: until then the climb is flown as if the thrust were there, and no brake is used. s
	Reaction float64
	// Residual is the thrust left, N, at an airspeed, m/s, and a time since it was lost, s. Nil means none.
	Residual func(speed, time float64) float64
	// Brakes is the friction that brakes add on wheels after the reaction, over the normal force; zero for none.
	Brakes float64
	// Count is the number of times looked at from letting go to the end of the launch; zero means DefaultTroubles.
	Count int
	// EndsOnly leaves out Path and Sink of every failure.
	EndsOnly bool
}

// DefaultTroubles is the number of times at which a sweep loses the thrust.
const DefaultTroubles = 25

// Failure is what comes of a launch whose thrust is lost at one time. Places are from the start of the launch.
type Failure struct {
	Time     float64 // of the loss, from letting go, s
	Stage    Stage   // there
	Distance float64 // there, m
	Height   float64 // there, m
	Airspeed float64 // there, m/s

	Stays bool // the model comes to rest on the ground or its launcher without having flown
	// The end: where it rests when it stays, else where it meets the ground.
	EndDistance, EndDrift, EndHeight float64 // m
	EndTime                          float64 // from letting go, s
	EndSpeed                         float64 // over the ground, along its path, m/s
	Descent                          float64 // downward speed there, m/s
	Energy                           float64 // of its motion over the ground there, J
	Sink                             float64 // its end below the highest place after the loss, m; zero when it stays
	Aloft                            bool    // it is still in the air after five minutes: the residual thrust carries it

	Path []PathPoint // from the loss to the end
}

// longestGlide is the time after which a model without thrust is said to stay aloft, s.
const longestGlide = 300.0

// FailureSweep loses the thrust at times even from letting go to the end of the launch and follows each to where the model comes down or rests,
// through the same equations. Beyond the end of the launch (screen and Distance) nothing is looked at. A launch that comes to nothing gives the failures
// of its run.
//
// On the launcher the model runs on under what pulls it and leaves it as slow as that makes it, or stays. On wheels it is kept on the ground and stops. In
// the air the pilot holds the climb for the reaction time, then glides at the speed there is.
// Valid for: straight ahead, no turn. Source: as Launch.Run. Errors name impossible input.
func (l Launch) FailureSweep(a Aircraft, air Conditions, trouble Trouble) ([]Failure, error) {
	if err := trouble.check(); err != nil {
		return nil, err
	}
	nominal, err := l.Run(a, air)
	if err != nil {
		return nil, err
	}
	_, end := nominal.trace.times()
	l.Room = nil // it holds what was run
	return l.sweep(&nominal, a, air, trouble, end)
}

// FailureSweepOf is FailureSweep for a launch that has been run already with the same model and air, as far as the screen where it is reached; the failures
// are followed to the tolerance of l. Its Room, if any, must not be that of the launch.
func (l Launch) FailureSweepOf(nominal *Result, a Aircraft, air Conditions, trouble Trouble) ([]Failure, error) {
	if err := trouble.check(); err != nil {
		return nil, err
	}
	_, end := nominal.trace.times()
	if nominal.ReachesScreen {
		end = min(end, nominal.ScreenTime+l.ThrustTime+nominal.HoldTime)
	}
	return l.sweep(nominal, a, air, trouble, end)
}

// sweep loses the thrust at times even from letting go to an end.
func (l Launch) sweep(nominal *Result, a Aircraft, air Conditions, trouble Trouble, end float64) ([]Failure, error) {
	count := trouble.Count
	if count == 0 {
		count = DefaultTroubles
	}
	room := l.Room
	if room == nil {
		room = &Room{}
	}
	begin, _ := nominal.trace.times()
	sweep := make([]Failure, 0, count)
	for i := range count {
		time := begin
		if count > 1 {
			time += float64((end - begin) * (float64(i) / float64(count-1)))
		}
		room.kept = 0
		b := l.broken(a, air, nominal, trouble, time)
		b.launch.Room = room
		failure, err := b.follow(nominal)
		if err != nil {
			return nil, err
		}
		sweep = append(sweep, failure)
	}
	return sweep, nil
}

// check returns an error that names the first impossible value.
func (t Trouble) check() error {
	return firstOutside([]limited{
		{"trouble reaction", t.Reaction, 0, 60},
		{"trouble brakes", t.Brakes, 0, 10},
		{"trouble count", float64(t.Count), 0, 1000},
	})
}

// WorstFailure returns the failure of a sweep for which a measure is greatest, and false when there is none.
func WorstFailure(sweep []Failure, measure func(Failure) float64) (Failure, bool) {
	var worst Failure
	most := math.Inf(-1)
	for _, f := range sweep {
		if m := measure(f); m > most {
			worst, most = f, m
		}
	}
	return worst, len(sweep) > 0
}

// firstGlide is the first step tried after a loss, s.
const firstGlide = 0.25

// times returns the times of the first and the last state of a launch, on the thrust curve.
func (t *trace) times() (begin, end float64) {
	switch {
	case len(t.stretches) > 0 && t.hasFlight:
		return t.stretches[0].start, t.flown.end
	case len(t.stretches) > 0:
		return t.stretches[0].start, t.stretches[len(t.stretches)-1].end
	}
	return t.flown.start, t.flown.end
}

// broken is a launch without thrust from a time on.
type broken struct {
	launch  Launch
	model   Aircraft
	air     Conditions
	ground  *ground
	trouble Trouble
	time    float64 // of the loss
	full    func(speed, time float64) float64
	// live keeps full thrust on the ground until the pilot has acted.
	live, acted bool
}

// broken returns a launch whose thrust is lost at a time of its nominal course.
func (l Launch) broken(a Aircraft, air Conditions, nominal *Result, trouble Trouble, time float64) *broken {
	l = l.withDefaults()
	l.Room = nil
	l.ThrustTime += nominal.HoldTime
	l.Samples = max(6, l.Samples/3)
	whole := a
	b := &broken{launch: l, air: air, trouble: trouble, time: time, full: whole.thrust}
	a.Thrust = b.thrust
	b.model = a
	b.ground = newGround(&b.launch)
	return b
}

// follow follows the failure from its place in the nominal course.
func (b *broken) follow(nominal *Result) (Failure, error) {
	for i := range nominal.trace.stretches {
		if s := &nominal.trace.stretches[i]; b.time <= s.end {
			return b.onTheRun(s, s.At(b.time))
		}
	}
	if !nominal.trace.hasFlight {
		return Failure{}, errors.New("failure: the launch has no path")
	}
	state := nominal.trace.flown.At(b.time)
	f := b.flight()
	failure := b.begins(Flying, f.point(b.time, state))
	return b.descend(failure, f, b.time, state, nil)
}

// thrust is the thrust of a broken launch: what is left.
func (b *broken) thrust(speed, time float64) float64 {
	if b.live && !b.acted {
		return b.full(speed, time)
	}
	if b.trouble.Residual == nil {
		return 0
	}
	return b.trouble.Residual(speed, max(0, time-b.time))
}

// believed is the thrust by which the pilot sets the climb.
func (b *broken) believed(speed, time float64) float64 {
	if time < b.time+b.trouble.Reaction {
		return b.full(speed, time)
	}
	return b.thrust(speed, time)
}

// flight returns the flight of a broken launch.
func (b *broken) flight() *flight {
	f := newFlight(&b.launch, &b.model, &b.air, b.ground)
	f.believed = b.believed
	return f
}

// begins returns a failure with its first place filled in.
func (b *broken) begins(stage Stage, p PathPoint) Failure {
	return Failure{Time: p.Time, Stage: stage, Distance: p.Distance, Height: p.Height, Airspeed: p.Airspeed}
}

// onTheRun follows a failure on the run.
func (b *broken) onTheRun(s *stretch, state State) (Failure, error) {
	r := newRun(&b.launch, &b.model, &b.air, b.ground)
	r.lift = s.lift
	stage := OnLauncher
	if b.launch.Method == Wheels || s.free {
		stage = OnGround
	}
	if s.free {
		r.pull, r.inertia = nil, b.model.Mass
	}
	failure := b.begins(stage, r.point(b.time, state))
	result := Result{}
	if b.launch.Method == Wheels {
		stop, err := b.stop(r, &result, state)
		return b.rests(failure, r, &result, stop), err
	}
	if b.still(r, state) {
		result.Path = append(result.Path, r.point(b.time, state))
		return b.rests(failure, r, &result, Crossing{Time: b.time, State: state}), nil
	}
	leave := r.push
	if stage == OnGround {
		leave = r.slide
	}
	time, last, left, err := leave(&result, b.time, state)
	if err != nil {
		return Failure{}, err
	}
	if !left {
		return b.rests(failure, r, &result, Crossing{Time: time, State: last}), nil
	}
	return b.descend(failure, b.flight(), time, r.airborne(&result, time, last), result.Path)
}

// still reports whether a run stands where the forces do not move it and, with no thrust left, never will.
func (b *broken) still(r *run, state State) bool {
	return b.trouble.Residual == nil && state[1] <= 0 && r.rate(b.time, state)[1] == 0
}

// stop follows a wheeled model on the ground to rest: for the reaction time as it is, then with its nose down and the brakes on.
func (b *broken) stop(r *run, result *Result, state State) (Crossing, error) {
	r.lift = b.model.CLGround
	if state[1] <= 0 && b.trouble.Residual == nil {
		result.Path = append(result.Path, r.point(b.time, state))
		return Crossing{Time: b.time, State: state}, nil
	}
	never := func(float64, State) float64 { return -1 }
	time := b.time
	if b.trouble.Reaction > 0 {
		var err error
		if time, state, err = r.reach(result, time, state, time+b.trouble.Reaction); err != nil {
			return Crossing{}, err
		}
	}
	b.acted = true
	braked := b.launch
	braked.Friction += b.trouble.Brakes
	r.launch = &braked
	time, state, _, err := r.until(result, time, state, never)
	return Crossing{Time: time, State: state}, err
}

// reach follows a run to a time or to rest.
func (r *run) reach(result *Result, time float64, state State, end float64) (float64, State, error) {
	event := Event{Value: func(_ float64, s State) float64 { return s[1] }, Direction: Falling, Terminal: true}
	s, err := Integrator{Tolerance: r.launch.Tolerance, MaxStep: 1, Places: runPlaces, Room: r.launch.Room}.Solve(r.rate, time, state, end, event)
	if err != nil {
		return time, state, err
	}
	result.Path = sample(result.Path, &s, max(2, r.launch.Samples/3), r.point)
	return s.end, s.last, nil
}

// rests fills in the end of a failure that stays on the ground or its launcher. A model that leaves the end of what is looked at rolling keeps its speed.
func (b *broken) rests(failure Failure, r *run, result *Result, stop Crossing) Failure {
	end := r.point(stop.Time, stop.State)
	failure.Stays = true
	failure.EndDistance, failure.EndHeight, failure.EndTime = end.Distance, end.Height, end.Time
	failure.EndSpeed = max(0, end.GroundSpeed)
	if failure.EndSpeed < 1e-6 {
		failure.EndSpeed = 0
	}
	failure.Energy = 0.5 * b.model.Mass * failure.EndSpeed * failure.EndSpeed
	failure.Path = result.Path
	return failure
}

// descend follows a failure through the air to the ground.
func (b *broken) descend(failure Failure, f *flight, time float64, state State, path []PathPoint) (Failure, error) {
	contact := func(_ float64, s State) float64 { return s[atHeight] - f.ground.height(s[atDistance]) + contactMargin }
	events := []Event{{Value: contact, Direction: Falling, Terminal: true, Looks: 7, Sparing: true, Place: atHeight, Over: f.ground.highest()}}
	in := Integrator{
		Tolerance: b.launch.Tolerance, MaxStep: 1, Corner: b.time + b.trouble.Reaction, FirstStep: firstGlide, Places: flightPlaces,
		EndOnly: b.trouble.EndsOnly, Room: b.launch.Room,
	}
	s, err := in.Solve(f.rate, time, state, time+longestGlide, events...)
	if err != nil {
		return Failure{}, err
	}
	_, met := s.Stopped()
	end := f.point(s.end, s.last)
	failure.Aloft = !met
	failure.EndDistance, failure.EndDrift, failure.EndHeight, failure.EndTime = end.Distance, end.Drift, end.Height, end.Time
	failure.EndSpeed, failure.Descent = end.GroundSpeed, max(0, -s.last[atUpward])
	failure.Energy = 0.5 * b.model.Mass * end.GroundSpeed * end.GroundSpeed
	if b.trouble.EndsOnly {
		return failure, nil
	}
	failure.Path = sample(path, &s, max(6, b.launch.Samples/2), f.point)
	highest := end.Height
	for _, p := range failure.Path {
		highest = max(highest, p.Height)
	}
	failure.Sink = highest - end.Height
	return failure, nil
}
