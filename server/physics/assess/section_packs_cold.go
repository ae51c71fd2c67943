package assess

import (
	"pitgate/server/physics/packs"
)

// coldSteps halve the range of temperatures to a thousandth of a degree.
const coldSteps = 16

// answerPackCold holds the temperature of each pack after its wait in the open against the coldest at which it still does what is wanted of it.
func (p *pass) answerPackCold(s *packsSection) {
	n := p.need()
	if len(s.supplies) == 0 {
		n.lack("model.packs")
	}
	for i := range s.supplies {
		n.lack(s.supplies[i].missing...)
		n.lack(s.supplies[i].soak...)
	}
	found := answer{id: "packs.cold", missing: n.missing}
	if n.met() {
		p.coldest(s, &found)
	}
	p.conclude(found)
}

// coldest finds the pack that is nearest to its limit once; moved passes look at that pack alone.
func (p *pass) coldest(s *packsSection, found *answer) {
	if p.base() {
		least := s.coldLimit(&s.supplies[0])
		p.drawing.coldPack, p.drawing.coldLimit = 0, least
		for i := range s.supplies {
			limit := s.coldLimit(&s.supplies[i])
			if s.supplies[i].waited-limit < s.supplies[p.drawing.coldPack].waited-p.drawing.coldLimit {
				p.drawing.coldPack, p.drawing.coldLimit = i, limit
			}
		}
	}
	one := &s.supplies[p.drawing.coldPack]
	found.value = one.waited - packs.Zero
	found.limit = limit{value: p.drawing.coldLimit - packs.Zero, set: true, rule: coreDefault}
	if !p.base() {
		return
	}
	p.tell("packs.cold_limit", found.limit.value, one.read...)
	found.from = one.told("temperature")
	found.note = say("%s after %.0f min in the open: %.0f %% of its capacity and %.1f times its resistance at 25 C.", sentence(one.name),
		valueOr(p.in.Model.Packs[p.drawing.coldPack].WaitInOpenMinutes, 0), 100*one.result.Temperature, one.supply.Chemistry.ColdRatio(one.supply.Kelvin))
	if found.value < found.limit.value {
		found.note += p.inWords(" Keep it warmer than %.0f C until the start.", found.limit.value)
	}
}

// coldLimit returns the coldest temperature at which a pack does what is wanted of it, K, by bisection; the coldest that its cells are made for where
// it does so even then, or does not at room temperature either, so that not the cold is at fault.
func (s *packsSection) coldLimit(one *supplied) float64 {
	low, high := packs.ColdestCells, packs.RoomCells
	if s.does(one, low) || !s.does(one, high) {
		return low
	}
	for range coldSteps {
		if middle := (low + high) / 2; s.does(one, middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// does reports whether a pack at a temperature gives the flight its charge and its volts.
func (s *packsSection) does(one *supplied, kelvin float64) bool {
	at := *one
	at.supply.Kelvin = kelvin
	result, err := packs.Compute(at.supply)
	if err != nil {
		return false
	}
	at.result = result
	held := at.used() <= s.use.value && at.spare() >= 0
	return held && (at.use != PackUseReceiver || result.BusVolts >= s.least.value)
}
