package assess

import (
	"pitgate/server/physics/drag"
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/stability"
)

// Relative spreads of the methods of this part.
const (
	spreadFin      = 0.10 // sidewash and the flow at the fin's foot
	spreadBodyYaw  = 0.30
	spreadRollRate = 0.05
	spreadReversal = 0.10
	// bankedTo is the bank whose time is told.
	bankedTo = 45.0
)

// yawSection is what answers sideslip, roll and yaw at the circuit's speed.
type yawSection struct {
	wing        float64 // yawing moment of the wing alone with sideslip, per rad
	parts       stability.FinStiffness
	derivatives stability.Lateral
}

// answerLateral answers for fin, roll and what twists the wing under its ailerons.
func (p *pass) answerLateral() {
	n := p.need()
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.mass.fullMissing...)
	if n.met() && p.whole.lateral == nil {
		n.lack(surfacesPath)
	}
	if n.met() {
		p.readLateral()
	}
	p.answerFin(n.missing)
	p.answerRoll(n.missing)
	p.answerReversal()
	if n.met() && p.tells() && len(p.inertia.missing) == 0 {
		p.tellLateral()
	}
}

// readLateral takes the derivatives at the circuit's speed, fuel at the aftmost balance point, where the fin's arm is shortest.
func (p *pass) readLateral() {
	state := p.stateAt(p.stall.circuitSpeed)
	x := p.mass.travel.Aft.X
	d := p.whole.lateral.At(x, p.whole.wing.HeightZ, state.Lift)
	p.yaw.wing = stability.WingYaw(state.Lift, p.wing.span*p.wing.span/p.wing.area, p.whole.wing.QuarterChordSweep, (p.whole.wing.QuarterChordX-x)/p.wing.chord)
	p.yaw.parts = stability.FinStiffness{
		Fin:  float64((d.YawBeta - p.yaw.wing) * p.factor("method: fin in the stream", spreadFin)),
		Body: float64(p.bodyYaw() * p.factor("method: bodies in yaw", spreadBodyYaw)), Wing: p.yaw.wing,
	}
	p.yaw.derivatives = stability.Lateral{
		SideForceBeta: d.SideForceBeta, RollBeta: d.RollBeta, YawBeta: p.yaw.parts.Total(),
		SideForceRollRate: d.SideForceRollRate, RollRollRate: d.RollRollRate * p.factor("method: roll damping", spreadRollRate), YawRollRate: d.YawRollRate,
		SideForceYawRate: d.SideForceYawRate, RollYawRate: d.RollYawRate,
		YawYawRate: d.YawYawRate + p.whole.lateral.ProfileYawDamping(p.drag.top/2),
	}
}

// bodyYaw returns the yawing moment of all bodies with sideslip, per rad.
func (p *pass) bodyYaw() float64 {
	sum := 0.0
	for i := range p.in.Model.Bodies {
		body := bodyOf(&p.in.Model.Bodies[i])
		shape, ok := drag.MeasureBody(body)
		if !ok {
			continue
		}
		width, depth := 0.0, 0.0
		for _, station := range body.Stations {
			width, depth = max(width, station.Width), max(depth, station.Height)
		}
		if width > 0 {
			sum += stability.BodyYaw(shape.Volume, depth, width, p.wing.area, p.wing.span)
		}
	}
	return sum
}

func (p *pass) answerFin(missing []string) {
	fin := answer{id: "fin.stiffness", missing: missing, limit: p.limit(finFigure)}
	if len(missing) == 0 {
		parts := p.yaw.parts
		fin.value = parts.Total()
		fin.note = p.inWords("Fins and surfaces %+.3f, bodies %+.3f, wing %+.3f, at %.1f m/s with the balance point at %.3f m.",
			parts.Fin, parts.Body, parts.Wing, p.stall.circuitSpeed, p.mass.travel.Aft.X)
		fin.note += p.finNote(fin)
		p.tell("fin.part.fin", parts.Fin)
		p.tell("fin.part.bodies", parts.Body)
		p.tell("fin.part.wing", parts.Wing)
		p.tell("fin.stiffness", parts.Total())
	}
	p.conclude(fin)
}

// finNote says what fin area would bring the stiffness to its limit; empty when it is there.
func (p *pass) finNote(fin answer) string {
	area, arm := p.finMeasures()
	if !p.tells() || fin.value >= fin.limit.value {
		return ""
	}
	if !(area > 0) || !(arm > 0) || !(p.yaw.parts.Fin > 0) {
		return " There is no fin behind the balance point to enlarge."
	}
	slope := p.yaw.parts.Fin * p.wing.area * p.wing.span / float64(area*arm)
	wanted, ok := stability.FinAreaFor(fin.limit.value, p.yaw.parts, stability.Fin{LiftSlope: slope, Area: area, Arm: arm, Sidewash: 1}, p.wing.area, p.wing.span)
	if !ok {
		return ""
	}
	return p.inWords(" Fins of %.4f m2 in place of %.4f m2 would reach it.", wanted, area)
}

// finMeasures returns the area of all fins (m2) and the mean arm of their quarter chords behind the balance point, m.
func (p *pass) finMeasures() (area, arm float64) {
	for i := range p.whole.surfaces {
		s := p.whole.surfaces[i]
		m, err := planform.Measure(s)
		if err != nil || s.Role != planform.RoleFin && s.Role != planform.RoleVTail {
			continue
		}
		upright := m.ExposedArea
		if s.Role == planform.RoleVTail {
			upright *= square(elementary.Sin(m.Dihedral))
		}
		area += upright
		arm += float64(upright * (m.QuarterChordX - p.mass.travel.Aft.X))
	}
	if area > 0 {
		arm /= area
	}
	return area, arm
}

func square(x float64) float64 { return float64(x * x) }

// tellLateral tells the natural motions of sideslip, roll and yaw at the circuit's speed.
func (p *pass) tellLateral() {
	d := p.yaw.derivatives
	p.tell("yaw.side_force_sideslip", d.SideForceBeta)
	p.tell("yaw.roll_sideslip", d.RollBeta)
	p.tell("yaw.damping", d.YawYawRate)
	state := p.stateAt(p.stall.circuitSpeed)
	motions, err := d.Motions(state)
	if err != nil {
		return
	}
	p.tell("motion.dutch_roll_frequency", motions.DutchRoll.NaturalFrequency)
	p.tell("motion.dutch_roll_damping", motions.DutchRoll.Damping)
	p.tell("motion.roll_time", -1/motions.Roll.Real)
	p.tell("motion.spiral_rate", motions.Spiral.Real)
	p.tellText("motion.spiral_tendency", stability.SpiralTendency(motions.Spiral, 0).String())
}
