package assess

import (
	"math"
	"slices"

	"pitgate/server/physics/aeroelastic"
	"pitgate/server/physics/structure"
)

// spreadHinge is how far a hinge moment may be off, relative: thin-aerofoil theory gives more than real flaps, so that little is left above.
const spreadHinge = 0.05

// heldControl is a control with what holds it, as the base pass read it.
type heldControl struct {
	name    string
	path    string // of the linkage
	control aeroelastic.Control
	linkage aeroelastic.Linkage
}

// linkages are all controls with a linkage and the paths of those that have none.
type linkages struct {
	held    []heldControl
	missing []string // of linkages that are begun
	without []string // paths of controls without any
	rodless []string // what is missing of pushrods
	torques sizes
	rods    sizes
	read    []string
}

// linkages returns what holds the controls, read once. Flaps are lowered at the approach alone and all-moving surfaces have no hinge moment of
// this method.
func (p *pass) linkages() *linkages {
	if p.drawing.linkages != nil {
		return p.drawing.linkages
	}
	l := &linkages{}
	p.drawing.linkages = l
	n, mark := p.need(), p.mark()
	p.aside = true
	defer func() { p.aside = false }()
	for i := range p.in.Model.Surfaces {
		surface := &p.in.Model.Surfaces[i]
		for k := range surface.Controls {
			path := at(at(surfacesPath, i)+".controls", k)
			if surface.Controls[k].Role == ControlRoleFlap {
				continue
			}
			if surface.Controls[k].Linkage == nil || yes(surface.AllMoving) {
				l.without = append(l.without, path+".linkage")
				continue
			}
			l.held = append(l.held, n.heldControl(l, path, i, &surface.Controls[k]))
		}
	}
	l.missing, l.read = n.missing, p.since(mark)
	return l
}

// sizes returns how far the speeds may be off for torques and rods: a speed goes with the root of a torque and the square of a rod's diameter.
func (l *linkages) sizes() sizes {
	return sizes{worst: max(0.5*l.torques.worst, 2*l.rods.worst), estimated: l.torques.estimated || l.rods.estimated}
}

// heldControl reads one control; where several servos share it each holds its part.
func (n *need) heldControl(l *linkages, path string, surface int, c *Control) heldControl {
	d := c.Linkage
	count := 1.0
	if d.ServoCount != nil {
		count = max(1, float64(*d.ServoCount))
	}
	up, down := n.quantity(path+".throwUpDegrees", c.ThrowUpDegrees), n.quantity(path+".throwDownDegrees", c.ThrowDownDegrees)
	h := heldControl{name: c.Name, path: path + ".linkage"}
	h.control = aeroelastic.Control{MomentArea: n.pass.momentArea(surface, c) / count, ChordRatio: orElse(c.ChordRatio, defaultChordRatio), Throw: radians(max(up, down))}
	path += ".linkage"
	h.linkage = aeroelastic.Linkage{
		Torque: n.size(&l.torques, path+".servoTorqueNewtonMeters", d.ServoTorqueNewtonMeters), Count: 1,
		ServoArm: n.number(path+".servoArmMeters", d.ServoArmMeters), HornArm: n.number(path+".hornArmMeters", d.HornArmMeters),
	}
	n.pass.note(path)
	l.rodless = append(l.rodless, rodLacks(path, d)...)
	if d.RodLengthMeters == nil || d.RodDiameterMeters == nil {
		return h
	}
	material, known := structure.FindMaterial(d.RodMaterial)
	if !known {
		n.lack(path + ".rodMaterial")
	}
	h.linkage.RodLength, h.linkage.RodMaterial = *d.RodLengthMeters, material
	h.linkage.RodDiameter = n.size(&l.rods, path+".rodDiameterMeters", d.RodDiameterMeters)
	return h
}

