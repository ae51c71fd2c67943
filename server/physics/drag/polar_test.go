package drag

import (
	"math"
	"strings"
	"testing"
)

// parabola returns a polar without tables and its factor K.
func parabola(zeroLift, aspect, efficiency float64) (Polar, float64) {
	k := InducedFactor(aspect, efficiency)
	return Polar{ZeroLift: zeroLift, Induced: k}, k
}

func TestParabolaHasClosedForms(t *testing.T) {
	t.Parallel()
	for _, zero := range []float64{0.012, 0.02, 0.035, 0.06} {
		for _, aspect := range []float64{3, 6, 10, 16} {
			p, k := parabola(zero, aspect, 0.85)
			p.MaximumLift = 3
			best := mustGlide(t, p.BestGlide)
			near(t, "best lift", best.Lift, math.Sqrt(zero/k), 1e-5)
			near(t, "best ratio", best.Ratio, 0.5/math.Sqrt(k*zero), 1e-9)
			near(t, "angle", math.Tan(best.Angle), 1/best.Ratio, 1e-12)
			near(t, "sink", best.Sink, best.Speed*math.Sin(best.Angle), 1e-12)
			slow := mustGlide(t, p.MinimumSink)
			small := math.Sqrt(3 * zero / k)
			near(t, "least sink lift, small angles", slow.Lift, small, 4*small/(slow.Ratio*slow.Ratio))
			if slow.Sink > best.Sink || slow.Speed > best.Speed || slow.AtEdge {
				t.Errorf("CD0 %v A %v: least sink %+v against best glide %+v", zero, aspect, slow, best)
			}
		}
	}
}

func TestStallEndsTheSearch(t *testing.T) {
	t.Parallel()
	p, _ := parabola(0.035, 6, 0.8)
	p.MaximumLift = 0.5
	for name, find := range map[string]func(Load) (Glide, error){"best": p.BestGlide, "sink": p.MinimumSink} {
		if g := mustGlide(t, find); g.Lift != 0.5 || !g.AtEdge || !g.Drag.Inside {
			t.Errorf("%s: %+v, want the greatest lift, marked", name, g)
		}
	}
	if p.At(0.51).Inside || !p.At(-0.49).Inside {
		t.Error("lift beyond the greatest must be marked outside, lift within must not")
	}
}

func TestPolarAddsItsParts(t *testing.T) {
	t.Parallel()
	p := Polar{
		ZeroLift: 0.02, ZeroLiftSpread: 0.003, Induced: 0.05, ParasiteFactor: 0.01,
		Trim: []PolarPoint{{0, 0.001}, {1, 0.003}},
	}
	d := p.At(0.8)
	near(t, "induced", d.Induced, 0.032, 1e-15)
	near(t, "profile", d.Profile, 0.0064, 1e-15)
	near(t, "trim", d.Trim, 0.0026, 1e-15)
	near(t, "total", d.Total, d.ZeroLift+d.Induced+d.Profile+d.Trim, 1e-15)
	near(t, "spread", d.Spread, math.Sqrt(0.003*0.003+0.0016*0.0016+0.0016*0.0016+0.00078*0.00078), 1e-12)
	p.Profile = []PolarPoint{{-0.2, 0.002}, {0.3, 0}, {1.1, 0.012}}
	near(t, "table instead of the factor", p.At(0.7).Profile, 0.006, 1e-15)
	near(t, "held", p.At(2).Profile, 0.012, 0)
	if p.At(1.05).Inside || !p.At(0.9).Inside || p.At(math.NaN()).Inside {
		t.Error("inside must follow the shorter table")
	}
	ground := p.Near(0.6)
	near(t, "ground", ground.At(0.8).Induced, 0.6*0.032, 1e-15)
	near(t, "on the ground", p.Near(0).At(0.8).Induced, 0, 1e-300)
	near(t, "no more than free air", p.Near(7).At(0.8).Induced, 0.032, 1e-15)
}

func TestGroundEffectLengthensTheGlide(t *testing.T) {
	t.Parallel()
	p, _ := parabola(0.03, 6, 0.8)
	last := 0.0
	for _, factor := range []float64{1, 0.9, 0.7, 0.5, 0.3} {
		got := mustGlide(t, p.Near(factor).BestGlide).Ratio
		if got <= last {
			t.Errorf("factor %v: ratio %v after %v", factor, got, last)
		}
		last = got
	}
}

