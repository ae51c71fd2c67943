// Package assess is the composition of the core: one document in, one report out. Every number of the report comes from the
// packages beside it; this package says which are asked for, in which order, what is missing, how far each answer may be off and
// whether the limit holds.
package assess

// Version of the core: changes with every change that moves a number.
const Version = "0.7.3"

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
	{(*pass).readAir, 0, partAir},
	{(*pass).readMass, 0, partMass},
	{(*pass).readLift, partAir | partMass, partPitch | partWing},
	{(*pass).readDrag, partAir | partMass | partWing, partDrag},
	{(*pass).readRolling, partAir | partDrag | partLaunch | partMass | partWing, partRolling},
	{(*pass).readEngines, partAir, partEngine},
	{(*pass).readStall, partAir | partMass | partWing, partStall},
	{(*pass).answerAir, partAir, 0},
	{(*pass).answerStall, partAir | partMass | partPitch | partStall, partWing},
	{(*pass).answerSpeeds, partAir | partDrag | partEngine | partMass | partWing, partTop},
	{(*pass).answerLaunch, partAir | partDrag | partEngine | partInertia | partMass | partPitch | partRolling | partStall | partWing, partHeights | partLaunch | partMarks},
	{(*pass).answerClimb, partLaunch | partStall | partWing, 0},
	{(*pass).answerCircuit, partAir | partLaunch | partStall, 0},
	{(*pass).answerBalance, partMass | partWing, 0},
	{(*pass).readInertia, partMass | partWing, partInertia},
	{(*pass).answerTrim, partAir | partDrag | partEngine | partInertia | partLaunch | partMass | partPitch | partStall | partTop | partWing, 0},
	{(*pass).answerPitchDamping, partAir | partDrag | partInertia | partMass | partStall | partWing, 0},
	{(*pass).answerLateral, partAir | partDrag | partInertia | partMass | partStall | partTop | partWing, partTwist | partYaw},
	{(*pass).answerLoads, partAir | partDrag | partInertia | partMass | partPitch | partStall | partTop | partWing, partLoads | partStiffness | partTwist},
	{(*pass).answerLanding, partAir | partDrag | partEngine | partMass | partPitch | partRolling | partStall | partWing, partDescent | partGround | partLanding | partMarks | partPlace},
	{(*pass).answerLaunchFailure, partEngine, partLaunch},
	{(*pass).answerEngineOut, partAir | partDrag | partLanding | partLaunch | partMass | partStall | partWing, partGlide},
	{(*pass).answerSeparation, partAir | partLaunch | partMass | partStall | partWing, partDay},
	{(*pass).answerPermission, 0, 0},
	{(*pass).answerLinkLoss, partAir | partDay | partDrag | partEngine | partInertia | partMass | partStall | partTop | partWing | partYaw, 0},
	{(*pass).answerWeather, partAir | partDrag | partInertia | partLanding | partLaunch | partMass | partWing | partYaw, 0},
	{(*pass).answerRadio, partAir | partDay | partLaunch | partStall | partWing, partPlace},
	{(*pass).answerPacks, partDay | partStall, partCold},
	{(*pass).answerFeeds, partAir | partDrag | partEngine | partInertia | partLaunch | partLoads | partMass | partStall | partWing, partFeed | partHot},
	{(*pass).drawCurves, partAir | partDrag | partMass | partPitch | partWing, partDrags | partLifts},
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
