package weighing

import (
	"cmp"
	"fmt"
	"math"

	"pitgate/server/physics/order"
)

// agreement is how many spreads a difference may have before it asks for an explanation.
const agreement = 2.0

// shownSuspects is how many explanations are named.
const shownSuspects = 4

// Suspect is one single error that would explain a difference.
type Suspect struct {
	// Item is the index into the list; negative for an item that is missing from it.
	Item int
	// MassError is by how much the item's listed mass would be too small, kg; for a missing item its mass.
	MassError float64
	// PlaceError is by how much further aft the item would really lie, m.
	PlaceError float64
	// X is where the missing item would lie, or where the listed one really would, m.
	X float64
	// Note says it in a sentence.
	Note string
}

// Difference is weighed less listed.
type Difference struct {
	// Mass in kg and its share of the weighed mass.
	Mass      Estimate
	MassRatio float64
	// X is how far aft of the listed balance point the weighed one lies, m.
	X Estimate
	// Moment about the listed balance point, kg m.
	Moment Estimate
	// MassScore and MomentScore are the differences in spreads.
	MassScore, MomentScore float64
	// Agrees is true when both scores lie within 2 and the balance point is known on both sides.
	Agrees bool
	// MissingX is where a single missing (or doubly listed) item of the mass difference would lie; Known only when the mass differs by more than 2 spreads.
	MissingX Estimate
	// Suspects are the single errors that would explain it, likeliest first.
	Suspects []Suspect
	// Note says the outcome in a sentence.
	Note string
}

// Reconcile compares a weighed state with the sum of the items and names what single error would explain a difference.
//
//	dm = m_w - m_l, dM = m_w (x_w - x_l)
//	u(dM)^2 = m_w^2 u(x_w)^2 + (x_w - x_l)^2 u(m_w)^2 + 2 m_w (x_w - x_l) u(m_w, x_w) + m_l^2 u(x_l)^2
//	place of a missing item: x = x_l + dM/dm
//
// where w is weighed and l listed, m the mass (kg), x the balance point (m), dM the moment about the listed balance point (kg m), so that the choice of
// the datum plays no part. A score is a difference over its own spread.
// Valid for: weighing and list independent of each other and of the same state (tanks empty). Source: moments; JCGM 100:2008, 5.1.2 and 5.2.2; score:
// ISO 13528, zeta score, questionable beyond 2.
// Error: *FieldError when a mass is not known or not positive.
func Reconcile(weighed, listed State, items []Item) (Difference, error) {
	if err := first(weighed.usable("model.mass.emptyMassKg"), listed.usable(itemsList)); err != nil {
		return Difference{}, err
	}
	var d Difference
	d.Mass = known(weighed.Mass.Value-listed.Mass.Value, square(weighed.Mass.Spread)+square(listed.Mass.Spread))
	d.MassRatio = d.Mass.Value / weighed.Mass.Value
	d.MassScore = score(d.Mass)
	if !weighed.X.Known || !listed.X.Known {
		d.Note = d.massNote() + " The balance points cannot be compared: one of them is not known."
		return d, nil
	}
	arm := weighed.X.Value - listed.X.Value
	d.X = known(arm, square(weighed.X.Spread)+square(listed.X.Spread))
	d.Moment = known(float64(weighed.Mass.Value*arm), weighed.momentVariance(arm)+listed.momentVariance(0))
	d.MomentScore = score(d.Moment)
	d.Agrees = math.Abs(d.MassScore) <= agreement && math.Abs(d.MomentScore) <= agreement
	if math.Abs(d.MassScore) > agreement {
		d.MissingX = d.missing(&weighed, &listed, arm)
	}
	d.Note = d.massNote() + d.momentNote()
	if !d.Agrees {
		d.suspect(items)
	}
	return d, nil
}

// usable refuses a state without a mass.
func (s *State) usable(list string) error {
	if !s.Mass.Known || !(s.Mass.Value > leastMass) || !within(s.Mass.Value) {
		return &FieldError{list, -1, "", "must be a mass greater than nothing"}
	}
	for _, e := range []Estimate{s.Mass, s.X, s.Y, s.Z} {
		if !within(e.Value) || !within(e.Spread) || e.Spread < 0 {
			return &FieldError{list, -1, "", "has a number that no model has"}
		}
	}
	if !(math.Abs(s.MassX) <= largest*largest) {
		return &FieldError{list, -1, "", "has a covariance that no model has"}
	}
	return nil
}

// momentVariance returns the variance of a state's moment about a point that lies an arm ahead of its balance point.
func (s *State) momentVariance(arm float64) float64 {
	cross := float64(2 * s.Mass.Value * arm * s.MassX)
	return math.Max(0, square(s.Mass.Value*s.X.Spread)+square(arm*s.Mass.Spread)+cross)
}

// score returns a difference over its spread: how many spreads it is from nothing. Without a spread any difference counts as the most that is told.
func score(e Estimate) float64 {
	const most = 1000
	switch {
	case e.Value == 0:
		return 0
	case !(e.Spread > math.Abs(e.Value)/most):
		return math.Copysign(most, e.Value)
	}
	return e.Value / e.Spread
}

