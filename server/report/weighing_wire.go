package report

import (
	"pitgate/server/physics/assess"
	"pitgate/server/physics/weighing"
)

// Figure is a number with one standard deviation, both in the unit of the field that holds it.
type Figure struct {
	Value  float64 `json:"value"`
	Spread float64 `json:"spread"`
}

// WeighedState is a mass and where it balances; what is not known is absent.
type WeighedState struct {
	MassKg  *Figure `json:"massKg,omitempty"`
	XMeters *Figure `json:"xMeters,omitempty"`
	YMeters *Figure `json:"yMeters,omitempty"`
	ZMeters *Figure `json:"zMeters,omitempty"`
}

// Support is one scale worked out.
type Support struct {
	Name    string   `json:"name"`
	XMeters *float64 `json:"xMeters,omitempty"`
	YMeters *float64 `json:"yMeters,omitempty"`
	// ReadingCount is how often it was read; MeanKg the mean of what it showed, DeviationKg their standard deviation.
	ReadingCount int     `json:"readingCount"`
	MeanKg       float64 `json:"meanKg"`
	TareKg       float64 `json:"tareKg"`
	DeviationKg  float64 `json:"deviationKg"`
	NetKg        Figure  `json:"netKg"`
	ShareRatio   float64 `json:"shareRatio"`
	Scattered    bool    `json:"scattered"`
}

// Comparison is the weighed model against the list of its items, or one statement of mass against another.
type Comparison struct {
	MassDifferenceKg        Figure  `json:"massDifferenceKg"`
	MassDifferenceRatio     float64 `json:"massDifferenceRatio"`
	MassScore               float64 `json:"massScore"`
	BalanceDifferenceMeters *Figure `json:"balanceDifferenceMeters,omitempty"`
	MomentScore             float64 `json:"momentScore"`
	// Agrees is true when both scores lie within two spreads.
	Agrees         bool     `json:"agrees"`
	MissingXMeters *Figure  `json:"missingXMeters,omitempty"`
	Explanations   []string `json:"explanations,omitempty"`
	Note           string   `json:"note"`
}

// TravelPoint is the model at one state of the fuel.
type TravelPoint struct {
	FuelKg      float64  `json:"fuelKg"`
	MassKg      float64  `json:"massKg"`
	XMeters     float64  `json:"xMeters"`
	MarginRatio *float64 `json:"marginRatio,omitempty"`
}

// TravelTable is how the balance point moves as fuel burns.
type TravelTable struct {
	Points []TravelPoint `json:"points"`
	// ForwardXMeters and AftXMeters are the ends of the travel.
	ForwardXMeters float64 `json:"forwardXMeters"`
	AftXMeters     float64 `json:"aftXMeters"`
	Note           string  `json:"note"`
}

// BalanceWindow is where the balance point may lie.
type BalanceWindow struct {
	ForwardXMeters float64 `json:"forwardXMeters"`
	AftXMeters     float64 `json:"aftXMeters"`
	NeutralXMeters float64 `json:"neutralXMeters"`
	ChordMeters    float64 `json:"chordMeters"`
	LeastRatio     float64 `json:"leastRatio"`
	MostRatio      float64 `json:"mostRatio"`
}

// Way is one way to bring the balance point into its window: ballast at a place, or an item moved.
type Way struct {
	Name             string   `json:"name"`
	Possible         bool     `json:"possible"`
	MassKg           *float64 `json:"massKg,omitempty"`
	XMeters          float64  `json:"xMeters"`
	ToXMeters        *float64 `json:"toXMeters,omitempty"`
	MarginFullRatio  *float64 `json:"marginFullRatio,omitempty"`
	MarginEmptyRatio *float64 `json:"marginEmptyRatio,omitempty"`
	Note             string   `json:"note"`
}

// Weighing is a weigh-in worked out: what `pitgate weigh` prints.
type Weighing struct {
	CoreVersion string         `json:"coreVersion"`
	InputDigest string         `json:"inputDigest,omitempty"`
	Verdict     assess.Verdict `json:"verdict"`
	// Reasons say in sentences what decides the verdict.
	Reasons  []string      `json:"reasons,omitempty"`
	Supports []Support     `json:"supports,omitempty"`
	Scales   *WeighedState `json:"scales,omitempty"`
	// Stated is the empty mass and balance as the document states them.
	Stated *WeighedState `json:"stated,omitempty"`
	Listed *WeighedState `json:"listed,omitempty"`
	// Used is which of them the travel rests on: "stated", "scales" or "items".
	Used string `json:"used,omitempty"`
	// HeightMeters of the balance point above the supports, from a tilted weighing.
	HeightMeters *Figure `json:"heightMeters,omitempty"`
	// ScalesAgainstStated and ScalesAgainstList compare; absent where one of the two is.
	ScalesAgainstStated *Comparison     `json:"scalesAgainstStated,omitempty"`
	AgainstList         *Comparison     `json:"againstList,omitempty"`
	Travel              *TravelTable    `json:"travel,omitempty"`
	Window              *BalanceWindow  `json:"window,omitempty"`
	Ballast             []Way           `json:"ballast,omitempty"`
	Moves               []Way           `json:"moves,omitempty"`
	Correction          string          `json:"correction,omitempty"`
	Notes               []string        `json:"notes,omitempty"`
	Missing             []string        `json:"missing,omitempty"`
	Cautions            []string        `json:"cautions"`
	items               []weighing.Item // for the table of the text
}
