package packs

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Copper, annealed. Source: International Annealed Copper Standard.
const (
	CopperResistivity = 1.7241e-8 // ohm m at 20 C
	CopperCoefficient = 0.00393   // 1/K from 20 C
)

// Factors of a real conductor over solid copper of the same nominal area.
const (
	SolidFactor = 1.0
	// FlexibleFactor is what IEC 60228 lets class 5 conductors of 0.5 to 1 mm2 have over solid copper.
	FlexibleFactor = 1.13
)

// GaugeDiameter returns the diameter of a solid wire of the American wire gauge, m: 0.127 mm 92^((36-n)/39).
//
// where number is n (0 to 40). Valid for: solid wire. Source: ASTM B258, recalled.
func GaugeDiameter(number float64) float64 { return 0.127e-3 * elementary.Pow(92, (36-number)/39) }

// GaugeArea returns the area of a gauge, m2: pi d^2/4.
//
// where number is that of GaugeDiameter. Valid for: as GaugeDiameter. Source: geometry.
func GaugeArea(number float64) float64 { return math.Pi / 4 * square(GaugeDiameter(number)) }

// WireResistance returns the resistance of one conductor, ohm: f rho L/A (1 + a (T - 293.15)).
//
// where length is L (m), area A (m2), kelvin T (K), factor f (SolidFactor or FlexibleFactor). Valid for: copper at -50 to 150 C.
// Source: Ohm's law; International Annealed Copper Standard.
func WireResistance(length, area, kelvin, factor float64) float64 {
	warm := 1 + float64(CopperCoefficient*(kelvin-RoomCopper))
	return float64(factor * CopperResistivity * length / area * warm)
}

// LeadResistance returns the resistance there and back of a flexible lead, ohm: twice WireResistance with FlexibleFactor.
//
// where length is one way (m), area in m2, kelvin in K. Valid for: as WireResistance. Source: WireResistance.
func LeadResistance(length, area, kelvin float64) float64 {
	return 2 * WireResistance(length, area, kelvin, FlexibleFactor)
}

// Resistances of contacts, ohm each.
const (
	PinContact   = 0.020  // pins of 2.54 mm, greatest of a data sheet, 3 A
	WornContact  = 0.075  // the same worn or oxidised, common practice
	PowerContact = 0.0006 // plugs of 3.5 to 4 mm, common practice
	SlideSwitch  = 0.035  // small slide switch, common practice, 2 to 3 A
)

// chassisLimits are currents of single wires in air by gauge, A. Source: Floyd, Electric Circuits Fundamentals, table of wire gauges.
var chassisLimits = []point{
	{10, 55}, {12, 41}, {14, 32}, {16, 22}, {18, 16}, {20, 11}, {22, 7}, {24, 3.5}, {26, 2.2}, {28, 1.4}, {30, 0.86},
}

// GaugeLimit returns the steady current a single wire of a gauge carries in open air, A, and false outside 10 to 30.
//
// where number is the gauge. Valid for: chassis wiring, not bundled. Source: a handbook's table, linear between its gauges.
func GaugeLimit(number float64) (float64, bool) {
	first, last := chassisLimits[0].at, chassisLimits[len(chassisLimits)-1].at
	return interpolate(chassisLimits, number), number >= first && number <= last
}

// GaugeOf returns the gauge number of an area, not rounded: the inverse of GaugeArea.
//
// where area is in m2, above 0. Valid for: as GaugeDiameter. Source: GaugeDiameter.
func GaugeOf(area float64) float64 {
	diameter := math.Sqrt(4 * area / math.Pi)
	return 36 - float64(39*elementary.Log(diameter/0.127e-3)/elementary.Log(92))
}
