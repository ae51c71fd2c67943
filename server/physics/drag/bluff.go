package drag

import "pitgate/server/physics/elementary"

// nodePoint is one point of a table over slenderness.
type nodePoint struct{ slenderness, coefficient float64 }

// Tables of cylinders below the critical Reynolds number.
//
// Source: Aeronautical Engineer's Data Book, p. 95.
var (
	alongStream  = []nodePoint{{1, 0.91}, {2, 0.85}, {4, 0.87}, {7, 0.99}}
	acrossStream = []nodePoint{{1, 0.63}, {2, 0.68}, {5, 0.74}, {10, 0.82}, {40, 0.98}, {1000, 1.20}}
)

// AlongCylinder returns the drag coefficient on the end face of a cylinder that lies along the stream.
//
// Formula: table over length by diameter, straight between in the logarithm, held at its ends.
// Valid for: length 1 to 7 diameters, blunt ends.
// Source: Aeronautical Engineer's Data Book, p. 95.
func AlongCylinder(slenderness float64) float64 { return byNodes(alongStream, slenderness) }

// AcrossCylinder returns the drag coefficient on length times diameter of a cylinder across the stream with two free ends.
//
// Formula: table over length by diameter, straight between in the logarithm, held at its ends; endless from 1000 on.
// Valid for: Reynolds number on the diameter 1e3 to 3e5. One end on a wall counts as twice the length.
// Source: Aeronautical Engineer's Data Book, p. 95.
func AcrossCylinder(slenderness float64) float64 { return byNodes(acrossStream, slenderness) }

// byNodes reads a table straight between its points in the logarithm of slenderness.
func byNodes(table []nodePoint, slenderness float64) float64 {
	if !(slenderness > table[0].slenderness) {
		return table[0].coefficient
	}
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if slenderness <= b.slenderness {
			f := elementary.Log(slenderness/a.slenderness) / elementary.Log(b.slenderness/a.slenderness)
			return a.coefficient + float64(f*(b.coefficient-a.coefficient))
		}
	}
	return table[len(table)-1].coefficient
}
