package loads

import (
	"math"
	"testing"
)

func degrees(value float64) float64 { return value * math.Pi / 180 }

func model(in inputs) Aircraft {
	return Aircraft{Mass: in["mass"], Area: in["area"], Chord: in["chord"], LiftSlope: in["slope"], MaximumLift: 1, Density: in["density"]}
}

// diagram returns the diagram of a row, as much lift upside down.
func diagram(t *testing.T, in inputs, mass float64) Diagram {
	t.Helper()
	a := Aircraft{Mass: mass, Area: in["area"], Chord: 0.3, LiftSlope: 4.5, MaximumLift: in["maximum"], MinimumLift: -in["maximum"], Density: in["density"]}
	d, err := a.Diagram(Limits{Positive: max(1.1, in["limit"]), Negative: -in["limit"], TopSpeed: 60})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestGustsAndManoeuvresAgainstRegulations(t *testing.T) {
	t.Parallel()
	checkPublished(t, "gust_and_manoeuvre", map[string]method{
		"mass-ratio": func(in inputs) float64 { return MassRatio(in["mass"], in["density"], in["chord"], in["slope"]) },
		"alleviation": func(in inputs) float64 {
			return GustAlleviation(in["ratio"])
		},
		"increment": func(in inputs) float64 {
			return GustIncrement(in["density"], in["speed"], in["slope"], in["alleviation"], in["gust"], in["loading"])
		},
		"model-increment": func(in inputs) float64 {
			n, err := model(in).GustIncrement(in["speed"], in["gust"])
			if err != nil {
				t.Error(err)
			}
			return n
		},
		"manoeuvring": func(in inputs) float64 { return diagram(t, in, in["mass"]).ManoeuvringSpeed },
		"inverted":    func(in inputs) float64 { return diagram(t, in, in["mass"]).InvertedSpeed },
		"mass-of-manoeuvring": func(in inputs) float64 {
			in["area"], in["maximum"], in["density"], in["limit"] = 30, 1.5, 1.225, 2.5
			return in["speed"] * diagram(t, in, in["light"]).ManoeuvringSpeed / diagram(t, in, in["heavy"]).ManoeuvringSpeed
		},
		"turn":    func(in inputs) float64 { return TurnLoad(degrees(in["bank"])) },
		"pull-up": func(in inputs) float64 { return PullUpRadius(in["speed"], in["load"]) },
	})
}

// tapered returns the cuts of a straight-tapered half wing of 0.65 m2 on 2 m.
func tapered(taper float64) []Cut {
	root := 0.65 / (1 + taper)
	return []Cut{{0, root}, {1, root * taper}}
}

// rootBending integrates strips at the root.
func rootBending(t *testing.T, strips []Strip, items []Item, loadFactor float64, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	at, err := Integrate(strips, items, Axis{}, []float64{0})
	if err != nil {
		t.Fatal(err)
	}
	return at[0].Bending.At(loadFactor)
}

func TestSpanLoadsAgainstTheory(t *testing.T) {
	t.Parallel()
	const fine = 400
	checkPublished(t, "span_load_theory", map[string]method{
		"elliptic-shear":   func(in inputs) float64 { return EllipticShear(in["lift"], in["share"]) },
		"elliptic-bending": func(in inputs) float64 { return EllipticBending(in["lift"], in["span"], in["share"]) },
		"rectangular":      func(in inputs) float64 { return RectangularBending(in["lift"], in["span"]) },
		"tapered":          func(in inputs) float64 { return TaperedBending(in["lift"], in["span"], in["taper"]) },
		"chord-strips": func(in inputs) float64 {
			strips, err := ChordStrips(tapered(in["taper"]), in["lift"], fine)
			return rootBending(t, strips, nil, 1, err)
		},
		"schrenk": func(in inputs) float64 {
			strips, err := SchrenkStrips(tapered(in["taper"]), in["lift"], fine)
			return rootBending(t, strips, nil, 1, err)
		},
		"schrenk-chord": func(in inputs) float64 {
			return SchrenkChord(chordAt(tapered(in["taper"]), in["y"]), in["y"], in["area"], in["span"])
		},
		"relieved": func(in inputs) float64 {
			strips, err := EllipticStrips(in["span"], in["lift"]/in["load"], fine)
			items := []Item{{Y: in["span"] / 4, Width: in["span"] / 2, Mass: in["wing"] / 2}}
			return rootBending(t, strips, items, in["load"], err)
		},
	})
}
