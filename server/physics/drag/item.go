package drag

import "math"

// Item is a small part given by its own coefficient.
type Item struct {
	Name         string
	Coefficient  float64 // on the frontal area
	FrontalArea  float64 // m2
	Count        int     // 0 counts as 1
	Interference float64 // 0 counts as 1
	Spread       float64 // one standard deviation over the value; 0 counts as 0.2
	Source       string  // "" = given by the builder
}

// itemPart returns the component of an item.
func itemPart(item Item) Component {
	count, interference, spread, source := float64(max(1, item.Count)), item.Interference, item.Spread, item.Source
	if !(interference > 0) || math.IsInf(interference, 0) {
		interference = 1
	}
	if !(spread > 0) || math.IsInf(spread, 0) {
		spread = spreadItem
	}
	if source == "" {
		source = "given by the builder"
	}
	area := float64(float64(usable(item.Coefficient)*usable(item.FrontalArea)) * float64(count*interference))
	return Component{Name: item.Name, Kind: KindItem, Area: usable(area), Interference: interference, Source: source, spread: spread}
}

// Antenna returns the item of rods that stand out of a skin; length and diameter in m.
//
// Formula: CD of a cylinder across the stream of twice the length over diameter, on length times diameter.
// Valid for: rods across the stream below Re 3e5 on the diameter.
// Source: Aeronautical Engineer's Data Book, p. 95; mirror image at the wall.
func Antenna(name string, length, diameter float64, count int) Item {
	item := Item{
		Name: name, FrontalArea: float64(usable(length) * usable(diameter)), Count: count, Spread: 0.2,
		Source: "Aeronautical Engineer's Data Book, p. 95",
	}
	if diameter > 0 {
		item.Coefficient = AcrossCylinder(2 * length / diameter)
	}
	return item
}

// ControlHorns returns the item of horns of one frontal area, m2.
//
// Formula: CD 0.8.
// Valid for: horns in the free stream; 0.3 when shaped.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Table 12.6 (0.3 to 0.8, the higher).
func ControlHorns(name string, frontalArea float64, count int) Item {
	return Item{Name: name, Coefficient: ControlHornCoefficient, FrontalArea: frontalArea, Count: count, Spread: 0.3, Source: "Raymer, Table 12.6"}
}

// ExposedEngine returns the item of an engine that lies open on top of a model; measures in m.
//
// Formula: CD of a cylinder along the stream on its end face, times 1.2 for mount and skin below.
// Valid for: engine idle or stopped; a running engine takes in part of the stream, so this is the upper side.
// Source: Aeronautical Engineer's Data Book, p. 95; 1.2 as for gear (Raymer).
func ExposedEngine(name string, diameter, length float64) Item {
	d := usable(diameter)
	item := Item{
		Name: name, FrontalArea: float64(math.Pi / 4 * float64(d*d)), Interference: gearInterference, Spread: 0.3,
		Source: "Aeronautical Engineer's Data Book, p. 95",
	}
	if d > 0 {
		item.Coefficient = AlongCylinder(length / d)
	}
	return item
}
