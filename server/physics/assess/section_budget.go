package assess

import (
	"math"

	"pitgate/server/physics/fuel"
	"pitgate/server/physics/motion"
)

// What is burnt on the ground before the launch, s (common practice): start and warming up at idle, a check at full thrust, taxiing on wheels.
const (
	warmingSeconds = 60.0
	checkSeconds   = 10.0
	taxiSeconds    = 60.0
	// unflownLaunch stands for a launch that was not computed, s.
	unflownLaunch = 15.0
	// slowestClimb keeps a model that hardly climbs from burning without end, m/s.
	slowestClimb = 1.0
	// spreadFlow is how far the fuel flow of a flight may be off from that of its stretches, relative (within a tenth).
	spreadFlow = 0.10
	flowMethod = "method: fuel flow in flight"
)

// flightFuel is the fuel of a planned flight.
type flightFuel struct {
	flight   fuel.Flight
	budget   fuel.Budget
	circuits int // as planned; 0 where the plan does not say
	onBoard  float64
	share    float64 // of full thrust in the circuit
}

// answerBudget answers for how long the fuel lasts and what is left for the landing.
func (p *pass) answerBudget() {
	n := p.need()
	n.lack(p.feed.flowMissing...)
	n.lack(p.engine.missing...)
	n.lack(p.mass.missing...)
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.air.windMissing...)
	plan := p.launchPlan().Circuit
	if plan == nil {
		n.lack("launchPlan.circuit")
	}
	endurance, reserve := answer{id: "fuel.endurance"}, answer{id: "fuel.reserve"}
	left := n
	left.missing = append([]string(nil), n.missing...)
	if plan != nil && plan.CircuitCount == nil {
		left.lack("launchPlan.circuit.circuitCount")
	}
	endurance.missing, reserve.missing = n.missing, left.missing
	if n.met() {
		p.budget(plan, &endurance, &reserve)
	}
	p.conclude(endurance)
	p.conclude(reserve)
}

// budget plans the fuel and answers both questions.
func (p *pass) budget(plan *CircuitPlan, endurance, reserve *answer) {
	mark := p.mark()
	f, err := p.flightFuel(plan)
	if err != nil {
		endurance.never, reserve.never = "The flight as planned burns a fuel that cannot be: "+err.Error()+".", "The flight as planned cannot be computed."
		return
	}
	b := &f.budget
	endurance.value = b.Endurance
	read := p.since(mark)
	if f.circuits > 0 {
		endurance.limit = limit{value: f.planned(), set: true, rule: "the plan", path: "launchPlan.circuit.circuitCount"}
		p.reserve(&f, reserve)
	}
	if p.base() {
		endurance.note = f.note()
		p.tellBudget(&f, read)
	}
}

// planned returns the time of the planned flight, s.
func (f *flightFuel) planned() float64 {
	return f.flight.Launch.Duration + float64(float64(f.circuits)*f.flight.Circuit.Duration) + f.flight.Landing.Duration
}

// left returns the fuel that the pump still reaches after the planned flight, kg.
func (f *flightFuel) left() float64 {
	b := &f.budget
	return f.onBoard - b.Before - b.Launch - float64(float64(f.circuits)*f.flight.Circuit.Mass()) - b.Landing - b.Unusable
}

// reserve holds what is left at the landing against one go-around and one more circuit, or the share that the limits ask for.
func (p *pass) reserve(f *flightFuel, out *answer) {
	if !(f.onBoard > 0) {
		out.never = "There is no fuel on board."
		return
	}
	out.value = f.left() / f.onBoard
	out.limit = limit{value: f.budget.Reserve / f.onBoard, set: true, rule: coreDefault}
	if given := p.optionalLimit(reserveShareFigure); given.set && given.value > out.limit.value {
		out.limit = given
	}
	if p.base() {
		out.note = say("%.0f g are left after %d circuits and the landing; a go-around and one more circuit take %.0f g. Landing call after %s.",
			gramsPerKg*f.left(), f.circuits, gramsPerKg*f.budget.Reserve, clock(f.budget.Timer))
		if short := float64(out.limit.value*f.onBoard) - f.left(); short > 0 {
			out.note += p.inWords(" %.0f g more fuel, or %.0f circuits fewer, would keep it.", gramsPerKg*short, math.Ceil(short/f.flight.Circuit.Mass()))
		}
		p.tell("fuel.left", f.left())
	}
}

func (f *flightFuel) note() string {
	b := &f.budget
	note := sayNumbers("%.0f g on board: %.0f g before the launch, %.0f g for it, %.0f g a circuit of %.0f s at %.0f %% thrust, %.0f g out of reach.",
		gramsPerKg*f.onBoard, gramsPerKg*b.Before, gramsPerKg*b.Launch, gramsPerKg*f.flight.Circuit.Mass(), f.flight.Circuit.Duration, 100*f.share, gramsPerKg*b.Unusable)
	if b.Short > 0 {
		return note + sayNumbers(" For launch, landing and reserve %.0f g are short.", gramsPerKg*b.Short)
	}
	return note + say(" Landing call after %s with the reserve untouched.", clock(b.Timer))
}

// clock writes a time as minutes and seconds.
func clock(seconds float64) string {
	whole := int(max(0, seconds))
	return say("%d:%02d", whole/secondsPerMinute, whole%secondsPerMinute)
}

