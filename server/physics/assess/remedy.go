package assess

import (
	"cmp"

	"pitgate/server/physics/order"
)

// RemedyOptions say for what and how remedies are looked for.
type RemedyOptions struct {
	// FindingID is the one finding to mend; empty: all that are open.
	FindingID string
	// Strict opens findings, too, whose band holds but less often than their class asks for, as samples would tell of them.
	Strict bool
	// Workers is how many candidates are tried at once, at most 64; zero: one. The remedies do not depend on it.
	Workers int
	// Watch is told how many of how many tasks are done and can stop the search; nil where nobody does.
	Watch Watch
	// Samples confirms every remedy by a sampled spread at the value found, as SpreadOptions says; zero: by first-order bands alone.
	Samples int
	// Seed of those samples.
	Seed int32
}

// checked refuses what cannot be asked for.
func (o RemedyOptions) checked() error {
	if o.Workers < 0 || o.Workers > mostWorkers {
		return errWorkers
	}
	if o.Samples == 0 {
		return nil
	}
	_, err := SpreadOptions{Samples: o.Samples, Seed: o.Seed}.checked()
	return err
}

// remedySearch is one search for remedies: the document as it stands, what is open in it, and the knobs that may be turned.
type remedySearch struct {
	in      *Input
	whole   *Geometry
	options RemedyOptions
	base    *pass // as the document stands
	// home is the section that concludes each finding.
	home       []int
	chains     [][]string // inputs behind each finding
	spreads    [][]effect // of each finding of the base pass, largest first
	deviations []float64  // of each finding of the base pass: one standard deviation
	ruled      []Finding  // those of published rules as the document stands
	targets    []target
	spots      []spot
	probes     [][]probe            // by spot
	needs      []uint64             // by finding: sections that it needs, one bit each
	steps      map[string][]float64 // by error, then by finding: what one spread of it does as the document stands
	carry      []leastSteps         // by finding: those of the errors that carry its spread
	held       []bool               // by finding: holds often enough as the document stands
}

// target is a finding that is to be mended.
type target struct {
	finding  Finding
	required float64 // share in which it must hold
	quantile float64 // deviate of that share
	spread   float64 // one standard deviation as the document stands
	at       int     // place among the results of the base pass
	number   int     // place among the findings that are to be mended
	needed   uint64  // sections that the finding needs, one bit each
}

// Remedies looks for the least changes of one input, or of two where no single one does, that let every open finding of a document hold with the
// probability that its class asks for. Open is a finding that fails, or that is tight by its band and holds less often than that; asked
// strictly, every one that holds less often by its first-order spread. Each finding has its
// remedies in their order of effort, or one without a change whose note says what was tried. See Run for the errors.
//
//	find x: margin(x) - z(P) u(x) = 0
//
// where x is the knob, margin and u the finding's margin and standard deviation with it, and z(P) the normal deviate of the required share P.
// Valid for: answers near normal around their middle; the note of a remedy says how it was confirmed.
// Source: bracketed secant method (Dowell and Jarratt, BIT 11 (1971) 168); JCGM 100:2008, 5.1 for u.
func (g *Geometry) Remedies(in Input, options RemedyOptions) ([]Remedy, error) {
	if err := options.checked(); err != nil {
		return nil, err
	}
	r := &remedySearch{in: &in, whole: g, options: options}
	if err := r.begin(); err != nil {
		return nil, err
	}
	if len(r.targets) == 0 {
		return nil, nil
	}
	if !r.probe() {
		return nil, ErrStopped
	}
	hunts := make([]hunt, len(r.targets))
	for i := range hunts {
		hunts[i].begin(r, &r.targets[i])
	}
	if !r.follow(hunts) {
		return nil, ErrStopped
	}
	return r.tellAll(hunts)
}

// The progress of a search, in thousandths: when the spreads are known, the knobs are looked at, the ways are followed to their ends.
const (
	progressProbes = 150
	progressWays   = 300
	progressTold   = 900
	progressWhole  = 1000
)

// progress tells the watch how far a part of the search has come that goes on from one thousandth to another.
func (r *remedySearch) progress(from, to, count int) func(done int) bool {
	return func(done int) bool {
		return r.options.Watch == nil || r.options.Watch(from+(to-from)*done/count, progressWhole)
	}
}

// begin computes the document as it stands and finds out what is open and what may be turned.
func (r *remedySearch) begin() error {
	base, err := r.whole.begin(r.in, false, true)
	if err != nil {
		return err
	}
	r.readHome(base)
	r.readChains(base)
	base.quiet = true
	r.base = base
	if !r.readSpreads() {
		return ErrStopped
	}
	for i := range r.base.results {
		r.needs = append(r.needs, r.neededFor([]int{i}))
		r.held = append(r.held, r.holds(i, &r.base.results[i], r.deviations[i]))
	}
	r.ruled = r.underRules(base, r.deviations)
	r.open()
	r.listSpots()
	return nil
}

// readHome notes which section concludes each finding.
func (r *remedySearch) readHome(told *pass) {
	for at := range sections {
		for len(r.home) < len(told.resumes.before[at+1].results) {
			r.home = append(r.home, at)
		}
	}
}

// tight reports whether a finding that holds is tight by its band.
func (r *remedySearch) tight(t *target) bool {
	half := float64(bandFactor * t.spread)
	return t.finding.Value == nil || t.finding.worstMargin(*t.finding.Value-half, *t.finding.Value+half) < 0
}

// open lists the findings that fail or hold less often than asked, worst verdict first.
func (r *remedySearch) open() {
	for i := range r.base.results {
		f := r.base.results[i]
		if f.Verdict == VerdictUnknown || r.options.FindingID != "" && r.options.FindingID != f.ID {
			continue
		}
		t := target{finding: f, at: i, required: r.base.required(f.FindingClass)}
		t.quantile, t.spread, t.needed = quantileOf(t.required), r.deviations[i], r.needs[i]
		if f.Verdict == VerdictFails || t.height(&f, t.spread) < 0 && (r.options.Strict || r.tight(&t)) {
			r.targets = append(r.targets, t)
		}
	}
	order.Stable(r.targets, func(a, b target) int {
		return cmp.Compare(severity.of(a.finding.Verdict), severity.of(b.finding.Verdict))
	})
	for i := range r.targets {
		r.targets[i].number = i
	}
}
