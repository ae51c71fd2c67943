package assess

import (
	"math"
	"slices"
)

// straight is a straight line through two values of a standard deviation.
type straight struct{ x, y, slope float64 }

func (l straight) at(x float64) float64 { return max(0, l.y+float64(l.slope*(x-l.x))) }

// through returns the line through two points; a level one where they are one above the other.
func through(x1, y1, x2, y2 float64) straight {
	if x1 == x2 {
		return straight{x: x2, y: y2}
	}
	return straight{x: x2, y: y2, slope: (y2 - y1) / (x2 - x1)}
}

const (
	// nearRoot is how far, in standard deviations, a root may lie on the wrong side.
	nearRoot = 0.006
	// tightRoot is how far on the right side it need not be sought again: a thousandth of the share.
	tightRoot = 0.012
	// closeRoot is how far on the right side a search by a given spread ends.
	closeRoot = 0.003
	// coarseRoot is how far beyond a root, in standard deviations, the spread there says little of that at the root.
	coarseRoot = 0.5
	// bentStep ends the search along a way whose spread is found anew at every step, over the width of its bracket.
	bentStep = 2e-3
)

// least returns the least change along a way with which the finding holds often enough. The spread is that of the document as it stands first, or of a
// straight line to that at the way's good end; at each root it is found anew, and the root is sought again with the spread on a straight line through the
// last two.
func (r *remedySearch) least(t *target, w *course) (float64, bool) {
	if w.fixed {
		return 0, true
	}
	for range mostRounds {
		x, ok := r.root(t, w, w.line)
		if !ok {
			break
		}
		if w.checked {
			w.checked = false
			return x, true
		}
		over, here := r.over(t, w, x)
		if over >= -nearRoot*here && over <= tightRoot*here || over >= 0 && !(here > 0) && !(w.line.at(x) > 0) {
			return x, true
		}
		w.bend(t, x, here, over)
	}
	return r.along(t, w)
}

// enter begins the search along a way; it is false where nothing comes of it.
func (r *remedySearch) enter(t *target, w *course) bool {
	w.line = straight{x: w.start, y: t.spread}
	w.last, w.short = w.line, w.line
	if w.fixed || !w.bent {
		return true
	}
	over, here := r.over(t, w, w.good)
	w.bend(t, w.good, here, over)
	return over >= 0
}

// bend lays the line of a way's spread through that found last and that found before; level where there was none. From far beyond the root it goes back
// to the last that fell short.
func (w *course) bend(t *target, x, here, over float64) {
	from := w.last
	if over > coarseRoot*here {
		from = w.short
	}
	if w.line = through(from.x, from.y, x, here); t.finding.Value == nil && from.x == w.start {
		w.line = straight{x: x, y: here}
	}
	w.last = straight{x: x, y: here}
	if over < 0 {
		w.short = w.last
	}
}

// correct takes up the spread that a check in full has found.
func (w *course) correct(t *target, x float64, v *verdictAnew) {
	by := v.spread / w.here
	w.scale, w.last.y, w.here, w.checked = w.scale*by, w.last.y*by, v.spread, true
	w.bend(t, x, v.spread, v.height)
}

// over returns how far a finding's margin is over what is asked for somewhere along a way, with the spread that it has there, and that spread.
func (r *remedySearch) over(t *target, w *course, x float64) (height, spread float64) {
	c := r.try(w.changes(x), t.needed, true)
	defer c.pass.release()
	f := c.finding(t.finding.ID)
	w.here = float64(w.scale * r.deviationAt(t, c))
	return t.height(f, w.here), w.here
}

// along finds the least change along a way with the spread found anew at each step: for findings that bend or end within their spread.
func (r *remedySearch) along(t *target, w *course) (float64, bool) {
	height := func(x float64) (over, spread float64) { return r.over(t, w, x) }
	a, b := w.bad, w.good
	fb, _ := height(b)
	fa := t.height(&t.finding, t.spread)
	if far := w.seen[len(w.seen)-1].x; fb < 0 && b != far && !w.bent {
		a, fa, b = b, fb, far
		fb, _ = height(b)
	} else if a != w.start {
		fa, _ = height(a)
	}
	switch {
	case fb < 0:
		return 0, false
	case fa >= 0:
		return a, true
	}
	return bracketed(height, a, b, fa, fb, bentStep*math.Abs(b-a)), true
}

// root returns the least x along a way at which the finding's margin is what its required share asks for, with a given spread: bracketed secants that
// halve the weight of an end which stays, and halves of the bracket where an end has no number.
// Source: Illinois method, Dowell and Jarratt, BIT 11 (1971) 168.
func (r *remedySearch) root(t *target, w *course, line straight) (float64, bool) {
	over := func(s *sight) float64 { return t.height(s.found, line.at(s.x)) }
	at := slices.IndexFunc(w.seen, func(s sight) bool { return over(&s) >= 0 })
	if at <= 0 {
		return w.start, at == 0
	}
	a, b := w.seen[at-1], w.seen[at]
	height := func(x float64) (over, spread float64) {
		c := r.try(w.changes(x), t.needed, false)
		defer c.pass.release()
		w.see(x, c.finding(t.finding.ID))
		spread = line.at(x)
		return t.height(c.finding(t.finding.ID), spread), spread
	}
	return bracketed(height, a.x, b.x, over(&a), over(&b), finestStep*math.Abs(w.good-w.bad)), true
}

// bracketed returns where a function that is negative at a and not at b comes to zero, on b's side of it, as fine as asked, or as near as a part of the
// spread that it has there.
func bracketed(height func(float64) (over, spread float64), a, b, fa, fb, fine float64) float64 {
	kept, enough := 0, 0.0
	for range 60 {
		if math.Abs(b-a) <= fine || fb <= enough {
			return b
		}
		x := (a + b) / 2
		if !math.IsInf(fa, 0) && !math.IsInf(fb, 0) {
			x = b - float64(fb*(b-a))/(fb-fa)
			x = inside(x, a, b, float64(fine/2))
		}
		f, spread := height(x)
		switch {
		case f >= 0:
			if kept > 0 && !math.IsInf(fa, 0) {
				fa /= 2
			}
			b, fb, kept, enough = x, f, max(kept, 0)+1, float64(closeRoot*spread)
		default:
			if kept < 0 && !math.IsInf(fb, 0) {
				fb /= 2
			}
			a, fa, kept = x, f, min(kept, 0)-1
		}
	}
	return b
}

// inside keeps a point off both ends of a bracket, so that it closes from either side.
func inside(x, a, b, step float64) float64 {
	low, high := min(a, b)+step, max(a, b)-step
	return min(max(x, low), high)
}
