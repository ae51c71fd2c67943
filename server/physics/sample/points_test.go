package sample

import (
	"math"
	"slices"
	"testing"
)

func points(t *testing.T, dimensions, count int, seed uint64) *Points {
	t.Helper()
	p, err := New(dimensions, count, seed)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestNewNamesWhatIsOutOfRange(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ dimensions, count int }{{1, 15}, {1, 16385}, {-1, 16}, {4097, 16}} {
		if _, err := New(c.dimensions, c.count, 1); err == nil {
			t.Errorf("%+v is taken", c)
		}
	}
}

// Every layer of each coordinate holds one point, in the sequence and in the hypercube.
func TestEveryLayerHoldsOnePoint(t *testing.T) {
	t.Parallel()
	const count = 256
	p := points(t, MaximumSobol+8, count, 7)
	for d := range p.Dimensions() {
		seen := make([]int, count)
		for _, u := range p.Along(d) {
			if !(u > 0 && u < 1) {
				t.Fatalf("dimension %d has %g", d, u)
			}
			seen[int(u*count)]++
		}
		if slices.Min(seen) != 1 || slices.Max(seen) != 1 {
			t.Errorf("dimension %d: a layer holds %d to %d points", d, slices.Min(seen), slices.Max(seen))
		}
	}
}

// The first two dimensions are a net of quality zero: every box of the right size holds one point, however it is cut.
func TestScramblingKeepsTheNet(t *testing.T) {
	t.Parallel()
	const digits = 8
	for seed := range uint64(4) {
		p := points(t, 2, 1<<digits, seed)
		for k := range digits + 1 {
			seen := map[[2]int]int{}
			for j := range p.Count() {
				x := int(p.Along(0)[j] * float64(int(1)<<k))
				y := int(p.Along(1)[j] * float64(int(1)<<(digits-k)))
				seen[[2]int{x, y}]++
			}
			if len(seen) != 1<<digits {
				t.Errorf("seed %d, cut %d: %d boxes are met, want all %d", seed, k, len(seen), 1<<digits)
			}
		}
	}
}

// The even sample fills the square better than independent points can: its discrepancy lies below half of theirs.
func TestDiscrepancyIsSmall(t *testing.T) {
	t.Parallel()
	const count = 512
	p := points(t, 20, count, 11)
	free := make([][]float64, 20)
	for d := range free {
		for j := range count {
			free[d] = append(free[d], byChance(d, j))
		}
	}
	for _, pair := range [][2]int{{0, 1}, {2, 3}, {4, 17}, {18, 19}} {
		even, loose := starDiscrepancy(p.by[pair[0]], p.by[pair[1]]), starDiscrepancy(free[pair[0]], free[pair[1]])
		if !(even < loose/2) || !(even < 0.02) {
			t.Errorf("dimensions %v: discrepancy %.4f, of independent points %.4f", pair, even, loose)
		}
	}
}

// starDiscrepancy is the greatest difference between the share of points in a box from the origin and its area, over boxes that end at points.
func starDiscrepancy(x, y []float64) float64 {
	worst := 0.0
	for _, a := range x {
		for k := 1; k <= 64; k++ {
			b := float64(k) / 64
			inside := 0
			for j := range x {
				if x[j] <= a && y[j] <= b {
					inside++
				}
			}
			worst = max(worst, math.Abs(float64(inside)/float64(len(x))-a*b))
		}
	}
	return worst
}

func TestSeedsAndDimensions(t *testing.T) {
	t.Parallel()
	a, b, other := points(t, 4, 64, 1), points(t, 300, 64, 1), points(t, 4, 64, 2)
	for d := range 4 {
		if !slices.Equal(a.Along(d), b.Along(d)) {
			t.Errorf("dimension %d depends on how many follow", d)
		}
		if slices.Equal(a.Along(d), other.Along(d)) {
			t.Errorf("dimension %d does not depend on the seed", d)
		}
	}
	for d := range 300 {
		for e := range d {
			if slices.Equal(b.Along(d), b.Along(e)) {
				t.Fatalf("dimensions %d and %d are the same", d, e)
			}
		}
	}
}

// A run is the beginning of every longer one in the sequence.
func TestMorePointsContinueTheRun(t *testing.T) {
	t.Parallel()
	short, long := points(t, 40, 100, 9), points(t, 40, 1000, 9)
	for d := range 40 {
		if !slices.Equal(short.Along(d), long.Along(d)[:100]) {
			t.Errorf("dimension %d starts elsewhere", d)
		}
	}
}

func TestDeviatesAreNormal(t *testing.T) {
	t.Parallel()
	p := points(t, MaximumSobol+4, 4096, 21)
	for _, d := range []int{0, 1, 50, 255, 257} {
		z := p.Deviates(d)
		mean, variance := moments(z)
		within := 0
		for _, v := range z {
			if math.Abs(v) < 1.6448536269514722 {
				within++
			}
		}
		if math.Abs(mean) > 0.002 || math.Abs(variance-1) > 0.01 || math.Abs(float64(within)/4096-0.9) > 0.001 {
			t.Errorf("dimension %d: mean %.4f, variance %.4f, %d within", d, mean, variance, within)
		}
	}
}

// A mean over the even sample closes in on its value faster than one over the root of its size.
func TestErrorFallsWithTheSize(t *testing.T) {
	t.Parallel()
	root := func(count int) float64 {
		sum := 0.0
		for seed := range uint64(16) {
			_, y := plainSample(t, 8, count, seed, gFunction)
			mean, _ := moments(y)
			sum += (mean - 1) * (mean - 1)
		}
		return math.Sqrt(sum / 16)
	}
	small, large := root(256), root(4096)
	if !(large < small/8) {
		t.Errorf("error %.2g with 256 points, %.2g with 4096: independent points would gain 4", small, large)
	}
}

func TestDirectionTable(t *testing.T) {
	t.Parallel()
	seen := map[uint32]bool{}
	for i, d := range directions {
		if seen[d.polynomial] {
			t.Errorf("dimension %d: polynomial %d comes twice", i+2, d.polynomial)
		}
		seen[d.polynomial] = true
		for k, m := range d.starts {
			if m%2 != 1 || m >= 1<<(k+1) {
				t.Errorf("dimension %d: starting number %d is %d", i+2, k+1, m)
			}
		}
		if len(d.starts) < 1 || d.polynomial>>len(d.starts) != 1 {
			t.Errorf("dimension %d: %d starting numbers for polynomial %b", i+2, len(d.starts), d.polynomial)
		}
	}
}

func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		p, err := New(120, DefaultCount, 1)
		if err != nil {
			b.Fatal(err)
		}
		for d := range p.Dimensions() {
			p.Deviates(d)
		}
	}
}

func BenchmarkShares(b *testing.B) {
	p, err := New(120, DefaultCount, 1)
	if err != nil {
		b.Fatal(err)
	}
	by := make([][]float64, p.Dimensions())
	for d := range by {
		by[d] = p.Deviates(d)
	}
	inputs := NewInputs(by)
	for b.Loop() {
		inputs.Shares(by[3])
	}
}
