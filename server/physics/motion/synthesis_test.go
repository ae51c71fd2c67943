package motion

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/field"
)

// laid lays a wish that must be possible.
func laid(t *testing.T, w Wish, area field.Polygon) Plan {
	t.Helper()
	p, err := w.Lay(area)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestLayingACircuitThatFits(t *testing.T) {
	t.Parallel()
	w := Wish{Circuit: racetrack(), Margin: 10, LeastLeg: 40, Along: 150}
	plan := laid(t, w, meadow)
	if !plan.Fits || plan.Circuit.Leg != 100 || plan.LargestSpeed != 24 || plan.LeastBank != w.Bank || plan.StrongestWind <= 0 {
		t.Errorf("%+v", plan)
	}
	w.Leg = 400
	long := laid(t, w, meadow)
	r := w.Radius()
	rise := r * (1 - math.Cos(math.Pi/(2*turnPoints)))
	if want := 2 * (200 - 10 - r - rise); !long.Fits || math.Abs(long.Circuit.Leg-want) > 0.05 || math.Abs(long.Distance-10) > 0.01 {
		t.Errorf("leg %g m with %g m to spare, want %g", long.Circuit.Leg, long.Distance, want)
	}
	w.Middle = field.Point{Y: 120}
	moved := laid(t, w, meadow)
	if !moved.Fits || math.Abs(moved.Moved+120) > 2 || moved.Circuit.Leg < long.Circuit.Leg-4 {
		t.Errorf("middle moved %g m, leg %g", moved.Moved, moved.Circuit.Leg)
	}
	w.LeftHand, w.Middle = false, field.Point{}
	if right := laid(t, w, meadow); right.Fits {
		t.Errorf("a right-hand circuit has 50 m to the east: %+v", right)
	}
}

func TestLayingACircuitThatDoesNotFit(t *testing.T) {
	t.Parallel()
	w := Wish{Circuit: racetrack(), Margin: 20, LeastLeg: 60, Along: 100}
	w.Airspeed, w.Headwind, w.Crosswind = 60, 5, 3
	plan := laid(t, w, meadow)
	if plan.Fits || plan.Circuit.Leg != 60 || plan.StrongestWind != -1 {
		t.Fatalf("%+v", plan)
	}
	check := func(name string, change func(*Circuit), off func(*Circuit)) {
		c := plan.Circuit
		change(&c)
		if fit := c.Fit(meadow, 20); fit.Distance < 20-1e-3 {
			t.Errorf("%s: %g m left", name, fit.Distance)
		}
		off(&c)
		if fit := c.Fit(meadow, 20); fit.Fits {
			t.Errorf("%s: more of it fits as well", name)
		}
	}
	check("speed", func(c *Circuit) { c.Airspeed = plan.LargestSpeed }, func(c *Circuit) { c.Airspeed *= 1.001 })
	w.Airspeed, w.Headwind, w.Crosswind = 28, 0, -5
	plan = laid(t, w, meadow)
	if plan.Fits || !(plan.StrongestWind > 0 && plan.StrongestWind < 5) || !(plan.LeastBank > w.Bank) {
		t.Fatalf("a wind of 5 m/s across fits, or none does: %+v", plan)
	}
	check("wind", func(c *Circuit) { c.Crosswind = -plan.StrongestWind }, func(c *Circuit) { c.Crosswind -= 0.01 })
	check("bank", func(c *Circuit) { c.Bank = plan.LeastBank }, func(c *Circuit) { c.Bank -= 1e-4 })
	w.Margin = 200
	if none := laid(t, w, meadow); none.Fits || none.LargestSpeed != 0 || none.StrongestWind != -1 || none.LeastBank != 0 {
		t.Errorf("a margin wider than the field: %+v", none)
	}
}

func TestLayingRefusesWhatCannotBe(t *testing.T) {
	t.Parallel()
	for expect, change := range map[string]func(*Wish, *field.Polygon){
		"circuit bank: 0 is outside": func(w *Wish, _ *field.Polygon) { w.Bank = 0 },
		"circuit margin: NaN":        func(w *Wish, _ *field.Polygon) { w.Margin = math.NaN() },
		"circuit shortest leg":       func(w *Wish, _ *field.Polygon) { w.LeastLeg = -1 },
		"outline has 2 corners":      func(_ *Wish, g *field.Polygon) { *g = (*g)[:2] },
	} {
		w, area := Wish{Circuit: racetrack()}, append(field.Polygon(nil), meadow...)
		change(&w, &area)
		if _, err := w.Lay(area); err == nil || !strings.HasPrefix(err.Error(), expect) {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
}

func TestLapTimes(t *testing.T) {
	t.Parallel()
	c := racetrack()
	c.Reaction = 1
	calm := c.Lap()
	if want := 2*c.TurnTime() + 2 + (100+100)/24.0 + 2*24/24.0; math.Abs(calm.Time-want) > 24/24.0*2+1e-9 {
		t.Errorf("lap of %g s, about %g", calm.Time, want)
	}
	if want := calm.Length / 24; math.Abs(calm.Time-want) > 0.01*want {
		t.Errorf("lap of %g s over %g m at 24 m/s", calm.Time, calm.Length)
	}
	last := 0.0
	for head := 0.0; head < 24; head += 4 {
		c.Headwind = head
		lap := c.Lap()
		if lap.Time < last {
			t.Errorf("headwind %g: lap of %g s after %g", head, lap.Time, last)
		}
		last = lap.Time
	}
	c.Headwind = 30
	if lap := c.Lap(); !math.IsInf(lap.Time, 1) {
		t.Errorf("makes way against a wind faster than itself: %g s", lap.Time)
	}
	c.Headwind, c.Crosswind = 0, 30
	if lap := c.Lap(); !math.IsInf(lap.Time, 1) {
		t.Errorf("holds its leg in a crosswind faster than itself: %g s", lap.Time)
	}
}

func TestLapSeen(t *testing.T) {
	t.Parallel()
	c := racetrack()
	pilot := field.Point{X: 10}
	lap := c.Lap()
	all := lap.Seen(pilot, 40, 2, 1e4)
	if math.Abs(all.Share-1) > 1e-9 || all.TimeOut != 0 {
		t.Errorf("within ten kilometres %g of the lap, out %g s", all.Share, all.TimeOut)
	}
	far, _, _, _ := spans(c.Path())
	if all.Farthest < math.Hypot(10-far, 40)-1 || all.Farthest > math.Hypot(200, 200) {
		t.Errorf("farthest %g m at %v", all.Farthest, all.At)
	}
	if want := 2 * math.Atan(1/all.Farthest); math.Abs(all.LeastAngle-want) > 1e-12 {
		t.Errorf("seen under %g, want %g", all.LeastAngle, want)
	}
	last := 1.0
	for reach := 150.0; reach >= 30; reach -= 20 {
		s := lap.Seen(pilot, 40, 2, reach)
		if s.Share > last+1e-9 {
			t.Errorf("share grows to %g as the range shrinks to %g", s.Share, reach)
		}
		last = s.Share
	}
	if last != 0 || lap.Seen(pilot, 40, 2, 30).TimeOut < lap.Time-1e-9 {
		t.Errorf("within less than its height %g of the lap is seen", last)
	}
}

func TestSightOfModels(t *testing.T) {
	t.Parallel()
	minutes := 180 * 60 / math.Pi
	checkPublished(t, "sight_of_models", map[string]method{
		"attitude":  func(in inputs) float64 { return AttitudeRange(in["size"]) },
		"detection": func(in inputs) float64 { return DetectionRange(in["visibility"]) },
		"sight":     func(in inputs) float64 { return SightRange(in["size"], in["visibility"]) },
		"range":     func(in inputs) float64 { return VisualRange(in["size"], Acuity) },
		"angle": func(in inputs) float64 {
			c := Lap{Points: []LapPoint{{field.Point{X: in["distance"]}, 0}, {field.Point{X: in["distance"]}, 1}}, Time: 1}
			return c.Seen(field.Point{}, 0, in["size"], 1).LeastAngle * minutes
		},
		"half-detection": func(inputs) float64 { return HalfDetection * minutes },
		"crossing": func(in inputs) float64 {
			return Circuit{Airspeed: in["speed"]}.legTime(field.Point{}, field.Point{X: in["distance"]})
		},
	})
}

func BenchmarkLay(b *testing.B) {
	w := Wish{Circuit: racetrack(), Margin: 20, LeastLeg: 60, Along: 100}
	w.Airspeed, w.Headwind = 60, 5
	for b.Loop() {
		if _, err := w.Lay(meadow); err != nil {
			b.Fatal(err)
		}
	}
}
