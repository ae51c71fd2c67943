package drag

import (
	"math"

	"pitgate/server/physics/elementary"
)

// parasiteShare is the part of the zero-lift drag that comes on top for each unit of lift coefficient squared.
const parasiteShare = 0.38

// OswaldStraight returns the span efficiency of the whole aeroplane by the statistical rule, for comparison with the lattice.
//
// Formula: e = 1.78 (1 - 0.045 A^0.68) - 0.64.
// Valid for: A 4 to 12, sweep of the leading edge below 30 degrees.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.48.
func OswaldStraight(aspectRatio float64) float64 {
	return float64(1.78*(1-float64(0.045*elementary.Pow(aspectRatio, 0.68)))) - 0.64
}

// OswaldFactor returns the part of the lattice's span efficiency that is left when the drag that grows with lift is counted:
// the friction of the sections rises with lift and the body disturbs the loading.
//
// Formula: 1/e = 1/e_span + pi A 0.38 CD0.
// Valid for: A 3 to 12.
// Source: common practice in conceptual design (parasite part of the induced factor 0.38 CD0), from memory.
func OswaldFactor(spanEfficiency, aspectRatio, zeroLiftDrag float64) float64 {
	parasite := float64(float64(math.Pi*aspectRatio) * float64(parasiteShare*zeroLiftDrag))
	return 1 / (1/spanEfficiency + parasite)
}

// InducedFactor returns induced drag coefficient over lift coefficient squared.
//
// Formula: K = 1/(pi A e); where A aspect ratio, e span efficiency.
// Valid for: attached flow; 0 without aspect ratio or efficiency.
// Source: Prandtl's lifting line.
func InducedFactor(aspectRatio, efficiency float64) float64 {
	if !(aspectRatio > 0) || !(efficiency > 0) {
		return 0
	}
	return 1 / float64(float64(math.Pi*aspectRatio)*efficiency)
}
