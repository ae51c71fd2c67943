package footprint

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/field"
)

// ring are waypoints round a circle, clockwise, closed.
func ring(radius, speed float64, corners int) []Waypoint {
	out := make([]Waypoint, 0, corners+1)
	for i := range corners + 1 {
		angle := 2 * math.Pi * float64(i%corners) / float64(corners)
		place := field.Point{X: radius * math.Sin(angle), Y: radius * math.Cos(angle)}
		out = append(out, Waypoint{Place: place, Height: 40, Speed: speed})
	}
	return out
}

func TestAlongACircleHoldsItsBank(t *testing.T) {
	t.Parallel()
	states, err := Along(ring(120, 30, 90), Wind{}, 1.2)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Atan(30 * 30 / (standardGravity * 120))
	for i, s := range states {
		near(t, "bank", s.Bank, want, 2e-3)
		near(t, "heading", math.Mod(s.Heading-(math.Pi/2+2*math.Pi*float64(i)/90)+9*math.Pi, 2*math.Pi), math.Pi, 1e-9)
	}
}

func TestAlongALegPointsIntoTheWind(t *testing.T) {
	t.Parallel()
	path := []Waypoint{{Height: 10, Speed: 20}, {Place: field.Point{Y: 100}, Height: 30, Speed: 20}}
	// From the east: 12 m/s across 20 m/s leave 16 m/s over the ground.
	states, err := Along(path, Wind{Speed: 12, From: math.Pi / 2}, 1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "heading", states[0].Heading, math.Asin(0.6), 1e-12)
	near(t, "climb", math.Tan(states[0].Climb), 20.0/(100.0/16)/20, 1e-12)
	near(t, "bank", states[1].Bank, 0, 1e-12)
}

func TestAlongRefusesWhatCannotBeFlown(t *testing.T) {
	t.Parallel()
	straight := []Waypoint{{Height: 10, Speed: 10}, {Place: field.Point{Y: 100}, Height: 10, Speed: 10}}
	for _, c := range []struct {
		path []Waypoint
		wind Wind
		bank float64
		says string
	}{
		{straight[:1], Wind{}, 1, "two waypoints"},
		{[]Waypoint{straight[0], straight[0]}, Wind{}, 1, "two waypoints"},
		{straight, Wind{Speed: 11, From: 0}, 1, "leg 1"},
		{straight, Wind{Speed: 11, From: math.Pi / 2}, 1, "leg 1"},
		{straight, Wind{}, 2, "greatest bank"},
		{[]Waypoint{{Height: math.NaN(), Speed: 10}, straight[1]}, Wind{}, 1, "waypoint 1: height"},
	} {
		if _, err := Along(c.path, c.wind, c.bank); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("got %v, want an error with %q", err, c.says)
		}
	}
}
