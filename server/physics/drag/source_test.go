package drag

import (
	"math"
	"testing"
)

// by returns a formula of one named input.
func by(name string, f func(float64) float64) formula {
	return func(t *testing.T, _ string, in inputs) float64 { return f(in.number(t, name)) }
}

func TestPlateFriction(t *testing.T) {
	t.Parallel()
	checkPublished(t, "plate_friction", map[string]formula{
		"laminar":   by("reynolds", LaminarFriction),
		"turbulent": by("reynolds", TurbulentFriction),
		"composite": func(t *testing.T, _ string, in inputs) float64 {
			return Friction(in.number(t, "reynolds"), in.number(t, "transition"))
		},
		"line": func(t *testing.T, _ string, in inputs) float64 {
			return Friction(in.number(t, "reynolds"), in.number(t, "start")/in.number(t, "reynolds"))
		},
	})
}

func TestLaminarLayer(t *testing.T) {
	t.Parallel()
	checkPublished(t, "blasius_layer", map[string]formula{
		"speed": by("eta", PlateSpeedRatio),
		"trip": func(t *testing.T, _ string, in inputs) float64 {
			return TripReynolds(in.number(t, "height"), in.number(t, "place"), in.number(t, "unit"))
		},
	})
}

// gearCoefficients are the coefficients of the gear table by the row's name.
var gearCoefficients = map[string]float64{
	"wheel": wheelCoefficient(Wheel{}), "tandem-wheel": wheelCoefficient(Wheel{Tandem: true}),
	"smooth-wheel": wheelCoefficient(Wheel{Smooth: true}), "faired-wheel": wheelCoefficient(Wheel{Faired: true}),
	"faired-strut": strutCoefficient(StrutFaired, 1e4), "round-strut": strutCoefficient(StrutRound, 1e4),
	"round-strut-high": strutCoefficient(StrutRound, 4e5), "flat-leg": strutCoefficient(StrutFlat, 1e4),
	"flat-plate": FlatPlateCoefficient, "scoop": AirScoopCoefficient, "horn": ControlHorns("", 1, 1).Coefficient,
	"cockpit": OpenCockpitCoefficient,
}

// junctions are the interference factors by the row's name.
var junctions = map[string]Junction{
	"wing": junctionWing, "low-wing": junctionLowWing, "tail": junctionTail, "v-tail": junctionVTail, "twin-fins": junctionTwinFins,
	"pod-flush": podJunction(MountFlush), "pod-near": podJunction(MountNear), "pod-far": podJunction(MountFar),
}

func TestFormFactorsGearAndBases(t *testing.T) {
	t.Parallel()
	checkPublished(t, "raymer_drag", map[string]formula{
		"wing-form": func(t *testing.T, _ string, in inputs) float64 {
			return WingFormFactor(in.number(t, "thickness"), 0.3, in.number(t, "mach"), degrees(in.number(t, "sweep")))
		},
		"body-form":        by("fineness", func(f float64) float64 { return BodyFormFactor(f, false) }),
		"square-body":      by("fineness", func(f float64) float64 { return BodyFormFactor(f, true) }),
		"older-body-form":  by("fineness", OlderBodyFormFactor),
		"pod-form":         by("fineness", PodFormFactor),
		"oswald":           by("aspect", OswaldStraight),
		"base":             by("friction", BaseCoefficient),
		"doors":            by("extended", OpenDoorsDrag),
		"grain":            func(_ *testing.T, name string, _ inputs) float64 { return SandGrain(name) },
		"gear-coefficient": func(_ *testing.T, name string, _ inputs) float64 { return gearCoefficients[name] },
		"junction":         func(_ *testing.T, name string, _ inputs) float64 { return junctions[name].Factor },
		"cutoff": func(t *testing.T, _ string, in inputs) float64 {
			return CutoffReynolds(in.number(t, "length"), in.number(t, "grain"))
		},
		"gear": func(t *testing.T, _ string, in inputs) float64 {
			main := Wheel{Diameter: in.number(t, "diameter1"), Width: in.number(t, "width1")}
			nose := Wheel{Diameter: in.number(t, "diameter2"), Width: in.number(t, "width2")}
			wires := in.number(t, "wires") * in.number(t, "wire") * in.number(t, "length")
			return GearDrag(Gear{Wheels: []Wheel{main, main, nose}, StrutFrontalArea: wires}, 1e4)
		},
	})
}

func TestSimpleShapes(t *testing.T) {
	t.Parallel()
	checkPublished(t, "aircraft_data_book", map[string]formula{
		"along":  by("slenderness", AlongCylinder),
		"across": by("slenderness", AcrossCylinder),
		"antenna": func(t *testing.T, _ string, in inputs) float64 {
			return itemPart(Antenna("", in.number(t, "length"), in.number(t, "diameter"), 1)).Area
		},
		"engine": func(t *testing.T, _ string, in inputs) float64 {
			return itemPart(ExposedEngine("", in.number(t, "diameter"), in.number(t, "length"))).Area
		},
	})
	checkPublished(t, "fluid_text_shapes", map[string]formula{"along": by("slenderness", AlongCylinder)})
}

