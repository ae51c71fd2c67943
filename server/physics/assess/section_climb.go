package assess

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

const (
	// corridorWidening is the growth of the corridor's half width over distance on each side.
	corridorWidening = 0.10
	// corridorSpare is added to half the span at the start of the corridor, m.
	corridorSpare = 3.0
	// corridorReach is how far ahead obstacles count, m.
	corridorReach = 1500.0
)

// over is an obstacle that stands in the departure corridor.
type over struct {
	index int
	near  float64 // m along the heading
	far   float64
	top   float64 // over the ground at the start of the launch, m
	moved float64 // how far this pass moves it along the heading, m
}

// corridor returns the ground under the departure, drifting with the cross wind.
func (p *pass) corridor() field.Corridor {
	speed := max(1, float64(1.3*p.stall.takeoff)-p.launch.head)
	return field.Corridor{
		Origin: p.launch.origin, Heading: p.launch.heading, HalfWidth: float64(p.wing.span/2) + corridorSpare,
		Spread: corridorWidening, Drift: -p.launch.cross / speed,
	}
}

// obstacles returns the obstacles in the corridor, moved by the accuracy of their survey where this pass asks for it.
func (p *pass) obstacles(n *need) []over {
	if p.in.Field == nil {
		return nil
	}
	corridor := p.corridor()
	var found []over
	for i := range p.in.Field.Obstacles {
		obstacle := &p.in.Field.Obstacles[i]
		crossing, crosses := corridor.Cross(shape(obstacle))
		if !crosses || crossing.Near > corridorReach {
			continue
		}
		name := at("field.obstacles", i)
		height := n.quantity(name+".heightMeters", obstacle.HeightMeters)
		moved := 0.0
		if obstacle.PositionSpreadMeters != nil {
			moved = p.offset(name+".positionSpreadMeters", *obstacle.PositionSpreadMeters)
		}
		found = append(found, over{
			index: i, near: crossing.Near + moved, far: crossing.Far + moved, top: height + base(obstacle) - p.launch.ground, moved: moved,
		})
	}
	return found
}

// shape returns an obstacle's outline on the field's plane.
func shape(o *Obstacle) field.Obstacle {
	out := field.Obstacle{Closed: yes(o.Closed)}
	for i := range o.Points {
		out.Points = append(out.Points, flat(&o.Points[i]))
	}
	return out
}

// base returns the height of the highest ground that an obstacle stands on, above the datum, m.
func base(o *Obstacle) float64 {
	highest := math.Inf(-1)
	for i := range o.Points {
		highest = max(highest, orElse(o.Points[i].ZMeters, 0))
	}
	return highest
}

// farthestObstacle returns how far the launch has to be followed, m.
func (p *pass) farthestObstacle() float64 {
	ignored := p.need()
	farthest := 0.0
	for _, o := range p.obstacles(&ignored) {
		farthest = max(farthest, o.far+5)
	}
	return farthest
}

// answerClimb answers for the clearance over the worst obstacle.
func (p *pass) answerClimb() {
	n := p.need()
	n.lack(p.launch.missing...)
	clearance := answer{id: "climb.clearance"}
	clearance.limit = p.limit(clearanceFigure)
	var crossed []over
	if n.met() && p.launch.flown {
		crossed = p.obstacles(&n)
	}
	clearance.missing = n.missing
	switch {
	case !n.met() || !p.launch.flown:
	case p.launch.result.NeverLiftsOff:
		clearance.never = p.neverWords()
	case len(crossed) == 0:
		clearance.none = true
		clearance.note = "The field describes no obstacle in the departure corridor."
	default:
		p.worstClearance(crossed, &clearance)
	}
	clearance.from = p.toldUnder("climb.clearance.")
	p.conclude(clearance)
}

func (p *pass) worstClearance(crossed []over, clearance *answer) {
	least := math.Inf(1)
	for k, o := range crossed {
		gap, where := p.room(o)
		name := p.in.Field.Obstacles[o.index].Name
		p.tellClearance(k, o, gap)
		if gap < least {
			least = gap
			clearance.value = gap
			clearance.note = say("%s decides: its top stands %.1f m over the start, %.0f m along; the path passes %.1f m over it.",
				name, o.top, where, gap)
		}
	}
	if p.launch.result.TouchesGround {
		clearance.note += p.inWords(" The model touches the ground %.0f m from the start.", p.launch.result.ContactAt)
	}
}

// tellClearance tells how high the path passes over one obstacle.
func (p *pass) tellClearance(k int, o over, gap float64) {
	if !p.tells() {
		return
	}
	id, path := numbered("climb.clearance.", k+1), at("field.obstacles", o.index)
	p.tell(id, gap, path+".heightMeters", path+".positionSpreadMeters", path+".points", path+".sagMeters", "launchPlan.circuit.heightMeters")
	p.tellText(id+".name", p.in.Field.Obstacles[o.index].Name, path+".name")
}

// gap returns the least height over an obstacle and where, from the path at its near and far end.
func (p *pass) gap(o over) (gap, where float64) {
	near, far := p.pathHeight(o.near)-o.top, p.pathHeight(o.far)-o.top
	if far < near {
		return far, o.far
	}
	return near, o.near
}

// pathHeight returns the height of the path over the start at a distance, no higher than the circuit is planned.
func (p *pass) pathHeight(distance float64) float64 {
	height := p.climbHeight(distance)
	if ceiling, ok := p.read("launchPlan.circuit.heightMeters", p.circuitPlan().HeightMeters); ok {
		return min(height, ceiling)
	}
	return height
}

// climbHeight returns the height of the climb over the start at a distance: as flown, on the ground beyond a contact, and on the line
// of the last climb beyond the end.
func (p *pass) climbHeight(distance float64) float64 {
	r := &p.launch.result
	if height, reached := r.HeightAt(distance); reached {
		return height
	}
	end := r.End()
	if r.TouchesGround || distance <= end.Distance {
		return min(end.Height, 0)
	}
	return end.Height + float64((distance-end.Distance)*elementary.Tan(min(end.ClimbAngle, motion.DefaultMaxClimbAngle)))
}

// along returns the place on the field's plane at a distance and drift of the launch.
func (p *pass) along(distance, drift float64) field.Point {
	ahead := field.Ahead(p.launch.heading).Times(distance)
	return p.launch.origin.Plus(ahead).Plus(field.Right(p.launch.heading).Times(drift))
}

func numbered(prefix string, i int) string { return say("%s%d", prefix, i) }
