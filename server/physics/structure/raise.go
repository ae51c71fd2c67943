package structure

import "pitgate/server/physics/loads"

// Change is a thicker wall or cap that would make a station stand a load factor.
type Change struct {
	Part     int
	Field    string  // "wall", "cap", "web" or "width"
	From, To float64 // m
	Found    bool    // false when no thickness of this part alone is enough: To is then the most that fits
}

// steps of the bracket: the thickness is found within 2^-steps of the most that fits.
const steps = 24

// Raise returns for each part of a station the least thickness that makes it stand a limit load factor, all other parts as they are; empty when it stands
// that already. Errors
// name the impossible field.
//
// Formula: bracketed halving of AssessStation between the present thickness and the most that fits.
// Valid for: parts whose outside measures are kept: a tube to a rod, caps until they meet, a sheet to the whole depth or ten times, a solid part to four
// times its width.
// Source: AssessStation.
func Raise(station Station, at loads.Load, twisted bool, loadFactor float64) ([]Change, error) {
	now, err := AssessStation(station, at, twisted)
	if err != nil {
		return nil, err
	}
	if err := checkPositive(named{"loadFactor", loadFactor}); err != nil {
		return nil, err
	}
	if now.Stands >= loadFactor {
		return nil, nil
	}
	var changes []Change
	for i := range station.Parts {
		for _, k := range station.Parts[i].knobs() {
			changes = append(changes, raise(station, at, twisted, loadFactor, i, k))
		}
	}
	return changes, nil
}

// knob is a thickness that a builder may choose.
type knob struct {
	field    string
	now, end float64
	set      func(p *Part, to float64)
}

// knobs returns the thicknesses of a part.
func (p Part) knobs() []knob {
	switch p.Shape {
	case ShapeTube:
		if p.inner() == 0 {
			return nil
		}
		return []knob{{"wall", p.Wall, float64(0.5 * p.Outer), func(p *Part, to float64) { p.Wall = to }}}
	case ShapeCapsAndWeb:
		return []knob{
			{"cap", p.Cap, float64(0.5 * p.Depth), func(p *Part, to float64) { p.Cap = to }},
			{"web", p.Web, p.Width, func(p *Part, to float64) { p.Web = to }},
		}
	case ShapeSolid:
		return []knob{{"width", p.Width, float64(4 * p.Width), func(p *Part, to float64) { p.Width = to }}}
	case ShapeSheet:
		end := float64(10 * p.Wall)
		if p.Depth > 0 {
			end = float64(0.5 * p.Depth)
		}
		return []knob{{"wall", p.Wall, end, func(p *Part, to float64) { p.Wall = to }}}
	default:
		return nil
	}
}

// raise halves the bracket of one knob.
func raise(station Station, at loads.Load, twisted bool, loadFactor float64, part int, k knob) Change {
	parts := append([]Part(nil), station.Parts...)
	stands := func(thickness float64) bool {
		k.set(&parts[part], thickness)
		r, err := AssessStation(Station{Y: station.Y, Parts: parts}, at, twisted)
		return err == nil && r.Stands >= loadFactor
	}
	c := Change{Part: part, Field: k.field, From: k.now, To: k.end}
	if !stands(k.end) {
		return c
	}
	low, high := k.now, k.end
	for range steps {
		middle := float64(0.5 * (low + high))
		if stands(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	c.To, c.Found = high, true
	return c
}
