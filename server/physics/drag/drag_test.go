package drag

import (
	"math"
	"testing"

	"pitgate/server/physics/air"
	"pitgate/server/physics/planform"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func degrees(d float64) float64 { return d * math.Pi / 180 }

// model returns a small jet of plain shape.
func model() Aircraft {
	wing := planform.Surface{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{
		{Y: 0.06, Chord: 0.4}, {X: 0.1, Y: 1, Chord: 0.25},
	}}
	fin := planform.Surface{Name: "fin", Role: planform.RoleFin, Stations: []planform.Station{{X: 1.2, Chord: 0.25}, {X: 1.3, Z: 0.25, Chord: 0.15}}}
	body := Body{Name: "fuselage", BaseArea: 0.003, Stations: []BodyStation{
		{X: -0.5}, {X: -0.2, Width: 0.14, Height: 0.16}, {X: 0.8, Width: 0.14, Height: 0.16}, {X: 1.4, Width: 0.09, Height: 0.09},
	}}
	return Aircraft{
		Surfaces: []planform.Surface{wing, fin}, Bodies: []Body{body}, Finish: FinishSmooth, Leakage: 0.05,
		Gear:  &Gear{Wheels: []Wheel{{Diameter: 0.1, Width: 0.03}, {Diameter: 0.1, Width: 0.03}}, StrutFrontalArea: 0.002},
		Items: []Item{{Name: "control horn", Coefficient: ControlHornCoefficient, FrontalArea: 0.0001, Count: 4}},
		Duct:  &Duct{IntakeArea: 0.006, Length: 0.5},
	}
}

func at(speed float64) Conditions {
	return Conditions{Speed: speed, Air: air.Standard(100), ReferenceArea: 0.65}
}

func TestPartsSumToTheTotal(t *testing.T) {
	t.Parallel()
	for _, speed := range []float64{10, 25, 60, 90} {
		total, parts := BuildUp(model(), at(speed))
		sum, area := 0.0, 0.0
		for _, p := range parts {
			if !(p.Coefficient > 0) || (p.Friction > 0 && p.FormFactor < 1) {
				t.Errorf("%v m/s: %+v", speed, p)
			}
			sum += p.Coefficient
			area += p.Area
		}
		near(t, "sum", sum, total, 1e-12)
		near(t, "areas", area/0.65, total, 1e-12)
		if len(parts) != 9 || total < 0.01 || total > 0.08 {
			t.Errorf("%v m/s: %d parts, total %v, want 9 and a plausible total", speed, len(parts), total)
		}
	}
}

func TestWhatRaisesDrag(t *testing.T) {
	t.Parallel()
	base, _ := BuildUp(model(), at(30))
	changes := map[string]struct {
		change func(*Aircraft)
		more   bool
	}{
		"taped foam":     {func(a *Aircraft) { a.Finish = FinishTapedFoam }, true},
		"unknown finish": {func(a *Aircraft) { a.Finish = "" }, true},
		"polished":       {func(a *Aircraft) { a.Finish = FinishPolished }, false},
		"gear away":      {func(a *Aircraft) { a.Gear.Retracted = true }, false},
		"no gear":        {func(a *Aircraft) { a.Gear = nil }, false},
		"faired legs":    {func(a *Aircraft) { a.Gear.StrutsFaired = true }, false},
		"faired wheels":  {func(a *Aircraft) { a.Gear.Wheels[0].Faired = true }, false},
		"square body":    {func(a *Aircraft) { a.Bodies[0].SquareSided = true }, true},
		"larger base":    {func(a *Aircraft) { a.Bodies[0].BaseArea = 0.006 }, true},
		"more horns":     {func(a *Aircraft) { a.Items[0].Count = 8 }, true},
		"longer duct":    {func(a *Aircraft) { a.Duct.Length = 0.9 }, true},
		"thicker wing":   {func(a *Aircraft) { a.Surfaces[0].Stations[0].Section.Thickness = 0.2 }, true},
		"two bodies":     {func(a *Aircraft) { a.Bodies[0].Mirrored = true }, true},
	}
	for name, c := range changes {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			a := model()
			c.change(&a)
			got, _ := BuildUp(a, at(30))
			if (got > base) != c.more || got == base {
				t.Errorf("got %v, base %v, want more: %v", got, base, c.more)
			}
		})
	}
}

func TestFrictionStaysBetweenItsLimits(t *testing.T) {
	t.Parallel()
	for re := 1e3; re < 1e9; re *= 1.7 {
		last := math.Inf(1)
		for x := 0.0; x <= 1; x += 0.05 {
			cf := Friction(re, x)
			low, high := min(LaminarFriction(re), TurbulentFriction(re)), max(LaminarFriction(re), TurbulentFriction(re))
			if !(cf > 0) || cf < low-1e-15 || cf > high+1e-15 {
				t.Fatalf("Re %.3g, transition %.2f: %v outside %v to %v", re, x, cf, low, high)
			}
			if re > 2e5 && x > 0.06 && cf > last {
				t.Errorf("Re %.3g: friction must fall as transition moves aft, %v after %v", re, cf, last)
			}
			last = cf
		}
	}
	if got := Friction(math.NaN(), 0.3); got < 0 {
		t.Errorf("not a number: %v", got)
	}
}

