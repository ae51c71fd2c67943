package document

import (
	"reflect"
	"strings"

	"pitgate/server/physics/assess"
)

// quantity holds a Quantity to the bounds of the field that it stands in. Its spread may be as wide as the bounds are apart: what is further off
// says nothing.
func (f filler) quantity(q *assess.Quantity, field reflect.StructField, path string) {
	if q.Value != nil {
		if message := rangeFault(field, *q.Value); message != "" {
			f.found.add(join(path, "value"), message)
		}
	}
	if q.Spread == nil {
		return
	}
	if width, ok := breadth(field); ok && *q.Spread > width {
		f.found.add(join(path, "spread"), "must be at most "+plain(width)+", got "+plain(*q.Spread))
	}
}

// breadth is how far the bounds of a field are apart.
func breadth(field reflect.StructField) (float64, bool) {
	var low, high float64
	ends := 0
	for _, b := range bounds(field) {
		switch b.name {
		case "gt", "gte":
			low = b.value
			ends++
		case "lt", "lte":
			high = b.value
			ends++
		}
	}
	return high - low, ends == 2
}

// otherUnits are units that numbers are typed in by mistake, by the end of a field's name: how much of the field's own unit one of them is. The
// longest end comes first.
var otherUnits = [...]struct {
	end, other, own string
	factor          float64
}{
	{"PerCubicMeter", "kg/l", "kg/m3", 1000},
	{"SquareMeters", "cm2", "m2", 0.0001},
	{"NewtonMeters", "N cm", "N m", 0.01},
	{"AmpereHours", "mAh", "Ah", 0.001},
	{"Megahertz", "GHz", "MHz", 1000},
	{"Pascals", "hPa", "Pa", 100},
	{"Liters", "ml", "l", 0.001},
	{"Meters", "mm", "m", 0.001},
	{"Ratio", "%", "", 0.01},
	{"Ohms", "mOhm", "Ohm", 0.001},
	{"Kg", "g", "kg", 0.001},
}

// unitHint asks whether a number outside its field's bounds was meant in another unit, where it lies within them then.
func unitHint(field reflect.StructField, value float64) string {
	name := jsonName(field)
	for _, u := range &otherUnits {
		if !strings.HasSuffix(name, u.end) {
			continue
		}
		meant := value * u.factor
		if value == 0 || boundFault(field, meant) != "" {
			return ""
		}
		return "; in " + u.other + "? That is " + strings.TrimRight(plain(meant)+" "+u.own, " ")
	}
	return ""
}
