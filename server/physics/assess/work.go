package assess

import "pitgate/server/physics/motion"

// work is memory that a pass works in; once nothing of a moved pass is looked at any more, the next one works in it.
type work struct {
	pass     pass
	drawing  drawing
	cut      cut
	together movement
	findings []Finding
	figures  []figures
	kept     []pass // the base pass of a changed document before each section
	// launch and landing hold what the pass has flown, brief what it looks at and forgets.
	launch, landing, brief motion.Room
}

// figures are the numbers of a finding.
type figures struct{ value, margin, limit, upper float64 }

// memory returns the memory of a pass.
func (p *pass) memory() *work {
	if p.work == nil {
		p.work = &work{}
	}
	return p.work
}

// borrow returns memory for a pass that this one is moved to.
func (p *pass) borrow() *work {
	select {
	case w := <-p.idle:
		w.findings, w.figures = w.findings[:0], w.figures[:0]
		return w
	default:
		return &work{findings: make([]Finding, 0, len(catalogue)), figures: make([]figures, 0, len(catalogue))}
	}
}

// release lets the next moved pass work in the memory of this one, of which nothing may be used from here on.
func (p *pass) release() {
	p.work.findings = p.results
	select {
	case p.idle <- p.work:
	default:
	}
}

// figure returns room for the numbers of one finding.
func (w *work) figure() *figures {
	if len(w.figures) == cap(w.figures) {
		w.figures = make([]figures, 0, len(catalogue))
	}
	w.figures = append(w.figures, figures{})
	return &w.figures[len(w.figures)-1]
}
