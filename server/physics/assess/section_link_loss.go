package assess

import "pitgate/server/physics/footprint"

const (
	// likelyShare and nearlyAll are the shares of the impacts that the outlines hold.
	likelyShare = 0.50
	nearlyAll   = 0.95
	// roadHalfWidth of a line of people or a road whose width is not said, m.
	roadHalfWidth = 2.0

	// spiralBank and spiralLift are what a fail-safe's spiral is taken to hold: bank, and lift coefficient over the greatest.
	spiralBankDegrees = 60.0
	spiralLift        = 0.6
)

var failSafes = map[FailSafeAction]footprint.Action{
	FailSafeActionCutNeutral: footprint.CutNeutral, FailSafeActionCutSpiral: footprint.CutSpiral, FailSafeActionIdleNeutral: footprint.IdleNeutral,
	FailSafeActionHold: footprint.Hold, FailSafeActionNone: footprint.FlyAway,
}

// failSafeWords name what the model does.
var failSafeWords = map[footprint.Action]string{
	footprint.CutNeutral: "engine cut, surfaces neutral", footprint.CutSpiral: "engine cut, a spiral", footprint.IdleNeutral: "engine idling, surfaces neutral",
	footprint.Hold: "the last command held", footprint.FlyAway: "straight and level on full power until the fuel ends",
}

// lossSection is a loss of link as declared.
type lossSection struct {
	action footprint.Action
	delay  float64 // s
	words  string
}

// flyLosses sets off the losses of link, which come down while the sections until answerLinkLoss answer. They carry their own spread, so that the base
// pass alone flies them.
func (p *pass) flyLosses() {
	if !p.base() {
		return
	}
	n, mark := p.need(), p.mark()
	n.lack(p.day.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.engine.missing...)
	n.lack(p.topMissing...)
	l := &losing{limit: p.lossLimit(), people: p.people(), draws: p.whole.draws, placesOnly: !p.tells()}
	if len(l.people) == 0 {
		n.lack("field.peopleLines")
	}
	l.loss = p.readFailSafe(&n)
	if n.met() {
		l.plan = p.lossPlan(l.loss, &n)
	}
	if l.missing = n.missing; n.met() {
		p.tellFailSafe(l.loss)
		l.read = p.since(mark)
		l.setOff()
	}
	p.falls = l
}

// answerLinkLoss answers for where the model comes down when its link is lost.
func (p *pass) answerLinkLoss() {
	if !p.base() {
		p.keepStill("link_loss.footprint")
		return
	}
	l := p.falls
	found := answer{id: "link_loss.footprint", missing: l.missing, limit: l.limit}
	if l.ended != nil {
		<-l.ended
		p.comeDown(l, &found)
	}
	p.conclude(found)
}

// lossLimit is the distance of people that the document asks for, else that they stay outside the outline.
func (p *pass) lossLimit() limit {
	if given := p.optionalLimit(peopleFigure); given.set {
		return given
	}
	return limit{set: true, rule: coreDefault}
}

// readFailSafe reads the declared action and its delay; what is not declared is a powered fly-away.
func (p *pass) readFailSafe(n *need) lossSection {
	radio := &RadioLink{}
	if p.in.Model != nil && p.in.Model.Radio != nil {
		radio = p.in.Model.Radio
	}
	loss := lossSection{action: footprint.FlyAway}
	if action, declared := failSafes[radio.FailSafeAction]; declared {
		loss.action = action
	} else {
		loss.words = "No fail-safe is declared: "
	}
	loss.words += failSafeWords[loss.action]
	if loss.acts() {
		loss.delay = max(0, n.plain("model.radio.failSafeDelaySeconds", radio.FailSafeDelaySeconds))
	}
	return loss
}

// plain reads a quantity whose spread the samples carry, so that no pass needs to move it.
func (n *need) plain(name string, q *Quantity) float64 {
	if q == nil || q.Value == nil {
		n.lack(name)
		return 0
	}
	n.pass.note(name)
	return *q.Value
}

// acts reports whether the fail-safe does something after a delay.
func (s *lossSection) acts() bool {
	return s.action == footprint.CutNeutral || s.action == footprint.CutSpiral || s.action == footprint.IdleNeutral
}

