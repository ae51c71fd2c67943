package assess

import (
	"math"

	"pitgate/server/physics/lift"
	"pitgate/server/physics/loads"
)

// hardLanding is the load factor of a hard landing that a boom has to carry the tail through.
//
// Source: judgement; 14 CFR 23.473 before 2017 asks 2.67 of gears with more travel than a model's.
const hardLanding = 4.0

// flightState is a state in which tail, canard and boom are loaded.
type flightState struct {
	words     string
	pressure  float64 // Pa; 0 on the ground
	incidence float64 // of the model, rad
	control   float64 // of the pitch controls, rad
	load      float64 // load factor at the tail
}

// flightStates returns the states that load the tail most: the pitch control put at once to what holds the load factor asked for, the steady pull-up, both at
// the least speed that reaches it and at the top, and the gust at the top.
//
// Formula: incidence and control of the trimmed lattice at n W/(q S); the control put at once adds what the pitch damping asks for; the gust adds K U/V to the
// incidence.
// Valid for: attached flow; inertia of pitching and the tail's own stall are left out, the first loads less, the second caps the load.
// Source: 14 CFR 23.421 to 23.425 before 2017, manoeuvring and gust loads of the tail.
func (p *pass) flightStates() []flightState {
	if p.loads.states != nil {
		return p.loads.states
	}
	speeds := p.speedsAsked()
	var states []flightState
	for _, speed := range speeds {
		states = append(states, p.pullUpStates(speed)...)
	}
	p.loads.states = append(states, p.gustState(p.top))
	return p.loads.states
}

// trimmedAt returns incidence and pitch control at a speed and load factor, the balance point foremost.
func (p *pass) trimmedAt(speed, load float64) (lift.Trimmed, float64) {
	state := p.stateAt(speed)
	return p.whole.lattice.Trim(p.balance(nil), state.Lift*load), state.Pressure()
}

// pullUpStates returns the pull-up as it begins and as it is held.
func (p *pass) pullUpStates(speed float64) []flightState {
	load := min(p.loads.asked, max(1, p.stallLoad(speed)))
	level, pressure := p.trimmedAt(speed, 1)
	pulled, _ := p.trimmedAt(speed, load)
	change := pulled.Command - level.Command
	if bite, err := p.pitchAt(p.mass.travel.Forward.X).Sensitivity(p.stateAt(speed)); err == nil && !bite.Reversed && finite(bite.AnglePerLoad) {
		change = bite.AnglePerLoad * (load - 1)
	}
	where := p.inWords("at %.0f m/s", speed)
	return []flightState{
		{"the pitch control put at once to what pulls " + p.inWords("%.1f ", load) + where, pressure, level.Incidence, p.withinThrow(level.Command + change), 1},
		{p.inWords("a pull-up of %.1f ", load) + where, pressure, pulled.Incidence, p.withinThrow(pulled.Command), load},
	}
}

// withinThrow keeps a pitch control within its stops.
func (p *pass) withinThrow(angle float64) float64 {
	t := p.pitch.throw
	return max(min(t.NoseUp, t.NoseDown), min(max(t.NoseUp, t.NoseDown), angle))
}

// gustState returns level flight met by the design gust.
func (p *pass) gustState(speed float64) flightState {
	level, pressure := p.trimmedAt(speed, 1)
	a := p.loads.aircraft
	felt := loads.GustAlleviation(loads.MassRatio(a.Mass/a.Area, a.Density, a.Chord, a.LiftSlope))
	return flightState{p.inWords("a gust of %.1f m/s at %.0f m/s", p.loads.gust, speed), pressure, level.Incidence + float64(felt*p.loads.gust)/speed, level.Command, p.loads.gustLoad}
}

// needTrim names what the states of the tail lack.
func (p *pass) needTrim(n *need) {
	n.lack(p.pitch.missing...)
	n.lack(p.mass.fullMissing...)
}

// carriedLoad is a load of one part in one state and the load that it stands there.
type carriedLoad struct{ stands, asked float64 }

// worst returns the index of the state with the least multiple of the load asked, and the multiple.
func worst(list []carriedLoad) (int, float64) {
	least, times := -1, math.Inf(1)
	for i, c := range list {
		if c.asked > 0 && c.stands/c.asked < times {
			least, times = i, c.stands/c.asked
		}
	}
	return least, times
}
