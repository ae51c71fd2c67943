package radio

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// RangeCheck is what was walked with reduced power.
type RangeCheck struct {
	Distance          float64 // at which control was still whole in the worst attitude, m
	Reduction         float64 // of power, dB; entered from the maker's figure, never assumed
	ModelHeight       float64 // of the model's antennas, m
	TransmitterHeight float64 // m
}

// check refuses a range check that cannot be.
func (c RangeCheck) check() error {
	if err := within("range check distance", c.Distance, leastDistance, mostDistance); err != nil {
		return err
	}
	if err := within("range check reduction", c.Reduction, 0, mostDecibels); err != nil {
		return err
	}
	if err := within("model height", c.ModelHeight, 0, mostHeight); err != nil {
		return err
	}
	return within("transmitter height", c.TransmitterHeight, 0.01, mostHeight)
}

// path returns the path of the check.
func (c RangeCheck) path() Path {
	return Path{c.Distance, c.TransmitterHeight, math.Max(c.ModelHeight, LowestHeight)}
}

// CarriedMargin returns what a range check says of another distance in free space, dB: X - 20 log10(D/d), X itself at its own distance.
//
// where reduction is X (dB), checked is d and wanted is D (m). Valid for: free space at both; the ground adds or takes up to 6 dB at the check.
// Source: Friis' equation.
func CarriedMargin(reduction, checked, wanted float64) float64 {
	return reduction - float64(20*elementary.Log10(wanted/checked))
}

// RequiredCheckDistance returns how far to walk to show a margin at another distance, m: D 10^((M-X)/20).
//
// where wanted is D (m), margin M and reduction X (dB). Valid for: free space. Source: inverse of CarriedMargin.
func RequiredCheckDistance(wanted, margin, reduction float64) float64 {
	return wanted * elementary.Pow(10, (margin-reduction)/20)
}

// GroundLawFactor returns by how much a reduction shortens range when both antennas stay low, none: 10^(X/40).
//
// where reduction is X (dB). Valid for: both distances beyond LastPeak on the ground; wrong for a model in the air. Source: FarLoss.
func GroundLawFactor(reduction float64) float64 { return elementary.Pow(10, reduction/40) }

// FreeSpaceFactor returns by how much a reduction shortens range in free space, none: 10^(X/20).
//
// where reduction is X (dB). Valid for: free space. Source: Friis' equation.
func FreeSpaceFactor(reduction float64) float64 { return elementary.Pow(10, reduction/20) }

// CheckedRange is a range check set against a flight's farthest point.
type CheckedRange struct {
	Demonstrated  float64 // margin demonstrated, dB, at the distance of the check and nowhere else
	At            float64 // that distance, m
	CarriedFree   float64 // margin at the farthest point carried there by free space, dB
	CarriedGround float64 // the same with the ground's loss at the check taken into account, dB
	Carried       float64 // the lesser of both, dB: an estimate, not a demonstration
	Predicted     float64 // margin the link budget predicts for the check with reduced power, best turned, dB
	Disagrees     bool    // the budget says the check could not have worked: an entry is wrong
	InNulls       bool    // the check lies nearer than the last peak: walk several distances, take the worst
	Needed        float64 // distance that would show the wanted margin at the farthest point, m, free space
}

// Disagreement is how far below zero a prediction may be before an entry must be wrong, dB (judgement: two class figures of sensitivity apart).
const Disagreement = 6.0

// CheckRange sets a range check against the farthest point.
//
//	CarriedGround = X + L(two rays at the check) - L(free space at D)
//
// where farthest is D, the slant range of the farthest point (m), and wantedMargin the margin wanted there (dB). The check proves X at its own
// distance; what is carried to D rests on the model being in the air with its antennas as at the check.
// Valid for: check in the open with the model as flown. Source: CarriedMargin, TwoRayLoss. Errors: ErrInput.
func CheckRange(link Link, installation *Installation, check RangeCheck, farthest, wantedMargin float64) (CheckedRange, error) {
	if err := check.check(); err != nil {
		return CheckedRange{}, err
	}
	if err := within("farthest point", farthest, leastDistance, mostDistance); err != nil {
		return CheckedRange{}, err
	}
	if err := within("wanted margin", wantedMargin, -mostDecibels, mostDecibels); err != nil {
		return CheckedRange{}, err
	}
	link.TransmitterHeight = check.TransmitterHeight
	at, err := MarginAt(link, installation, Place{"range check", check.Distance, check.ModelHeight})
	if err != nil {
		return CheckedRange{}, fmt.Errorf("range check: %w", err)
	}
	path := check.path()
	loss := TwoRayLoss(link.Frequency, path, link.ground().Reflect(link.Frequency, path.Grazing(), link.Polarization))
	out := CheckedRange{
		Demonstrated:  check.Reduction,
		At:            check.Distance,
		CarriedFree:   CarriedMargin(check.Reduction, check.Distance, farthest),
		CarriedGround: check.Reduction + loss - FreeSpaceLoss(link.Frequency, farthest),
		Predicted:     at.Clear - check.Reduction,
		InNulls:       check.Distance < LastPeak(link.Frequency, path.Height1, path.Height2),
		Needed:        RequiredCheckDistance(farthest, wantedMargin, check.Reduction),
	}
	out.Carried = math.Min(out.CarriedFree, out.CarriedGround)
	out.Disagrees = out.Predicted < -Disagreement
	return out, nil
}
