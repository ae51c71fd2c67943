package drag

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/planform"
)

// larger returns a model with all lengths times a factor.
func larger(a Aircraft, k float64) Aircraft {
	surfaces := make([]planform.Surface, len(a.Surfaces))
	for i, s := range a.Surfaces {
		stations := make([]planform.Station, len(s.Stations))
		for j, p := range s.Stations {
			p.X, p.Y, p.Z, p.Chord = k*p.X, k*p.Y, k*p.Z, k*p.Chord
			stations[j] = p
		}
		s.Stations = stations
		surfaces[i] = s
	}
	bodies := make([]Body, len(a.Bodies))
	for i, b := range a.Bodies {
		stations := make([]BodyStation, len(b.Stations))
		for j, p := range b.Stations {
			stations[j] = BodyStation{X: k * p.X, Width: k * p.Width, Height: k * p.Height, Z: k * p.Z}
		}
		b.Stations, b.BaseArea = stations, k*k*b.BaseArea
		bodies[i] = b
	}
	return Aircraft{Surfaces: surfaces, Bodies: bodies, Finish: a.Finish, Leakage: a.Leakage}
}

func TestFrictionFallsWithReynoldsNumber(t *testing.T) {
	t.Parallel()
	for _, x := range []float64{0, 0.05, 0.1, 0.3, 0.5, 1} {
		last := math.Inf(1)
		for re := 2e4; re < 1e9; re *= 1.3 {
			cf := Friction(re, x)
			if cf >= last {
				t.Errorf("transition %v, Re %.3g: %v after %v", x, re, cf, last)
			}
			last = cf
		}
	}
}

func TestLargerModelsRubLess(t *testing.T) {
	t.Parallel()
	for _, finish := range []string{FinishOpenFrame, FinishTapedFoam} {
		a := model()
		a.Finish = finish
		_, small := BuildUp(larger(a, 1), at(25))
		_, large := BuildUp(larger(a, 2), at(25))
		for i := range small {
			if small[i].Friction > 0 && !(large[i].Friction < small[i].Friction) {
				t.Errorf("%s %s: friction %v at twice the size, %v before", finish, small[i].Name, large[i].Friction, small[i].Friction)
			}
		}
	}
}

func TestRougherFinishNeverLowersDrag(t *testing.T) {
	t.Parallel()
	order := []string{FinishPolished, FinishSmooth, FinishOpenFrame, FinishTapedFoam}
	for _, size := range []float64{0.3, 1, 3} {
		for speed := 4.0; speed < 120; speed *= 1.25 {
			last := 0.0
			for _, finish := range order {
				a := larger(model(), size)
				a.Finish = finish
				total, _ := BuildUp(a, at(speed))
				if total < last {
					t.Errorf("%v m/s, size %v: %s gives %v after %v", speed, size, finish, total, last)
				}
				last = total
			}
		}
	}
}

func TestStepsTripTheLayer(t *testing.T) {
	t.Parallel()
	const perMeter = 30 / 1.5e-5
	natural := 0.5
	near(t, "none", Tripped(natural, Step{}, 0.3, perMeter), natural, 0)
	near(t, "low step", Tripped(natural, Step{Height: 0.05e-3, Place: 0.1}, 0.3, perMeter), natural, 0)
	near(t, "high step", Tripped(natural, Step{Height: 0.6e-3, Place: 0.1}, 0.3, perMeter), 0.1, 0)
	near(t, "behind transition", Tripped(natural, Step{Height: 5e-3, Place: 0.7}, 0.3, perMeter), natural, 0)
	near(t, "at the edge", Tripped(natural, Step{Height: 0.6e-3}, 0.3, perMeter), 0, 0)
	last := 0.0
	for height := 1e-5; height < 3e-3; height *= 1.3 {
		now := TripReynolds(height, 0.03, perMeter)
		if now <= last {
			t.Errorf("step %v: %v after %v", height, now, last)
		}
		last = now
	}
	a := model()
	a.Finish = FinishPolished
	clean, _ := BuildUp(a, at(40))
	a.Step = Step{Height: 1e-3, Place: 0.05}
	if stepped, _ := BuildUp(a, at(40)); stepped <= clean {
		t.Errorf("a step gives %v, clean %v", stepped, clean)
	}
}

func TestSpeedRatioRises(t *testing.T) {
	t.Parallel()
	last := -1.0
	for eta := 0.0; eta < 8; eta += 0.05 {
		u := PlateSpeedRatio(eta)
		if u < last || u > 1 {
			t.Errorf("eta %v: %v after %v", eta, u, last)
		}
		last = u
	}
}

