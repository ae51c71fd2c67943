package drag

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

var testLifts = []float64{-0.6, -0.3, 0, 0.3, 0.6, 0.9}

// oneStrip returns a wing of one strip whose section carries what the model carries.
func oneStrip(designation string) []SectionStrip {
	return []SectionStrip{{Section: planform.Section{Designation: designation}, Area: 0.5, Reynolds: 3e5, LiftSlope: 5}}
}

func TestProfileRise(t *testing.T) {
	t.Parallel()
	line := LiftLine{Slope: 5}
	flat := ProfileRise(oneStrip("0012"), line, 0.5, section.Roughness{}, testLifts)
	near(t, "no rise without lift", flat[2].Drag, 0, 1e-9)
	near(t, "same both ways", flat[1].Drag, flat[3].Drag, 1e-9)
	own := section.ProfileDrag(planform.Section{Designation: "0012"}, 3e5, 0.6, section.Roughness{}).Value
	least := section.ProfileDrag(planform.Section{Designation: "0012"}, 3e5, 0, section.Roughness{}).Value
	near(t, "the section's own", flat[4].Drag, own-least, 1e-9)
	half := ProfileRise(oneStrip("0012"), line, 1, section.Roughness{}, testLifts)
	for i := range flat {
		near(t, "reference area", half[i].Drag, 0.5*flat[i].Drag, 1e-12)
		near(t, "order", flat[i].Lift, testLifts[i], 0)
	}
	cambered := ProfileRise(oneStrip("4412"), line, 0.5, section.Roughness{}, testLifts)
	if !(cambered[2].Drag > cambered[3].Drag) || !(cambered[0].Drag > cambered[2].Drag) {
		t.Errorf("a cambered section drags least when it lifts: %+v", cambered)
	}
	if got := ProfileRise(oneStrip("0012"), LiftLine{}, 0.5, section.Roughness{}, testLifts); len(got) != 0 {
		t.Errorf("without slope: %v", got)
	}
	if got := ProfileRise(oneStrip("0012"), line, 0, section.Roughness{}, testLifts); len(got) != 0 {
		t.Errorf("without area: %v", got)
	}
}

func TestProfileRiseServesThePolar(t *testing.T) {
	t.Parallel()
	p, _ := parabola(0.02, 7, 0.95)
	p.Profile = ProfileRise(oneStrip("2412"), LiftLine{Slope: 5}, 0.5, section.Roughness{}, testLifts)
	p.MaximumLift = 0.9
	g := mustGlide(t, p.BestGlide)
	if g.AtEdge || g.Ratio < 5 || g.Ratio > 20 || !(g.Spread > 0) || !g.Drag.Inside {
		t.Errorf("%+v", g)
	}
	ideal, _ := parabola(0.02, 7, 0.95)
	if better := mustGlide(t, ideal.BestGlide); better.Ratio <= g.Ratio {
		t.Errorf("the rise must cost glide: %v against %v", g.Ratio, better.Ratio)
	}
}

func TestSkinFromSections(t *testing.T) {
	t.Parallel()
	a := model()
	plate, _ := BuildUp(a, at(25))
	a.Sections = true
	measured, parts := BuildUp(a, at(25))
	if !(measured < plate) || measured < 0.6*plate {
		t.Errorf("sections %v, plate %v: measured skins lie below plate and form factor at model Reynolds numbers", measured, plate)
	}
	wing := parts[0]
	near(t, "friction gives the area", FrictionArea(wing.Friction, wing.FormFactor, wing.Interference, wing.WettedArea), wing.Area, 1e-12)
	re := at(25).Air.Density * 25 / at(25).Air.Viscosity
	root := section.ProfileDrag(planform.Section{}, re*0.4, 0, section.Roughness{}).Value
	tip := section.ProfileDrag(planform.Section{}, re*0.25, 0, section.Roughness{}).Value
	near(t, "mean of both ends", wing.Area, 0.5*(root+tip)*2*0.94*0.325, 1e-9)
	slow, _ := BuildUp(a, at(0.5))
	a.Sections = false
	same, _ := BuildUp(a, at(0.5))
	near(t, "plate outside the data", slow, same, 1e-15)
}

