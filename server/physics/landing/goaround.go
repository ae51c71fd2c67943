package landing

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// GoAround is how a landing is broken off.
type GoAround struct {
	Reaction float64 // from the decision until the throttle opens, s
	MaxLoad  float64 // greatest load factor of the pull-up; zero means 1.3
	MaxAngle float64 // steepest climb flown, rad; zero means 20 degrees
	Distance float64 // followed beyond the threshold at least, m
	Margin   float64 // height to keep over the ground and over each obstacle, m
	// Tolerance of the integration, relative and in m and m/s; zero means 1e-8.
	Tolerance float64
	// Obstacles beyond and beside the threshold that the climb must clear; their spreads count as in Plan.
	Obstacles []Obstacle
	// Room holds the steps while the climb is followed, and is used again by the next; nil means room of its own.
	Room *motion.Room
}

// Climbout is the answer of BreakOff and LeastGoAround.
type Climbout struct {
	Start      Point   // of the decision
	Open       Point   // where the throttle opens
	Lowest     Point   // of the path
	HeightLost float64 // from the decision to the lowest point, m
	Length     float64 // over the ground from the decision to the lowest point, m
	Regained   Point   // where the height of the decision is reached again; zero when not
	Climbs     bool    // false when the thrust at hand does not stop the descent
	// Clearance is the least height over the ground and the obstacles less the margin, m: at or above zero the go-around clears.
	Clearance float64
}

const (
	defaultMaxLoad  = 1.3
	defaultMaxAngle = 20 * math.Pi / 180
	pitchTime       = 0.5   // in which the path turns to the climb wanted, s
	farthestClimb   = 400.0 // followed beyond the distance asked for, m
)

// Check returns an error that names the first impossible value.
func (g GoAround) Check() error {
	err := firstOutside([]limited{
		{"go-around reaction", g.Reaction, 0, 30}, {"go-around load", g.MaxLoad, 0, 20}, {"go-around angle", g.MaxAngle, 0, 1.5},
		{"go-around distance", g.Distance, -1e4, 1e4}, {"go-around margin", g.Margin, 0, 1000},
		{"go-around tolerance", g.Tolerance, 0, 1e-3},
	})
	for i, o := range g.Obstacles {
		if err == nil {
			err = o.check(i)
		}
	}
	return err
}

// BreakOff computes the go-around decided at a height of the approach (m over the threshold). The aircraft's Thrust gives the thrust at an airspeed and a
// time since the throttle opened, its spool-up from idle included. It is found also when the path would run into the ground: Clearance is then negative.
//
// Valid for: steady descent until the throttle opens; then the pilot holds the climb the thrust allows at the speed at hand.
func BreakOff(a motion.Aircraft, air motion.Conditions, plan Plan, g GoAround, height float64) (Climbout, error) {
	f, err := newFlight(&a, &air, plan)
	if err != nil {
		return Climbout{}, err
	}
	if err := g.Check(); err != nil {
		return Climbout{}, err
	}
	if err := firstOutside([]limited{{"go-around height", height, 0, 1e4}}); err != nil {
		return Climbout{}, err
	}
	return f.goAround(g.withDefaults(), height)
}

// withDefaults fills in what is zero.
func (g GoAround) withDefaults() GoAround {
	g.MaxLoad = orElse(g.MaxLoad, defaultMaxLoad)
	g.MaxAngle = orElse(g.MaxAngle, defaultMaxAngle)
	return g
}

// Events of a go-around.
const (
	goLowest = iota
	goRegained
	goDone
	goDeep
)

// goAround follows the slope for the reaction time, then the pull-up.
func (f *flight) goAround(g GoAround, height float64) (Climbout, error) {
	c := Climbout{}
	if !f.slope.Descends {
		return Climbout{Climbs: true}, nil
	}
	c.Start = f.onSlope(height)
	c.Open = f.onSlope(height - float64(c.Start.Sink*g.Reaction))
	c.Open.Time = g.Reaction
	solution, err := f.climb(g, c.Open, height)
	if err != nil {
		return c, fmt.Errorf("go-around load: cannot be followed: %w", err)
	}
	f.read(&c, &solution)
	c.Clearance = f.leastClearance(g, &c, &solution)
	return c, nil
}

// climb integrates the pull-up from where the throttle opens.
func (f *flight) climb(g GoAround, open Point, height float64) (motion.Solution, error) {
	rate := func(t float64, s motion.State) motion.State {
		m := f.through(s)
		thrust := f.power(m.speed, t-g.Reaction)
		return f.accelerate(s, m, f.pullUp(g, m, thrust), thrust)
	}
	climber := motion.Integrator{Tolerance: orElse(g.Tolerance, solver.Tolerance), MaxSteps: mostSteps, Places: places, Room: g.Room}
	return climber.Solve(rate, g.Reaction, open.state(), g.Reaction+longestPart, f.goEvents(g, height)...)
}

// power returns the thrust at an airspeed and a time since the throttle opened, never below idle.
func (f *flight) power(speed, time float64) float64 {
	idle := f.plan.idle(speed)
	if f.model.Thrust == nil {
		return idle
	}
	return max(idle, f.model.Thrust(max(speed, 0), max(time, 0)))
}

