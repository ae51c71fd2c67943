package radio

import (
	"fmt"
	"math"
)

// Antenna is one receiving antenna of a model.
type Antenna struct {
	Name         string
	Axis         Vector   // direction of its wire in the model; its sense and length do not count
	ShadedBy     []string // what stands before it, words of ShadeOf
	InsideCarbon bool     // lies inside a closed carbon or metal part: not counted at all
}

// Link is a transmitter on the ground and a receiver in a model.
type Link struct {
	Frequency         float64      // Hz, 1e6 to 1e11
	RadiatedPower     float64      // against an isotropic antenna (EIRP), dBm
	Sensitivity       float64      // of the receiver, dBm
	Antennas          []Antenna    // none is an error
	TransmitterHeight float64      // of the transmitter's antenna above the ground, m, above 0
	Polarization      Polarization // of the transmitter's antenna, Vertical when unset
	Ground            Ground       // MediumGround at the frequency when zero
	InstalledLoss     float64      // what receiver and cables lose once installed, dB; 3 to 10 by common practice
}

// check refuses a link that cannot be.
func (l Link) check() error {
	if len(l.Antennas) == 0 {
		return fmt.Errorf("%w: antennas must hold at least one", ErrInput)
	}
	for _, v := range []struct {
		field              string
		value, least, most float64
	}{
		{"frequency", l.Frequency, leastFrequency, mostFrequency},
		{"radiated power", l.RadiatedPower, -mostDecibels, mostDecibels},
		{"sensitivity", l.Sensitivity, -mostDecibels, mostDecibels},
		{"transmitter height", l.TransmitterHeight, 0.01, mostHeight},
		{"installed loss", l.InstalledLoss, 0, mostDecibels},
		{"ground conductivity", l.Ground.Conductivity, 0, mostHeight},
		{"ground roughness", l.Ground.Roughness, 0, mostDecibels},
	} {
		if err := within(v.field, v.value, v.least, v.most); err != nil {
			return err
		}
	}
	if l.Ground != (Ground{}) {
		return within("ground permittivity", l.Ground.Permittivity, 1, mostDecibels)
	}
	return nil
}

// ground returns the ground to reckon with.
func (l Link) ground() Ground {
	if l.Ground == (Ground{}) {
		return MediumGround(l.Frequency)
	}
	return l.Ground
}

// Installation is what a model's antennas do in all its attitudes: it depends on the model alone, not on place or day.
type Installation struct {
	Attitudes    Attitudes
	Counted      int      // antennas that are not inside carbon
	Enclosed     []string // names of those that are: each is a fault
	Unknown      []string // things in ShadedBy nobody has a figure for; UnknownShade stands in
	VerticalPart float64  // VerticalPart of the antennas counted, 0 to 1
	Between      float64  // greatest angle between two antennas counted, rad
	LeastShade   float64  // shading of the least shaded antenna, dB
}

// Install returns what the antennas of a link do. With every antenna enclosed Counted is 0 and nothing may be concluded but the fault.
//
// Valid for: wires close to half a wavelength; receivers that take the better antenna. Source: OverAttitudes, Shading.
func Install(antennas []Antenna) Installation {
	out := Installation{LeastShade: ShadingMost}
	var mounted []Mounted
	var axes []Vector
	for _, a := range antennas {
		if a.InsideCarbon {
			out.Enclosed = append(out.Enclosed, a.Name)
			continue
		}
		loss, unknown := Shading(a.ShadedBy)
		out.Unknown = append(out.Unknown, unknown...)
		out.LeastShade = math.Min(out.LeastShade, loss)
		mounted, axes = append(mounted, Mounted{Axis: a.Axis, Loss: loss}), append(axes, a.Axis)
	}
	out.Counted = len(mounted)
	out.Attitudes = OverAttitudes(mounted)
	out.VerticalPart, out.Between = VerticalPart(axes), Between(axes)
	return out
}
