package assess

// FuelSystem: from the tank to the pump.
type FuelSystem struct {
	Fuel                   string    `json:"fuel,omitempty" range:"max_len=60"`
	DensityKgPerCubicMeter *Quantity `json:"densityKgPerCubicMeter,omitempty" range:"gte=500,lte=1200"`
	// Litres of oil to one litre of fuel.
	OilRatio *float64 `json:"oilRatio,omitempty" range:"gte=0,lte=0.2"`
	// Air trap between tank and pump.
	AirTrap                   *bool      `json:"airTrap,omitempty"`
	AirTrapVolumeLiters       *Quantity  `json:"airTrapVolumeLiters,omitempty" range:"gte=0,lte=5"`
	Lines                     []FuelLine `json:"lines,omitempty" range:"max_items=20"`
	Filter                    *bool      `json:"filter,omitempty"`
	FilterPressureLossPascals *Quantity  `json:"filterPressureLossPascals,omitempty" range:"gte=0,lte=100000"`
	Vent                      *bool      `json:"vent,omitempty"`
	VentBoreMeters            *Quantity  `json:"ventBoreMeters,omitempty" range:"gte=0.0001,lte=0.05"`
	VentAgainstSiphoning      *bool      `json:"ventAgainstSiphoning,omitempty"`
	FeltPickup                *bool      `json:"feltPickup,omitempty"`
	ShutOffValve              *bool      `json:"shutOffValve,omitempty"`
	// Height of the pump above the lowest fuel pick-up, model level.
	PumpHeightMeters *Quantity `json:"pumpHeightMeters,omitempty" range:"gte=-5,lte=5"`
	PumpXMeters      *Quantity `json:"pumpXMeters,omitempty" range:"gte=-20,lte=20"`
	UnusableLiters   *Quantity `json:"unusableLiters,omitempty" range:"gte=0,lte=100"`
	BladderTank      *bool     `json:"bladderTank,omitempty"`
	// Small tank between the main tank and the trap.
	HeaderTankLiters *Quantity `json:"headerTankLiters,omitempty" range:"gte=0,lte=100"`
	VentLengthMeters *Quantity `json:"ventLengthMeters,omitempty" range:"gte=0,lte=10"`
	// True when the tank is held softly, so that vibration does not froth the fuel.
	SoftMounted *bool `json:"softMounted,omitempty"`
}

// FuelLine: one length of fuel line.
type FuelLine struct {
	Name         string   `json:"name,omitempty" range:"max_len=60"`
	LengthMeters *float64 `json:"lengthMeters,omitempty" range:"gt=0,lte=10"`
	BoreMeters   *float64 `json:"boreMeters,omitempty" range:"gt=0,lte=0.05"`
	ElbowCount   *int32   `json:"elbowCount,omitempty" range:"gte=0,lte=40"`
	// True for lines on the suction side of the pump.
	SuctionSide *bool `json:"suctionSide,omitempty"`
}

// FailSafeAction says: what the model does when the link is lost.
type FailSafeAction string

// Values of FailSafeAction; the empty string means that nothing was said.
const (
	FailSafeActionCutNeutral  FailSafeAction = "FAIL_SAFE_ACTION_CUT_NEUTRAL"
	FailSafeActionCutSpiral   FailSafeAction = "FAIL_SAFE_ACTION_CUT_SPIRAL"
	FailSafeActionIdleNeutral FailSafeAction = "FAIL_SAFE_ACTION_IDLE_NEUTRAL"
	FailSafeActionHold        FailSafeAction = "FAIL_SAFE_ACTION_HOLD"
	FailSafeActionNone        FailSafeAction = "FAIL_SAFE_ACTION_NONE"
)

// Names lists every value that may stand in a document.
func (FailSafeAction) Names() []string {
	return []string{string(FailSafeActionCutNeutral), string(FailSafeActionCutSpiral), string(FailSafeActionIdleNeutral), string(FailSafeActionHold), string(FailSafeActionNone)}
}

