package assess

// MassProperties: mass and balance: weighed whole, or as items, or both.
type MassProperties struct {
	// Mass as flown without fuel: everything on board, tanks empty.
	EmptyMassKg *Quantity `json:"emptyMassKg,omitempty" range:"gte=0.01,lte=200"`
	// Balance point of that state, aft of the datum.
	EmptyBalanceXMeters *Quantity `json:"emptyBalanceXMeters,omitempty" range:"gte=-20,lte=20"`
	// Height of that balance point.
	EmptyBalanceZMeters *Quantity `json:"emptyBalanceZMeters,omitempty" range:"gte=-20,lte=20"`
	// Items, when built up piece by piece.
	Items []MassItem `json:"items,omitempty" range:"max_items=200"`
	Tanks []Tank     `json:"tanks,omitempty" range:"max_items=12"`
	// Scales under wheels or cradle points, when weighed so.
	ScaleReadings []ScaleReading `json:"scaleReadings,omitempty" range:"max_items=30"`
	// Balance window the builder asks for, aft of the datum.
	ForwardBalanceLimitXMeters *float64 `json:"forwardBalanceLimitXMeters,omitempty" range:"gte=-20,lte=20"`
	AftBalanceLimitXMeters     *float64 `json:"aftBalanceLimitXMeters,omitempty" range:"gte=-20,lte=20"`
	// Places where ballast may be fixed.
	BallastPlaces []BallastPlace `json:"ballastPlaces,omitempty" range:"max_items=12"`
}

// BallastPlace: a place where ballast may be fixed.
type BallastPlace struct {
	Name    string   `json:"name,omitempty" range:"min_len=1,max_len=60"`
	XMeters *float64 `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	ZMeters *float64 `json:"zMeters,omitempty" range:"gte=-20,lte=20"`
	// Most that the place holds. Absent: no limit.
	MaximumMassKg *float64 `json:"maximumMassKg,omitempty" range:"gt=0,lte=50"`
}

// MassItem: one item of the mass list.
type MassItem struct {
	Name    string    `json:"name,omitempty" range:"min_len=1,max_len=60"`
	MassKg  *Quantity `json:"massKg,omitempty" range:"gte=0,lte=200"`
	XMeters *float64  `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	YMeters *float64  `json:"yMeters,omitempty" range:"gte=-20,lte=20"`
	ZMeters *float64  `json:"zMeters,omitempty" range:"gte=-20,lte=20"`
	// True when it can be moved to shift the balance.
	Movable *bool `json:"movable,omitempty"`
	// Scale it was weighed on; what one scale weighed shares its error. Absent: all measured items were weighed on one.
	Scale string `json:"scale,omitempty" range:"max_len=60"`
}

// Tank: a fuel tank.
type Tank struct {
	Name string `json:"name,omitempty" range:"min_len=1,max_len=60"`
	// Usable volume.
	CapacityLiters *Quantity `json:"capacityLiters,omitempty" range:"gte=0.001,lte=100"`
	// Centre of the tank.
	XMeters *float64 `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	YMeters *float64 `json:"yMeters,omitempty" range:"gte=-20,lte=20"`
	ZMeters *float64 `json:"zMeters,omitempty" range:"gte=-20,lte=20"`
	// Order in which tanks empty, 1 first.
	BurnOrder *int32 `json:"burnOrder,omitempty" range:"gte=1,lte=12"`
	// Filling for the flight, 0 to 1. Absent: full.
	FillRatio *float64 `json:"fillRatio,omitempty" range:"gte=0,lte=1"`
}

// ScaleReading: one reading of a scale under the model.
type ScaleReading struct {
	Name      string    `json:"name,omitempty" range:"max_len=60"`
	ReadingKg *Quantity `json:"readingKg,omitempty" range:"gte=0,lte=500"`
	XMeters   *float64  `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	YMeters   *float64  `json:"yMeters,omitempty" range:"gte=-20,lte=20"`
	// Readings of further weighings of the same state, model lifted off in between; with them the mean and its own spread are used.
	Repeats []RepeatReading `json:"repeats,omitempty" range:"max_items=20"`
	// Cradle, block or wheel dish that the scale carries too; taken off each reading.
	TareKg *float64 `json:"tareKg,omitempty" range:"gte=0,lte=100"`
	// The scale, where one is used at several places; its readings share its error. Absent: a scale of its own.
	Scale string `json:"scale,omitempty" range:"max_len=60"`
}

// RepeatReading: one further reading of the same scale.
type RepeatReading struct {
	ReadingKg *float64 `json:"readingKg,omitempty" range:"gte=0,lte=500"`
}
