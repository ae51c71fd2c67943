package assess

import (
	"math"

	"pitgate/server/physics/sample"
)

// oddsAgainst gives a rule's finding the share of samples in which the computed value keeps the rule's figure. Where that is the figure in force, the
// finding has its own already.
func (p *pass) oddsAgainst(f, computed *Finding) {
	if p.samples == nil || f.HoldsProbability != nil || f.LimitSense == LimitSenseNone {
		return
	}
	if i := indexOf(p.results, computed.ID); i >= 0 {
		f.odds(p.samples.valuesOf(i), p.required(f.FindingClass))
	}
}

// odds gives a finding its probability from the values of the samples; no values: none. The share decides between holds and tight, as for every finding
// of a sampled report.
func (f *Finding) odds(values []float64, required float64) {
	if len(values) == 0 {
		return
	}
	margins := make([]float64, 0, len(values))
	for _, v := range values {
		margin, _ := f.marginOf(v)
		margins = append(margins, margin)
	}
	held := sample.HoldShare(margins)
	f.HoldsProbability, f.RequiredProbability = &held, &required
	if f.Verdict == VerdictFails {
		return
	}
	f.Verdict = VerdictHolds
	if held < required {
		f.Verdict = VerdictTight
	}
}

// valuesOf are the values of a finding in the samples that were not refused; no number where there is none.
func (r *sampling) valuesOf(i int) []float64 { return r.answered(r.values[i]) }

// factValues are the values of a fact in the samples: the masses as each sample weighed them, what is quoted as its error was drawn. None where the
// samples do not move it.
func (r *sampling) factValues(name RuleFact, fact known) []float64 {
	switch name {
	case RuleFactTakeoffMass:
		return r.answered(r.gather(func(s *sampled) float64 { return s.takeoff }))
	case RuleFactEmptyMass:
		return r.answered(r.gather(func(s *sampled) float64 { return s.empty }))
	default:
		return r.quotedValues(fact)
	}
}

// quotedValues are the values of a fact that the document quotes.
func (r *sampling) quotedValues(fact known) []float64 {
	var moving []int
	for _, path := range fact.from {
		if k, ok := r.place[path]; ok {
			moving = append(moving, k)
		}
	}
	if len(moving) == 0 {
		return nil
	}
	values := make([]float64, len(r.samples))
	for j := range values {
		values[j] = fact.value
		for _, k := range moving {
			values[j] += r.inputs[k].draw(r.by[r.owner[k]][j])
		}
	}
	return values
}

// massOf is a mass of a sample's pass, no number where it is unknown.
func (p *pass) massOf(value float64) float64 {
	if len(p.mass.missing) > 0 {
		return math.NaN()
	}
	return value
}
