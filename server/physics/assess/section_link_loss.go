package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/footprint"
)

const (
	// lossCount is the number of losses sampled.
	lossCount = 256
	// lossPrecision of each fall, relative and in m and m/s: a few metres at worst, less than the spread.
	lossPrecision = 2e-3
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
	paths  []string // inputs behind model and spread
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
		loss.delay = max(0, n.quantity("model.radio.failSafeDelaySeconds", radio.FailSafeDelaySeconds))
	}
	return loss
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
			Action: loss.action, Delay: loss.delay, Density: p.air.state.Density, Wind: wind, Precision: lossPrecision, Model: p.fallingModel(loss, n),
		},
		EitherSpiral: true, Samples: lossCount, Spread: p.lossSpread(loss),
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
	speed := p.stall.circuitSpeed
	m.FullThrust = max(0, p.thrust(0, p.engine.spool))
	m.ThrustSlope = max(0, (m.FullThrust-p.thrust(speed, p.engine.spool))/speed)
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
		time := p.optional(path+".runDownSeconds", p.in.Model.Engines[i].RunDownSeconds, p.engine.engines[i].SpoolTime)
		longest = max(longest, time/3)
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
	cloud, err := plan.Sample()
	if err != nil {
		found.value = math.NaN()
		return
	}
	outline, err := cloud.Outline(nearlyAll)
	likely, other := cloud.Outline(likelyShare)
	if err != nil || other != nil {
		found.value = math.NaN()
		return
	}
	p.drawArea("area.link_loss_50", likely)
	p.drawArea("area.link_loss_95", outline)
	p.tell("link_loss.outline_area", outline.Area(), read...)
	p.tellCloud(cloud)
	nearest := p.nearestPeople(outline, people, found)
	p.tell("link_loss.margin", found.value, nearest.path)
	found.note = say("%s. 95 %% of the losses end within %.1f ha at up to %.0f J; ", capital(loss.words), outline.Area()/squareMetersPerHectare, cloud.EnergyAt(nearlyAll))
	found.note += reachWords(nearest.name, found.value)
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

// reachWords says how people stand to the outline.
func reachWords(name string, distance float64) string {
	if distance < 0 {
		return say("their outline reaches %.0f m over %s.", -distance, name)
	}
	return say("the nearest people, %s, are %.0f m outside their outline.", name, distance)
}

// nearestPeople finds the people nearest to the outline or deepest in it.
func (p *pass) nearestPeople(outline field.Polygon, people []site, found *answer) *site {
	var nearest *site
	found.value = math.Inf(1)
	for i := range people {
		if apart := people[i].apart(outline); nearest == nil || apart < found.value {
			nearest, found.value = &people[i], apart
		}
	}
	return nearest
}

// apart returns the distance of a site from an outline, m; negative by how deep the site reaches into it.
//
// The depth is the greatest signed distance on the site's line, which is concave along a straight piece of a convex outline: thirds are cut off
// until a decimetre is left. Valid for: convex outlines. Source: plane geometry.
func (o *site) apart(outline field.Polygon) float64 {
	path := o.line
	if len(o.area) > 0 {
		path = append(field.Line(o.area), o.area[0])
	}
	deepest := math.Inf(-1)
	for i := range path {
		deepest = max(deepest, outline.SignedDistance(path[i]))
		if i > 0 {
			deepest = max(deepest, deepestOn(outline, field.Segment{A: path[i-1], B: path[i]}))
		}
	}
	if deepest > 0 {
		return -deepest
	}
	if len(o.area) > 0 {
		apart, _ := outline.Separation(o.area)
		return apart
	}
	return outline.PathDistance(path)
}

// deepestOn returns the greatest signed distance to an outline on a straight piece, m.
func deepestOn(outline field.Polygon, s field.Segment) float64 {
	low, high := 0.0, 1.0
	for float64((high-low)*s.Length()) > 0.1 {
		third := (high - low) / 3
		if outline.SignedDistance(s.At(low+third)) < outline.SignedDistance(s.At(high-third)) {
			low += third
		} else {
			high -= third
		}
	}
	return outline.SignedDistance(s.At((low + high) / 2))
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

// tellShares tells the share of the losses that meet each place the outline reaches, and says so.
func (p *pass) tellShares(cloud footprint.Cloud, outline field.Polygon, sites []site) string {
	words := ""
	for i := range sites {
		o := &sites[i]
		hit, err := o.hit(cloud)
		if err != nil || hit.Share == 0 && o.apart(outline) > 0 {
			continue
		}
		id := numbered("link_loss.share.", i+1)
		p.tell(id, hit.Share, o.path)
		p.tellText(id+".name", o.name, o.path)
		words += say(" %.1f %% of them meet %s.", 100*hit.Share, o.name)
	}
	return words
}

// hit returns how many losses meet the site.
func (o *site) hit(cloud footprint.Cloud) (footprint.Hit, error) {
	if len(o.area) > 0 {
		return cloud.AreaHit(o.area, footprint.AnnexF())
	}
	return cloud.LineHit(o.line, roadHalfWidth, footprint.AnnexF())
}
