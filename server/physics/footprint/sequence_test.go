package footprint

import (
	"math"
	"testing"
)

func TestUnshuffledSequenceIsHaltons(t *testing.T) {
	t.Parallel()
	s := newSequence(0)
	for d, want := range [][]float64{
		{0, 1.0 / 2, 1.0 / 4, 3.0 / 4, 1.0 / 8, 5.0 / 8, 3.0 / 8, 7.0 / 8, 1.0 / 16},
		{0, 1.0 / 3, 2.0 / 3, 1.0 / 9, 4.0 / 9, 7.0 / 9, 2.0 / 9, 5.0 / 9, 8.0 / 9},
		{0, 1.0 / 5, 2.0 / 5, 3.0 / 5, 4.0 / 5, 1.0 / 25, 6.0 / 25, 11.0 / 25, 16.0 / 25},
	} {
		for i, value := range want {
			near(t, "value", s.value(d, i), value, 3e-10)
		}
	}
}

func TestShuffledSequenceFillsEveryInterval(t *testing.T) {
	t.Parallel()
	s := newSequence(sequenceSeed)
	for d, base := range primes {
		cells := base * base
		seen := make([]int, cells)
		for i := range 2 * cells {
			value := s.value(d, i)
			if !(value > 0 && value < 1) {
				t.Fatalf("base %d, point %d: %g", base, i, value)
			}
			seen[int(value*float64(cells))]++
		}
		for cell, count := range seen {
			if count != 2 {
				t.Errorf("base %d: %d points in interval %d of %d, want 2", base, count, cell, cells)
			}
		}
	}
}

func TestPairsOfPlacesAreEven(t *testing.T) {
	t.Parallel()
	s := newSequence(sequenceSeed)
	for d := range dimensions {
		for e := range d {
			sum := 0.0
			for i := range 1000 {
				p := s.point(i)
				sum += (p[d] - 0.5) * (p[e] - 0.5)
			}
			if correlation := sum / 1000 * 12; math.Abs(correlation) > 0.13 {
				t.Errorf("places %d and %d of the points go together by %g", d, e, correlation)
			}
		}
	}
}

func TestSequenceStaysAsItIs(t *testing.T) {
	t.Parallel()
	sum := uint64(0)
	s := newSequence(sequenceSeed)
	for i := range 1000 {
		for _, value := range s.point(i) {
			sum = sum*31 + math.Float64bits(value)
		}
	}
	if want := uint64(0x10169856fa07b840); sum != want {
		t.Errorf("the points changed: %#x, not %#x; every footprint changes with them", sum, want)
	}
}

func TestNormalDeviatesFromTables(t *testing.T) {
	t.Parallel()
	// Percentage points of the normal distribution as printed in tables of statistics.
	for share, want := range map[float64]float64{0.5: 0, 0.75: 0.67449, 0.9: 1.28155, 0.95: 1.64485, 0.975: 1.95996, 0.99: 2.32635, 0.995: 2.57583, 0.999: 3.09023} {
		near(t, "deviate", normalQuantile(share), want, 5e-6)
		near(t, "deviate below", normalQuantile(1-share), -want, 5e-6)
	}
	for share := 1e-6; share < 1; share += 0.01 {
		near(t, "share of deviate", 0.5*math.Erfc(-normalQuantile(share)/math.Sqrt2), share, 1e-8)
		if cut := normalWithin(share); math.Abs(cut) > cutNormal {
			t.Errorf("deviate %g is not cut", cut)
		}
	}
	near(t, "share cut", 0.5*math.Erfc(cutNormal/math.Sqrt2), cutShare, 1e-12)
}
