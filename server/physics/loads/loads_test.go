package loads

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// near fails when two numbers differ by more than a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g within %.2g", what, got, want, tolerance)
	}
}

// jet is a model of 12 kg.
func jet() Aircraft {
	return Aircraft{Mass: 12, Area: 0.65, Chord: 0.325, LiftSlope: 4.56, MaximumLift: 1.1, Density: 1.225}
}

func limits() Limits {
	return Limits{Positive: 6, Negative: -3, TopSpeed: 60, TopGust: 5, DiveGust: 2.5}
}

func mustDiagram(t *testing.T, a Aircraft, l Limits) Diagram {
	t.Helper()
	d, err := a.Diagram(l)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestCornersLieOnTheLines(t *testing.T) {
	t.Parallel()
	d := mustDiagram(t, jet(), limits())
	near(t, "dive speed", d.DiveSpeed, 75, 1e-12)
	for _, corner := range d.Corners {
		b := d.At(corner.Speed)
		lines := map[string]float64{
			CornerStall: b.Upper, CornerManoeuvring: b.Upper, CornerTop: b.Upper, CornerDive: b.Upper,
			CornerInvertedStall: b.Lower, CornerInverted: b.Lower, CornerInvertedTop: b.Lower, CornerInvertedDive: b.Lower,
			CornerUpGustTop: b.UpGust, CornerUpGustDive: b.UpGust, CornerUpGustManoeuvring: b.UpGust,
			CornerDownGustTop: b.DownGust, CornerDownGustDive: b.DownGust, CornerDownGustManoeuvred: b.DownGust,
		}
		line, known := lines[corner.Name]
		if !known {
			t.Fatalf("no line for %q", corner.Name)
		}
		near(t, corner.Name, corner.LoadFactor, line, 1e-9)
		if b.Greatest > d.Greatest.LoadFactor || b.Least < d.Least.LoadFactor {
			t.Errorf("%s lies beyond %+v and %+v", corner.Name, d.Greatest, d.Least)
		}
	}
	near(t, "negative limit at the dive speed", d.At(75).Lower, 0, 1e-12)
	near(t, "half way", d.At(67.5).Lower, -1.5, 1e-12)
	near(t, "greatest", d.Greatest.LoadFactor, 6, 1e-9)
}

func TestGustsGoBeyondTheLimitButNotBeyondTheStall(t *testing.T) {
	t.Parallel()
	l := limits()
	l.TopGust = RegulationTopGust
	d := mustDiagram(t, jet(), l)
	if d.Greatest.Name != CornerUpGustTop || d.Greatest.LoadFactor <= l.Positive || !d.At(60).GustBeyondLimit {
		t.Errorf("greatest %+v, want the gust", d.Greatest)
	}
	slow := d.At(20)
	near(t, "greatest at 20 m/s", slow.Greatest, slow.Stall, 1e-12)
	if !slow.StallsBeforeDesignGust || slow.UpGust <= slow.Stall {
		t.Errorf("%+v: the wing stalls before the gust is felt", slow)
	}
	if d.Least.Name != CornerDownGustTop || d.Least.LoadFactor >= l.Negative {
		t.Errorf("least %+v, want the gust", d.Least)
	}
}

func TestHeavierModelsFeelLessOfAGust(t *testing.T) {
	t.Parallel()
	last := math.Inf(1)
	for _, mass := range []float64{2, 4, 8, 12, 24} {
		a := jet()
		a.Mass = mass
		n, err := a.GustIncrement(50, 6)
		if err != nil || n >= last {
			t.Errorf("%v kg: %v after %v, %v", mass, n, last, err)
		}
		twice, _ := a.GustIncrement(100, 6)
		near(t, "in proportion to speed", twice, 2*n, 1e-12)
		speed, found, err := a.GustSpeed(1+n, 6)
		if err != nil || !found {
			t.Errorf("no speed, %v", err)
		}
		near(t, "and back", speed, 50, 1e-9)
		last = n
	}
	if _, found, err := jet().GustSpeed(1, 6); found || err != nil {
		t.Errorf("a load factor of 1 has no speed, %v", err)
	}
	if _, found, err := jet().GustSpeed(5, 0); found || err != nil {
		t.Errorf("no gust, no speed, %v", err)
	}
}

func TestCircuitUsesTheSteepestTurnOrTheFastestGust(t *testing.T) {
	t.Parallel()
	steep := Turn{Bank: degrees(60), Speed: 30}
	use, err := CircuitLoad(jet(), 35, []Turn{{degrees(30), 30}, steep, {degrees(45), 30}}, 4)
	if err != nil || use.Turn != 1 {
		t.Fatalf("%+v, %v", use, err)
	}
	gust, _ := jet().GustIncrement(30, 4)
	near(t, "turn in a gust", use.LoadFactor, 2+gust, 1e-9)
	near(t, "gust's part", use.Gust, gust, 1e-12)
	straight, err := CircuitLoad(jet(), 75, []Turn{{degrees(5), 20}}, 10)
	if err != nil || straight.Turn != -1 || straight.Speed != 75 {
		t.Errorf("%+v, %v, want straight flight", straight, err)
	}
	if _, err := CircuitLoad(jet(), 30, []Turn{{degrees(90), 30}}, 4); !errors.Is(err, ErrInput) {
		t.Errorf("a turn on the wing tip: %v", err)
	}
}

func TestPullUpAndBack(t *testing.T) {
	t.Parallel()
	for _, n := range []float64{1.5, 3, 9} {
		radius := PullUpRadius(45, n)
		near(t, "load", PullUpLoad(45, radius), n, 1e-12)
		near(t, "speed", PullUpSpeed(radius, n), 45, 1e-12)
	}
	if PullUpRadius(45, 1) != 0 || PullUpLoad(45, 0) != 0 || PullUpSpeed(0, 3) != 0 || PullUpSpeed(10, 0.5) != 0 || TurnLoad(2) != 0 || TurnLoad(math.NaN()) != 0 {
		t.Error("what cannot be must be 0")
	}
}

func TestErrorsNameTheField(t *testing.T) {
	t.Parallel()
	broken := jet()
	broken.LiftSlope = math.NaN()
	_, slope := broken.Diagram(limits())
	wrong := limits()
	wrong.DiveSpeed = 30
	_, dive := jet().Diagram(wrong)
	_, places := Integrate(nil, nil, Axis{}, []float64{-1})
	_, mass := Integrate(nil, []Item{{Mass: -1}}, Axis{}, nil)
	_, force := Integrate([]Strip{{Force: Line{PerLoad: math.Inf(1)}}}, nil, Axis{}, nil)
	_, cuts := SchrenkStrips([]Cut{{0, 1}}, 1, 10)
	for field, err := range map[string]error{"liftSlope": slope, "diveSpeed": dive, "places": places, "items.mass": mass, "strips.force": force, "cuts": cuts} {
		if !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

// errorNames is true for errors that this package may give.
func errorNames(err error) bool {
	return errors.Is(err, ErrOutOfRange) || errors.Is(err, ErrInput) && strings.Contains(err.Error(), " must ")
}
