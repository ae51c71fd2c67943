package drag

import "math"

// CriticalTrip is the Reynolds number of a step, seam or grain on its own height, with the speed at its top, that makes the flow turbulent
// right behind it.
//
// Source: Braslow and Knox, NACA TN 4363 (grains and single bumps, 600); lower for wires across the stream, from memory.
const CriticalTrip = 600

// Coefficients (-1/2)^k C_k/(3k+1)! of the series of the plate's boundary layer; C_k = 1, 1, 11, 375, 27897, 3817137.
var plateSeries = [...]float64{
	1, -0.5 / 24, 0.25 * 11 / 5040, -0.125 * 375 / 3628800, 0.0625 * 27897 / 6227020800, -0.03125 * 3817137 / 20922789888000,
}

const (
	plateWallSlope  = 0.332057336
	plateSeriesEnd  = 3.0
	plateSeriesEdge = 6.0
)

// PlateSpeedRatio returns the speed inside the laminar boundary layer of a plate over that outside.
//
// Formula: series of Blasius' equation in eta to 3, a parabola that ends at 1 at eta 6 beyond; where eta = y sqrt(V/(nu x)).
// Valid for: no pressure gradient; within 0.0005 to eta 3, 0.02 beyond.
// Source: Blasius 1908; table of Howarth 1938.
func PlateSpeedRatio(eta float64) float64 {
	if !(eta > 0) {
		return 0
	}
	if eta >= plateSeriesEnd {
		left := max(0, plateSeriesEdge-eta) / (plateSeriesEdge - plateSeriesEnd)
		return 1 - float64((1-plateSeriesAt(plateSeriesEnd))*float64(left*left))
	}
	return plateSeriesAt(eta)
}

// plateSeriesAt sums the series.
func plateSeriesAt(eta float64) float64 {
	cube := float64(float64(eta*eta)*eta) * plateWallSlope
	sum, power := 0.0, 1.0
	for _, c := range plateSeries {
		sum += float64(c * power)
		power = float64(power * cube)
	}
	return float64(float64(plateWallSlope*eta) * sum)
}

// TripReynolds returns the Reynolds number of a step on its height and the speed at its top.
//
// Formula: Re_k = u(k) k/nu; where u(k) speed of the plate's laminar layer at height k, a distance x behind the front edge.
// Valid for: flow still laminar at the step; 0 without a height.
// Source: definition; layer of Blasius.
func TripReynolds(height, place, reynoldsPerMeter float64) float64 {
	if !(height > 0) || !(reynoldsPerMeter > 0) {
		return 0
	}
	eta := plateSeriesEdge
	if place > 0 {
		eta = float64(height * math.Sqrt(reynoldsPerMeter/place))
	}
	return float64(PlateSpeedRatio(eta) * float64(reynoldsPerMeter*height))
}

// Tripped returns the place of transition, as a fraction of the length, when a step may end the laminar run first.
//
// Formula: the step's place when Re_k reaches CriticalTrip there, else the natural place.
// Valid for: as TripReynolds.
// Source: Braslow and Knox, NACA TN 4363.
func Tripped(natural float64, step Step, length, reynoldsPerMeter float64) float64 {
	place := max(0, min(1, step.Place))
	if place >= natural || TripReynolds(step.Height, float64(place*length), reynoldsPerMeter) < CriticalTrip {
		return natural
	}
	return place
}

// Step is the tallest step, seam or trip across the front of the skin.
type Step struct {
	Height float64 // m; 0 = none
	Place  float64 // distance from the front edge over the length of the part
}
