package assess

import (
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
		straight.note = say("%.2f kg on %.3f m2 at a greatest lift coefficient of %.2f%s; %s.",
			p.mass.takeoff, p.wing.area, p.wing.clean.Coefficient, p.trimWords(), stallWords(p.wing.clean))
		straight.outside = !p.wing.clean.Inside
	}
	p.conclude(straight)
	p.answerTip()
	p.answerTurn()
}

// trimWords says whether the greatest lift is that in balance, and what it would be without.
func (p *pass) trimWords() string {
	switch {
	case !p.tells():
		return ""
	case p.trimmable():
		return p.inWords(" in balance (%.2f without the pitch control)", p.untrimmed())
	}
	return " without the pitch control, which cannot be trimmed without its throws and the balance point"
}

// spreadTip is how far the limit of the tip's section may be off against that of the strip that stalls, relative.
const spreadTip = 0.03

// answerTip answers for what the tips have left when the first strip stalls.
func (p *pass) answerTip() {
	tip := answer{id: "stall.tip", missing: p.stall.missing, limit: p.limit(tipFigure)}
	if len(p.stall.missing) == 0 {
		stall := &p.wing.clean
		off := float64(stall.SectionCoefficient / p.wing.slope * (p.factor("method: tip section against root section", spreadTip) - 1))
		tip.value = degrees(stall.TipMarginIncidence + off)
		tip.note = say("When %s, the outer 15 %% have %.1f degrees left.", stallEvent(*stall), tip.value)
		tip.outside = !stall.Inside
	}
	p.conclude(tip)
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
		turn.note = p.inWords("%.1f m/s at %.0f degrees of bank; the stall there is at %.1f m/s, load factor %.2f.",
			p.stall.circuitSpeed, degrees(p.stall.bank), inTurn, motion.TurnLoad(p.stall.bank))
		gust.value = (p.stall.circuitSpeed - p.air.gustExcess) / inTurn
		gust.note = p.inWords("A gust %.1f m/s over the mean wind leaves %.1f m/s when it dies; the stall in the turn is at %.1f m/s.",
			p.air.gustExcess, p.stall.circuitSpeed-p.air.gustExcess, inTurn)
	}
	p.conclude(turn)
	p.conclude(gust)
}
