package assess

// Limits: limits that apply: the defaults of the core, overridden by a rule pack or the club.
type Limits struct {
	// Least lift-off speed over stall speed. Absent: 1.2.
	MinimumLiftoffRatio *float64 `json:"minimumLiftoffRatio,omitempty" range:"gte=1,lte=3"`
	// Least approach speed over stall speed. Absent: 1.3.
	MinimumApproachRatio *float64 `json:"minimumApproachRatio,omitempty" range:"gte=1,lte=3"`
	// Least speed at the end of a ramp, bungee or throw over stall speed. Absent: 1.1.
	MinimumLaunchEndRatio *float64 `json:"minimumLaunchEndRatio,omitempty" range:"gte=0.8,lte=3"`
	// Least speed in the circuit's turns over the stall speed in the turn and gust. Absent: 1.2.
	MinimumTurnRatio *float64 `json:"minimumTurnRatio,omitempty" range:"gte=1,lte=3"`
	// Least clearance over every obstacle. Absent: 3 m.
	MinimumClearanceMeters *float64 `json:"minimumClearanceMeters,omitempty" range:"gte=0,lte=200"`
	// Share of the strip a wheeled launch to the screen may use. Absent: 0.75 of the length for the ground run.
	MaximumStripUseRatio *float64 `json:"maximumStripUseRatio,omitempty" range:"gt=0,lte=1"`
	// Deepest sink below the end of the ramp. Absent: half the ramp's end height.
	MaximumLaunchSinkMeters *float64 `json:"maximumLaunchSinkMeters,omitempty" range:"gte=0,lte=50"`
	// Least static thrust over weight. Absent: 0.4.
	MinimumThrustRatio *float64 `json:"minimumThrustRatio,omitempty" range:"gte=0,lte=5"`
	// Window of the static margin over mean chord. Absent: 0.05 to 0.20.
	MinimumStaticMarginRatio *float64 `json:"minimumStaticMarginRatio,omitempty" range:"gte=-0.5,lte=1"`
	MaximumStaticMarginRatio *float64 `json:"maximumStaticMarginRatio,omitempty" range:"gte=-0.5,lte=1"`
	// Top speed allowed by the rules. Absent: none.
	MaximumSpeedMetersPerSecond *float64 `json:"maximumSpeedMetersPerSecond,omitempty" range:"gt=0,lte=300"`
	// Greatest take-off mass allowed. Absent: none.
	MaximumMassKg *float64 `json:"maximumMassKg,omitempty" range:"gt=0,lte=200"`
	// Greatest height above ground. Absent: the field's.
	MaximumHeightMeters *float64 `json:"maximumHeightMeters,omitempty" range:"gt=0,lte=2000"`
	// Greatest gust, crosswind, least visibility.
	MaximumGustMetersPerSecond      *float64 `json:"maximumGustMetersPerSecond,omitempty" range:"gte=0,lte=60"`
	MaximumCrosswindMetersPerSecond *float64 `json:"maximumCrosswindMetersPerSecond,omitempty" range:"gte=0,lte=60"`
	MinimumVisibilityMeters         *float64 `json:"minimumVisibilityMeters,omitempty" range:"gte=0,lte=100000"`
	// Least distance to people and buildings.
	MinimumPeopleDistanceMeters    *float64 `json:"minimumPeopleDistanceMeters,omitempty" range:"gte=0,lte=5000"`
	MinimumStructureDistanceMeters *float64 `json:"minimumStructureDistanceMeters,omitempty" range:"gte=0,lte=5000"`
	// Longest fail-safe delay.
	MaximumFailSafeSeconds *float64 `json:"maximumFailSafeSeconds,omitempty" range:"gt=0,lte=60"`
	// Least reserve of fuel as a share of the load.
	MinimumFuelReserveRatio *float64 `json:"minimumFuelReserveRatio,omitempty" range:"gte=0,lte=1"`
	// Up-gust and down-gust for the load factor. Absent: 5 m/s.
	DesignGustMetersPerSecond *float64 `json:"designGustMetersPerSecond,omitempty" range:"gte=0,lte=30"`
	// Highest density altitude. Absent: none.
	MaximumDensityAltitudeMeters *float64 `json:"maximumDensityAltitudeMeters,omitempty" range:"gte=-1000,lte=6000"`
	// Highest stall speed. Absent: none.
	MaximumStallSpeedMetersPerSecond *float64 `json:"maximumStallSpeedMetersPerSecond,omitempty" range:"gt=0,lte=100"`
	// Rules as published: shown with the finding they bear on.
	Rules []AppliedRule `json:"rules,omitempty" range:"max_items=200"`
	// Name and version of the rule pack the figures come from.
	RulePack string `json:"rulePack,omitempty" range:"max_len=120"`
	// Least incidence left at the tips when the first strip stalls, in degrees. Absent: 1.
	MinimumTipStallMarginDegrees *float64 `json:"minimumTipStallMarginDegrees,omitempty" range:"gte=-10,lte=20"`
	// Least share of the pitch control's throw left over when trimmed and at the launch. Absent: 0.25.
	MinimumPitchReserveRatio *float64 `json:"minimumPitchReserveRatio,omitempty" range:"gte=0,lte=0.9"`
	// Most load factor that one degree of pitch control gives at top speed. Absent: 4.
	MaximumLoadPerDegree *float64 `json:"maximumLoadPerDegree,omitempty" range:"gt=0,lte=50"`
	// Least yawing-moment slope with sideslip, per radian. Absent: 0.04.
	MinimumFinStiffnessPerRadian *float64 `json:"minimumFinStiffnessPerRadian,omitempty" range:"gte=-0.1,lte=1"`
	// Least p b/(2 V) at full throw. Absent: 0.06.
	MinimumRollRatio *float64 `json:"minimumRollRatio,omitempty" range:"gte=0,lte=1"`
	// Least damping ratio of the short pitching motion. Absent: 0.35.
	MinimumPitchDampingRatio *float64 `json:"minimumPitchDampingRatio,omitempty" range:"gte=0,lte=2"`
	// Least speed of aileron reversal over top speed. Absent: 1.3.
	MinimumReversalRatio *float64 `json:"minimumReversalRatio,omitempty" range:"gte=1,lte=5"`
	// Largest difference between the weighed mass and the sum of the items, as a share. Absent: 0.03.
	MaximumMassDifferenceRatio *float64 `json:"maximumMassDifferenceRatio,omitempty" range:"gt=0,lte=1"`
	// Share of the length available that a landing from the screen may use. Absent: 0.7.
	MaximumLandingUseRatio *float64 `json:"maximumLandingUseRatio,omitempty" range:"gt=0,lte=1"`
	// Factor of a rule pack on the computed landing distance. Absent: 1.
	LandingDistanceFactor *float64 `json:"landingDistanceFactor,omitempty" range:"gte=1,lte=4"`
	// Factor of a rule pack on the computed take-off distance. Absent: 1.
	TakeoffDistanceFactor *float64 `json:"takeoffDistanceFactor,omitempty" range:"gte=1,lte=4"`
	// Least share of launch and circuit from which a dead engine still reaches a landing area. Absent: 0.8.
	MinimumReachRatio *float64 `json:"minimumReachRatio,omitempty" range:"gte=0,lte=1"`
	// Least angle between the landing's direction and a sun lower than 25 degrees. Absent: 30.
	MinimumSunOffsetDegrees *float64 `json:"minimumSunOffsetDegrees,omitempty" range:"gte=0,lte=180"`
	// Least and greatest air temperature.
	MinimumTemperatureCelsius *float64 `json:"minimumTemperatureCelsius,omitempty" range:"gte=-40,lte=60"`
	MaximumTemperatureCelsius *float64 `json:"maximumTemperatureCelsius,omitempty" range:"gte=-40,lte=60"`
	// Longest time since the weather was read, in minutes. Absent: 60.
	MaximumWeatherAgeMinutes *float64 `json:"maximumWeatherAgeMinutes,omitempty" range:"gt=0,lte=1440"`
	// Least margin of the radio link at the farthest place. Absent: 10 dB.
	MinimumRadioMarginDecibels *float64 `json:"minimumRadioMarginDecibels,omitempty" range:"gte=0,lte=60"`
	// Least voltage at receivers and servos. Absent: 4.8 V.
	MinimumBusVolts *float64 `json:"minimumBusVolts,omitempty" range:"gt=0,lte=30"`
	// Share of a pack's charge that a flight may use. Absent: 0.7.
	MaximumPackUseRatio *float64 `json:"maximumPackUseRatio,omitempty" range:"gt=0,lte=1"`
	// Least time that an air trap must feed the engine alone, in seconds. Absent: by pick-up.
	MinimumAirTrapSeconds *float64 `json:"minimumAirTrapSeconds,omitempty" range:"gte=0,lte=600"`
	// Share of samples in which findings about other people must hold. Absent: 0.99.
	RequiredThirdPartyProbability *float64 `json:"requiredThirdPartyProbability,omitempty" range:"gt=0,lte=1"`
	// Share of samples in which findings about the loss of the model must hold. Absent: 0.95.
	RequiredModelLossProbability *float64 `json:"requiredModelLossProbability,omitempty" range:"gt=0,lte=1"`
	// Share of samples in which findings about handling must hold. Absent: 0.8.
	RequiredHandlingProbability *float64 `json:"requiredHandlingProbability,omitempty" range:"gt=0,lte=1"`
	// Greatest free play of a control's trailing edge over its chord. Absent: 0.02.
	MaximumFreePlayRatio *float64 `json:"maximumFreePlayRatio,omitempty" range:"gt=0,lte=1"`
}
