package elementary

import (
	"math"
	"math/big"
	"testing"
)

// bigSinCos returns sine and cosine to about 60 digits by Taylor series of a small part of the angle, doubled back.
func bigSinCos(x float64) (sine, cosine *big.Float) {
	next := func() *big.Float { return new(big.Float).SetPrec(referenceBits) }
	const doublings = 12
	r := new(big.Float).SetMantExp(bigFloat(x), -doublings)
	s, c, term := bigFloat(0), bigFloat(0), bigFloat(1)
	for i := range 40 {
		if i%2 == 0 {
			c = next().Add(c, term)
		} else {
			s = next().Add(s, term)
		}
		term = next().Quo(next().Mul(term, r), bigFloat(float64(i+1)))
		if i%2 == 1 {
			term = next().Neg(term)
		}
	}
	for range doublings {
		s, c = next().Mul(bigFloat(2), next().Mul(s, c)), next().Sub(next().Mul(c, c), next().Mul(s, s))
	}
	return s, c
}

func TestSineAndCosineAgainstHighPrecision(t *testing.T) {
	t.Parallel()
	worst := 0.0
	for i := range 1500 {
		x := (float64(i) - 750) * 0.0137
		if i%3 == 0 {
			x *= 17.3
		}
		s, c := bigSinCos(x)
		if x != 0 {
			worst = max(worst, unitsInLastPlace(Sin(x), s))
		}
		worst = max(worst, unitsInLastPlace(Cos(x), c))
	}
	if worst > 1 {
		t.Errorf("sine and cosine are off by %.2f units in the last place, want at most 1", worst)
	}
}

func TestTrigonometryAgainstTheStandardLibrary(t *testing.T) {
	t.Parallel()
	for i := range 40001 {
		x := (float64(i) - 20000) * 0.00173
		if !near(Tan(x), math.Tan(x), 2e-14*(1+math.Abs(math.Tan(x)))) {
			t.Fatalf("Tan(%v) = %v, want %v", x, Tan(x), math.Tan(x))
		}
		if !near(Atan(x), math.Atan(x), 4.5e-16) {
			t.Fatalf("Atan(%v) = %v, want %v", x, Atan(x), math.Atan(x))
		}
		y := math.Sin(float64(i)) * 3
		if !near(Atan2(y, x), math.Atan2(y, x), 4.5e-16) {
			t.Fatalf("Atan2(%v, %v) = %v, want %v", y, x, Atan2(y, x), math.Atan2(y, x))
		}
	}
}

func TestTrigonometryAtTheEdges(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name      string
		got, want float64
	}{
		{"sine of zero", Sin(0), 0}, {"cosine of zero", Cos(0), 1}, {"tangent of zero", Tan(0), 0},
		{"sine of a right angle", Sin(math.Pi / 2), 1}, {"cosine of pi", Cos(math.Pi), -1},
		{"sine beyond the range", Sin(1e7), math.NaN()}, {"cosine of not a number", Cos(math.NaN()), math.NaN()},
		{"arc tangent of a tiny number", Atan(1e-12), 1e-12}, {"arc tangent of a huge number", Atan(-1e30), -math.Pi / 2},
		{"arc tangent of not a number", Atan(math.NaN()), math.NaN()},
		{"up", Atan2(1, 0), math.Pi / 2}, {"aft", Atan2(0, -1), math.Pi}, {"nothing", Atan2(0, 0), 0},
	}
	for _, c := range cases {
		if !near(c.got, c.want, 1e-16) {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
	if got := math.Abs(Cos(math.Pi/2) - 6.123233995736766e-17); got > 1e-32 {
		t.Errorf("cosine of the number next to a right angle is off by %v", got)
	}
}
