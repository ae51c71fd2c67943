package assess

import "slices"

// knobs are all that may be turned, by the work that they are.
var knobs = slices.Concat(dayKnobs, planKnobs, modelKnobs, equipmentKnobs, structureKnobs)

// The ends of ranges that no document gives.
const (
	strongestHeadwind = 12.0 // m/s, beyond which a model is not flown
	longestRamp       = 40.0 // m
	leastMassShare    = 0.7
	farthestShift     = 0.15 // m, of the balance point
)

// dayKnobs are what another day, or another way round, brings.
var dayKnobs = []knob{
	{"wind.head", "Headwind at the launch", "m/s", RemedyEffortAnotherDay, stays, fixed(strongestHeadwind), headwindSpots},
	{"wind.ceiling", "Wind, gusts in proportion", "m/s", RemedyEffortAnotherDay, fixed(0), stays, windSpots},
	{"gust.ceiling", "Highest gust", "m/s", RemedyEffortAnotherDay, windMean, stays, gustSpots},
	{"strip.direction", "Direction of the launch", "", RemedyEffortAnotherDay, stays, stays, stripSpots},
	{"landing.direction", "Direction of the landing", "", RemedyEffortAnotherDay, stays, stays, landingSpots},
	{"surface.dry", "Surface of the field", "", RemedyEffortAnotherDay, stays, stays, drySpots},
	{
		"day.temperature", "Air temperature", "C", RemedyEffortAnotherDay, plus(-15), plus(15),
		quantityOf("day.temperatureCelsius", inDay(func(d *DayConditions) **Quantity { return &d.TemperatureCelsius })),
	},
	{
		"day.visibility", "Visibility", "m", RemedyEffortAnotherDay, stays, fixed(30000),
		quantityOf("day.visibilityMeters", inDay(func(d *DayConditions) **Quantity { return &d.VisibilityMeters })),
	},
}

// planKnobs are settings of the launch, the circuit and the landing.
var planKnobs = []knob{
	{
		"circuit.height", "Height of the circuit", "m", RemedyEffortAdjust, times(0.4), times(2.5),
		quantityOf("launchPlan.circuit.heightMeters", inCircuit(func(c *CircuitPlan) **Quantity { return &c.HeightMeters })),
	},
	{
		"circuit.speed", "Speed in the circuit", "m/s", RemedyEffortAdjust, times(0.7), times(1.6),
		quantityOf("launchPlan.circuit.airspeedMetersPerSecond", inCircuit(func(c *CircuitPlan) **Quantity { return &c.AirspeedMetersPerSecond })),
	},
	{
		"circuit.leg", "Straight leg of the circuit", "m", RemedyEffortAdjust, times(0.3), times(2),
		quantityOf("launchPlan.circuit.straightLegMeters", inCircuit(func(c *CircuitPlan) **Quantity { return &c.StraightLegMeters })),
	},
	{"circuit.bank", "Bank in the circuit", "deg", RemedyEffortAdjust, fixed(15), fixed(65), bankSpots},
	{"approach.ratio", "Speed over the threshold over stall speed", "1", RemedyEffortAdjust, fixed(1.15), fixed(2), approachSpots},
	{"landing.aim", "Aim point beyond the threshold", "m", RemedyEffortAdjust, fixed(0), plus(40), aimSpots},
	{"thrust.setting", "Thrust set at the launch", "1", RemedyEffortAdjust, stays, fixed(1), settingSpots},
	{
		"ramp.angle", "Slope of the ramp", "deg", RemedyEffortAdjust, fixed(0), fixed(20),
		quantityOf("launchPlan.ramp.angleDegrees", inRamp(func(r *Ramp) **Quantity { return &r.AngleDegrees })),
	},
	{
		"ramp.cradle", "Incidence on the dolly", "deg", RemedyEffortAdjust, plus(-6), plus(6),
		quantityOf("launchPlan.ramp.cradleDegrees", inRamp(func(r *Ramp) **Quantity { return &r.CradleDegrees })),
	},
	{
		"bungee.stretch", "Stretch of the bungee", "m", RemedyEffortAdjust, times(0.5), times(2),
		quantityOf("launchPlan.bungee.stretchMeters", inBungee(func(b *Bungee) **Quantity { return &b.StretchMeters })),
	},
	{
		"failsafe.delay", "Delay of the fail-safe", "s", RemedyEffortAdjust, fixed(0.1), stays,
		quantityOf("model.radio.failSafeDelaySeconds", inRadio(func(r *RadioLink) **Quantity { return &r.FailSafeDelaySeconds })),
	},
	{"failsafe.action", "What the fail-safe does", "", RemedyEffortAdjust, stays, stays, failSafeSpots},
	{
		"pack.charge", "Charge of a pack", "1", RemedyEffortAdjust, stays, fixed(1),
		inPacks("chargeRatio", func(p *Pack) **Quantity { return &p.ChargeRatio }),
	},
	{
		"pack.wait", "Wait in the open", "min", RemedyEffortAdjust, fixed(0), stays,
		inPacks("waitInOpenMinutes", func(p *Pack) **Quantity { return &p.WaitInOpenMinutes }),
	},
	{"circuit.count", "Circuits flown", "1", RemedyEffortAdjust, stays, stays, countSpots},
}

