package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// PathPoint is one point of a launch.
type PathPoint struct {
	Distance    float64 // along the launch heading from its start, m
	Drift       float64 // to the right, m: crosswind not corrected for
	Height      float64 // over the ground at the start, m
	Airspeed    float64 // m/s
	GroundSpeed float64 // m/s, along the path
	ClimbAngle  float64 // over the ground, rad
	Time        float64 // from letting go, s
}

// Mark is a place of the run.
type Mark struct {
	Reached  bool
	Distance float64 // travel from the start, m
	Airspeed float64 // m/s
	Time     float64 // from letting go, s
}

// Result is what a launch comes to. Places are from the start of the launch.
type Result struct {
	Airspeed    float64 // at lift-off or the end of the launcher, m/s
	GroundSpeed float64 // there, m/s
	Run         float64 // travel to there along the ground or rails, m
	Time        float64 // to there, s
	Distance    float64 // of that place, m
	Height      float64 // of that place, m

	// PeakAcceleration is the greatest along the run, m/s2.
	PeakAcceleration float64

	Sink           float64 // lowest point of the flight below the place it left, m
	LowestDistance float64 // where, m
	LowestHeight   float64 // m

	ScreenDistance float64 // where the flight reaches the screen, m
	ScreenTime     float64 // s
	ScreenSpeed    float64 // airspeed there, m/s

	HoldTime        float64 // from opening the throttle to the release force, s; zero without one
	TailUp          Mark    // where the tail of a tail-dragger comes up
	Rotation        Mark    // where a wheeled model is rotated
	Release         Mark    // where the launcher lets go: end of the rails, hook, end of the stroke
	WaitsForControl bool    // rotation waits for the speed at which the controls lift the nose
	FloatsOff       bool    // the wing carries the model before it is rotated
	Slides          bool    // it slides on after the bungee lets go, too slow to fly
	SlideDistance   float64 // m

	NeverReleased   bool    // the thrust never reaches the release force; NeverLiftsOff is set too
	Held            bool    // the forces never move the model; NeverLiftsOff is set too
	NeverLiftsOff   bool    // the run comes to nothing; the flight fields are zero
	TouchesGround   bool    // the flight meets the ground after leaving it
	ContactAt       float64 // where, m
	ReachesScreen   bool
	ReachesFarthest bool // the flight reaches the distance asked for

	Path []PathPoint // from letting go to the end, even in time on the run and in the flight

	trace trace
}

// trace keeps the dense output of a launch.
type trace struct {
	run       *run
	stretches []stretch
	flight    *flight
	flown     Solution
	hasFlight bool
}

// stretch is one part of a run with what held in it.
type stretch struct {
	Solution
	lift float64
	free bool // its bungee has let go of it
}

// End returns the last point of the launch.
func (r *Result) End() PathPoint {
	if len(r.Path) == 0 {
		return PathPoint{}
	}
	return r.Path[len(r.Path)-1]
}

// HeightAt returns the height (m over the start) where the launch first passes a distance (m) along its heading, and false when it does not.
func (r *Result) HeightAt(distance float64) (float64, bool) {
	p, reached := r.At(distance)
	return p.Height, reached
}

// At returns the point where the launch first passes a distance (m) along its heading, from the dense output, and false when it does not.
func (r *Result) At(distance float64) (PathPoint, bool) {
	for i := range r.trace.stretches {
		s := &r.trace.stretches[i].Solution
		along := func(s State) float64 {
			at, _ := r.trace.run.place(s[0])
			return at
		}
		if t, reached := passing(s, distance, along); reached {
			return r.trace.run.point(t, s.At(t)), true
		}
	}
	if !r.trace.hasFlight {
		return PathPoint{}, false
	}
	s := &r.trace.flown
	t, reached := passing(s, distance, func(s State) float64 { return s[atDistance] })
	if !reached {
		return PathPoint{}, false
	}
	return r.trace.flight.point(t, s.At(t)), true
}

// LowestBetween returns the least height (m over the start) between two distances (m), and false when the launch does not pass the first.
// Where it ends between them, the part it passes counts.
func (r *Result) LowestBetween(near, far float64) (float64, bool) {
	lowest, reached := r.HeightAt(near)
	if !reached {
		return 0, false
	}
	if height, passes := r.HeightAt(far); passes {
		lowest = min(lowest, height)
	}
	if r.LowestDistance > near && r.LowestDistance < far && r.trace.hasFlight {
		lowest = min(lowest, r.LowestHeight)
	}
	for _, p := range r.Path {
		if p.Distance > near && p.Distance < far {
			lowest = min(lowest, p.Height)
		}
	}
	return lowest, true
}

// passing finds the time at which a part of the launch first passes a distance: the step that does, then bisection on its dense output.
func passing(s *Solution, distance float64, along func(State) float64) (float64, bool) {
	low := s.start
	if first := along(s.At(low)); first >= distance {
		return low, first == distance
	}
	for i := range s.pieces {
		high := min(s.pieces[i].start+s.pieces[i].step, s.end)
		if along(s.At(high)) < distance {
			low = high
			continue
		}
		for range 60 {
			mid := low + float64((high-low)/2)
			if mid <= low || mid >= high {
				break
			}
			if along(s.At(mid)) < distance {
				low = mid
			} else {
				high = mid
			}
		}
		return high, true
	}
	return 0, false
}

// point returns the point of a run's state.
func (r *run) point(t float64, s State) PathPoint {
	distance, height := r.place(s[0])
	return PathPoint{
		Distance:    distance,
		Height:      height,
		Airspeed:    r.airspeed(s),
		GroundSpeed: s[1],
		ClimbAngle:  elementary.Atan2(r.sine(s[0]), cosine(r.sine(s[0]))),
		Time:        t - r.launch.ThrustTime,
	}
}

// point returns the point of a flight's state.
func (f *flight) point(t float64, s State) PathPoint {
	return PathPoint{
		Distance:    s[atDistance],
		Drift:       s[atDrift],
		Height:      s[atHeight],
		Airspeed:    f.through(s).speed,
		GroundSpeed: math.Sqrt(float64(s[atForward]*s[atForward]) + float64(s[atUpward]*s[atUpward])),
		ClimbAngle:  elementary.Atan2(s[atUpward], s[atForward]),
		Time:        t - f.launch.ThrustTime,
	}
}

// sample adds points of a part of the launch, even in time.
func sample(path []PathPoint, s *Solution, count int, place func(float64, State) PathPoint) []PathPoint {
	for i := range count {
		t := s.start + float64((s.end-s.start)*(float64(i)/float64(count-1)))
		path = append(path, place(t, s.At(t)))
	}
	return path
}