func TestPolarOfABuildUp(t *testing.T) {
	t.Parallel()
	total, parts := BuildUp(model(), at(30))
	p := NewPolar(parts, 6, 0.95)
	near(t, "zero lift", p.ZeroLift, total, 1e-12)
	near(t, "spread", p.ZeroLiftSpread, TotalSpread(parts), 0)
	k := InducedFactor(6, OswaldFactor(0.95, 6, total))
	near(t, "same as the whole aeroplane's factor", p.At(0.6).Total, total+k*0.36, 1e-12)
	if p.ZeroLiftSpread < 0.05*total || p.ZeroLiftSpread > 0.3*total {
		t.Errorf("spread %v of %v", p.ZeroLiftSpread, total)
	}
}

func TestGlidesRefuseWhatCannotFly(t *testing.T) {
	t.Parallel()
	good, _ := parabola(0.02, 6, 0.8)
	for name, c := range map[string]struct {
		polar Polar
		load  Load
	}{
		"weight": {good, Load{Area: 1, Density: 1}}, "area": {good, Load{Weight: 1, Area: -1, Density: 1}},
		"density": {good, Load{Weight: 1, Area: 1, Density: math.NaN()}}, "polar drag": {Polar{}, unitLoad},
		"polar drag must": {Polar{ZeroLift: math.Inf(1)}, unitLoad},
	} {
		for _, find := range []func(Load) (Glide, error){c.polar.BestGlide, c.polar.MinimumSink} {
			if _, err := find(c.load); err == nil || !strings.Contains(err.Error(), name) {
				t.Errorf("%s: %v must name the field", name, err)
			}
		}
	}
	if g := good.GlideAt(-0.2, unitLoad); g.Speed != 0 || g.Ratio != 0 {
		t.Errorf("no glide on a down load: %+v", g)
	}
}

func TestTrim(t *testing.T) {
	t.Parallel()
	tail := Tail{Area: 0.1, AspectRatio: 4, Efficiency: 0.9, Lift: -0.3, Downwash: 0.04}
	own := 0.2 * 0.09 / (math.Pi * 4 * 0.9)
	near(t, "induced", TrimInduced(tail, 0.5), own-0.2*0.3*math.Sin(0.04), 1e-12)
	tail.Lift = 0
	near(t, "no load", TrimInduced(tail, 0.5), 0, 0)
	near(t, "no reference", TrimInduced(tail, 0), 0, 0)
	near(t, "load", LoadOnTail(2.4, 200, 0.1, 1.2), 0.1, 1e-12)
	near(t, "no arm", LoadOnTail(2.4, 200, 0.1, 0), 0, 0)
	near(t, "control", ControlProfile(0.25, 0.6, degrees(20)), 0.0176141, 1e-7)
	near(t, "both ways", ControlProfile(0.25, 0.6, degrees(-20)), ControlProfile(0.25, 0.6, degrees(20)), 0)
	near(t, "lattice holds the rest", TrimDrag(0.02, 0.02, 0.001), 0.001, 1e-18)
	near(t, "untrimmed factor", TrimDrag(0.021, 0.02, 0.001), 0.002, 1e-15)
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if got := ControlProfile(bad, 0.6, 0.3); !(got >= 0) || got > 1 {
			t.Errorf("chord ratio %v: %v", bad, got)
		}
	}
}

func FuzzPolar(f *testing.F) {
	f.Add(0.02, 0.05, 0.01, 1.2, 0.7, 60.0, 0.65)
	f.Add(0.0, -0.05, 0.0, 0.0, -3.0, 0.0, -1.0)
	f.Fuzz(func(t *testing.T, zero, induced, parasite, maximum, cl, weight, area float64) {
		p := Polar{ZeroLift: zero, Induced: induced, ParasiteFactor: parasite, MaximumLift: maximum}
		for _, x := range []float64{zero, induced, parasite, cl} {
			if !(math.Abs(x) < 1e6) {
				return
			}
		}
		if d := p.At(cl); math.IsNaN(d.Total) || !(d.Spread >= 0) {
			t.Fatalf("%+v at %v: %+v", p, cl, d)
		}
		load := Load{Weight: weight, Area: area, Density: 1.2}
		for _, find := range []func(Load) (Glide, error){p.BestGlide, p.MinimumSink} {
			g, err := find(load)
			if err == nil && (math.IsNaN(g.Ratio) || math.IsNaN(g.Speed) || math.IsNaN(g.Sink) || g.Lift < 0) {
				t.Fatalf("%+v with %+v: %+v", p, load, g)
			}
		}
	})
}
