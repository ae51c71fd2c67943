package assess

import (
	"cmp"
	"math"
	"strings"

	"pitgate/server/physics/order"
)

const (
	// shownAdvice is how many measurements are named.
	shownAdvice = 10
	// worthMeasuring is the least share of an open finding's variance at which an input is named that settles nothing alone.
	worthMeasuring = 0.2
	// leastGain is the part of its spread that a measurement must take off to count as one.
	leastGain = 0.01
	// bestGain is the part of its spread that a measurement leaves at best, where the default by basis would leave less.
	bestGain = 0.1
)

// measureNext lists the measurements worth taking. An input can be measured when its spread would be smaller with the basis "measured"; it settles a
// tight finding when the share of samples that hold reaches what its class asks for once the input has that spread.
//
//	k = sqrt(1 - S (1 - r^2)), margin' = margin_0 + k (margin - margin_0)
//
// where S is the input's share in the variance of the finding, r its spread when measured over that of now, and margin_0 the middle's margin: the
// variance falls by what the input gives up, and the samples keep their shape. A finding that fails is settled by no measurement as its middle is what
// fails; inputs with a large share in one are named all the same, after those that settle something.
// Valid for: answers in which the input acts by itself, as first-order shares do.
// Source: law of total variance; JCGM 100:2008, 5.1.2.
func (r *sampling) measureNext() []MeasurementAdvice {
	var list []MeasurementAdvice
	for s := range r.sources {
		gain := r.gain(s)
		if gain > 1-leastGain {
			continue
		}
		if advice, worth := r.advice(s, gain); worth {
			list = append(list, advice)
		}
	}
	order.Stable(list, func(a, b MeasurementAdvice) int {
		return cmp.Or(cmp.Compare(len(b.FindingIDs), len(a.FindingIDs)), cmp.Compare(b.ShareRatio, a.ShareRatio), strings.Compare(a.Input, b.Input))
	})
	return list[:min(len(list), shownAdvice)]
}

// gain returns the spread of an error when measured over that of now: 1 where nothing is to be gained, as for the methods' own.
func (r *sampling) gain(s int) float64 {
	worst := 0.0
	for _, input := range r.sources[s].members {
		if input.method {
			return 1
		}
		measured := math.Abs(input.value) * measuredSpread(input.name)
		worst = max(worst, measured/input.spread)
	}
	return max(worst, bestGain)
}

// advice says what measuring the input of one error settles, and whether it is worth naming.
func (r *sampling) advice(s int, gain float64) (MeasurementAdvice, bool) {
	name := r.sources[s].input.name
	out := MeasurementAdvice{Input: name}
	for i := range r.base.results {
		f := &r.base.results[i]
		if f.Verdict != VerdictTight && f.Verdict != VerdictFails || r.shares[i] == nil {
			continue
		}
		share := min(r.shares[i][s], 1)
		out.ShareRatio = max(out.ShareRatio, share)
		if f.Verdict == VerdictTight && r.settles(i, share, gain) {
			out.FindingIDs = append(out.FindingIDs, f.ID)
		}
	}
	if len(out.FindingIDs) == 0 && out.ShareRatio < worthMeasuring {
		return out, false
	}
	out.Title, out.How = r.base.measuring(name)
	return out, true
}

// settles reports whether a tight finding holds often enough once an input of some share has a smaller spread.
func (r *sampling) settles(i int, share, gain float64) bool {
	f := &r.base.results[i]
	if f.Margin == nil || f.HoldsProbability == nil || !(share > 0) {
		return false
	}
	narrow := math.Sqrt(max(0, 1-float64(share*(1-float64(gain*gain)))))
	held, count := 0, 0
	for _, margin := range r.answered(r.margins[i]) {
		count++
		if *f.Margin+float64(narrow*(margin-*f.Margin)) >= 0 {
			held++
		}
	}
	return count > 0 && float64(held) >= *f.RequiredProbability*float64(count)
}
