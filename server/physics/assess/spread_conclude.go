package assess

import (
	"cmp"

	"pitgate/server/physics/order"
	"pitgate/server/physics/sample"
)

// conclude gives every finding what the samples say.
func (r *sampling) conclude() {
	results := r.base.results
	r.values, r.margins, r.shares = make([][]float64, len(results)), make([][]float64, len(results)), make([][]float64, len(results))
	deviates := sample.NewInputs(r.by)
	each(len(results), r.options.Workers, func(int) bool { return true }, func(i int) {
		r.values[i] = r.gather(func(s *sampled) float64 { return s.values[i] })
		r.margins[i] = r.gather(func(s *sampled) float64 { return s.margins[i] })
		r.shares[i] = deviates.Shares(r.values[i])
		r.settle(i)
	})
	r.drawBands()
}

// gather lists one number of every sample that has an answer.
func (r *sampling) gather(of func(*sampled) float64) []float64 {
	out := make([]float64, len(r.samples))
	for j := range r.samples {
		out[j] = of(&r.samples[j])
	}
	return out
}

// settle gives a finding its band, its probability, its verdict and the inputs that decide its spread.
func (r *sampling) settle(i int) {
	f := &r.base.results[i]
	if f.Verdict == VerdictUnknown || catalogue[place(f.ID)].still {
		return
	}
	f.RestsOnEstimate = r.moved[i]
	required := r.base.required(f.FindingClass)
	if f.LimitSense != LimitSenseNone || f.Verdict == VerdictFails {
		held := sample.HoldShare(r.answered(r.margins[i]))
		f.HoldsProbability, f.RequiredProbability = &held, &required
		if f.Verdict == VerdictHolds && held < required {
			f.Verdict = VerdictTight
		}
	}
	if len(r.slopes[i]) > 0 {
		f.Method += slopesNote
	}
	if f.Value == nil {
		return
	}
	r.band(f, r.values[i])
	f.SpreadShares = r.topShares(i)
}

// answered leaves out the samples that were refused; one in which this finding alone is unknown counts as not holding.
func (r *sampling) answered(margins []float64) []float64 {
	kept := make([]float64, 0, len(margins))
	for j, m := range margins {
		if !r.samples[j].refused {
			kept = append(kept, m)
		}
	}
	return kept
}

// band writes the 5 %, 50 % and 95 % points of the samples that have a value.
func (r *sampling) band(f *Finding, values []float64) {
	band, ok := sample.BandOf(values)
	if !ok || !finite(band.P5) || !finite(band.P95) {
		f.oneSided()
		return
	}
	if catalogue[place(f.ID)].neverNegative {
		band.P5, band.P50, band.P95 = max(0, band.P5), max(0, band.P50), max(0, band.P95)
	}
	f.BandLow, f.Median, f.BandHigh = &band.P5, &band.P50, &band.P95
}

// leastShown is the least share that is told.
const leastShown = 0.002

// topShares names the errors with the largest shares, largest first.
func (r *sampling) topShares(i int) []SpreadShare {
	var list []SpreadShare
	for s, share := range r.shares[i] {
		if share > leastShown {
			list = append(list, SpreadShare{Input: r.sources[s].input.name, ShareRatio: min(share, 1)})
		}
	}
	order.Stable(list, func(a, b SpreadShare) int { return cmp.Compare(b.ShareRatio, a.ShareRatio) })
	return list[:min(len(list), shownShares)]
}

// drawBands gives every point of the launch profile and of the polar its band.
func (r *sampling) drawBands() {
	heights := func(i int) (sample.Band, bool) {
		return r.ordinate(func(o *ordinates) []float64 { return o.heights }, i)
	}
	drags := func(i int) (sample.Band, bool) { return r.ordinate(func(o *ordinates) []float64 { return o.drags }, i) }
	for k := range r.base.lines {
		if r.base.lines[k].ID != "launch.profile" {
			continue
		}
		for i := range r.base.lines[k].Points {
			if band, ok := heights(i); ok {
				r.base.lines[k].Points[i].HalfBandMeters = (band.P95 - band.P5) / 2
			}
		}
	}
	for k := range r.base.curves {
		if r.base.curves[k].ID != "drag.polar" {
			continue
		}
		points := r.base.curves[k].Series[0].Points
		for i := range points {
			if band, ok := drags(i); ok {
				points[i].Low, points[i].High = &band.P5, &band.P95
			}
		}
	}
}

// ordinate returns the band of one drawn ordinate over the samples that reach it.
func (r *sampling) ordinate(of func(*ordinates) []float64, i int) (sample.Band, bool) {
	var values []float64
	for j := range r.samples {
		if drawn := of(&r.samples[j].drawn); i < len(drawn) {
			values = append(values, drawn[i])
		}
	}
	band, ok := sample.BandOf(values)
	return band, ok && finite(band.P5) && finite(band.P95)
}
