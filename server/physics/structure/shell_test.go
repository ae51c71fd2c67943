package structure

import "testing"

// The wall of a thin tube under bending wrinkles where NASA SP-8007 says: at a ratio of 50 the factor is 1 - 0.731 (1 - exp(-sqrt(50)/16)) = 0.738877, and
// the stress of the classical theory 0.605 E/50.
func TestThinTubeWrinklesByShellTheory(t *testing.T) {
	t.Parallel()
	const modulus = 70e9
	metal := Material{Modulus: modulus, ShearModulus: modulus / 2.6}
	for _, size := range []float64{0.0202, 0.0404} { // only the ratio counts
		limit, mode, may := Part{Shape: ShapeTube, Material: metal, Outer: size, Wall: size / 101}.buckles(nil)
		if !may || mode != ModeWallBuckling {
			t.Fatalf("a tube of %v buckles %v as %q", size, may, mode)
		}
		near(t, "limit", limit, 0.7388773586*0.605*modulus/50, 1)
	}
}
