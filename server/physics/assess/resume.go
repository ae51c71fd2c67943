package assess

// resumes holds the base pass as it stood before each section that reads an input no earlier section reads: up to there a pass that moves this input
// alone is the base pass.
type resumes struct {
	first  map[string]int // section that reads an input first
	before []*pass        // the pass before each section; nil where no input is read first
}

func newResumes() *resumes { return &resumes{first: map[string]int{}} }

// keep keeps a copy of the base pass before its next section. That of the section before is dropped again when nothing was read first there.
func (r *resumes) keep(p *pass) {
	copied := *p
	copied.resumes = nil
	if last := len(r.before) - 1; last >= 0 && !r.opens(last) {
		r.before[last] = nil
	}
	r.before = append(r.before, &copied)
}

// opens reports whether some input is read first in a section.
func (r *resumes) opens(section int) bool {
	for _, at := range r.first {
		if at == section {
			return true
		}
	}
	return false
}

// note notes that the section at hand asks how far an input is moved.
func (r *resumes) note(name string, section int) {
	if _, known := r.first[name]; !known {
		r.first[name] = section
	}
}

// resume returns the base pass as it stood before the first section that reads an input; a pass at its start where that is not known.
func (p *pass) resume(name string) *pass {
	fresh := &pass{in: p.in, whole: p.whole, drawing: p.drawing, results: make([]Finding, 0, len(catalogue))}
	if p.resumes == nil {
		return fresh
	}
	section, known := p.resumes.first[name]
	if !known || p.resumes.before[section] == nil {
		return fresh
	}
	found := *p.resumes.before[section]
	found.results = append(fresh.results, found.results...)
	found.inputs, found.known, found.trail, found.values, found.lines, found.curves = nil, nil, nil, nil, nil, nil
	found.watch, found.ballast, found.replaced = nil, nil, nil
	return &found
}
