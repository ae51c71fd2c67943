package assess

import (
	"math"
	"strings"
)

// Default spreads, one standard deviation over the value, where a quantity gives none.
const (
	spreadMass       = 0.005
	spreadLength     = 0.003
	spreadMeasured   = 0.01
	spreadMaker      = 0.05
	spreadCalculated = 0.10
	spreadEstimated  = 0.20
)

// estimated reports whether the quantity is estimated; one whose basis is not said is.
func (q *Quantity) estimated() bool { return q.Basis == "" || q.Basis == BasisEstimated }

// Deviation returns one standard deviation of a quantity in its own unit; name is its path, whose end tells what is measured.
func (q *Quantity) Deviation(name string) float64 {
	if q.Spread != nil {
		return *q.Spread
	}
	return math.Abs(*q.Value) * q.relativeSpread(name)
}

func (q *Quantity) relativeSpread(name string) float64 {
	switch q.Basis {
	case BasisMeasured:
		return measuredSpread(name)
	case BasisMakersFigure:
		return spreadMaker
	case BasisCalculated:
		return spreadCalculated
	default:
		return spreadEstimated
	}
}

func measuredSpread(name string) float64 {
	switch {
	case strings.HasSuffix(name, "Kg"):
		return spreadMass
	case strings.HasSuffix(name, "Meters") && !strings.HasSuffix(name, "SquareMeters"):
		return spreadLength
	}
	return spreadMeasured
}
