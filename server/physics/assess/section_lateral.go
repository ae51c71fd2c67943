package assess

import (
	"math"

	"pitgate/server/physics/drag"
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
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

// ailerons are what the pilot rolls with.
type ailerons struct {
	missing []string
	parts   []placed
	angle   float64 // mean of both throws, rad
}

func (p *pass) readAilerons() ailerons {
	n := p.need()
	out := ailerons{parts: p.controlsOf(ControlRoleAileron, ControlRoleFlaperon, ControlRoleElevon)}
	if len(out.parts) == 0 {
		n.lack(surfacesPath + "[].controls")
	}
	for i, part := range out.parts {
		up := n.quantity(part.path+".throwUpDegrees", part.control.ThrowUpDegrees)
		down := n.quantity(part.path+".throwDownDegrees", part.control.ThrowDownDegrees)
		if angle := radians(up+down) / 2; i == 0 || angle < out.angle {
			out.angle = angle
		}
	}
	out.missing = n.missing
	return out
}

func (p *pass) answerRoll(missing []string) {
	n, mark := p.need(), p.mark()
	n.lack(missing...)
	stick := p.readAilerons()
	n.lack(stick.missing...)
	roll := answer{id: "roll.rate", limit: p.limit(rollFigure)}
	roll.missing = n.missing
	if n.met() {
		p.rollRate(stick, &roll)
		roll.from = p.since(mark)
	}
	p.conclude(roll)
}

func (p *pass) rollRate(stick ailerons, roll *answer) {
	power := 0.0
	for _, c := range p.whole.lateral.Controls(p.mass.travel.Aft.X, p.whole.wing.HeightZ, p.stateAt(p.stall.circuitSpeed).Lift) {
		if isPart(stick.parts, c) {
			power += c.Roll
		}
	}
	rolling := stability.Rolling{
		Power: math.Abs(power) * p.factor("method: control power", spreadControl), Damping: p.yaw.derivatives.RollRollRate, Angle: stick.angle,
	}
	roll.value = rolling.Ratio()
	rate := rolling.Rate(p.stall.circuitSpeed, p.wing.span)
	roll.note = p.inWords("Full throw rolls %.0f degrees a second at %.1f m/s.", degrees(rate), p.stall.circuitSpeed)
	if !p.tells() {
		return
	}
	p.tell("roll.power", rolling.Power)
	p.tell("roll.damping", rolling.Damping)
	p.tell("roll.rate", degrees(rate))
	state := p.stateAt(p.stall.circuitSpeed)
	if time, err := rolling.TimeToBank(radians(bankedTo), state); err == nil && len(p.inertia.missing) == 0 {
		roll.note += p.inWords(" %.0f degrees of bank take %.2f s, servo time left out.", bankedTo, time)
		p.tell("roll.time_to_bank", time)
	}
}

func isPart(parts []placed, c lift.LateralControl) bool {
	for _, part := range parts {
		if part.surface.Name == c.Surface && part.control.Name == c.Name {
			return true
		}
	}
	return false
}

// answerReversal answers for the speed at which the wing twists so far that the ailerons no longer roll the model.
func (p *pass) answerReversal() {
	n, mark := p.need(), p.mark()
	n.lack(p.wing.missing...)
	n.lack(p.air.missing...)
	stick := p.readAilerons()
	n.lack(stick.missing...)
	n.lack(p.topMissing...)
	stiffness := p.twistStiffness(&n)
	reversal := answer{id: "roll.reversal", limit: p.limit(reversalFigure)}
	reversal.missing = n.missing
	if n.met() {
		p.reversal(stiffness, stick, &reversal)
		reversal.from = p.since(mark)
	}
	p.conclude(reversal)
}

func (p *pass) reversal(stiffness float64, stick ailerons, reversal *answer) {
	if !(p.top > 0) {
		reversal.never = "There is no top speed: full thrust stays below drag."
		return
	}
	pressure, found := p.reversalPressure(stiffness, stick)
	switch {
	case !finite(pressure):
		reversal.value = math.NaN()
	case !found:
		reversal.none = true
		reversal.note = "The ailerons do not twist the wing against themselves."
	default:
		speed := stability.SpeedOf(pressure, p.air.state.Density) * p.factor("method: aileron reversal", spreadReversal)
		reversal.value = speed / p.top
		left := stability.AileronEffectiveness(p.stateAt(p.top).Pressure(), pressure, 0)
		reversal.note = p.inWords("The ailerons lose their power at %.0f m/s; at the top speed of %.1f m/s they keep %.0f %% of it.", speed, p.top, 100*max(0, left))
		p.tell("roll.twist_stiffness", stiffness, p.stiffnessPaths()...)
		p.tell("roll.reversal_speed", speed)
		p.tell("roll.power_left", max(0, left))
	}
}

// stiffnessPaths names the inputs behind the stiffness.
func (p *pass) stiffnessPaths() []string {
	if p.in.Model.Structure.WingTwistStiffnessNewtonMetersPerRadian != nil {
		return []string{"model.structure.wingTwistStiffnessNewtonMetersPerRadian"}
	}
	return []string{"model.structure.torsionBox", "wing.span", "method: shear modulus of the skin"}
}

// twist keeps the dynamic pressure of reversal per unit of stiffness, which is a matter of the planform alone.
type twist struct {
	known, found bool
	perStiffness float64 // Pa for one N m/rad
}

// reversalPressure returns the dynamic pressure at which the ailerons lose their power, Pa: it goes with the stiffness, and the lift slope
// cancels in it, so that one solution serves all passes. False when there is none; no number for a wing that cannot be.
func (p *pass) reversalPressure(stiffness float64, stick ailerons) (float64, bool) {
	t := &p.drawing.twist
	if !t.known {
		pressure, found, err := p.twistingWing(stick).ReversalPressure()
		if err != nil {
			pressure = math.NaN()
		}
		*t = twist{known: true, found: found, perStiffness: pressure}
	}
	return t.perStiffness * stiffness, t.found && stiffness > 0
}

// twistingWing returns one half of the wing with a stiffness of one as it twists under its outermost aileron.
func (p *pass) twistingWing(stick ailerons) stability.TwistingWing {
	const cuts = 9
	outer := stick.parts[0]
	for _, part := range stick.parts {
		if orElse(part.control.OuterSpanRatio, 1) > orElse(outer.control.OuterSpanRatio, 1) {
			outer = part
		}
	}
	wing := &p.whole.surfaces[p.whole.main]
	ratio := orElse(outer.control.ChordRatio, defaultChordRatio)
	slope := p.wing.slope
	w := stability.TwistingWing{
		Stiffness: 1, HalfSpan: p.wing.span / 2, AileronFrom: orElse(outer.control.InnerSpanRatio, 0), AileronTo: orElse(outer.control.OuterSpanRatio, 1),
		LiftSlope: slope, LiftControl: section.FlapEfficiency * section.FlapEffectiveness(ratio) * slope,
		MomentControl: section.FlapEfficiency * section.FlapMoment(ratio),
	}
	for i := range cuts {
		w.Chords = append(w.Chords, chordAt(wing, float64(i)/(cuts-1)))
	}
	return w
}

// chordAt returns the chord of a surface at a share of its half span, m.
func chordAt(s *planform.Surface, share float64) float64 {
	first, last := s.Stations[0], s.Stations[len(s.Stations)-1]
	y := first.Y + float64(share*(last.Y-first.Y))
	for i := 1; i < len(s.Stations); i++ {
		a, b := s.Stations[i-1], s.Stations[i]
		if y <= b.Y && b.Y > a.Y {
			return a.Chord + float64((b.Chord-a.Chord)*((y-a.Y)/(b.Y-a.Y)))
		}
	}
	return last.Chord
}

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