// rodLacks names the measures that a pushrod lacks.
func rodLacks(path string, d *Linkage) []string {
	var missing []string
	if d.RodLengthMeters == nil {
		missing = append(missing, path+".rodLengthMeters")
	}
	if d.RodDiameterMeters == nil {
		missing = append(missing, path+".rodDiameterMeters")
	}
	return missing
}

// momentArea returns the integral of the flap chord squared along the hinges of all sides of a control, m3.
func (p *pass) momentArea(surface int, c *Control) float64 {
	s := &p.whole.surfaces[surface]
	inner, outer := orElse(c.InnerSpanRatio, 0), orElse(c.OuterSpanRatio, 1)
	first, last := s.Stations[0], s.Stations[len(s.Stations)-1]
	breadth := root(last.Y-first.Y, last.Z-first.Z) * max(0, outer-inner)
	ratio := orElse(c.ChordRatio, defaultChordRatio)
	chord := func(share float64) float64 { return ratio * (first.Chord + float64(share*(last.Chord-first.Chord))) }
	return s.Sides() * aeroelastic.TaperedMomentArea(breadth, chord(inner), chord(outer))
}

// holding is a speed at which something gives in, and what.
type holding struct {
	speed float64
	name  string
	kind  aeroelastic.Kind
	sure  bool
}

// holdings returns for each control the speeds at which servo and pushrod give in at a share of the full throw, of the servo's torque that at
// which it stalls, or the rated one less the usual reserve. n names the linkages that cannot be.
func (p *pass) holdings(n *need, share float64, reserve bool) []holding {
	l := p.linkages()
	incidence := math.Abs(p.stateAt(p.top).Lift / p.wing.slope)
	factor := p.strength(hingeMethod, l.sizes(), spreadHinge, 1)
	var out []holding
	for _, h := range l.held {
		c := h.control
		c.Throw, c.Incidence = c.Throw*share, incidence
		limits, err := h.linkage.Limits(c, 1, p.air.state.Density)
		if err != nil {
			n.lack(h.path)
			continue
		}
		speed := limits.ServoStallSpeed
		if reserve {
			speed = limits.ServoSpeed
		}
		out = append(out, holding{speed * factor, "servo of the " + h.name, aeroelastic.KindServo, limits.Travel.Reached})
		if limits.RodKnown {
			out = append(out, holding{limits.RodSpeed * factor, "pushrod of the " + h.name, aeroelastic.KindRod, true})
		}
	}
	return out
}

// answerServos answers for the weakest servo at half throw.
func (p *pass) answerServos() {
	servo := answer{id: "servo.torque", limit: askedOnce}
	n := p.need()
	n.lack(p.loads.missing...)
	if n.met() && p.top > 0 {
		l := p.linkages()
		n.lack(l.missing...)
		if len(l.held) == 0 {
			n.lack(l.without...)
			n.lackControls(l)
		}
	}
	switch {
	case !n.met():
	case !(p.top > 0):
		servo.never = noTopSpeed
	default:
		p.weakest(&n, &servo)
	}
	servo.missing = n.missing
	p.conclude(servo)
}

// lackControls names the controls where there are none at all.
func (n *need) lackControls(l *linkages) {
	if len(l.without) == 0 {
		n.lack(surfacesPath + "[].controls")
	}
}

func (p *pass) weakest(n *need, servo *answer) {
	list := slices.DeleteFunc(p.holdings(n, throwAtTop, false), func(h holding) bool { return h.kind != aeroelastic.KindServo })
	if len(list) == 0 {
		n.lack(p.linkages().without...)
		n.lackControls(p.linkages())
		return
	}
	least := list[0]
	for _, h := range list {
		if h.speed < least.speed {
			least = h
		}
	}
	servo.value = least.speed / p.top
	servo.note = say("At half throw the %s gives in at %.0f m/s; top speed is %.1f m/s.", least.name, least.speed, p.top)
	if without := len(p.linkages().without); without > 0 {
		servo.note += say(" Not looked at, without a declared linkage or all-moving: %d.", without)
	}
	p.tell("servo.speed", least.speed, p.linkages().read...)
}