// flightFuel plans the stretches of the flight and its budget.
func (p *pass) flightFuel(plan *CircuitPlan) (flightFuel, error) {
	f := flightFuel{onBoard: p.mass.takeoff - p.mass.empty, circuits: count(plan.CircuitCount, 0)}
	scale := max(0.1, p.factor(flowMethod, spreadFlow))
	circuit := p.circuit(plan)
	share, lap := p.circuitShare(), lapTime(circuit)
	flow := scale * p.flowAt(share)
	full, idle := scale*p.feed.full, scale*p.feed.idle
	climb := p.optional("launchPlan.circuit.heightMeters", plan.HeightMeters, 50) / p.steadyClimb()
	f.share = share
	f.flight = fuel.Flight{
		OnBoard: f.onBoard, Unusable: p.unusable(f.onBoard), Before: p.groundFuel(full, idle),
		Launch:   fuel.Stretch{Name: "launch", Flow: full, Duration: p.launchTime() + climb},
		Circuit:  fuel.Stretch{Name: "circuit", Flow: flow, Duration: lap},
		Landing:  fuel.Stretch{Name: "landing", Flow: flow, Duration: lap / 2},
		GoAround: fuel.Stretch{Name: "go-around", Flow: full, Duration: p.engine.spool + climb},
	}
	var err error
	f.budget, err = fuel.FlightBudget(f.flight)
	return f, err
}

// groundFuel returns what is burnt before the launch.
func (p *pass) groundFuel(full, idle float64) []fuel.Stretch {
	before := []fuel.Stretch{{Name: "start and warming up", Flow: idle, Duration: warmingSeconds}, {Name: "static check", Flow: full, Duration: checkSeconds}}
	if p.launch.known && p.launch.method == motion.Wheels {
		before = append(before, fuel.Stretch{Name: "taxi", Flow: idle, Duration: taxiSeconds})
	}
	return before
}

// unusable returns the fuel that no pump reaches, kg: as measured, or a share of what is on board.
func (p *pass) unusable(onBoard float64) float64 {
	liters, ok := p.read(feedPath+"unusableLiters", p.fuelSystem().UnusableLiters)
	if !ok {
		return fuel.UnusableShare * onBoard
	}
	density := p.feed.system.Density
	if !(density > 0) {
		density = p.feed.system.Fuel.Density15
	}
	return max(0, liters) / litersPerCubicMeter * density
}

// launchTime returns the time from letting go to the screen, s.
func (p *pass) launchTime() float64 {
	if p.launch.flown && p.launch.result.ReachesScreen {
		return p.launch.result.ScreenTime
	}
	return unflownLaunch
}

// steadyClimb returns the rate of climb at full thrust and circuit speed, m/s.
func (p *pass) steadyClimb() float64 {
	speed := p.stall.circuitSpeed
	state := p.stateAt(speed)
	drag := float64(state.Pressure() * state.Area * state.Drag)
	return max(slowestClimb, (p.thrust(speed, p.engine.spool)-drag)*speed/(p.mass.takeoff*motion.Gravity))
}

// circuitShare returns the share of full thrust that holds the speed in the turns of the circuit: no circuit takes more all the way round.
func (p *pass) circuitShare() float64 {
	speed := p.stall.circuitSpeed
	state, load := p.stateAt(speed), motion.TurnLoad(p.stall.bank)
	lift := float64(load * state.Lift)
	needed := float64(state.Pressure() * state.Area * (p.drag.top + float64(p.drag.induced*float64(lift*lift))))
	return min(1, max(0, needed/max(1e-9, p.thrust(speed, p.engine.spool))))
}

// flowAt returns the fuel flow of all engines at a share of their full thrust, kg/s.
func (p *pass) flowAt(share float64) float64 {
	sum := 0.0
	for i := range p.feed.engines {
		sum += p.feed.engines[i].FuelFlow(share * p.feed.engines[i].StaticThrust)
	}
	return sum
}

// lapTime returns the time of one circuit, s: legs over the ground, half turns and the reaction before each.
func lapTime(c motion.Circuit) float64 {
	along := math.Sqrt(max(1, float64(c.Airspeed*c.Airspeed)-float64(c.Crosswind*c.Crosswind)))
	out, back := max(1, along-c.Headwind), max(1, along+c.Headwind)
	return c.Leg/out + c.Leg/back + float64(2*(c.TurnTime()+c.Reaction))
}

func (p *pass) tellBudget(f *flightFuel, read []string) {
	b := &f.budget
	p.tell("fuel.circuit_share", f.share)
	p.tell("fuel.circuit_flow", f.flight.Circuit.Flow)
	p.tell("fuel.circuit_time", f.flight.Circuit.Duration, read...)
	p.tell("fuel.circuit", f.flight.Circuit.Mass())
	p.tell("fuel.before", b.Before)
	p.tell("fuel.launch", b.Launch)
	p.tell("fuel.landing", b.Landing)
	p.tell("fuel.unusable", b.Unusable, p.givenOr(feedPath+"unusableLiters", "method: fuel out of reach", p.fuelSystem().UnusableLiters != nil))
	p.tell("fuel.reserve", b.Reserve)
	p.tell("fuel.endurance", b.Endurance)
	p.tell("fuel.landing_call", b.Timer)
	p.tell("fuel.circuits", float64(b.Circuits))
}
