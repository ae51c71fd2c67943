package assess

import (
	"testing"

	"pitgate/server/physics/footprint"
)

// manyLosses are the samples of the reference, and marginTolerance the distance by which fewer may tell more room than they, m.
const (
	manyLosses      = 16384
	marginTolerance = 3.0
)

// lossesOf returns what the link-loss section samples in one of the demonstration's documents.
func lossesOf(t *testing.T, name string) (*pass, footprint.Plan) {
	t.Helper()
	in, whole := preparedDemo(t, name)
	p := newPass(&in, whole)
	p.walk()
	n := p.need()
	plan := p.lossPlan(p.readFailSafe(&n), &n)
	if !n.met() {
		t.Fatal(n.missing)
	}
	return p, plan
}

// marginOf returns the distance of the nearest people from the outline of a number of samples, m.
func (p *pass) marginOf(t *testing.T, plan footprint.Plan, samples int) float64 {
	t.Helper()
	cloud, err := plan.Estimate(p.whole.draws, true)
	if samples == manyLosses {
		plan.Samples = samples
		cloud, err = plan.Sample()
	}
	if err != nil {
		t.Fatal(err)
	}
	outline, err := cloud.Outline(nearlyAll)
	if err != nil {
		t.Fatal(err)
	}
	if inside := cloud.ShareInside(outline); inside < nearlyAll {
		t.Errorf("the outline holds %g of its own impacts", inside)
	}
	var found answer
	p.nearestPeople(outline, p.people(), &found)
	return found.value
}

// TestMarginToPeopleAgainstManyLosses wants the margin of the samples that a run takes within three metres of that of four times as many.
func TestMarginToPeopleAgainstManyLosses(t *testing.T) {
	t.Parallel()
	for _, name := range []string{
		"dabchick_long_acre", "nightjar_long_acre", "sandmartin_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "redshank_quarry_top_headwind",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p, plan := lossesOf(t, name)
			got, want := p.marginOf(t, plan, plan.Samples), p.marginOf(t, plan, manyLosses)
			if got > want+marginTolerance || got < want-2*marginTolerance {
				t.Errorf("margin %.1f m, with %d losses %.1f m", got, manyLosses, want)
			}
		})
	}
}
