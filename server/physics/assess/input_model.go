package assess

// ModelDescription: what a member describes and measures of one model. Axes: x aft from any datum the builder chooses (usually the nose), y to starboard from the
// plane of symmetry, z up. Every part may be missing; what needs a missing part is reported as unknown.
type ModelDescription struct {
	// Name the builder gives the model.
	DisplayName string `json:"displayName,omitempty" range:"max_len=120"`
	// Wing, tailplane, canard, fins: every surface that lifts.
	Surfaces []LiftingSurface `json:"surfaces,omitempty" range:"max_items=12"`
	// Fuselage, booms, pods.
	Bodies []Body `json:"bodies,omitempty" range:"max_items=12"`
	// Masses and balance.
	Mass *MassProperties `json:"mass,omitempty"`
	// Engines, normally one.
	Engines []Engine `json:"engines,omitempty" range:"max_items=4"`
	// Wheels, skid or belly.
	Gear *LandingGear `json:"gear,omitempty"`
	// What holds the wing, tail and booms together.
	Structure *Structure `json:"structure,omitempty"`
	// From the tank to the pump.
	FuelSystem *FuelSystem `json:"fuelSystem,omitempty"`
	// Radio link and its fail-safe.
	Radio *RadioLink `json:"radio,omitempty"`
	// Receiver, engine and flight packs.
	Packs []Pack `json:"packs,omitempty" range:"max_items=12"`
	// Finish of the skin, which decides how early the boundary layer turns turbulent.
	Finish Finish `json:"finish,omitempty"`
	// Air duct that feeds a buried engine or fan.
	Duct *Duct `json:"duct,omitempty"`
	// Small parts that cost drag: antennas, horns, gaps.
	DragItems []DragItem `json:"dragItems,omitempty" range:"max_items=40"`
	// Surfaces and skins near the exhaust.
	HeatedParts []HeatedPart `json:"heatedParts,omitempty" range:"max_items=40"`
	// Figures of a flight-free measurement that replace a computed one (wing sandbag test, rolling test, glide test).
	MeasuredResults []MeasuredResult `json:"measuredResults,omitempty" range:"max_items=40"`
	// Moments of inertia, if known.
	Inertia *Inertia `json:"inertia,omitempty"`
	// Where the model spends its life and who built it, as free text for the officer.
	BuilderNotes string `json:"builderNotes,omitempty" range:"max_len=4000"`
	// What kind of flying it is made for; decides the recommended window of the static margin where no limit is given.
	HandlingClass HandlingClass `json:"handlingClass,omitempty"`
}

// HandlingClass says: kind of flying a model is made for.
type HandlingClass string

// Values of HandlingClass; the empty string means that nothing was said.
const (
	// First turbine, forgiving.
	HandlingClassTrainer HandlingClass = "HANDLING_CLASS_TRAINER"
	HandlingClassSport   HandlingClass = "HANDLING_CLASS_SPORT"
	// Large speed range, small throws.
	HandlingClassFast HandlingClass = "HANDLING_CLASS_FAST"
	// Tail first.
	HandlingClassCanard HandlingClass = "HANDLING_CLASS_CANARD"
	// No tail: elevons on the wing.
	HandlingClassTailless HandlingClass = "HANDLING_CLASS_TAILLESS"
)

// Names lists every value that may stand in a document.
func (HandlingClass) Names() []string {
	return []string{string(HandlingClassTrainer), string(HandlingClassSport), string(HandlingClassFast), string(HandlingClassCanard), string(HandlingClassTailless)}
}

// Body: a body of revolution or of rounded rectangle, as cross sections from nose to tail.
type Body struct {
	Name     string        `json:"name,omitempty" range:"min_len=1,max_len=60"`
	Stations []BodyStation `json:"stations,omitempty" range:"max_items=60"`
	// True when the body also exists mirrored to port (twin booms).
	Mirrored *bool `json:"mirrored,omitempty"`
	// Lateral place of its axis.
	YMeters *float64 `json:"yMeters,omitempty" range:"gte=-20,lte=20"`
	// True when the cross section has square corners.
	SquareSided *bool `json:"squareSided,omitempty"`
	// Flat base that no exhaust fills.
	BaseAreaSquareMeters *float64 `json:"baseAreaSquareMeters,omitempty" range:"gte=0,lte=1"`
}

