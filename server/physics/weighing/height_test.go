package weighing

import (
	"math"
	"testing"
)

// onSupports returns the readings of a model of 9 kg that balances at x and a height above its supports, pitched nose-up.
func onSupports(x, height, tilt float64) []Reading {
	// Moments about the front support with the weight's line through the balance point; supports at 0.2 m and 1.1 m of the model's axes.
	seen := x + height*math.Tan(tilt)
	rear := 9 * (seen - 0.2) / 0.9
	return []Reading{
		{Name: "nose", X: at(0.2), Y: at(0), Shown: []float64{9 - rear}, Spread: 0.005},
		{Name: "left", X: at(1.1), Y: at(-0.3), Shown: []float64{rear / 2}, Spread: 0.005},
		{Name: "right", X: at(1.1), Y: at(0.3), Shown: []float64{rear / 2}, Spread: 0.005},
	}
}

func TestBalanceHeight(t *testing.T) {
	t.Parallel()
	level := weigh(t, onSupports(0.8, 0.12, 0))
	for _, tilt := range []float64{0.1, 0.3, 0.5, -0.3} {
		h, err := BalanceHeight(level, weigh(t, onSupports(0.8, 0.12, tilt)), tilt, 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "height", h.Value, 0.12, 1e-9)
		near(t, "shift", TiltShift(0.12, tilt), 0.12*math.Tan(tilt), 1e-12)
	}
}

func TestHeightIsBetterKnownWithMoreTilt(t *testing.T) {
	t.Parallel()
	level := weigh(t, onSupports(0.8, 0.12, 0))
	last := math.Inf(1)
	for _, tilt := range []float64{0.1, 0.2, 0.4, 0.6} {
		h, err := BalanceHeight(level, weigh(t, onSupports(0.8, 0.12, tilt)), tilt, 0.005)
		if err != nil {
			t.Fatal(err)
		}
		if !(h.Spread < last) {
			t.Errorf("tilt %g: spread %g is not less than %g", tilt, h.Spread, last)
		}
		last = h.Spread
	}
}

// TestSpreadOfHeight moves one scale by its spread.
func TestSpreadOfHeight(t *testing.T) {
	t.Parallel()
	const tilt = 0.3
	level, tilted := weigh(t, onSupports(0.8, 0.12, 0)), weigh(t, onSupports(0.8, 0.12, tilt))
	h, err := BalanceHeight(level, tilted, tilt, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	moved := func(a, b Weighed, angle float64) {
		other, err := BalanceHeight(a, b, angle, 0)
		if err != nil {
			t.Fatal(err)
		}
		sum += (other.Value - h.Value) * (other.Value - h.Value)
	}
	for i := range 3 {
		a, b := onSupports(0.8, 0.12, 0), onSupports(0.8, 0.12, tilt)
		a[i].Shown[0] += 0.005
		b[i].Shown[0] += 0.005
		moved(weigh(t, a), tilted, tilt)
		moved(level, weigh(t, b), tilt)
		a, b = onSupports(0.8, 0.12, 0), onSupports(0.8, 0.12, tilt)
		*a[i].X += level.Lines[i].XSpread
		*b[i].X += level.Lines[i].XSpread
		moved(weigh(t, a), weigh(t, b), tilt)
	}
	moved(level, tilted, tilt+0.01)
	near(t, "spread", h.Spread, math.Sqrt(sum), 0.03*h.Spread)
}

func TestTiltOf(t *testing.T) {
	t.Parallel()
	angle, err := TiltOf(0.5, 1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "angle", angle, math.Pi/6, 1e-15)
	for _, rise := range []float64{1, -2, math.NaN(), math.Inf(1)} {
		if _, err := TiltOf(rise, 1); err == nil {
			t.Errorf("a rise of %g on 1 m must be refused", rise)
		}
	}
}

func TestHeightRefusesWhatSaysNothing(t *testing.T) {
	t.Parallel()
	level := weigh(t, onSupports(0.8, 0.12, 0))
	for _, tilt := range []float64{0, 0.01, 2, math.NaN()} {
		if _, err := BalanceHeight(level, level, tilt, 0); err == nil {
			t.Errorf("a tilt of %g must be refused", tilt)
		}
		if got := TiltShift(0.1, 2); got != 0 {
			t.Errorf("beyond its range the shift must be nothing, got %g", got)
		}
	}
	if _, err := BalanceHeight(level, Weighed{}, 0.3, 0); err == nil {
		t.Error("another number of supports must be refused")
	}
	if _, err := BalanceHeight(level, level, 0.3, -1); err == nil {
		t.Error("a negative spread must be refused")
	}
}
