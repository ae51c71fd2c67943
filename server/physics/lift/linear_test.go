package lift

import (
	"errors"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"testing"
)

// randomEntries returns numbers from -1 to 1 that are the same in every run and on every processor.
func randomEntries(seed uint64, count int) []float64 {
	r := rand.New(rand.NewPCG(seed, 1))
	entries := make([]float64, count)
	for i := range entries {
		entries[i] = 2*r.Float64() - 1
	}
	return entries
}

// plainDecompose is the textbook elimination, one pivot at a time over the whole matrix.
func plainDecompose(matrix []float64, n int) ([]int, bool) {
	e := elimination{entries: matrix, n: n, order: make([]int, n)}
	for i := range e.order {
		e.order[i] = i
	}
	return e.order, e.oneByOne(span{0, n})
}

func TestSameBitsAsOnePivotAtATime(t *testing.T) {
	t.Parallel()
	for _, n := range []int{1, 2, 7, 8, 9, 15, 16, 17, 31, 40, 64, 67, 100, 131, 256} {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			t.Parallel()
			blocked := randomEntries(uint64(n), n*n)
			plain := append([]float64(nil), blocked...)
			order, err := decompose(blocked, n)
			if err != nil {
				t.Fatal(err)
			}
			want, ok := plainDecompose(plain, n)
			if !ok {
				t.Fatal("no pivot")
			}
			for i := range plain {
				if math.Float64bits(plain[i]) != math.Float64bits(blocked[i]) {
					t.Fatalf("entry %d is %v, one at a time %v", i, blocked[i], plain[i])
				}
			}
			if fmt.Sprint(order) != fmt.Sprint(want) {
				t.Errorf("order %v, one at a time %v", order, want)
			}
		})
	}
}

func TestSameBitsOfEveryKernel(t *testing.T) {
	t.Parallel()
	for _, pivots := range []int{1, 2, 3, 8, 33} {
		const stride = 50
		tile, lower, upper := randomEntries(1, 4*stride), randomEntries(2, 4*stride), make([]tileRow, pivots)
		for k := range upper {
			upper[k] = tileRow(randomEntries(uint64(3+k), tileColumns))
		}
		lower[1] = 5e-324
		portable := append([]float64(nil), tile...)
		subtractTile(tile, lower, upper, stride)
		subtractTilePortable(portable, lower, upper, stride)
		for i := range tile {
			if math.Float64bits(tile[i]) != math.Float64bits(portable[i]) {
				t.Fatalf("%d pivots: entry %d is %v, portable %v", pivots, i, tile[i], portable[i])
			}
		}
	}
}

// solutionDigest is what the solution of one fixed system came to; every processor must give it.
const solutionDigest = 0x3d1f8753156b20fe

func TestSameBitsOnEveryProcessor(t *testing.T) {
	t.Parallel()
	const n = 150
	columns := [][]float64{randomEntries(8, n), randomEntries(9, n), randomEntries(10, n), randomEntries(11, n), randomEntries(12, n)}
	solutions, err := solveColumns(randomEntries(7, n*n), columns)
	if err != nil {
		t.Fatal(err)
	}
	digest := fnv.New64a()
	for _, column := range solutions {
		for _, x := range column {
			bits := math.Float64bits(x)
			for shift := 0; shift < 64; shift += 8 {
				digest.Write([]byte{byte(bits >> shift)})
			}
		}
	}
	if digest.Sum64() != solutionDigest {
		t.Errorf("digest %#x, want %#x", digest.Sum64(), uint64(solutionDigest))
	}
}

func TestSolutionSatisfiesTheSystem(t *testing.T) {
	t.Parallel()
	for _, n := range []int{1, 5, 8, 30, 97} {
		matrix := randomEntries(uint64(100+n), n*n)
		columns := [][]float64{randomEntries(1, n), randomEntries(2, n), randomEntries(3, n), randomEntries(4, n), randomEntries(5, n), randomEntries(6, n)}
		solutions, err := solveColumns(append([]float64(nil), matrix...), columns)
		if err != nil {
			t.Fatal(err)
		}
		for k, x := range solutions {
			for i := range n {
				sum := 0.0
				for j := range n {
					sum += matrix[i*n+j] * x[j]
				}
				near(t, fmt.Sprintf("row %d of %d for column %d", i, n, k), sum, columns[k][i], 1e-10)
			}
		}
	}
}

func TestPermutedTriangleSolvesExactly(t *testing.T) {
	t.Parallel()
	solutions, err := solveColumns([]float64{0, 2, 0, 0, 0, 4, 8, 0, 0}, [][]float64{{2, 8, 24}})
	if err != nil {
		t.Fatal(err)
	}
	if got := fmt.Sprint(solutions); got != "[[3 1 2]]" {
		t.Errorf("solution %s, want [[3 1 2]]", got)
	}
}

func TestSystemsWithoutSolutionAreRefused(t *testing.T) {
	t.Parallel()
	twice := randomEntries(3, 40*40)
	copy(twice[40*39:], twice[:40])
	cases := map[string]struct {
		n      int
		matrix []float64
	}{
		"zero": {2, make([]float64, 4)}, "row twice": {40, twice},
		"not a number": {2, []float64{math.NaN(), math.NaN(), math.NaN(), 1}}, "infinite": {2, []float64{math.Inf(1), 1, 1, 1}},
	}
	for name, c := range cases {
		if _, err := solveColumns(c.matrix, [][]float64{make([]float64, c.n)}); !errors.Is(err, ErrUnsolvable) {
			t.Errorf("%s: error %v, want %v", name, err, ErrUnsolvable)
		}
	}
}
