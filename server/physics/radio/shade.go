package radio

import (
	"math"
	"strings"
)

// Shade is what a thing between the antennas takes, dB.
type Shade struct {
	Name      string
	Low, High float64 // band of practice, dB
	Note      string  // why it is no more exact
}

// Plan returns the figure to plan with, the upper end of the band, dB.
func (s Shade) Plan() float64 { return s.High }

// shades are planning figures: common practice, ten dB either way; diffraction around edges limits what any of them takes.
var shades = []Shade{
	{"carbon", 20, 30, "conducting skin; edges let a part around; fibres of one direction pass the field across them"},
	{"metal", 20, 30, "edges let a part around"},
	{"engine", 10, 20, "metal of some wavelengths"},
	{"tailpipe", 10, 20, "metal of some wavelengths"},
	{"battery", 10, 20, "metal foils of some wavelengths"},
	{"pack", 10, 20, "metal foils of some wavelengths"},
	{"fuel", 0, 1, "kerosene barely acts on the field (permittivity about 2.1); a tank's metal parts count as metal"},
	{"glass", 0, 1, "thin and no conductor"},
	{"balsa", 0, 1, "thin and no conductor when dry"},
	{"foam", 0, 1, "thin and no conductor"},
}

// UnknownShade is what is planned for a thing nobody gave a figure for, dB: as an engine's upper end (judgement).
const UnknownShade = 20.0

// ShadeOf returns the planning figures of a thing by the first known word in its name, and false when none is known.
//
// Valid for: 0.8 to 2.5 GHz, within 10 dB. Source: common practice; carbon skins of full-size aircraft were reported at 20 dB or more.
func ShadeOf(name string) (Shade, bool) {
	lower := strings.ToLower(name)
	for _, s := range shades {
		if strings.Contains(lower, s.Name) {
			return s, true
		}
	}
	return Shade{Name: name, Low: 0, High: UnknownShade, Note: "nothing known of it"}, false
}

// ShadingMost is the most that shading together is let take, dB: fields find other ways around (judgement).
const ShadingMost = 30.0

// Shading returns what several things take together, dB: the sum of their planning figures, at most ShadingMost, and the names nobody knows.
//
// Valid for: as ShadeOf. Source: common practice.
func Shading(names []string) (loss float64, unknown []string) {
	for _, name := range names {
		shade, known := ShadeOf(name)
		loss += shade.Plan()
		if !known {
			unknown = append(unknown, name)
		}
	}
	return math.Min(loss, ShadingMost), unknown
}

// waveImpedance of free space, ohm.
const waveImpedance = 376.730313668

// SkinShielding returns what a thin closed conducting skin takes, dB: 20 log10(1 + eta/(2 R)).
//
// where sheetResistance is R (ohm per square), eta the impedance of free space. Valid for: skins thinner than a skin depth, no gaps: a bound, not a
// plan; an antenna inside a closed carbon part is refused, not reckoned. Source: textbooks of electromagnetic compatibility, recalled.
func SkinShielding(sheetResistance float64) float64 {
	return 2 * Decibels(1+waveImpedance/(2*sheetResistance))
}

// SkinDepth returns the depth at which a field falls to 1/e, m: sqrt(1/(pi f mu0 sigma)).
//
// where frequency f is in Hz, conductivity sigma in S/m. Valid for: good conductors. Source: textbooks of electromagnetics.
func SkinDepth(frequency, conductivity float64) float64 {
	const permeability = 4e-7 * math.Pi
	return math.Sqrt(1 / (math.Pi * frequency * permeability * conductivity))
}
