package elementary

import (
	"math"
	"math/big"
	"testing"
)

const referenceBits = 240

func bigFloat(x float64) *big.Float { return new(big.Float).SetPrec(referenceBits).SetFloat64(x) }

// bigExp returns e^x to about 70 digits by scaling, Taylor series and repeated squaring.
func bigExp(x *big.Float) *big.Float {
	const squarings = 14
	r := new(big.Float).SetMantExp(x, -squarings)
	sum, term := bigFloat(1), bigFloat(1)
	for i := 1; i < 60; i++ {
		term = new(big.Float).SetPrec(referenceBits).Quo(new(big.Float).SetPrec(referenceBits).Mul(term, r), bigFloat(float64(i)))
		sum = new(big.Float).SetPrec(referenceBits).Add(sum, term)
	}
	for range squarings {
		sum = new(big.Float).SetPrec(referenceBits).Mul(sum, sum)
	}
	return sum
}

// bigLog returns ln x by Newton steps y += x e^-y - 1 from the double-precision value.
func bigLog(x float64) *big.Float {
	y := bigFloat(math.Log(x))
	for range 4 {
		e := bigExp(new(big.Float).SetPrec(referenceBits).Neg(y))
		step := new(big.Float).SetPrec(referenceBits).Sub(new(big.Float).SetPrec(referenceBits).Mul(e, bigFloat(x)), bigFloat(1))
		y = new(big.Float).SetPrec(referenceBits).Add(y, step)
	}
	return y
}

// unitsInLastPlace returns the distance of got from an exact value in units of the last place of got.
func unitsInLastPlace(got float64, exact *big.Float) float64 {
	difference, _ := new(big.Float).SetPrec(referenceBits).Sub(bigFloat(got), exact).Float64()
	return math.Abs(difference) / (math.Nextafter(math.Abs(got), math.Inf(1)) - math.Abs(got))
}

func TestExpAgainstHighPrecision(t *testing.T) {
	t.Parallel()
	worst := 0.0
	for i := range 600 {
		x := (float64(i) - 300) * 1.01371 / (1 + float64(i%7)*float64(i%7))
		worst = max(worst, unitsInLastPlace(Exp(x), bigExp(bigFloat(x))))
	}
	if worst > 1 {
		t.Errorf("exp is off by %.2f units in the last place, want at most 1", worst)
	}
}

func TestLogAgainstHighPrecision(t *testing.T) {
	t.Parallel()
	worst := 0.0
	for i := range 200 {
		x := math.Exp((float64(i) - 100) * 0.137)
		worst = max(worst, unitsInLastPlace(Log(x), bigLog(x)))
	}
	if worst > 1 {
		t.Errorf("log is off by %.2f units in the last place, want at most 1", worst)
	}
}

func TestPowAgainstHighPrecision(t *testing.T) {
	t.Parallel()
	worst := 0.0
	for i := range 60 {
		x := math.Exp((float64(i) - 30) * 0.7371)
		logarithm := bigLog(x)
		for j := range 15 {
			y := (float64(j) - 7.3) * 1.913
			exact := bigExp(new(big.Float).SetPrec(referenceBits).Mul(logarithm, bigFloat(y)))
			worst = max(worst, unitsInLastPlace(Pow(x, y), exact))
		}
	}
	if worst > 1 {
		t.Errorf("pow is off by %.2f units in the last place, want at most 1", worst)
	}
}
