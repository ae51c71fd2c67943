package motion

import (
	"math"
	"testing"
)

// precise is the tolerance of tests against closed forms.
const precise = 1e-11

// settled is the state of a rate after a time.
func settled(rate Rate, s State, time float64) State {
	solution, err := Integrator{Tolerance: precise}.Solve(rate, 0, s, time)
	if err != nil {
		return State{math.NaN(), math.NaN(), math.NaN(), math.NaN()}
	}
	_, last := solution.End()
	return last
}

// until is the crossing at which a rate's state first meets an event, found with the integrator.
func until(rate Rate, s State, value func(State) float64, way Direction) Crossing {
	event := Event{Value: func(_ float64, s State) float64 { return value(s) }, Direction: way, Terminal: true}
	solution, err := Integrator{Tolerance: precise}.Solve(rate, 0, s, 100, event)
	if err != nil || len(solution.Crossings) == 0 {
		return Crossing{Time: math.NaN(), State: State{math.NaN(), math.NaN(), math.NaN(), math.NaN()}}
	}
	return solution.Crossings[0]
}

// rowAircraft is the aircraft of a row, with constant thrust.
func rowAircraft(in inputs) Aircraft {
	return Aircraft{
		Mass: in["mass"], Area: in["area"], Span: in["span"], CD0: in["drag"], InducedFactor: in["induced"],
		CLMax: in["max_lift"], CLGround: in["lift"], GroundDrag: in["ground_drag"], WingHeight: in["wing_height"],
		Thrust: func(float64, float64) float64 { return in["thrust"] },
	}
}

// launched runs a launch of a row; a failed one has values that are not numbers.
func launched(l Launch, a Aircraft, c Conditions) Result {
	l.Tolerance = precise
	r, err := l.Run(a, c)
	if err != nil || r.NeverLiftsOff {
		return Result{Run: math.NaN(), Time: math.NaN(), Airspeed: math.NaN(), GroundSpeed: math.NaN()}
	}
	return r
}

// rolled is the ground roll of a row, to 1.2 times the stall speed.
func rolled(in inputs) Result {
	a := rowAircraft(in)
	air := Conditions{Density: in["density"], Headwind: in["headwind"]}
	l := Launch{Method: Wheels, Friction: in["friction"], Slope: math.Atan(in["slope"]), LiftoffSpeed: 1.2 * a.StallSpeed(air)}
	return launched(l, a, air)
}

// railed is the ramp of a row.
func railed(in inputs) Result {
	return launched(Launch{Method: Ramp, Slope: degrees(in["slope"]), Friction: in["friction"], Length: in["length"], EndHeight: 100},
		rowAircraft(in), Conditions{Density: in["density"]})
}

// stretched is the bungee of a row, in a vacuum, where the cord lets go: no wing carries the model there, so it slides on.
func stretched(in inputs) Result {
	l := Launch{
		Method: Bungee, Stiffness: in["stiffness"], Stretch: in["stretch"], Efficiency: in["efficiency"], CordMass: in["cord"],
		Friction: in["friction"], Tolerance: precise,
	}
	r, err := l.Run(rowAircraft(in), Conditions{})
	if err != nil || !r.Release.Reached {
		return Result{GroundSpeed: math.NaN(), Time: math.NaN(), PeakAcceleration: math.NaN()}
	}
	return Result{GroundSpeed: r.Release.Airspeed, Time: r.Release.Time, PeakAcceleration: r.PeakAcceleration}
}

// falling is a fall with quadratic drag from its terminal speed: depth and speed.
func falling(in inputs) Rate {
	return func(_ float64, s State) State {
		share := s[1] / in["terminal"]
		return State{s[1], Gravity * (1 - share*math.Abs(share))}
	}
}

// threw is the flight of a row's throw, by the launch itself with no lift, until it meets the ground.
func threw(in inputs) Crossing {
	mass, area, density := 6.0, 0.5, 1.225
	drag := 2 * mass * in["factor"] / (density * area)
	a := Aircraft{Mass: mass, Area: area, CD0: drag}
	l := Launch{
		Method: Hand, HandSpeed: in["speed"], Slope: degrees(in["angle"]), HandHeight: in["height"], Distance: 2000, Tolerance: precise,
		MaxLoad: 20, ScreenHeight: 1000,
	}
	if in["height"] == 0 {
		l.HandHeight = 1e-9
	}
	l.HandSpeed = min(l.HandSpeed, 100)
	r, err := l.Run(a, Conditions{Density: density, Gravity: in["gravity"]})
	if err != nil || !r.TouchesGround {
		return Crossing{Time: math.NaN(), State: State{math.NaN(), math.NaN(), math.NaN(), math.NaN()}}
	}
	t, s := r.trace.flown.End()
	return Crossing{Time: t, State: s}
}

// linear is the state of a throw with linear drag.
func linear(in inputs) State {
	k := in["factor"]
	rate := func(_ float64, s State) State { return State{s[2], s[3], -k * s[2], -k*s[3] - Gravity} }
	angle := degrees(in["angle"])
	return settled(rate, State{0, 0, in["speed"] * math.Cos(angle), in["speed"] * math.Sin(angle)}, in["time"])
}

// sinking is the small-angle flight after a ramp: drop, sink speed, time.
func sinking(in inputs) Rate {
	return func(_ float64, s State) State {
		share := (in["speed"] + in["acceleration"]*s[2]) / in["reference"]
		return State{s[1], Gravity * (1 - share*share), 1}
	}
}

