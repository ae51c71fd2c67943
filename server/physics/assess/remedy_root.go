package assess

import "math"

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
	nearRoot = 0.002
	// halvings is how often a bracket is halved where secants of the spread lead nowhere.
	halvings = 9
	// tightRoot is how far on the right side it need not be sought again.
	tightRoot = 0.004
)

// least returns the least change along a way with which the finding holds often enough, and how often it then does. The spread is that of the document as
// it stands first; at each root it is found anew, and the root is sought again with the spread on a straight line through the last two.
func (r *remedySearch) least(t *target, w *course) (x, share float64, ok bool) {
	if w.fixed {
		c := r.try(w.changes(0), t.needed, true)
		f, spread := c.finding(t.finding.ID), r.deviationAt(t, c)
		return 0, odds(f, spread), t.height(f, spread) >= 0
	}
	if w.bent {
		return r.halved(t, w)
	}
	spread, before, was := straight{x: w.start, y: t.spread}, w.start, t.spread
	for round := range mostRounds {
		if x, ok = r.root(t, w, spread); !ok {
			return 0, 0, false
		}
		c := r.try(w.changes(x), t.needed, true)
		f := c.finding(t.finding.ID)
		here := r.deviationAt(t, c)
		over := t.height(f, here)
		if over >= -nearRoot*here && (over <= tightRoot*here || round == mostRounds-1 || !(here > 0)) {
			return x, odds(f, here), true
		}
		spread = through(before, was, x, here)
		if t.finding.Value == nil && round == 0 {
			spread = straight{x: x, y: here}
		}
		before, was = x, here
	}
	return r.halved(t, w)
}

// halved finds the least change along a way by halves, with the spread found anew at each: for findings that bend or end within their spread.
func (r *remedySearch) halved(t *target, w *course) (x, share float64, ok bool) {
	over := func(x float64) (float64, float64) {
		c := r.try(w.changes(x), t.needed, true)
		f, spread := c.finding(t.finding.ID), r.deviationAt(t, c)
		return t.height(f, spread), odds(f, spread)
	}
	a, b := w.bad, w.good
	height, share := over(b)
	if height < 0 && b != w.far {
		a, b = b, w.far
		height, share = over(b)
	}
	if height < 0 {
		return 0, 0, false
	}
	for range halvings {
		middle := (a + b) / 2
		if height, held := over(middle); height >= 0 {
			b, share = middle, held
		} else {
			a = middle
		}
	}
	return b, share, true
}

func odds(f *Finding, spread float64) float64 {
	if f == nil {
		return 0
	}
	return f.probability(spread)
}

// root returns the least x along a way at which the finding's margin is what its required share asks for, with a given spread: bracketed secants that
// halve the weight of an end which stays, and halves of the bracket where an end has no number.
// Source: Illinois method, Dowell and Jarratt, BIT 11 (1971) 168.
func (r *remedySearch) root(t *target, w *course, spread straight) (float64, bool) {
	height := func(x float64) float64 {
		return t.height(r.try(w.changes(x), t.needed, false).finding(t.finding.ID), spread.at(x))
	}
	a, b := w.bad, w.good
	fb := height(b)
	if fb < 0 && b != w.far {
		a, b = b, w.far
		fb = height(b)
	}
	if fb < 0 {
		return 0, false
	}
	fa := t.height(&t.finding, spread.at(w.start))
	if a != w.start {
		fa = height(a)
	}
	if fa >= 0 {
		return a, true
	}
	return bracketed(height, a, b, fa, fb), true
}

// bracketed returns where a function that is negative at a and not at b comes to zero, on b's side of it.
func bracketed(height func(float64) float64, a, b, fa, fb float64) float64 {
	fine := float64(finestStep * math.Abs(b-a))
	kept := 0
	for range 60 {
		if math.Abs(b-a) <= fine || fb == 0 {
			return b
		}
		x := (a + b) / 2
		if !math.IsInf(fa, 0) && !math.IsInf(fb, 0) {
			x = b - float64(fb*(b-a))/(fb-fa)
			x = inside(x, a, b, float64(fine/2))
		}
		f := height(x)
		switch {
		case f >= 0:
			if kept > 0 && !math.IsInf(fa, 0) {
				fa /= 2
			}
			b, fb, kept = x, f, max(kept, 0)+1
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
