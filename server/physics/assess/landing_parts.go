package assess

import (
	"math"

	"pitgate/server/physics/drag"
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/landing"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/motion"
	"pitgate/server/physics/planform"
)

func tangent(angle float64) float64 { return elementary.Tan(angle) }

// landingFlaps lists the flaps and flaperons at their landing setting.
func (p *pass) landingFlaps() []lift.Setting {
	var settings []lift.Setting
	for i, effect := range p.whole.lattice.Controls {
		if control, ok := p.flap(effect.Surface, effect.Name); ok && control.LandingSetting != 0 {
			settings = append(settings, lift.Setting{Index: i, Angle: control.LandingSetting})
		}
	}
	return settings
}

// flap returns a flap or flaperon by surface and name.
func (p *pass) flap(surface, name string) (planform.Control, bool) {
	for i := range p.whole.surfaces {
		if p.whole.surfaces[i].Name != surface {
			continue
		}
		for _, c := range p.whole.surfaces[i].Controls {
			if c.Name == name && (c.Role == planform.ControlFlap || c.Role == planform.ControlFlaperon) {
				return c, true
			}
		}
	}
	return planform.Control{}, false
}

// flapDrag returns the profile drag of the flaps as set for landing, on the wing area.
func (p *pass) flapDrag() float64 {
	sum := 0.0
	for _, s := range p.landingFlaps() {
		effect := &p.whole.lattice.Controls[s.Index]
		control, _ := p.flap(effect.Surface, effect.Name)
		sum += drag.ControlProfile(control.ChordRatio, p.flappedArea(effect.Surface, control)/p.wing.area, s.Angle)
	}
	return sum
}

// flappedArea returns the area of a surface along the span of a control, both sides, m2.
func (p *pass) flappedArea(surface string, control planform.Control) float64 {
	tip, area := 0.0, 0.0
	for i := range p.whole.lattice.Strips {
		if strip := &p.whole.lattice.Strips[i]; strip.Surface == surface {
			tip = max(tip, strip.Y+float64(strip.Width/2))
		}
	}
	for i := range p.whole.lattice.Strips {
		strip := &p.whole.lattice.Strips[i]
		if share := strip.Y / tip; strip.Surface == surface && share >= control.Inner && share <= control.Outer {
			area += float64(2 * strip.Chord * strip.Width)
		}
	}
	return area
}

// underApproach returns the obstacles before the threshold in a corridor that widens, and keeps which they are.
func (p *pass) underApproach(n *need) []landing.Obstacle {
	return p.landingObstacles(p.landing.place.heading+math.Pi, -1, n)
}

// landingObstacles returns the obstacles in a corridor from the threshold on a heading (rad); along is 1 for distances along the landing
// and -1 for a corridor that runs against it.
func (p *pass) landingObstacles(heading, along float64, n *need) []landing.Obstacle {
	l := &p.landing
	corridor := field.Corridor{
		Origin: l.place.threshold, Heading: heading, HalfWidth: float64(p.wing.span/2) + corridorSpare, Spread: corridorWidening,
	}
	var found []landing.Obstacle
	var which []int
	for i := range p.in.Field.Obstacles {
		obstacle := &p.in.Field.Obstacles[i]
		crossing, crosses := corridor.Cross(shape(obstacle))
		if !crosses || crossing.Near > corridorReach {
			continue
		}
		name, moved := at("field.obstacles", i), 0.0
		height := n.quantity(name+".heightMeters", obstacle.HeightMeters)
		if obstacle.PositionSpreadMeters != nil {
			moved = p.offset(name+".positionSpreadMeters", *obstacle.PositionSpreadMeters)
		}
		found = append(found, landing.Obstacle{
			Near: along * (crossing.Near + moved), Far: along * (crossing.Far + moved), Top: height + base(obstacle) - l.place.ground,
		})
		which = append(which, i)
	}
	if p.base() && along < 0 {
		p.drawing.under = which
	}
	return found
}

func (p *pass) tellApproach() {
	l := &p.landing
	p.tell("lift.maximum_coefficient_landing", l.lift.Coefficient)
	p.tell("stall.speed_landing", l.stall)
	p.tell("landing.approach_speed", l.approach, p.limitPath(approachFigure)...)
}

// limitPath returns the path of a limit that the document gives.
func (p *pass) limitPath(f figure) []string {
	if given := p.optionalLimit(f); given.set {
		return []string{given.path}
	}
	return nil
}

// landedWords name how the model comes to rest.
var landedWords = pairings[bool, string]{{false, "on wheels"}, {true, "on its belly or skid"}}

func (p *pass) tellLanding(read []string) {
	l := &p.landing
	if !p.tells() {
		return
	}
	p.tell("landing.available", l.place.length, l.place.path)
	p.tell("landing.heading", math.Mod(degrees(l.place.heading)+360, 360), l.place.path)
	p.tell("landing.headwind", l.air.Headwind)
	p.tell("drag.zero_lift_landing", l.model.CD0)
	p.tellText("landing.conditions", landedWords.of(l.plan.Belly), read...)
	if l.broken() != "" {
		return
	}
	r := &l.result
	p.tell("landing.approach_angle", degrees(r.Angle), p.given(p.landingPlan().ApproachAngleDegrees, "launchPlan.landing.approachAngleDegrees")...)
	p.tell("landing.air_distance", r.Touchdown.Distance-r.Screen.Distance)
	p.tell("landing.touchdown_speed", r.Touchdown.Airspeed)
	p.tell("landing.roll", r.Run)
}

// given returns the path of a plain number that the document gives.
func (p *pass) given(value *float64, path string) []string {
	if value == nil {
		return nil
	}
	return []string{path}
}

// drawnApproach is how far before the threshold the approach is drawn at least, m, and flarePieces how many pieces its flare has.
const (
	drawnApproach = 150.0
	flarePieces   = 12
)

// drawLanding adds the profile and the plan of the landing.
func (p *pass) drawLanding() {
	l := &p.landing
	if p.quiet || len(l.missing) > 0 || l.broken() != "" {
		return
	}
	shift, _, _ := p.aimShift()
	points := l.result.Path(min(-drawnApproach, l.result.Screen.Distance), flarePieces)
	if !p.base() {
		p.drawn.descent = descentAt(points, shift, p.drawing.landed)
		return
	}
	ahead := field.Ahead(l.place.heading)
	profile, plan := ReportPath{ID: "landing.profile"}, ReportPath{ID: "landing.plan"}
	for _, point := range points {
		x := point.Distance + shift
		p.drawing.landed = append(p.drawing.landed, x)
		p.drawn.descent = append(p.drawn.descent, point.Height)
		spot := l.place.threshold.Plus(ahead.Times(x))
		drawn := PathPoint{XMeters: x, ZMeters: point.Height + l.place.ground, AirspeedMetersPerSecond: point.Airspeed, TimeSeconds: point.Time}
		profile.Points = append(profile.Points, drawn)
		drawn.XMeters, drawn.YMeters = spot.X, spot.Y
		plan.Points = append(plan.Points, drawn)
	}
	p.lines = append(p.lines, profile, plan)
}

// descentAt reads the heights of a landing path, moved along by a shift, at distances from the threshold.
func descentAt(path []landing.Point, shift float64, distances []float64) []float64 {
	moved := make([]motion.PathPoint, len(path))
	for i, point := range path {
		moved[i] = motion.PathPoint{Distance: point.Distance + shift, Height: point.Height}
	}
	return heightsAt(moved, distances)
}