// BodyStation: one cross section of a body.
type BodyStation struct {
	XMeters      *float64 `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	WidthMeters  *float64 `json:"widthMeters,omitempty" range:"gte=0,lte=3"`
	HeightMeters *float64 `json:"heightMeters,omitempty" range:"gte=0,lte=3"`
	// Height of the centre of this cross section above the datum.
	CenterZMeters *float64 `json:"centerZMeters,omitempty" range:"gte=-10,lte=10"`
}

// Inertia: moments of inertia about the balance point.
type Inertia struct {
	RollKgSquareMeters  *Quantity `json:"rollKgSquareMeters,omitempty" range:"gte=0.000001,lte=1000"`
	PitchKgSquareMeters *Quantity `json:"pitchKgSquareMeters,omitempty" range:"gte=0.000001,lte=1000"`
	YawKgSquareMeters   *Quantity `json:"yawKgSquareMeters,omitempty" range:"gte=0.000001,lte=1000"`
}

// Finish says: finish of the outer skin.
type Finish string

// Values of Finish; the empty string means that nothing was said.
const (
	FinishPolished             Finish = "FINISH_POLISHED"
	FinishSmooth               Finish = "FINISH_SMOOTH"
	FinishCoveredOpenStructure Finish = "FINISH_COVERED_OPEN_STRUCTURE"
	FinishTapedFoam            Finish = "FINISH_TAPED_FOAM"
)

// Names lists every value that may stand in a document.
func (Finish) Names() []string {
	return []string{string(FinishPolished), string(FinishSmooth), string(FinishCoveredOpenStructure), string(FinishTapedFoam)}
}

// Duct: intake and duct of a buried engine.
type Duct struct {
	IntakeAreaSquareMeters *Quantity `json:"intakeAreaSquareMeters,omitempty" range:"gte=0.00001,lte=1"`
	LengthMeters           *Quantity `json:"lengthMeters,omitempty" range:"gte=0.001,lte=10"`
	WettedAreaSquareMeters *Quantity `json:"wettedAreaSquareMeters,omitempty" range:"gte=0.00001,lte=10"`
	ExitAreaSquareMeters   *Quantity `json:"exitAreaSquareMeters,omitempty" range:"gte=0.00001,lte=1"`
}

// DragItem: a small part that costs drag.
type DragItem struct {
	Name string `json:"name,omitempty" range:"min_len=1,max_len=60"`
	// Drag coefficient on the frontal area below.
	DragCoefficient         *Quantity `json:"dragCoefficient,omitempty" range:"gte=0,lte=5"`
	FrontalAreaSquareMeters *Quantity `json:"frontalAreaSquareMeters,omitempty" range:"gte=0,lte=5"`
	Count                   *int32    `json:"count,omitempty" range:"gte=1,lte=100"`
}

// HeatedPart: a part that the exhaust may heat.
type HeatedPart struct {
	Name     string `json:"name,omitempty" range:"min_len=1,max_len=60"`
	Material string `json:"material,omitempty" range:"max_len=60"`
	// Distance behind the nozzle along the thrust line.
	BehindNozzleMeters *Quantity `json:"behindNozzleMeters,omitempty" range:"gte=-20,lte=20"`
	// Distance from the thrust line or the tailpipe's wall.
	FromAxisMeters *Quantity `json:"fromAxisMeters,omitempty" range:"gte=0,lte=20"`
	FoilShield     *bool     `json:"foilShield,omitempty"`
	// Highest temperature seen in a static run.
	MeasuredTemperatureCelsius *Quantity `json:"measuredTemperatureCelsius,omitempty" range:"gte=-60,lte=1500"`
	// Area facing the tailpipe.
	AreaSquareMeters *Quantity `json:"areaSquareMeters,omitempty" range:"gte=0.00001,lte=5"`
}

// MeasuredResult: a measured figure that replaces a computed one.
type MeasuredResult struct {
	// Id of the quantity of the report it replaces, e.g. "lift.maximum_coefficient".
	QuantityID string    `json:"quantityId,omitempty" range:"min_len=1,max_len=80"`
	Value      *Quantity `json:"value,omitempty" range:"gte=-1000000000,lte=1000000000"`
	Method     string    `json:"method,omitempty" range:"max_len=400"`
}