func TestSharesAndSpreads(t *testing.T) {
	t.Parallel()
	a := model()
	a.HingeLines = true
	a.Surfaces[0].Controls = []planform.Control{{Name: "aileron", Inner: 0.5, Outer: 0.9, ChordRatio: 0.2}}
	total, parts := BuildUp(a, at(30))
	sorted := Breakdown(parts)
	share, linear, square := 0.0, 0.0, 0.0
	for i, p := range sorted {
		share += p.Share
		linear += p.Spread
		square += p.Spread * p.Spread
		if p.Source == "" || !(p.Spread > 0) || !(p.Share > 0) || (i > 0 && p.Area > sorted[i-1].Area) {
			t.Errorf("%d: %+v", i, p)
		}
	}
	near(t, "shares", share, 1, 1e-12)
	if s := TotalSpread(parts); s < math.Sqrt(square) || s > linear {
		t.Errorf("spread %v of %v must lie between independent %v and common %v", s, total, math.Sqrt(square), linear)
	}
	if len(sorted) != len(parts) || parts[0].Name != "wing" {
		t.Error("the breakdown must leave the build-up's order alone")
	}
}

func TestJunctions(t *testing.T) {
	t.Parallel()
	low := model()
	low.Surfaces[0].Stations[0].Z, low.Surfaces[0].Stations[1].Z = -0.07, -0.07
	wing := low.Surfaces[0]
	near(t, "mid", JunctionOf(model().Surfaces[0], model()).Factor, 1, 0)
	near(t, "low", JunctionOf(wing, low).Factor, 1.25, 0)
	low.Filleted = true
	near(t, "fillet", JunctionOf(wing, low).Factor, 1, 0)
	twin := Aircraft{Surfaces: []planform.Surface{{Role: planform.RoleFin, Mirrored: true}, {Role: planform.RoleTailplane}}}
	near(t, "twin fins", JunctionOf(twin.Surfaces[1], twin).Factor, 1.08, 0)
	for role, want := range map[string]float64{planform.RoleVTail: 1.03, planform.RoleWinglet: 1.04, planform.RoleCanard: 1.04, planform.RoleFin: 1.04} {
		near(t, role, JunctionOf(planform.Surface{Role: role}, Aircraft{}).Factor, want, 0)
	}
	near(t, "unknown mount", podJunction("").Factor, 1.3, 0)
}

func TestPodsUpsweepAndBases(t *testing.T) {
	t.Parallel()
	pod := Body{Name: "pod", Pod: true, Stations: []BodyStation{{}, {X: 0.1, Width: 0.1, Height: 0.1}, {X: 0.4, Width: 0.06, Height: 0.06}}}
	last := 0.0
	for _, mount := range []string{MountFar, MountNear, MountFlush} {
		pod.Mount = mount
		total, parts := BuildUp(Aircraft{Bodies: []Body{pod}}, at(30))
		if total <= last || parts[0].Kind != KindPod {
			t.Errorf("%s: %v after %v, %+v", mount, total, last, parts[0])
		}
		last = total
	}
	body := Body{Name: "body", Stations: []BodyStation{{}, {X: 0.5, Width: 0.2, Height: 0.2}, {X: 1.5, Width: 0.05, Height: 0.05, Z: 0.1}}}
	near(t, "upsweep", Upsweep(body), math.Atan(0.1), 1e-12)
	_, parts := BuildUp(Aircraft{Bodies: []Body{body}}, at(30))
	if len(parts) != 2 || parts[1].Kind != KindUpsweep {
		t.Fatalf("parts %+v", parts)
	}
	near(t, "upsweep area", parts[1].Area, UpsweepDrag(math.Atan(0.1), math.Pi/4*0.04), 1e-12)
	body.Stations[2].Z = -0.1
	near(t, "downsweep", Upsweep(body), 0, 0)
	near(t, "no stations", Upsweep(Body{}), 0, 0)
}

func TestGearStates(t *testing.T) {
	t.Parallel()
	g := Gear{Wheels: []Wheel{{Diameter: 0.1, Width: 0.03}}, StrutFrontalArea: 0.002}
	out := GearDrag(g, 1e4)
	g.DoorsOpen = true
	near(t, "open doors", GearDrag(g, 1e4), 1.07*out, 1e-12)
	g.Retracted = true
	near(t, "open wells", GearDrag(g, 1e4), 0.07*out, 1e-12)
	g.DoorsOpen = false
	near(t, "away", GearDrag(g, 1e4), 0, 0)
	skid := Gear{SkidFrontalArea: 0.001}
	near(t, "skid", GearDrag(skid, 1e4), 1.2*0.87*0.001, 1e-15)
}

