package section

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// Limit is the greatest lift coefficient of a section at one Reynolds number.
type Limit struct {
	Value  float64
	Spread float64 // one standard deviation
	Inside bool    // the Reynolds number and section lie inside the tables
	Note   string  // where the value comes from and why it may be doubtful
}

// Notes of Limit.
const (
	NoteGiven        = "given by the builder"
	NoteSymmetrical  = "symmetrical section, table from SAND80-2114 (section code merged with tunnel data)"
	NoteFromMemory   = "lower edge of a band from memory, not verified"
	NoteExtrapolated = "outside the table, held at its edge: doubtful"
)

const (
	trustLowest  = 4e4 // below this the section hardly lifts and tables scatter
	tableHighest = 5e6
	spreadTable  = 0.04
	spreadLow    = 0.06
	spreadMemory = 0.10
	spreadEdge   = 0.15
)

// curve is a value against the decimal logarithm of the Reynolds number.
type curve struct{ logReynolds, value []float64 }

// newCurve builds a curve from pairs of Reynolds number and value.
func newCurve(pairs ...[2]float64) curve {
	c := curve{}
	for _, p := range pairs {
		c.logReynolds = append(c.logReynolds, elementary.Log10(p[0]))
		c.value = append(c.value, p[1])
	}
	return c
}

// at interpolates linearly in the logarithm and holds the ends.
func (c curve) at(logReynolds float64) float64 {
	last := len(c.value) - 1
	if !(logReynolds > c.logReynolds[0]) {
		return c.value[0]
	}
	for i := 1; i <= last; i++ {
		if logReynolds <= c.logReynolds[i] {
			share := (logReynolds - c.logReynolds[i-1]) / (c.logReynolds[i] - c.logReynolds[i-1])
			return blend(c.value[i-1], c.value[i], share)
		}
	}
	return c.value[last]
}

// symmetricalCurves are the greatest lift coefficients of symmetrical four-digit sections, thickness rising. The 9 % row and the
// 12 % row are from memory (lower edge), the others are SAND80-2114.
var symmetricalCurves = []struct {
	thickness float64
	verified  bool
	limit     curve
}{
	{0.09, false, newCurve([2]float64{2e4, 0.38}, [2]float64{5e4, 0.60}, [2]float64{1e5, 0.70}, [2]float64{2e5, 0.75},
		[2]float64{5e5, 0.80}, [2]float64{1e6, 0.90}, [2]float64{2e6, 1.05}, [2]float64{5e6, 1.20})},
	{0.12, false, newCurve([2]float64{2e4, 0.38}, [2]float64{5e4, 0.60}, [2]float64{1e5, 0.75}, [2]float64{1.6e5, 0.853},
		[2]float64{3.6e5, 0.981}, [2]float64{7e5, 1.075}, [2]float64{1e6, 1.121}, [2]float64{2e6, 1.20}, [2]float64{5e6, 1.33})},
	{0.15, true, newCurve([2]float64{2e4, 0.336}, [2]float64{4e4, 0.573}, [2]float64{8e4, 0.719}, [2]float64{1.6e5, 0.832},
		[2]float64{3.6e5, 0.957}, [2]float64{7e5, 1.051}, [2]float64{1e6, 1.097}, [2]float64{2e6, 1.196}, [2]float64{5e6, 1.330})},
	{0.18, true, newCurve([2]float64{2e4, 0.179}, [2]float64{4e4, 0.476}, [2]float64{8e4, 0.661}, [2]float64{1.6e5, 0.795},
		[2]float64{3.6e5, 0.928}, [2]float64{7e5, 1.029}, [2]float64{1e6, 1.080}, [2]float64{2e6, 1.181}, [2]float64{5e6, 1.307})},
	{0.21, true, newCurve([2]float64{2e4, 0.062}, [2]float64{4e4, 0.343}, [2]float64{8e4, 0.587}, [2]float64{1.6e5, 0.744},
		[2]float64{3.6e5, 0.897}, [2]float64{7e5, 1.012}, [2]float64{1e6, 1.071}, [2]float64{2e6, 1.182}, [2]float64{5e6, 1.307})},
}

// Gain of the greatest lift coefficient by camber over the symmetrical 12 % section: differences of lower band edges, from memory.
var (
	camberGainTwo = newCurve([2]float64{5e4, 0.15}, [2]float64{1e5, 0.20}, [2]float64{2e5, 0.20},
		[2]float64{5e5, 0.25}, [2]float64{1e6, 0.25}, [2]float64{2e6, 0.20})
	camberGainFour = newCurve([2]float64{5e4, 0.30}, [2]float64{1e5, 0.35}, [2]float64{2e5, 0.35},
		[2]float64{5e5, 0.35}, [2]float64{1e6, 0.35}, [2]float64{2e6, 0.30})
)

