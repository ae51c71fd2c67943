package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/motion"
	"pitgate/server/physics/planform"
)

// Relative spreads of the methods themselves.
const (
	spreadLiftSlope    = 0.02
	spreadZeroLiftDrag = 0.10
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

// readMaximum finds the greatest lift, clean and with take-off flaps, at the Reynolds number of the stall.
func (p *pass) readMaximum() {
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

// maximum returns the greatest lift at its own stall speed, found in three rounds, moved by the spread of the section table.
func (p *pass) maximum(settings []lift.Setting) lift.Maximum {
	density, viscosity := p.nominalAir()
	speed := nominalSpeed
	var found lift.Maximum
	for range 3 {
		reynolds := func(chord float64) float64 { return density * speed * chord / viscosity }
		found = p.whole.lattice.MaximumLiftSet(reynolds, 1, settings)
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
		found.Coefficient *= p.factor("method: greatest lift of the section", found.Spread/found.Coefficient)
	}
	return found
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
	if !p.base() {
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
	p.tell("lift.body_moment_slope", p.whole.bodyMoment)
	if p.wing.clean.Found {
		p.tell("lift.maximum_coefficient", p.wing.clean.Coefficient)
		p.tellText("lift.stall_station", stallStation(p.wing.clean))
		p.tell("lift.stall_span_ratio", p.wing.clean.SpanRatio)
		p.tell("lift.stall_reynolds", p.wing.clean.Reynolds)
		p.tell("lift.maximum_coefficient_takeoff", p.wing.takeoff.Coefficient)
	}
	p.tell("drag.induced_factor", s.InducedFactor)
	p.tell("drag.span_efficiency", s.SpanEfficiency)
}

func stallStation(m lift.Maximum) string {
	return say("%s at %.0f %% of its half span", m.Surface, 100*m.SpanRatio)
}
