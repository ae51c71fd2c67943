package elementary

import (
	"math"
	"math/big"
	"testing"
)

// near reports whether two values agree within a relative tolerance, or are both the same special value.
func near(got, want, relative float64) bool {
	if math.IsNaN(want) {
		return math.IsNaN(got)
	}
	if math.IsInf(want, 0) || want == 0 {
		return got == want
	}
	return math.Abs(got-want) <= relative*math.Abs(want)
}

func TestFunctionsAgainstTheStandardLibrary(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name      string
		got, want func(float64) float64
		from, to  float64
		tolerance float64
	}{
		{"exp", Exp, math.Exp, -700, 700, 4.5e-16},
		{"exp small", Exp, math.Exp, -1, 1, 4.5e-16},
		{"sinh", Sinh, math.Sinh, -30, 30, 9e-16},
		{"sinh small", Sinh, math.Sinh, -1.5, 1.5, 9e-16},
		{"cosh", Cosh, math.Cosh, -30, 30, 7e-16},
		{"tanh", Tanh, math.Tanh, -25, 25, 9e-16},
		{"tanh small", Tanh, math.Tanh, -0.01, 0.01, 9e-16},
		{"asinh", Asinh, math.Asinh, -50, 50, 9e-16},
		{"asinh small", Asinh, math.Asinh, -0.3, 0.3, 9e-16},
		{"log", Log, math.Log, 1e-9, 40, 3e-16},
		{"log10", Log10, math.Log10, 1.5, 1e7, 7e-16},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			const n = 20001
			for i := range n {
				x := c.from + (c.to-c.from)*float64(i)/(n-1)
				if got, want := c.got(x), c.want(x); !near(got, want, c.tolerance) {
					t.Fatalf("x = %v: got %v, want %v", x, got, want)
				}
			}
		})
	}
}

func TestPowAgainstTheStandardLibrary(t *testing.T) {
	t.Parallel()
	for i := range 400 {
		x := math.Exp(float64(i-200) * 0.11)
		for j := range 241 {
			y := float64(j-120) * 0.173
			got, want := Pow(x, y), math.Pow(x, y)
			if want < 1e-300 || want > 1e300 {
				continue
			}
			if !near(got, want, 2e-14) {
				t.Fatalf("Pow(%v, %v) = %v, want %v", x, y, got, want)
			}
		}
	}
}

func TestPowExactPowers(t *testing.T) {
	t.Parallel()
	cases := []struct{ x, y, want float64 }{
		{2, 10, 1024}, {10, 3, 1000}, {4, 0.5, 2}, {9, 1.5, 27}, {0.5, 3, 0.125}, {7, 0, 1}, {1, 5.5, 1},
		{3, -1, 1.0 / 3}, {0, 2, 0}, {1.5, 2, 2.25},
	}
	for _, c := range cases {
		if got := Pow(c.x, c.y); !near(got, c.want, 1.2e-16) {
			t.Errorf("Pow(%v, %v) = %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

func TestSpecialValues(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name      string
		got, want float64
	}{
		{"exp overflow", Exp(710), math.Inf(1)},
		{"exp underflow", Exp(-746), 0},
		{"exp zero", Exp(0), 1},
		{"exp nan", Exp(math.NaN()), math.NaN()},
		{"log zero", Log(0), math.Inf(-1)},
		{"log negative", Log(-1), math.NaN()},
		{"pow negative base", Pow(-2, 0.5), math.NaN()},
		{"pow overflow", Pow(10, 400), math.Inf(1)},
		{"pow underflow", Pow(10, -400), 0},
		{"pow zero base, negative exponent", Pow(0, -1), math.Inf(1)},
		{"pow infinite exponent", Pow(0.5, math.Inf(1)), 0},
		{"pow huge exponent", Pow(1.5, 1e30), math.Inf(1)},
		{"pow infinite base", Pow(math.Inf(1), -1), 0},
		{"tanh large", Tanh(-40), -1},
		{"sinh zero", Sinh(0), 0},
	}
	for _, c := range cases {
		if !near(c.got, c.want, 0) && c.got != c.want {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestIdentities(t *testing.T) {
	t.Parallel()
	for i := range 2000 {
		x := float64(i)*0.01 - 10
		if d := Cosh(x)*Cosh(x) - Sinh(x)*Sinh(x) - 1; math.Abs(d) > 1e-14*Cosh(x)*Cosh(x) {
			t.Fatalf("cosh^2 - sinh^2 - 1 = %v at %v", d, x)
		}
		if got := Log(Exp(x)); math.Abs(got-x) > 4e-16*(1+math.Abs(x)) {
			t.Fatalf("log(exp(%v)) = %v", x, got)
		}
		if got := Asinh(Sinh(x)); !near(got, x, 2e-15) && math.Abs(x) > 1e-12 {
			t.Fatalf("asinh(sinh(%v)) = %v", x, got)
		}
	}
}

// FuzzPow compares with high precision, for the standard library itself is off by dozens of units in the last place at large powers.
func FuzzPow(f *testing.F) {
	f.Add(1.2, 3.4)
	f.Add(1e-300, -0.9)
	f.Add(2.0, 1023.9)
	f.Add(7.0/3, 575.5)
	f.Fuzz(func(t *testing.T, x, y float64) {
		if !(x > 0) || math.IsInf(x, 0) || math.IsNaN(y) || !(math.Abs(y*math.Log(x)) < 650) {
			return
		}
		exact := bigExp(new(big.Float).SetPrec(referenceBits).Mul(bigLog(x), bigFloat(y)))
		if off := unitsInLastPlace(Pow(x, y), exact); !(off <= 1) {
			t.Fatalf("Pow(%v, %v) = %v is off by %.2f units in the last place", x, y, Pow(x, y), off)
		}
	})
}

// FuzzExp compares with high precision, for the standard library's assembly overflows a little early.
func FuzzExp(f *testing.F) {
	f.Add(0.5)
	f.Add(-708.0)
	f.Add(709.5)
	f.Fuzz(func(t *testing.T, x float64) {
		if !(math.Abs(x) < 709.7) || x < -708 {
			return
		}
		if off := unitsInLastPlace(Exp(x), bigExp(bigFloat(x))); !(off <= 1) {
			t.Fatalf("Exp(%v) = %v is off by %.2f units in the last place", x, Exp(x), off)
		}
	})
}
