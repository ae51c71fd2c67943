package assess

// Options say what of a report is computed beside value, limit and verdict of every finding. A number that an option does not ask for is left out; no
// option moves one.
type Options struct {
	// Drawings are the lines, outlines and diagrams of the report, the quantities told on the way, and what every finding was computed from.
	Drawings bool
	// Bands are the spread of every finding over all uncertain inputs, and the verdict across it.
	Bands bool
}

// RunWith computes the report that Run computes, as far as the options ask for it. Its verdicts are those of the values as given where no bands are asked
// for: tight is then not said.
func (g *Geometry) RunWith(in Input, o Options) (Report, error) {
	base := newPass(&in, g)
	base.quiet = !o.Drawings
	if o.Bands {
		base.resumes = newResumes()
	}
	base.walk()
	if base.fault != nil {
		return Report{}, base.fault
	}
	if o.Bands {
		base.spread()
	}
	base.answerRules()
	return base.report(), nil
}

// tells reports whether this pass writes more than answers: drawings, quantities and sources.
func (p *pass) tells() bool { return p.base() && !p.quiet }