func (p *pass) tellFailSafe(loss lossSection) {
	p.tellText("link_loss.action", loss.words)
	if loss.acts() {
		p.tell("link_loss.delay", loss.delay)
	}
}

// lossPlan returns the losses to sample: anywhere in the circuit, with the spreads of what is known.
func (p *pass) lossPlan(loss lossSection, n *need) footprint.Plan {
	wind := footprint.Wind{Speed: p.air.wind, From: p.air.from, Profile: p.air.profile}
	plan := footprint.Plan{
		Loss: footprint.Loss{
			Action: loss.action, Delay: loss.delay, Density: p.air.state.Density, Wind: wind, Model: p.fallingModel(loss, n),
		},
		EitherSpiral: true, Spread: p.lossSpread(loss),
	}
	waypoints := make([]footprint.Waypoint, 0, len(p.day.circuit))
	for _, point := range p.day.circuit {
		waypoints = append(waypoints, footprint.Waypoint{Place: point, Height: p.day.height, Speed: p.stall.circuitSpeed})
	}
	path, err := footprint.Along(waypoints, wind, p.stall.bank)
	if err != nil {
		n.lack("launchPlan.circuit.airspeedMetersPerSecond")
	}
	plan.Path = path
	return plan
}

// fallingModel returns the model as its falls see it.
func (p *pass) fallingModel(loss lossSection, n *need) footprint.Model {
	m := footprint.Model{
		Mass: p.mass.takeoff, Area: p.wing.area, Width: p.wing.span, CD0: p.drag.top, InducedFactor: p.drag.induced, CLMax: p.wing.clean.Coefficient,
		LevelTime: p.levelTime(), SpiralBank: radians(spiralBankDegrees), SpiralLift: spiralLift * p.wing.clean.Coefficient,
		RunDown: p.runDown(),
	}
	if loss.action != footprint.CutNeutral && loss.action != footprint.CutSpiral {
		p.powered(loss, &m, n)
	}
	return m
}

// levelTime returns the time in which a bank left alone falls to 1/e: of the spiral, as good as never where that grows, and at once, which goes
// farthest, where it is not known.
func (p *pass) levelTime() float64 {
	const never = 1e6
	if len(p.inertia.missing) > 0 || p.whole.lateral == nil || len(p.mass.fullMissing) > 0 {
		return 0
	}
	motions, err := p.yaw.derivatives.Motions(p.stateAt(p.stall.circuitSpeed))
	if err != nil {
		return 0
	}
	time := never
	if rate := motions.Spiral.Real; rate < -1/never {
		time = -1 / rate
	}
	p.tell("link_loss.level_time", time)
	return time
}

// runDown returns the time constant of the thrust after the cut, s: a third of the time to no thrust, for which the time up to full thrust stands
// where it was not timed.
func (p *pass) runDown() float64 {
	longest := 0.0
	for i := range p.in.Model.Engines {
		path := at("model.engines", i)
		p.note(path + ".runDownSeconds")
		longest = max(longest, valueOr(p.in.Model.Engines[i].RunDownSeconds, p.engine.engines[i].SpoolTime)/3)
	}
	return longest
}

// lossSpread returns one standard deviation of what the samples vary.
func (p *pass) lossSpread(loss lossSection) footprint.Spread {
	day := p.today()
	s := footprint.Spread{
		Speed: 0.1 * p.stall.circuitSpeed, Height: 0.1 * p.day.height, Heading: radians(5), Bank: radians(10),
		WindSpeed: root(deviation("day.windSpeedMetersPerSecond", day.WindSpeedMetersPerSecond), p.air.gustExcess/2),
		WindFrom:  radians(max(10, deviation("day.windDirectionDegrees", day.WindDirectionDegrees))),
		Drag:      0.10, GlideRatio: spreadInduced, Lift: 0.10,
	}
	if loss.acts() {
		s.Delay = deviation("model.radio.failSafeDelaySeconds", p.in.Model.Radio.FailSafeDelaySeconds)
	}
	if loss.action == footprint.Hold {
		s.BankCreep = radians(1)
	}
	return s
}

// deviation returns one standard deviation of a quantity; zero where it is not given.
func deviation(name string, q *Quantity) float64 {
	if q == nil || q.Value == nil {
		return 0
	}
	return q.Deviation(name)
}
