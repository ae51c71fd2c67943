package motion

import (
	"math"
	"testing"
)

// polar is the aircraft of a row given by weight or mass, with the induced factor from span efficiency.
func polar(in inputs) (Aircraft, Conditions) {
	air := Conditions{Density: in["density"], Gravity: in["gravity"]}
	aspect := in["aspect"]
	if aspect == 0 {
		aspect = in["span"] * in["span"] / in["area"]
	}
	a := Aircraft{
		Mass: in["mass"], Area: in["area"], CD0: in["drag"], InducedFactor: 1 / (math.Pi * in["efficiency"] * aspect), CLMax: in["max_lift"],
		Span: in["span"], CLGround: in["lift"], WingHeight: in["wing_height"],
		Thrust: func(float64, float64) float64 { return in["thrust"] },
	}
	if a.Mass == 0 {
		a.Mass = in["weight"] / air.gravity()
	}
	if a.CLMax == 0 {
		a.CLMax = 1
	}
	return a, air
}

// topSpeed is the top speed of a row, not a number where there is none.
func topSpeed(in inputs, thrust func(float64) float64) float64 {
	a, air := polar(in)
	// The search ends at 400 m/s; rows in ft/s go beyond, so their speeds are taken at a quarter
	// in air sixteen times as dense: thrust and drag are the same.
	air.Density *= 16
	v, found := a.TopSpeed(air, func(v float64) float64 { return thrust(4 * v) })
	if !found {
		return math.NaN()
	}
	return 4 * v
}

func TestAndersonFlight(t *testing.T) {
	t.Parallel()
	glide := func(in inputs) Glide {
		a, air := polar(in)
		return a.BestGlide(air, 0)
	}
	jetLaunch := func(in inputs) Result {
		a, air := polar(in)
		l := Launch{Method: Wheels, Friction: in["friction"], LiftoffSpeed: 1.2 * a.StallSpeed(air), ClimbLift: 1}
		return launched(l, a, air)
	}
	checkPublished(t, "anderson_flight", map[string]method{
		"top-speed":       func(in inputs) float64 { return topSpeed(in, func(float64) float64 { return in["thrust"] }) },
		"top-speed-power": func(in inputs) float64 { return topSpeed(in, func(v float64) float64 { return in["power"] / v }) },
		"glide-ratio":     func(in inputs) float64 { return glide(in).Ratio },
		"glide-angle":     func(in inputs) float64 { return glide(in).Angle * 180 / math.Pi },
		"glide-speed": func(in inputs) float64 {
			a, air := polar(in)
			return a.GlideAt(in["glide_lift"], air).Speed
		},
		"ground-effect":  func(in inputs) float64 { return GroundEffect(in["height"], in["span"]) },
		"mean-force-run": func(in inputs) float64 { a, air := polar(in); return a.MeanForceRun(in["friction"], air) },
		"lift-off-speed": func(in inputs) float64 { return jetLaunch(in).Airspeed },
		"launch-run":     func(in inputs) float64 { return jetLaunch(in).Run },
		"stall-turn": func(in inputs) float64 {
			stall := math.Sqrt(2 * in["loading"] / (in["density"] * in["lift"]))
			return LoadRadius(stall*math.Sqrt(in["load"]), in["load"]) * Gravity / in["gravity"]
		},
	})
}

func TestFlightMechanics(t *testing.T) {
	t.Parallel()
	best := func(in inputs) Glide {
		a, air := polar(in)
		return a.BestGlide(air, in["extra"])
	}
	checkPublished(t, "flight_mechanics", map[string]method{
		"turn-load":   func(in inputs) float64 { return TurnLoad(degrees(in["bank"])) },
		"turn-stall":  func(in inputs) float64 { return TurnStallSpeed(in["stall"], degrees(in["bank"])) },
		"turn-radius": func(in inputs) float64 { return TurnRadius(in["speed"], degrees(in["bank"])) },
		"turn-rate":   func(in inputs) float64 { return TurnRate(in["speed"], degrees(in["bank"])) * 180 / math.Pi },
		"turn-circle": func(in inputs) float64 {
			return 2 * Circuit{Airspeed: in["speed"], Bank: degrees(in["bank"])}.TurnTime()
		},
		"turn-drift": func(in inputs) float64 {
			return in["wind"] * Circuit{Airspeed: in["speed"], Bank: degrees(in["bank"])}.TurnTime()
		},
		"load-radius":    func(in inputs) float64 { return LoadRadius(in["speed"], in["load"]) },
		"pull-up-radius": func(in inputs) float64 { return PullUpRadius(in["speed"], in["load"]) },
		"best-ratio":     func(in inputs) float64 { return best(in).Ratio },
		"best-lift":      func(in inputs) float64 { return best(in).Lift },
		"best-speed":     func(in inputs) float64 { return best(in).Speed },
		"best-angle":     func(in inputs) float64 { return best(in).Angle * 180 / math.Pi },
		"best-sink":      func(in inputs) float64 { return best(in).Sink },
		"glide-range":    func(in inputs) float64 { return best(in).Range(in["height"], 0) },
		"steady-climb": func(in inputs) float64 {
			a, air := polar(in)
			f := newFlight(&Launch{MaxClimbAngle: 1.5, ClimbLift: 1}, &a, &air, &ground{})
			pressureArea := 0.5 * air.Density * in["speed"] * in["speed"] * a.Area
			return math.Asin(f.climbSine(airMotion{clearance: 1e3, induced: a.InducedFactor}, pressureArea, in["thrust"])) * 180 / math.Pi
		},
		"least-sink-lift": func(in inputs) float64 {
			a, air := polar(in)
			return a.LeastSink(air).Lift
		},
		"turn-loss": func(in inputs) float64 {
			lift := in["lift"]
			in["lift"] = 0
			a, air := polar(in)
			return a.TurnHeightLoss(degrees(in["change"]), degrees(in["bank"]), lift, air)
		},
		"top-speed":     func(in inputs) float64 { return topSpeed(in, func(float64) float64 { return in["thrust"] }) },
		"level-drag":    func(in inputs) float64 { a, air := polar(in); return a.LevelDrag(in["speed"], air) },
		"ground-effect": func(in inputs) float64 { return GroundEffect(in["height"], in["span"]) },
	})
}

func TestClimbAngleBalancesTheForces(t *testing.T) {
	t.Parallel()
	a, air := jet(), grass(0, 0)
	weight := a.Mass * Gravity
	for _, speed := range []float64{18, 25, 40} {
		for _, thrust := range []float64{0, 20, 60, 100} {
			angle, found := a.ClimbAngleAt(speed, thrust, air)
			if !found {
				t.Fatalf("no climb at %g m/s with %g N", speed, thrust)
			}
			pressureArea := 0.5 * air.Density * speed * speed * a.Area
			lift := weight * math.Cos(angle) / pressureArea
			drag := pressureArea * (a.CD0 + a.InducedFactor*lift*lift)
			if off := thrust - drag - weight*math.Sin(angle); math.Abs(off) > 1e-9*weight {
				t.Errorf("forces along the climb at %g m/s with %g N are off by %g N", speed, thrust, off)
			}
		}
	}
	if _, found := a.ClimbAngleAt(20, 3*weight, air); found {
		t.Error("a thrust of three weights has a steady climb short of the vertical")
	}
}
