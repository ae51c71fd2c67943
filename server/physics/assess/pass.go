package assess

import "math"

// pass is one walk through all sections: the base pass with the values as given, or one of the passes in which a single input is
// moved by its spread.
type pass struct {
	in      *Input
	whole   *Geometry
	drawing *drawing
	// moved is the input that this pass moves; empty in the base pass.
	moved string
	by    float64 // how far, in the unit of the input
	// together is how far each of several inputs is moved at once; nil where one is moved alone.
	together *movement
	// at is the section at hand.
	at int
	// resumes is kept by a base pass whose inputs are to be moved; nil elsewhere.
	resumes *resumes
	// cut is what a moved pass may leave out; nil where it walks through all.
	cut *cut
	// work is the memory of this pass, and idle that which moved passes gave back.
	work *work
	idle chan *work
	// quiet leaves out drawings, quantities and sources.
	quiet   bool
	inputs  []uncertain
	known   map[string]bool
	trail   []string // names of the inputs in the order in which the base pass read them
	results []Finding
	values  []ReportQuantity
	lines   []ReportPath
	// replaced are the computed quantities in whose place a measured one stands.
	replaced []replacement
	// aside is set while inputs are read that move nothing by themselves, so that no pass is spent on each.
	aside bool
	// scale names the error that everything weighed now has in common; empty for none.
	scale string
	// samples is what the samples say of this base pass; nil where none were drawn.
	samples *sampling
	// fault is the first input that cannot be; the base pass ends with it.
	fault error
	// watch stops the run of a base pass; nil where nobody does.
	watch   Watch
	curves  []ReportCurve
	drawn   ordinates
	ballast []BallastOption

	air     airSection
	mass    massSection
	wing    liftSection
	drag    dragSection
	rolling rollingSection
	engine  engineSection
	stall   stallSection
	launch  launchSection
	pitch   pitchControl
	inertia inertias
	yaw     yawSection
	landing landingSection
	glide   engineOutSection
	day     daySection
	loads   loadSection
	feed    feedSection
	falls   *losing

	topMissing []string
	top        float64 // top speed in level flight, m/s; zero when there is none
}

// uncertain is an input that was read and may be off.
type uncertain struct {
	name      string
	value     float64 // as given
	spread    float64 // one standard deviation, in its own unit
	estimated bool
	method    bool   // a method's own spread rather than an input
	source    string // the error it has in common with others; empty for one of its own
}

// manyInputs is as many inputs as most documents have.
const manyInputs = 128

func newPass(in *Input, whole *Geometry) *pass {
	return &pass{
		in: in, whole: whole, drawing: &drawing{}, known: make(map[string]bool, manyInputs), inputs: make([]uncertain, 0, manyInputs),
		results: make([]Finding, 0, len(catalogue)), idle: make(chan *work, mostWorkers+1),
	}
}

// moving returns a pass like the base pass in which one input is moved by a number of its spreads.
func (p *pass) moving(input uncertain, by float64) *pass {
	return p.movingAll(input, by, input.name)
}

// movingAll returns a pass like the base pass that moves the named inputs, as one error or one alone.
func (p *pass) movingAll(input uncertain, by float64, names ...string) *pass {
	moved := p.resume(names)
	moved.work.drawing = *p.drawing // what a moved pass finds out for itself is nobody else's
	moved.drawing = &moved.work.drawing
	moved.moved, moved.by, moved.quiet = input.name, by*input.spread, p.quiet
	return moved
}

// refuse keeps the first input that cannot be. A moved pass is only without an answer then.
func (p *pass) refuse(err error) {
	if p.fault == nil {
		p.fault = err
	}
}

// base reports whether this pass takes the values as given and writes the report.
func (p *pass) base() bool { return p.moved == "" }

// meet notes that an uncertain input is read, and the input itself the first time.
func (p *pass) meet(input uncertain) {
	if !p.base() {
		return
	}
	if !p.quiet {
		p.trail = append(p.trail, input.name)
	}
	if p.aside || p.known == nil || p.known[input.name] {
		return
	}
	p.known[input.name] = true
	input.source = p.scale
	p.inputs = append(p.inputs, input)
}

// note notes that a plain number, which has no spread, is read.
func (p *pass) note(name string) {
	if p.tells() {
		p.trail = append(p.trail, name)
	}
}

// read returns the value of a quantity as this pass sees it, and false when it is missing.
func (p *pass) read(name string, q *Quantity) (float64, bool) {
	if q == nil || q.Value == nil {
		return 0, false
	}
	p.meet(uncertain{name: name, value: *q.Value, spread: q.Deviation(name), estimated: q.estimated()})
	return *q.Value + p.shift(name), true
}

// offset returns how far this pass moves something whose spread alone is known, such as the place of an obstacle.
func (p *pass) offset(name string, spread float64) float64 {
	p.meet(uncertain{name: name, spread: spread})
	return p.shift(name)
}

// factor returns 1, or 1 moved by the method's relative spread.
func (p *pass) factor(name string, spread float64) float64 {
	p.meet(uncertain{name: name, value: 1, spread: spread, method: true})
	return 1 + p.shift(name)
}

// assumed returns a value that the document does not give but that changes little, with its spread, as an estimate.
func (p *pass) assumed(name string, value, spread float64) float64 {
	p.meet(uncertain{name: name, value: value, spread: spread, estimated: true})
	return value + p.shift(name)
}

func (p *pass) shift(name string) float64 {
	if p.together != nil {
		return p.together.of(name)
	}
	if p.moved == name {
		return p.by
	}
	if p.resumes != nil {
		p.resumes.note(name, p.at)
	}
	return 0
}

// root returns the root of the sum of two squares.
func root(a, b float64) float64 { return math.Sqrt(float64(a*a) + float64(b*b)) }

func finite(value float64) bool { return !math.IsNaN(value) && !math.IsInf(value, 0) }