// fullSizeGear returns a gear of a full-size aeroplane, bare or faired throughout.
func fullSizeGear(t *testing.T, in inputs, faired bool) float64 {
	t.Helper()
	g := Gear{StrutFrontalArea: in.number(t, "legs"), StrutsFaired: faired}
	for range int(in.number(t, "wheels")) {
		g.Wheels = append(g.Wheels, Wheel{Diameter: in.number(t, "diameter"), Width: in.number(t, "width"), Faired: faired})
	}
	return GearDrag(g, 1e5)
}

func TestMeasuredGears(t *testing.T) {
	t.Parallel()
	checkPublished(t, "naca_report_485", map[string]formula{
		"band": func(t *testing.T, _ string, in inputs) float64 {
			return fullSizeGear(t, in, in.number(t, "faired") == 1)
		},
		"spread": func(t *testing.T, _ string, in inputs) float64 {
			return fullSizeGear(t, in, false) / fullSizeGear(t, in, true)
		},
	})
}

func TestAnotherAuthorsFactors(t *testing.T) {
	t.Parallel()
	checkPublished(t, "hoerner_drag", map[string]formula{
		"wing-form": func(t *testing.T, _ string, in inputs) float64 {
			return WingFormFactor(in.number(t, "thickness"), in.number(t, "place"), 0, 0)
		},
		"body-form": by("fineness", func(f float64) float64 { return BodyFormFactor(f, false) }),
		"base":      by("friction", BaseCoefficient),
	})
}

// coursePart is one part of the worked build-up.
type coursePart struct{ friction, form, interference, wetted float64 }

// courseSkin returns friction drag over dynamic pressure of the worked build-up, part by part.
func courseSkin() float64 {
	parts := []coursePart{
		{0.9*0.002317 + 0.1*0.000179, BodyFormFactor(5.5, false), 1, 35.3032},
		{TurbulentFriction(7.497e6), WingFormFactor(0.18, 0.3, 0.3, 0), 1, 20.8103},
		{TurbulentFriction(4.185e6), WingFormFactor(0.12, 0.3, 0.3, degrees(10)), 1.04, 5.5742},
		{TurbulentFriction(6.451e6), WingFormFactor(0.12, 0.3, 0.3, degrees(30)), 1.04, 3.6232},
	}
	sum := 0.0
	for _, p := range parts {
		sum += FrictionArea(p.friction, p.form, p.interference, p.wetted)
	}
	return sum
}

func TestWorkedBuildUp(t *testing.T) {
	t.Parallel()
	const reference, section = 12.4490, 2.2297
	rest := UpsweepDrag(degrees(10), section) + 0.07*0.3*section
	whole := map[string]float64{"skin": courseSkin() / reference, "leakage": 1.05 * (courseSkin() + rest) / reference}
	reynolds := func(t *testing.T, _ string, in inputs) float64 {
		return Reynolds(in.number(t, "density"), in.number(t, "speed"), in.number(t, "length"), in.number(t, "viscosity"))
	}
	area := func(t *testing.T, _ string, in inputs) float64 {
		return FrictionArea(in.number(t, "friction"), in.number(t, "form"), in.number(t, "interference"), in.number(t, "wetted"))
	}
	checkPublished(t, "course_drag_build_up", map[string]formula{
		"reynolds": reynolds, "imperial-reynolds": reynolds, "part-area": area, "imperial-area": area,
		"part-friction": by("reynolds", TurbulentFriction),
		"efficiency":    by("aspect", OswaldStraight),
		"whole":         func(_ *testing.T, name string, _ inputs) float64 { return whole[name] },
		"misc":          func(*testing.T, string, inputs) float64 { return rest / reference },
		"glide": func(t *testing.T, _ string, in inputs) float64 {
			p := Polar{ZeroLift: in.number(t, "drag"), Induced: InducedFactor(in.number(t, "aspect"), in.number(t, "efficiency"))}
			return mustGlide(t, p.BestGlide).Ratio
		},
		"upsweep": func(t *testing.T, _ string, in inputs) float64 {
			return UpsweepDrag(degrees(in.number(t, "degrees")), in.number(t, "section"))
		},
	})
}

