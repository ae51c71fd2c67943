package assess

import "math"

// pass is one walk through all sections: the base pass with the values as given, or one of the passes in which a single input is
// moved by its spread.
type pass struct {
	in    *Input
	whole *solved
	// moved is the input that this pass moves; empty in the base pass.
	moved   string
	by      float64 // how far, in spreads: +1 or -1
	inputs  []uncertain
	known   map[string]bool
	results []Finding
	values  []ReportQuantity
	lines   []ReportPath
	profile []float64 // heights of the launch at the base pass's distances

	air    airSection
	mass   massSection
	wing   liftSection
	drag   dragSection
	engine engineSection
	stall  stallSection
	launch launchSection
}

// uncertain is an input that was read and may be off.
type uncertain struct {
	name      string
	spread    float64 // one standard deviation, in its own unit
	estimated bool
	method    bool // a method's own spread rather than an input
}

func newPass(in *Input, whole *solved) *pass {
	return &pass{in: in, whole: whole, known: map[string]bool{}}
}

// moving returns a pass like the base pass in which one input is moved by a number of its spreads.
func (p *pass) moving(input uncertain, by float64) *pass {
	return &pass{in: p.in, whole: p.whole, moved: input.name, by: by * input.spread}
}

// base reports whether this pass takes the values as given and writes the report.
func (p *pass) base() bool { return p.moved == "" }

// meet notes an uncertain input the first time it is read.
func (p *pass) meet(input uncertain) {
	if !p.base() || p.known[input.name] {
		return
	}
	p.known[input.name] = true
	p.inputs = append(p.inputs, input)
}

// read returns the value of a quantity as this pass sees it, and false when it is missing.
func (p *pass) read(name string, q *Quantity) (float64, bool) {
	if q == nil || q.Value == nil {
		return 0, false
	}
	p.meet(uncertain{name: name, spread: q.deviation(name), estimated: q.estimated()})
	return *q.Value + p.shift(name), true
}

// offset returns how far this pass moves something whose spread alone is known, such as the place of an obstacle.
func (p *pass) offset(name string, spread float64) float64 {
	p.meet(uncertain{name: name, spread: spread})
	return p.shift(name)
}

// factor returns 1, or 1 moved by the method's relative spread.
func (p *pass) factor(name string, spread float64) float64 {
	p.meet(uncertain{name: name, spread: spread, method: true})
	return 1 + p.shift(name)
}

// assumed returns a value that the document does not give but that changes little, with its spread, as an estimate.
func (p *pass) assumed(name string, value, spread float64) float64 {
	p.meet(uncertain{name: name, spread: spread, estimated: true})
	return value + p.shift(name)
}

func (p *pass) shift(name string) float64 {
	if p.moved == name {
		return p.by
	}
	return 0
}

// tell adds a computed intermediate to the report; a value that is no number is left out.
func (p *pass) tell(id, unit string, value float64) {
	if p.base() && finite(value) {
		p.values = append(p.values, ReportQuantity{ID: id, Value: &value, Unit: unit})
	}
}

// tellText adds an intermediate that is a text.
func (p *pass) tellText(id, text string) {
	if p.base() {
		p.values = append(p.values, ReportQuantity{ID: id, Text: text})
	}
}

func finite(value float64) bool { return !math.IsNaN(value) && !math.IsInf(value, 0) }
