package sample

import (
	"math"
	"slices"
	"testing"
)

func TestQuantile(t *testing.T) {
	t.Parallel()
	ten := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}
	for _, c := range []struct {
		sorted      []float64
		share, want float64
	}{
		{ten, 0.5, 5.5}, {ten, 0.05, 1}, {ten, 0.95, 10}, {ten, 0.1, 1.5}, {ten, 0, 1}, {ten, 1, 10}, {[]float64{4}, 0.3, 4}, {nil, 0.5, math.NaN()},
		{[]float64{math.Inf(-1), math.Inf(-1), 3}, 1.0 / 3, math.Inf(-1)},
	} {
		got := Quantile(c.sorted, c.share)
		if got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("quantile %g of %v is %g, want %g", c.share, c.sorted, got, c.want)
		}
	}
}

// The band of an even normal sample lies where the normal distribution has it, and one that is stretched lies stretched.
func TestBandOfNormalSample(t *testing.T) {
	t.Parallel()
	z := points(t, 1, 4096, 3).Deviates(0)
	for _, c := range []struct{ mean, deviation float64 }{{0, 1}, {12, 3}, {-4, 0.1}} {
		values := make([]float64, 0, len(z)+1)
		for _, v := range z {
			values = append(values, c.mean+c.deviation*v)
		}
		band, ok := BandOf(append(values, math.NaN()))
		near := func(got, z float64) bool { return math.Abs((got-c.mean)/c.deviation-z) < 0.005 }
		if !ok || band.Count != 4096 || !near(band.P5, -1.64485) || !near(band.P50, 0) || !near(band.P95, 1.64485) {
			t.Errorf("%+v: %+v", c, band)
		}
	}
	if _, ok := BandOf([]float64{math.NaN()}); ok {
		t.Error("a sample without numbers has a band")
	}
}

func TestHoldShare(t *testing.T) {
	t.Parallel()
	if got := HoldShare([]float64{1, 0, -1, math.NaN()}); got != 0.5 {
		t.Errorf("share %g, want 0.5", got)
	}
	if HoldShare(nil) != 0 {
		t.Error("nothing holds")
	}
}

func TestNormalQuantileIsOddAndRises(t *testing.T) {
	t.Parallel()
	last := math.Inf(-1)
	for k := 1; k < 4096; k++ {
		u := float64(k) / 4096
		z := NormalQuantile(u)
		if !(z > last) || math.Abs(z+NormalQuantile(1-u)) > 1e-14 || math.Abs(0.5*math.Erfc(-z/math.Sqrt2)-u) > 1e-14 {
			t.Errorf("quantile %g is %g", u, z)
		}
		last = z
	}
	for _, u := range []float64{-0.1, 1.1, math.NaN()} {
		if !math.IsNaN(NormalQuantile(u)) {
			t.Errorf("quantile of %g is a number", u)
		}
	}
	if !math.IsInf(NormalQuantile(0), -1) || !math.IsInf(NormalQuantile(1), 1) {
		t.Error("the ends are finite")
	}
}

// With many inputs that do nothing, the few that do are named and the others get nothing.
func TestSharesAmongManyInputs(t *testing.T) {
	t.Parallel()
	const inputs = 120
	p := points(t, inputs, DefaultCount, 2)
	by := make([][]float64, inputs)
	for i := range by {
		by[i] = p.Deviates(i)
	}
	y := make([]float64, DefaultCount)
	for j := range y {
		y[j] = 2*by[10][j] + by[40][j] + by[70][j]*by[70][j]/math.Sqrt2
	}
	y[3] = math.NaN()
	shares := NewInputs(by).Shares(y)
	for i, want := range map[int]float64{10: 4.0 / 6, 40: 1.0 / 6, 70: 1.0 / 6} {
		if math.Abs(shares[i]-want) > 0.05 {
			t.Errorf("share of input %d is %.3f, want %.3f", i, shares[i], want)
		}
		shares[i] = 0
	}
	if sum := total(shares); slices.Max(shares) > 0.05 || sum > 0.15 {
		t.Errorf("inputs that do nothing have %.3f at most and %.3f in all", slices.Max(shares), sum)
	}
}

func total(values []float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum
}

func TestSharesOfWhatDoesNotVary(t *testing.T) {
	t.Parallel()
	p := points(t, 2, 64, 1)
	inputs := NewInputs([][]float64{p.Along(0), p.Along(1)})
	none := make([]float64, 64)
	lost := slices.Repeat([]float64{math.NaN()}, 64)
	for _, y := range [][]float64{none, lost, nil} {
		if got := inputs.Shares(y); total(got) != 0 {
			t.Errorf("shares %v", got)
		}
	}
	if RankShare(OrderOf(p.Along(0)), none) != 0 || Correlation(none, none) != 0 || Correlation(none, nil) != 0 {
		t.Error("what does not vary has a share")
	}
	if _, _, err := (Pick{A: []float64{1}, B: []float64{1}, Mixed: [][]float64{{1, 2}}}).Shares(); err == nil {
		t.Error("a design with a list too long is taken")
	}
	if _, err := Evaluate(1, 1, 1, straight); err == nil {
		t.Error("one sample is taken")
	}
}
