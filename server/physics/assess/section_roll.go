package assess

import (
	"math"

	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
	"pitgate/server/physics/stability"
)

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
