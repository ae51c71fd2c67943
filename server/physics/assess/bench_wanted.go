package assess

// What an inspection is to find: a state in words, or a figure with its ends. A figure that the document gives is wanted within the band that the report
// was computed with: inside it the answers stand, outside it they are computed anew.

const (
	asTaken     = "as the report takes it"
	noFigureYet = "the document has no figure yet: enter what is measured"
)

type (
	benchFinds    = func(*benchView, *benchSubject) benchWanted
	benchQuantity = func(*benchView, *benchSubject) *Quantity
	benchApplies  = func(*benchView, *benchSubject) bool
)

// state wants something to be so.
func state(text string) benchFinds {
	return func(*benchView, *benchSubject) benchWanted { return benchWanted{text: text} }
}

// within wants a reading inside the band of a quantity.
func within(of benchQuantity) benchFinds {
	return func(v *benchView, s *benchSubject) benchWanted { return bandOf(of(v, s), s.input) }
}

// bandOf is the 5 to 95 % band of the quantity at a path; one that is not negative has no negative end.
func bandOf(q *Quantity, path string) benchWanted {
	if q == nil || q.Value == nil {
		return benchWanted{text: noFigureYet}
	}
	half := float64(bandFactor * q.Deviation(path))
	low, high := *q.Value-half, *q.Value+half
	if *q.Value >= 0 {
		low = max(0, low)
	}
	return benchWanted{text: asTaken, low: &low, high: &high}
}

// notOver wants a reading below the upper end of a quantity's band.
func notOver(of benchQuantity) benchFinds {
	return func(v *benchView, s *benchSubject) benchWanted {
		wanted := bandOf(of(v, s), s.input)
		wanted.low = nil
		return wanted
	}
}

// notUnder wants a reading above the lower end of a quantity's band.
func notUnder(of benchQuantity) benchFinds {
	return func(v *benchView, s *benchSubject) benchWanted {
		wanted := bandOf(of(v, s), s.input)
		wanted.high = nil
		return wanted
	}
}

// exactly wants a count.
func exactly(count *int32, text string) benchWanted {
	if count == nil {
		return benchWanted{text: noFigureYet}
	}
	value := float64(*count)
	return benchWanted{text: text, low: &value, high: &value}
}

// least wants a computed figure or more.
func least(figure *float64, text string) benchWanted {
	if figure == nil {
		return benchWanted{text: text + "; the figure is not computed yet, an input is missing"}
	}
	return benchWanted{text: text, low: figure}
}

// most wants a computed figure or less.
func most(figure *float64, text string) benchWanted {
	if figure == nil {
		return benchWanted{text: text + "; the figure is not computed yet, an input is missing"}
	}
	return benchWanted{text: text, high: figure}
}
