package sample

import "testing"

// TestStrataHoldTheSamePoints wants the layers of the points that New gives.
func TestStrataHoldTheSamePoints(t *testing.T) {
	t.Parallel()
	const dimensions, seed = 20, 5
	for _, digits := range []int{4, 9, 12} {
		points, err := New(dimensions, 1<<digits, seed)
		if err != nil {
			t.Fatal(err)
		}
		for d, layers := range Strata(dimensions, digits, seed) {
			for j, u := range points.Along(d) {
				if want := int(u * float64(int(1)<<digits)); int(layers[j]) != want {
					t.Fatalf("%d digits, dimension %d, point %d: layer %d instead of %d", digits, d, j, layers[j], want)
				}
			}
		}
	}
}

// TestStrataKeepWithinTheirLimits wants no more digits and dimensions than there are.
func TestStrataKeepWithinTheirLimits(t *testing.T) {
	t.Parallel()
	if layers := Strata(MaximumSobol+1, 99, 1); len(layers) != MaximumSobol || len(layers[0]) != 1<<mostStrataDigits {
		t.Errorf("%d dimensions of %d points", len(layers), len(layers[0]))
	}
	if layers := Strata(-1, -1, 1); len(layers) != 0 {
		t.Errorf("%d dimensions of none", len(layers))
	}
}
