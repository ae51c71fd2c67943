package assess

import (
	"math"
	"slices"
)

// clearSpreads is how many times its spread as the document stands a finding's spread may grow at a change before it is asked whether the finding still
// holds: a margin wider than that is not asked for it.
const clearSpreads = 3

// verdictAnew is what a full check of a change found.
type verdictAnew struct {
	fixes, breaks  []string
	checked        int
	height, spread float64 // of the target
	share          float64
}

// recheck answers all questions anew with some changes and says which findings, those of published rules among them, hold often enough that did not
// before, and which did and no longer do. A finding that the changes leave where it was keeps its spread; for every other its spread there is found anew,
// unless its margin alone decides.
func (r *remedySearch) recheck(t *target, changes []change) verdictAnew {
	c := r.try(changes, ^uint64(0)>>(64-len(sections)), true)
	defer c.pass.release()
	out := verdictAnew{height: math.Inf(-1)}
	if c.pass.fault != nil {
		return out
	}
	var asked []int
	for i := range r.base.results {
		if f := c.finding(r.base.results[i].ID); i == t.at && f != nil || r.uncertain(i, f) && !same(f, &r.base.results[i]) {
			asked = append(asked, i)
		}
	}
	spreads := slices.Clone(r.deviations)
	for k, spread := range r.spreadsAt(c, t, asked) {
		spreads[asked[k]] = spread
	}
	for i := range spreads {
		r.compare(&out, t, c, i, spreads[i])
	}
	if t.quantile > offRoot { // the finding to be mended holds as near as a root is sought
		spreads[t.at] -= float64(offRoot*spreads[t.at]) / t.quantile
	}
	out.checkRules(r.ruled, r.underRules(c.pass, spreads))
	return out
}

// compare holds one finding of a candidate against that of the document as it stands.
func (r *remedySearch) compare(out *verdictAnew, t *target, c *candidate, i int, spread float64) {
	was := &r.base.results[i]
	f := c.finding(was.ID)
	if i == t.at {
		out.height, out.spread, out.share = t.height(f, spread), spread, f.probability(spread)
	}
	if was.Verdict == VerdictUnknown {
		return
	}
	out.checked++
	switch holds := r.holds(i, f, spread); {
	case i == t.at || holds && !r.held[i]:
		out.fixes = append(out.fixes, was.ID)
	case r.held[i] && !holds:
		out.breaks = append(out.breaks, was.ID)
	}
}

// same reports whether a change leaves a finding's value and limits where they were; its spread is taken to be the same then.
func same(f, was *Finding) bool {
	return equalNumbers(f.Value, was.Value) && equalNumbers(f.Limit, was.Limit) && equalNumbers(f.UpperLimit, was.UpperLimit)
}

func equalNumbers(a, b *float64) bool { return (a == nil) == (b == nil) && (a == nil || *a == *b) }

// uncertain reports whether it is a matter of its spread whether a finding holds often enough.
func (r *remedySearch) uncertain(i int, f *Finding) bool {
	if f == nil || f.Margin == nil || catalogue[place(f.ID)].still {
		return false
	}
	class := r.classOf(i)
	most := float64(clearSpreads * r.deviations[i])
	return class.height(f, 0) >= 0 != (class.height(f, most) >= 0) || r.base.results[i].Value == nil
}

// classOf is what is asked of a finding's share.
func (r *remedySearch) classOf(i int) target {
	class := target{required: r.base.required(r.base.results[i].FindingClass)}
	class.quantile = quantileOf(class.required)
	return class
}

// holds reports whether a finding holds often enough with a spread.
func (r *remedySearch) holds(i int, f *Finding, spread float64) bool {
	class := r.classOf(i)
	return class.height(f, spread) >= 0
}
