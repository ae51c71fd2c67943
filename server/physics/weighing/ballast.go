package weighing

import (
	"cmp"
	"fmt"
	"math"

	"pitgate/server/physics/order"
)

// placesList is what the document calls the places for ballast.
const placesList = "model.mass.ballastPlaces"

// Place is where ballast may be fixed.
type Place struct {
	Name string
	// X of the place and, where known, Z in m. Without X there is no answer for it.
	X, Z *float64
	// Maximum is the most that it holds, kg; nil for no limit.
	Maximum *float64
}

// Search is what Correct needs to know.
type Search struct {
	Window Window
	Travel Travel
	Places []Place
	// Items of the model; only those that are Movable and have X are considered.
	Items []Item
	// MaximumMass is the most that the model may weigh with full tanks, kg; nil for no limit.
	MaximumMass *float64
	// Foremost and Aftmost are the ends of where an item may be put, m; nil for no limit.
	Foremost, Aftmost *float64
	// Reserve is how far inside the window the corrected balance point must stay at either end, m: its own spread, so that it holds across the
	// band. More than the window has room for counts as none.
	Reserve float64
}

// Option is one way to bring the balance point into its window for the whole burn.
type Option struct {
	// Index into Search.Places for ballast, into Search.Items for a move.
	Index int
	Name  string
	// Possible is false when this place or item cannot do it; Mass, To, By and the margins are then zero.
	Possible bool
	// Mass of the ballast, or of the item that is moved, kg.
	Mass float64
	// X of the ballast, or where the item lies now, m.
	X float64
	// To is where the item must go and By how far aft, m; for ballast X and zero.
	To, By float64
	// MarginFull, MarginEmpty and the least and the most along the burn: static margins with it, over the mean chord, recomputed from the masses.
	MarginFull, MarginEmpty, MarginLeast, MarginMost float64
	// Z is the height of the balance point with full tanks with it, m, where the travel and the place give heights.
	Z Estimate
	// Note says why it works or does not, in a sentence.
	Note string
}

// Correction is what brings the balance point into its window.
type Correction struct {
	// Needed is false when the whole burn lies in the window already; Ballast and Moves are then empty.
	Needed bool
	// Forward and Aft are the limits of x, m; Reserve is how far inside them the options stay.
	Forward, Aft, Reserve float64
	// TooFarForward and TooFarAft are by how much the travel leaves the window at either end, m; zero where it does not.
	TooFarForward, TooFarAft float64
	// Ballast, least mass first, then what is not possible in the order given.
	Ballast []Option
	// Moves of movable items, shortest way first, then what is not possible.
	Moves []Option
	// Note says the outcome in a sentence.
	Note string
}

// slack is what rounding may leave a balance point outside its window, m.
const slack = 1e-9

// Correct finds the least ballast at each place, and the least move of each movable item, that bring the balance point into its window at every
// state of the fuel.
//
//	ballast b at x_p:  b (x_p - x_F) >= M (x_F - x)  and  b (x_A - x_p) >= M (x - x_A)
//	item m moved by d: M (x_F - x) <= m d <= M (x_A - x)
//
// for every state of the burn with mass M (kg) and balance point x (m), where x_F and x_A are the window's limits less the reserve. All are straight in b and d, so the
// least amount is exact; with one limit and one state it is the classical b = M dx/(x_p - x_F).
// Valid for: ballast and items small enough to count as points; the neutral point does not move. Source: Aircraft Weight and Balance Handbook
// FAA-H-8083-1B, chapter 4 (ballast and shifting weight).
// Error: *FieldError for a window without room or with numbers out of bounds, a place without x, or a maximum below zero.
func Correct(s Search) (Correction, error) {
	if err := s.check(); err != nil {
		return Correction{}, err
	}
	var c Correction
	c.Forward, c.Aft = s.Window.Limits()
	if 2*s.Reserve < c.Aft-c.Forward {
		c.Reserve = s.Reserve
	}
	c.TooFarForward = math.Max(0, c.Forward-s.Travel.Forward.X)
	c.TooFarAft = math.Max(0, s.Travel.Aft.X-c.Aft)
	c.Needed = c.TooFarForward > slack || c.TooFarAft > slack
	if !c.Needed {
		c.Note = fmt.Sprintf("The balance point stays within %.4f to %.4f m for the whole burn; no ballast is needed.", c.Forward, c.Aft)
		return c, nil
	}
	for i := range s.Places {
		c.Ballast = append(c.Ballast, c.ballast(&s, i))
	}
	for i := range s.Items {
		if item := &s.Items[i]; item.Movable && item.X != nil && item.Mass > leastMass {
			c.Moves = append(c.Moves, c.move(&s, i))
		}
	}
	sortOptions(c.Ballast, func(o *Option) float64 { return o.Mass })
	sortOptions(c.Moves, func(o *Option) float64 { return math.Abs(o.By) })
	c.Note = c.outcome()
	return c, nil
}

