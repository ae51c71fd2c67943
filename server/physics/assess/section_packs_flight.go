package assess

import (
	"pitgate/server/physics/fuel"
	"pitgate/server/physics/packs"
)

// How long a flight takes beside its circuits, s: judgement.
const (
	launchTime   = 20.0 // from the start to the circuit's height, at full power
	landingTime  = 45.0 // from the last turn to standing still
	goAroundTime = 20.0 // back to the circuit's height, at full power
)

// flightTimes is the flight as planned.
type flightTimes struct {
	missing  []string
	circuit  float64 // time of one, s
	circuits float64
	read     []string
}

// planned returns the time from the start of the launch to the end of the landing, s.
func (f *flightTimes) planned() float64 {
	return launchTime + float64(f.circuits*f.circuit) + landingTime
}

// readFlightTimes reads the circuits that are planned and how long one takes: its track over the circuit's airspeed.
func (p *pass) readFlightTimes() flightTimes {
	n, mark := p.need(), p.mark()
	n.lack(p.day.missing...)
	f := flightTimes{}
	if count := p.circuitPlan().CircuitCount; count != nil {
		f.circuits = float64(*count)
	} else {
		n.lack("launchPlan.circuit.circuitCount")
	}
	if n.met() && p.stall.circuitSpeed > 0 {
		f.circuit = p.day.circuit.Length() / p.stall.circuitSpeed
	}
	f.missing, f.read = n.missing, p.since(mark)
	return f
}

// answerEndurance answers for the packs of electric motors: how long they last, and what is left when the flight has ended.
func (p *pass) answerEndurance(s *packsSection) {
	last, reserve := answer{id: "packs.endurance"}, answer{id: "packs.reserve"}
	list := s.of(PackUsePropulsion)
	n := p.need()
	switch {
	case len(p.engines()) == 0:
		n.lack("model.engines")
	case len(list) == 0 && p.turbine():
		last.none, reserve.none = true, true
		last.note, reserve.note = "No pack drives the model.", "No pack drives the model."
	default:
		n.lackPacks(list)
		if n.met() {
			p.lasts(s, hungriest(list), &last, &reserve)
		}
	}
	last.missing, reserve.missing = n.missing, n.missing
	p.conclude(last)
	p.conclude(reserve)
}

// lasts answers with the pack that the flight draws most of. Launch and go-around take the peak, circuits and landing the mean.
func (p *pass) lasts(s *packsSection, most *supplied, last, reserve *answer) {
	const perSecond = 1.0 / secondsPerHour
	mean, peak := max(1e-9, most.supply.Mean)*perSecond, most.supply.Peak*perSecond
	budget, err := fuel.FlightBudget(fuel.Flight{
		OnBoard: most.result.Usable, Launch: fuel.Stretch{Name: "launch", Flow: peak, Duration: launchTime},
		Circuit:  fuel.Stretch{Name: "circuit", Flow: mean, Duration: s.flight.circuit},
		Landing:  fuel.Stretch{Name: "landing", Flow: mean, Duration: landingTime},
		GoAround: fuel.Stretch{Name: "go-around", Flow: peak, Duration: goAroundTime},
	})
	if err != nil {
		last.missing, reserve.missing = []string{most.path}, []string{most.path}
		last.never, reserve.never = "The pack holds nothing for this flight.", "The pack holds nothing for this flight."
		return
	}
	planned := s.flight.planned()
	last.value, last.limit = budget.Endurance/secondsPerMinute, limit{value: planned / secondsPerMinute, set: true, rule: "flight as planned"}
	drawn := budget.Launch + budget.Landing + float64(s.flight.circuits*s.flight.circuit*mean)
	left := 1 - min(emptied, drawn/max(1e-9, most.result.Usable))
	reserve.value, reserve.limit = left, limit{value: 1 - s.use.value, set: true, rule: s.use.rule, path: s.use.path}
	if p.base() {
		p.sayLasting(s, most, &budget, last, reserve)
	}
}

func (p *pass) sayLasting(s *packsSection, most *supplied, budget *fuel.Budget, last, reserve *answer) {
	p.tell("packs.endurance", budget.Endurance, most.read...)
	p.tell("packs.landing_call", budget.Timer, most.read...)
	p.tell("packs.go_around_charge", budget.Reserve, most.read...)
	last.from, reserve.from = most.told("usable", "mean_current", "peak_current"), most.told("usable", "mean_current", "peak_current")
	last.note = say("%s: %.2f Ah usable at %.0f C, %.1f A in the circuit, %.1f A at full power.", sentence(most.name), most.result.Usable,
		most.supply.Kelvin-packs.Zero, most.supply.Mean, most.supply.Peak)
	reserve.note = p.inWords("The flight of %.1f min with %.0f circuits leaves %.0f %%.", s.flight.planned()/secondsPerMinute, s.flight.circuits, 100*reserve.value)
	if budget.Short > 0 {
		reserve.note += p.inWords(" Launch, landing and one go-around with its circuit do not fit: %.2f Ah are missing.", budget.Short)
	} else {
		call := int(budget.Timer)
		reserve.note += say(" Landing call %d min %02d s after the launch; then one go-around and one circuit are left.", call/secondsPerMinute, call%secondsPerMinute)
	}
	if reserve.value < reserve.limit.value {
		reserve.note += packRemedy(most.supply, packs.Wanted{Spare: -mostVolts, Reserve: 1 - s.use.value})
	}
}
