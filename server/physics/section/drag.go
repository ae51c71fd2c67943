package section

import (
	"math"

	"pitgate/server/physics/planform"
)

// Drag is the profile drag coefficient of a section.
type Drag struct {
	Value  float64
	Spread float64 // one standard deviation
	Inside bool
	Note   string
	Source string
}

// Notes of Drag.
const (
	NoteDragTable   = "least drag from tables of measured and merged sections, rise with lift from measured polars"
	NoteDragPlate   = "plate: least drag measured, no suction at its nose"
	NoteDragOutside = "outside the tables or past the stall: doubtful"
)

// dragKnots are the least profile drag of symmetrical sections of one thickness; the spread of a knot is a share of its value.
type dragKnots struct {
	thickness float64
	knots     []knot
}

// dragRow is the same as a curve.
type dragRow struct {
	thickness float64
	least     curve
}

// newShares builds a curve from knots whose spread is a share of their value.
func newShares(knots ...knot) curve {
	c := newCurve(knots...)
	for i, value := range c.value {
		c.spread[i] = float64(c.spread[i] * value)
	}
	return c
}

// dragTables: 9 and 10.1 % measured to Re 3e5; 12 % between two measured sections to 2e5 and SAND80-2114 above, which lies up to a quarter
// lower than one of them; 15 to 21 % SAND80-2114.
var dragTables = []dragKnots{
	{0.09, []knot{{4e4, 0.0165, 0.3}, {5.97e4, 0.0125, 0.2}, {1.003e5, 0.0096, 0.15}, {1.506e5, 0.0085, 0.12}, {1.99e5, 0.0081, 0.1},
		{3.029e5, 0.0068, 0.1}, {7e5, 0.0062, 0.15}, {1e6, 0.0060, 0.15}, {5e6, 0.0059, 0.15}}},
	{0.101, []knot{{4e4, 0.0185, 0.3}, {6.14e4, 0.0145, 0.2}, {1.015e5, 0.0105, 0.15}, {2.033e5, 0.0082, 0.12}, {3.048e5, 0.0073, 0.1},
		{7e5, 0.0065, 0.15}, {1e6, 0.0063, 0.15}, {5e6, 0.0062, 0.15}}},
	{0.12, []knot{{4e4, 0.0200, 0.3}, {5.65e4, 0.0178, 0.2}, {9.9e4, 0.0134, 0.15}, {1.51e5, 0.0113, 0.15}, {2.01e5, 0.0100, 0.12},
		{3.6e5, 0.0084, 0.15}, {7e5, 0.0070, 0.15}, {1e6, 0.0067, 0.12}, {2e6, 0.0065, 0.12}, {5e6, 0.0064, 0.12}}},
	{0.15, []knot{{4e4, 0.0196, 0.3}, {8e4, 0.0147, 0.2}, {1.6e5, 0.0116, 0.15}, {3.6e5, 0.0091, 0.15}, {7e5, 0.0077, 0.15},
		{1e6, 0.0074, 0.12}, {2e6, 0.0070, 0.12}, {5e6, 0.0068, 0.12}}},
	{0.18, []knot{{4e4, 0.0214, 0.3}, {8e4, 0.0162, 0.2}, {1.6e5, 0.0128, 0.15}, {3.6e5, 0.0101, 0.15}, {7e5, 0.0085, 0.15},
		{1e6, 0.0082, 0.12}, {2e6, 0.0077, 0.12}, {5e6, 0.0073, 0.12}}},
	{0.21, []knot{{4e4, 0.0232, 0.3}, {8e4, 0.0177, 0.2}, {1.6e5, 0.0139, 0.15}, {3.6e5, 0.0111, 0.15}, {7e5, 0.0094, 0.15},
		{1e6, 0.0089, 0.12}, {2e6, 0.0082, 0.12}, {5e6, 0.0078, 0.12}}},
}

