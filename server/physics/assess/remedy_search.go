package assess

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"pitgate/server/physics/order"
)

const (
	// toldRemedies is how many remedies of one effort a finding has at most; those that break something count by themselves.
	toldRemedies = 2
	// pairedKnobs is how many knobs, those that help most, are tried in pairs.
	pairedKnobs = 4
	// mostRounds is how often the spread at a root is found and the root sought again.
	mostRounds = 5
	// finestStep ends the search for a root, over the width of its bracket.
	finestStep = 5e-4
)

// probed are the places of a knob's range that are looked at first, over the way from its value to either end.
var probed = []float64{0.1, 0.3, 0.6, 1}

// probe is what a change does to the findings that its knob may mend.
type probe struct {
	change change
	found  []*Finding // of each finding to be mended; nil where its chain does not name the knob
}

// course leads from the document as it stands to changes that mend a finding.
type course struct {
	changes func(x float64) []change
	bad     float64  // as far as it does not hold
	good    float64  // where it holds
	start   float64  // as it stands
	fixed   bool     // a choice: there is no root to be found
	bent    bool     // the spread changes so much along it that it is found anew at every step
	seen    []sight  // outward from the start, which is the first
	here    float64  // standard deviation found last
	scale   float64  // of the spread found by all errors over that of those which weigh most
	line    straight // the spread along it, as far as it is known
	last    straight // where it was found last, and what it was
	short   straight // the same of where it last was too large
	checked bool     // found by a check in full
}

// sight is what a finding is somewhere along a course.
type sight struct {
	x     float64
	found *Finding
}

// see adds a sight in its place.
func (w *course) see(x float64, f *Finding) {
	at := len(w.seen)
	for at > 0 && math.Abs(w.seen[at-1].x-w.start) > math.Abs(x-w.start) {
		at--
	}
	w.seen = slices.Insert(w.seen, at, sight{x, f.apart()})
}

// mended is a remedy before it is put into words.
type mended struct {
	changes       []change
	effort        int
	size          float64
	share         float64
	fixes, breaks []string
	checked       int // findings looked at anew
}

var efforts = RemedyEffort("").Names()

// effortOf returns the greatest effort of some changes.
func effortOf(changes []change) int {
	worst := 0
	for _, c := range changes {
		worst = max(worst, slices.Index(efforts, string(c.spot.knob.effort)))
	}
	return worst
}

// probe looks at every knob over its range, once for all findings whose chain names it.
func (r *remedySearch) probe() bool {
	r.probes = make([][]probe, len(r.spots))
	return each(len(r.spots), r.options.Workers, r.progress(progressProbes, progressWays, len(r.spots)), func(i int) {
		s := &r.spots[i]
		var wanted []int
		for k := range r.targets {
			if r.named(s, r.targets[k].at) {
				wanted = append(wanted, r.targets[k].at)
			}
		}
		needed := r.neededFor(wanted)
		for _, c := range s.settings() {
			tried := r.try([]change{c}, needed, false)
			one := probe{c, make([]*Finding, len(r.targets))}
			for k := range r.targets {
				if slices.Contains(wanted, r.targets[k].at) {
					one.found[k] = tried.finding(r.targets[k].finding.ID).apart()
				}
			}
			r.probes[i] = append(r.probes[i], one)
			tried.pass.release()
		}
	})
}

// settings are the changes that are looked at first: outward from the value on either side, or every choice.
func (s *spot) settings() []change {
	var list []change
	for i := range s.choices {
		list = append(list, change{spot: s, choice: i})
	}
	if len(s.choices) > 0 {
		return list
	}
	for _, end := range []float64{s.low, s.high} {
		if end == s.now {
			continue
		}
		for _, share := range probed {
			list = append(list, change{spot: s, to: s.now + float64(share*(end-s.now))})
		}
	}
	return list
}

// waysOf lists the sides of a knob on which a finding comes to hold, and its choices that let it hold.
func (r *remedySearch) waysOf(t *target, at int) []course {
	s := &r.spots[at]
	var list []course
	if len(s.choices) > 0 {
		for _, one := range r.probes[at] {
			if t.height(one.found[t.number], t.spread) >= 0 {
				list = append(list, course{changes: func(float64) []change { return []change{one.change} }, fixed: true, scale: 1})
			}
		}
		return list
	}
	for _, side := range r.sides(at) {
		if w, ok := r.wayAlong(t, s, side); ok {
			list = append(list, w)
		}
	}
	return list
}

