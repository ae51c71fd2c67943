package assess

// followsSlopes are the answers that take too long for every sample: the base pass answers them, and samples follow the first-order slopes of the inputs
// that move them most.
var followsSlopes = pairings[string, []string]{
	{"engine_out.reach", glideMovers}, {"engine_out.footprint", glideMovers}, {"launch.engine_failure", failureMovers}, {"landing.go_around", goAroundMovers},
}

// slopesNote is added to the method of a finding that follows slopes.
const slopesNote = " Between samples it follows its first-order slopes instead of being computed anew."

// slope is what one spread of an error does to an answer, and on which side there is none any more.
type slope struct {
	source               int
	step                 float64
	noneAbove, noneBelow bool
}

// slopes are all slopes of one answer.
type slopes []slope

// move moves the answer of a sample, which is that of the base pass, along its slopes. Where one spread leaves no answer, a sample beyond it has none.
func (s slopes) move(r *sampling, f *Finding, j int) {
	base := &r.base.results[indexOf(r.base.results, f.ID)]
	if base.Value == nil || f.Value == nil || *f.Value != *base.Value {
		return // it has an answer of its own
	}
	value := *base.Value
	for _, k := range s {
		z := r.by[k.source][j]
		if k.noneAbove && z > 1 || k.noneBelow && z < -1 {
			f.Value, f.Margin, f.Verdict = nil, nil, VerdictFails
			return
		}
		value += float64(k.step * z)
	}
	if f.ID == "engine_out.reach" {
		value = min(max(value, 0), 1)
	}
	f.Value, f.Margin, f.Verdict = &value, nil, VerdictHolds
	f.setMargin(new(float64))
}

func indexOf(results []Finding, id string) int {
	for i := range results {
		if results[i].ID == id {
			return i
		}
	}
	return -1
}

// firstPass is a pass in which one error alone is moved.
type firstPass struct {
	source int
	by     float64
	pass   *pass
}

// walkFirst moves, one at a time, the errors whose slopes are followed and those that are estimated: from the former come the slopes, from the latter
// which findings rest on an estimate.
func (r *sampling) walkFirst() bool {
	steep := r.steep()
	for s, source := range r.sources {
		if steep[s] || source.input.estimated {
			r.first = append(r.first, firstPass{source: s, by: 1}, firstPass{source: s, by: -1})
		}
	}
	total := len(r.first) + r.options.Samples
	goesOn := func(done int) bool { return r.options.Watch == nil || r.options.Watch(done, total) }
	if !each(len(r.first), r.options.Workers, goesOn, func(i int) {
		k := &r.first[i]
		k.pass = r.base.movingSource(r.sources[k.source], k.by)
		k.pass.walk()
	}) {
		return false
	}
	r.readSlopes()
	r.readEstimates()
	return true
}

// steep marks the sources that move an answer which follows slopes.
func (r *sampling) steep() []bool {
	marked := make([]bool, len(r.sources))
	for i := range r.base.results {
		for _, name := range followsSlopes.of(r.base.results[i].ID) {
			if k, ok := r.place[name]; ok && r.base.results[i].Value != nil {
				marked[r.owner[k]] = true
			}
		}
	}
	return marked
}

// readSlopes takes the slopes from the passes up and down.
func (r *sampling) readSlopes() {
	for n := 0; n < len(r.first); n += 2 {
		up, down := &r.first[n], &r.first[n+1]
		for i := range r.base.results {
			movers, follows := followsSlopes.find(r.base.results[i].ID)
			if !follows || r.base.results[i].Value == nil || !contains(movers, r.sources[up.source].input.name) {
				continue
			}
			r.slopes[i] = append(r.slopes[i], slopeOf(up.source, r.base.results[i].Value, up.pass.results[i].Value, down.pass.results[i].Value))
		}
	}
}

func slopeOf(source int, middle, up, down *float64) slope {
	s := slope{source: source, noneAbove: up == nil, noneBelow: down == nil}
	switch {
	case up != nil && down != nil:
		s.step = (*up - *down) / 2
	case up != nil:
		s.step = *up - *middle
	case down != nil:
		s.step = *middle - *down
	}
	return s
}

// readEstimates marks the findings that an estimated input moves.
func (r *sampling) readEstimates() {
	for _, k := range r.first {
		if !r.sources[k.source].input.estimated {
			continue
		}
		for i := range r.base.results {
			was, is := &r.base.results[i], &k.pass.results[i]
			if was.Value != nil && !catalogue[place(was.ID)].still && (is.Value == nil || *is.Value != *was.Value) {
				r.moved[i] = true
			}
		}
	}
}
