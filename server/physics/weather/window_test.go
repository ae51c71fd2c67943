package weather

import (
	"math"
	"math/bits"
	"testing"
)

func TestRoseFindsTheLimitsOfAStrip(t *testing.T) {
	t.Parallel()
	strip := degrees(210)
	holds := func(speed, from float64) bool {
		return Headwind(speed, from, strip) >= -2 && math.Abs(Crosswind(speed, from, strip)) <= 5
	}
	search := Search{Top: 12, Tolerance: 0.1, Probes: 5}
	windows, err := search.Rose(Directions(36), holds)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range windows {
		off := w.From - strip
		want := 12.0
		if c := math.Cos(off); c < 0 {
			want = min(want, -2/c)
		}
		if s := math.Abs(math.Sin(off)); s > 0 {
			want = min(want, 5/s)
		}
		if w.None || w.Split || w.Least != 0 || !(w.Most <= want+1e-9 && w.Most >= want-0.1-1e-9) || w.Open != (want >= 12-1e-9) {
			t.Errorf("from %g: %+v, want up to %g", w.From, w, want)
		}
		if most := 5 + 2*bits.Len(uint(math.Ceil(12/4/0.1))); w.Evaluations > most {
			t.Errorf("from %g: %d evaluations, want at most %d", w.From, w.Evaluations, most)
		}
	}
}

func TestWindowWithALeastWind(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ least, most float64 }{{3, 9}, {0, 4.4}, {5.9, 6.1}, {2.2, 40}} {
		windows, err := Search{Top: 12, Tolerance: 0.01, Probes: 5}.Rose([]float64{1}, func(speed, _ float64) bool { return speed >= c.least && speed <= c.most })
		if err != nil {
			t.Fatal(err)
		}
		w := windows[0]
		if w.None || w.Split || w.Least < c.least || w.Least > c.least+0.01 || w.Most > c.most || w.Most < min(12, c.most)-0.01 || w.Open != (c.most >= 12) {
			t.Errorf("%g to %g: %+v", c.least, c.most, w)
		}
	}
}

func TestWindowThatIsNoneOrSplitSaysSo(t *testing.T) {
	t.Parallel()
	windows, err := Search{Top: 8, Tolerance: 0.5, Probes: 5}.Rose([]float64{0, 1}, func(speed, from float64) bool {
		return from == 1 && (speed < 3 || speed > 5)
	})
	if err != nil {
		t.Fatal(err)
	}
	if !windows[0].None || windows[0].Evaluations != 5 {
		t.Errorf("nothing holds: %+v", windows[0])
	}
	if w := windows[1]; !w.Split || w.Least != 0 || w.Most >= 3 || w.Most < 2.5 || w.Open {
		t.Errorf("two ranges: %+v", w)
	}
}

func TestImpossibleSearchesAreRefused(t *testing.T) {
	t.Parallel()
	for _, s := range []Search{
		{0, 1, 5}, {math.NaN(), 1, 5}, {math.Inf(1), 1, 5}, {10, 0, 5}, {10, math.NaN(), 5}, {10, 11, 5}, {10, 1, 1}, {10, 1, 1001},
	} {
		if windows, err := s.Rose(Directions(4), func(float64, float64) bool { return true }); err == nil || windows != nil {
			t.Errorf("%+v is taken", s)
		}
	}
	if len(Directions(-3)) != 0 || len(Directions(4)) != 4 || Directions(4)[3] != 3*math.Pi/2 {
		t.Errorf("directions %v", Directions(4))
	}
}

func FuzzSearch(f *testing.F) {
	f.Add(12.0, 0.5, 5, 3.0, 9.0)
	f.Fuzz(func(t *testing.T, top, tolerance float64, probes int, least, most float64) {
		if top/tolerance > 1e6 {
			return
		}
		holds := func(speed, _ float64) bool { return speed >= least && speed <= most }
		windows, err := Search{top, tolerance, probes}.Rose([]float64{0}, holds)
		if err != nil || windows[0].None {
			return
		}
		if w := windows[0]; w.Split || !holds(w.Least, 0) || !holds(w.Most, 0) || w.Least > w.Most || w.Most > top {
			t.Errorf("%g to %g of %g: %+v", least, most, top, w)
		}
	})
}