func TestClosedFormsOfMechanics(t *testing.T) {
	t.Parallel()
	constantPower := func(in inputs) State {
		return settled(func(_ float64, s State) State { return State{s[1], in["power"] / (in["mass"] * s[1])} }, State{0, in["speed"]}, in["time"])
	}
	fallingThrust := func(in inputs) State {
		return settled(func(_ float64, s State) State { return State{s[1], (in["thrust"] - in["fall"]*s[1]) / in["mass"]} }, State{}, in["time"])
	}
	spooling := func(in inputs) State {
		return settled(func(t float64, s State) State {
			return State{s[1], in["thrust"] * (1 - math.Exp(-t/in["constant"])) / in["mass"]}
		}, State{}, in["time"])
	}
	depth := func(in inputs) Crossing {
		return until(falling(in), State{}, func(s State) float64 { return s[0] - in["height"] }, Rising)
	}
	apex := func(in inputs) Crossing {
		return until(falling(in), State{0, -in["speed"]}, func(s State) float64 { return s[1] }, Rising)
	}
	turn := func(in inputs) Crossing {
		return until(sinking(in), State{}, func(s State) float64 { return in["speed"] + in["acceleration"]*s[2] - in["reference"] }, Rising)
	}
	lowest := func(in inputs) Crossing {
		// The sink speed is zero at the start and grows, so its fall through zero is the lowest point.
		return until(sinking(in), State{}, func(s State) float64 { return s[1] }, Falling)
	}
	slowed := func(in inputs) Crossing {
		rate := func(_ float64, s State) State { return State{s[1], -in["factor"] * s[1] * s[1]} }
		return until(rate, State{0, in["speed"]}, func(s State) float64 { return s[0] - in["distance"] }, Rising)
	}
	checkPublished(t, "engineering_mechanics", map[string]method{
		"roll-distance": func(in inputs) float64 { return rolled(in).Run },
		"roll-time":     func(in inputs) float64 { return rolled(in).Time },
		"ramp-speed":    func(in inputs) float64 { return railed(in).GroundSpeed },
		"ramp-time":     func(in inputs) float64 { return railed(in).Time },
		"bungee-speed":  func(in inputs) float64 { return stretched(in).GroundSpeed },
		"bungee-time":   func(in inputs) float64 { return stretched(in).Time },
		"bungee-peak":   func(in inputs) float64 { return stretched(in).PeakAcceleration },
		"slowed-speed": func(in inputs) float64 {
			return agree(SlowedSpeed(in["speed"], in["factor"], in["distance"]), slowed(in).State[1])
		},
		"slowed-time": func(in inputs) float64 {
			return agree(SlowedTime(in["speed"], in["factor"], in["distance"]), slowed(in).Time)
		},
		"stop-distance":    func(in inputs) float64 { return StopDistance(in["speed"], in["factor"], in["friction"]) },
		"fall-speed":       func(in inputs) float64 { return settled(falling(in), State{}, in["time"])[1] },
		"fall-depth":       func(in inputs) float64 { return settled(falling(in), State{}, in["time"])[0] },
		"fall-speed-from":  func(in inputs) float64 { return depth(in).State[1] },
		"fall-time-from":   func(in inputs) float64 { return depth(in).Time },
		"throw-apex":       func(in inputs) float64 { return -apex(in).State[0] },
		"throw-apex-time":  func(in inputs) float64 { return apex(in).Time },
		"throw-return":     func(in inputs) float64 { return returning(in, apex(in)) },
		"vacuum-range":     func(in inputs) float64 { return threw(in).State[atDistance] },
		"vacuum-time":      func(in inputs) float64 { return threw(in).Time },
		"vacuum-speed":     func(in inputs) float64 { return math.Hypot(threw(in).State[atForward], threw(in).State[atUpward]) },
		"drag-range":       func(in inputs) float64 { return threw(in).State[atDistance] },
		"drag-time":        func(in inputs) float64 { return threw(in).Time },
		"linear-x":         func(in inputs) float64 { return linear(in)[0] },
		"linear-y":         func(in inputs) float64 { return linear(in)[1] },
		"linear-vx":        func(in inputs) float64 { return linear(in)[2] },
		"linear-vy":        func(in inputs) float64 { return linear(in)[3] },
		"power-speed":      func(in inputs) float64 { return constantPower(in)[1] },
		"power-distance":   func(in inputs) float64 { return constantPower(in)[0] },
		"falling-speed":    func(in inputs) float64 { return fallingThrust(in)[1] },
		"falling-distance": func(in inputs) float64 { return fallingThrust(in)[0] },
		"spool-speed":      func(in inputs) float64 { return spooling(in)[1] },
		"spool-distance":   func(in inputs) float64 { return spooling(in)[0] },
		"sink-turn-time":   func(in inputs) float64 { return turn(in).Time },
		"sink-turn-sink":   func(in inputs) float64 { return turn(in).State[1] },
		"sink-turn-drop":   func(in inputs) float64 { return turn(in).State[0] },
		"sink-lowest-time": func(in inputs) float64 { return lowest(in).Time },
		"sink-lowest-drop": func(in inputs) float64 { return lowest(in).State[0] },
		"sink-lowest-speed": func(in inputs) float64 {
			return in["speed"] + in["acceleration"]*lowest(in).Time
		},
		"sink-lowest-distance": func(in inputs) float64 {
			t := lowest(in).Time
			return in["speed"]*t + in["acceleration"]*t*t/2
		},
	})
}

// agree returns a when b is the same to 1e-9, and not a number otherwise.
func agree(a, b float64) float64 {
	if math.Abs(a-b) > 1e-9*math.Abs(a) {
		return math.NaN()
	}
	return a
}

// returning is the speed with which a thrown body passes its start again.
func returning(in inputs, apex Crossing) float64 {
	return until(falling(in), apex.State, func(s State) float64 { return s[0] }, Rising).State[1]
}
