// Package assess is the composition of the core: one document in, one report out. Every number of the report comes from the
// packages beside it; this package says which are asked for, in which order, what is missing, how far each answer may be off and
// whether the limit holds.
package assess

// Version of the core: changes with every change that moves a number.
const Version = "0.6.4"

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

// sections are all parts of an assessment, in the order in which one needs the answers of another.
var sections = []func(*pass){
	(*pass).readAir,
	(*pass).readMass,
	(*pass).readLift,
	(*pass).readDrag,
	(*pass).readRolling,
	(*pass).readEngines,
	(*pass).readStall,
	(*pass).answerAir,
	(*pass).answerStall,
	(*pass).answerSpeeds,
	(*pass).answerLaunch,
	(*pass).answerClimb,
	(*pass).answerCircuit,
	(*pass).answerBalance,
	(*pass).readInertia,
	(*pass).answerTrim,
	(*pass).answerPitchDamping,
	(*pass).answerLateral,
	(*pass).answerLoads,
	(*pass).answerLanding,
	(*pass).answerLaunchFailure,
	(*pass).answerEngineOut,
	(*pass).answerSeparation,
	(*pass).answerPermission,
	(*pass).answerLinkLoss,
	(*pass).answerWeather,
	(*pass).answerRadio,
	(*pass).answerPacks,
	(*pass).answerFeeds,
	(*pass).drawCurves,
}

// walk asks every section once; a moved pass begins with the first that reads the input it moves.
func (p *pass) walk() {
	for ; p.at < len(sections); p.at++ {
		if p.resumes != nil {
			p.resumes.keep(p)
		}
		sections[p.at](p)
	}
}
