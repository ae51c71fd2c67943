package landing

import (
	"fmt"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// Point is a place on the path of a landing.
type Point struct {
	Time        float64 // s from the screen; before it negative
	Distance    float64 // from the threshold, m
	Height      float64 // of the wheels over the threshold, m
	Airspeed    float64 // m/s
	GroundSpeed float64 // along the landing, m/s
	Sink        float64 // m/s, downward positive
}

// Landing is the answer of Fly. Parts after one that did not end are zero: ask Complete first.
type Landing struct {
	Slope
	StallSpeed    float64 // m/s
	ApproachSpeed float64 // airspeed, m/s
	Screen        Point   // where the path passes the screen height
	FlareStart    Point
	FlareEnd      Point
	Touchdown     Point
	Stop          Point
	// Lengths over the ground, m: from the screen to the flare, of the flare, of the float in ground effect and of the roll or slide.
	Approach, Flare, Float, Run float64
	// Total is the landing distance from the screen height to rest, m. Stop.Distance is how much of the strip beyond the threshold it uses.
	Total float64
	// Levels is false when the wing stalls before the flare has stopped the sink: TouchdownSink is then that of the contact. More FlareLoad, a flatter
	// slope or more speed helps.
	Levels        bool
	TouchdownSink float64 // across the ground, m/s; zero after a flare that levels
	// Settles is false when idle thrust holds the model off the ground, Stops when thrust or slope keep it rolling.
	Settles, Stops bool
	Clearances     []Clearance // one an obstacle, in their order
	arc            motion.Solution
	flight         *flight
}

// Complete reports whether the landing ended at rest.
func (l *Landing) Complete() bool { return l.Descends && l.Settles && l.Stops }

// Fly computes a landing. The error names what is impossible; a landing that does not come down, settle or stop is an answer, not an error.
//
// Valid for: a straight slope at one airspeed down to the flare, throttle closed at once where the flare starts, the flare's load factor held, wind level.
func Fly(a motion.Aircraft, air motion.Conditions, plan Plan) (Landing, error) {
	f, err := newFlight(&a, &air, plan)
	if err != nil {
		return Landing{}, err
	}
	l := Landing{Slope: f.slope, StallSpeed: f.stall, ApproachSpeed: f.speed, flight: f}
	if !l.Descends {
		return l, nil
	}
	if err := l.comeDown(f); err != nil {
		return Landing{}, err
	}
	l.clear(f)
	return l, l.finish(f)
}

// comeDown computes approach and flare.
func (l *Landing) comeDown(f *flight) error {
	start, arc, levels, err := f.lowFlare()
	if err != nil {
		return fmt.Errorf("flare load: cannot be followed: %w", err)
	}
	l.arc, l.Levels = arc, levels
	l.Screen = l.screen(f, start)
	duration := 0.0
	if start.Distance > l.Screen.Distance {
		duration = f.slopeTime(l.Screen, start)
	}
	l.FlareStart = start
	l.FlareStart.Time = duration
	end, s := arc.End()
	l.FlareEnd = f.pointAt(duration+end, s)
	if !levels {
		l.TouchdownSink = max(0, l.FlareEnd.Sink+float64(f.rise*l.FlareEnd.GroundSpeed))
	}
	l.Approach = max(0, start.Distance-l.Screen.Distance)
	l.Flare = l.FlareEnd.Distance - max(start.Distance, l.Screen.Distance)
	return nil
}

// screen returns where the path passes the screen height: on the slope, or in the flare where the screen is lower than its start.
func (l *Landing) screen(f *flight, start Point) Point {
	if f.plan.ScreenHeight >= start.Height {
		return f.onSlope(f.plan.ScreenHeight)
	}
	low := 0.0
	high, _ := l.arc.End()
	for range 60 {
		mid := low + float64((high-low)/2)
		if s := l.arc.At(mid); s[atHeight] > f.plan.ScreenHeight {
			low = mid
		} else {
			high = mid
		}
	}
	return f.pointAt(0, l.arc.At(high))
}

// slopeTime returns the time on the slope between two points by the mean of their speeds and that at the middle, s (Simpson's rule on 1/V).
func (f *flight) slopeTime(from, to Point) float64 {
	mid := f.onSlope(from.Height + float64((to.Height-from.Height)/2))
	pace := (1/from.GroundSpeed + 4/mid.GroundSpeed + 1/to.GroundSpeed) / 6
	return (to.Distance - from.Distance) * pace
}

// finish computes float, touchdown and roll.
func (l *Landing) finish(f *flight) error {
	l.Touchdown, l.Settles = l.FlareEnd, true
	if l.Levels {
		from := l.FlareEnd
		from.GroundSpeed /= elementary.Cos(f.plan.Slope)
		from.Height, from.Sink = f.ground(from.Distance), 0
		var err error
		if l.Touchdown, l.Settles, err = f.float(from); err != nil {
			return fmt.Errorf("idle thrust: the float cannot be followed: %w", err)
		}
		if !l.Settles {
			l.Touchdown = Point{}
			return nil
		}
	}
	l.Float = l.Touchdown.Distance - l.FlareEnd.Distance
	stop, stops, err := f.roll(l.Touchdown)
	if err != nil {
		return fmt.Errorf("friction: the roll cannot be followed: %w", err)
	}
	if !stops {
		return nil
	}
	l.Stop, l.Stops = stop, true
	l.Run = stop.Distance - l.Touchdown.Distance
	l.Total = stop.Distance - l.Screen.Distance
	return nil
}

// Height returns the height of the path over the threshold at a distance, m, up to the end of the flare; beyond it, that of the ground.
func (l *Landing) Height(distance float64) float64 {
	switch {
	case !l.Descends || l.flight == nil:
		return 0
	case distance <= l.FlareStart.Distance:
		return l.flight.line(distance)
	case distance >= l.FlareEnd.Distance:
		return l.flight.ground(distance)
	}
	low := 0.0
	high, _ := l.arc.End()
	for range 50 {
		mid := low + float64((high-low)/2)
		if s := l.arc.At(mid); s[atDistance] < distance {
			low = mid
		} else {
			high = mid
		}
	}
	return l.arc.At(high)[atHeight]
}

// Path returns the path to draw: from a distance before the threshold (m, negative) down the slope, the flare in pieces, touchdown and stop.
func (l *Landing) Path(from float64, pieces int) []Point {
	if !l.Descends || l.flight == nil {
		return nil
	}
	pieces = min(max(pieces, 1), 1000)
	path := []Point{l.flight.onSlope(l.flight.line(min(from, l.FlareStart.Distance))), l.FlareStart}
	path[0].Time = -l.flight.slopeTime(path[0], l.Screen)
	if path[0].Distance > l.Screen.Distance {
		path[0].Time = 0
	}
	end, _ := l.arc.End()
	for i := 1; i <= pieces; i++ {
		t := float64(end * (float64(i) / float64(pieces)))
		path = append(path, l.flight.pointAt(l.FlareStart.Time+t, l.arc.At(t)))
	}
	if l.Settles {
		path = append(path, l.Touchdown)
	}
	if l.Stops {
		path = append(path, l.Stop)
	}
	return path
}

// AirDistance is the distance from a height to the end of the flare by a straight slope and an arc, for comparison with Fly.
type AirDistance struct {
	FlareHeight float64 // m
	Approach    float64 // from the height to the flare, m
	Flare       float64 // m
}

// ArcDistance returns the distance through the air from a height (m) by a slope and an arc.
//
//	hf = R (1 - cos(g)), sa = (h - hf) / tan(g), sf = R sin(g), R = V^2 / (g0 dn)
//
// where V is the mean airspeed in the flare (m/s; 1.23 Vs with the 1.3 Vs of the approach), g the slope (rad), dn the load factor above one.
// Valid for: no wind, h above hf. Source: Anderson, Aircraft Performance and Design, equations 6.106 to 6.109.
func ArcDistance(height, angle, speed, load, gravity float64) AirDistance {
	d := AirDistance{FlareHeight: FlareHeight(angle, speed, load, gravity)}
	d.Approach = (height - d.FlareHeight) / elementary.Tan(angle)
	d.Flare = speed * speed / (gravity * load) * elementary.Sin(angle)
	return d
}

// MeanForceRoll returns the roll to rest by the mean force at 0.7 of the touchdown speed, m, for comparison with Fly.
//
//	s = V^2 W / (2 g [D + mu (W - L)])
//
// where D and L are drag and lift (N) at 0.7 V, mu the friction, W the weight (N). Valid for: level, still air, no thrust.
// Source: Anderson, Introduction to Flight, section 6.16.
func MeanForceRoll(speed, mass, gravity, drag, lift, friction float64) float64 {
	weight := float64(mass * gravity)
	return speed * speed * weight / (2 * gravity * (drag + float64(friction*(weight-lift))))
}
