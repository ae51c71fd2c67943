package motion

import (
	"math"

	"pitgate/server/physics/field"
)

// Wish is a circuit to be laid into a flying area.
type Wish struct {
	Circuit          // heading, hand, airspeed, bank, reaction and wind as wished; Leg is the leg wished for, Middle where its middle should lie
	Margin   float64 // distance to keep to the edge of the area, m
	LeastLeg float64 // shortest leg of use, m
	Along    float64 // how far the middle may be moved along the heading to either side, m
}

// Plan is a circuit laid into a flying area, as far as it can be.
type Plan struct {
	Circuit  Circuit     // moved along its heading, with the longest leg up to the one wished for; the shortest of use where none fits
	Fits     bool        // it keeps the margin
	Distance float64     // its least distance to the area's edge, m, negative when outside
	At       field.Point // the point that decides
	Moved    float64     // how far the middle was moved along the heading, m

	LargestSpeed float64 // greatest airspeed up to the one wished for with which the shortest leg fits, m/s; zero when none does
	// StrongestWind is the greatest wind from the direction given with which the shortest leg fits, m/s; a calm is taken to come from ahead. Negative
	// when it does not even fit in a calm.
	StrongestWind float64
	LeastBank     float64 // least bank from that wished for to 75 degrees with which the shortest leg fits, rad; zero when none does
}

const (
	// movesLooked is the number of places of the middle looked at.
	movesLooked = 25
	// steepestBank is the steepest bank looked for, rad.
	steepestBank = 75 * math.Pi / 180
	windWidth    = 1e-3 // width to which the strongest wind is found, m/s
)

// Check returns an error that names the first impossible value.
func (w Wish) Check() error {
	if err := w.Circuit.Check(); err != nil {
		return err
	}
	return firstOutside([]limited{
		{"circuit margin", w.Margin, -1e4, 1e4},
		{"circuit shortest leg", w.LeastLeg, 0, 1e5},
		{"circuit middle moved along", w.Along, 0, 1e4},
	})
}

// Lay lays the circuit into a flying area: the middle is moved along the heading to where the leg wished for keeps most room, or else the shortest of use,
// and the leg is as long as fits there. Where it does not fit, the plan says the largest speed, the strongest wind and the least bank that would. For the
// other hand lay the wish with LeftHand changed.
//
// Valid for: as Circuit.Path; the room falls with speed and wind, so their limits are bracketed roots. Errors name what is impossible in wish or area.
func (w Wish) Lay(area field.Polygon) (Plan, error) {
	if err := w.Check(); err != nil {
		return Plan{}, err
	}
	if err := area.Check(); err != nil {
		return Plan{}, err
	}
	w.LeastLeg = min(w.LeastLeg, w.Leg)
	plan := w.place(area, w.Leg)
	if !plan.Fits && !w.lengthen(area, &plan) {
		plan = w.place(area, w.LeastLeg)
		if plan.Fits {
			w.lengthen(area, &plan)
		}
	}
	w.limits(area, &plan)
	return plan, nil
}

// place finds the best place of the middle for a leg.
func (w Wish) place(area field.Polygon, leg float64) Plan {
	at := func(move float64) (Circuit, field.Clearance) {
		c := w.Circuit
		c.Leg = leg
		c.Middle = w.Middle.Plus(field.Ahead(w.Heading).Times(move))
		return c, c.clearance(area)
	}
	best, room := 0.0, math.Inf(-1)
	look := func(move float64) {
		if _, clearance := at(move); clearance.Distance > room {
			best, room = move, clearance.Distance
		}
	}
	look(0)
	if w.Along > 0 {
		for i := range movesLooked {
			look(float64(w.Along * (float64(2*i)/(movesLooked-1) - 1)))
		}
		for step := w.Along / movesLooked; step > 0.01; step /= 2 {
			middle := best
			look(max(-w.Along, middle-step))
			look(min(w.Along, middle+step))
		}
	}
	c, clearance := at(best)
	return Plan{Circuit: c, Fits: clearance.Distance >= w.Margin, Distance: clearance.Distance, At: clearance.At, Moved: best}
}

// lengthen gives a plan the longest leg up to the one wished for that fits where it lies, and reports whether that is one of use.
func (w Wish) lengthen(area field.Polygon, plan *Plan) bool {
	leg, fits := plan.Circuit.LongestLeg(area, w.Margin)
	if !fits || leg < w.LeastLeg {
		return false
	}
	plan.Circuit.Leg = min(leg, w.Leg)
	clearance := plan.Circuit.clearance(area)
	plan.Distance, plan.At = clearance.Distance, clearance.At
	plan.Fits = clearance.Distance >= w.Margin
	return plan.Fits
}

// limits fills in the largest speed, the strongest wind and the least bank with which the shortest leg fits where the plan lies.
func (w Wish) limits(area field.Polygon, plan *Plan) {
	c := plan.Circuit
	c.Leg = w.LeastLeg
	fits := c.clearance(area).Distance >= w.Margin
	plan.StrongestWind = c.strongestWind(area, w.Margin)
	if fits {
		plan.LargestSpeed, plan.LeastBank = c.Airspeed, c.Bank
		return
	}
	plan.LargestSpeed = c.largestSpeed(area, w.Margin)
	plan.LeastBank = c.leastBank(area, w.Margin)
}

// strongestWind returns the greatest wind from the circuit's direction with which it keeps a distance to the edge, up to 1 m/s below the airspeed.
func (c Circuit) strongestWind(area field.Polygon, distance float64) float64 {
	head, cross := 1.0, 0.0
	if speed := c.wind(); speed > 0 {
		head, cross = c.Headwind/speed, c.Crosswind/speed
	}
	surplus := func(wind float64) float64 {
		blown := c
		blown.Headwind, blown.Crosswind = float64(head*wind), float64(cross*wind)
		return blown.clearance(area).Distance - distance
	}
	most := max(0, c.Airspeed-1)
	switch {
	case !(surplus(0) >= 0):
		return -1
	case surplus(most) >= 0:
		return most
	}
	return bisectTo(surplus, 0, most, windWidth)
}

// leastBank returns the least bank from the circuit's to the steepest looked for with which it keeps a distance to the edge; zero when none does.
func (c Circuit) leastBank(area field.Polygon, distance float64) float64 {
	surplus := func(bank float64) float64 {
		steeper := c
		steeper.Bank = bank
		return steeper.clearance(area).Distance - distance
	}
	if !(c.Bank < steepestBank) || !(surplus(steepestBank) >= 0) {
		return 0
	}
	low, high := c.Bank, steepestBank
	for high-low > 1e-6 {
		mid := low + float64((high-low)/2)
		if surplus(mid) >= 0 {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}
