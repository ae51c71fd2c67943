package assess

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

// number adds the spot of a plain number, which the core takes as usual where it is not given; chain names inputs that stand for it in the chain of a
// finding.
func (s *scene) number(title, path string, usual float64, chain []string, find numberAt) {
	if held := find(s.in); held != nil {
		s.add(spot{title: title, paths: []string{path}, chain: chain, now: orElse(*held, usual), set: func(in *Input, x float64) { *find(in) = &x }})
	}
}
