package motion

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

// meadow is a field of 400 m by 300 m whose launch axis runs north along x = 0.
var meadow = field.Polygon{{X: -250, Y: -200}, {X: 50, Y: -200}, {X: 50, Y: 200}, {X: -250, Y: 200}}

// racetrack is a left-hand circuit that fits the meadow.
func racetrack() Circuit {
	return Circuit{Leg: 100, LeftHand: true, Airspeed: 24, Bank: degrees(45)}
}

// spans returns the extent of a track east and north, m.
func spans(track field.Line) (west, east, south, north float64) {
	west, south = math.Inf(1), math.Inf(1)
	east, north = math.Inf(-1), math.Inf(-1)
	for _, p := range track {
		west, east = min(west, p.X), max(east, p.X)
		south, north = min(south, p.Y), max(north, p.Y)
	}
	return west, east, south, north
}

func TestCalmCircuitIsARacetrack(t *testing.T) {
	t.Parallel()
	c := racetrack()
	r := c.Radius()
	west, east, south, north := spans(c.Path())
	for name, pair := range map[string][2]float64{
		"west": {west, -2 * r}, "east": {east, 0}, "south": {south, -50 - r}, "north": {north, 50 + r},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9 {
			t.Errorf("%s end at %g, want %g", name, pair[0], pair[1])
		}
	}
	c.LeftHand = false
	if west, east, _, _ := spans(c.Path()); math.Abs(west) > 1e-9 || math.Abs(east-2*r) > 1e-9 {
		t.Errorf("right-hand circuit runs from %g to %g", west, east)
	}
}

func TestPathIsClosedAndTurnsAreLong(t *testing.T) {
	t.Parallel()
	c := racetrack()
	c.Headwind, c.Crosswind, c.Reaction = 6, 3, 1
	path := c.Path()
	if path[0] != path[len(path)-1] {
		t.Error("track is not closed")
	}
	turn := c.halfTurn(field.Point{}, c.Heading)
	drift := math.Sqrt(36+9) * c.TurnTime()
	end := turn[len(turn)-1].Minus(field.Point{X: -2 * c.Radius()})
	if math.Abs(end.Length()-drift) > 1e-9 {
		t.Errorf("half turn drifts %g m, want %g", end.Length(), drift)
	}
}

func TestWindAndReactionWidenTheCircuit(t *testing.T) {
	t.Parallel()
	size := func(c Circuit) (float64, float64) {
		west, east, south, north := spans(c.Path())
		return east - west, north - south
	}
	wide, long := size(racetrack())
	late := racetrack()
	late.Reaction = 1
	if _, l := size(late); math.Abs(l-long-2*24) > 1e-9 {
		t.Errorf("a second's reaction lengthens by %g, want 48", l-long)
	}
	windy := racetrack()
	windy.Headwind = 8
	if _, l := size(windy); l <= long {
		t.Errorf("headwind does not lengthen: %g after %g", l, long)
	}
	across := racetrack()
	across.Crosswind = 8
	if w, _ := size(across); w <= wide {
		t.Errorf("crosswind does not widen: %g after %g", w, wide)
	}
}

func TestFitNamesTheLargestSpeed(t *testing.T) {
	t.Parallel()
	small := racetrack().Fit(meadow, 0)
	if !small.Fits || small.LargestSpeed != 24 || math.Abs(small.Distance-50) > 0.2 {
		t.Errorf("does not fit: %+v", small)
	}
	fast := racetrack()
	fast.Airspeed = 60
	fit := fast.Fit(meadow, 20)
	if fit.Fits || fit.Distance >= 0 {
		t.Fatalf("60 m/s fits: %+v", fit)
	}
	// Two radii and 20 m must fit in 250 m to the west, one radius, half the leg and 20 m in 200 m to the north.
	rise := 1 - math.Cos(math.Pi/(2*turnPoints))
	want := math.Sqrt(Gravity * min(230/(2+rise), 130/(1+rise)))
	if math.Abs(fit.LargestSpeed-want) > 1e-4 {
		t.Errorf("largest speed %g, want %g", fit.LargestSpeed, want)
	}
	fast.Airspeed = fit.LargestSpeed
	if again := fast.Fit(meadow, 20); !again.Fits {
		t.Errorf("the largest speed does not fit: %+v", again)
	}
	outside := racetrack()
	outside.Middle = field.Point{X: 500}
	if got := outside.Fit(meadow, 0); got.Fits || got.LargestSpeed != 0 {
		t.Errorf("a circuit outside fits: %+v", got)
	}
}

func TestLongestLeg(t *testing.T) {
	t.Parallel()
	c := racetrack()
	leg, fits := c.LongestLeg(meadow, 10)
	rise := c.Radius() * (1 - math.Cos(math.Pi/(2*turnPoints)))
	if want := 2 * (200 - 10 - c.Radius() - rise); !fits || math.Abs(leg-want) > 2e-3 {
		t.Errorf("longest leg %g, want %g", leg, want)
	}
	c.Airspeed = 80
	if _, fits := c.LongestLeg(meadow, 10); fits {
		t.Error("80 m/s fits without a leg")
	}
}

func TestCircuitCheck(t *testing.T) {
	t.Parallel()
	if err := racetrack().Check(); err != nil {
		t.Error(err)
	}
	bad := racetrack()
	bad.Bank = 0
	if err := bad.Check(); err == nil || err.Error() != "circuit bank: 0 is outside 0.01 to 1.5" {
		t.Errorf("got %v", err)
	}
}
