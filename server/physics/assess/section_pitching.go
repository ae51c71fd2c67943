package assess

import (
	"math"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/stability"
	"pitgate/server/physics/weighing"
)

// inertias are the moments of inertia about the balance point, kg m2.
type inertias struct {
	missing []string
	stability.Inertia
}

// readInertia takes each moment of inertia as given, else from the items as points, else by typical radii of gyration.
func (p *pass) readInertia() {
	n := p.need()
	n.lack(p.mass.missing...)
	n.lack(p.wing.missing...)
	p.inertia.missing = n.missing
	if !n.met() {
		return
	}
	given := &Inertia{}
	if p.in.Model.Inertia != nil {
		given = p.in.Model.Inertia
	}
	guess, ok := p.guessedInertia()
	take := func(name string, q *Quantity, value float64) float64 {
		if known, ok := p.read(name, q); ok && known > 0 {
			return known
		}
		if !ok {
			n.lack(name)
			return 0
		}
		return max(value/100, p.assumed(name, value, float64(value*guess.Spread)))
	}
	p.inertia.Roll = take("model.inertia.rollKgSquareMeters", given.RollKgSquareMeters, guess.Roll)
	p.inertia.Pitch = take("model.inertia.pitchKgSquareMeters", given.PitchKgSquareMeters, guess.Pitch)
	p.inertia.Yaw = take("model.inertia.yawKgSquareMeters", given.YawKgSquareMeters, guess.Yaw)
	p.inertia.missing = n.missing
}

// guessedInertia estimates what is not given.
func (p *pass) guessedInertia() (stability.Inertia, bool) {
	if items := p.itemList(p.massProperties()); len(items) > 0 {
		if sum, err := weighing.Add(items); err == nil && sum.Inertia.Known && sum.Inertia.Roll > 0 {
			return stability.Inertia{Roll: sum.Inertia.Roll, Pitch: sum.Inertia.Pitch, Yaw: sum.Inertia.Yaw, Spread: stability.SpreadOfItems}, true
		}
	}
	guess, err := stability.InertiaByGyration(p.layout(), p.mass.takeoff, p.wing.span, p.overallLength())
	return guess, err == nil
}

// layout says where the heavy engine lies.
func (p *pass) layout() stability.Layout {
	if len(p.in.Model.Bodies) == 0 {
		return stability.FlyingWing
	}
	if len(p.in.Model.Engines) == 0 || p.in.Model.Engines[0].XMeters == nil {
		return stability.JetFighter
	}
	behind := (*p.in.Model.Engines[0].XMeters - p.wing.neutralX) / p.overallLength()
	switch {
	case behind < -0.2:
		return stability.EngineInNose
	case behind > 0.3:
		return stability.EnginesAtTheTail
	}
	return stability.JetFighter
}

// overallLength returns the length of the model from nose to tail, m.
func (p *pass) overallLength() float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range p.whole.surfaces {
		for _, station := range p.whole.surfaces[i].Stations {
			low, high = min(low, station.X), max(high, station.X+station.Chord)
		}
	}
	for i := range p.in.Model.Bodies {
		for _, station := range p.in.Model.Bodies[i].Stations {
			low, high = min(low, orElse(station.XMeters, low)), max(high, orElse(station.XMeters, high))
		}
	}
	return high - low
}

// answerPitchDamping answers for the short pitching motion at the circuit's speed.
func (p *pass) answerPitchDamping() {
	n := p.need()
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.mass.fullMissing...)
	n.lack(p.inertia.missing...)
	damping := answer{id: "pitch.damping", missing: n.missing, limit: p.limit(dampingFigure)}
	if n.met() {
		p.pitchMotions(&damping)
	}
	p.conclude(damping)
}

func (p *pass) pitchMotions(damping *answer) {
	state := p.stateAt(p.stall.circuitSpeed)
	motions, err := p.longitudinal(p.mass.travel.Aft.X, state.Lift).Motions(state)
	if err != nil {
		damping.value = math.NaN()
		return
	}
	short := motions.ShortPeriod
	if motions.Merged || !(short.NaturalFrequency > 0) {
		damping.never = p.inWords("With the balance point at %.3f m the short pitching motion does not come back by itself.", p.mass.travel.Aft.X)
		return
	}
	damping.value = short.Damping
	damping.note = p.inWords("At %.1f m/s with the balance point at %.3f m: %.1f rad/s, damping ratio %.2f; the slow motion takes %.1f s.",
		state.Speed, p.mass.travel.Aft.X, short.NaturalFrequency, short.Damping, motions.Phugoid.Period)
	p.tell("motion.short_period_frequency", short.NaturalFrequency)
	p.tell("motion.short_period_damping", short.Damping)
	p.tell("motion.phugoid_period", motions.Phugoid.Period)
	p.tell("motion.phugoid_damping", motions.Phugoid.Damping)
}

// longitudinal returns the derivatives of the pitching motion about x at a lift coefficient.
func (p *pass) longitudinal(x, coefficient float64) stability.Longitudinal {
	liftRate, momentRate := p.whole.lattice.PitchRateAt(x)
	damping := p.factor("method: pitch damping", spreadDamping)
	return stability.Longitudinal{
		LiftSlope: p.wing.slope, DragSlope: 2 * p.drag.induced * coefficient * p.wing.slope,
		MomentSlope:  stability.MomentSlope(p.wing.slope, stability.StaticMargin(p.wing.neutralX, x, p.wing.chord)),
		PitchDamping: momentRate * damping, LiftPitchRate: liftRate * damping, IncidenceRateDamping: p.lagDamping(x) * damping,
	}
}

// lagDamping returns the moment that the downwash's delay at the tail adds with the rate of incidence.
//
//	Cm_a' = -2 (a_t S_t/S) (l/c)^2 de/da
//
// where a_t S_t/S is the lift slope of the tail in the undisturbed stream on the reference area, l its arm, de/da the downwash slope.
// Valid for: tails behind the wing; a canard's wake is left out. Source: Nelson, Flight Stability and Automatic Control, Eq. 3.61.
func (p *pass) lagDamping(x float64) float64 {
	sum := 0.0
	for _, surface := range p.whole.lattice.Surfaces {
		if surface.Role != planform.RoleTailplane && surface.Role != planform.RoleVTail {
			continue
		}
		arm := (surface.CentreX - x) / p.wing.chord
		downwash := p.whole.downwash(surface.Name)
		if !(arm > 0) || !(downwash > 0) || downwash >= 0.95 {
			continue
		}
		sum -= float64(2 * surface.LiftSlope / (1 - downwash) * downwash * float64(arm*arm))
	}
	return sum
}

// tellTails tells the volumes of tail and fins and the downwash at the tail.
func (p *pass) tellTails() {
	for i := range p.whole.surfaces {
		s := p.whole.surfaces[i]
		m, err := planform.Measure(s)
		if err != nil || s.Role != planform.RoleTailplane && s.Role != planform.RoleVTail {
			continue
		}
		p.tell("tail.volume_horizontal", stability.TailVolume(m.Area, m.QuarterChordX-p.mass.fullBalance, p.wing.area, p.wing.chord))
		p.tell("tail.downwash", p.whole.downwash(s.Name))
		break
	}
	if area, arm := p.finMeasures(); area > 0 {
		p.tell("tail.volume_vertical", stability.TailVolume(area, arm, p.wing.area, p.wing.span))
	}
}
