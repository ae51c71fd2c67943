package document

import (
	"reflect"
	"strings"

	"pitgate/server/physics/assess"
)

// neverNegative are the ends of the names of quantities that nothing in the world has below zero.
var neverNegative = []string{
	"Kg", "Liters", "Newtons", "Pascals", "Seconds", "Watts", "PerSecond", "PerMinute", "PerMeter", "PerCubicMeter",
	"Megahertz", "Milliwatts", "Hours", "Ohms", "Amperes", "Volts", "Years", "Ratio", "SquareMeters", "SquareMillimeters",
	"NewtonMeters", "LengthMeters", "WidthMeters", "DiameterMeters", "ThicknessMeters", "DepthMeters", "BoreMeters",
	"StretchMeters", "VisibilityMeters", "LimitMeters", "PlayMeters", "heightMeters", "proofLoadFactor", "dragCoefficient",
}

// shares are quantities that are parts of a whole.
var shares = map[string]bool{
	"relativeHumidityRatio": true, "efficiencyRatio": true, "installationLossRatio": true, "chargeRatio": true,
}

const absoluteZeroCelsius = -273.15

// checkQuantities walks every Quantity of a document.
func checkQuantities(target any, found *faults) {
	walkQuantities(reflect.ValueOf(target).Elem(), "", "", func(name, path string, q assess.Quantity) {
		if message := quantityFault(name, q); message != "" {
			found.add(join(path, "value"), message)
		}
	})
}

func quantityFault(name string, q assess.Quantity) string {
	if q.Value == nil {
		return ""
	}
	value := *q.Value
	switch {
	case shares[name] && value > 1:
		return "must be at most 1, got " + plain(value)
	case strings.HasSuffix(name, "Celsius") && value <= absoluteZeroCelsius:
		return "must be greater than -273.15, got " + plain(value)
	case value < 0 && hasAnySuffix(name, neverNegative):
		return "must not be negative, got " + plain(value)
	}
	return ""
}

func hasAnySuffix(name string, suffixes []string) bool {
	for _, suffix := range suffixes {
		if strings.HasSuffix(name, suffix) {
			return true
		}
	}
	return false
}

// walkQuantities calls visit for every Quantity below value with the name of the field that holds it and its path.
func walkQuantities(value reflect.Value, name, path string, visit func(name, path string, q assess.Quantity)) {
	switch value.Kind() {
	case reflect.Pointer:
		if !value.IsNil() {
			walkQuantities(value.Elem(), name, path, visit)
		}
	case reflect.Slice:
		for i := range value.Len() {
			walkQuantities(value.Index(i), name, index(path, i), visit)
		}
	case reflect.Struct:
		if q, ok := value.Interface().(assess.Quantity); ok {
			visit(name, path, q)
			return
		}
		for i := range value.NumField() {
			inner := jsonName(value.Type().Field(i))
			walkQuantities(value.Field(i), inner, join(path, inner), visit)
		}
	default: // texts, numbers and truth values hold no quantity
	}
}
