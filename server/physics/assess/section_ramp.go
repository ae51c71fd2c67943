package assess

import (
	"math"

	"pitgate/server/physics/motion"
)

const (
	tailPlace  = "launchPlan.ramp.tailXMeters"
	tailHeight = "launchPlan.ramp.tailHeightMeters"
)

// followTail follows the lowest thing behind the cradle over the end of the rails, where the plan says where it is.
func (p *pass) followTail() {
	if p.launch.method != motion.Ramp || !p.launch.flown || p.launch.result.NeverLiftsOff {
		return
	}
	n := p.need()
	tail := p.tail(&n)
	if !n.met() {
		return
	}
	gap, err := p.launch.result.TailGap(tail)
	p.launch.tail, p.launch.tailSeen = gap, err == nil
}

// tail returns the lowest thing behind the cradle; one ahead of the balance point does not swing down.
func (p *pass) tail(n *need) motion.Tail {
	ramp := p.launchPlan().Ramp
	if ramp == nil {
		ramp = &Ramp{}
	}
	n.lack(p.mass.fullMissing...)
	return motion.Tail{
		Arm:    max(0, n.quantity(tailPlace, ramp.TailXMeters)-p.mass.fullBalance),
		Height: n.quantity(tailHeight, ramp.TailHeightMeters), LiftSlope: max(0, p.wing.slope),
	}
}

// answerTailGap answers for the room between the tail and the rails as the model leaves them.
func (p *pass) answerTailGap() {
	n := p.need()
	n.lack(p.launch.missing...)
	p.tail(&n)
	gap := answer{id: "launch.tail_gap", missing: n.missing, limit: limit{value: 0, set: true, rule: coreDefault}}
	switch {
	case !n.met():
	case p.launch.flown && p.launch.result.NeverLiftsOff:
		gap.never = p.neverWords()
	case !p.launch.tailSeen:
		gap.value = math.NaN()
	default:
		found := p.launch.tail
		gap.value = found.Gap
		p.tell("launch.tail_gap", found.Gap)
		gap.note = p.inWords("Least room %.3f m, %.2f m beyond the end of the rails.", found.Gap, found.Distance)
		if found.Strikes {
			gap.note = p.inWords("The tail strikes the rails, %.3f m too low, %.2f m beyond their end.", -found.Gap, found.Distance)
		}
	}
	p.conclude(gap)
}

// tailWords says that the tail strikes, for the findings of what comes after it.
func (p *pass) tailWords() string {
	if p.launch.tailSeen && p.launch.tail.Strikes {
		return " The tail strikes the rails first; what that takes from the flight is left out."
	}
	return ""
}

// neverWords says why a launch comes to nothing.
func (p *pass) neverWords() string {
	if p.launch.result.NeverReleased {
		return p.inWords("The thrust never reaches the %.0f N at which the model is let go.", p.launch.how.ReleaseForce)
	}
	return neverLeaves
}
