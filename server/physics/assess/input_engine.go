package assess

// EngineKind says: kind of engine.
type EngineKind string

// Values of EngineKind; the empty string means that nothing was said.
const (
	EngineKindTurbine   EngineKind = "ENGINE_KIND_TURBINE"
	EngineKindDuctedFan EngineKind = "ENGINE_KIND_DUCTED_FAN"
	EngineKindPropeller EngineKind = "ENGINE_KIND_PROPELLER"
)

// Names lists every value that may stand in a document.
func (EngineKind) Names() []string {
	return []string{string(EngineKindTurbine), string(EngineKindDuctedFan), string(EngineKindPropeller)}
}

// Engine: one engine.
type Engine struct {
	Name string     `json:"name,omitempty" range:"min_len=1,max_len=60"`
	Kind EngineKind `json:"kind,omitempty"`
	// Static thrust at full power in the conditions below.
	StaticThrustNewtons *Quantity `json:"staticThrustNewtons,omitempty" range:"gte=0.01,lte=2000"`
	// Static thrust at idle.
	IdleThrustNewtons *Quantity `json:"idleThrustNewtons,omitempty" range:"gte=0,lte=2000"`
	// Air through a turbine at full power.
	AirMassFlowKgPerSecond    *Quantity `json:"airMassFlowKgPerSecond,omitempty" range:"gte=0.001,lte=10"`
	ExhaustTemperatureCelsius *Quantity `json:"exhaustTemperatureCelsius,omitempty" range:"gte=-60,lte=1500"`
	NozzleDiameterMeters      *float64  `json:"nozzleDiameterMeters,omitempty" range:"gt=0,lte=0.5"`
	// Fuel at full thrust.
	FullFuelFlowGramsPerMinute *Quantity `json:"fullFuelFlowGramsPerMinute,omitempty" range:"gte=0,lte=10000"`
	// Fuel at idle.
	IdleFuelFlowGramsPerMinute *Quantity `json:"idleFuelFlowGramsPerMinute,omitempty" range:"gte=0,lte=10000"`
	// Idle to full thrust.
	SpoolUpSeconds *Quantity `json:"spoolUpSeconds,omitempty" range:"gte=0,lte=60"`
	// Place of the nozzle or disc.
	XMeters *float64 `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	YMeters *float64 `json:"yMeters,omitempty" range:"gte=-20,lte=20"`
	ZMeters *float64 `json:"zMeters,omitempty" range:"gte=-20,lte=20"`
	// Angle of the thrust line, pushing the nose up positive.
	ThrustLineDegrees *Quantity `json:"thrustLineDegrees,omitempty" range:"gte=-45,lte=45"`
	// Fan or propeller disc.
	DiscDiameterMeters *float64 `json:"discDiameterMeters,omitempty" range:"gt=0,lte=2"`
	HubDiameterMeters  *float64 `json:"hubDiameterMeters,omitempty" range:"gte=0,lte=1"`
	// Shaft power of a fan or propeller.
	ShaftPowerWatts *Quantity `json:"shaftPowerWatts,omitempty" range:"gte=0.1,lte=100000"`
	// Air in which the static thrust was measured or is quoted. Absent: 15 C, 101325 Pa.
	TestTemperatureCelsius *Quantity `json:"testTemperatureCelsius,omitempty" range:"gte=-60,lte=60"`
	TestPressurePascals    *Quantity `json:"testPressurePascals,omitempty" range:"gte=40000,lte=110000"`
	// Loss of thrust by intake duct and tailpipe as a fraction.
	InstallationLossRatio *Quantity `json:"installationLossRatio,omitempty" range:"gte=0,lt=1"`
	MaximumRpm            *float64  `json:"maximumRpm,omitempty" range:"gt=0,lte=300000"`
	// Points of a static run, thrust by a scale behind the model. The one with the greatest thrust stands before the maker's figures, and what duct and
	// tailpipe take is in it.
	StaticRun []StaticRunPoint `json:"staticRun,omitempty" range:"max_items=60"`
	// True when the model carries a tailpipe from the engine to the tail.
	Tailpipe *bool `json:"tailpipe,omitempty"`
	// Time from fuel cut to no thrust.
	RunDownSeconds *Quantity `json:"runDownSeconds,omitempty" range:"gte=0,lte=120"`
	// Wall of the tailpipe at full power. Absent: taken from the exhaust temperature.
	TailpipeWallCelsius    *Quantity `json:"tailpipeWallCelsius,omitempty" range:"gte=-60,lte=1500"`
	TailpipeDiameterMeters *float64  `json:"tailpipeDiameterMeters,omitempty" range:"gt=0,lte=0.5"`
	TailpipeLengthMeters   *float64  `json:"tailpipeLengthMeters,omitempty" range:"gt=0,lte=5"`
	// Highest exhaust temperature that the maker allows.
	MaximumExhaustCelsius *float64 `json:"maximumExhaustCelsius,omitempty" range:"gt=0,lte=1500"`
}

// StaticRunPoint: one point of a static run.
type StaticRunPoint struct {
	Rpm                       *float64  `json:"rpm,omitempty" range:"gte=0,lte=300000"`
	ThrustNewtons             *Quantity `json:"thrustNewtons,omitempty" range:"gte=0,lte=2000"`
	ExhaustTemperatureCelsius *Quantity `json:"exhaustTemperatureCelsius,omitempty" range:"gte=-60,lte=1500"`
	FuelFlowGramsPerMinute    *Quantity `json:"fuelFlowGramsPerMinute,omitempty" range:"gte=0,lte=10000"`
	DurationSeconds           *float64  `json:"durationSeconds,omitempty" range:"gte=0,lte=3600"`
	// Fuel used in this time by weight: tank and model before and after.
	FuelUsedKg *Quantity `json:"fuelUsedKg,omitempty" range:"gte=0,lte=100"`
}

// GearKind says: kind of landing gear.
type GearKind string

// Values of GearKind; the empty string means that nothing was said.
const (
	GearKindTricycle  GearKind = "GEAR_KIND_TRICYCLE"
	GearKindTailwheel GearKind = "GEAR_KIND_TAILWHEEL"
	GearKindSkid      GearKind = "GEAR_KIND_SKID"
	// No gear: launched from a ramp, bungee or hand and landed on the belly.
	GearKindBelly GearKind = "GEAR_KIND_BELLY"
)

// Names lists every value that may stand in a document.
func (GearKind) Names() []string {
	return []string{string(GearKindTricycle), string(GearKindTailwheel), string(GearKindSkid), string(GearKindBelly)}
}

// LandingGear: landing gear.
type LandingGear struct {
	Kind        GearKind `json:"kind,omitempty"`
	Retractable *bool    `json:"retractable,omitempty"`
	Wheels      []Wheel  `json:"wheels,omitempty" range:"max_items=12"`
	// Total frontal area of legs and wires.
	StrutFrontalAreaSquareMeters *Quantity `json:"strutFrontalAreaSquareMeters,omitempty" range:"gte=0,lte=1"`
	// Round wire and flat legs cost far more than faired ones.
	StrutsFaired *bool `json:"strutsFaired,omitempty"`
	// Rolling resistance over normal force from a pull test on the day's surface; replaces the table.
	RollingResistanceRatio *Quantity `json:"rollingResistanceRatio,omitempty" range:"gte=0,lte=1"`
	// Braking coefficient, zero without brakes.
	BrakingRatio *Quantity `json:"brakingRatio,omitempty" range:"gte=0,lte=1.5"`
	// Angle of the model's x axis to the ground when standing, nose up positive.
	GroundAttitudeDegrees *Quantity `json:"groundAttitudeDegrees,omitempty" range:"gte=-30,lte=30"`
	// Greatest nose-up angle before the tail strikes.
	TailStrikeDegrees *Quantity `json:"tailStrikeDegrees,omitempty" range:"gte=0,lte=60"`
	// Friction of skid or belly on the surface.
	SlidingFrictionRatio *Quantity `json:"slidingFrictionRatio,omitempty" range:"gte=0,lte=1.5"`
	// Rolling tests on the day's surface; their mean replaces the table where no rolling resistance is given directly.
	RollingTests []RollingTest `json:"rollingTests,omitempty" range:"max_items=20"`
}

// RollingTest: one rolling test of the model on its wheels, engine stopped, in still air: a steady pull; or a roll to rest from a speed; or a roll past three marks.
type RollingTest struct {
	Name string `json:"name,omitempty" range:"max_len=60"`
	// Pull that keeps the model rolling slowly, by a scale, along the ground.
	PullNewtons *Quantity `json:"pullNewtons,omitempty" range:"gte=0,lte=1000"`
	// Mass of the model in the test. Absent: as for the flight.
	MassKg *Quantity `json:"massKg,omitempty" range:"gte=0.01,lte=200"`
	// Slope along the roll, uphill positive. Absent: level.
	SlopeDegrees *float64 `json:"slopeDegrees,omitempty" range:"gte=-20,lte=20"`
	// Speed over the ground as a roll to rest begins.
	SpeedMetersPerSecond *Quantity `json:"speedMetersPerSecond,omitempty" range:"gte=0.1,lte=60"`
	// Distance of that roll to rest.
	DistanceMeters *Quantity `json:"distanceMeters,omitempty" range:"gte=0.01,lte=1000"`
	// Time from the first mark to the second.
	SecondMarkSeconds *Quantity `json:"secondMarkSeconds,omitempty" range:"gte=0.01,lte=600"`
	// Time from the first mark to the third.
	ThirdMarkSeconds *Quantity `json:"thirdMarkSeconds,omitempty" range:"gte=0.01,lte=600"`
	// Distance from the first mark to the second.
	SecondMarkMeters *float64 `json:"secondMarkMeters,omitempty" range:"gt=0,lte=1000"`
	// Distance from the first mark to the third.
	ThirdMarkMeters *float64 `json:"thirdMarkMeters,omitempty" range:"gt=0,lte=1000"`
}

// Wheel: one wheel.
type Wheel struct {
	Name           string   `json:"name,omitempty" range:"max_len=60"`
	DiameterMeters *float64 `json:"diameterMeters,omitempty" range:"gt=0,lte=0.6"`
	WidthMeters    *float64 `json:"widthMeters,omitempty" range:"gt=0,lte=0.3"`
	XMeters        *float64 `json:"xMeters,omitempty" range:"gte=-20,lte=20"`
	YMeters        *float64 `json:"yMeters,omitempty" range:"gte=-20,lte=20"`
	ZMeters        *float64 `json:"zMeters,omitempty" range:"gte=-20,lte=20"`
}
