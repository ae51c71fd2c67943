package footprint

import (
	"math"
	"testing"
)

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