// smallAeroplane returns the zero-lift drag coefficient of the notebook's aeroplane, built up from its geometry.
func smallAeroplane() float64 {
	const perMeter = 1.225 * 18 / 1.8e-5
	surface := func(chord, wetted, thickness, place, interference float64) float64 {
		return FrictionArea(Friction(perMeter*chord, 0.1), WingFormFactor(thickness, place, 0, 0), interference, wetted)
	}
	sum := surface(0.5, (2-0.25*0.5)*(1.977+0.52*0.125), 0.125, 0.237, 1) +
		surface(0.41, 0.66*(1.977+0.52*0.12), 0.12, 0.3, 1.05) + surface(0.43, 0.37*(1.977+0.52*0.12), 0.12, 0.3, 1.05) +
		FrictionArea(Friction(perMeter*2.2, 0), BodyFormFactor(2.2/math.Sqrt(4*0.0625/math.Pi), false), 1, 2*0.5*2.2*0.8) + smallGear()
	return 1.1 * sum / 2
}

// smallGear returns the drag over dynamic pressure of its gear.
func smallGear() float64 {
	wheel := Wheel{Diameter: 0.05, Width: 0.04}
	main := Gear{Wheels: []Wheel{wheel, wheel}, StrutFrontalArea: 2 * 0.35 * 3e-3, StrutShape: StrutFlat}
	nose := Gear{Wheels: []Wheel{wheel}, StrutFrontalArea: 0.25 * 1e-2}
	return GearDrag(main, 1e4) + GearDrag(nose, 1e4)
}

func TestSmallAeroplane(t *testing.T) {
	t.Parallel()
	checkPublished(t, "small_aeroplane_build_up", map[string]formula{
		"whole": func(*testing.T, string, inputs) float64 { return smallAeroplane() },
		"gear":  func(*testing.T, string, inputs) float64 { return smallGear() },
		"form": func(t *testing.T, name string, in inputs) float64 {
			if name == "fuselage" {
				return BodyFormFactor(in.number(t, "fineness"), false)
			}
			return WingFormFactor(in.number(t, "thickness"), in.number(t, "place"), 0, 0)
		},
	})
}

// unitLoad carries any polar whose ratios are asked for.
var unitLoad = Load{Weight: 100, Area: 1, Density: 1.225}

// mustGlide returns a glide that must exist.
func mustGlide(t *testing.T, find func(Load) (Glide, error)) Glide {
	t.Helper()
	g, err := find(unitLoad)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// rowPolar returns the parabola of a row given by span and area.
func rowPolar(t *testing.T, in inputs) Polar {
	t.Helper()
	span := in.number(t, "span")
	return Polar{ZeroLift: in.number(t, "drag"), Induced: InducedFactor(span*span/in.number(t, "area"), in.number(t, "efficiency")), MaximumLift: 2}
}

func TestIntroductoryPolars(t *testing.T) {
	t.Parallel()
	glide := func(f func(Glide) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 { return f(mustGlide(t, rowPolar(t, in).BestGlide)) }
	}
	reynolds := func(t *testing.T, _ string, in inputs) float64 {
		return Reynolds(in.number(t, "density"), in.number(t, "speed"), in.number(t, "length"), in.number(t, "viscosity"))
	}
	checkPublished(t, "anderson_polar", map[string]formula{
		"glide":       glide(func(g Glide) float64 { return g.Ratio }),
		"glide-angle": glide(func(g Glide) float64 { return g.Angle * 180 / math.Pi }),
		"endurance": func(t *testing.T, _ string, in inputs) float64 {
			g := mustGlide(t, rowPolar(t, in).MinimumSink)
			return g.Lift * math.Sqrt(g.Lift) / g.Drag.Total
		},
		"range": func(t *testing.T, _ string, in inputs) float64 {
			p := rowPolar(t, in)
			merit := func(cl float64) float64 { return math.Sqrt(cl) / p.At(cl).Total }
			return merit(bestLift(2, merit))
		},
		"plate-reynolds": reynolds,
		"plate-drag": func(t *testing.T, name string, in inputs) float64 {
			speed := in.number(t, "speed")
			force := 0.5 * in.number(t, "density") * speed * speed * in.number(t, "length") * in.number(t, "width")
			return 2 * force * LaminarFriction(reynolds(t, name, in))
		},
	})
}

func TestGlideOfThePaperAeroplane(t *testing.T) {
	t.Parallel()
	glide := func(f func(Glide) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			p := Polar{ZeroLift: in.number(t, "drag"), Induced: InducedFactor(in.number(t, "aspect"), in.number(t, "efficiency"))}
			g, err := p.BestGlide(Load{Weight: in.number(t, "mass") * in.number(t, "gravity"), Area: in.number(t, "area"), Density: in.number(t, "density")})
			if err != nil {
				t.Fatal(err)
			}
			return f(g)
		}
	}
	checkPublished(t, "stengel_glider", map[string]formula{
		"speed": glide(func(g Glide) float64 { return g.Speed }), "angle": glide(func(g Glide) float64 { return g.Angle }),
		"ratio": glide(func(g Glide) float64 { return g.Ratio }), "lift": glide(func(g Glide) float64 { return g.Lift }),
	})
}
