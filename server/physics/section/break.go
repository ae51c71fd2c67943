package section

import (
	"math"

	"pitgate/server/physics/planform"
)

// Break says how the lift of a section goes past its greatest value.
type Break struct {
	Remaining  float64 // lift two degrees past the stall over the greatest lift
	Spread     float64 // one standard deviation
	Hysteresis float64 // how far below the stall the flow attaches again, rad
	Sharp      bool    // more than a fifth of the lift goes at once
	Note       string
}

// Notes of Break.
const (
	NoteBreakMeasured = "as measured sections of this thickness break"
	NoteBreakJudged   = "judged from thinner and thicker sections"
)

const (
	keptGently  = 0.95
	keptSharply = 0.63
	hysteresis  = 2.5 * math.Pi / 180
)

// thickBreak is what thick sections keep of their greatest lift: laminar separation near the nose below Re 2e5, turbulent separation
// from the trailing edge above 5e5.
var thickBreak = newCurve(knot{6e4, 0.63, 0.06}, knot{2.5e5, 0.63, 0.08}, knot{5e5, 0.93, 0.12}, knot{5e6, 0.93, 0.08})

// StallBreak returns how sharply a section stalls.
//
// Formula: sections of 11.5 % and more keep 0.63 of their lift to Re 2.5e5 and 0.93 from 5e5; symmetrical ones of 10 % and less and plates
// 0.95; linear between in thickness; cambered thin sections as thick ones below 1.5e5.
// Valid for: slow rise of incidence; outlines as far as their thickness tells.
// Source: Summary of Low-Speed Airfoil Data, volumes 1 to 3 (lift curves past the stall of nine sections); the three kinds of stall of
// NACA TN 2502 (McCullough and Gault).
func StallBreak(s planform.Section, reynolds float64) Break { return Prepare(s).StallBreak(reynolds) }

// StallBreak returns the break as the function of the same name does.
func (f Foil) StallBreak(reynolds float64) Break {
	logReynolds := logOf(reynolds)
	thick, spread := thickBreak.at(logReynolds)
	share := f.sharpShare(logReynolds)
	out := Break{Remaining: blend(keptGently, thick, share), Spread: max(0.05, spread), Note: NoteBreakMeasured}
	if f.estimated || (share > 0 && share < 1) {
		out.Spread, out.Note = float64(1.5*out.Spread), NoteBreakJudged
	}
	out.Sharp = out.Remaining < 0.8
	lost := max(0, min(1, (keptGently-out.Remaining)/(keptGently-keptSharply)))
	out.Hysteresis = float64(hysteresis * lost)
	return out
}

// sharpShare returns how far a section breaks as thick ones do: 0 to 1.
func (f Foil) sharpShare(logReynolds float64) float64 {
	if f.family == planform.FamilyFlatPlate || f.family == planform.FamilyCurvedSheet {
		return 0
	}
	share := max(0, min(1, (f.Shape.Thickness-0.101)/(0.115-0.101)))
	if f.Shape.Camber > 0 {
		low, _ := thinCambered.at(logReynolds)
		share = max(share, float64(low*min(1, f.Shape.Camber/0.0165)))
	}
	return share
}

// thinCambered is how far thin cambered sections break as thick ones do: wholly up to Re 1e5, not at all from 2e5.
var thinCambered = newCurve(knot{1e5, 0.8, 0}, knot{2e5, 0, 0})
