package assess

import "errors"

// ErrStopped is the error of a run that its watch stopped; nothing of such a run is told.
var ErrStopped = errors.New("assessment: stopped before its end")

// Watch is told between the passes of a run how many of how many inputs are moved, and answers whether to go on. It sees no number of the run and
// moves none.
type Watch func(done, total int) bool

// RunWatched computes the report that Run computes and asks the watch between passes; its error is ErrStopped when the answer was no.
func (g *Geometry) RunWatched(in Input, watch Watch) (Report, error) {
	return g.run(in, Options{Drawings: true, Bands: true}, watch)
}

// goesOn asks the watch, where there is one.
func (p *pass) goesOn(done int) bool { return p.watch == nil || p.watch(done, len(p.inputs)) }
