package assess

import (
	"pitgate/server/physics/radio"
)

const (
	// usualCheckHeight is how high a model stands at a range check where nobody says, m.
	usualCheckHeight = 0.5
	spreadCheck      = 0.15
)

// answerRangeCheck holds the distance walked at reduced power against that which would show the wanted margin at the farthest corner.
func (p *pass) answerRangeCheck(l *radioSection) {
	n, mark, r := p.need(), p.mark(), p.radio()
	n.lack(l.missing...)
	reduction := n.quantity(radioPath+".rangeCheckReductionDecibels", r.RangeCheckReductionDecibels)
	if n.met() {
		p.tell("radio.check_needed", radio.RequiredCheckDistance(l.farthest, l.wanted.value, reduction), p.since(mark)...)
	}
	check := radio.RangeCheck{
		Distance: n.quantity(radioPath+".rangeCheckMeters", r.RangeCheckMeters), Reduction: reduction, ModelHeight: p.checkHeight(r),
		TransmitterHeight: l.link.TransmitterHeight,
	}
	found := answer{id: "radio.range_check", missing: n.missing, value: check.Distance}
	if !n.met() {
		p.conclude(found)
		return
	}
	checked, err := radio.CheckRange(l.link, &p.whole.antennas.all, check, l.farthest, l.wanted.value)
	if err != nil {
		found.missing = []string{radioPath + ".rangeCheckMeters"}
		p.conclude(found)
		return
	}
	found.limit = limit{value: checked.Needed, set: true, rule: l.wanted.rule, path: l.wanted.path}
	found.note = rangeNote(&checked, l)
	if checked.Disagrees {
		found.never = say("Power, sensitivity and antennas as entered leave %.0f dB at %.0f m with the power reduced by %.0f dB, so the check could not have "+
			"worked: an entry is wrong.", checked.Predicted, checked.At, reduction)
	}
	p.tellCheck(&checked, l)
	p.conclude(found)
}

// checkHeight returns the height of the model's antennas at the check, m.
func (p *pass) checkHeight(r *RadioLink) float64 {
	name := radioPath + ".rangeCheckHeightMeters"
	if r.RangeCheckHeightMeters != nil {
		return max(0, *r.RangeCheckHeightMeters+p.offset(name, spreadCheck))
	}
	return max(0, p.assumed(name, usualCheckHeight, 2*spreadCheck))
}

// rangeNote says what a range check shows and where.
func rangeNote(c *radio.CheckedRange, l *radioSection) string {
	note := sayNumbers("Demonstrated: %.0f dB at %.0f m, and nowhere else. Carried to the farthest corner, %.0f m away, about %.0f dB. The entries predicted %.0f dB left at the check.",
		c.Demonstrated, c.At, l.farthest, c.Carried, c.Predicted)
	if c.InNulls {
		note += " So near, the ground makes nulls: walk several distances and take the worst."
	}
	if c.At < c.Needed {
		note += sayNumbers(" Walk %.0f m to show %.0f dB there.", c.Needed, l.wanted.value)
	}
	return note
}

func (p *pass) tellCheck(c *radio.CheckedRange, l *radioSection) {
	p.tell("radio.check_demonstrated", c.Demonstrated)
	p.tell("radio.check_carried", c.Carried, l.read...)
	p.tell("radio.check_predicted", c.Predicted, l.read...)
}
