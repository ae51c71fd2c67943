package section

import (
	"math"

	"pitgate/server/physics/planform"
)

// Slope is the lift slope of a section in the range where its flow is attached.
type Slope struct {
	PerRadian float64
	Spread    float64 // one standard deviation
	Inside    bool
	Note      string
}

// Notes of Slope.
const (
	NoteSlopeMeasured = "mean of the measured sections at this Reynolds number"
	NoteSlopePlate    = "slope of a measured plate"
	NoteSlopeEdge     = "outside the measured Reynolds numbers, held: doubtful"
)

// slopeCurve is the mean lift slope of measured sections; its spread is the scatter among them. From Re 6e4 to 3e5 five or six
// sections of 10 to 15 %, straight through lift of about -0.2 to 0.8; at 6e6 the 12 % symmetrical section. Near 4e4 symmetrical
// sections lift nothing within a degree or two of zero.
var slopeCurve = newCurve(knot{4e4, 5.60, 0.50}, knot{6e4, 5.86, 0.35}, knot{1e5, 5.87, 0.35}, knot{2e5, 5.89, 0.30}, knot{3e5, 6.00, 0.32},
	knot{5e5, 6.03, 0.30}, knot{1e6, 6.06, 0.25}, knot{6e6, 6.11, 0.15})

// plateSlopeCurve is the lift slope of plates and sheets: that of the measured plate, straight through lift of -0.38 to 0.41. A sheet
// whose lower side separates near no lift is steeper there, which the spread does not cover.
var plateSlopeCurve = newCurve(knot{2e4, 5.2, 0.6}, knot{1e5, 5.50, 0.3}, knot{3e5, 5.50, 0.3}, knot{1e6, 5.6, 0.4})

// LiftSlope returns the lift slope of a section at a Reynolds number on its chord.
//
// Formula: linear in log10 Re through measured slopes; two pi is the limit of thin-aerofoil theory.
// Valid for: Re 4e4 to 6e6, attached flow; a section with a laminar bubble departs from it by more than the spread within two degrees.
// Source: slopes of Summary of Low-Speed Airfoil Data, volumes 1 to 3, of the plate of Airfoils
// at Low Speeds, and of NASA TM 4074 (Ladson) at 6e6.
func LiftSlope(s planform.Section, reynolds float64) Slope { return Prepare(s).LiftSlope(reynolds) }

// LiftSlope returns the lift slope as the function of the same name does.
func (f Foil) LiftSlope(reynolds float64) Slope {
	table, note := slopeCurve, NoteSlopeMeasured
	if f.family == planform.FamilyFlatPlate || f.family == planform.FamilyCurvedSheet {
		table, note = plateSlopeCurve, NoteSlopePlate
	}
	value, spread := table.at(logOf(reynolds))
	out := Slope{value, spread, true, note}
	if !(reynolds >= trustLowest && reynolds <= 6e6) {
		out.Inside, out.Spread, out.Note = false, max(0.6, spread), NoteSlopeEdge
	}
	if f.estimated {
		out.Spread = math.Sqrt(float64(out.Spread*out.Spread) + 0.01)
	}
	return out
}