// RadioLink: radio link.
type RadioLink struct {
	FrequencyMegahertz      *Quantity      `json:"frequencyMegahertz,omitempty" range:"gte=20,lte=10000"`
	RadiatedPowerMilliwatts *Quantity      `json:"radiatedPowerMilliwatts,omitempty" range:"gte=0.001,lte=10000"`
	ReceiverSensitivityDbm  *Quantity      `json:"receiverSensitivityDbm,omitempty" range:"gte=-160,lte=-20"`
	Antennas                []Antenna      `json:"antennas,omitempty" range:"max_items=8"`
	FailSafeAction          FailSafeAction `json:"failSafeAction,omitempty"`
	// Time from loss of link to the fail-safe's action, as timed.
	FailSafeDelaySeconds *Quantity `json:"failSafeDelaySeconds,omitempty" range:"gte=0,lte=60"`
	// Bench range check: distance reached with reduced power.
	RangeCheckMeters            *Quantity `json:"rangeCheckMeters,omitempty" range:"gte=0,lte=5000"`
	RangeCheckReductionDecibels *Quantity `json:"rangeCheckReductionDecibels,omitempty" range:"gte=0,lte=80"`
	ReceiverCount               *int32    `json:"receiverCount,omitempty" range:"gte=1,lte=8"`
	TransmitterHeightMeters     *float64  `json:"transmitterHeightMeters,omitempty" range:"gt=0,lte=20"`
	// Height of the model above the ground during the range check.
	RangeCheckHeightMeters *float64 `json:"rangeCheckHeightMeters,omitempty" range:"gte=0,lte=20"`
	// Angle of the transmitter's antenna above the horizon: 90 upright.
	TransmitterAntennaElevationDegrees *float64 `json:"transmitterAntennaElevationDegrees,omitempty" range:"gte=-90,lte=90"`
	// True when each receiver has a pack of its own.
	SeparateReceiverPacks *bool `json:"separateReceiverPacks,omitempty"`
	// True when the transmitter warns of a lost way back.
	TelemetryLossWarned *bool `json:"telemetryLossWarned,omitempty"`
	// What was noticed of interference, newest last.
	Interference []InterferenceEntry `json:"interference,omitempty" range:"max_items=40"`
}

// InterferenceEntry: one observation of interference.
type InterferenceEntry struct {
	// Day, e.g. "2024-05-14".
	Date  string `json:"date,omitempty" range:"max_len=10"`
	Place string `json:"place,omitempty" range:"max_len=120"`
	// What was seen: surfaces twitched, link lost for a moment.
	Observation     string   `json:"observation,omitempty" range:"max_len=400"`
	DurationSeconds *float64 `json:"durationSeconds,omitempty" range:"gte=0,lte=3600"`
	DistanceMeters  *float64 `json:"distanceMeters,omitempty" range:"gte=0,lte=10000"`
	// What caused it, once found. Absent: not known.
	Cause string `json:"cause,omitempty" range:"max_len=400"`
}

// Antenna: one receiving antenna.
type Antenna struct {
	Name string `json:"name,omitempty" range:"max_len=60"`
	// Direction of its axis in the model.
	AzimuthDegrees   *float64 `json:"azimuthDegrees,omitempty" range:"gte=-180,lte=180"`
	ElevationDegrees *float64 `json:"elevationDegrees,omitempty" range:"gte=-90,lte=90"`
	// What stands in front of it: carbon, metal, fuel, engine.
	ShadedBy []string `json:"shadedBy,omitempty" range:"max_items=8" items:"max_len=40"`
	// True when it lies inside a carbon part.
	InsideCarbon *bool `json:"insideCarbon,omitempty"`
}

// PackChemistry says: chemistry of a pack.
type PackChemistry string

// Values of PackChemistry; the empty string means that nothing was said.
const (
	PackChemistryLithiumPolymer       PackChemistry = "PACK_CHEMISTRY_LITHIUM_POLYMER"
	PackChemistryLithiumIon           PackChemistry = "PACK_CHEMISTRY_LITHIUM_ION"
	PackChemistryLithiumIronPhosphate PackChemistry = "PACK_CHEMISTRY_LITHIUM_IRON_PHOSPHATE"
	PackChemistryNickelMetalHydride   PackChemistry = "PACK_CHEMISTRY_NICKEL_METAL_HYDRIDE"
)

