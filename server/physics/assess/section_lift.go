package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/motion"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

// Relative spreads of the methods themselves.
const (
	spreadLiftSlope    = 0.02
	spreadZeroLiftDrag = 0.10 // where nothing was built up
	spreadInduced      = 0.05
	spreadFriction     = 0.20
	spreadGust         = 0.15
	spreadNeutralPoint = 0.01 // of the mean chord
)

// nominalSpeed stands in for the stall speed where mass or air is missing, so that a wing alone still has a Reynolds number.
const nominalSpeed = 15.0

// liftSection is what the lifting surfaces give.
type liftSection struct {
	missing  []string
	area     float64
	chord    float64
	span     float64
	slope    float64 // per rad
	zero     float64 // incidence without lift, rad
	clean    lift.Maximum
	takeoff  lift.Maximum // with the flaps as set for take-off
	gain     float64      // lift coefficient that the take-off flaps add at one incidence
	neutralX float64
}

func (p *pass) readLift() {
	w := p.whole
	p.wing.missing = w.missing
	if w.lattice == nil {
		return
	}
	reference := w.lattice.Reference
	p.wing.area, p.wing.chord, p.wing.span = reference.Area, reference.Chord, reference.Span
	p.wing.slope = w.lattice.LiftSlope * p.factor("method: lift slope of the lattice", spreadLiftSlope)
	p.wing.zero = w.lattice.ZeroLiftIncidence
	p.wing.neutralX = w.lattice.NeutralPointWith(w.bodyMoment) +
		float64(p.wing.chord*(p.factor("method: neutral point", spreadNeutralPoint)-1))
	p.readMaximum()
	p.tellWing()
}

// readMaximum finds the greatest lift, clean and with take-off flaps, at the Reynolds number of the stall: in balance where the balance
// point and the pitch control are known, else with the controls neutral.
func (p *pass) readMaximum() {
	p.readPitchControl()
	settings := p.takeoffFlaps()
	p.wing.clean = p.maximum(nil)
	p.wing.takeoff = p.wing.clean
	if len(settings) > 0 {
		p.wing.takeoff = p.maximum(settings)
	}
	for _, s := range settings {
		p.wing.gain += float64(p.whole.lattice.Controls[s.Index].LiftSlope * s.Angle)
	}
}

// trimmable reports whether balance point and pitch control are known, so that the greatest lift is that in balance.
func (p *pass) trimmable() bool {
	return len(p.pitch.missing) == 0 && len(p.mass.fullMissing) == 0
}

// balance says about which point the lattice is trimmed: the foremost of the burn, which asks for the greatest tail load.
func (p *pass) balance(held []lift.Setting) lift.Balance {
	b := lift.Balance{X: p.mass.travel.Forward.X, MomentSlope: p.whole.bodyMoment, Held: held}
	for _, index := range p.pitch.indices {
		b.Pitch = append(b.Pitch, lift.Setting{Index: index, Angle: 1})
	}
	return b
}

// maximum returns the greatest lift at its own stall speed, found in three rounds, moved by the spread of the section table and of what
// the finish does to it.
func (p *pass) maximum(settings []lift.Setting) lift.Maximum {
	density, viscosity := p.nominalAir()
	speed := nominalSpeed
	var found lift.Maximum
	var finish section.Effect
	for range 3 {
		reynolds := func(chord float64) float64 { return density * speed * chord / viscosity }
		finish = p.finishEffect(reynolds(p.wing.chord))
		found = p.greatest(reynolds, finish.Limit, settings)
		if !found.Found || len(p.mass.missing) > 0 || len(p.air.missing) > 0 {
			break
		}
		speed = stallSpeed(p.mass.takeoff, density, p.wing.area, found.Coefficient)
	}
	if measured, ok := p.measured("lift.maximum_coefficient"); ok && len(settings) == 0 {
		found.Coefficient = measured
		return found
	}
	if found.Coefficient > 0 {
		spread := root(found.Spread/found.Coefficient, finish.LimitSpread)
		found.Coefficient *= p.factor("method: greatest lift of the section", spread)
	}
	return found
}

// greatest asks the lattice, in balance where that is possible.
func (p *pass) greatest(reynolds func(float64) float64, factor float64, settings []lift.Setting) lift.Maximum {
	if p.trimmable() {
		if found := p.whole.lattice.TrimmedMaximum(reynolds, factor, p.balance(settings)); found.Found {
			return found
		}
	}
	return p.whole.lattice.MaximumLiftSet(reynolds, factor, settings)
}

// finishEffect returns what the finish of the skin does to the sections at a Reynolds number.
func (p *pass) finishEffect(reynolds float64) section.Effect {
	return p.roughness().Effect(reynolds)
}

// roughness returns how far the skin is from the smooth one of the section tables.
func (p *pass) roughness() section.Roughness {
	var rough section.Roughness
	if p.in.Model != nil {
		rough.Finish = finishes.of(p.in.Model.Finish)
	}
	rough.Frost = p.in.Day != nil && p.in.Day.Frost == FrostPresent
	return rough
}

// nominalAir returns density and viscosity of the day, or of the standard atmosphere where the day is missing.
func (p *pass) nominalAir() (density, viscosity float64) {
	if len(p.air.missing) > 0 {
		standard := air.Standard(0)
		return standard.Density, standard.Viscosity
	}
	return p.air.state.Density, p.air.state.Viscosity
}