// missing returns where one item of the whole mass difference would lie, with its spread.
//
//	x = x_l + dM/dm
//	u(x)^2 = (u(dM)^2 + a^2 u(dm)^2 - 2 a u(dM, dm)) / dm^2,  a = dM/dm
//	u(dM, dm) = (x_w - x_l) u(m_w)^2 + m_w u(m_w, x_w) + m_l u(m_l, x_l)
//
// Valid for: dm several of its spreads from nothing. Source: JCGM 100:2008, 5.2.2 (equation 13).
func (d *Difference) missing(weighed, listed *State, arm float64) Estimate {
	distance := d.Moment.Value / d.Mass.Value
	cross := float64(arm*square(weighed.Mass.Spread)) + float64(weighed.Mass.Value*weighed.MassX) + float64(listed.Mass.Value*listed.MassX)
	variance := square(d.Moment.Spread) + square(distance*d.Mass.Spread) - float64(2*distance*cross)
	return known(listed.X.Value+distance, variance/square(d.Mass.Value))
}

func (d *Difference) massNote() string {
	word := "more"
	if d.Mass.Value < 0 {
		word = "less"
	}
	return fmt.Sprintf("Weighed %.3f kg %s than listed (%.1f %%), %.1f spreads.", math.Abs(d.Mass.Value), word, 100*math.Abs(d.MassRatio), math.Abs(d.MassScore))
}

func (d *Difference) momentNote() string {
	word := "aft"
	if d.X.Value < 0 {
		word = "forward"
	}
	return fmt.Sprintf(" Balances %.1f mm %s of the list, %.1f spreads.", 1000*math.Abs(d.X.Value), word, math.Abs(d.MomentScore))
}

// suspect lists the single errors that would explain the difference: an item missing or listed twice where the mass differs, an item in another
// place where only the balance differs.
func (d *Difference) suspect(items []Item) {
	low, high := reach(items)
	if math.Abs(d.MassScore) > agreement {
		beyond := float64((high-low)/2) + d.MissingX.Spread // what is missing may lie somewhat beyond what is listed
		if d.Mass.Value > 0 && d.MissingX.Value > low-beyond && d.MissingX.Value < high+beyond {
			d.Suspects = append(d.Suspects, d.missingItem())
		}
		d.Suspects = append(d.Suspects, d.misweighed(items)...)
	} else {
		d.Suspects = append(d.Suspects, d.misplaced(items, low, high)...)
	}
	if len(d.Suspects) > shownSuspects {
		d.Suspects = d.Suspects[:shownSuspects]
	}
}

// reach returns the foremost and aftmost place of the list.
func reach(items []Item) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range items {
		if items[i].X != nil {
			low, high = math.Min(low, *items[i].X), math.Max(high, *items[i].X)
		}
	}
	return low, high
}

func (d *Difference) missingItem() Suspect {
	return Suspect{Item: -1, MassError: d.Mass.Value, X: d.MissingX.Value, Note: fmt.Sprintf(
		"An item of %.3f kg at x = %.3f m, give or take %.3f m, missing from the list would explain it.",
		d.Mass.Value, d.MissingX.Value, d.MissingX.Spread)}
}

// misweighed returns the items whose mass alone, put wrong, explains mass and moment: those that lie where the missing mass lies.
func (d *Difference) misweighed(items []Item) []Suspect {
	type scored struct {
		Suspect
		off float64
	}
	var found []scored
	for i := range items {
		item := &items[i]
		if item.X == nil || item.Mass+d.Mass.Value < -agreement*d.Mass.Spread {
			continue
		}
		off := score(Estimate{Value: *item.X - d.MissingX.Value, Spread: math.Sqrt(square(d.MissingX.Spread) + square(item.placeSpread()))})
		if math.Abs(off) > agreement {
			continue
		}
		found = append(found, scored{Suspect{Item: i, MassError: d.Mass.Value, X: *item.X, Note: d.massErrorNote(item, i)}, math.Abs(off)})
	}
	order.Stable(found, func(a, b scored) int { return cmp.Compare(a.off, b.off) })
	list := make([]Suspect, len(found))
	for i := range found {
		list[i] = found[i].Suspect
	}
	return list
}

func (d *Difference) massErrorNote(item *Item, i int) string {
	name := itemName(item, i)
	if math.Abs(item.Mass+d.Mass.Value) <= agreement*d.Mass.Spread {
		return fmt.Sprintf("%s of %.3f kg listed twice, or not on board when weighed, would explain it.", name, item.Mass)
	}
	return fmt.Sprintf("%s at x = %.3f m weighing %.3f kg instead of %.3f kg would explain it.", name, *item.X, item.Mass+d.Mass.Value, item.Mass)
}

// misplaced returns the items whose place alone, put wrong, explains the moment, the least error first.
//
//	dx = dM / m
//
// where m is the mass of the item (kg). Only places within the list's reach count. Source: moments.
func (d *Difference) misplaced(items []Item, low, high float64) []Suspect {
	var found []Suspect
	for i := range items {
		item := &items[i]
		if item.X == nil || !(item.Mass > leastMass) {
			continue
		}
		by := d.Moment.Value / item.Mass
		if to := *item.X + by; to >= low && to <= high {
			found = append(found, Suspect{Item: i, PlaceError: by, X: to, Note: fmt.Sprintf(
				"%s at x = %.3f m instead of %.3f m would explain it.", itemName(item, i), to, *item.X)})
		}
	}
	order.Stable(found, func(a, b Suspect) int { return cmp.Compare(math.Abs(a.PlaceError), math.Abs(b.PlaceError)) })
	return found
}

func itemName(item *Item, i int) string {
	if item.Name != "" {
		return item.Name
	}
	return fmt.Sprintf("item %d", i+1)
}