// Names lists every value that may stand in a document.
func (PackChemistry) Names() []string {
	return []string{string(PackChemistryLithiumPolymer), string(PackChemistryLithiumIon), string(PackChemistryLithiumIronPhosphate), string(PackChemistryNickelMetalHydride)}
}

// PackUse says: what a pack feeds.
type PackUse string

// Values of PackUse; the empty string means that nothing was said.
const (
	PackUseReceiver      PackUse = "PACK_USE_RECEIVER"
	PackUseEngineControl PackUse = "PACK_USE_ENGINE_CONTROL"
	PackUsePropulsion    PackUse = "PACK_USE_PROPULSION"
)

// Names lists every value that may stand in a document.
func (PackUse) Names() []string {
	return []string{string(PackUseReceiver), string(PackUseEngineControl), string(PackUsePropulsion)}
}

// RegulatorKind says: how the voltage for the loads is made.
type RegulatorKind string

// Values of RegulatorKind; the empty string means that nothing was said.
const (
	// The pack feeds the loads as it is.
	RegulatorKindNone      RegulatorKind = "REGULATOR_KIND_NONE"
	RegulatorKindLinear    RegulatorKind = "REGULATOR_KIND_LINEAR"
	RegulatorKindSwitching RegulatorKind = "REGULATOR_KIND_SWITCHING"
)

// Names lists every value that may stand in a document.
func (RegulatorKind) Names() []string {
	return []string{string(RegulatorKindNone), string(RegulatorKindLinear), string(RegulatorKindSwitching)}
}

// Pack: a battery pack.
type Pack struct {
	Name                      string        `json:"name,omitempty" range:"min_len=1,max_len=60"`
	Use                       PackUse       `json:"use,omitempty"`
	Chemistry                 PackChemistry `json:"chemistry,omitempty"`
	SeriesCellCount           *int32        `json:"seriesCellCount,omitempty" range:"gte=1,lte=24"`
	CapacityAmpereHours       *Quantity     `json:"capacityAmpereHours,omitempty" range:"gte=0.001,lte=200"`
	InternalResistanceOhms    *Quantity     `json:"internalResistanceOhms,omitempty" range:"gte=0,lte=10"`
	MeanCurrentAmperes        *Quantity     `json:"meanCurrentAmperes,omitempty" range:"gte=0,lte=1000"`
	PeakCurrentAmperes        *Quantity     `json:"peakCurrentAmperes,omitempty" range:"gte=0,lte=1000"`
	LeadLengthMeters          *Quantity     `json:"leadLengthMeters,omitempty" range:"gte=0,lte=10"`
	LeadAreaSquareMillimeters *Quantity     `json:"leadAreaSquareMillimeters,omitempty" range:"gte=0.001,lte=100"`
	RegulatorVoltageVolts     *Quantity     `json:"regulatorVoltageVolts,omitempty" range:"gte=0.5,lte=60"`
	RegulatorDropOutVolts     *Quantity     `json:"regulatorDropOutVolts,omitempty" range:"gte=0,lte=10"`
	AgeYears                  *Quantity     `json:"ageYears,omitempty" range:"gte=0,lte=50"`
	ChargeRatio               *Quantity     `json:"chargeRatio,omitempty" range:"gte=0,lte=1"`
	RegulatorKind             RegulatorKind `json:"regulatorKind,omitempty"`
	// Reading under load at the field and the current of that load.
	LoadedVoltageVolts *Quantity `json:"loadedVoltageVolts,omitempty" range:"gte=0,lte=120"`
	LoadTestAmperes    *Quantity `json:"loadTestAmperes,omitempty" range:"gte=0,lte=1000"`
	// How long the pack lies in the open before the flight.
	WaitInOpenMinutes *Quantity `json:"waitInOpenMinutes,omitempty" range:"gte=0,lte=1440"`
	MassKg            *Quantity `json:"massKg,omitempty" range:"gte=0,lte=100"`
	// Reading without load before that under load. Absent: taken from the charge.
	RestVoltageVolts *Quantity `json:"restVoltageVolts,omitempty" range:"gte=0,lte=120"`
}
