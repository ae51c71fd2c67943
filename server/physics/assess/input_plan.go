package assess

// LaunchMethod says: how the model gets into the air.
type LaunchMethod string

// Values of LaunchMethod; the empty string means that nothing was said.
const (
	LaunchMethodWheels   LaunchMethod = "LAUNCH_METHOD_WHEELS"
	LaunchMethodRamp     LaunchMethod = "LAUNCH_METHOD_RAMP"
	LaunchMethodBungee   LaunchMethod = "LAUNCH_METHOD_BUNGEE"
	LaunchMethodHand     LaunchMethod = "LAUNCH_METHOD_HAND"
	LaunchMethodCatapult LaunchMethod = "LAUNCH_METHOD_CATAPULT"
)

// Names lists every value that may stand in a document.
func (LaunchMethod) Names() []string {
	return []string{string(LaunchMethodWheels), string(LaunchMethodRamp), string(LaunchMethodBungee), string(LaunchMethodHand), string(LaunchMethodCatapult)}
}

// LaunchPlan: the launch, the circuit and the landing as planned.
type LaunchPlan struct {
	Method LaunchMethod `json:"method,omitempty"`
	// Strip used by a wheeled launch, by name, and direction: true runs from end to start.
	Strip         string `json:"strip,omitempty" range:"max_len=40"`
	StripReversed *bool  `json:"stripReversed,omitempty"`
	// Launch spot used by the other methods, by name.
	LaunchSpot string `json:"launchSpot,omitempty" range:"max_len=80"`
	// Heading of the launch, degrees true; absent: of the strip or spot.
	HeadingDegrees *float64 `json:"headingDegrees,omitempty" range:"gte=0,lt=360"`
	Ramp           *Ramp    `json:"ramp,omitempty"`
	Bungee         *Bungee  `json:"bungee,omitempty"`
	// Speed given by the hand.
	HandSpeedMetersPerSecond *Quantity `json:"handSpeedMetersPerSecond,omitempty" range:"gte=0,lte=40"`
	// Height of the hand above ground.
	HandHeightMeters *Quantity `json:"handHeightMeters,omitempty" range:"gte=0,lte=10"`
	// Force of a catapult along its stroke.
	Catapult []CatapultPoint `json:"catapult,omitempty" range:"max_items=60"`
	// Share of full thrust set at the start.
	ThrustSettingRatio *float64 `json:"thrustSettingRatio,omitempty" range:"gte=0,lte=1"`
	// True when the engine runs at full thrust before the model is let go.
	FullThrustBeforeRelease *bool `json:"fullThrustBeforeRelease,omitempty"`
	// Incidence held after leaving the ground, ramp or hand, as a share of the greatest lift coefficient. Absent: 0.7.
	ClimbLiftRatio *float64     `json:"climbLiftRatio,omitempty" range:"gt=0,lte=1"`
	Circuit        *CircuitPlan `json:"circuit,omitempty"`
	// Height of the screen at which the launch ends. Absent: 10 m.
	ScreenHeightMeters *float64 `json:"screenHeightMeters,omitempty" range:"gt=0,lte=100"`
	// Strip or landing area used to land, by name; absent: the launch strip.
	LandingPlace string       `json:"landingPlace,omitempty" range:"max_len=80"`
	Landing      *LandingPlan `json:"landing,omitempty"`
}

// LandingPlan: the landing as planned. Every part may be missing.
type LandingPlan struct {
	// Direction of the landing, degrees true; absent: the strip's or area's direction that has the better headwind.
	HeadingDegrees *float64 `json:"headingDegrees,omitempty" range:"gte=0,lt=360"`
	// Slope of the approach below the horizon. Absent: what idle thrust and drag give at the approach speed, no steeper than 12 degrees.
	ApproachAngleDegrees *float64 `json:"approachAngleDegrees,omitempty" range:"gt=0,lte=30"`
	// Speed over the threshold over stall speed. Absent: the least that the limits allow with 2 % to spare, and the gust's excess over the mean wind with
	// its spread added.
	ApproachRatio *float64 `json:"approachRatio,omitempty" range:"gte=1,lte=3"`
	// How far beyond the threshold the pilot aims to touch down. Absent: a tenth of the length, 10 m at least.
	AimPointMeters *float64 `json:"aimPointMeters,omitempty" range:"gte=0,lte=500"`
	// Load factor of the flare above one. Absent: 0.1.
	FlareLoad *float64 `json:"flareLoad,omitempty" range:"gt=0,lte=1"`
}

