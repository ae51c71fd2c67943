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
func (g *Geometry) RunWith(in Input, o Options) (Report, error) { return g.run(in, o, nil) }

// run is the one way of every run whose bands, if any, move one error at a time.
func (g *Geometry) run(in Input, o Options, watch Watch) (Report, error) {
	base, err := g.begin(&in, !o.Drawings, o.Bands)
	if err != nil {
		return Report{}, err
	}
	base.watch = watch
	if o.Bands && (!base.goesOn(0) || !base.spread()) {
		return Report{}, ErrStopped
	}
	base.answerRules()
	return base.report(), nil
}

// begin walks the base pass of a run; moves keeps what passes that move one error resume from.
func (g *Geometry) begin(in *Input, quiet, moves bool) (*pass, error) {
	base := newPass(in, g)
	base.quiet = quiet
	if moves {
		base.resumes = newResumes()
	}
	base.walk()
	return base, base.fault
}

// tells reports whether this pass writes more than answers: drawings, quantities and sources.
func (p *pass) tells() bool { return p.base() && !p.quiet }
