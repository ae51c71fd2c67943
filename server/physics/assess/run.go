// Package assess is the composition of the core: one document in, one report out. Every number of the report comes from the
// packages beside it; this package says which are asked for, in which order, what is missing, how far each answer may be off and
// whether the limit holds.
package assess

// Version of the core: changes with every change that moves a number.
const Version = "0.7.10"

// Run computes the report of one input.
//
// A missing input makes the findings that need it unknown and names it; it is never an error. An error names a geometry or a mass
// that cannot exist. The report's InputDigest stays empty: the document package writes it.
func Run(in Input) (Report, error) {
	geometry, err := Prepare(in)
	if err != nil {
		return Report{}, err
	}
	return geometry.Run(in)
}

// Run computes the report of an input whose model has the geometry that g was prepared from; masses, engines, field, plan, day and
// limits may differ. Whoever keeps geometries answers for that: the document package does so by their canonical bytes.
func (g *Geometry) Run(in Input) (Report, error) { return g.RunWatched(in, nil) }

// sections are all parts of an assessment, in the order in which one needs the answers of another. A test reads from the source what each touches.
var sections = []stage{
	{(*pass).readAir, 0, partAir, portionTemperature | portionWind},
	{(*pass).readMass, 0, partMass, portionFuel | portionMass},
	{(*pass).readLift, partAir | partMass, partPitch | partWing, portionThrows},
	{(*pass).readDrag, partAir | partMass | partWing, partDrag, portionThrows},
	{(*pass).readRolling, partAir | partDrag | partLaunch | partMass | partWing, partRolling, portionThrows},
	{(*pass).readEngines, partAir, partEngine, portionEngines},
	{(*pass).readStall, partAir | partMass | partWing, partStall, portionCircuit},
	{(*pass).answerAir, partAir, 0, 0},
	{(*pass).answerStall, partAir | partMass | partPitch | partStall, partWing, portionThrows},
	{(*pass).answerSpeeds, partAir | partDrag | partEngine | partMass | partWing, partTop, 0},
	{(*pass).answerLaunch, partAir | partDrag | partEngine | partInertia | partMass | partPitch | partRolling | partStall | partWing, partHeights | partLaunch | partMarks, portionBungee | portionEngines | portionGround | portionMass | portionRamp | portionSetting | portionThrows | portionWay},
	{(*pass).answerClimb, partLaunch | partStall | partWing, 0, portionCircuit},
	{(*pass).answerCircuit, partAir | partLaunch | partStall, 0, portionCircuit},
	{(*pass).answerBalance, partMass | partWing, 0, portionMass | portionThrows},
	{(*pass).readInertia, partMass | partWing, partInertia, portionEngines | portionMass},
	{(*pass).answerTrim, partAir | partDrag | partEngine | partInertia | partLaunch | partMass | partPitch | partStall | partTop | partWing, 0, portionEngines | portionMass | portionThrows},
	{(*pass).answerPitchDamping, partAir | partDrag | partInertia | partMass | partStall | partWing, 0, portionThrows},
	{(*pass).answerLateral, partAir | partDrag | partInertia | partMass | partStall | partTop | partWing, partTwist | partYaw, portionStructure | portionThrows},
	{(*pass).answerSeparation, partAir | partLaunch | partMass | partStall | partWing, partDay, portionCircuit | portionVisibility},
	{(*pass).answerPermission, 0, 0, 0},
	{(*pass).flyLosses, partAir | partDay | partDrag | partEngine | partInertia | partMass | partStall | partTop | partWing | partYaw, partFalls, portionEngines | portionPacks | portionRadio | portionWind},
	{(*pass).answerLoads, partAir | partDrag | partInertia | partMass | partPitch | partStall | partTop | partWing, partLoads | partStiffness | partTwist, portionLinkage | portionStructure | portionThrows},
	{(*pass).answerLanding, partAir | partDrag | partEngine | partMass | partPitch | partRolling | partStall | partWing, partDescent | partGround | partLanding | partMarks | partPlace, portionCircuit | portionGround | portionThrows | portionWay | portionWind},
	{(*pass).answerLaunchFailure, partEngine, partLaunch, portionCircuit | portionGround | portionRamp},
	{(*pass).answerEngineOut, partAir | partDrag | partLanding | partLaunch | partMass | partStall | partWing, partGlide, portionCircuit},
	{(*pass).answerWeather, partAir | partDrag | partInertia | partLanding | partLaunch | partMass | partWing | partYaw, 0, portionTemperature | portionThrows | portionVisibility | portionWay | portionWind},
	{(*pass).answerRadio, partAir | partDay | partLaunch | partStall | partWing, partPlace, portionEngines | portionGround | portionPacks | portionRadio | portionWay},
	{(*pass).answerPacks, partDay | partStall, partCold, portionCircuit | portionEngines | portionLinkage | portionPacks | portionRadio | portionTemperature},
	{(*pass).answerFeeds, partAir | partDrag | partEngine | partInertia | partLaunch | partLoads | partMass | partStall | partWing, partFeed | partHot, portionCircuit | portionEngines | portionFuel | portionGround | portionHeated | portionMass | portionRamp | portionStructure},
	{(*pass).answerLinkLoss, partFalls, 0, 0},
	{(*pass).drawCurves, partAir | partDrag | partMass | partPitch | partWing, partDrags | partLifts, portionThrows},
}

// walk asks every section once. A moved pass begins with the first that reads an input it moves, and leaves out those that nothing it moves comes to.
func (p *pass) walk() {
	for ; p.at < len(sections); p.at++ {
		if p.resumes != nil {
			p.resumes.keep(p)
		}
		if p.cut.spares(p) {
			continue
		}
		sections[p.at].run(p)
	}
	if p.resumes != nil {
		p.resumes.keep(p)
	}
}
