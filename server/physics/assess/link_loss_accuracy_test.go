package assess

import (
	"math"
	"testing"

	"pitgate/server/physics/footprint"
)

// manyLosses are the samples of the reference.
const manyLosses = 16384

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

// marginOfMany returns the distance of the nearest people from the outline of many losses flown in fine steps, m.
func (p *pass) marginOfMany(t *testing.T, plan footprint.Plan) float64 {
	t.Helper()
	plan.Samples = manyLosses
	cloud, err := plan.Sample()
	if err != nil {
		t.Fatal(err)
	}
	outline, err := cloud.Outline(nearlyAll)
	if err != nil {
		t.Fatal(err)
	}
	_, margin := nearestTo(outline, p.people())
	return margin
}

// TestMarginToPeopleAgainstManyLosses wants the margin of the losses that a run flies within two and a half of its standard errors by chance of that of
// many more, with no more than three metres of room that those do not leave, and as many losses as settle on which side of the limit it lies.
func TestMarginToPeopleAgainstManyLosses(t *testing.T) {
	t.Parallel()
	for _, name := range []string{
		"dabchick_long_acre", "nightjar_long_acre", "sandmartin_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "redshank_quarry_top_headwind",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p, plan := lossesOf(t, name)
			falling := losing{plan: plan, people: p.people(), draws: p.whole.draws, placesOnly: true}
			got, err := falling.fall()
			if err != nil {
				t.Fatal(err)
			}
			if inside := got.cloud.ShareInside(got.outline); inside < nearlyAll {
				t.Errorf("the outline holds %g of its own impacts", inside)
			}
			want, flown := p.marginOfMany(t, plan), len(got.cloud.Places())
			if got.margin > want+3 || math.Abs(got.margin-want) > 2.5*got.chance || got.chance > 20 {
				t.Errorf("margin %.1f m, give or take %.1f m, with %d losses; %.1f m with %d", got.margin, got.chance, flown, want, manyLosses)
			}
			if flown < lossCounts[1] && math.Abs(got.margin) < clearOf*got.chance {
				t.Errorf("%d losses leave the margin at %.1f m, give or take %.1f m", flown, got.margin, got.chance)
			}
		})
	}
}
