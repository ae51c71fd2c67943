package motion

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

func TestTracksLieOnTheField(t *testing.T) {
	t.Parallel()
	l := launches()["hand"]
	l.Distance = 100
	r := mustRun(t, l, light(), grass(2, 3))
	lie := Lie{Origin: field.Point{X: 30, Y: -20}, Heading: degrees(240), Ground: 4, HalfWidth: 2, Spread: 0.1}
	track := r.Track(lie)
	corridor := field.Corridor{Origin: lie.Origin, Heading: lie.Heading}
	for i, p := range r.Path {
		ahead, right := corridor.Along(track[i].Point)
		if math.Abs(ahead-p.Distance) > 1e-9 || math.Abs(right-p.Drift) > 1e-9 || track[i].Height != 4+p.Height {
			t.Errorf("point %d lies %g m ahead, %g m to the right, %g m high: %+v", i, ahead, right, track[i].Height, p)
		}
		if want := 2 + 0.1*max(0, p.Distance); math.Abs(track[i].Spread-want) > 1e-12 {
			t.Errorf("point %d: spread %g, want %g", i, track[i].Spread, want)
		}
	}
	// A hedge of 2.4 m across the way at 60 m: the clearance of the path in space is the one along it, less what the spread meets first.
	at := lie.Origin.Plus(field.Ahead(lie.Heading).Times(60))
	across := field.Right(lie.Heading)
	hedge := field.Standing{Points: []field.Point{at.Minus(across.Times(40)), at.Plus(across.Times(40))}, Ground: []float64{4, 4}, Height: 2.4}
	passing := hedge.Pass(track, 0)
	lowest, _ := r.LowestBetween(60-9, 60+9)
	highest := mustHeight(t, &r, 60)
	if !passing.Over || passing.Above > highest-2.4+1e-6 || passing.Above < lowest-2.4-0.05 {
		t.Errorf("passes %g m over the hedge, between %g and %g", passing.Above, lowest-2.4, highest-2.4)
	}
	lap := racetrack().Track(50, 3)
	if in := meadow.PathClearance(racetrack().Path()); in.Distance < 3 {
		t.Fatalf("the lap leaves the meadow: %+v", in)
	}
	if people := (field.Line{{X: 30, Y: -50}, {X: 30, Y: 50}}).Approach(lap, 0); math.Abs(people.Distance-27) > 1e-6 || math.Abs(people.Slant-math.Hypot(27, 50)) > 1e-3 {
		t.Errorf("people 30 m aside: %+v", people)
	}
}
