package assess

import (
	"math"
	"strings"

	"pitgate/server/physics/aeroelastic"
)

// softShare is the share of a control's angle that the air may push it back by: judgement, more is felt as a control that fades with speed.
const softShare = 0.10

// answerRods answers for the pushrods: none may buckle, or let its control give way, at half throw and top speed.
func (p *pass) answerRods() {
	a, n := p.partAnswer("linkage.stiffness")
	times := 0.0
	if n.met() && a.never == "" {
		l := p.linkages()
		n.lack(l.missing...)
		n.lack(l.rodless...)
		if len(l.held) == 0 {
			n.lack(l.without...)
			n.lackControls(l)
		}
		if n.met() {
			times = p.rodTimes(&n, &a)
		}
	}
	p.finishPart(a, n, times)
}

// rodTimes returns the least speed at which a pushrod is at its end over the top speed.
func (p *pass) rodTimes(n *need, a *answer) float64 {
	l, least, weakest, softest := p.linkages(), math.Inf(1), "", aeroelastic.RodLimits{}
	incidence := math.Abs(p.stateAt(p.top).Lift / p.wing.slope)
	for _, h := range l.held {
		c := h.control
		c.Throw, c.Incidence = c.Throw*throwAtTop, incidence
		limits, err := h.linkage.RodLimits(c, softShare, p.air.state.Density)
		if err != nil {
			n.lack(h.path)
			continue
		}
		if limits.Least() < least {
			least, weakest, softest = limits.Least(), h.name, limits
		}
	}
	if !n.met() {
		return 0
	}
	least *= p.factor(hingeMethod, spreadHinge) * p.partFactor(l.rods, 2*l.rods.worst)
	a.note = p.rodNote(weakest, softest, least)
	p.tell("linkage.speed", least, l.read...)
	p.tell("linkage.load", softest.Load, l.read...)
	return least / p.top
}

// rodNote names the softest pushrod and what ends it.
func (p *pass) rodNote(name string, r aeroelastic.RodLimits, speed float64) string {
	if !p.base() {
		return ""
	}
	end := p.inWords("lets the air take back a tenth of the angle at %.0f m/s", speed)
	if r.Buckles <= r.Soft {
		end = p.inWords("buckles at %.0f m/s", speed)
	}
	note := say("At half throw the pushrod of the %s %s, under %.0f N with a factor of 1.5; top speed is %.1f m/s.", name, end, r.Load, p.top)
	if speed < p.top {
		note += " A thicker, shorter or guided rod raises it."
	}
	if open := p.linkages().without; len(open) > 0 {
		note += say(" Not looked at, without a declared linkage or all-moving: %d.", len(open))
	}
	return strings.TrimSpace(note)
}
