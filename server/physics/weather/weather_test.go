package weather

import (
	"math"
	"testing"
)

func TestWindProfile(t *testing.T) {
	t.Parallel()
	ground := func(in inputs) Roughness { return Roughness(in["class"]) }
	checkPublished(t, "wind_profile", map[string]method{
		"roughness":   func(in inputs) float64 { return ground(in).Length() },
		"wind-factor": func(in inputs) float64 { return NewProfile(ground(in), 0).Factor(in["height"]) },
		"exponent":    func(in inputs) float64 { return EquivalentExponent(in["height"], ground(in).Length()) },
		"power-law":   func(in inputs) float64 { return PowerLawFactor(in["height"], in["reference"], in["exponent"]) },
		"wind-lost": func(in inputs) float64 {
			p := NewProfile(ground(in), in["high"])
			return in["speed"] * (p.Factor(in["high"]) - p.Factor(in["low"]))
		},
		"gust-factor": func(in inputs) float64 {
			return GustFactor(TurbulenceIntensity(StandardHeight, ground(in).Length()), in["mean"], in["gust"])
		},
		"least-gust": func(in inputs) float64 { return LeastGustFactor(ground(in)) },
	})
}

func TestWindTriangle(t *testing.T) {
	t.Parallel()
	triangle := func(in inputs) Triangle {
		return HoldTrack(in["airspeed"], Headwind(in["wind"], degrees(in["angle"]), 0), Crosswind(in["wind"], degrees(in["angle"]), 0))
	}
	checkPublished(t, "wind_triangle", map[string]method{
		"headwind":     func(in inputs) float64 { return Headwind(in["speed"], degrees(in["from"]), degrees(in["heading"])) },
		"crosswind":    func(in inputs) float64 { return Crosswind(in["speed"], degrees(in["from"]), degrees(in["heading"])) },
		"correction":   func(in inputs) float64 { return triangle(in).Correction * 180 / math.Pi },
		"ground-speed": func(in inputs) float64 { return triangle(in).GroundSpeed },
	})
}

func TestTrackCannotBeHeldAcrossAStrongerWind(t *testing.T) {
	t.Parallel()
	for _, airspeed := range []float64{0, 5, 7.999, math.NaN()} {
		if HoldTrack(airspeed, 0, 8).Holds {
			t.Errorf("airspeed %g holds a track across 8 m/s", airspeed)
		}
	}
}

func TestProfileEdges(t *testing.T) {
	t.Parallel()
	grass := NewProfile(OpenGrass, 0)
	literal := Profile{RoughnessLength: 0.03}
	cases := []struct {
		name   string
		got    float64
		expect float64
	}{
		{"reference height", grass.Factor(10), 1},
		{"within the roughness", grass.Factor(0.02), 0},
		{"below the ground", grass.Factor(-1), 0},
		{"no class, no change", Profile{}.Factor(0.5), 1},
		{"literal profile agrees", literal.Factor(3), grass.Factor(3)},
		{"class that does not exist", Roughness(9).Length(), 0},
		{"gust of no class", LeastGustFactor(0), 1},
	}
	for _, c := range cases {
		if math.Abs(c.got-c.expect) > 1e-15 {
			t.Errorf("%s: got %g, want %g", c.name, c.got, c.expect)
		}
	}
}

func TestRougherGroundGustsMoreAndSlowsMore(t *testing.T) {
	t.Parallel()
	for ground := OpenWater; ground < SuburbOrForest; ground++ {
		if LeastGustFactor(ground) >= LeastGustFactor(ground+1) {
			t.Errorf("class %d gusts as much as the rougher class", ground)
		}
		if NewProfile(ground, 0).Factor(2) <= NewProfile(ground+1, 0).Factor(2) {
			t.Errorf("class %d slows the wind at 2 m as much as the rougher class", ground)
		}
	}
}

func FuzzProfile(f *testing.F) {
	f.Add(0.03, 10.0, 2.0)
	f.Add(20.0, 10.0, -4.0)
	f.Fuzz(func(t *testing.T, z0, reference, height float64) {
		if math.IsNaN(z0) || math.IsNaN(reference) || math.IsNaN(height) || math.IsInf(height, 0) || math.IsInf(reference, 0) || math.IsInf(z0, 0) {
			return
		}
		factor := Profile{RoughnessLength: z0, ReferenceHeight: reference}.Factor(height)
		if math.IsNaN(factor) || factor < 0 {
			t.Errorf("factor %g for roughness %g, reference %g, height %g", factor, z0, reference, height)
		}
	})
}
