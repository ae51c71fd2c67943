package assess

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"pitgate/server/physics/sample"
)

// tree is an input as plain JSON, so that a quantity can be set by its path.
type tree struct{ root map[string]any }

func treeOf(t *testing.T, in Input) tree {
	t.Helper()
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	return tree{root}
}

// quantity returns the quantity at a path; false for what is none of the document's.
func (d tree) quantity(path string) (map[string]any, bool) {
	var at any = d.root
	for _, name := range strings.Split(strings.NewReplacer("[", ".", "]", "").Replace(path), ".") {
		switch here := at.(type) {
		case map[string]any:
			at = here[name]
		case []any:
			i, err := strconv.Atoi(name)
			if err != nil || i >= len(here) {
				return nil, false
			}
			at = here[i]
		}
	}
	q, ok := at.(map[string]any)
	return q, ok && q["value"] != nil
}

func (d tree) input(t *testing.T) Input {
	t.Helper()
	text, err := json.Marshal(d.root)
	if err != nil {
		t.Fatal(err)
	}
	var in Input
	if err := json.Unmarshal(text, &in); err != nil {
		t.Fatal(err)
	}
	return in
}

// trueModel is one synthetic model: what is true of it, what of it was measured, and how far the methods are off for it.
type trueModel struct {
	truth, measured Input
	off             []float64 // deviate of every source that is no quantity of the document
}

// invent draws models around a document: true values up to a few of their spreads away from it, measured values around the true ones with the spread that
// is declared, and errors of the methods.
func invent(t *testing.T, in Input, r *sampling, count int) []trueModel {
	t.Helper()
	n := len(r.sources)
	points, err := sample.New(2*n, count, 4711)
	if err != nil {
		t.Fatal(err)
	}
	var z [][]float64
	for d := range 2 * n {
		z = append(z, points.Deviates(d))
	}
	models := make([]trueModel, count)
	for j := range models {
		truth, measured := treeOf(t, in), treeOf(t, in)
		models[j].off = make([]float64, n)
		for s, source := range r.sources {
			u := source.members[0]
			isTrue, ok := truth.quantity(u.name)
			if !ok {
				models[j].off[s] = z[s][j]
				continue
			}
			value := u.value + offBy(u, 2*z[s][j])
			isTrue["value"] = value
			actual := uncertain{name: u.name, value: value, spread: scaled(u, value)}
			seen := value + offBy(actual, z[n+s][j])
			shown, _ := measured.quantity(u.name)
			shown["value"], shown["spread"] = seen, scaled(u, seen)
		}
		models[j].truth, models[j].measured = truth.input(t), measured.input(t)
	}
	return models
}

// offBy is how far a number lies off for a normal deviate of its error: drawn here by the declared spread alone, not by what is tested. What cannot be
// negative is lognormal with that coefficient of variation, a share of a whole logistic.
func offBy(u uncertain, z float64) float64 {
	switch ratio := u.spread / u.value; {
	case u.support() == proportion:
		return 1/(1+(1/u.value-1)*math.Exp(-u.spread*z/(u.value*(1-u.value)))) - u.value
	case u.support() != positive:
		return u.spread * z
	case ratio > 0.5:
		return math.Max(u.spread*z, -0.99*u.value)
	default:
		return u.value * (math.Exp(z*math.Sqrt(math.Log1p(ratio*ratio))) - 1)
	}
}

// scaled returns the declared spread of an input at another value: the same share of it, or the same number for what has either sign.
func scaled(u uncertain, value float64) float64 {
	if u.support() == positive {
		return u.spread * value / u.value
	}
	return u.spread
}

// Of 200 synthetic models nine in ten have their true answer between the 5 % and the 95 % point of what is computed from their measured values.
func TestBandsCoverTheTruth(t *testing.T) {
	t.Parallel()
	const count, samples = 200, 128
	ids := []string{"stall.speed", "thrust.ratio", "speed.top", "balance.margin_full", "pitch.damping", "roll.rate"}
	in := withoutField(demoInput(t, "redshank_quarry_top.json"))
	whole, err := Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	base := newPass(&in, whole)
	base.walk()
	r, err := base.newSampling(SpreadOptions{Samples: samples})
	if err != nil {
		t.Fatal(err)
	}
	models := invent(t, in, r, count)
	covered := make([][]bool, count)
	each(count, 2, func(int) bool { return true }, func(j int) { covered[j] = models[j].covered(whole, ids, int32(j)) })
	all := 0
	for k, id := range ids {
		inside := 0
		for j := range covered {
			if covered[j] == nil || len(covered[j]) != len(ids) {
				t.Fatalf("model %d has no answer", j)
			}
			if covered[j][k] {
				inside++
			}
		}
		all += inside
		share := float64(inside) / count
		t.Logf("%s: %.3f", id, share)
		// One finding alone scatters by sqrt(0.9 0.1/200) = 0.021.
		if math.Abs(share-0.9) > 0.05 {
			t.Errorf("%s: %.1f %% of the truths are covered", id, 100*share)
		}
	}
	if share := float64(all) / float64(count*len(ids)); share < 0.88 || share > 0.92 {
		t.Errorf("%.1f %% of the truths are covered, want 88 to 92", 100*share)
	}
}

// covered reports for each finding whether its true value lies within the band from the measured values.
func (m *trueModel) covered(whole *Geometry, ids []string, seed int32) []bool {
	truth := newPass(&m.truth, whole)
	truth.walk()
	r, err := truth.newSampling(SpreadOptions{Samples: 16})
	if err != nil || len(r.sources) != len(m.off) {
		return nil
	}
	for s := range r.by {
		r.by[s] = []float64{m.off[s]}
	}
	exact := r.passOf(0)
	exact.walk()
	report, err := whole.Spread(m.measured, SpreadOptions{Samples: 128, Seed: seed})
	if err != nil {
		return nil
	}
	out := make([]bool, 0, len(ids))
	for _, id := range ids {
		value, f := exact.results[indexOf(exact.results, id)].Value, &report.Findings[indexOf(report.Findings, id)]
		if value == nil || f.BandLow == nil {
			return nil
		}
		out = append(out, *f.BandLow <= *value && *value <= *f.BandHigh)
	}
	return out
}
