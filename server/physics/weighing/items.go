package weighing

// DefaultItemPlaceSpread is one standard deviation of where an item's own balance point lies, m, where nothing else is said.
const DefaultItemPlaceSpread = 0.005

// itemsList is what the document calls the items.
const itemsList = "model.mass.items"

// Item is one entry of the list of what a model is made of.
type Item struct {
	Name string
	// Mass and its spread in kg. No spread: DefaultScaleShare of the mass.
	Mass, MassSpread float64
	// X, Y and Z of its own balance point in m; nil when not given.
	X, Y, Z *float64
	// PlaceSpread of each coordinate in m. Zero: DefaultItemPlaceSpread.
	PlaceSpread float64
	// Movable is true when the item can be placed elsewhere.
	Movable bool
}

// Inertia holds moments about the balance point, kg m2.
type Inertia struct {
	// Roll about x, Pitch about y, Yaw about z, and the product of x and z.
	Roll, Pitch, Yaw, RollYaw float64
	// Known is false when an item lacks a coordinate.
	Known bool
}

// Listed is the sum of items.
type Listed struct {
	State
	// Inertia of the items as points: what they hold within themselves is not in it, so it is a lower bound.
	Inertia Inertia
	// Unplaced are the indices of items without X.
	Unplaced []int
}

// Add returns the sum of items: mass, balance point with spread, and moments of inertia about it.
//
//	M = sum(m_i), x = sum(m_i x_i)/M, and y and z alike
//
// where m_i is the mass of an item (kg) and x_i its place (m). A coordinate is Known only when every item that has mass gives it.
// Valid for: independent errors. Source: moments about the datum; JCGM 100:2008, 5.1.2.
// Error: *FieldError when there is no item, a number is out of bounds, or all of them weigh nothing.
func Add(items []Item) (Listed, error) {
	var sum Listed
	if len(items) == 0 {
		return sum, &FieldError{itemsList, -1, "", "needs at least one item"}
	}
	for i := range items {
		if err := items[i].check(i); err != nil {
			return Listed{}, err
		}
		if items[i].X == nil && items[i].Mass > 0 {
			sum.Unplaced = append(sum.Unplaced, i)
		}
	}
	parts, _ := axis(items, func(*Item) *float64 { return nil })
	sum.Mass = total(parts)
	if !(sum.Mass.Value > leastMass) {
		return Listed{}, &FieldError{itemsList, -1, "", "weigh nothing together"}
	}
	sum.X, sum.MassX = along(items, func(i *Item) *float64 { return i.X })
	sum.Y, _ = along(items, func(i *Item) *float64 { return i.Y })
	sum.Z, _ = along(items, func(i *Item) *float64 { return i.Z })
	sum.Inertia = inertia(items, &sum.State)
	return sum, nil
}

func (i *Item) check(index int) error {
	return first(
		amount(itemsList, index, "massKg", i.Mass), amount(itemsList, index, "massKg.spread", i.MassSpread),
		amount(itemsList, index, "placeSpread", i.PlaceSpread),
		coordinate(itemsList, index, "xMeters", i.X), coordinate(itemsList, index, "yMeters", i.Y), coordinate(itemsList, index, "zMeters", i.Z),
	)
}

func (i *Item) massSpread() float64 {
	if i.MassSpread > 0 {
		return i.MassSpread
	}
	return DefaultScaleShare * i.Mass
}

func (i *Item) placeSpread() float64 {
	if i.PlaceSpread > 0 {
		return i.PlaceSpread
	}
	return DefaultItemPlaceSpread
}

// axis returns the items as masses on one axis, and whether each that has mass has its place.
func axis(items []Item, place func(*Item) *float64) (parts []part, complete bool) {
	parts, complete = make([]part, len(items)), true
	for k := range items {
		item := &items[k]
		parts[k] = part{mass: item.Mass, massSpread: item.massSpread()}
		switch at := place(item); {
		case at != nil:
			parts[k].place, parts[k].placeSpread = *at, item.placeSpread()
		case item.Mass > 0:
			complete = false
		}
	}
	return parts, complete
}

// along returns the balance point on one axis where every item has its place on it.
func along(items []Item, place func(*Item) *float64) (Estimate, float64) {
	parts, complete := axis(items, place)
	if !complete {
		return Estimate{}, 0
	}
	return balance(parts)
}

// inertia returns the moments of point masses about their balance point.
//
//	Ixx = sum(m (y^2 + z^2)), Iyy = sum(m (x^2 + z^2)), Izz = sum(m (x^2 + y^2)), Ixz = sum(m x z)
//
// where m is the mass of an item (kg) and x, y, z its place from the balance point (m).
// Valid for: items small against their distances; each adds its own inertia by the parallel-axis theorem. Source: Meriam and Kraige, Engineering
// Mechanics: Dynamics, appendix B.
func inertia(items []Item, about *State) Inertia {
	sum := Inertia{Known: about.X.Known && about.Y.Known && about.Z.Known}
	if !sum.Known {
		return Inertia{}
	}
	for i := range items {
		item := &items[i]
		if item.Mass == 0 {
			continue
		}
		x, y, z := *item.X-about.X.Value, *item.Y-about.Y.Value, *item.Z-about.Z.Value
		sum.Roll += float64(item.Mass * (square(y) + square(z)))
		sum.Pitch += float64(item.Mass * (square(x) + square(z)))
		sum.Yaw += float64(item.Mass * (square(x) + square(y)))
		sum.RollYaw += float64(item.Mass * float64(x*z))
	}
	return sum
}
