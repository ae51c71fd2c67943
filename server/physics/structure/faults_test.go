package structure

import (
	"testing"

	"pitgate/server/physics/loads"
)

// soundWing is a wing of 2 m for a model of 12 kg: a carbon tube to 60 % of the half span, spruce caps all along, a joiner of glass rod.
type soundWing struct {
	stations []Station
	joiner   Joiner
	bolts    Bolts
	at       []loads.Load
}

func newSoundWing(t *testing.T) soundWing {
	t.Helper()
	cuts := []loads.Cut{{Y: 0, Chord: 0.4}, {Y: 1, Chord: 0.25}}
	strips, err := loads.SchrenkStrips(cuts, 12*loads.StandardGravity, 40)
	if err != nil {
		t.Fatal(err)
	}
	items, err := loads.SpreadMass(cuts, 1.6, 40, 0.4, func(float64) float64 { return 0 })
	if err != nil {
		t.Fatal(err)
	}
	caps := Part{Shape: ShapeCapsAndWeb, Material: material(t, "spruce"), Width: 0.02, Depth: 0.04, Cap: 0.006, Web: 0.003}
	w := soundWing{
		stations: []Station{{0, []Part{carbonTube(t), caps}}, {0.6, []Part{caps}}},
		joiner:   Joiner{Part: Part{Shape: ShapeTube, Material: material(t, "carbon tube"), Outer: 0.022, Wall: 0.003}, Engaged: 0.15},
		bolts:    Bolts{0.008, 4, material(t, "nylon")},
	}
	w.at, err = loads.Integrate(strips, items, loads.Axis{}, []float64{0, 0.6})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// stands returns the load factors of spar, joiner and bolts.
func (w soundWing) stands(t *testing.T) map[string]float64 {
	t.Helper()
	spar, err := Assess(w.stations, w.at, false)
	if err != nil {
		t.Fatal(err)
	}
	joiner, err := w.joiner.Assess(w.at[0])
	if err != nil {
		t.Fatal(err)
	}
	bolts, err := w.bolts.Assess(w.at[0].Shear.Times(2))
	if err != nil {
		t.Fatal(err)
	}
	return map[string]float64{"spar": spar.Stands, "joiner": joiner.Stands, "bolts": bolts.Upper}
}

// Each fault planted in a sound wing is found by its own figure, and by no other.
func TestPlantedFaultsAreFoundByTheirOwnFigure(t *testing.T) {
	t.Parallel()
	const want = 6
	for part, plant := range map[string]func(w *soundWing){
		"":       func(*soundWing) {},
		"spar":   func(w *soundWing) { w.stations[0].Parts[0].Wall *= 0.4; w.stations[0].Parts[1].Cap *= 0.4 },
		"joiner": func(w *soundWing) { w.joiner.Engaged = 0.05 },
		"bolts":  func(w *soundWing) { w.bolts.Count, w.bolts.Diameter = 2, 0.004 },
	} {
		w := newSoundWing(t)
		plant(&w)
		for name, n := range w.stands(t) {
			if found := n < want; found != (name == part) {
				t.Errorf("fault %q: %s stands %.2f", part, name, n)
			}
		}
	}
}
