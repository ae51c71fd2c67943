package assess

import (
	"pitgate/server/physics/field"
	"pitgate/server/physics/reach"
)

const (
	// spreadReaction is how far the pilot's reaction time may be off, relative (judgement, no source).
	spreadReaction = 0.25
	// glideRollRate is how fast the model rolls into a turn without thrust, rad/s, and speedShare the share of its speed beyond that of the
	// approach that it turns into height (both judgement, no source).
	glideRollRate, speedShare = 1.0, 0.5
)

// engineOutSection is what is known of a flight whose engine stops.
type engineOutSection struct {
	areas []field.Polygon
	names []string // of the areas
	below answer   // of what lies below
}

// answerEngineOut answers for the share of launch and circuit from which a landing area is reached, and for the ground below.
func (p *pass) answerEngineOut() {
	n := p.need()
	n.lack(p.launch.missing...)
	n.lack(p.landing.missing...)
	plan := p.launchPlan().Circuit
	switch {
	case plan == nil:
		n.lack("launchPlan.circuit")
	case plan.Hand == "":
		n.lack("launchPlan.circuit.hand")
	default:
		n.quantity("launchPlan.circuit.heightMeters", plan.HeightMeters)
	}
	reached := answer{id: "engine_out.reach", missing: n.missing, limit: p.limit(reachFigure)}
	below := answer{id: "engine_out.footprint", missing: n.missing, limit: p.limit(comeDownFigure)}
	if n.met() {
		p.reactionMoved()
		ways := p.remember("engine_out.reach", p.bracket(glideMovers), p.engineOut)
		ground := p.remember("engine_out.footprint", p.bracket(glideMovers), func() answer { return p.glide.below })
		ways.limit, ground.limit = reached.limit, below.limit
		reached, below = ways, ground
	}
	p.conclude(reached)
	p.conclude(below)
}

// reactionMoved returns the pilot's reaction time as this pass sees it, s.
func (p *pass) reactionMoved() float64 {
	return max(0, p.reaction()*p.factor(reactionMethod, spreadReaction))
}

// engineOut surveys the points of launch and circuit.
func (p *pass) engineOut() answer {
	out := answer{id: "engine_out.reach"}
	p.glide.below = answer{id: "engine_out.footprint"}
	never := p.noGlide()
	var m *reach.Map
	if never == "" {
		var err error
		if m, err = p.reachMap(); err != nil {
			never = "The glide without thrust cannot be computed: " + err.Error() + "."
		}
	}
	points := p.stations()
	if never == "" && len(points) == 0 {
		never = "The launch reaches no height from which a glide starts."
	}
	if never != "" {
		out.never, p.glide.below.never = never, never
		out.from, p.glide.below.from = neverFrom, neverFrom
		return out
	}
	looks := m.Outlooks(points)
	out.value = reachRatio(looks)
	p.footprint(m, points, looks)
	if p.tells() {
		survey := m.Survey(points)
		out.note = p.reachNote(points, &survey)
		p.tellReach(m, &survey)
		p.drawReach(m, points, &survey)
		p.drawTurnBack(m, points)
	}
	return out
}

// neverFrom is what a launch comes from that is followed by no glide.
var neverFrom = []string{"launch.conditions"}

// noGlide says why there is nothing to survey; empty when there is.
func (p *pass) noGlide() string {
	switch {
	case !p.launch.flown || p.launch.result.NeverLiftsOff:
		return p.neverWords()
	case p.landing.broken() != "":
		return p.landing.broken()
	}
	return ""
}

// glideModel is the model without thrust, wheels down.
func (p *pass) glideModel() reach.Model {
	r := &p.landing.result
	still := r.Touchdown.Airspeed / max(r.Touchdown.GroundSpeed, float64(0.2*r.Touchdown.Airspeed))
	return reach.Model{
		Mass: p.mass.takeoff, Area: p.wing.area, CD0: p.drag.launch, InducedFactor: p.drag.induced, CLMax: p.wing.clean.Coefficient,
		Density: p.air.state.Density, BankLimit: min(p.stall.bank, 1.3), Reaction: p.reactionMoved(), RollRate: glideRollRate, SpeedShare: speedShare,
		LandingRun: float64(r.Run * float64(still*still)), HalfWidth: float64(p.wing.span/2) + 1, Clearance: 1,
	}
}

// reachMap prepares the model without thrust in the wind over the field.
func (p *pass) reachMap() (*reach.Map, error) {
	p.engineOutAreas()
	wind := reach.ProfileWind(p.air.wind, p.air.from, p.air.profile)
	return reach.New(p.glideModel(), wind, p.glide.areas, p.reachObstacles())
}

// engineOutAreas gathers landing areas, and strips as rectangles.
func (p *pass) engineOutAreas() {
	g := &p.glide
	g.areas, g.names = nil, nil
	for i := range p.in.Field.LandingAreas {
		if corners := normalOutline(p.in.Field.LandingAreas[i].Area); len(corners) > 0 {
			g.areas, g.names = append(g.areas, corners), append(g.names, p.in.Field.LandingAreas[i].Name)
		}
	}
	for i := range p.in.Field.Strips {
		strip := &p.in.Field.Strips[i]
		if strip.Start == nil || strip.End == nil {
			continue
		}
		from, to := flat(strip.Start), flat(strip.End)
		side := field.Right(from.Heading(to)).Times(max(valueOr(strip.WidthMeters, narrowStrip), 1) / 2)
		corners, _, err := field.Polygon{from.Plus(side), to.Plus(side), to.Minus(side), from.Minus(side)}.Normal()
		if err == nil {
			g.areas, g.names = append(g.areas, corners), append(g.names, strip.Name)
		}
	}
}

// narrowStrip is the width of a strip that does not give it, m (judgement, no source).
const narrowStrip = 10.0

// reachObstacles returns the obstacles of the field as high as they stand over the landing place.
func (p *pass) reachObstacles() []field.Obstacle {
	var list []field.Obstacle
	for i := range p.in.Field.Obstacles {
		obstacle := &p.in.Field.Obstacles[i]
		if len(obstacle.Points) == 0 {
			continue
		}
		o := shape(obstacle)
		o.Height = valueOr(obstacle.HeightMeters, 0) + base(obstacle) - p.landing.place.ground
		list = append(list, o)
	}
	return list
}

// reachRatio returns the share of points from which an area is reached.
func reachRatio(looks []reach.Outlook) float64 {
	reached := 0
	for i := range looks {
		if looks[i].Reached {
			reached++
		}
	}
	return float64(reached) / float64(len(looks))
}
