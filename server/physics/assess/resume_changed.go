package assess

import (
	"maps"
	"math/bits"
)

// changed returns the base pass of a document that differs from the one at hand in what some sections ask for, where it has to be walked: it begins with
// the first of those and leaves out those that nothing changed comes to. The pass at hand must keep what others resume from. To keep is to be moved itself.
func (p *pass) changed(in *Input, whole *Geometry, asked uint64, kept bool) *pass {
	first := min(bits.TrailingZeros64(asked), len(sections))
	found := *p.resumes.before[first]
	found.in, found.whole, found.quiet = in, whole, true
	w := p.borrow()
	w.drawing = *p.drawing
	w.drawing.kept = maps.Clone(w.drawing.kept)
	found.drawing = &w.drawing
	found.work, found.idle, found.results = w, p.idle, append(w.findings, found.results...)
	found.inputs, found.known, found.trail, found.values, found.lines, found.curves = nil, nil, nil, nil, nil, nil
	found.watch, found.ballast, found.replaced = nil, nil, nil
	w.cut = cut{base: p.resumes, asked: asked}
	found.cut = &w.cut
	if kept {
		found.known = map[string]bool{}
		if w.kept == nil {
			w.kept = make([]pass, len(sections)+1)
		}
		found.resumes = &resumes{
			readers: map[string]uint64{}, before: append(make([]*pass, 0, len(sections)+1), p.resumes.before[:first]...), under: p.resumes, room: w.kept,
		}
	}
	w.pass = found
	return &w.pass
}

// walksAnew prepares the base pass of a changed document for a section that is not handed on: what the section reads once and keeps, computed anew, is
// forgotten.
func (p *pass) walksAnew(computed parts) {
	if p.resumes != nil {
		p.resumes.anew |= 1 << p.at
	}
	d := p.drawing
	if computed&partTwist != 0 {
		d.twist = twist{}
	}
	if computed&partStiffness != 0 {
		d.twisting, d.carrying, d.linkages, d.fittings = nil, nil, nil, nil
	}
	if computed&partHot != 0 {
		d.feed, d.parts, d.partNames, d.ground = nil, nil, nil, nil
	}
}

// meetUnchanged adds the inputs that the sections not walked anew read, and puts all into the order in which the document as it stands reads them.
func (p *pass) meetUnchanged(was *pass) {
	own := make(map[string]int, len(p.inputs))
	for i := range p.inputs {
		own[p.inputs[i].name] = i
	}
	all := make([]uncertain, 0, len(was.inputs)+len(p.inputs))
	for _, input := range was.inputs {
		readers := was.resumes.readers[input.name]
		i, again := own[input.name]
		switch first := readers & -readers; {
		case again && (first&^p.resumes.anew == 0 || p.inputs[i].value != input.value):
			all = append(all, p.inputs[i])
		case again || readers&^p.resumes.anew != 0:
			all = append(all, input)
		}
		delete(own, input.name)
	}
	for _, input := range p.inputs {
		if _, fresh := own[input.name]; fresh {
			all = append(all, input)
		}
	}
	p.inputs = all
}
