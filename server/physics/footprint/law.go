package footprint

import (
	"math"

	"pitgate/server/physics/elementary"
)

// approach is a value that goes from one to another exponentially, and may creep on.
type approach struct {
	from, to float64
	time     float64 // time constant, s; zero means at once
	creep    float64 // added a second
}

// held returns a value that stays.
func held(value float64) approach { return approach{from: value, to: value} }

// at returns the value at a time after the start.
//
//	x = x1 + (x0 - x1) e^(-t/T) + c t
//
// where x0 and x1 are the first and the last value, T the time constant and c the creep. Valid for: t from 0. Source: first-order lag.
func (a *approach) at(t float64) float64 {
	value := a.to
	if a.from != a.to && a.time > 0 {
		value += float64((a.from - a.to) * elementary.Exp(-t/a.time))
	}
	return value + float64(a.creep*t)
}

// constant reports whether the value stays.
func (a *approach) constant() bool {
	return a.creep == 0 && (a.from == a.to || !(a.time > 0))
}

// law is what engine and surfaces do in one part of the flight.
type law struct {
	lift    float64  // coefficient held; zero means no lift at all
	bank    approach // rad
	thrust  approach // N
	stopped bool     // the engine adds its drag
	lasts   float64  // s; the last law lasts until the ground
}

// untilGround is how long the last law lasts.
var untilGround = math.Inf(1)

// limitBank keeps a bank within what the equations take.
func limitBank(bank float64) float64 { return min(max(bank, -steepest), steepest) }

// liftOf returns the lift coefficient that carries the weight at a speed, climb angle and bank.
//
//	CL = 2 m g cos(c) / (rho S V^2 cos(b)), at most CLmax
//
// where c is the climb angle and b the bank. Valid for: steady turns and climbs. Source: balance of forces across the path.
func (l *Loss) liftOf(r Release, bank float64) float64 {
	pressure := float64(0.5 * l.Density * r.Speed * r.Speed)
	needed := l.Model.Mass * l.gravity() * elementary.Cos(r.Climb) / (pressure * l.Model.Area * elementary.Cos(bank))
	return min(max(needed, 0), l.Model.CLMax)
}

// thrustOf returns the thrust that holds the speed at a state, none less than zero, N.
//
//	F = D + m g sin(c)
//
// Valid for: steady flight. Source: balance of forces along the path.
func (l *Loss) thrustOf(r Release, lift float64) float64 {
	m := l.Model
	pressure := float64(0.5 * l.Density * r.Speed * r.Speed)
	drag := float64(pressure * m.Area * (m.CD0 + float64(m.InducedFactor*lift*lift)))
	return max(0, drag+float64(m.Mass*l.gravity()*elementary.Sin(r.Climb)))
}

// neutralLift returns the lift coefficient with the surfaces neutral.
func (l *Loss) neutralLift(r Release) float64 {
	lift := l.Model.NeutralLift
	if !(lift > 0) {
		r.Climb = 0
		lift = l.liftOf(r, 0)
	}
	return l.mistrimmed(lift)
}

// mistrimmed returns a lift coefficient off by the relative change sampled, at most the greatest.
func (l *Loss) mistrimmed(lift float64) float64 {
	return min(float64(lift*(1+l.mistrim)), l.Model.CLMax)
}

// laws returns the parts of the flight from a state, in order of time, in room that they may take.
func (l *Loss) laws(r Release, room []law) []law {
	lift := l.liftOf(r, r.Bank)
	thrust := l.thrustOf(r, lift)
	before := law{lift: lift, bank: held(r.Bank), thrust: held(thrust), lasts: l.Delay}
	switch l.Action {
	case CutNeutral:
		return append(room, before, l.neutral(r, thrust, 0))
	case CutSpiral:
		return append(room, before, l.spiral(r, thrust))
	case IdleNeutral:
		return append(append(room, before), l.idling(r, thrust)...)
	case Hold:
		return append(room, l.holding(r, lift, thrust)...)
	case Breakup:
		return append(room, before, law{lasts: untilGround})
	default:
		return append(room, l.neutral(r, thrust, 0))
	}
}

// runDown returns the thrust falling from one value to another.
func (l *Loss) runDown(from, to float64) approach {
	return approach{from: from, to: to, time: l.Model.RunDown}
}

// neutral is the law of neutral surfaces with the thrust going to a value.
func (l *Loss) neutral(r Release, from, to float64) law {
	return law{
		lift: l.neutralLift(r), bank: approach{from: r.Bank, time: l.Model.LevelTime}, thrust: l.runDown(from, to), stopped: true,
		lasts: untilGround,
	}
}

// idling are the laws of neutral surfaces with the engine at idle, and without it when the fuel has ended. Without idle thrust there may be no time to
// that end.
func (l *Loss) idling(r Release, thrust float64) []law {
	idle := l.neutral(r, thrust, l.Model.IdleThrust)
	idle.stopped = false
	if !(l.Model.IdleEndurance > 0) {
		return []law{idle}
	}
	idle.lasts = l.Model.IdleEndurance
	dry := idle
	dry.bank.from, dry.thrust = idle.bank.at(idle.lasts), l.runDown(idle.thrust.at(idle.lasts), 0)
	dry.stopped, dry.lasts = true, untilGround
	return []law{idle, dry}
}

// spiral is the law of a bank held with the engine cut.
func (l *Loss) spiral(r Release, thrust float64) law {
	lift := l.neutralLift(r)
	if l.Model.SpiralLift > 0 {
		lift = l.mistrimmed(l.Model.SpiralLift)
	}
	bank := approach{from: r.Bank, to: l.Model.SpiralBank, time: l.Model.RollTime}
	return law{lift: lift, bank: bank, thrust: l.runDown(thrust, 0), stopped: true, lasts: untilGround}
}

// holding are the laws of the last command held until the fuel ends and then without thrust.
func (l *Loss) holding(r Release, lift, thrust float64) []law {
	lift = l.mistrimmed(lift)
	powered := law{
		lift: lift, bank: approach{from: r.Bank, to: r.Bank, creep: l.bankCreep}, thrust: held(thrust), lasts: l.Model.HoldEndurance,
	}
	dry := law{lift: lift, bank: held(limitBank(powered.bank.at(powered.lasts))), thrust: l.runDown(thrust, 0), stopped: true, lasts: untilGround}
	return []law{powered, dry}
}
