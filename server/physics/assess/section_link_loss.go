package assess

import (
	"errors"
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/footprint"
)

const (
	// clearOf is how many standard errors by chance a margin has to lie off its limit for few losses to be enough.
	clearOf = 3.0
	// likelyShare and nearlyAll are the shares of the impacts that the outlines hold.
	likelyShare = 0.50
	nearlyAll   = 0.95
	// roadHalfWidth of a line of people or a road whose width is not said, m.
	roadHalfWidth = 2.0

	// spiralBank and spiralLift are what a fail-safe's spiral is taken to hold: bank, and lift coefficient over the greatest.
	spiralBankDegrees = 60.0
	spiralLift        = 0.6
)

// lossCounts are how many losses are flown: few, and many where few do not settle it. Of a command held, which lasts until the fuel ends, few must do.
var lossCounts = [...]int{1024, 4096}

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

// answerLinkLoss answers for where the model comes down when its link is lost. It carries its own spread, so that the base pass alone answers.
func (p *pass) answerLinkLoss() {
	if !p.base() {
		p.keepStill("link_loss.footprint")
		return
	}
	n, mark := p.need(), p.mark()
	n.lack(p.day.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.engine.missing...)
	n.lack(p.topMissing...)
	people := p.people()
	if len(people) == 0 {
		n.lack("field.peopleLines")
	}
	loss := p.readFailSafe(&n)
	var plan footprint.Plan
	if n.met() {
		plan = p.lossPlan(loss, &n)
	}
	found := answer{id: "link_loss.footprint", missing: n.missing, limit: p.lossLimit()}
	if n.met() {
		p.tellFailSafe(loss)
		p.comeDown(plan, loss, people, p.since(mark), &found)
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

// comeDown samples the losses, draws their outlines and tells what they meet.
func (p *pass) comeDown(plan footprint.Plan, loss lossSection, people []site, read []string, found *answer) {
	fallen, err := p.fall(plan, people, found.limit.value)
	found.value = fallen.margin
	if err != nil {
		found.value = math.NaN()
		return
	}
	if p.tells() {
		p.tellComeDown(&fallen, loss, people, read, found)
	}
}

// fallen is where the losses came down, and how near to people.
type fallen struct {
	cloud   footprint.Cloud
	outline field.Polygon
	nearest *site
	margin  float64 // distance of the nearest people from the outline, m
	chance  float64 // one standard error of the margin, by the number of losses, m
}

// fall flies as many losses as tell on which side of the limit the margin lies: few, and many where the margin of few lies within clearOf standard
// errors of it.
//
// Source: A. Wald, Sequential Analysis, 1947.
func (p *pass) fall(plan footprint.Plan, people []site, limit float64) (out fallen, err error) {
	counts := lossCounts[:]
	if plan.Action == footprint.Hold {
		counts = counts[:1]
	}
	for _, plan.Samples = range counts {
		if out, err = p.fallOf(plan, people); err != nil || math.Abs(out.margin-limit) > clearOf*out.chance {
			break
		}
	}
	return out, err
}

// fallOf flies a number of losses.
func (p *pass) fallOf(plan footprint.Plan, people []site) (out fallen, err error) {
	if out.cloud, err = plan.Estimate(p.whole.draws, !p.tells()); err != nil {
		return out, err
	}
	outlines, err := out.cloud.Outlines(nearlyAll)
	if err == nil && len(outlines.Middle) == 0 { // what comes down leaves no finite places
		err = errors.New("losses: leave no outline")
	}
	if err != nil {
		return out, err
	}
	out.outline = outlines.Middle
	out.nearest, out.margin = nearestTo(out.outline, people)
	_, most := nearestTo(outlines.Inner, people)
	_, least := nearestTo(outlines.Outer, people)
	out.chance = float64(0.5 * (most - least))
	return out, nil
}

// tellComeDown draws the outlines and tells how the impacts are and what they meet.
func (p *pass) tellComeDown(fallen *fallen, loss lossSection, people []site, read []string, found *answer) {
	cloud, outline := fallen.cloud, fallen.outline
	if likely, err := cloud.Outline(likelyShare); err == nil {
		p.drawArea("area.link_loss_50", likely)
	}
	p.drawArea("area.link_loss_95", outline)
	p.tell("link_loss.outline_area", outline.Area(), read...)
	p.tell("link_loss.step_error", cloud.Error)
	p.tellCloud(cloud)
	p.tell("link_loss.losses", float64(len(cloud.Impacts)))
	p.tell("link_loss.margin", found.value, fallen.nearest.path)
	p.tell("link_loss.chance", fallen.chance, "link_loss.losses")
	found.note = say("%s. 95 %% of the losses end within %.1f ha at up to %.0f J; ", capital(loss.words), outline.Area()/squareMetersPerHectare, cloud.EnergyAt(nearlyAll))
	found.note += reachWords(fallen.nearest.name, found.value, fallen.chance)
	found.note += p.tellShares(cloud, outline, append(people, p.structures()...))
	found.from = p.toldUnder("link_loss.share.")
	if cloud.Aloft > 0 {
		found.note += say(" %d of %d losses are still in the air after two hours.", cloud.Aloft, len(cloud.Impacts))
	}
}

const squareMetersPerHectare = 1e4

// capital lets a sentence begin large.
func capital(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}

// drawArea adds a closed outline to the report.
func (p *pass) drawArea(id string, outline field.Polygon) {
	path := ReportPath{ID: id}
	for i := range outline {
		path.Points = append(path.Points, PathPoint{XMeters: outline[i].X, YMeters: outline[i].Y})
	}
	if len(outline) > 0 {
		path.Points = append(path.Points, path.Points[0])
	}
	p.lines = append(p.lines, path)
}

// tellCloud tells speed, energy, time and struck ground of the impacts.
func (p *pass) tellCloud(cloud footprint.Cloud) {
	p.tell("link_loss.time", cloud.TimeAt(nearlyAll))
	p.tell("link_loss.speed", cloud.SpeedAt(nearlyAll))
	p.tell("link_loss.energy", cloud.EnergyAt(nearlyAll))
	if area, err := cloud.CriticalAreaAt(nearlyAll, footprint.AnnexF()); err == nil {
		p.tell("link_loss.critical_area", area)
	}
	if p.in.Field.PilotPosition != nil {
		p.tell("link_loss.farthest", cloud.FarthestFrom(flat(p.in.Field.PilotPosition)))
	}
}
