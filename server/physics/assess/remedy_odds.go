package assess

import (
	"cmp"
	"math"
	"slices"

	"pitgate/server/physics/order"
	"pitgate/server/physics/sample"
)

const (
	// mostCertain is the largest share that a finding is held to: no spread is wide enough for all of a normal distribution.
	mostCertain = 0.9999
	// heldSources is how many of a finding's errors are moved anew at a candidate.
	heldSources = 6
	// heldVariance is the part of the variance at which no further error is moved anew.
	heldVariance = 0.98
)

// quantileOf returns the deviate of a required share.
func quantileOf(share float64) float64 { return sample.NormalQuantile(min(share, mostCertain)) }

// shareOf returns the share of the standard normal distribution below a deviate: the inverse of NormalQuantile by bisection.
func shareOf(deviate float64) float64 {
	low, high := 0.0, 1.0
	for range 50 {
		if middle := (low + high) / 2; sample.NormalQuantile(middle) < deviate {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// probability returns the share in which a finding holds with a standard deviation: of its normal distribution on the right side of the limit, or within
// the window.
func (f *Finding) probability(spread float64) float64 {
	switch {
	case f.Verdict == VerdictUnknown:
		return 0
	case f.Margin == nil && f.Verdict == VerdictFails:
		return 0
	case f.Margin == nil:
		return 1
	case !(spread > 0) && *f.Margin >= 0:
		return 1
	case !(spread > 0):
		return 0
	case f.LimitSense == LimitSenseWithin:
		return max(0, shareOf((*f.UpperLimit-*f.Value)/spread)-shareOf((*f.Limit-*f.Value)/spread))
	}
	return shareOf(*f.Margin / spread)
}

// height returns how far a finding's margin is over what its required share asks for; below zero where it does not hold often enough, without end where
// there is no number.
func (t *target) height(f *Finding, spread float64) float64 {
	switch {
	case f == nil || f.Verdict == VerdictUnknown:
		return math.Inf(-1)
	case f.Margin == nil && f.Verdict == VerdictFails:
		return math.Inf(-1)
	case f.Margin == nil:
		return math.Inf(1)
	}
	over := *f.Margin - float64(t.quantile*spread)
	if f.LimitSense == LimitSenseWithin && over >= 0 && f.probability(spread) < t.required {
		return -math.SmallestNonzeroFloat64
	}
	return over
}

// readSpreads moves every error up and down and keeps what it does to each finding, largest first. The answers are those of the bands of a report.
func (r *remedySearch) readSpreads() bool {
	sources := r.base.sources()
	steps := make([][]effect, len(sources))
	if !each(len(sources), r.options.Workers, r.progress(0, progressProbes, len(sources)), func(s int) {
		high, low := r.base.movingSource(sources[s], 1), r.base.movingSource(sources[s], -1)
		high.walk()
		low.walk()
		steps[s] = make([]effect, len(r.base.results))
		for i := range r.base.results {
			steps[s][i] = effect{sources[s].input, stepOf(r.base.results[i].Value, high.results[i].Value, low.results[i].Value)}
		}
		high.release()
		low.release()
	}) {
		return false
	}
	r.steps = make(map[string][]float64, len(sources))
	for s := range steps {
		r.steps[sources[s].input.name] = make([]float64, len(r.base.results))
		for i := range steps[s] {
			r.steps[sources[s].input.name][i] = steps[s][i].step
		}
	}
	r.spreads = make([][]effect, len(r.base.results))
	for i := range r.base.results {
		if catalogue[place(r.base.results[i].ID)].still {
			continue
		}
		for s := range steps {
			if steps[s][i].step != 0 {
				r.spreads[i] = append(r.spreads[i], steps[s][i])
			}
		}
		order.Stable(r.spreads[i], func(a, b effect) int { return cmp.Compare(math.Abs(b.step), math.Abs(a.step)) })
	}
	r.carry = make([]leastSteps, len(r.spreads))
	r.deviations = make([]float64, len(r.spreads))
	for i := range r.carry {
		r.deviations[i] = deviationOf(r.spreads[i])
		r.carry[i] = leastStepsOf(&r.base.results[i], r.spreads[i])
	}
	return true
}

// stepOf returns what one spread of an error does to a value: half the difference of the moved values, or the difference on the side that has one.
func stepOf(middle, up, down *float64) float64 {
	switch {
	case middle == nil:
		return 0
	case up != nil && down != nil:
		return (*up - *down) / 2
	case up != nil:
		return *up - *middle
	case down != nil:
		return *middle - *down
	}
	return 0
}

// deviationOf returns one standard deviation of what some errors do.
func deviationOf(effects []effect) float64 {
	variance := 0.0
	for _, e := range effects {
		variance += float64(e.step * e.step)
	}
	return math.Sqrt(variance)
}

// deviationAt returns one standard deviation of a target's finding at a candidate: the errors that weigh most as the document stands, and those of what
// is changed, are moved there; what the others add to the variance keeps its part of it.
func (r *remedySearch) deviationAt(t *target, c *candidate) float64 {
	f := c.finding(t.finding.ID)
	if f == nil || f.Value == nil || catalogue[place(f.ID)].still {
		return 0
	}
	held, part := r.weighty(t)
	variance, changed := 0.0, 0.0
	for _, source := range c.pass.sources() {
		weighs := slices.Contains(held, source.input.name)
		if !weighs && !c.changes(source.input.name) {
			continue
		}
		step := c.step(source, f)
		if weighs {
			variance += float64(step * step)
		} else {
			changed += float64(step * step)
		}
	}
	return math.Sqrt(variance/part + changed)
}

// weighty names the errors that weigh most in a target's spread, and the part of the variance that they have.
func (r *remedySearch) weighty(t *target) (names []string, part float64) {
	whole, sum := float64(t.spread*t.spread), 0.0
	for _, e := range r.spreads[t.at] {
		if len(names) == heldSources && t.finding.Value != nil || whole > 0 && sum >= heldVariance*whole {
			break
		}
		names, sum = append(names, e.input.name), sum+float64(e.step*e.step)
	}
	if !(sum > 0) {
		return names, 1
	}
	return names, sum / whole
}
