package weather

import (
	"math"
	"strings"
	"testing"
)

func TestComponentsHoldEveryWindOfTheBand(t *testing.T) {
	t.Parallel()
	for _, w := range []Wind{
		{Speed: 5, Gust: 8, From: degrees(240)}, {Speed: 5, Gust: 12, From: degrees(350), Left: degrees(30), Right: degrees(50)},
		{Speed: 3, Gust: 3, From: degrees(10), Left: degrees(170), Right: degrees(20)}, AnyDirection(4, 6),
	} {
		for heading := 0.0; heading < 360; heading += 11 {
			checkBand(t, w, degrees(heading))
		}
	}
}

// checkBand compares the components with winds tried one by one.
func checkBand(t *testing.T, w Wind, heading float64) {
	t.Helper()
	got := w.Over(heading)
	tried := Components{Head: Range{math.Inf(1), math.Inf(-1)}, Cross: Range{math.Inf(1), math.Inf(-1)}}
	for step := range 721 {
		from := w.From - w.Left + (w.Left+w.Right)*float64(step)/720
		for _, speed := range []float64{w.Lull(), w.Speed, w.Gust} {
			tried.Head.take(speed * math.Cos(from-heading))
			tried.Cross.take(speed * math.Sin(from-heading))
		}
	}
	near := w.Gust * 1e-4
	for _, pair := range [][2]float64{
		{got.Head.Least, tried.Head.Least}, {-got.Head.Most, -tried.Head.Most}, {got.Cross.Least, tried.Cross.Least}, {-got.Cross.Most, -tried.Cross.Most},
	} {
		if !(pair[0] <= pair[1]+1e-12 && pair[0] >= pair[1]-near) {
			t.Errorf("%+v over %g: %+v, tried %+v", w, heading, got, tried)
		}
	}
	if want := max(got.Cross.Most, -got.Cross.Least); got.WorstCross != want {
		t.Errorf("worst cross %g, want %g", got.WorstCross, want)
	}
}

func TestWindFromNowhereIsWorstAcross(t *testing.T) {
	t.Parallel()
	got := AnyDirection(4, 7).Over(1.234)
	for _, pair := range [][2]float64{{got.Head.Least, -7}, {got.Head.Most, 7}, {got.WorstCross, 7}} {
		if math.Abs(pair[0]-pair[1]) > 1e-12 {
			t.Errorf("%+v", got)
		}
	}
}

func TestGustFloor(t *testing.T) {
	t.Parallel()
	if gust, estimated := GustFloor(5, 9, OpenGrass); gust != 9 || estimated {
		t.Errorf("reported gust: %g, %t", gust, estimated)
	}
	for _, reported := range []float64{0, 5, math.NaN()} {
		gust, estimated := GustFloor(5, reported, OpenGrass)
		if math.Abs(gust-5*LeastGustFactor(OpenGrass)) > 1e-12 || !estimated {
			t.Errorf("no gust (%g): %g, %t", reported, gust, estimated)
		}
	}
}

func TestImpossibleWindsAreNamed(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, c := range []struct {
		wind  Wind
		names string
	}{
		{Wind{Speed: -1}, "wind speed"}, {Wind{Speed: nan, Gust: 1}, "wind speed"}, {Wind{Speed: 2, Gust: 1}, "gust"}, {Wind{Speed: 2, Gust: nan}, "gust"},
		{Wind{From: nan}, "direction"}, {Wind{Left: -1}, "sector"}, {Wind{Right: 4}, "sector"},
	} {
		if err := c.wind.Check(); err == nil || !strings.Contains(err.Error(), c.names) {
			t.Errorf("%+v: %v", c.wind, err)
		}
	}
}

// afternoon is a forecast of three changes.
func afternoon(t *testing.T) Forecast {
	t.Helper()
	f, err := NewForecast([]Change{
		{0, Wind{Speed: 2, Gust: 3, From: degrees(350)}}, {3600, Wind{Speed: 6, Gust: 9, From: degrees(30)}}, {7200, Wind{Speed: 4, Gust: 5, From: degrees(30)}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestForecastGoesTheShortWayRound(t *testing.T) {
	t.Parallel()
	f := afternoon(t)
	for moment, want := range map[float64]Wind{
		-100: {Speed: 2, Gust: 3, From: 350}, 0: {Speed: 2, Gust: 3, From: 350}, 900: {Speed: 3, Gust: 4.5, From: 360},
		1800: {Speed: 4, Gust: 6, From: 370}, 3600: {Speed: 6, Gust: 9, From: 390}, 5400: {Speed: 5, Gust: 7, From: 390}, 9999: {Speed: 4, Gust: 5, From: 390},
	} {
		got := f.At(moment)
		off := math.Mod(got.From*180/math.Pi-want.From+720, 360)
		if math.Abs(got.Speed-want.Speed) > 1e-12 || math.Abs(got.Gust-want.Gust) > 1e-12 || math.Min(off, 360-off) > 1e-9 {
			t.Errorf("at %g: %+v, want %+v", moment, got, want)
		}
	}
	if (Forecast{}).At(5) != (Wind{}) {
		t.Error("no forecast is not calm")
	}
}

func TestWorstOfAPeriod(t *testing.T) {
	t.Parallel()
	f := afternoon(t)
	gust := func(w Wind) float64 { return w.Gust }
	for _, c := range []struct{ begin, end, moment, gust float64 }{{0, 7200, 3600, 9}, {0, 1800, 1800, 6}, {4000, 7000, 4000, 9 - 4*400.0/3600}, {7200, 7200, 7200, 5}, {9000, 10, 9000, 5}} {
		worst := f.Worst(c.begin, c.end, gust)
		if worst.Time != c.moment || math.Abs(worst.Wind.Gust-c.gust) > 1e-9 {
			t.Errorf("%g to %g: %+v, want %g at %g", c.begin, c.end, worst, c.gust, c.moment)
		}
	}
	across := f.Worst(0, 3600, func(w Wind) float64 { return w.Over(degrees(10)).WorstCross })
	if across.Time != 3600 {
		t.Errorf("worst across at %g", across.Time)
	}
}

func TestImpossibleChangesAreNamed(t *testing.T) {
	t.Parallel()
	calm := Wind{}
	for says, changes := range map[string][]Change{
		"there is none": nil, "change 2, time": {{5, calm}, {5, calm}}, "change 1, time": {{math.NaN(), calm}}, "change 2, wind speed": {{5, calm}, {6, Wind{Speed: -1}}},
	} {
		if _, err := NewForecast(changes); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: %v", changes, err)
		}
	}
}

func FuzzForecast(f *testing.F) {
	f.Add(0.0, 3600.0, 2.0, 6.0, 6.1, 0.4, 100.0)
	f.Fuzz(func(t *testing.T, first, second, before, after, from, to, moment float64) {
		forecast, err := NewForecast([]Change{{first, Wind{Speed: before, Gust: before, From: from}}, {second, Wind{Speed: after, Gust: after, From: to}}})
		if err != nil || math.IsNaN(moment) {
			return
		}
		wind := forecast.At(moment)
		if !(wind.Speed >= min(before, after)-1e-9 && wind.Speed <= max(before, after)+1e-9) || math.IsNaN(wind.From) {
			t.Errorf("%g between %g and %g: %+v", moment, first, second, wind)
		}
	})
}