// modelKnobs are what is set, loaded and moved in the model.
var modelKnobs = []knob{
	{"throw", "Throws of a control, downward", "deg", RemedyEffortAdjust, times(0.4), atMost(times(2.5), 40), throwSpots},
	{"fuel.load", "Filling of a tank", "1", RemedyEffortAdjust, times(0.3), fixed(1), fillSpots},
	{"ballast", "Ballast", "kg", RemedyEffortAdjust, stays, fixed(2), ballastSpots},
	{
		"balance.shift", "Balance point, by moving equipment", "m", RemedyEffortAdjust, plus(-farthestShift), plus(farthestShift),
		quantityOf(wholeBalancePath, inMass(func(m *MassProperties) **Quantity { return &m.EmptyBalanceXMeters })),
	},
	{
		"mass", "Mass without fuel", "kg", RemedyEffortEquipment, times(leastMassShare), stays,
		quantityOf(wholeMassPath, inMass(func(m *MassProperties) **Quantity { return &m.EmptyMassKg })),
	},
}

// equipmentKnobs are parts that can be had or made without touching the model's structure.
var equipmentKnobs = []knob{
	{
		"ramp.length", "Length of the ramp", "m", RemedyEffortEquipment, stays, fixed(longestRamp),
		quantityOf("launchPlan.ramp.lengthMeters", inRamp(func(r *Ramp) **Quantity { return &r.LengthMeters })),
	},
	{
		"ramp.height", "Height of the ramp's end", "m", RemedyEffortEquipment, stays, plus(3),
		quantityOf("launchPlan.ramp.endHeightMeters", inRamp(func(r *Ramp) **Quantity { return &r.EndHeightMeters })),
	},
	{
		"thrust", "Static thrust of an engine", "N", RemedyEffortEquipment, stays, times(2),
		inEngines("staticThrustNewtons", func(e *Engine) **Quantity { return &e.StaticThrustNewtons }),
	},
	{"surface.mown", "Grass of the strip", "", RemedyEffortEquipment, stays, stays, mownSpots},
	{"line.bore", "Bore of the narrowest suction line", "m", RemedyEffortEquipment, stays, times(3), lineSpots},
	{
		"trap.volume", "Volume of the air trap", "L", RemedyEffortEquipment, stays, plus(0.5),
		quantityOf("model.fuelSystem.airTrapVolumeLiters", inFuel(func(f *FuelSystem) **Quantity { return &f.AirTrapVolumeLiters })),
	},
	{
		"vent.bore", "Bore of the vent", "m", RemedyEffortEquipment, stays, times(4),
		quantityOf("model.fuelSystem.ventBoreMeters", inFuel(func(f *FuelSystem) **Quantity { return &f.VentBoreMeters })),
	},
	{
		"pack.capacity", "Capacity of a pack", "Ah", RemedyEffortEquipment, stays, times(5),
		inPacks("capacityAmpereHours", func(p *Pack) **Quantity { return &p.CapacityAmpereHours }),
	},
	{"heat.foil", "Foil over a heated part", "", RemedyEffortEquipment, stays, stays, foilSpots},
	{"heat.distance", "Distance of a part from the hot wall", "m", RemedyEffortEquipment, stays, plus(0.1), distanceSpots},
	{"antenna.carbon", "Antenna out of the carbon", "", RemedyEffortEquipment, stays, stays, carbonSpots},
	{"antenna.added", "One more antenna", "", RemedyEffortEquipment, stays, stays, addedSpots},
	{"control.play", "Slack of a control", "m", RemedyEffortEquipment, times(0.1), stays, playSpots},
	{"servo.torque", "Torque of a servo", "N m", RemedyEffortEquipment, stays, times(4), servoSpots},
	{"rod.diameter", "Diameter of a pushrod", "m", RemedyEffortEquipment, stays, times(3), rodSpots},
	{
		"bolt.diameter", "Diameter of the wing's bolts", "m", RemedyEffortEquipment, stays, times(2.5),
		quantityOf("model.structure.wingBoltDiameterMeters", inStructure(func(s *Structure) **Quantity { return &s.WingBoltDiameterMeters })),
	},
}

// structureKnobs change the model itself.
var structureKnobs = []knob{
	{
		"spar.diameter", "Outer diameter of a spar", "m", RemedyEffortRebuild, stays, times(2.5),
		inSpars("outerDiameterMeters", func(p *SparPart) **Quantity { return &p.OuterDiameterMeters }),
	},
	{
		"spar.wall", "Wall of a spar's tube", "m", RemedyEffortRebuild, stays, times(4),
		inSpars("wallThicknessMeters", func(p *SparPart) **Quantity { return &p.WallThicknessMeters }),
	},
	{
		"spar.cap", "Caps of a spar", "m", RemedyEffortRebuild, stays, times(5),
		inSpars("capThicknessMeters", func(p *SparPart) **Quantity { return &p.CapThicknessMeters }),
	},
	{
		"spar.web", "Web of a spar", "m", RemedyEffortRebuild, stays, times(5),
		inSpars("webThicknessMeters", func(p *SparPart) **Quantity { return &p.WebThicknessMeters }),
	},
	{
		"joiner.length", "Length of the joiner in each panel", "m", RemedyEffortRebuild, stays, times(4),
		quantityOf("model.structure.joiner.engagedLengthMeters", inJoiner(func(j *Joiner) **Quantity { return &j.EngagedLengthMeters })),
	},
	{
		"joiner.diameter", "Outer diameter of the joiner", "m", RemedyEffortRebuild, stays, times(2.5),
		quantityOf("model.structure.joiner.part.outerDiameterMeters", inJoinerPart(func(p *SparPart) **Quantity { return &p.OuterDiameterMeters })),
	},
	{
		"joiner.wall", "Wall of the joiner", "m", RemedyEffortRebuild, stays, times(4),
		quantityOf("model.structure.joiner.part.wallThicknessMeters", inJoinerPart(func(p *SparPart) **Quantity { return &p.WallThicknessMeters })),
	},
	{"tank.place", "Place of a tank", "m", RemedyEffortRebuild, plus(-farthestShift), plus(farthestShift), tankSpots},
}
