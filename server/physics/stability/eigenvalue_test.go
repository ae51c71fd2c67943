package stability

import (
	"errors"
	"math"
	"slices"
	"testing"
)

// polynomial returns the characteristic polynomial, highest power first, by the recurrence of Faddeev and LeVerrier: another way than Roots goes.
func polynomial(m Matrix) [order + 1]float64 {
	c := [order + 1]float64{1}
	var carry Matrix
	for k := 1; k <= order; k++ {
		for i := range carry {
			carry[i][i] += c[k-1]
		}
		carry = product(m, carry)
		for i := range carry {
			c[k] -= carry[i][i] / float64(k)
		}
	}
	return c
}

func product(a, b Matrix) Matrix {
	var out Matrix
	for i := range out {
		for j := range out {
			for k := range out {
				out[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return out
}

// multiplied returns the polynomial that has the roots.
func multiplied(roots [order]Root) [order + 1]float64 {
	c := [order + 1]complex128{1}
	for i, root := range roots {
		for k := i + 1; k > 0; k-- {
			c[k] -= c[k-1] * complex(root.Real, root.Imaginary)
		}
	}
	var out [order + 1]float64
	for k := range c {
		out[k] = real(c[k])
	}
	return out
}

// checkRoots compares the polynomial of the roots with that of the matrix; each coefficient may be off by rounding times the norm to its power.
func checkRoots(t *testing.T, m Matrix) {
	t.Helper()
	roots, err := m.Roots()
	if err != nil {
		t.Fatal(err)
	}
	norm := 0.0
	for i := range m {
		for j := range m {
			norm = math.Max(norm, math.Abs(m[i][j]))
		}
	}
	want, got := polynomial(m), multiplied(roots)
	for k := range want {
		if bound := 1e-12 * math.Pow(4*norm+1, float64(k)); !(math.Abs(got[k]-want[k]) <= bound) {
			t.Errorf("%v: coefficient %d is %g, want %g within %g", m, k, got[k], want[k], bound)
		}
	}
	for i := range roots[:order-1] {
		if roots[i].modulus() < roots[i+1].modulus()*(1-1e-9) {
			t.Errorf("roots not ordered: %v", roots)
		}
	}
}

func TestRootsOfKnownMatrices(t *testing.T) {
	t.Parallel()
	for name, test := range map[string]struct {
		matrix Matrix
		want   [order]Root
	}{
		"nothing":            {Matrix{}, [order]Root{}},
		"diagonal":           {Matrix{{-4}, {0, 3}, {0, 0, -2}, {0, 0, 0, 1}}, [order]Root{{-4, 0}, {3, 0}, {-2, 0}, {1, 0}}},
		"two swings":         {Matrix{{0, 1}, {-9, 0}, {0, 0, 0, 1}, {0, 0, -4, 0}}, [order]Root{{0, 3}, {0, -3}, {0, 2}, {0, -2}}},
		"ring":               {Matrix{{0, 0, 0, 16}, {1}, {0, 1}, {0, 0, 1}}, [order]Root{{-2, 0}, {0, 2}, {0, -2}, {2, 0}}},
		"chain of one value": {Matrix{{-1, 1}, {0, -1, 1}, {0, 0, -1, 1}, {0, 0, 0, -1}}, [order]Root{{-1, 0}, {-1, 0}, {-1, 0}, {-1, 0}}},
		"far apart":          {Matrix{{-1e6, 5}, {0, -1}, {0, 0, -1e-6}, {0, 0, 0, 1e-12}}, [order]Root{{-1e6, 0}, {-1, 0}, {-1e-6, 0}, {1e-12, 0}}},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			got, err := test.matrix.Roots()
			if err != nil {
				t.Fatal(err)
			}
			for _, want := range test.want {
				if !slices.ContainsFunc(got[:], func(root Root) bool { return apart(root, want) <= 1e-12*math.Max(1e-9, want.modulus()) }) {
					t.Errorf("no root %v in %v", want, got)
				}
			}
		})
	}
}

// apart returns the distance of two roots in the plane.
func apart(a, b Root) float64 { return math.Hypot(a.Real-b.Real, a.Imaginary-b.Imaginary) }

// random is a reproducible stream of numbers in -1..1.
type random uint64

func (r *random) next() float64 {
	*r = *r*6364136223846793005 + 1442695040888963407
	return float64(int64(*r)>>11) / (1 << 52)
}

func TestRootsGiveBackThePolynomial(t *testing.T) {
	t.Parallel()
	source := random(1)
	for range 2000 {
		var m Matrix
		for i := range m {
			for j := range m {
				if source.next() > -0.5 {
					m[i][j] = source.next() * math.Pow(10, 2*source.next())
				}
			}
		}
		checkRoots(t, m)
	}
}

func TestSimilarMatricesHaveTheSameRoots(t *testing.T) {
	t.Parallel()
	m := Matrix{{-.0450, .0360, 0, -32.2}, {-.369, -2.02, 176, 0}, {.0019, -.0396, -2.948, 0}, {0, 0, 1, 0}}
	want, _ := m.Roots()
	for k, factor := range []float64{1e-3, 7, 1e4} {
		n := m
		for j := range n {
			n[k][j] *= factor
			n[j][k] /= factor
		}
		got, err := n.Roots()
		if err != nil {
			t.Fatal(err)
		}
		for i := range got {
			if apart(got[i], want[i]) > 1e-11 {
				t.Errorf("unit %d times %g: root %v, want %v", k, factor, got[i], want[i])
			}
		}
	}
}

func TestRootsRefuseWhatIsNoNumber(t *testing.T) {
	t.Parallel()
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if _, err := (Matrix{{0, bad}}).Roots(); !errors.Is(err, ErrOutOfRange) {
			t.Errorf("%g: %v", bad, err)
		}
	}
	full := Matrix{{math.MaxFloat64, math.MaxFloat64}, {-math.MaxFloat64, math.MaxFloat64}, {0, 1, 0, 1}, {1, 0, 1}}
	if roots, err := full.Roots(); err == nil {
		for _, root := range roots {
			if checkResult(root.Real, root.Imaginary) != nil {
				t.Errorf("no error and root %v", root)
			}
		}
	}
}

func FuzzRoots(f *testing.F) {
	f.Add(1.0, -2.0, 3.0, 0.5, 1e-3, 1e3, 0.0, -1.0)
	f.Add(1e300, 1e-300, -1e200, 0.0, 1.0, 1.0, 1.0, 1.0)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g, h, k float64) {
		m := Matrix{{a, b, 0, c}, {d, e, g, 0}, {h, k, a, 0}, {0, 0, 1, b}}
		roots, err := m.Roots()
		if err != nil {
			return
		}
		for _, root := range roots {
			if checkResult(root.Real, root.Imaginary) != nil {
				t.Fatalf("%v: %v", m, roots)
			}
		}
		for _, x := range []float64{a, b, c, d, e, g, h, k} {
			if math.Abs(x) > 1e6 {
				return
			}
		}
		checkRoots(t, m)
	})
}
