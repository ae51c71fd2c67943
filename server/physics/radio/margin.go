package radio

import (
	"fmt"
	"math"
)

// RareAttitude is the share of attitudes that Margin.Usual leaves out: one in twenty (judgement).
const RareAttitude = 0.05

// Bands of a margin in the rare attitude, dB. Source: common practice for moving airframes in sight.
const (
	GoodMargin  = 20.0 // and more: good
	LeastMargin = 10.0 // and less: stop
)

// Place is where a model is against the transmitter.
type Place struct {
	Name   string
	Along  float64 // distance along the ground, m
	Height float64 // of the model above the ground, m; held above LowestHeight
}

// LowestHeight is how near the ground a model's antenna comes, m.
const LowestHeight = 0.1

// Margin is the power left over at a place, with its parts.
type Margin struct {
	Place       Place
	SlantRange  float64 // m
	FreeSpace   float64 // loss, dB
	Ground      float64 // loss by the ground to plan with, dB, negative where it helps
	AntennaGain float64 // peak of the model's antenna, dB
	Installed   float64 // loss once installed, dB
	Clear       float64 // margin with the antennas best turned, over flat ground, dB
	Usual       float64 // margin that nineteen attitudes in twenty keep, dB
	Worst       float64 // margin in the worst attitude, dB
}

// MarginAt returns the margin at a place.
//
//	M = EIRP + G - L(free space) - L(ground) - L(installed) - S, less the loss of the attitude and of shading
//
// where S is the sensitivity. The ground's loss is PlanningGroundLoss with the reflection at the grazing angle.
// Valid for: sight between the antennas, flat ground, 0.1 m to 10,000 km. Source: Friis' equation with the parts named.
// Errors: ErrInput for an impossible link or place, and when every antenna lies inside carbon, for which no margin can be given.
func MarginAt(link Link, installation *Installation, place Place) (Margin, error) {
	if err := link.check(); err != nil {
		return Margin{}, err
	}
	if err := place.check(); err != nil {
		return Margin{}, err
	}
	if installation.Counted == 0 {
		return Margin{}, fmt.Errorf("%w: every antenna lies inside carbon, no margin can be given", ErrInput)
	}
	return link.margin(installation, place), nil
}

// check refuses a place that cannot be.
func (p Place) check() error {
	if err := within("distance", p.Along, leastDistance, mostDistance); err != nil {
		return err
	}
	return within("height", p.Height, 0, mostHeight)
}

// margin computes MarginAt of what was checked.
func (l Link) margin(installation *Installation, place Place) Margin {
	path := l.path(place)
	out := Margin{Place: place, SlantRange: path.Direct(), AntennaGain: HalfWaveGain, Installed: l.InstalledLoss}
	out.FreeSpace = FreeSpaceLoss(l.Frequency, out.SlantRange)
	out.Ground = l.groundLoss(path)
	level := l.RadiatedPower + out.AntennaGain - out.FreeSpace - out.Ground - out.Installed - l.Sensitivity
	out.Clear = level - installation.LeastShade
	out.Usual = level - installation.Attitudes.Exceeded(RareAttitude)
	out.Worst = level - installation.Attitudes.Worst()
	return out
}

// path returns the path to a place.
func (l Link) path(place Place) Path {
	return Path{Along: place.Along, Height1: l.TransmitterHeight, Height2: math.Max(place.Height, LowestHeight)}
}

// groundLoss returns the planning loss by the ground along a path, dB.
func (l Link) groundLoss(path Path) float64 {
	return PlanningGroundLoss(l.Frequency, path, l.ground().Reflect(l.Frequency, path.Grazing(), l.Polarization))
}

// Tightest returns the place with the least usual margin among several, the first of equals, such as the corners of a circuit and the ends of a
// strip low over grass.
//
// Errors: as MarginAt, and ErrInput without a place. Valid for: as MarginAt.
func Tightest(link Link, installation *Installation, places []Place) (Margin, error) {
	if len(places) == 0 {
		return Margin{}, fmt.Errorf("%w: places must hold at least one", ErrInput)
	}
	least := Margin{Usual: math.Inf(1)}
	for _, place := range places {
		m, err := MarginAt(link, installation, place)
		if err != nil {
			return Margin{}, fmt.Errorf("place %q: %w", place.Name, err)
		}
		if m.Usual < least.Usual {
			least = m
		}
	}
	return least, nil
}

// Band is how a margin is judged.
type Band int

// Bands of a margin.
const (
	// Short is below LeastMargin.
	Short Band = iota + 1
	// Tight is from LeastMargin to GoodMargin.
	Tight
	// Ample is GoodMargin and more; it promises nothing.
	Ample
)

// Judge returns the band of a margin (dB) against the least and the good one. Source: common practice.
func Judge(margin, least, good float64) Band {
	switch {
	case margin < least:
		return Short
	case margin < good:
		return Tight
	}
	return Ample
}