// Plate and sheet: lower edges, from memory.
var (
	flatPlateCurve   = newCurve([2]float64{2e4, 0.55}, [2]float64{1e5, 0.60}, [2]float64{3e5, 0.62}, [2]float64{1e6, 0.65})
	curvedSheetCurve = newCurve([2]float64{2e4, 0.80}, [2]float64{1e5, 0.95}, [2]float64{3e5, 1.00}, [2]float64{1e6, 1.05})
)

// MaximumLift returns the greatest lift coefficient of a section at a Reynolds number on its chord.
//
// Formula: linear in log10 Re and in thickness; camber adds a gain linear between 0, 2 and 4 %.
// Valid for: Re 4e4 to 5e6, thickness 9 to 21 %, camber 0 to 4 %; outside it is held at the edge, marked, and its spread widened.
// Source: SAND80-2114 (Sheldahl and Klimas) for 15, 18 and 21 %; the rest from memory, lower edge.
func MaximumLift(s planform.Section, reynolds float64, rough Roughness) Limit {
	if s.ClMax > 0 {
		return Limit{Value: s.ClMax, Inside: true, Note: NoteGiven}.rough(rough)
	}
	logReynolds := elementary.Log10(max(1, min(1e9, reynolds)))
	limit := familyLimit(s, logReynolds)
	if !(reynolds >= trustLowest && reynolds <= tableHighest) {
		limit.Inside, limit.Spread, limit.Note = false, spreadEdge, NoteExtrapolated
	}
	return limit.rough(rough)
}

// familyLimit returns the limit by family, inside the range of Reynolds numbers.
func familyLimit(s planform.Section, logReynolds float64) Limit {
	switch s.Family {
	case planform.FamilyFlatPlate:
		return Limit{flatPlateCurve.at(logReynolds), spreadMemory, true, NoteFromMemory}
	case planform.FamilyCurvedSheet:
		return Limit{curvedSheetCurve.at(logReynolds), spreadMemory, true, NoteFromMemory}
	}
	camber, _ := s.EffectiveCamber()
	if s.Family == planform.FamilyReflexed {
		camber = float64(0.5 * camber)
	}
	limit := symmetricalLimit(s.EffectiveThickness(), logReynolds)
	if camber != 0 {
		limit.Value = max(0.05, limit.Value+camberGain(camber, logReynolds))
		limit.Spread, limit.Note = spreadMemory, NoteFromMemory
	}
	if math.Abs(camber) > 0.045 {
		limit.Inside, limit.Spread, limit.Note = false, spreadEdge, NoteExtrapolated
	}
	return limit
}

// symmetricalLimit interpolates between the symmetrical rows in thickness.
func symmetricalLimit(thickness, logReynolds float64) Limit {
	rows := symmetricalCurves
	last := len(rows) - 1
	if thickness < 0.06 || thickness > 0.24 {
		edge := rows[0]
		if thickness > 0.24 {
			edge = rows[last]
		}
		return Limit{edge.limit.at(logReynolds), spreadEdge, false, NoteExtrapolated}
	}
	i := 1
	for i < last && thickness > rows[i].thickness {
		i++
	}
	low, high := rows[i-1], rows[i]
	share := max(0, min(1, (thickness-low.thickness)/(high.thickness-low.thickness)))
	limit := Limit{blend(low.limit.at(logReynolds), high.limit.at(logReynolds), share), spreadMemory, true, NoteFromMemory}
	if (low.verified || share > 0.999) && high.verified {
		limit.Spread, limit.Note = tableSpread(logReynolds), NoteSymmetrical
	}
	return limit
}

// tableSpread returns the spread of the verified rows: wider below Re 1.6e5.
func tableSpread(logReynolds float64) float64 {
	if logReynolds < 5.204 {
		return spreadLow
	}
	return spreadTable
}

// camberGain returns what camber adds, linear between 0, 2 and 4 % and held beyond; negative camber takes as much away.
func camberGain(camber, logReynolds float64) float64 {
	size := min(0.04, math.Abs(camber))
	two, four := camberGainTwo.at(logReynolds), camberGainFour.at(logReynolds)
	gain := float64(two*size) / 0.02
	if size > 0.02 {
		gain = blend(two, four, (size-0.02)/0.02)
	}
	return math.Copysign(gain, camber)
}

// Roughness says how far the surface is from the smooth one of the tables.
type Roughness struct {
	LimitFactor float64 // multiplies the greatest lift; 0 = 1, smooth
}

// rough returns the limit with its factor applied.
func (l Limit) rough(r Roughness) Limit {
	if r.LimitFactor > 0 {
		l.Value, l.Spread = float64(l.Value*r.LimitFactor), float64(l.Spread*r.LimitFactor)
	}
	return l
}

// blend interpolates linearly.
func blend(a, b, share float64) float64 { return a + float64(share*(b-a)) }
