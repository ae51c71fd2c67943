package assess

import (
	"cmp"
	"math"

	"pitgate/server/physics/order"
)

// bandFactor is how many standard deviations the 5 % and 95 % points lie from the middle of a normal distribution.
const bandFactor = 1.6448536269514722

// shownShares is how many inputs a finding names with their share in its spread.
const shownShares = 5

// effect is what one spread of an input does to a value.
type effect struct {
	input uncertain
	step  float64
}

// spread moves every uncertain input by its own spread up and down, one at a time, and gives each finding its band.
//
//	u^2 = sum ((f(x+u_i) - f(x-u_i))/2)^2, band = value -+ 1.645 u
//
// where u_i is one standard deviation of input i; inputs with one error in common are moved together. It is false when the watch stopped it.
// Valid for: errors independent of each other, answers close to straight within one spread.
// Source: JCGM 100:2008 (GUM), 5.1, with finite steps in place of derivatives (5.1.3, note 2).
func (p *pass) spread() bool {
	effects := make([][]effect, len(p.results))
	squares := p.drawn.empty()
	for _, s := range p.sources() {
		if !p.goesOn(s.first) {
			return false
		}
		input := s.input
		high, low := p.movingSource(s, 1), p.movingSource(s, -1)
		high.walk()
		low.walk()
		for i := range p.results {
			if step, ok := p.step(i, high, low); ok && step != 0 {
				effects[i] = append(effects[i], effect{input, step})
			}
		}
		squares.add(&high.drawn, &low.drawn)
		high.release()
		low.release()
	}
	for i := range p.results {
		p.results[i].settle(effects[i])
	}
	p.noteEstimates(effects)
	p.drawBands(squares)
	return true
}

// step returns what one spread of an input does to finding i: half the difference of the two moved values, or the difference on the
// side that has a value.
func (p *pass) step(i int, high, low *pass) (float64, bool) {
	middle, up, down := p.results[i].Value, high.results[i].Value, low.results[i].Value
	switch {
	case middle == nil:
		return 0, false
	case up != nil && down != nil:
		return (*up - *down) / 2, true
	case up != nil:
		p.results[i].oneSided()
		return *up - *middle, true
	case down != nil:
		p.results[i].oneSided()
		return *middle - *down, true
	}
	return 0, false
}

// oneSided marks a finding that has no value any more within one spread of an input: it cannot hold across its band.
func (f *Finding) oneSided() {
	if f.Verdict == VerdictHolds {
		f.Verdict = VerdictTight
	}
}

// settle gives a finding its band, its verdict across the band, and the inputs that decide its spread.
func (f *Finding) settle(effects []effect) {
	if f.Value == nil || catalogue[place(f.ID)].still {
		return
	}
	variance := 0.0
	for _, e := range effects {
		variance += float64(e.step * e.step)
	}
	half := float64(bandFactor * math.Sqrt(variance))
	low, high := *f.Value-half, *f.Value+half
	if catalogue[place(f.ID)].neverNegative {
		low = max(0, low)
	}
	if !finite(low) || !finite(high) {
		f.oneSided()
		return
	}
	f.BandLow, f.BandHigh = &low, &high
	if f.Verdict == VerdictHolds && f.worstMargin(low, high) < 0 {
		f.Verdict = VerdictTight
	}
	f.SpreadShares = shares(effects, variance)
}

// worstMargin returns the least margin at the ends of the band; zero where there is no limit.
func (f *Finding) worstMargin(low, high float64) float64 {
	atLow, limited := f.marginOf(low)
	if !limited {
		return 0
	}
	atHigh, _ := f.marginOf(high)
	return min(atLow, atHigh)
}

// shares returns the inputs with the largest part in a variance, largest first.
func shares(effects []effect, variance float64) []SpreadShare {
	if !(variance > 0) {
		return nil
	}
	list := make([]SpreadShare, 0, len(effects))
	for _, e := range effects {
		list = append(list, SpreadShare{Input: e.input.name, ShareRatio: float64(e.step*e.step) / variance})
	}
	order.Stable(list, func(a, b SpreadShare) int { return cmp.Compare(b.ShareRatio, a.ShareRatio) })
	if len(list) > shownShares {
		list = list[:shownShares]
	}
	return list
}

// noteEstimates marks the findings that an estimated input moves.
func (p *pass) noteEstimates(effects [][]effect) {
	for i := range p.results {
		for _, e := range effects[i] {
			if e.input.estimated {
				p.results[i].RestsOnEstimate = true
			}
		}
	}
}