func TestDuct(t *testing.T) {
	t.Parallel()
	d := Duct{IntakeArea: 0.01, Length: 0.6}
	unknown := ductParts(d, FinishSmooth, at(40))
	near(t, "no flow known", float64(len(unknown)), 1, 0)
	d.MassFlow = 0.5 * at(40).Air.Density * 40 * 0.01
	half := ductParts(d, FinishSmooth, at(40))
	near(t, "spillage", half[1].Area, 0.3*0.25*0.01, 1e-12)
	if half[0].Area >= unknown[0].Area {
		t.Errorf("slower air inside must rub less: %v against %v", half[0].Area, unknown[0].Area)
	}
	d.SharpLip = true
	near(t, "sharp lip", ductParts(d, FinishSmooth, at(40))[1].Area, 0.25*0.01, 1e-12)
	near(t, "full", SpillageDrag(1, 0.01, 1), 0, 0)
	near(t, "stopped", SpillageDrag(0, 0.01, 1), 0.01, 0)
	near(t, "ram", RamArea(0.3, 1.2, 50), 0.01, 1e-12)
	near(t, "standing", RamArea(0.3, 1.2, 0), 0, 0)
}

func TestCheckNamesTheField(t *testing.T) {
	t.Parallel()
	if err := Check(model(), at(30)); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*Aircraft, *Conditions){
		"speed":          func(_ *Aircraft, c *Conditions) { c.Speed = -1 },
		"reference area": func(_ *Aircraft, c *Conditions) { c.ReferenceArea = math.NaN() },
		"leakage":        func(a *Aircraft, _ *Conditions) { a.Leakage = math.Inf(1) },
		"step height":    func(a *Aircraft, _ *Conditions) { a.Step.Height = -1e-3 },
		"surfaces[1]":    func(a *Aircraft, _ *Conditions) { a.Surfaces[1].Stations = nil },
		"bodies[0] base": func(a *Aircraft, _ *Conditions) { a.Bodies[0].BaseArea = -1 },
		"bodies[0] w":    func(a *Aircraft, _ *Conditions) { a.Bodies[0].Stations[2].Width = -1 },
		"wheels[1] w":    func(a *Aircraft, _ *Conditions) { a.Gear.Wheels[1].Width = -1 },
		"strut frontal":  func(a *Aircraft, _ *Conditions) { a.Gear.StrutFrontalArea = -1 },
		"items[0] front": func(a *Aircraft, _ *Conditions) { a.Items[0].FrontalArea = -1 },
		"items[0] count": func(a *Aircraft, _ *Conditions) { a.Items[0].Count = -1 },
		"duct length":    func(a *Aircraft, _ *Conditions) { a.Duct.Length = math.NaN() },
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			a, c := model(), at(30)
			spoil(&a, &c)
			if err := Check(a, c); err == nil || !strings.Contains(err.Error(), name) {
				t.Errorf("error %v must name %s", err, name)
			}
			total, parts := BuildUp(a, c)
			if math.IsNaN(total) || math.IsInf(total, 0) || total < 0 {
				t.Errorf("total %v", total)
			}
			for _, p := range parts {
				if math.IsNaN(p.Area) || p.Area < 0 || math.IsInf(p.Area, 0) {
					t.Errorf("%+v", p)
				}
			}
		})
	}
}

func TestItemsByShape(t *testing.T) {
	t.Parallel()
	last := 0.0
	for length := 0.005; length < 2; length *= 1.4 {
		now := itemPart(Antenna("rod", length, 0.002, 1)).Area
		if now <= last {
			t.Errorf("%v m: %v after %v", length, now, last)
		}
		last = now
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		for _, item := range []Item{Antenna("", bad, 0.002, 1), Antenna("", 0.1, bad, 2), ExposedEngine("", bad, 0.2), ExposedEngine("", 0.1, bad), ControlHorns("", bad, 3)} {
			if a := itemPart(item).Area; !(a >= 0) || math.IsInf(a, 0) {
				t.Errorf("%v: %+v gives %v", bad, item, a)
			}
		}
	}
}

// Gaps of ailerons along two fifths of the span cost 0.0002 of the flapped area square to the sweep, and nothing where they are sealed.
func TestHingeLines(t *testing.T) {
	t.Parallel()
	a := model()
	a.Surfaces[0].Controls = []planform.Control{{Name: "aileron", Inner: 0.5, Outer: 0.9, ChordRatio: 0.2}}
	sealed, _ := BuildUp(a, at(30))
	a.HingeLines = true
	open, parts := BuildUp(a, at(30))
	m, err := planform.Measure(a.Surfaces[0])
	if err != nil {
		t.Fatal(err)
	}
	want := 0.0002 * math.Pow(math.Cos(m.QuarterChordSweep), 2) * 0.4 * m.ExposedArea
	for _, p := range parts {
		if p.Kind == KindHinge {
			near(t, "hinge lines", p.Area, want, 1e-9)
			want = 0
		}
	}
	if want != 0 || !(open > sealed) {
		t.Errorf("no hinge lines among %+v", parts)
	}
}
