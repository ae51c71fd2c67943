package section

import (
	"math"

	"pitgate/server/physics/planform"
)

// Limit is the greatest lift coefficient of a section at one Reynolds number.
type Limit struct {
	Value  float64
	Spread float64 // one standard deviation
	Inside bool    // the Reynolds number and section lie inside the tables
	Note   string  // why it may be doubtful
	Source string  // where the value comes from
}

// Notes of Limit.
const (
	NoteGiven        = "given by the builder"
	NoteMeasured     = "measured on sections like this one"
	NoteSymmetrical  = "symmetrical section, table from SAND80-2114 (section code merged with tunnel data)"
	NoteFromMemory   = "lower edge of a band from memory, not verified"
	NoteOutline      = "estimated for the outline from the nearest family"
	NoteUpsideDown   = "section upside down: judged from its camber"
	NoteExtrapolated = "outside the table, held at its edge: doubtful"
)

const (
	trustLowest  = 4e4 // below this the section hardly lifts and tables scatter
	tableHighest = 5e6
	edgeSpread   = 0.15
	givenSpread  = 0.05 // nobody knows his own section better than two tunnels know one
	ownSpread    = 0.05 // more for an outline that is none of the measured sections
	lowestLimit  = 0.05 // no table goes below this
)

// MaximumLift returns the greatest lift coefficient of a section at a Reynolds number on its chord.
//
// Formula: linear in log10 Re, in thickness and in camber between 0, 2, 3.5 and 6 %; a sheet between plate and 5.9 % camber; a reflexed
// section between the symmetrical one and 1.65 % camber; a sharp nose counts as a thinner section; roughness multiplies. A part without
// slat gains nothing by one.
// Valid for: Re 4e4 to 5e6, thickness 6 to 21 %, camber to 6 %; outside it is held at the edge, marked, and its spread widened.
// Source: measured sections of Airfoils at Low Speeds (1989) and Summary of Low-Speed Airfoil Data (1995 to 1997) up to Re 4e5;
// SAND80-2114 for symmetrical ones of 15 % and more; the rest from memory, lower edge.
func MaximumLift(s planform.Section, reynolds float64, rough Roughness) Limit {
	return Prepare(s).MaximumLift(reynolds, rough)
}

// MinimumLift returns the greatest downward lift coefficient of a section, Value negative.
//
// Formula: minus MaximumLift of the section upside down.
// Valid for: as MaximumLift.
// Source: symmetry.
func MinimumLift(s planform.Section, reynolds float64, rough Roughness) Limit {
	return Prepare(s).MinimumLift(reynolds, rough)
}

// MinimumLift returns the greatest downward lift as the function of the same name does.
func (f Foil) MinimumLift(reynolds float64, rough Roughness) Limit {
	f.Shape.Camber, f.given = -f.Shape.Camber, 0
	limit := f.MaximumLift(reynolds, rough)
	limit.Value = -limit.Value
	return limit
}

// MaximumLift returns the greatest lift coefficient as the function of the same name does.
func (f Foil) MaximumLift(reynolds float64, rough Roughness) Limit {
	if f.given > 0 {
		rough.Finish = "" // the builder's own number knows it
		return Limit{f.given, float64(givenSpread * f.given), true, NoteGiven, NoteGiven}.with(rough, reynolds)
	}
	limit := f.familyLimit(logOf(reynolds))
	if !(reynolds >= trustLowest && reynolds <= tableHighest) {
		limit.outside()
	}
	limit.Value = max(lowestLimit, limit.Value)
	return limit.with(rough, reynolds)
}

// outside marks a limit as held at the edge of the tables.
func (l *Limit) outside() {
	l.Inside, l.Spread, l.Note = false, max(edgeSpread, l.Spread), NoteExtrapolated
}

// with returns the limit with the effect of roughness.
func (l Limit) with(rough Roughness, reynolds float64) Limit {
	if rough.smooth() {
		return l
	}
	effect := rough.Effect(reynolds)
	wide := float64(l.Value * effect.LimitSpread)
	narrow := float64(l.Spread * effect.Limit)
	l.Value, l.Spread = float64(l.Value*effect.Limit), math.Sqrt(float64(wide*wide)+float64(narrow*narrow))
	return l
}

// familyLimit returns the limit by family, inside the range of Reynolds numbers.
func (f *Foil) familyLimit(logReynolds float64) Limit {
	limit := f.tableLimit(f.Shape.Thickness, logReynolds)
	if !f.estimated {
		return limit
	}
	if nose := f.noseThickness(); nose < f.Shape.Thickness && f.Shape.Thickness > 0.04 {
		if sharper := f.tableLimit(nose, logReynolds); sharper.Value < limit.Value {
			limit = sharper
		}
	}
	if limit.Inside {
		limit.Note = NoteOutline
	}
	limit.Spread += ownSpread
	return limit
}

// noseThickness returns the thickness of the four-digit section whose nose rises as this one's does.
//
// Formula: t = dy/0.26.
// Valid for: outlines; a blunter nose than its thickness gives no more lift here.
// Source: leading-edge parameter of the USAF Stability and Control DATCOM, 4.1.1 (from memory): the greatest lift of thin sections goes
// with the rise of the nose; the three kinds of stall of NACA TN 2502.
func (f *Foil) noseThickness() float64 { return max(0.02, f.Shape.NoseRise/noseRiseFactor) }