func (s *Search) check() error {
	if len(s.Travel.Points) == 0 {
		return &FieldError{tanksList, -1, "", "give no travel of the balance point"}
	}
	if err := s.Window.check(); err != nil {
		return err
	}
	for i := range s.Places {
		p := &s.Places[i]
		if p.X == nil {
			return &FieldError{placesList, i, "xMeters", "is missing"}
		}
		err := first(coordinate(placesList, i, "xMeters", p.X), coordinate(placesList, i, "zMeters", p.Z), amount(placesList, i, "maximumMassKg", orZero(p.Maximum)))
		if err != nil {
			return err
		}
	}
	for i := range s.Items {
		if err := s.Items[i].check(i); err != nil {
			return err
		}
	}
	return first(
		amount("limits", -1, "maximumMassKg", orZero(s.MaximumMass)), amount("limits", -1, "reserve", s.Reserve),
		coordinate("model.bodies", -1, "", s.Foremost), coordinate("model.bodies", -1, "", s.Aftmost),
	)
}

// sortOptions puts the possible ones first, the least first among them.
func sortOptions(options []Option, size func(*Option) float64) {
	order.Stable(options, func(a, b Option) int {
		switch {
		case a.Possible && b.Possible:
			return cmp.Compare(size(&a), size(&b))
		case a.Possible:
			return -1
		case b.Possible:
			return 1
		}
		return 0
	})
}

// ballast finds the least mass at one place.
func (c *Correction) ballast(s *Search, index int) Option {
	place := &s.Places[index]
	option := Option{Index: index, Name: place.Name, X: *place.X, To: *place.X}
	room, forward, aft := interval{0, math.Inf(1)}, c.Forward+c.Reserve, c.Aft-c.Reserve
	for i := range s.Travel.Points {
		p := &s.Travel.Points[i]
		room.require(float64(p.Mass*(p.X-forward)), option.X-forward)
		room.require(float64(p.Mass*(aft-p.X)), aft-option.X)
	}
	if room.empty() || room.low > largest {
		option.Note = c.whyNot(option.X)
		return option
	}
	if note := tooMuch(s, place, room.low); note != "" {
		option.Note = note
		return option
	}
	option.Mass = room.low
	option.fill(marginsWith(&s.Travel, s.Window, room.low, float64(room.low*option.X)))
	if s.Travel.ZKnown && place.Z != nil {
		full := &s.Travel.Full
		option.Z = known((float64(full.Mass*full.Z)+float64(room.low**place.Z))/(full.Mass+room.low), 0)
	}
	option.Note = fmt.Sprintf("%.3f kg is the least that brings the whole burn into %.4f to %.4f m%s.", option.Mass, c.Forward, c.Aft, c.spare())
	if !math.IsInf(room.high, 1) {
		option.Note += fmt.Sprintf(" More than %.3f kg is too much.", room.high)
	}
	return option
}

// tooMuch says why a mass cannot be put there; empty when it can.
func tooMuch(s *Search, place *Place, mass float64) string {
	if place.Maximum != nil && mass > *place.Maximum {
		return fmt.Sprintf("Holds %.3f kg; %.3f kg would be needed.", *place.Maximum, mass)
	}
	if s.MaximumMass != nil && s.Travel.Full.Mass+mass > *s.MaximumMass {
		return fmt.Sprintf("%.3f kg would be needed, %.3f kg with full tanks: over the greatest mass allowed of %.3f kg.",
			mass, s.Travel.Full.Mass+mass, *s.MaximumMass)
	}
	return ""
}

