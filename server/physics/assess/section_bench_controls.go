package assess

import (
	"strings"

	"pitgate/server/physics/aeroelastic"
)

// hingedControl is a control as the bench sees it.
type hingedControl struct {
	name, path string
	control    *Control
	chord      float64 // of the hinged part in the middle of its span, m
}

// hingedControls lists every control but flaps, which stand up at speed.
func (p *pass) hingedControls() []hingedControl {
	var list []hingedControl
	if p.in.Model == nil || len(p.whole.missing) > 0 {
		return nil
	}
	for i := range p.in.Model.Surfaces {
		surface := &p.in.Model.Surfaces[i]
		for k := range surface.Controls {
			c := &surface.Controls[k]
			if c.Role == ControlRoleFlap {
				continue
			}
			middle := 0.5 * (orElse(c.InnerSpanRatio, 0) + orElse(c.OuterSpanRatio, 1))
			chord := chordAt(&p.whole.surfaces[i], middle)
			if !yes(surface.AllMoving) {
				chord *= orElse(c.ChordRatio, defaultChordRatio)
			}
			list = append(list, hingedControl{c.Name, at(at(surfacesPath, i)+".controls", k), c, chord})
		}
	}
	return list
}

// controlList returns the controls, or names that there are none.
func (p *pass) controlList(n *need) []hingedControl {
	n.lack(p.wing.missing...)
	list := p.hingedControls()
	if n.met() && len(list) == 0 {
		n.lack(surfacesPath + "[].controls")
	}
	return list
}

// answerFreePlay answers for the slack of the controls, as measured at the bench.
func (p *pass) answerFreePlay() {
	a := answer{id: "controls.free_play", limit: p.limit(freePlayFigure)}
	n, mark := p.need(), p.mark()
	list, size, most := p.controlList(&n), sizes{}, ""
	p.aside = true
	for _, c := range list {
		play := n.size(&size, c.path+".freePlayMeters", c.control.FreePlayMeters)
		angle, err := aeroelastic.FreePlay(play, c.chord)
		if err != nil {
			n.lack(c.path + ".freePlayMeters")
		}
		if angle >= a.value {
			a.value, most = angle, say("the %s has %.1f mm over a chord of %.0f mm, %.1f degrees", c.name, 1000*play, 1000*c.chord, degrees(angle))
		}
	}
	p.aside = false
	if a.missing = n.missing; n.met() {
		a.value *= p.partFactor(size, size.worst)
		a.from = p.since(mark)
		a.note = strings.ToUpper(most[:1]) + most[1:] + " at the trailing edge. Measured with the servo held; slack lets a control flutter far below any computed speed."
		p.tell("controls.free_play", a.value, a.from...)
	}
	p.conclude(a)
}

// answerMassBalance answers for controls that are flown fast without mass balance.
func (p *pass) answerMassBalance() {
	a := answer{id: "controls.balance", limit: limit{value: unbalancedSpeed, set: true, rule: coreDefault}}
	n := p.need()
	list := p.controlList(&n)
	n.lack(p.loads.missing...)
	var open []string
	for _, c := range list {
		switch path := c.path + ".massBalanced"; {
		case yes(c.control.MassBalanced):
			a.from = append(a.from, path)
		case c.control.MassBalanced == nil && p.top > unbalancedSpeed:
			n.lack(path)
		default:
			open = append(open, c.name)
		}
	}
	if a.missing = n.missing; n.met() {
		a.value, a.none = p.top, len(open) == 0
		a.note = balanceNote(open, p.top)
	}
	p.conclude(a)
}

// balanceNote says which controls are not balanced.
func balanceNote(open []string, top float64) string {
	const bench = " Screening by speed alone: slack, stiffness and the balance itself belong on the bench."
	switch {
	case len(open) == 0:
		return "Every control is mass balanced about its hinge." + bench
	case top > unbalancedSpeed:
		return say("Not balanced at a top speed of %.1f m/s: %s. A weight ahead of the hinge brings each into balance.", top, strings.Join(open, ", ")) + bench
	default:
		return say("Not balanced: %s; at a top speed of %.1f m/s that is usual.", strings.Join(open, ", "), top) + bench
	}
}
