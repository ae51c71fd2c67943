package radio

import (
	"fmt"
	"math"
)

// Knob is what a change turns.
type Knob string

// Knobs, each named as a page may show it.
const (
	KnobPower             Knob = "radiated power or receiver sensitivity"
	KnobDistance          Knob = "distance along the ground"
	KnobHeight            Knob = "height of the model"
	KnobTransmitterHeight Knob = "height of the transmitter"
	KnobOutOfCarbon       Knob = "antennas moved out of carbon"
	KnobOutOfShade        Knob = "antennas moved out of the shade"
	KnobSecondAntenna     Knob = "one more antenna at right angles, clear of shade"
)

// Change is the least turn of one knob that gives a wanted margin.
type Change struct {
	Knob     Knob
	From, To float64 // dBm for power, m for lengths, count for antennas
	Margin   float64 // usual margin with the change, dB
	Holds    bool    // the change alone gives what is wanted
}

// Reach of the knobs.
const (
	searchSteps           = 48
	mostTransmitterHeight = 5.0   // m, a mast by the pilot
	mostModelHeight       = 60.0  // m
	leastDistanceShare    = 0.05  // of the present distance
	stepRefinements       = 24    // halvings of the last step
	boundedPower          = 100.0 // dB more than now
)

// Changes returns for every knob the least change that brings the usual margin at a place to a wanted one, none when it holds already.
//
// A change that does not hold by itself has Holds false and the margin its whole reach gives; when none holds, no single change helps. More power needs
// the rule pack's leave. Valid for: as MarginAt. Source: bracketed search on MarginAt. Errors: as MarginAt, but antennas that all lie inside carbon only
// leave the knobs that bring one out.
func Changes(link Link, place Place, wanted float64) ([]Change, error) {
	if err := link.check(); err != nil {
		return nil, err
	}
	if err := place.check(); err != nil {
		return nil, err
	}
	if err := within("wanted margin", wanted, -mostDecibels, mostDecibels); err != nil {
		return nil, err
	}
	installation := Install(link.Antennas)
	antennas := link.antennaChanges(&installation, place, wanted)
	if installation.Counted == 0 {
		return antennas, nil
	}
	now := link.margin(&installation, place).Usual
	if now >= wanted {
		return nil, nil
	}
	out := []Change{link.powerChange(now, wanted)}
	out = append(out, link.lengthChanges(&installation, place, wanted)...)
	return append(out, antennas...), nil
}

// powerChange returns the power that is missing.
func (l Link) powerChange(now, wanted float64) Change {
	more := wanted - now
	return Change{KnobPower, l.RadiatedPower, l.RadiatedPower + more, wanted, more <= boundedPower}
}

// lengthChanges returns the changes of distance and heights.
func (l Link) lengthChanges(installation *Installation, place Place, wanted float64) []Change {
	nearer := func(along float64) float64 {
		return l.margin(installation, Place{place.Name, along, place.Height}).Usual
	}
	higher := func(height float64) float64 {
		return l.margin(installation, Place{place.Name, place.Along, height}).Usual
	}
	raised := func(height float64) float64 {
		up := l
		up.TransmitterHeight = height
		return up.margin(installation, place).Usual
	}
	return []Change{
		search(KnobDistance, place.Along, math.Max(leastDistanceShare*place.Along, leastDistance), wanted, nearer),
		search(KnobHeight, place.Height, math.Max(mostModelHeight, place.Height), wanted, higher),
		search(KnobTransmitterHeight, l.TransmitterHeight, math.Max(mostTransmitterHeight, l.TransmitterHeight), wanted, raised),
	}
}

// search returns the value nearest to from, on the way to the end, at which a margin holds; the best met when it never does.
func search(knob Knob, from, end, wanted float64, margin func(float64) float64) Change {
	best := Change{Knob: knob, From: from, To: from, Margin: margin(from)}
	last := from
	for i := 1; i <= searchSteps; i++ {
		value := from + float64((end-from)*float64(i)/searchSteps)
		if m := margin(value); m >= wanted {
			to := refine(last, value, wanted, margin)
			return Change{knob, from, to, margin(to), true}
		} else if m > best.Margin {
			best.To, best.Margin = value, m
		}
		last = value
	}
	return best
}

// refine halves the step in which a margin begins to hold and returns its holding side.
func refine(fails, holds, wanted float64, margin func(float64) float64) float64 {
	for range stepRefinements {
		if middle := (fails + holds) / 2; margin(middle) >= wanted {
			holds = middle
		} else {
			fails = middle
		}
	}
	return holds
}

// antennaChanges returns what moving or adding antennas gives.
func (l Link) antennaChanges(installation *Installation, place Place, wanted float64) []Change {
	var out []Change
	count := float64(installation.Counted)
	if len(installation.Enclosed) > 0 {
		out = append(out, l.with(KnobOutOfCarbon, place, wanted, count, opened(l.Antennas)))
	}
	if installation.Counted > 0 && installation.LeastShade > 0 {
		out = append(out, l.with(KnobOutOfShade, place, wanted, count, cleared(l.Antennas)))
	}
	return append(out, l.with(KnobSecondAntenna, place, wanted, count, joined(l.Antennas)))
}

// with returns the change to other antennas.
func (l Link) with(knob Knob, place Place, wanted, count float64, antennas []Antenna) Change {
	installation := Install(antennas)
	usual := l.margin(&installation, place).Usual
	return Change{knob, count, float64(installation.Counted), usual, usual >= wanted}
}

// opened returns the antennas with none inside carbon.
func opened(antennas []Antenna) []Antenna {
	out := make([]Antenna, len(antennas))
	for i, a := range antennas {
		a.InsideCarbon = false
		out[i] = a
	}
	return out
}

// cleared returns the antennas with nothing before them.
func cleared(antennas []Antenna) []Antenna {
	out := make([]Antenna, len(antennas))
	for i, a := range antennas {
		a.ShadedBy = nil
		out[i] = a
	}
	return out
}

// joined returns the antennas with one more at right angles to those that count.
func joined(antennas []Antenna) []Antenna {
	var axes []Vector
	for _, a := range antennas {
		if !a.InsideCarbon {
			axes = append(axes, a.Axis.unit())
		}
	}
	name := fmt.Sprintf("antenna %d", len(antennas)+1)
	return append(append([]Antenna{}, antennas...), Antenna{Name: name, Axis: apart(axes)})
}

// apart returns an axis at right angles to the first axis and to the next that lies elsewhere; with one alone it is as upright as can be.
func apart(axes []Vector) Vector {
	if len(axes) == 0 {
		return Vector{Z: 1}
	}
	for _, axis := range axes[1:] {
		if normal := axes[0].cross(axis); normal.dot(normal) > 0.1 {
			return normal.unit()
		}
	}
	side := axes[0].cross(Vector{Z: 1})
	if side.dot(side) < 0.01 {
		return Vector{Y: 1}
	}
	return side.cross(axes[0]).unit()
}