func TestRougherSectionsNeverDragLess(t *testing.T) {
	t.Parallel()
	for speed := 4.0; speed < 120; speed *= 1.3 {
		last := 0.0
		for _, finish := range []string{FinishPolished, FinishSmooth, FinishOpenFrame, FinishTapedFoam} {
			a := model()
			a.Sections, a.Finish = true, finish
			total, parts := BuildUp(a, at(speed))
			if total < last {
				t.Errorf("%v m/s: %s gives %v after %v", speed, finish, total, last)
			}
			for _, p := range parts {
				if math.IsNaN(p.Spread) || !(p.Spread > 0) {
					t.Errorf("%+v", p)
				}
			}
			last = total
		}
	}
}

func BenchmarkProfileRise(b *testing.B) {
	strips := make([]SectionStrip, 40)
	for i := range strips {
		strips[i] = SectionStrip{Section: planform.Section{Designation: "2412"}, Area: 0.01, Reynolds: 2e5 + 1e4*float64(i), LiftSlope: 5}
	}
	b.ReportAllocs()
	for b.Loop() {
		ProfileRise(strips, LiftLine{Slope: 5}, 0.4, section.Roughness{}, testLifts)
	}
}

func BenchmarkBestGlide(b *testing.B) {
	p, _ := parabola(0.02, 7, 0.95)
	p.Profile = ProfileRise(oneStrip("2412"), LiftLine{Slope: 5}, 0.5, section.Roughness{}, testLifts)
	for b.Loop() {
		if _, err := p.BestGlide(unitLoad); err != nil {
			b.Fatal(err)
		}
	}
}

// TestSpreadOfMeasuredSkins is that of the sections alone: over the drag, it does not depend on the size of the surface.
func TestSpreadOfMeasuredSkins(t *testing.T) {
	t.Parallel()
	foil := planform.Section{Designation: "2412"}
	perMeter := 1e6
	wing := func(root, tip, half float64) planform.Surface {
		return planform.Surface{
			Name: "wing", Mirrored: true, Stations: []planform.Station{{Chord: root, Section: foil}, {Y: half, Chord: tip, Section: foil}},
		}
	}
	end := func(chord float64) section.Drag {
		return leastDrag(section.Prepare(foil), perMeter*chord, section.Roughness{})
	}
	for _, row := range []struct{ root, tip, half float64 }{{0.3, 0.3, 1}, {0.3, 0.3, 0.02}, {0.4, 0.2, 1}, {0.4, 0.2, 0.01}} {
		area, spread, inside := sectionDrag(wing(row.root, row.tip, row.half), "", perMeter)
		root, tip := end(row.root), end(row.tip)
		near(t, "spread over drag", spread, (root.Spread+tip.Spread)/(root.Value+tip.Value), 1e-12)
		near(t, "drag of both sides", area, 0.5*(root.Value+tip.Value)*(row.root+row.tip)*row.half, 1e-12)
		if !inside || !(spread > 0) {
			t.Errorf("%+v: inside %t, spread %g", row, inside, spread)
		}
	}
	bent := wing(0.4, 0.2, 1)
	bent.Stations = append(bent.Stations, planform.Station{Y: 1.5, Chord: 0.1, Section: foil})
	area, spread, _ := sectionDrag(bent, "", perMeter)
	inner, _, _ := sectionDrag(wing(0.4, 0.2, 1), "", perMeter)
	ends := []section.Drag{end(0.4), end(0.2), end(0.1)}
	near(t, "both panels drag", area, inner+0.5*(ends[1].Value+ends[2].Value)*0.3*0.5, 1e-12)
	near(t, "both panels spread", spread*area, 0.5*((ends[0].Spread+ends[1].Spread)*0.6+(ends[1].Spread+ends[2].Spread)*0.15), 1e-12)
}
