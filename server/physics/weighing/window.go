package weighing

import (
	"fmt"
	"math"
)

// Window is where the balance point may lie.
type Window struct {
	// Neutral point aft of the datum and mean chord, m.
	Neutral, Chord float64
	// Least and Most static margin over the mean chord.
	Least, Most float64
	// Forward and Aft are limits of x that the builder asks for besides, m; nil where there is none.
	Forward, Aft *float64
}

// Limits returns the foremost and aftmost place of the balance point.
//
//	x_forward = x_np - K_most c, x_aft = x_np - K_least c
//
// where x_np is the neutral point (m), c the mean chord (m) and K the static margin; the builder's own limits narrow them.
// Valid for: the margin's definition K = (x_np - x)/c. Source: Etkin and Reid, Dynamics of Flight, 2.3.
func (w Window) Limits() (forward, aft float64) {
	forward, aft = w.Neutral-float64(w.Most*w.Chord), w.Neutral-float64(w.Least*w.Chord)
	if w.Forward != nil {
		forward = math.Max(forward, *w.Forward)
	}
	if w.Aft != nil {
		aft = math.Min(aft, *w.Aft)
	}
	return forward, aft
}

// Margin returns the static margin of a balance point, over the mean chord.
//
//	K = (x_np - x) / c
//
// Source: Etkin and Reid, Dynamics of Flight, 2.3.
func (w Window) Margin(x float64) float64 { return (w.Neutral - x) / w.Chord }

func (w Window) check() error {
	for _, v := range []float64{w.Neutral, w.Chord, w.Least, w.Most, orZero(w.Forward), orZero(w.Aft)} {
		if !within(v) {
			return &FieldError{"limits", -1, "minimumStaticMarginRatio", "has a number that no model has"}
		}
	}
	if !(w.Chord > leastBase) {
		return &FieldError{"model.surfaces", -1, "", fmt.Sprintf("need a mean chord of more than a millimetre, got %g m", w.Chord)}
	}
	if !(w.Least < w.Most) {
		return &FieldError{"limits", -1, "minimumStaticMarginRatio", fmt.Sprintf("must be less than the most, %g, got %g", w.Most, w.Least)}
	}
	if forward, aft := w.Limits(); !(forward < aft) {
		return &FieldError{"model.mass.aftBalanceLimitXMeters", -1, "", fmt.Sprintf("leaves no place within the static margin's own window, %.4g to %.4g m", forward, aft)}
	}
	return nil
}

// interval is the amounts that keep every state of the burn inside the window.
type interval struct{ low, high float64 }

func (r *interval) empty() bool { return !(r.low <= r.high) }

// require narrows the interval to where constant + slope b >= 0.
func (r *interval) require(constant, slope float64) {
	switch {
	case slope > 0:
		r.low = math.Max(r.low, -constant/slope)
	case slope < 0:
		r.high = math.Min(r.high, -constant/slope)
	case constant < 0:
		r.low, r.high = math.Inf(1), math.Inf(-1)
	}
}

// margins returns the static margins along a burn to which a mass was added at a place and a moment by a move.
type margins struct{ full, empty, least, most float64 }

func marginsWith(t *Travel, w Window, mass, moment float64) margins {
	at := func(p *TravelPoint) float64 {
		return w.Margin((float64(p.Mass*p.X) + moment) / (p.Mass + mass))
	}
	m := margins{full: at(&t.Full), empty: at(&t.Empty), least: math.Inf(1), most: math.Inf(-1)}
	for i := range t.Points {
		m.least, m.most = math.Min(m.least, at(&t.Points[i])), math.Max(m.most, at(&t.Points[i]))
	}
	return m
}
