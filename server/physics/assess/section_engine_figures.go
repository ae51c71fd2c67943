package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/engine"
)

const (
	// heatingValue of kerosene, J/kg. Source: fuel maker's typical value 43.15 MJ/kg, 42.8 MJ/kg at least.
	heatingValue = 43.1e6
	// burning is the share of it that small combustors bring into the gas (common practice).
	burning     = 0.95
	airHeat     = 1005.0 // J/(kg K)
	exhaustHeat = 1148.0 // J/(kg K)
)

// balancedExhaust returns the total temperature of the exhaust that fuel and air flow make, K.
//
//	T = (f b H + cpa Ta)/(cpg (1 + f)), f = w/m
//
// where w is the fuel flow and m the air flow (kg/s), b the share burnt, H the heating value (J/kg), Ta the temperature of the air (K), cpa and
// cpg the heats of air and gas (J/(kg K)). Valid for: no heat lost through the casing, shaft work all returned; within 5 %. Source: energy
// balance of a gas turbine that drives only its compressor.
func balancedExhaust(fuelFlow, airFlow, air float64) float64 {
	share := fuelFlow / airFlow
	return (float64(share*burning*heatingValue) + float64(airHeat*air)) / (exhaustHeat * (1 + share))
}

// chokedSpeed returns the greatest speed of a jet that leaves a convergent nozzle unchoked, m/s.
//
//	V = sqrt(2 cp T (k-1)/(k+1)), k 1.333
//
// where T is the total temperature of the gas (K). Valid for: ideal nozzles. Source: isentropic flow.
func chokedSpeed(total float64) float64 {
	return math.Sqrt(2 * exhaustHeat * total / 7)
}

// The usual range of small turbines: the jet's speed, m/s, and the fuel for the thrust, kg/(N h) (common practice).
const (
	slowJet, fastJet   = 300.0, 580.0
	leanFuel, richFuel = 0.12, 0.25
	exhaustDifference  = 80.0 // between the temperature entered and that of the energy balance, K (common practice)
)

// turbineFigures are the figures of one turbine that have to agree.
type turbineFigures struct{ thrust, airFlow, fuelFlow, exhaust, air float64 }

// answerEngines answers for every turbine whose figures do not belong together first, and for the exhaust's own limit.
func (p *pass) answerEngines() {
	p.answerConsistency()
	p.answerExhaust()
}

// answerConsistency holds thrust, air, fuel and exhaust temperature against each other, worst engine first.
func (p *pass) answerConsistency() {
	if !p.base() {
		p.keepStill("engine.consistency")
		return
	}
	n := p.need()
	n.lack(p.engine.missing...)
	out := answer{id: "engine.consistency", limit: limit{value: exhaustDifference, set: true, rule: coreDefault}}
	worst := -1.0
	for _, i := range p.turbines() {
		figures := p.turbineFigures(i, &n)
		if !n.met() {
			break
		}
		difference := math.Abs(balancedExhaust(figures.fuelFlow, figures.airFlow, figures.air) - figures.exhaust)
		if difference > worst {
			worst, out.value, out.note, out.never = difference, difference, figures.note(), figures.impossible()
		}
	}
	if out.missing = n.missing; n.met() {
		p.tell("engine.balance_temperature", out.value)
	}
	p.conclude(out)
}

// turbineFigures gathers what belongs together.
func (p *pass) turbineFigures(i int, n *need) turbineFigures {
	e, name := &p.in.Model.Engines[i], at("model.engines", i)
	full, exhaust := fullFlowOf(e, name), exhaustFigureOf(e, name)
	out := turbineFigures{fuelFlow: float64(n.plain(full.path, full.value) * gramsPerMinute), exhaust: n.plain(exhaust.path, exhaust.value) + air.FreezingPoint}
	if i < len(p.engine.engines) {
		rated := &p.engine.engines[i]
		out.thrust, out.airFlow, out.air = rated.StaticThrust, rated.MassFlow, rated.Rated.Temperature
	}
	if n.met() && !(out.airFlow > 0 && out.fuelFlow > 0 && out.thrust > 0) {
		n.lack(name + ".airMassFlowKgPerSecond")
	}
	return out
}

// jet returns the speed of the jet, m/s.
func (f *turbineFigures) jet() float64 { return f.thrust / (f.airFlow + f.fuelFlow) }

// fuelForThrust returns the specific fuel flow, kg/(N h).
func (f *turbineFigures) fuelForThrust() float64 {
	return secondsPerHour * engine.SpecificFuelFlow(f.fuelFlow, f.thrust)
}

// impossible says when the jet would have to be faster than sound.
func (f *turbineFigures) impossible() string {
	if choked := chokedSpeed(f.exhaust); f.jet() > choked {
		return sayNumbers("%.0f N from %.2f kg/s of air ask for a jet of %.0f m/s, but gas of %.0f C leaves a plain nozzle at %.0f m/s at most: one of the three is wrong.",
			f.thrust, f.airFlow, f.jet(), f.exhaust-air.FreezingPoint, choked)
	}
	return ""
}

// note says what the figures give, and what is unusual in them.
func (f *turbineFigures) note() string {
	balanced := balancedExhaust(f.fuelFlow, f.airFlow, f.air)
	note := sayNumbers("%.0f g/min in %.2f kg/s of air give gas of %.0f C, told are %.0f C; the jet leaves at %.0f m/s, %.3f kg of fuel for each newton and hour.",
		f.fuelFlow/gramsPerMinute, f.airFlow, balanced-air.FreezingPoint, f.exhaust-air.FreezingPoint, f.jet(), f.fuelForThrust())
	if jet := f.jet(); jet < slowJet || jet > fastJet {
		note += sayNumbers(" Jets of small turbines leave at %.0f to %.0f m/s.", slowJet, fastJet)
	}
	if rate := f.fuelForThrust(); rate < leanFuel || rate > richFuel {
		note += sayNumbers(" Small turbines take %.2f to %.2f.", leanFuel, richFuel)
	}
	return note
}

// answerExhaust holds the exhaust against what the maker allows, where he says so.
func (p *pass) answerExhaust() {
	if !p.exhaustLimited() {
		return
	}
	n := p.need()
	n.lack(p.engine.missing...)
	out, margin := answer{id: "engine.exhaust_temperature"}, math.Inf(1)
	for _, i := range p.turbines() {
		e, name := &p.in.Model.Engines[i], at("model.engines", i)
		if e.MaximumExhaustCelsius == nil {
			continue
		}
		told := exhaustFigureOf(e, name)
		celsius := n.quantity(told.path, told.value)
		if !n.met() {
			break
		}
		rated := p.engine.engines[i].Rated.Temperature
		day := float64((celsius+air.FreezingPoint)*p.engine.air.Temperature/rated) - air.FreezingPoint
		if left := *e.MaximumExhaustCelsius - day; left < margin {
			margin, out.value = left, day
			out.limit = limit{value: *e.MaximumExhaustCelsius, set: true, rule: "maker's limit", path: name + ".maximumExhaustCelsius"}
			out.note = p.inWords("%.0f C in air of %.0f C; the day has %.0f C.", celsius, rated-air.FreezingPoint, p.engine.air.Temperature-air.FreezingPoint)
			out.from = []string{told.path, "day.temperatureCelsius"}
		}
	}
	out.missing = n.missing
	p.conclude(out)
}

func (p *pass) exhaustLimited() bool {
	for _, i := range p.turbines() {
		if p.in.Model.Engines[i].MaximumExhaustCelsius != nil {
			return true
		}
	}
	return false
}
