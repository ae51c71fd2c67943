// Package radio computes the control link of a model: path loss in free space and over reflecting ground, nulls of wire antennas in every attitude,
// what carbon, metal, fuel and engine take away, the margin left at a point of the flight, what a range check with reduced power proves, fading,
// the fail-safe's time, doubled receivers and packs, the way back (telemetry), and the smallest single change that gives a wanted margin.
//
// Units: Hz, m, rad, s; powers dBm; losses, gains, margins dB with losses positive. Axes of a model: x along the fuselage, y to a side, z up. Only the
// line of an antenna's axis counts, not its sense. Every number that is judgement, not measurement, says so where it stands. A margin is never a
// promise: bodies, metal fences, interference and the noise of the model's own electrics are not in it.
//
// A whole check: Install the antennas once for a model; MarginAt the farthest corner of the circuit and over the ends of the strip low over grass, or
// Tightest of them all; Judge Margin.Usual, which already holds one attitude in twenty, shade and the ground's null; Changes where it falls short;
// CheckRange with the range check walked; CheckFailSafe with the time taken. Of the contract: RadiatedPowerMilliwatts by PowerDBm, an antenna's two
// angles by Axis, ShadedBy and InsideCarbon as they are, RangeCheckMeters and RangeCheckReductionDecibels into RangeCheck.
//
// Impossible input gives ErrInput with the field's name; results are finite always.
package radio

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// SpeedOfLight is that of vacuum, m/s, exact by the definition of the metre.
const SpeedOfLight = 299792458.0

// ErrInput marks input that no link has; the text names the field.
var ErrInput = errors.New("impossible input")

// Limits of what is computed at all.
const (
	leastFrequency, mostFrequency = 1e6, 1e11
	leastDistance, mostDistance   = 0.1, 1e7
	mostHeight                    = 1e5
	mostDecibels                  = 1e3
)

// within refuses a value outside a closed range and one that is no number.
func within(field string, value, least, most float64) error {
	if !(value >= least && value <= most) {
		return fmt.Errorf("%w: %s must be from %g to %g, is %g", ErrInput, field, least, most, value)
	}
	return nil
}

// Decibels returns 10 log10 of a ratio of powers, dB. Valid for: positive ratios.
func Decibels(ratio float64) float64 { return float64(10 * elementary.Log10(ratio)) }

// Ratio returns the ratio of powers of a number of dB: 10^(dB/10). Valid for: any finite number.
func Ratio(decibels float64) float64 { return elementary.Pow(10, decibels/10) }

// PowerDBm returns a power in dBm: 10 log10(P / 1 mW).
//
// where milliwatts is the power (mW). Valid for: positive powers. Source: definition.
func PowerDBm(milliwatts float64) float64 { return Decibels(milliwatts) }

// ERPToEIRP is what is added to a power radiated against a half-wave dipole to have it against an isotropic antenna, dB. Source: definition.
const ERPToEIRP = 2.15

// Wavelength returns c/f, m.
//
// where frequency is in Hz. Valid for: air (its index is left out). Source: definition.
func Wavelength(frequency float64) float64 { return SpeedOfLight / frequency }

// square returns x squared, rounded, so that no sum fuses it.
func square(x float64) float64 { return float64(x * x) }

// clamp keeps a value in a range; what is no number becomes the least.
func clamp(value, least, most float64) float64 {
	if !(value >= least) {
		return least
	}
	return math.Min(most, value)
}
