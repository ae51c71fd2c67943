package section

import "math"

// Finishes of the skin.
const (
	FinishPolished  = "polished"
	FinishSmooth    = "smooth"
	FinishOpenFrame = "covered_open_structure"
	FinishTapedFoam = "taped_foam"
)

// Roughness says how far the surface is from the smooth one of the tables; the zero value is smooth and clean.
type Roughness struct {
	Finish  string // one of the Finish constants; empty or unknown counts as smooth
	Insects bool   // flies or dust along the nose
	Rain    bool   // a wet, beaded surface
	Frost   bool   // hoar frost on the upper surface
}

// Effect is what roughness does to a section: factors on greatest lift, profile drag and lift slope, with one standard deviation
// relative to the clean value.
type Effect struct {
	Limit, LimitSpread float64
	Drag, DragSpread   float64
	Slope, SlopeSpread float64
	Note               string
	Source             string
}

// Sources of Effect.
const (
	sourceTrip = "Summary of Low-Speed Airfoil Data, volume 3 (1997): flat-bottomed 11.7 % section with zig-zag tape at 2 and 5 %, measured; " +
		"18 to 20 % less at full scale, Timmer, AIAA 2009-268"
	sourceJudged = "judgement"
)

// What zig-zag tape behind the nose leaves of the greatest lift, of the lift slope, and what it makes of the least drag, measured; the last
// entry of each at full scale. At Re 1e5 the tape lowers the drag: it shortens the laminar bubble.
var (
	tripLimit = newCurve(knot{1e5, 0.90, 0.04}, knot{2e5, 0.85, 0.04}, knot{3e5, 0.835, 0.04}, knot{4e5, 0.835, 0.04}, knot{3e6, 0.81, 0.04})
	tripDrag  = newCurve(knot{1e5, 0.83, 0.15}, knot{2e5, 1.26, 0.15}, knot{3e5, 1.50, 0.15}, knot{4e5, 1.75, 0.15}, knot{3e6, 1.75, 0.20})
	tripSlope = newCurve(knot{1e5, 0.95, 0.05}, knot{2e5, 0.83, 0.05}, knot{3e5, 0.85, 0.05}, knot{4e5, 0.855, 0.05}, knot{3e6, 0.93, 0.05})
)

// Effect returns what the roughness does at a Reynolds number.
//
// Formula: finish times the worst of insects, rain and frost; insects as zig-zag tape; frost 0.75 of the lift, twice the drag at least
// 1.75; rain 0.87 and 1.3; open structure 0.95 and half of the tape's drag; taped foam 0.92 and half of the tape's drag.
// Valid for: Re 1e5 to 3e6, held beyond; no roughness is counted on to lower the drag, though tape did at Re 1e5; roughness of a thousandth of the chord.
// Source: zig-zag tape measured; frost, rain and finishes are judgement, frost on the side of caution.
func (r Roughness) Effect(reynolds float64) Effect {
	logReynolds := logOf(reynolds)
	worst := clean()
	if r.Insects {
		worst = worst.worse(tripEffect(logReynolds))
	}
	if r.Rain {
		worst = worst.worse(rainEffect())
	}
	if r.Frost {
		worst = worst.worse(frostEffect(logReynolds))
	}
	return r.finishEffect(logReynolds).times(worst)
}

// smooth reports whether the surface is the smooth and clean one of the tables.
func (r Roughness) smooth() bool {
	return !r.Insects && !r.Rain && !r.Frost && r.Finish != FinishOpenFrame && r.Finish != FinishTapedFoam
}

// clean returns the effect of a smooth surface.
func clean() Effect { return Effect{Limit: 1, Drag: 1, Slope: 1} }

// tripEffect returns the effect of tape, flies or dust behind the nose.
func tripEffect(logReynolds float64) Effect {
	e := Effect{Note: "nose rough: boundary layer tripped", Source: sourceTrip}
	e.Limit, e.LimitSpread = tripLimit.at(logReynolds)
	e.Drag, e.DragSpread = tripDrag.at(logReynolds)
	e.Slope, e.SlopeSpread = tripSlope.at(logReynolds)
	return e
}

// rainEffect returns the effect of a wet surface.
func rainEffect() Effect {
	return Effect{Limit: 0.87, LimitSpread: 0.05, Drag: 1.3, DragSpread: 0.2, Slope: 0.95, SlopeSpread: 0.04, Note: "wet surface", Source: sourceJudged}
}

// frostEffect returns the effect of hoar frost.
func frostEffect(logReynolds float64) Effect {
	e := tripEffect(logReynolds)
	e.Limit, e.LimitSpread = 0.75, 0.07
	e.Drag, e.DragSpread = max(1.75, e.Drag), 0.3
	e.Note, e.Source = "frost: greatest lift a quarter less", sourceJudged
	return e
}

// finishEffect returns the effect of the finish.
func (r Roughness) finishEffect(logReynolds float64) Effect {
	if r.Finish != FinishOpenFrame && r.Finish != FinishTapedFoam {
		return clean()
	}
	tape, _ := tripDrag.at(logReynolds)
	half := max(1, float64(0.5*(1+tape)))
	if r.Finish == FinishOpenFrame {
		return Effect{0.95, 0.03, half, 0.15, 0.97, 0.03, "covering sags between the ribs", sourceJudged}
	}
	return Effect{0.92, 0.04, half, 0.2, 0.95, 0.03, "steps and grain of taped foam", sourceJudged}
}

// worse keeps of two effects the lower lift and slope and the higher drag.
func (e Effect) worse(other Effect) Effect {
	if other.Limit < e.Limit {
		e.Limit, e.LimitSpread, e.Note, e.Source = other.Limit, other.LimitSpread, other.Note, other.Source
	}
	if other.Drag > e.Drag {
		e.Drag, e.DragSpread = other.Drag, other.DragSpread
	}
	if other.Slope < e.Slope {
		e.Slope, e.SlopeSpread = other.Slope, other.SlopeSpread
	}
	return e
}

// times returns two effects one after the other; spreads add in squares.
func (e Effect) times(other Effect) Effect {
	if other.Note == "" {
		return e
	}
	root := func(a, b float64) float64 { return math.Sqrt(float64(a*a) + float64(b*b)) }
	e.Limit, e.LimitSpread = float64(e.Limit*other.Limit), root(e.LimitSpread, other.LimitSpread)
	e.Drag, e.DragSpread = max(e.Drag, other.Drag), max(e.DragSpread, other.DragSpread)
	e.Slope, e.SlopeSpread = min(e.Slope, other.Slope), max(e.SlopeSpread, other.SlopeSpread)
	e.Note, e.Source = other.Note, other.Source
	return e
}
