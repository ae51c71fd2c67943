package assess

import (
	"math"

	"pitgate/server/physics/motion"
)

// stallSection is the stall speed and the circuit's speed and bank.
type stallSection struct {
	missing []string
	clean   float64 // m/s
	takeoff float64 // with take-off flaps, m/s

	circuitSpeed float64 // m/s
	bank         float64 // rad
}

const (
	defaultCircuitRatio = 1.5
	defaultBankDegrees  = 45.0
)

func (p *pass) readStall() {
	n := p.need()
	n.lack(p.wing.missing...)
	n.lack(p.mass.missing...)
	n.lack(p.air.missing...)
	if n.met() && !(p.wing.clean.Coefficient > 0) {
		n.lack("model.surfaces")
	}
	p.stall.missing = n.missing
	if !n.met() {
		return
	}
	density := p.air.state.Density
	p.stall.clean = stallSpeed(p.mass.takeoff, density, p.wing.area, p.wing.clean.Coefficient)
	p.stall.takeoff = stallSpeed(p.mass.takeoff, density, p.wing.area, p.wing.takeoff.Coefficient)
	circuit, mark := p.circuitPlan(), p.mark()
	p.stall.circuitSpeed = p.optional("launchPlan.circuit.airspeedMetersPerSecond", circuit.AirspeedMetersPerSecond, defaultCircuitRatio*p.stall.clean)
	p.tell("circuit.airspeed", p.stall.circuitSpeed, p.since(mark)...)
	p.stall.bank = radians(orElse(circuit.BankDegrees, defaultBankDegrees))
	p.tell("stall.speed", p.stall.clean)
	p.tell("stall.speed_takeoff", p.stall.takeoff)
	p.tell("wing.loading", p.mass.takeoff/p.wing.area)
	p.tell("turn.radius", motion.TurnRadius(p.stall.circuitSpeed, p.stall.bank))
	p.tell("turn.load_factor", motion.TurnLoad(p.stall.bank))
}

func (p *pass) circuitPlan() *CircuitPlan {
	if p.in.LaunchPlan == nil || p.in.LaunchPlan.Circuit == nil {
		return &CircuitPlan{}
	}
	return p.in.LaunchPlan.Circuit
}

// answerStall answers for the stall in straight flight, in the turn, and in the turn when the gust dies.
func (p *pass) answerStall() {
	straight := answer{id: "stall.speed", missing: p.stall.missing, value: p.stall.clean}
	straight.limit = p.optionalLimit(stallSpeedFigure)
	if len(p.stall.missing) == 0 {
		straight.note = say("%.2f kg on %.3f m2 at a greatest lift coefficient of %.2f; %s stalls first.",
			p.mass.takeoff, p.wing.area, p.wing.clean.Coefficient, stallStation(p.wing.clean))
		straight.outside = !p.wing.clean.Inside
	}
	p.conclude(straight)
	p.answerTurn()
}

func (p *pass) answerTurn() {
	limit := p.limit(turnFigure)
	turn := answer{id: "stall.turn", missing: p.stall.missing, limit: limit}
	gust := answer{id: "stall.gust", limit: limit}
	n := p.need()
	n.lack(p.stall.missing...)
	n.lack(p.air.windMissing...)
	gust.missing = n.missing
	if len(p.stall.missing) == 0 {
		inTurn := motion.TurnStallSpeed(p.stall.clean, p.stall.bank)
		p.tell("stall.speed_turn", inTurn)
		turn.value = p.stall.circuitSpeed / inTurn
		turn.note = say("%.1f m/s at %.0f degrees of bank; the stall there is at %.1f m/s, load factor %.2f.",
			p.stall.circuitSpeed, degrees(p.stall.bank), inTurn, motion.TurnLoad(p.stall.bank))
		gust.value = (p.stall.circuitSpeed - p.air.gustExcess) / inTurn
		gust.note = say("A gust %.1f m/s over the mean wind leaves %.1f m/s when it dies; the stall in the turn is at %.1f m/s.",
			p.air.gustExcess, p.stall.circuitSpeed-p.air.gustExcess, inTurn)
	}
	p.conclude(turn)
	p.conclude(gust)
}

// answerBalance answers for the static margin with full and with empty tanks.
func (p *pass) answerBalance() {
	p.answerMargin("balance.margin_full", p.mass.fullMissing, p.mass.fullBalance)
	p.answerMargin("balance.margin_empty", p.mass.balanceMissing, p.mass.emptyBalance)
}

func (p *pass) answerMargin(id string, missing []string, balance float64) {
	n := p.need()
	n.lack(p.wing.missing...)
	n.lack(missing...)
	margin := answer{id: id, missing: n.missing}
	margin.limit = p.limit(leastMargin)
	margin.upper = p.limit(mostMargin).value
	if n.met() {
		margin.value = (p.wing.neutralX - balance) / p.wing.chord
		margin.note = say("Neutral point at %.3f m, balance point at %.3f m, mean chord %.3f m.", p.wing.neutralX, balance, p.wing.chord)
		p.tellShift(id, margin)
	}
	p.conclude(margin)
}

// tellShift tells how far the balance point may move forward and aft within the window.
func (p *pass) tellShift(id string, margin answer) {
	p.tell(id+".room_forward", math.Max(0, margin.upper-margin.value)*p.wing.chord)
	p.tell(id+".room_aft", math.Max(0, margin.value-margin.limit.value)*p.wing.chord)
}