func TestFormFactorsNeverFallBelowOne(t *testing.T) {
	t.Parallel()
	for _, mach := range []float64{0, 0.03, 0.06, 0.1, 0.2, 0.3} {
		for _, thickness := range []float64{0, 0.03, 0.06, 0.12, 0.2} {
			for _, sweep := range []float64{-0.5, 0, 0.7, 1.4} {
				if ff := WingFormFactor(thickness, 0.3, mach, sweep); ff < 1 {
					t.Errorf("t/c %v, Mach %v, sweep %v: %v", thickness, mach, sweep, ff)
				}
			}
		}
	}
	for f := 0.0; f < 40; f += 0.5 {
		if ff := BodyFormFactor(f, false); ff < 0.99 || ff > 2 {
			t.Errorf("fineness %v: %v", f, ff)
		}
	}
}

func TestBodies(t *testing.T) {
	t.Parallel()
	tube := Body{Stations: []BodyStation{{Width: 0.2, Height: 0.2}, {X: 1, Width: 0.2, Height: 0.2}}}
	shape, ok := MeasureBody(tube)
	if !ok {
		t.Fatal("a tube is a body")
	}
	near(t, "wetted", shape.WettedArea, math.Pi*0.2, 1e-9)
	near(t, "volume", shape.Volume, math.Pi*0.01, 1e-9)
	near(t, "fineness", shape.Fineness, 5, 1e-9)
	tube.SquareSided, tube.Mirrored = true, true
	box, _ := MeasureBody(tube)
	near(t, "box wetted", box.WettedArea, 1.6, 1e-9)
	near(t, "box volume", box.Volume, 0.08, 1e-9)
	cone := Body{Stations: []BodyStation{{}, {X: 1, Width: 0.2, Height: 0.2}}}
	pointed, _ := MeasureBody(cone)
	near(t, "cone wetted", pointed.WettedArea, math.Pi*0.1*math.Sqrt(1.01), 1e-9)
	near(t, "cone volume", pointed.Volume, math.Pi*0.01/3, 1e-9)
	for name, b := range map[string]Body{
		"empty": {}, "one": {Stations: tube.Stations[:1]}, "backwards": {Stations: []BodyStation{{X: 1, Width: 1, Height: 1}, {Width: 1, Height: 1}}},
		"line": {Stations: []BodyStation{{}, {X: 1}}}, "not a number": {Stations: []BodyStation{{X: math.NaN(), Width: 1, Height: 1}, {X: 1, Width: 1, Height: 1}}},
	} {
		if _, ok := MeasureBody(b); ok {
			t.Errorf("%s is no body", name)
		}
	}
}

func TestSmallRules(t *testing.T) {
	t.Parallel()
	near(t, "open doors", OpenDoorsDrag(0.005), 0.00035, 1e-12)
	near(t, "no base", BaseDrag(0.01, 0), 0, 0)
	near(t, "base", BaseDrag(0.0003, 0.01), 0.001674, 1e-6)
	near(t, "no viscosity", Reynolds(1, 1, 1, 0), 0, 0)
	near(t, "whole aeroplane", OswaldFactor(0.98, 8, 0.02), 0.826, 0.01)
	near(t, "natural transition", Transition(FinishPolished, 2e6), 0.25, 1e-12)
	if _, parts := BuildUp(Aircraft{}, at(20)); len(parts) != 0 {
		t.Errorf("nothing gives %v", parts)
	}
	if total, _ := BuildUp(model(), Conditions{Speed: 20, Air: air.Standard(0)}); total != 0 {
		t.Errorf("without reference area: %v", total)
	}
}

func FuzzBuildUp(f *testing.F) {
	f.Add(0.4, 0.2, 1.0, 1.0, 0.15, 30.0, 0.65, true)
	f.Add(0.0, -1.0, 0.0, 0.0, 0.0, 0.0, 0.0, false)
	f.Fuzz(func(t *testing.T, chord, tip, half, length, width, speed, reference float64, square bool) {
		if !(speed >= 0 && speed < 300) || !(reference >= 0.001 && reference < 100) || !(math.Abs(width) < 10) || !(math.Abs(length) < 100) {
			return
		}
		a := model()
		a.Surfaces[0].Stations[0].Chord, a.Surfaces[0].Stations[1].Chord, a.Surfaces[0].Stations[1].Y = chord, tip, half
		a.Bodies[0].Stations = []BodyStation{{}, {X: length, Width: max(0, width), Height: max(0, width)}}
		a.Bodies[0].SquareSided, a.Bodies[0].Pod = square, !square
		a.Sections, a.HingeLines, a.Step = square, square, Step{Height: width, Place: tip}
		a.Duct.MassFlow, a.Gear.DoorsOpen, a.Gear.Retracted = tip, square, square
		total, parts := BuildUp(a, Conditions{Speed: speed, Air: air.Standard(0), ReferenceArea: reference})
		if math.IsNaN(total) || math.IsInf(total, 0) || total < 0 {
			t.Fatalf("%+v gives %v %+v", a, total, parts)
		}
		if s := TotalSpread(parts); !(s >= 0) || math.IsInf(s, 0) {
			t.Fatalf("%+v gives spread %v %+v", a, s, parts)
		}
	})
}

func BenchmarkBuildUp(b *testing.B) {
	c := at(30)
	for name, sections := range map[string]bool{"plate": false, "sections": true} {
		b.Run(name, func(b *testing.B) {
			a := model()
			a.Sections = sections
			b.ReportAllocs()
			for b.Loop() {
				BuildUp(a, c)
			}
		})
	}
}
