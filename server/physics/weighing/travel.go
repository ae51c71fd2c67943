package weighing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// tanksList is what the document calls the tanks.
const tanksList = "model.mass.tanks"

// pointsPerTank is into how many parts the burn of each tank, or of each group that burns together, is cut for drawing.
const pointsPerTank = 8

// Tank is fuel as filled for the flight.
type Tank struct {
	Name string
	// Fuel on board at the start, kg; Unusable is what of it stays.
	Fuel, Unusable float64
	// X, Y and Z of its centre in m.
	X, Y, Z *float64
	// Order in which tanks empty, 1 first; tanks of one order empty together in proportion to what they hold. Zero: after all others.
	Order int
}

// TravelPoint is the model at one state of the fuel.
type TravelPoint struct {
	// Burnt and Left in kg; Left includes what is unusable.
	Burnt, Left float64
	// Mass in kg.
	Mass float64
	// X of the balance point in m; Y and Z are zero unless Travel says that they are known.
	X, Y, Z float64
}

// Travel is how the balance point moves as fuel burns.
type Travel struct {
	// Points from full to usable fuel burnt, to draw; every change of tank is one of them.
	Points []TravelPoint
	// Full and Empty are the first and the last of them.
	Full, Empty TravelPoint
	// Forward and Aft are where the balance point lies furthest forward and aft. Exact: they fall on a change of tank.
	Forward, Aft TravelPoint
	// YKnown and ZKnown are true when the empty model and every tank give that coordinate.
	YKnown, ZKnown bool
	// Note says the outcome in a sentence.
	Note string
}

// load is a mass with its moments.
type load struct{ mass, x, y, z float64 }

func (l *load) add(mass float64, x, y, z float64) {
	l.mass += mass
	l.x += float64(mass * x)
	l.y += float64(mass * y)
	l.z += float64(mass * z)
}

// Burn returns how the balance point travels from full tanks to all usable fuel burnt.
//
//	x(t) = (M_0 x_0 + sum(f_k(t) x_k)) / (M_0 + sum(f_k(t)))
//
// where M_0 and x_0 are mass (kg) and balance point (m) without fuel, f_k the fuel in tank k (kg) and x_k its centre (m). While one tank, or one group
// that empties in proportion, burns, x moves one way only, so the extremes lie where tanks change.
// Valid for: tank centres that do not move as the level falls; a level attitude. Source: moments about the datum.
// Error: *FieldError when the empty state is not known, a tank has no x, or a number is out of bounds.
func Burn(empty State, tanks []Tank) (Travel, error) {
	if err := empty.usable("model.mass.emptyMassKg"); err != nil {
		return Travel{}, err
	}
	if !empty.X.Known {
		return Travel{}, &FieldError{"model.mass.emptyBalanceXMeters", -1, "", "is missing"}
	}
	travel := Travel{YKnown: empty.Y.Known, ZKnown: empty.Z.Known}
	for i := range tanks {
		if err := tanks[i].check(i); err != nil {
			return Travel{}, err
		}
		travel.YKnown = travel.YKnown && tanks[i].Y != nil
		travel.ZKnown = travel.ZKnown && tanks[i].Z != nil
	}
	travel.walk(&empty, tanks)
	travel.extremes()
	return travel, nil
}

func (t *Tank) check(i int) error {
	if t.X == nil && t.Fuel > 0 {
		return &FieldError{tanksList, i, "xMeters", "is missing"}
	}
	if t.Unusable > t.Fuel {
		return &FieldError{tanksList, i, "capacityLiters", fmt.Sprintf("holds less than what is unusable: %g of %g kg", t.Fuel, t.Unusable)}
	}
	return first(
		amount(tanksList, i, "capacityLiters", t.Fuel), amount(tanksList, i, "capacityLiters", t.Unusable),
		coordinate(tanksList, i, "xMeters", t.X), coordinate(tanksList, i, "yMeters", t.Y), coordinate(tanksList, i, "zMeters", t.Z),
	)
}

// walk burns group after group and notes the points on the way.
func (t *Travel) walk(empty *State, tanks []Tank) {
	var base load
	base.add(empty.Mass.Value, empty.X.Value, empty.Y.Value, empty.Z.Value)
	groups := groupTanks(tanks)
	left := make([]float64, len(tanks))
	for i := range tanks {
		left[i] = tanks[i].Fuel
	}
	t.note(base, tanks, left)
	for _, group := range groups {
		usable := 0.0
		for _, i := range group {
			usable += tanks[i].Fuel - tanks[i].Unusable
		}
		if !(usable > 0) {
			continue
		}
		for k := 1; k <= pointsPerTank; k++ {
			share := float64(pointsPerTank-k) / pointsPerTank
			for _, i := range group {
				left[i] = tanks[i].Unusable + float64(share*(tanks[i].Fuel-tanks[i].Unusable))
			}
			t.note(base, tanks, left)
		}
	}
}

// groupTanks returns the indices of tanks that empty together, in the order in which they do.
func groupTanks(tanks []Tank) [][]int {
	order := func(i int) int {
		if tanks[i].Order <= 0 {
			return math.MaxInt
		}
		return tanks[i].Order
	}
	indices := make([]int, len(tanks))
	for i := range indices {
		indices[i] = i
	}
	slices.SortStableFunc(indices, func(a, b int) int { return cmp.Compare(order(a), order(b)) })
	var groups [][]int
	for k, i := range indices {
		if k == 0 || order(indices[k-1]) != order(i) {
			groups = append(groups, nil)
		}
		last := len(groups) - 1
		groups[last] = append(groups[last], i)
	}
	return groups
}

// note appends the state with what is left in the tanks.
func (t *Travel) note(sum load, tanks []Tank, left []float64) {
	fuel, filled := 0.0, 0.0
	for i := range tanks {
		fuel += left[i]
		filled += tanks[i].Fuel
		sum.add(left[i], orZero(tanks[i].X), orZero(tanks[i].Y), orZero(tanks[i].Z))
	}
	point := TravelPoint{Burnt: filled - fuel, Left: fuel, Mass: sum.mass, X: sum.x / sum.mass}
	if t.YKnown {
		point.Y = sum.y / sum.mass
	}
	if t.ZKnown {
		point.Z = sum.z / sum.mass
	}
	t.Points = append(t.Points, point)
}

func orZero(value *float64) float64 {
	if value == nil {
		return 0
	}
	return *value
}

// extremes finds the ends of the travel and says them.
func (t *Travel) extremes() {
	t.Full, t.Empty = t.Points[0], t.Points[len(t.Points)-1]
	t.Forward, t.Aft = t.Full, t.Full
	for _, p := range t.Points[1:] {
		if p.X < t.Forward.X {
			t.Forward = p
		}
		if p.X > t.Aft.X {
			t.Aft = p
		}
	}
	if !(t.Full.Left > t.Empty.Left) {
		t.Note = fmt.Sprintf("No fuel burns: the balance point stays at x = %.4f m.", t.Full.X)
		return
	}
	t.Note = fmt.Sprintf("Between x = %.4f m with %.2f kg of fuel and x = %.4f m with %.2f kg: %.1f mm of travel over %.2f kg burnt.",
		t.Forward.X, t.Forward.Left, t.Aft.X, t.Aft.Left, 1000*(t.Aft.X-t.Forward.X), t.Empty.Burnt)
}