// Ramp: a launch ramp with a dolly.
type Ramp struct {
	// Length the model travels on the rails.
	LengthMeters *Quantity `json:"lengthMeters,omitempty" range:"gte=0.1,lte=100"`
	// Slope of the rails.
	AngleDegrees *Quantity `json:"angleDegrees,omitempty" range:"gte=-30,lte=90"`
	// Height of the ramp's end above the ground at its foot.
	EndHeightMeters *Quantity `json:"endHeightMeters,omitempty" range:"gte=-20,lte=50"`
	DollyMassKg     *Quantity `json:"dollyMassKg,omitempty" range:"gte=0,lte=200"`
	// Friction of dolly on rails over normal force.
	FrictionRatio *Quantity `json:"frictionRatio,omitempty" range:"gte=0,lte=1.5"`
	// Incidence of the model on the dolly to the rails, nose up positive.
	CradleDegrees *Quantity `json:"cradleDegrees,omitempty" range:"gte=-30,lte=30"`
	// Height of the rails along the length, when not straight.
	RailProfile []ProfilePoint `json:"railProfile,omitempty" range:"max_items=60"`
	// Thrust at which the pin lets the model go. With full thrust before release it holds and is pulled by hand.
	ReleaseForceNewtons *Quantity `json:"releaseForceNewtons,omitempty" range:"gte=0,lte=2000"`
	// Lowest point of the model behind the cradle, skid, fin or pipe: its place aft of the datum.
	TailXMeters *Quantity `json:"tailXMeters,omitempty" range:"gte=-20,lte=20"`
	// Height of that point over the rails while the model lies in the cradle.
	TailHeightMeters *Quantity `json:"tailHeightMeters,omitempty" range:"gte=-5,lte=5"`
	// Drag coefficient times area of the dolly in the air. Absent: it falls without drag.
	DollyDragAreaSquareMeters *Quantity `json:"dollyDragAreaSquareMeters,omitempty" range:"gte=0,lte=5"`
}

// Bungee: a bungee.
type Bungee struct {
	// Force per metre of stretch. Not needed with a pull test.
	StiffnessNewtonsPerMeter *Quantity `json:"stiffnessNewtonsPerMeter,omitempty" range:"gte=0.01,lte=100000"`
	// Stretch at release.
	StretchMeters *Quantity `json:"stretchMeters,omitempty" range:"gte=0.01,lte=1000"`
	// Share of the stored energy that comes back.
	EfficiencyRatio *Quantity `json:"efficiencyRatio,omitempty" range:"gte=0.01,lte=1"`
	// Mass of the moving cord.
	CordMassKg *Quantity `json:"cordMassKg,omitempty" range:"gte=0,lte=50"`
	// Friction of skid or dolly before the model flies.
	FrictionRatio *Quantity `json:"frictionRatio,omitempty" range:"gte=0,lte=1.5"`
	// Slope of the ground or rail under the stroke.
	AngleDegrees *Quantity `json:"angleDegrees,omitempty" range:"gte=-30,lte=90"`
	// Pull test in order of stretch, at least as far as the stretch at release; takes the place of the stiffness.
	PullTest []PullTestPoint `json:"pullTest,omitempty" range:"max_items=60"`
	// Pull of the cord at which the hook lets go. Absent: when the cord is slack.
	HookReleaseNewtons *Quantity `json:"hookReleaseNewtons,omitempty" range:"gte=0,lte=100000"`
}

// PullTestPoint: force of a cord at one stretch.
type PullTestPoint struct {
	StretchMeters *float64 `json:"stretchMeters,omitempty" range:"gte=0,lte=1000"`
	ForceNewtons  *float64 `json:"forceNewtons,omitempty" range:"gte=0,lte=100000"`
}

// CatapultPoint: force of a catapult at one place of its stroke.
type CatapultPoint struct {
	TravelMeters *float64 `json:"travelMeters,omitempty" range:"gte=0,lte=100"`
	ForceNewtons *float64 `json:"forceNewtons,omitempty" range:"gte=0,lte=100000"`
}

// CircuitHand says: which way round the circuit goes.
type CircuitHand string

// Values of CircuitHand; the empty string means that nothing was said.
const (
	CircuitHandLeft  CircuitHand = "CIRCUIT_HAND_LEFT"
	CircuitHandRight CircuitHand = "CIRCUIT_HAND_RIGHT"
)

// Names lists every value that may stand in a document.
func (CircuitHand) Names() []string {
	return []string{string(CircuitHandLeft), string(CircuitHandRight)}
}

// CircuitPlan: the circuit as planned.
type CircuitPlan struct {
	Hand         CircuitHand `json:"hand,omitempty"`
	HeightMeters *Quantity   `json:"heightMeters,omitempty" range:"gte=1,lte=2000"`
	// Speed through the air; absent: 1.5 times the stall speed.
	AirspeedMetersPerSecond *Quantity `json:"airspeedMetersPerSecond,omitempty" range:"gte=1,lte=300"`
	// Steepest bank in the circuit. Absent: 45 degrees.
	BankDegrees *float64 `json:"bankDegrees,omitempty" range:"gt=0,lt=80"`
	// Pilot's reaction time. Absent: 1 s.
	ReactionSeconds *float64 `json:"reactionSeconds,omitempty" range:"gte=0,lte=10"`
	// Number of circuits planned.
	CircuitCount *int32 `json:"circuitCount,omitempty" range:"gte=1,lte=60"`
	// Length of the leg along the strip. Absent: computed.
	StraightLegMeters *Quantity `json:"straightLegMeters,omitempty" range:"gte=0,lte=20000"`
}
