package assess

import (
	"math"

	"pitgate/server/physics/motion"
	"pitgate/server/physics/stability"
)

// Relative spreads of the methods of this part.
const (
	spreadControl = 0.10 // hinge gaps and the boundary layer leave between 0.75 and 0.85 of the thin-aerofoil effect
	spreadDamping = 0.15
)

// placed is a control of the document and where it stands.
type placed struct {
	control *Control
	surface *LiftingSurface
	path    string
}

// controlsOf returns the controls of the first of the roles that any control has.
func (p *pass) controlsOf(roles ...ControlRole) []placed {
	if p.in.Model == nil {
		return nil
	}
	for _, role := range roles {
		var found []placed
		for i := range p.in.Model.Surfaces {
			surface := &p.in.Model.Surfaces[i]
			for k := range surface.Controls {
				if surface.Controls[k].Role == role {
					found = append(found, placed{&surface.Controls[k], surface, at(at(surfacesPath, i)+".controls", k)})
				}
			}
		}
		if len(found) > 0 {
			return found
		}
	}
	return nil
}

// pitchControl is the control that the pilot trims with: all its parts move alike.
type pitchControl struct {
	missing []string
	name    string
	indices []int // of the lattice's controls
	throw   stability.Throw
}

// readPitchControl finds the pitch control: the elevator, else the elevons, else the tails of a V. Where several surfaces have one, that
// with the greatest power over the moment is taken.
func (p *pass) readPitchControl() {
	n := p.need()
	n.lack(p.wing.missing...)
	if !n.met() {
		p.pitch.missing = n.missing
		return
	}
	parts := p.strongest(p.controlsOf(ControlRoleElevator, ControlRoleElevon, ControlRoleRuddervator))
	if len(parts) == 0 {
		n.lack(surfacesPath + "[].controls")
	}
	up, down := math.Inf(1), math.Inf(1)
	for _, part := range parts {
		p.pitch.name = part.control.Name
		p.pitch.indices = append(p.pitch.indices, p.latticeControl(part))
		up = min(up, radians(n.quantity(part.path+".throwUpDegrees", part.control.ThrowUpDegrees)))
		down = min(down, radians(n.quantity(part.path+".throwDownDegrees", part.control.ThrowDownDegrees)))
	}
	p.pitch.missing = n.missing
	if !n.met() {
		return
	}
	p.pitch.throw = stability.Throw{NoseUp: -up, NoseDown: down}
	if p.momentPower(p.wing.neutralX) > 0 {
		p.pitch.throw = stability.Throw{NoseUp: down, NoseDown: -up}
	}
}

// latticeControl returns the index of a control in the lattice, -1 when its surface takes no part.
func (p *pass) latticeControl(c placed) int {
	for i, effect := range p.whole.lattice.Controls {
		if effect.Surface == c.surface.Name && effect.Name == c.control.Name {
			return i
		}
	}
	return -1
}

// strongest keeps the controls of the surface with the greatest power over the pitching moment.
func (p *pass) strongest(parts []placed) []placed {
	var best []placed
	greatest := 0.0
	for i := range parts {
		var same []placed
		power := 0.0
		for _, part := range parts {
			if k := p.latticeControl(part); part.surface == parts[i].surface && k >= 0 {
				same = append(same, part)
				power += p.whole.lattice.Controls[k].MomentAt(p.wing.neutralX)
			}
		}
		if math.Abs(power) > greatest {
			best, greatest = same, math.Abs(power)
		}
	}
	return best
}

// momentPower returns the pitching moment about x per radian of the pitch control.
func (p *pass) momentPower(x float64) float64 {
	sum := 0.0
	for _, i := range p.pitch.indices {
		sum += p.whole.lattice.Controls[i].MomentAt(x)
	}
	return sum * p.factor("method: control power", spreadControl)
}

// liftPower returns the lift per radian of the pitch control.
func (p *pass) liftPower() float64 {
	sum := 0.0
	for _, i := range p.pitch.indices {
		sum += p.whole.lattice.Controls[i].LiftSlope
	}
	return sum * p.factor("method: control power", spreadControl)
}

// pitchAt returns what the pitching motion needs of the model when it balances at x.
func (p *pass) pitchAt(x float64) stability.Pitch {
	liftRate, momentRate := p.whole.lattice.PitchRateAt(x)
	damping := p.factor("method: pitch damping", spreadDamping)
	return stability.Pitch{
		LiftSlope:   p.wing.slope,
		MomentSlope: stability.MomentSlope(p.wing.slope, stability.StaticMargin(p.wing.neutralX, x, p.wing.chord)),
		MomentZero:  p.whole.lattice.ZeroLiftMoment, LiftControl: p.liftPower(), MomentControl: p.momentPower(x),
		PitchDamping: momentRate * damping, LiftPitchRate: liftRate * damping,
	}
}

// stateAt returns level flight at a speed.
func (p *pass) stateAt(speed float64) stability.State {
	s := stability.State{
		Mass: p.mass.takeoff, Speed: speed, Density: p.air.state.Density, Area: p.wing.area, Chord: p.wing.chord, Span: p.wing.span,
		Gravity: motion.Gravity, Inertia: p.inertia.Inertia,
	}
	s.Lift = float64(s.Mass*s.Gravity) / float64(s.Pressure()*s.Area)
	s.Drag = p.drag.top + float64(p.drag.induced*float64(s.Lift*s.Lift))
	return s
}

// angleWords writes a control angle as degrees trailing edge up or down.
func angleWords(angle float64) string {
	if angle < 0 {
		return sayNumbers("%.1f degrees up", -degrees(angle))
	}
	return sayNumbers("%.1f degrees down", degrees(angle))
}
