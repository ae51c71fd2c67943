package stability

// Inertia holds the moments of inertia about the balance point, kg m2.
type Inertia struct {
	Roll, Pitch, Yaw float64
	// Product of x forward and z down: integral of x z dm; 0 when mass lies along the axis of flight.
	Product float64
	// Spread is the relative uncertainty of the moments; 0 when they are given.
	Spread float64
}

// Spreads of estimated inertia, relative.
const (
	// SpreadOfItems of a list of items taken as points: their own extent is left out.
	SpreadOfItems = 0.15
	// SpreadOfGyration of typical radii of gyration: the light aeroplane of the textbooks lies up to 30 % off what they give.
	SpreadOfGyration = 0.30
)

// Item is a mass at a place.
type Item struct {
	Mass    float64 // kg
	X, Y, Z float64 // m: aft, to starboard, up
	Inertia Inertia // about its own centre; zero for a point
}

// InertiaOf adds up items about their common balance point; it also returns mass (kg) and balance point (x aft, z up, m).
//
// Formula: I = sum (I_own + m d^2), d from the common centre; product = sum (own + m dx dz), the same with both axes turned round.
// Valid for: symmetric models; points leave out their own extent, which SpreadOfItems stands for.
// Source: parallel-axis theorem.
func InertiaOf(items []Item) (inertia Inertia, mass, x, z float64, err error) {
	for _, item := range items {
		if err := checkPositive(named{"item.mass", item.Mass}); err != nil {
			return Inertia{}, 0, 0, 0, err
		}
		if err := checkFinite(named{"item.x", item.X}, named{"item.y", item.Y}, named{"item.z", item.Z}); err != nil {
			return Inertia{}, 0, 0, 0, err
		}
		mass += item.Mass
		x += float64(item.Mass * item.X)
		z += float64(item.Mass * item.Z)
	}
	if err := checkPositive(named{"items", mass}); err != nil {
		return Inertia{}, 0, 0, 0, err
	}
	x, z = x/mass, z/mass
	inertia.Spread = SpreadOfItems
	for _, item := range items {
		inertia.add(item, item.X-x, item.Z-z)
	}
	return inertia, mass, x, z, checkResult(inertia.Roll, inertia.Pitch, inertia.Yaw, inertia.Product, x, z)
}

// add puts one item at a distance from the balance point.
func (i *Inertia) add(item Item, dx, dz float64) {
	xx, yy, zz := float64(dx*dx), float64(item.Y*item.Y), float64(dz*dz)
	i.Roll += item.Inertia.Roll + float64(item.Mass*(yy+zz))
	i.Pitch += item.Inertia.Pitch + float64(item.Mass*(xx+zz))
	i.Yaw += item.Inertia.Yaw + float64(item.Mass*(xx+yy))
	i.Product += item.Inertia.Product + float64(item.Mass*float64(dx*dz))
}

// Layout is a kind of aeroplane by where its masses lie.
type Layout int

// Layouts with known radii of gyration.
const (
	EngineInNose     Layout = iota // engine or heavy packs ahead of the wing
	JetTrainer                     // engine at the middle, small span
	JetFighter                     // engine aft, slender body
	EnginesAtTheTail               // two pods or one at the tail
	EnginesOnWing                  // pods on the wing
	FlyingWing                     // no body
)

// gyration holds radii of gyration over half span, half length and half of their mean.
type gyration struct{ roll, pitch, yaw float64 }

var gyrations = map[Layout]gyration{
	EngineInNose: {0.25, 0.38, 0.39}, JetTrainer: {0.22, 0.14, 0.25}, JetFighter: {0.23, 0.38, 0.52},
	EnginesAtTheTail: {0.30, 0.30, 0.43}, EnginesOnWing: {0.34, 0.29, 0.44}, FlyingWing: {0.32, 0.32, 0.51},
}

// InertiaByGyration estimates inertia from mass (kg), span and overall length (m) by typical radii of gyration.
//
// Formula: I_x = m (b Rx/2)^2, I_y = m (l Ry/2)^2, I_z = m ((b + l) Rz/4)^2.
// Valid for: draft; SpreadOfGyration. An unknown layout counts as EngineInNose.
// Source: Raymer, Aircraft Design: A Conceptual Approach, table 16.1, from memory.
func InertiaByGyration(layout Layout, mass, span, length float64) (Inertia, error) {
	if err := checkPositive(named{"mass", mass}, named{"span", span}, named{"length", length}); err != nil {
		return Inertia{}, err
	}
	radii, known := gyrations[layout]
	if !known {
		radii = gyrations[EngineInNose]
	}
	moment := func(radius, size float64) float64 {
		arm := 0.5 * float64(radius*size)
		return mass * float64(arm*arm)
	}
	i := Inertia{
		Roll: moment(radii.roll, span), Pitch: moment(radii.pitch, length), Yaw: moment(radii.yaw, float64(0.5*(span+length))),
		Spread: SpreadOfGyration,
	}
	return i, checkResult(i.Roll, i.Pitch, i.Yaw)
}