// dragRows are the curves of the tables.
var dragRows = func() []dragRow {
	rows := make([]dragRow, len(dragTables))
	for i, t := range dragTables {
		rows[i] = dragRow{t.thickness, newShares(t.knots...)}
	}
	return rows
}()

// camberDrag is the least drag of sections of 2 % camber and more over that of symmetrical ones: a laminar bubble below Re 1.5e5.
var camberDrag = newCurve(knot{6e4, 1.9, 0.35}, knot{1e5, 1.6, 0.25}, knot{2e5, 1.12, 0.12}, knot{3e5, 1.07, 0.08}, knot{1e6, 1.05, 0.08})

// sheetDrag is the least drag of the measured sheet of 5.9 % camber.
var sheetDrag = newShares(knot{4e4, 0.026, 0.3}, knot{5.93e4, 0.0213, 0.15}, knot{9.95e4, 0.0166, 0.12}, knot{1.985e5, 0.0137, 0.1},
	knot{2.975e5, 0.0123, 0.1}, knot{1e6, 0.0105, 0.25})

// ProfileDrag returns the profile drag coefficient of a section at a Reynolds number and lift coefficient.
//
// Formula: cd = cd0 (1 + 1.33 x^2 + 0.84 x^6) + cd_b (1 - x); x = (cl - cl_i)/(limit - cl_i) on either side; cl_i = -2 pi a0, the lift at
// which a cambered section has its least drag; cd_b the laminar bubble of cambered sections, which shrinks as the nose is loaded; plates
// have cd0 + cl^2/(2 pi) alone, sheets add 0.033 (cl_i - cl)^2 below cl_i.
// Valid for: Re 4e4 to 5e6 and lift up to the limit; beyond x = 1 it is held at x = 1.2 and marked.
// Source: least drag of Summary of Low-Speed Airfoil Data and SAND80-2114; the shape of the rise drawn through four measured polars near
// Re 3e5; plate from leading-edge suction that is lost.
func ProfileDrag(s planform.Section, reynolds, liftCoefficient float64, rough Roughness) Drag {
	return Prepare(s).ProfileDrag(reynolds, liftCoefficient, rough)
}

// ProfileDrag returns the drag as the function of the same name does.
func (f Foil) ProfileDrag(reynolds, liftCoefficient float64, rough Roughness) Drag {
	if math.IsNaN(liftCoefficient) {
		liftCoefficient = 0
	}
	out, bubble := f.leastDrag(logOf(reynolds))
	ideal := f.idealLift()
	x := f.liftShare(reynolds, liftCoefficient, ideal, rough)
	if x > 1 || !(reynolds >= trustLowest && reynolds <= tableHighest) {
		out.Inside, out.Note = false, NoteDragOutside
	}
	rise := dragRise(min(1.2, x))
	if f.family == planform.FamilyFlatPlate {
		rise = 1
	}
	effect := rough.Effect(reynolds)
	base := float64(out.Value*rise) + float64(bubble*max(0, 1-x))
	out.Value = float64(base*effect.Drag) + f.lostSuction(liftCoefficient, ideal)
	share := out.Spread + effect.DragSpread + float64(0.1*max(0, x))
	if !out.Inside {
		share = max(0.4, share)
	}
	out.Spread = float64(out.Value * share)
	return out
}

// dragRise returns profile drag over its least value.
//
// Formula: 1 + 1.33 x^2 + 0.84 x^6.
// Valid for: x from 0 to 1.2.
// Source: least squares through the measured polars of sections of 10, 12, 12 and 15 % near Re 3e5, each to its own measured limit;
// they scatter by 9 % of the drag.
func dragRise(x float64) float64 {
	square := float64(x * x)
	return 1 + float64(1.33*square) + float64(0.84*float64(square*float64(square*square)))
}

// idealLift returns the lift coefficient of least drag.
func (f Foil) idealLift() float64 {
	if f.family == planform.FamilyCurvedSheet {
		return f.Shape.Camber / sheetCamber
	}
	return float64(-2 * float64(math.Pi*f.ZeroLift))
}