// takeoffFlaps lists the controls that are set for take-off.
func (p *pass) takeoffFlaps() []lift.Setting {
	angles := map[string]float64{}
	for _, surface := range p.whole.surfaces {
		for _, control := range surface.Controls {
			if control.Role == planform.ControlFlap || control.Role == planform.ControlFlaperon {
				angles[surface.Name+"/"+control.Name] = control.TakeoffSetting
			}
		}
	}
	var settings []lift.Setting
	for i, effect := range p.whole.lattice.Controls {
		if angle := angles[effect.Surface+"/"+effect.Name]; angle != 0 {
			settings = append(settings, lift.Setting{Index: i, Angle: angle})
		}
	}
	return settings
}

// stallSpeed returns the airspeed at which a lift coefficient carries the weight, m/s.
//
//	Vs = sqrt(2 m g / (rho S CL))
//
// where m is the mass (kg), rho the density (kg/m3), S the area (m2) and CL the lift coefficient.
// Valid for: load factor 1, no lift from thrust. Source: lift equation.
func stallSpeed(mass, density, area, coefficient float64) float64 {
	if !(density > 0) || !(area > 0) || !(coefficient > 0) {
		return 0
	}
	return math.Sqrt(2 * mass * motion.Gravity / (density * area * coefficient))
}

func (p *pass) tellWing() {
	if !p.tells() {
		return
	}
	m, s := p.whole.wing, p.whole.lattice
	p.tell("wing.area", m.Area)
	p.tell("wing.span", m.Span)
	p.tell("wing.aspect_ratio", m.AspectRatio)
	p.tell("wing.mean_chord", m.MeanAerodynamicChord)
	p.tell("wing.mean_chord_leading_edge_x", m.LeadingEdgeX)
	p.tell("lift.slope", p.wing.slope)
	p.tell("lift.zero_incidence", p.wing.zero)
	p.tell("lift.neutral_point", p.wing.neutralX)
	if ground := p.whole.ground; ground != nil {
		p.tell("lift.slope_ground", p.wing.slope*(ground.LiftSlope/s.LiftSlope))
		p.tell("drag.induced_ground_ratio", ground.InducedFactor/s.InducedFactor)
	}
	p.tell("lift.body_moment_slope", p.whole.bodyMoment)
	for i := range s.Surfaces {
		p.tell("lift.part."+s.Surfaces[i].Name, s.Surfaces[i].LiftSlope)
		p.tell("lift.part."+s.Surfaces[i].Name+".centre_x", s.Surfaces[i].CentreX)
	}
	if p.wing.clean.Found {
		p.tell("lift.maximum_coefficient", p.wing.clean.Coefficient)
		p.tellText("lift.stall_station", stallStation(p.wing.clean))
		p.tell("lift.stall_span_ratio", p.wing.clean.SpanRatio)
		p.tell("lift.stall_reynolds", p.wing.clean.Reynolds)
		p.tellTrimmed()
		p.tell("lift.maximum_coefficient_takeoff", p.wing.takeoff.Coefficient)
	}
	p.tell("drag.induced_factor", s.InducedFactor)
	p.tell("drag.span_efficiency", s.SpanEfficiency)
}

func stallStation(m lift.Maximum) string {
	if m.Reason == lift.LimitThrow {
		return "the pitch control at the end of its throw"
	}
	return say("%s at %.0f %% of its half span", m.Surface, 100*m.SpanRatio)
}

// stallEvent says what happens at the stall as part of a sentence.
func stallEvent(m lift.Maximum) string {
	if m.Reason == lift.LimitThrow {
		return "the pitch control reaches the end of its throw"
	}
	return stallStation(m) + " stalls"
}

// stallWords says what ends the lift.
func stallWords(m lift.Maximum) string {
	switch m.Reason {
	case lift.LimitThrow:
		return "the pitch control runs out before any strip stalls"
	case lift.LimitTailDownload, lift.LimitTailUpload:
		return "the tail stalls first, " + stallStation(m)
	}
	return stallStation(m) + " stalls first"
}

// tellTrimmed tells the pitch control's angle at the stall, the greatest lift without trim, and what the tips have left.
func (p *pass) tellTrimmed() {
	p.tell("lift.tip_margin", degrees(p.wing.clean.TipMarginIncidence))
	if !p.trimmable() {
		return
	}
	p.tell("lift.stall_control", degrees(p.wing.clean.ControlAngle))
	p.tell("lift.maximum_coefficient_untrimmed", p.untrimmed())
}

// untrimmed returns the greatest lift with the controls neutral at the same Reynolds number.
func (p *pass) untrimmed() float64 {
	perMeter := p.stallPerMeter()
	reynolds := func(chord float64) float64 { return perMeter * chord }
	return p.whole.lattice.MaximumLift(reynolds, p.finishEffect(reynolds(p.wing.chord)).Limit).Coefficient
}

// stallPerMeter returns the Reynolds number per metre of chord at the stall.
func (p *pass) stallPerMeter() float64 {
	density, viscosity := p.nominalAir()
	speed := nominalSpeed
	if len(p.mass.missing) == 0 {
		if v := stallSpeed(p.mass.takeoff, density, p.wing.area, p.wing.clean.Coefficient); v > 0 {
			speed = v
		}
	}
	return density * speed / viscosity
}
