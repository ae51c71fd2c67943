package assess

import "math/bits"

// resumes holds the base pass as it stood before each section, and which sections read each input: a pass that moves some inputs is the base pass up to
// the first of those, and beyond it in every section that touches nothing that has moved.
type resumes struct {
	readers map[string]uint64 // sections that read an input, one bit each
	before  []*pass           // the pass before each section, and after the last
	// under is what the base pass of a changed document began from: its readers hold for the sections not walked anew. Nil for a document as it stands.
	under *resumes
	anew  uint64 // sections walked anew, one bit each
	room  []pass // for what is kept; nil: new room for each
}

func newResumes() *resumes { return &resumes{readers: map[string]uint64{}} }

// keep keeps a copy of the base pass before its next section.
func (r *resumes) keep(p *pass) {
	copied := new(pass)
	if at := len(r.before); at < len(r.room) {
		copied = &r.room[at]
	}
	*copied = *p
	copied.resumes = nil
	r.before = append(r.before, copied)
}

// note notes that the section at hand asks how far an input is moved.
func (r *resumes) note(name string, section int) { r.readers[name] |= 1 << section }

// readersOf returns the sections that read an input, one bit each.
func (r *resumes) readersOf(name string) uint64 {
	if r.under == nil {
		return r.readers[name]
	}
	return r.readers[name] | r.under.readers[name]&^r.anew
}

// resume returns the base pass as it stood before the first section that reads one of some inputs; a pass at its start where that is not known.
func (p *pass) resume(names []string) *pass {
	w := p.borrow()
	w.pass = pass{in: p.in, whole: p.whole, drawing: p.drawing, results: w.findings, work: w, idle: p.idle}
	if p.resumes == nil {
		return &w.pass
	}
	asked := uint64(0)
	for _, name := range names {
		asked |= p.resumes.readersOf(name)
	}
	if asked == 0 {
		return &w.pass
	}
	w.pass = *p.resumes.before[bits.TrailingZeros64(asked)]
	found := &w.pass
	found.work, found.results = w, append(w.findings, found.results...)
	found.in, found.whole = p.in, p.whole
	found.inputs, found.known, found.trail, found.values, found.lines, found.curves = nil, nil, nil, nil, nil, nil
	found.watch, found.ballast, found.replaced = nil, nil, nil
	w.cut = cut{base: p.resumes, asked: asked}
	found.cut = &w.cut
	return found
}

// cut says which sections a moved pass leaves out: those that neither read an input it moves nor touch a part that a section computed anew.
type cut struct {
	base  *resumes
	asked uint64 // sections that read the moved inputs, one bit each
	anew  parts  // computed anew by this pass
}

// spares reports whether the next section of a moved pass would find what the base pass found, and hands that on then.
func (c *cut) spares(p *pass) bool {
	if c == nil {
		return false
	}
	s, touched := &sections[p.at], c.anew
	if p.quiet {
		touched &^= partsDrawn
	}
	if c.asked>>p.at&1 == 1 || s.touches()&touched != 0 {
		if p.base() {
			p.walksAnew(s.computes &^ c.anew)
		}
		c.anew |= s.computes
		return false
	}
	before, after := c.base.before[p.at], c.base.before[p.at+1]
	s.computes.hand(p, after)
	p.results = append(p.results, after.results[len(before.results):]...)
	return true
}
