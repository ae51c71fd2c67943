package motion

import (
	"math"
	"testing"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/weather"
)

// separate runs the launch of a row of the separate integration.
func separate(in inputs) Result {
	a := rowAircraft(in)
	a.ThrustAngle = in["thrust_angle"]
	a.Thrust = func(v, t float64) float64 {
		share := 1.0
		if in["spool"] > 0 {
			share = 1 - elementary.Exp(-(t+in["hold"])/in["spool"])
		}
		return in["thrust"]*share - in["fall"]*v
	}
	l := Launch{
		Method: Method(in["method"]), Slope: in["slope"], Friction: in["friction"], LiftoffSpeed: in["liftoff"], Length: in["length"],
		EndHeight: in["end_height"], DollyMass: in["dolly"], Stiffness: in["stiffness"], Stretch: in["stretch"], Efficiency: in["efficiency"],
		CordMass: in["cord"], HandSpeed: in["hand_speed"], HandHeight: in["hand_height"], Tolerance: precise,
	}
	if l.Method == Catapult {
		l.Forces = []ForcePoint{{0, in["first_force"]}, {in["stroke"], in["last_force"]}}
	}
	air := Conditions{
		Density: in["density"], Headwind: in["headwind"], Crosswind: in["crosswind"], Profile: weather.Profile{RoughnessLength: in["roughness"]},
	}
	r, err := l.Run(a, air)
	if err != nil || !r.ReachesScreen {
		return Result{Airspeed: math.NaN(), Run: math.NaN(), ScreenDistance: math.NaN(), ScreenTime: math.NaN(), Sink: math.NaN()}
	}
	return r
}

func TestSeparateIntegration(t *testing.T) {
	t.Parallel()
	checkPublished(t, "separate_integration", map[string]method{
		"speed":      func(in inputs) float64 { return separate(in).Airspeed },
		"run":        func(in inputs) float64 { return separate(in).Run },
		"screen":     func(in inputs) float64 { return separate(in).ScreenDistance },
		"screentime": func(in inputs) float64 { return separate(in).ScreenTime },
		"sink":       func(in inputs) float64 { return separate(in).Sink },
		"drift":      func(in inputs) float64 { r := separate(in); return r.End().Drift },
	})
}

// lightAeroplane is the distance to 15 m over the strip of a made-up light aeroplane with a row's change.
func lightAeroplane(in inputs) float64 {
	share := func(name string) float64 {
		if v, given := in[name]; given {
			return v
		}
		return 1
	}
	a := Aircraft{
		Mass: 1000 * share("mass"), Area: 15, Span: 10.5, CD0: 0.032, InducedFactor: 0.058, CLMax: 1.7, CLGround: 0.4, WingHeight: 1.2,
	}
	a.Thrust = func(v, _ float64) float64 { return share("thrust") * (2900 - 22*v) }
	air := Conditions{Density: 1.225 * share("density")}
	friction := 0.03
	if f, given := in["friction"]; given {
		friction = f
	}
	stall := a.StallSpeed(air)
	air.Headwind = -in["tailwind"] * 1.15 * stall
	l := Launch{Method: Wheels, Friction: friction, Slope: math.Atan(in["slope"]), LiftoffSpeed: 1.15 * stall, ScreenHeight: 25, ClimbLift: 0.8}
	r, err := l.Run(a, air)
	if err != nil || !r.ReachesScreen {
		return math.NaN()
	}
	low, high := r.Distance, r.ScreenDistance
	for high-low > 1e-6 {
		mid := (low + high) / 2
		if h, _ := r.HeightAt(mid); h-in["slope"]*mid < 15 {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

func TestTakeoffFactorsAsTrends(t *testing.T) {
	t.Parallel()
	checkPublished(t, "takeoff_factors", map[string]method{
		"factor": func(in inputs) float64 { return lightAeroplane(in) / lightAeroplane(inputs{}) },
	})
}

func TestInvariantOfBallisticsWithDrag(t *testing.T) {
	t.Parallel()
	const mass, dragArea, density = 6.0, 0.06, 1.225
	b := density * dragArea / (2 * mass)
	for _, degree := range []float64{5, 30, 60, 80} {
		l := Launch{
			Method: Hand, HandSpeed: 60, HandHeight: 100, Slope: degrees(degree), ScreenHeight: 1000, Distance: 4000, Tolerance: 1e-12, Samples: 200, MaxLoad: 20,
		}
		r, err := l.Run(Aircraft{Mass: mass, Area: 1, CD0: dragArea}, Conditions{Density: density})
		if err != nil || !r.TouchesGround {
			t.Fatalf("%g degrees: %v", degree, err)
		}
		first := math.NaN()
		for _, p := range r.Path {
			forward, slope := p.GroundSpeed*math.Cos(p.ClimbAngle), math.Tan(p.ClimbAngle)
			secant := 1 / math.Cos(p.ClimbAngle)
			kept := 1/(forward*forward) + b/Gravity*(slope*secant+math.Asinh(slope))
			if math.IsNaN(first) {
				first = kept
			}
			if math.Abs(kept-first) > 1e-9*first {
				t.Errorf("%g degrees: invariant %.12g at %g m, %.12g at the start", degree, kept, p.Distance, first)
			}
		}
	}
}