// sides are the probes of a knob below and above its value, outward.
func (r *remedySearch) sides(at int) [2][]probe {
	var out [2][]probe
	for _, one := range r.probes[at] {
		if one.change.to < r.spots[at].now {
			out[0] = append(out[0], one)
		} else {
			out[1] = append(out[1], one)
		}
	}
	return out
}

// wayAlong returns the way to the first probe of a side at which a finding holds with the spread that it has as the document stands; else to the one with
// the most margin, if that is more than now, where its own spread may be small enough.
func (r *remedySearch) wayAlong(t *target, s *spot, side []probe) (course, bool) {
	w := t.courseOf(func(x float64) []change { return []change{{spot: s, to: x}} }, s.now)
	most, best, held := math.Inf(-1), 0.0, false
	for _, one := range side {
		f := one.found[t.number]
		w.seen = append(w.seen, sight{one.change.to, f})
		if held {
			continue
		}
		if held = t.height(f, t.spread) >= 0; held {
			w.good = one.change.to
			continue
		}
		w.bad = one.change.to
		if f != nil && f.Margin != nil && *f.Margin > most {
			most, best = *f.Margin, one.change.to
		}
	}
	if held {
		return w, true
	}
	w.bad, w.good, w.bent = s.now, best, true
	return w, most >= 0 && (t.finding.Margin == nil || most > *t.finding.Margin)
}

// courseOf begins a course at the document as it stands.
func (t *target) courseOf(changes func(x float64) []change, start float64) course {
	return course{changes: changes, bad: start, start: start, scale: 1, seen: []sight{{start, &t.finding}}}
}

// pairs lists pairs of the knobs that raise a finding's margin most, both turned by the same share of their way to where they help most.
func (r *remedySearch) pairs(t *target) []course {
	type gain struct {
		change change
		gain   float64
	}
	var best []gain
	now := t.height(&t.finding, t.spread)
	for i := range r.spots {
		top := gain{gain: 0}
		for _, one := range r.probes[i] {
			if up := t.height(one.found[t.number], t.spread) - now; len(r.spots[i].choices) == 0 && up > top.gain && !math.IsInf(up, 0) {
				top = gain{one.change, up}
			}
		}
		if top.gain > 0 {
			best = append(best, top)
		}
	}
	order.Stable(best, func(a, b gain) int { return cmp.Compare(b.gain, a.gain) })
	best = best[:min(len(best), pairedKnobs)]
	var list []course
	for i := range best {
		for k := i + 1; k < len(best); k++ {
			both := []change{best[i].change, best[k].change}
			w := t.courseOf(func(x float64) []change { return shared(both, x) }, 0)
			w.good = 1
			list = append(list, w)
		}
	}
	return list
}

// shared turns changes by a share of their way.
func shared(whole []change, share float64) []change {
	out := slices.Clone(whole)
	for i := range out {
		out[i].to = out[i].spot.now + float64(share*(out[i].to-out[i].spot.now))
	}
	return out
}

func sizeOf(changes []change) float64 {
	sum := 0.0
	for _, c := range changes {
		sum += c.size()
	}
	return sum
}

const (
	// offRoot is how far short of what is asked for, in standard deviations found by a check in full, a root may lie.
	offRoot = 0.02
	// overRoot is how far beyond it a root may lie before it is sought once more.
	overRoot = 0.03
)

// settle finds the least change along a way and checks all findings anew with it. Where that gives its finding another spread than the errors which weigh
// most do, the change is sought once more with it.
func (r *remedySearch) settle(t *target, w *course) (mended, bool) {
	if !r.enter(t, w) {
		return mended{}, false
	}
	for again := false; ; again = true {
		x, ok := r.least(t, w)
		if !ok {
			return mended{}, false
		}
		m := mended{changes: w.changes(x)}
		m.effort, m.size = effortOf(m.changes), sizeOf(m.changes)
		v := r.recheck(t, m.changes)
		if off := v.height < -offRoot*v.spread || v.height > overRoot*v.spread; off && !again && !w.fixed && w.here > 0 && v.spread > 0 {
			w.correct(t, x, &v)
			continue
		}
		m.share, m.fixes, m.breaks, m.checked = v.share, v.fixes, v.breaks, v.checked
		return m, v.height >= -offRoot*v.spread && !breaksBalance(&m)
	}
}

// breaksBalance reports whether ballast takes the static margin out of its window.
func breaksBalance(m *mended) bool {
	if !slices.ContainsFunc(m.changes, func(c change) bool { return c.spot.knob.id == "ballast" }) {
		return false
	}
	return slices.ContainsFunc(m.breaks, func(id string) bool { return strings.HasPrefix(id, "balance.margin_") })
}
