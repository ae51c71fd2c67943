package assess

// quantityAt finds where a document keeps a quantity; nil where the part that holds it is missing.
type quantityAt func(in *Input) **Quantity

// numberAt finds where a document keeps a plain number; nil where the part that holds it is missing.
type numberAt func(in *Input) **float64

// withValue returns a quantity with another value; how it is known and its own spread stay.
func withValue(q *Quantity, x float64) *Quantity {
	out := Quantity{Value: &x, Basis: BasisEstimated}
	if q != nil {
		out.Basis, out.Spread = q.Basis, q.Spread
	}
	return &out
}

// quantitySpot is the spot of a quantity that the document gives.
func quantitySpot(s *scene, path, title string, find quantityAt) []spot {
	held := find(s.in)
	if held == nil || *held == nil || (*held).Value == nil {
		return nil
	}
	return []spot{{title: title, paths: []string{path}, now: *(*held).Value, set: func(in *Input, x float64) {
		place := find(in)
		*place = withValue(*place, x)
	}}}
}

// numberOf is the row of a knob that is one plain number, which the core takes as usual where it is not given; chain names inputs that stand for it in
// the chain of a finding.
func numberOf(path string, usual float64, chain []string, find numberAt) func(*scene) []spot {
	return func(s *scene) []spot {
		held := find(s.in)
		if held == nil {
			return nil
		}
		return []spot{{paths: []string{path}, chain: chain, now: orElse(*held, usual), set: func(in *Input, x float64) { *find(in) = &x }}}
	}
}