// pullUp returns the load factor the pilot asks for.
//
//	n = min(nmax, cos(g) + V (gt - g) / (g0 tau)),  sin(gt) = (T - D)/W
//
// where g is the path angle through the air, gt the steady climb of the thrust at hand, tau the time in which the path turns to it.
// Valid for: a pilot who holds the speed and climbs with what the thrust gives. Source: equation of motion across the path.
func (f *flight) pullUp(g GoAround, m through, thrust float64) float64 {
	q := max(f.pressureArea(m.speed), 1e-9)
	drag := float64(q * f.model.DragCoefficient(min(f.weight/q, f.model.CLMax), m.clearance+f.model.WingHeight))
	sine := min(max((thrust-drag)/f.weight, -1), 1)
	wanted := min(g.MaxAngle, elementary.Atan2(sine, math.Sqrt(1-float64(sine*sine))))
	angle := elementary.Atan2(m.sine, m.cosine)
	return min(g.MaxLoad, m.cosine+float64(m.speed*(wanted-angle))/(f.gravity()*pitchTime))
}

// goEvents are the events of a go-around from a height.
func (f *flight) goEvents(g GoAround, height float64) []motion.Event {
	end := max(g.Distance, 0)
	for _, o := range g.Obstacles {
		end = max(end, o.Near, o.Far)
	}
	done := func(_ float64, s motion.State) float64 {
		beyond := s[atDistance] - end
		return max(min(beyond, s[atHeight]-height), beyond-farthestClimb)
	}
	return []motion.Event{
		goLowest:   {Value: func(_ float64, s motion.State) float64 { return s[atUpward] }, Direction: motion.Rising},
		goRegained: {Value: func(_ float64, s motion.State) float64 { return s[atHeight] - height }, Direction: motion.Rising},
		goDone:     {Value: done, Direction: motion.Rising, Terminal: true},
		goDeep:     {Value: func(_ float64, s motion.State) float64 { return s[atHeight] + 1000 }, Direction: motion.Falling, Terminal: true},
	}
}

// read fills in the lowest point and what follows from it.
func (f *flight) read(c *Climbout, solution *motion.Solution) {
	lowest, found := solution.First(goLowest)
	c.Climbs = found
	if !found {
		t, s := solution.End()
		lowest = motion.Crossing{Time: t, State: s}
	}
	c.Lowest = f.pointAt(lowest.Time, lowest.State)
	c.HeightLost = c.Start.Height - c.Lowest.Height
	c.Length = c.Lowest.Distance - c.Start.Distance
	if back, found := solution.First(goRegained); found {
		c.Regained = f.pointAt(back.Time, back.State)
	}
}

// looksAlong is how many places of the path are held against the ground.
const looksAlong = 200

// leastClearance returns the least height over ground and obstacles, less the margin.
func (f *flight) leastClearance(g GoAround, c *Climbout, solution *motion.Solution) float64 {
	least := min(c.Open.Height-f.ground(c.Open.Distance), c.Lowest.Height-f.ground(c.Lowest.Distance))
	end, last := solution.End()
	before, over := c.Open.state(), solution.LastUnder(atHeight, least+f.highest(g, c.Open.Distance, last[atDistance]))
	was := g.Reaction
	for i := range looksAlong + 1 {
		t := g.Reaction + float64((end-g.Reaction)*(float64(i)/looksAlong))
		if was > over {
			break
		}
		was = t
		s := solution.At(t)
		least = min(least, s[atHeight]-f.ground(s[atDistance]))
		for _, o := range g.Obstacles {
			least = min(least, f.over(o, before, s))
		}
		before = s
	}
	return least - g.Margin
}

// highest returns the most that ground between two distances and obstacles come to, m.
func (f *flight) highest(g GoAround, from, to float64) float64 {
	most := max(f.ground(from), f.ground(to))
	for _, o := range g.Obstacles {
		most = max(most, o.Top+float64(f.plan.Coverage*o.TopSpread))
	}
	return most
}

// over returns the height of a short piece of path over an obstacle, less its spread; without end where the obstacle is elsewhere.
func (f *flight) over(o Obstacle, from, to motion.State) float64 {
	near, far := min(o.Near, o.Far)-o.PlaceSpread, max(o.Near, o.Far)+o.PlaceSpread
	if to[atDistance] < near || from[atDistance] > far {
		return math.Inf(1)
	}
	return min(from[atHeight], to[atHeight]) - o.Top - float64(f.plan.Coverage*o.TopSpread)
}

// LeastGoAround returns the go-around from the least height of the approach that clears ground and obstacles by the margin, and false when none up to 200 m
// does. Its Start.Height is the height.
func LeastGoAround(a motion.Aircraft, air motion.Conditions, plan Plan, g GoAround) (Climbout, bool, error) {
	f, err := newFlight(&a, &air, plan)
	if err != nil {
		return Climbout{}, false, err
	}
	if err := g.Check(); err != nil {
		return Climbout{}, false, err
	}
	g = g.withDefaults()
	const highest, width = 200.0, 0.01
	best, err := f.goAround(g, highest)
	if err != nil || best.Clearance < 0 || !best.Climbs {
		return Climbout{}, false, err
	}
	low, high := 0.0, highest
	next := highest - best.Clearance + width/2
	for range 60 {
		if !(next > low && next < high) {
			next = low + float64((high-low)/2)
		}
		c, err := f.goAround(g, next)
		switch {
		case err != nil:
			return Climbout{}, false, err
		case c.Climbs && c.Clearance >= 0:
			high, best = next, c
		default:
			low = next
		}
		if high-low <= width || (high == next && c.Clearance <= width) {
			break
		}
		next -= c.Clearance - width/2
	}
	return best, true, nil
}
