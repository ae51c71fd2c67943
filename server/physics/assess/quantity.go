package assess

// Basis says: how a number is known.
type Basis string

// Values of Basis; the empty string means that nothing was said.
const (
	// Measured on this model, at this field or on this day.
	BasisMeasured Basis = "BASIS_MEASURED"
	// Taken from the maker's data sheet.
	BasisMakersFigure Basis = "BASIS_MAKERS_FIGURE"
	// Calculated from other numbers.
	BasisCalculated Basis = "BASIS_CALCULATED"
	// Estimated. Never evidence.
	BasisEstimated Basis = "BASIS_ESTIMATED"
)

// Names lists every value that may stand in a document.
func (Basis) Names() []string {
	return []string{string(BasisMeasured), string(BasisMakersFigure), string(BasisCalculated), string(BasisEstimated)}
}

// Quantity: a number, how it is known and how far it may be off. The unit stands in the name of the field that holds it.
type Quantity struct {
	// The number, in the unit of the field that holds it. Absent is not zero.
	Value *float64 `json:"value,omitempty" range:"finite"`
	// How the number is known. Decides the spread when none is given.
	Basis Basis `json:"basis,omitempty"`
	// One standard deviation, in the same unit. When absent: mass 0.5 %, length 0.3 %, other measured 1 %, maker's figure 5 %, calculated 10 %, estimated 20 %.
	Spread *float64 `json:"spread,omitempty" range:"finite,gte=0"`
}