// whyNot says why no mass at a place brings the whole burn into the window.
func (c *Correction) whyNot(x float64) string {
	switch {
	case c.TooFarForward > 0 && c.TooFarAft > 0:
		return "The travel of the balance point is wider than the window at both ends; ballast there cannot cure both. Place the tank nearer to the balance point."
	case c.TooFarForward > 0 && x <= c.Forward:
		return "Wrong side: the balance point is too far forward, and this place lies forward of the window too."
	case c.TooFarAft > 0 && x >= c.Aft:
		return "Wrong side: the balance point is too far aft, and this place lies aft of the window too."
	}
	return "The mass that brings one end of the travel in drives the other end out. Place the tank nearer to the balance point."
}

// move finds the shortest move of one item.
func (c *Correction) move(s *Search, index int) Option {
	item := &s.Items[index]
	option := Option{Index: index, Name: itemName(item, index), Mass: item.Mass, X: *item.X}
	room, forward, aft := interval{math.Inf(-1), math.Inf(1)}, c.Forward+c.Reserve, c.Aft-c.Reserve
	for i := range s.Travel.Points {
		p := &s.Travel.Points[i]
		room.require(float64(p.Mass*(p.X-forward)), item.Mass)
		room.require(float64(p.Mass*(aft-p.X)), -item.Mass)
	}
	by := room.low
	if c.TooFarAft > 0 {
		by = room.high
	}
	to := option.X + by
	switch {
	case room.empty():
		option.Note = "The travel of the balance point is wider than the window; no move cures both ends."
		return option
	case s.Foremost != nil && to < *s.Foremost, s.Aftmost != nil && to > *s.Aftmost:
		option.Note = fmt.Sprintf("Would have to go to x = %.3f m, beyond the end of the model.", to)
		return option
	}
	option.To, option.By = to, by
	option.fill(marginsWith(&s.Travel, s.Window, 0, float64(item.Mass*by)))
	option.Note = fmt.Sprintf("%.0f mm %s, from x = %.3f m to %.3f m, is the shortest move that brings the whole burn into the window%s.",
		1000*math.Abs(by), direction(by), option.X, to, c.spare())
	return option
}

// spare says what is left to the window's ends.
func (c *Correction) spare() string {
	if !(c.Reserve > 0) {
		return ""
	}
	return fmt.Sprintf(" with %.1f mm to spare", 1000*c.Reserve)
}

func direction(by float64) string {
	if by < 0 {
		return "forward"
	}
	return "aft"
}

func (o *Option) fill(m margins) {
	o.Possible = true
	o.MarginFull, o.MarginEmpty, o.MarginLeast, o.MarginMost = m.full, m.empty, m.least, m.most
}

// outcome says how far the travel is off and what helps most.
func (c *Correction) outcome() string {
	text := ""
	if c.TooFarForward > slack {
		text = fmt.Sprintf("The balance point lies up to %.1f mm too far forward. ", 1000*c.TooFarForward)
	}
	if c.TooFarAft > slack {
		text += fmt.Sprintf("The balance point lies up to %.1f mm too far aft. ", 1000*c.TooFarAft)
	}
	ballast, moves := len(c.Ballast) > 0 && c.Ballast[0].Possible, len(c.Moves) > 0 && c.Moves[0].Possible
	switch {
	case moves:
		m := &c.Moves[0]
		text += fmt.Sprintf("Moving %s by %.0f mm %s adds no mass.", m.Name, 1000*math.Abs(m.By), direction(m.By))
	case ballast:
		text += fmt.Sprintf("Least ballast: %.3f kg at %s.", c.Ballast[0].Mass, c.Ballast[0].Name)
	default:
		text += "No place and no movable item given brings it in."
	}
	if moves && ballast {
		text += fmt.Sprintf(" Least ballast: %.3f kg at %s.", c.Ballast[0].Mass, c.Ballast[0].Name)
	}
	return text
}
