package loads

// Line is a quantity that grows evenly with the load factor.
type Line struct {
	AtZero  float64 // at a load factor of 0: what twist, flaps and the sections' own moments do at the speed looked at
	PerLoad float64 // what each unit of load factor adds
}

// At returns the quantity at a load factor.
func (l Line) At(loadFactor float64) float64 { return l.AtZero + float64(l.PerLoad*loadFactor) }

// Reaches returns the load factor at which the quantity is a value; false when it never is.
func (l Line) Reaches(value float64) (float64, bool) {
	n := (value - l.AtZero) / l.PerLoad
	return n, finite(n)
}

// Times returns the quantity times a factor.
func (l Line) Times(factor float64) Line {
	return Line{AtZero: float64(l.AtZero * factor), PerLoad: float64(l.PerLoad * factor)}
}

// Plus returns the sum of two quantities.
func (l Line) Plus(m Line) Line {
	return Line{AtZero: l.AtZero + m.AtZero, PerLoad: l.PerLoad + m.PerLoad}
}

// Strip is a part of a half span that carries air load.
type Strip struct {
	Y, Width float64 // middle and breadth along the span, m; a breadth of 0 is a load in one place
	Force    Line    // normal to the surface, up, N: the whole strip's
	X        float64 // where the force acts, m aft of the datum: the quarter chord
	Moment   Line    // own moment about there, nose up, N m
}

// Item is a mass that the surface carries outboard of its root: its weight relieves the bending.
type Item struct {
	Y, Width float64 // middle and breadth along the span, m
	Mass     float64 // kg
	X        float64 // m aft of the datum
}

// Axis is the line about which the surface twists: x = RootX + Slope y.
type Axis struct {
	RootX float64 // at y = 0, m aft of the datum
	Slope float64 // m of x for each m of y
}

func (a Axis) at(y float64) float64 { return a.RootX + float64(a.Slope*y) }

// Load is what a place of the half span carries.
type Load struct {
	Y       float64 // m
	Shear   Line    // up on what is outboard, N
	Bending Line    // tip up, N m
	Torsion Line    // nose up about the axis, N m
}

// Integrate returns what the places of a half span (m from the plane of symmetry, any order) carry, air load less the weight of the items times the load
// factor. Errors name the impossible field.
//
// Formula: V(y) = sum F_i, M(y) = sum F_i (y_i - y), T(y) = sum (M_i + F_i (x_axis(y_i) - x_i)) over what is outboard of y, where F = F_0 + n F_1 of a strip,
// -n m g of an item; of a strip that the place cuts the part outboard counts at its own middle.
// Valid for: surfaces without much sweep or dihedral; loads spread evenly over each strip.
// Source: statics of a cantilever.
func Integrate(strips []Strip, items []Item, axis Axis, places []float64) ([]Load, error) {
	for i := range strips {
		if err := checkStrip(&strips[i]); err != nil {
			return nil, err
		}
	}
	pulled, err := pulling(items)
	if err != nil {
		return nil, err
	}
	if err := checkFinite(named{"axis.rootX", axis.RootX}, named{"axis.slope", axis.Slope}); err != nil {
		return nil, err
	}
	out := make([]Load, len(places))
	for i, y := range places {
		if err := checkNotNegative(named{"places", y}); err != nil {
			return nil, err
		}
		out[i] = Load{Y: y}
		out[i].carry(strips, axis)
		out[i].carry(pulled, axis)
		if err := out[i].check(); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func (l Load) check() error {
	return checkResult(l.Shear.AtZero, l.Shear.PerLoad, l.Bending.AtZero, l.Bending.PerLoad, l.Torsion.AtZero, l.Torsion.PerLoad)
}

// pulling returns items as strips that push down.
func pulling(items []Item) ([]Strip, error) {
	all := make([]Strip, 0, len(items))
	for _, item := range items {
		if err := checkNotNegative(named{"items.mass", item.Mass}, named{"items.y", item.Y}, named{"items.width", item.Width}); err != nil {
			return nil, err
		}
		if err := checkFinite(named{"items.x", item.X}); err != nil {
			return nil, err
		}
		all = append(all, Strip{Y: item.Y, Width: item.Width, X: item.X, Force: Line{PerLoad: -item.Mass * StandardGravity}})
	}
	return all, nil
}

func checkStrip(s *Strip) error {
	if err := checkNotNegative(named{"strips.y", s.Y}, named{"strips.width", s.Width}); err != nil {
		return err
	}
	return checkFinite(named{"strips.x", s.X}, named{"strips.force", s.Force.AtZero}, named{"strips.force", s.Force.PerLoad},
		named{"strips.moment", s.Moment.AtZero}, named{"strips.moment", s.Moment.PerLoad})
}

// carry adds what is outboard of the load's place.
func (load *Load) carry(strips []Strip, axis Axis) {
	y := load.Y
	for i := range strips {
		share, middle := outboard(strips[i].Y, strips[i].Width, y)
		if share == 0 {
			continue
		}
		force := strips[i].Force.Times(share)
		load.Shear = load.Shear.Plus(force)
		load.Bending = load.Bending.Plus(force.Times(middle - y))
		load.Torsion = load.Torsion.Plus(force.Times(axis.at(middle) - strips[i].X)).Plus(strips[i].Moment.Times(share))
	}
}

// outboard returns the share of a strip that lies outboard of a place and the middle of that part.
func outboard(middle, width, y float64) (share, place float64) {
	half := float64(0.5 * width)
	low, high := middle-half, middle+half
	switch {
	case y <= low:
		return 1, middle
	case y >= high:
		return 0, middle
	}
	return (high - y) / width, float64(0.5 * (high + y))
}