// liftShare returns how far the lift is from its ideal value towards the limit on its side: 0 to 1, more past the stall.
func (f Foil) liftShare(reynolds, lift, ideal float64, rough Roughness) float64 {
	reach := ideal - f.MinimumLift(reynolds, rough).Value
	if lift > ideal {
		reach = f.MaximumLift(reynolds, rough).Value - ideal
	}
	return math.Abs(lift-ideal) / max(0.2, reach)
}

// leastDrag returns the least drag without the laminar bubble of cambered sections, Spread as a share of it, and what the bubble adds.
func (f Foil) leastDrag(logReynolds float64) (out Drag, bubble float64) {
	switch f.family {
	case planform.FamilyFlatPlate:
		return Drag{plateFriction(logReynolds), 0.2, true, NoteDragPlate, sourceLowSpeedBook}, 0
	case planform.FamilyCurvedSheet:
		value, spread := sheetDrag.at(logReynolds)
		share := min(1, math.Abs(f.Shape.Camber)/sheetCamber)
		return Drag{blend(plateFriction(logReynolds), value, share), blend(0.2, spread/value, share), true, NoteDragTable, sourceLowSpeedData}, 0
	}
	value, spread := dragAt(f.Shape.Thickness, logReynolds)
	factor, more := camberDrag.at(logReynolds)
	share := min(1, math.Abs(f.Shape.Camber)/0.02)
	bubble = float64(float64(value*(factor-1)) * share)
	out = Drag{value, spread/value + float64(more*share)/factor, true, NoteDragTable, sourceLowSpeedData + "; " + sourceSandia}
	if f.estimated {
		out.Spread += 0.1
	}
	if f.Shape.Thickness > 0.24 || f.Shape.Thickness < 0.06 {
		out.Inside, out.Note = false, NoteDragOutside
	}
	return out, bubble
}

// dragAt interpolates the rows in thickness, held at the ends.
func dragAt(thickness, logReynolds float64) (value, spread float64) {
	i := 1
	for i < len(dragRows)-1 && thickness > dragRows[i].thickness {
		i++
	}
	a, b := dragRows[i-1], dragRows[i]
	share := max(0, min(1, (thickness-a.thickness)/(b.thickness-a.thickness)))
	va, sa := a.least.at(logReynolds)
	vb, sb := b.least.at(logReynolds)
	return blend(va, vb, share), blend(sa, sb, share)
}

// plateCurveDrag is the least drag of a plate 2 % thick, measured from Re 1e5 to 3e5, the rest from memory.
var plateCurveDrag = newShares(knot{2e4, 0.024, 0.3}, knot{6e4, 0.0160, 0.3}, knot{1.001e5, 0.0143, 0.2}, knot{1.997e5, 0.0139, 0.2}, knot{3.004e5, 0.0133, 0.2},
	knot{1e6, 0.0125, 0.3})

// plateFriction returns the least drag of a plate.
func plateFriction(logReynolds float64) float64 {
	value, _ := plateCurveDrag.at(logReynolds)
	return value
}

// lostSuction returns the drag of a nose that gives no suction.
//
// Formula: plate: cl^2/(2 pi), the whole suction lost; sheet: 0.033 (cl_i - cl)^2 below the lift at which the air meets the nose straight.
// Valid for: attached flow behind a short bubble.
// Source: thin-aerofoil theory (plate); drawn through the measured polars of the sheet at Re 2e5 and 3e5.
func (f Foil) lostSuction(lift, ideal float64) float64 {
	lift = max(-3, min(3, lift))
	square := float64((lift - ideal) * (lift - ideal))
	switch f.family {
	case planform.FamilyFlatPlate:
		return square / (2 * math.Pi)
	case planform.FamilyCurvedSheet:
		share := min(1, math.Abs(f.Shape.Camber)/sheetCamber)
		if lift > ideal {
			return float64((1-share)*square) / (2 * math.Pi)
		}
		return float64(square * blend(1/(2*math.Pi), 0.033, share))
	}
	return 0
}
