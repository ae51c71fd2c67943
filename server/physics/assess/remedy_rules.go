package assess

import "slices"

// underRules returns the findings of the published rules for the answers of a pass, each answer with the band at whose ends the share lies that its class
// asks for; spreads are those of the findings of the document as it stands.
func (r *remedySearch) underRules(p *pass, spreads []float64) []Finding {
	if p.in.Limits == nil || len(p.in.Limits.Rules) == 0 {
		return nil
	}
	asks := *p
	asks.resumes, asks.known = nil, nil
	asks.results = slices.Clone(p.results)
	for k := range asks.results {
		if i := indexOf(r.base.results, asks.results[k].ID); i >= 0 {
			r.banded(&asks.results[k], i, spreads[i])
		}
	}
	asks.answerRules()
	return asks.results[len(p.results):]
}

// banded gives a finding the band that its class asks for, and its verdict across that.
func (r *remedySearch) banded(f *Finding, i int, spread float64) {
	if f.Value == nil {
		return
	}
	class := r.classOf(i)
	half := max(0, float64(class.quantile*spread))
	low, high := *f.Value-half, *f.Value+half
	f.BandLow, f.BandHigh = &low, &high
	if f.Verdict == VerdictHolds && class.height(f, spread) < 0 {
		f.Verdict = VerdictTight
	}
}

// checkRules adds the rules that a change lets hold, or lets hold no longer.
func (v *verdictAnew) checkRules(was, now []Finding) {
	for k := range was {
		if was[k].Verdict == VerdictUnknown {
			continue
		}
		v.checked++
		switch held, holds := was[k].Verdict == VerdictHolds, now[k].Verdict == VerdictHolds; {
		case holds && !held:
			v.fixes = append(v.fixes, was[k].ID)
		case held && !holds:
			v.breaks = append(v.breaks, was[k].ID)
		}
	}
}
