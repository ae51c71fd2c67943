package assess

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/sample"
)

// SpreadOptions say how the spread is sampled.
type SpreadOptions struct {
	// Samples: 16 to 16384; zero: 512.
	Samples int
	// Seed of the points; the same seed gives the same report to the bit.
	Seed int32
	// Workers is how many passes are walked at once, at most 64; zero: one. The report does not depend on it.
	Workers int
	// Watch is told how many of how many passes are walked and can stop the run; nil where nobody does.
	Watch Watch
}

const mostWorkers = 64

var errWorkers = errors.New("workers: give 0 to 64")

// checked returns the options with their defaults; an error names what is out of range.
func (o SpreadOptions) checked() (SpreadOptions, error) {
	if o.Samples == 0 {
		o.Samples = sample.DefaultCount
	}
	if o.Samples < sample.MinimumCount || o.Samples > sample.MaximumCount {
		return o, fmt.Errorf("samples %d: give %d to %d", o.Samples, sample.MinimumCount, sample.MaximumCount)
	}
	if o.Workers < 0 || o.Workers > mostWorkers {
		return o, errWorkers
	}
	return o, nil
}

// Spread computes the report of one input with every band, probability and share from samples. See Run for its errors, and SpreadOptions for more.
func Spread(in Input, options SpreadOptions) (Report, error) {
	geometry, err := Prepare(in)
	if err != nil {
		return Report{}, err
	}
	return geometry.Spread(in, options)
}

// Spread is Run with the spread from samples: all inputs are moved at once, along evenly spread points, instead of one after the other. Bands are the
// 5 % and 95 % points of the samples, and a finding is tight when its middle holds but fewer samples hold than its class asks for.
func (g *Geometry) Spread(in Input, options SpreadOptions) (Report, error) {
	options, err := options.checked()
	if err != nil {
		return Report{}, err
	}
	base, err := g.begin(&in, false, true)
	if err != nil {
		return Report{}, err
	}
	r, err := base.newSampling(options)
	if err != nil {
		return Report{}, err
	}
	if !r.walkFirst() || !r.walkAll() {
		return Report{}, ErrStopped
	}
	r.conclude()
	next := r.measureNext()
	base.samples = r
	base.answerRules()
	out := base.report()
	out.SpreadRun = &SpreadRun{Seed: options.Seed, SampleCount: int32(options.Samples), LostCount: r.lost()}
	out.MeasureNext = next
	return out, nil
}

// sampling is one sampled spread.
type sampling struct {
	base    *pass
	options SpreadOptions
	sources []errorSource
	place   map[string]int // of an input among those that are moved
	inputs  []uncertain    // in that order
	owner   []int          // the source of each
	by      [][]float64    // deviates by source, then by sample
	slopes  map[int]slopes // by finding, for answers that follow their slopes
	moved   []bool         // by finding: an estimated input moves it
	first   []firstPass
	samples []sampled
	// values and margins are by finding, then by sample: no number where there is none.
	values, margins [][]float64
	shares          [][]float64 // by finding, then by source
}

// sampled is what one sample says.
type sampled struct {
	refused         bool
	values, margins []float64 // by finding
	takeoff, empty  float64   // masses, kg
	drawn           ordinates
}

func (p *pass) newSampling(options SpreadOptions) (*sampling, error) {
	r := &sampling{
		base: p, options: options, sources: p.sources(), place: map[string]int{}, slopes: map[int]slopes{}, moved: make([]bool, len(p.results)),
	}
	points, err := sample.New(len(r.sources), options.Samples, uint64(uint32(options.Seed)))
	if err != nil {
		return nil, err
	}
	for s, source := range r.sources {
		r.by = append(r.by, points.Deviates(s))
		for _, input := range source.members {
			r.place[input.name] = len(r.inputs)
			r.inputs, r.owner = append(r.inputs, input), append(r.owner, s)
		}
	}
	return r, nil
}

// sampledPass is what a pass of a sample moves; no input is called so.
const sampledPass = "samples"

// passOf returns the pass of one sample: every input moved by the deviate of its error.
func (r *sampling) passOf(j int) *pass {
	p := r.base.moving(uncertain{name: sampledPass}, 0)
	w := p.work
	if cap(w.together.by) < len(r.inputs) {
		w.together.by = make([]float64, len(r.inputs))
	}
	w.together = movement{place: r.place, by: w.together.by[:len(r.inputs)]}
	p.together = &w.together
	for i := range r.inputs {
		p.together.by[i] = r.inputs[i].draw(r.by[r.owner[i]][j])
	}
	return p
}

// walkAll walks the pass of every sample.
func (r *sampling) walkAll() bool {
	r.samples = make([]sampled, r.options.Samples)
	before, total := len(r.first), len(r.first)+r.options.Samples
	goesOn := func(done int) bool { return r.options.Watch == nil || r.options.Watch(before+done, total) }
	return each(r.options.Samples, r.options.Workers, goesOn, func(j int) {
		p := r.passOf(j)
		p.walk()
		r.samples[j] = r.read(p, j)
		p.release()
	})
}

// read takes down what the pass of a sample found.
func (r *sampling) read(p *pass, j int) sampled {
	s := sampled{refused: p.fault != nil, values: make([]float64, len(r.base.results)), margins: make([]float64, len(r.base.results)), drawn: p.drawn}
	s.takeoff, s.empty = p.massOf(p.mass.takeoff), p.massOf(p.mass.empty)
	for i := range r.base.results {
		s.values[i], s.margins[i] = math.NaN(), math.NaN()
		if s.refused || i >= len(p.results) || p.results[i].ID != r.base.results[i].ID {
			continue
		}
		f := &p.results[i]
		if along, ok := r.slopes[i]; ok {
			along.move(r, f, j)
		}
		s.margins[i] = sampledMargin(f)
		if f.Value != nil {
			s.values[i] = *f.Value
		}
	}
	return s
}

// sampledMargin returns the margin of a sample's finding: without end when it holds with nothing in the way, without end below when it can never hold,
// and no number when it is unknown.
func sampledMargin(f *Finding) float64 {
	switch {
	case f.Verdict == VerdictUnknown:
		return math.NaN()
	case f.Margin != nil:
		return *f.Margin
	case f.Verdict == VerdictFails:
		return math.Inf(-1)
	}
	return math.Inf(1)
}

// lost counts the samples without an answer: inputs that cannot be together.
func (r *sampling) lost() int32 {
	count := int32(0)
	for j := range r.samples {
		if r.samples[j].refused {
			count++
		}
	}
	return count
}
