package assess

import (
	"math"
	"slices"
)

// itemScale is the error that all measured items have in common whose scale is not named: they are weighed one after the other on one.
const itemScale = "scale: items"

// scaleOf names the error that an item's mass has in common with others: that of the scale it was weighed on. An item that was not weighed has none.
func scaleOf(item *MassItem) string {
	switch {
	case item.MassKg == nil || item.MassKg.Basis != BasisMeasured:
		return ""
	case item.Scale != "":
		return "scale: " + item.Scale
	}
	return itemScale
}

// itemSpread returns one standard deviation of the sum of all items, kg: straight sums within a scale, roots of squares between scales and over items
// that were not weighed.
func (p *pass) itemSpread(m *MassProperties) float64 {
	names, sums, square := []string{}, []float64{}, 0.0
	for i := range m.Items {
		q := m.Items[i].MassKg
		if q == nil || q.Value == nil {
			continue
		}
		spread, scale := q.Deviation(".massKg"), scaleOf(&m.Items[i])
		k := slices.Index(names, scale)
		switch {
		case scale == "":
			square += float64(spread * spread)
		case k < 0:
			names, sums = append(names, scale), append(sums, spread)
		default:
			sums[k] += spread
		}
	}
	for _, sum := range sums {
		square += float64(sum * sum)
	}
	return math.Sqrt(square)
}

// errorSource is one error and all inputs that it moves: an input's own, or that of a scale which moves every mass weighed with it by the same number
// of their spreads.
type errorSource struct {
	input   uncertain // its name, and whether any member is estimated
	members []uncertain
	first   int // place of the first member among the inputs of the base pass
}

// sources returns the errors behind the inputs in the order of their first member; inputs without spread have none.
func (p *pass) sources() []errorSource {
	var list []errorSource
	for i, input := range p.inputs {
		if !(input.spread > 0) {
			continue
		}
		at := -1
		if input.source != "" {
			at = slices.IndexFunc(list, func(s errorSource) bool { return s.input.name == input.source })
		}
		if at < 0 {
			s := errorSource{input: input, members: []uncertain{input}, first: i}
			if input.source != "" {
				s.input.name = input.source
			}
			list = append(list, s)
			continue
		}
		s := &list[at]
		s.members = append(s.members, input)
		s.input.estimated = s.input.estimated || input.estimated
	}
	return list
}

// movement is how far each of several inputs is moved at once.
type movement struct {
	place map[string]int
	by    []float64
}

func (m *movement) of(name string) float64 {
	if at, ok := m.place[name]; ok {
		return m.by[at]
	}
	return 0
}

// movingSource returns a pass like the base pass in which all inputs of one error are moved by a number of their spreads.
func (p *pass) movingSource(s errorSource, by float64) *pass {
	names := make([]string, len(s.members))
	for i := range s.members {
		names[i] = s.members[i].name
	}
	moved := p.movingAll(s.input, by, names...)
	if len(s.members) == 1 {
		moved.moved = s.members[0].name
		return moved
	}
	moved.together = &movement{place: map[string]int{}}
	for i, input := range s.members {
		moved.together.place[input.name] = i
		moved.together.by = append(moved.together.by, float64(by*input.spread))
	}
	return moved
}