// tableLimit returns the limit of the family at a thickness.
func (f *Foil) tableLimit(thickness, logReynolds float64) Limit {
	camber := f.Shape.Camber
	switch f.family {
	case planform.FamilyFlatPlate:
		return plateLimit(logReynolds)
	case planform.FamilyCurvedSheet:
		return sheetLimit(camber, logReynolds)
	case planform.FamilyReflexed:
		return reflexLimit(thickness, camber, logReynolds)
	}
	if camber < 0 {
		return upsideDown(rowsLimit(camberRows[0], thickness, logReynolds), camber)
	}
	return camberedLimit(thickness, camber, logReynolds)
}

// plateLimit returns the limit of a flat plate.
func plateLimit(logReynolds float64) Limit {
	value, spread := plateCurve.at(logReynolds)
	if note := noteOf(spread); note == NoteMeasured {
		return Limit{value, spread, true, note, sourceLowSpeedBook}
	}
	return Limit{value, spread, true, NoteFromMemory, sourceMemory}
}

// sheetLimit returns the limit of a curved sheet, between plate and measured sheet by camber.
func sheetLimit(camber, logReynolds float64) Limit {
	limit := plateLimit(logReynolds)
	if camber < 0 {
		return upsideDown(limit, camber)
	}
	value, spread := sheetCurve.at(logReynolds)
	measured := Limit{value, spread, true, NoteMeasured, sourceLowSpeedData}
	out := mix(limit, measured, min(1, camber/sheetCamber))
	if camber > 0.07 {
		out.outside()
	}
	return out
}

// reflexLimit returns the limit of a reflexed section: what camber adds to the symmetrical one is that of the measured section.
func reflexLimit(thickness, camber, logReynolds float64) Limit {
	limit := rowsLimit(camberRows[0], thickness, logReynolds)
	if camber < 0 {
		return upsideDown(limit, camber)
	}
	value, spread := reflexCurve.at(logReynolds)
	plain := rowsLimit(camberRows[0], reflexThickness, logReynolds)
	share := camber / reflexCamber
	limit.Value += float64(max(0, value-plain.Value) * min(2, share))
	limit.Spread = max(limit.Spread, spread) + float64(0.03*math.Abs(1-min(2, share)))
	if limit.Inside && share > 0.5 && limit.Note != NoteSymmetrical {
		limit.Note, limit.Source = noteOf(limit.Spread), sourceLowSpeedData
	}
	if share > 2 {
		limit.outside()
	}
	return limit
}

// noteOf tells measured values from remembered ones by their spread.
func noteOf(spread float64) string {
	if spread <= 0.08 {
		return NoteMeasured
	}
	return NoteFromMemory
}

// upsideDown returns the limit of a section flown with its camber downward.
//
// Formula: clmax = clmax(symmetrical) (1 - 6 m).
// Valid for: camber m to 6 %.
// Source: judgement: the nose meets the air at the angle of a section of less lift; NACA Report 824 charts from memory (12 % section of
// 4 % camber near -1.1 where the symmetrical one reaches 1.5).
func upsideDown(limit Limit, camber float64) Limit {
	limit.Value = float64(limit.Value * max(0.3, 1-float64(6*math.Abs(camber))))
	limit.Spread = max(limit.Spread, memory) + float64(2*math.Abs(camber))
	if limit.Inside {
		limit.Note = NoteUpsideDown
	}
	if camber < -0.07 {
		limit.outside()
	}
	return limit
}

// camberedLimit interpolates between the tables of two cambers.
func camberedLimit(thickness, camber, logReynolds float64) Limit {
	i, share := between(camberPlaces, camber)
	limit := rowsLimit(camberRows[i-1], thickness, logReynolds)
	if share > 0 {
		limit = mix(limit, rowsLimit(camberRows[i], thickness, logReynolds), share)
	}
	if camber > 0.065 {
		limit.outside()
	}
	return limit
}

// rowsLimit interpolates between the rows of one camber in thickness; beyond the rows it is held, and marked farther out.
func rowsLimit(rows []limitRow, thickness, logReynolds float64) Limit {
	i := 1
	for i < len(rows)-1 && thickness > rows[i].thickness {
		i++
	}
	a, b := &rows[i-1], &rows[i]
	share := max(0, min(1, (thickness-a.thickness)/(b.thickness-a.thickness)))
	limit := a.at(logReynolds)
	if share > 0 {
		limit = mix(limit, b.at(logReynolds), share)
	}
	beyond := max(0, max(rows[0].thickness-thickness, thickness-rows[len(rows)-1].thickness))
	limit.Spread += min(0.1, beyond)
	if beyond > 0.03 {
		limit.outside()
	}
	return limit
}

// at returns the limit of a row.
func (r *limitRow) at(logReynolds float64) Limit {
	value, spread := r.limit.at(logReynolds)
	note, source := noteOf(spread), r.source
	if r.source == sourceSandia {
		note = NoteSymmetrical
	} else if note == NoteFromMemory {
		source = sourceMemory
	}
	return Limit{value, spread, true, note, source}
}

// mix interpolates between two limits; note and source are those of the nearer, a doubtful one marks the mixture as far as it counts.
func mix(a, b Limit, share float64) Limit {
	out := a
	if share > 0.5 {
		out = b
	}
	out.Value, out.Spread = blend(a.Value, b.Value, share), blend(a.Spread, b.Spread, share)
	out.Inside = (a.Inside || share == 1) && (b.Inside || share == 0)
	if !out.Inside {
		out.Note = NoteExtrapolated
	}
	return out
}
