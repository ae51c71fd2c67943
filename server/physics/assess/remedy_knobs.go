package assess

// The ends of ranges that no document gives.
const (
	strongestHeadwind = 12.0 // m/s, beyond which a model is not flown
	longestRamp       = 40.0 // m
	leastMassShare    = 0.7
	farthestShift     = 0.15 // m, of the balance point
)

// knobs are all that may be turned, by the work that they are.
var knobs = []knob{
	// What another day, or another way round, brings.
	{"wind.head", "Headwind at the launch", "m/s", RemedyEffortAnotherDay, end{}, end{endFixed, strongestHeadwind}, elsewhere, "", headwindSpots},
	{"wind.ceiling", "Wind, gusts in proportion", "m/s", RemedyEffortAnotherDay, end{endFixed, 0}, end{}, elsewhere, "", windSpots},
	{"gust.ceiling", "Highest gust", "m/s", RemedyEffortAnotherDay, end{endFixed, 0}, end{}, elsewhere, "", gustSpots},
	{"strip.direction", "Direction of the launch", "", RemedyEffortAnotherDay, end{}, end{}, elsewhere, "", stripSpots},
	{"landing.direction", "Direction of the landing", "", RemedyEffortAnotherDay, end{}, end{}, elsewhere, "", landingSpots},
	{"surface.dry", "Surface of the field", "", RemedyEffortAnotherDay, end{}, end{}, elsewhere, "", drySpots},
	{"day.temperature", "Air temperature", "C", RemedyEffortAnotherDay, end{endPlus, -15}, end{endPlus, 15}, atTemperature, "day.temperatureCelsius", nil},
	{"day.visibility", "Visibility", "m", RemedyEffortAnotherDay, end{}, end{endFixed, 30000}, atVisibility, "day.visibilityMeters", nil},
	// Settings of the launch, the circuit and the landing.
	{"circuit.height", "Height of the circuit", "m", RemedyEffortAdjust, end{endTimes, 0.4}, end{endTimes, 2.5}, atCircuitHeight, "launchPlan.circuit.heightMeters", nil},
	{"circuit.speed", "Speed in the circuit", "m/s", RemedyEffortAdjust, end{endTimes, 0.7}, end{endTimes, 1.6}, atCircuitSpeed, "launchPlan.circuit.airspeedMetersPerSecond", nil},
	{"circuit.leg", "Straight leg of the circuit", "m", RemedyEffortAdjust, end{endTimes, 0.3}, end{endTimes, 2}, atCircuitLeg, "launchPlan.circuit.straightLegMeters", nil},
	{"circuit.bank", "Bank in the circuit", "deg", RemedyEffortAdjust, end{endFixed, 15}, end{endFixed, 65}, elsewhere, "", bankSpots},
	{"approach.ratio", "Speed over the threshold over stall speed", "1", RemedyEffortAdjust, end{endFixed, 1.15}, end{endFixed, 2}, elsewhere, "", approachSpots},
	{"landing.aim", "Aim point beyond the threshold", "m", RemedyEffortAdjust, end{endFixed, 0}, end{endPlus, 40}, elsewhere, "", aimSpots},
	{"thrust.setting", "Thrust set at the launch", "1", RemedyEffortAdjust, end{}, end{endFixed, 1}, elsewhere, "", settingSpots},
	{"ramp.angle", "Slope of the ramp", "deg", RemedyEffortAdjust, end{endFixed, 0}, end{endFixed, 20}, atRampAngle, "launchPlan.ramp.angleDegrees", nil},
	{"ramp.cradle", "Incidence on the dolly", "deg", RemedyEffortAdjust, end{endPlus, -6}, end{endPlus, 6}, atRampCradle, "launchPlan.ramp.cradleDegrees", nil},
	{"bungee.stretch", "Stretch of the bungee", "m", RemedyEffortAdjust, end{endTimes, 0.5}, end{endTimes, 2}, atBungeeStretch, "launchPlan.bungee.stretchMeters", nil},
	{"failsafe.delay", "Delay of the fail-safe", "s", RemedyEffortAdjust, end{endFixed, 0.1}, end{}, atFailSafeDelay, "model.radio.failSafeDelaySeconds", nil},
	{"failsafe.action", "What the fail-safe does", "", RemedyEffortAdjust, end{}, end{}, elsewhere, "", failSafeSpots},
	{"pack.charge", "Charge of a pack", "1", RemedyEffortAdjust, end{}, end{endFixed, 1}, atPackCharge, "chargeRatio", nil},
	{"pack.wait", "Wait in the open", "min", RemedyEffortAdjust, end{endFixed, 0}, end{}, atPackWait, "waitInOpenMinutes", nil},
	{"circuit.count", "Circuits flown", "1", RemedyEffortAdjust, end{}, end{}, elsewhere, "", countSpots},
	// What is set, loaded and moved in the model.
	{"throw", "Throws of a control, downward", "deg", RemedyEffortAdjust, end{endTimes, 0.4}, end{endTimes, 2.5}, atThrow, "throwDownDegrees", nil},
	{"fuel.load", "Filling of a tank", "1", RemedyEffortAdjust, end{endTimes, 0.3}, end{endFixed, 1}, elsewhere, "", fillSpots},
	{"ballast", "Ballast", "kg", RemedyEffortAdjust, end{}, end{endFixed, 2}, elsewhere, "", ballastSpots},
	{"balance.shift", "Balance point, by moving equipment", "m", RemedyEffortAdjust, end{endPlus, -farthestShift}, end{endPlus, farthestShift}, atBalance, wholeBalancePath, nil},
	{"mass", "Mass without fuel", "kg", RemedyEffortEquipment, end{endTimes, leastMassShare}, end{}, atMass, wholeMassPath, nil},
	// Parts that can be had or made without touching the model's structure.
	{"ramp.length", "Length of the ramp", "m", RemedyEffortEquipment, end{}, end{endFixed, longestRamp}, atRampLength, "launchPlan.ramp.lengthMeters", nil},
	{"ramp.height", "Height of the ramp's end", "m", RemedyEffortEquipment, end{}, end{endPlus, 3}, atRampHeight, "launchPlan.ramp.endHeightMeters", nil},
	{"thrust", "Static thrust of an engine", "N", RemedyEffortEquipment, end{}, end{endTimes, 2}, atThrust, "staticThrustNewtons", nil},
	{"surface.mown", "Grass of the strip", "", RemedyEffortEquipment, end{}, end{}, elsewhere, "", mownSpots},
	{"line.bore", "Bore of the narrowest suction line", "m", RemedyEffortEquipment, end{}, end{endTimes, 3}, elsewhere, "", lineSpots},
	{"trap.volume", "Volume of the air trap", "L", RemedyEffortEquipment, end{}, end{endPlus, 0.5}, atTrapVolume, "model.fuelSystem.airTrapVolumeLiters", nil},
	{"vent.bore", "Bore of the vent", "m", RemedyEffortEquipment, end{}, end{endTimes, 4}, atVentBore, "model.fuelSystem.ventBoreMeters", nil},
	{"pack.capacity", "Capacity of a pack", "Ah", RemedyEffortEquipment, end{}, end{endTimes, 5}, atPackCapacity, "capacityAmpereHours", nil},
	{"heat.foil", "Foil over a heated part", "", RemedyEffortEquipment, end{}, end{}, elsewhere, "", foilSpots},
	{"heat.distance", "Distance of a part from the hot wall", "m", RemedyEffortEquipment, end{}, end{endPlus, 0.1}, atHeatDistance, "fromAxisMeters", nil},
	{"antenna.carbon", "Antenna out of the carbon", "", RemedyEffortEquipment, end{}, end{}, elsewhere, "", carbonSpots},
	{"antenna.added", "One more antenna", "", RemedyEffortEquipment, end{}, end{}, elsewhere, "", addedSpots},
	{"control.play", "Slack of a control", "m", RemedyEffortEquipment, end{endTimes, 0.1}, end{}, atPlay, "freePlayMeters", nil},
	{"servo.torque", "Torque of a servo", "N m", RemedyEffortEquipment, end{}, end{endTimes, 4}, atServo, "linkage.servoTorqueNewtonMeters", nil},
	{"rod.diameter", "Diameter of a pushrod", "m", RemedyEffortEquipment, end{}, end{endTimes, 3}, atRod, "linkage.rodDiameterMeters", nil},
	{"bolt.diameter", "Diameter of the wing's bolts", "m", RemedyEffortEquipment, end{}, end{endTimes, 2.5}, atBolts, "model.structure.wingBoltDiameterMeters", nil},
	// Changes of the model itself.
	{"spar.diameter", "Outer diameter of a spar", "m", RemedyEffortRebuild, end{}, end{endTimes, 2.5}, atSparDiameter, "outerDiameterMeters", nil},
	{"spar.wall", "Wall of a spar's tube", "m", RemedyEffortRebuild, end{}, end{endTimes, 4}, atSparWall, "wallThicknessMeters", nil},
	{"spar.cap", "Caps of a spar", "m", RemedyEffortRebuild, end{}, end{endTimes, 5}, atSparCap, "capThicknessMeters", nil},
	{"spar.web", "Web of a spar", "m", RemedyEffortRebuild, end{}, end{endTimes, 5}, atSparWeb, "webThicknessMeters", nil},
	{"joiner.length", "Length of the joiner in each panel", "m", RemedyEffortRebuild, end{}, end{endTimes, 4}, atJoinerLength, "model.structure.joiner.engagedLengthMeters", nil},
	{"joiner.diameter", "Outer diameter of the joiner", "m", RemedyEffortRebuild, end{}, end{endTimes, 2.5}, atJoinerDiameter, "model.structure.joiner.part.outerDiameterMeters", nil},
	{"joiner.wall", "Wall of the joiner", "m", RemedyEffortRebuild, end{}, end{endTimes, 4}, atJoinerWall, "model.structure.joiner.part.wallThicknessMeters", nil},
	{"tank.place", "Place of a tank", "m", RemedyEffortRebuild, end{endPlus, -farthestShift}, end{endPlus, farthestShift}, elsewhere, "", tankSpots},
}
