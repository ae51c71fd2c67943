package weighing

import "math"

// leastBase is the distance below which supports stand at the same place, m; leastWidth is how wide a triangle of supports must be, as a share of
// its longest side.
const (
	leastBase  = 0.001
	leastWidth = 0.01
)

// Sentences on what a weighing cannot tell.
const (
	noteOneScale   = "One scale gives the mass; where the model balances needs at least two."
	noteNoX        = "A support without its x leaves the balance point unknown."
	noteNoY        = "A support without its y leaves the side-to-side balance unknown."
	noteAcross     = "The supports stand in a line across the model: x of the balance point is unknown."
	noteAlong      = "The supports stand in a line along the model: the side-to-side balance is unknown."
	noteSlantwise  = "The supports stand in one slanting line: neither x nor y of the balance point is known."
	noteUnloaded   = "A scale that carries nothing does not hold the model level; check that it touches."
	noteBeyondEdge = "The balance point lies almost over the line of two supports; the model may tip."
)

// extent returns the distance between the outermost supports on one axis.
func (w *Weighed) extent(place func(*Line) *float64) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range w.Lines {
		if at := place(&w.Lines[i]); at != nil {
			low, high = math.Min(low, *at), math.Max(high, *at)
		}
	}
	return math.Max(0, high-low)
}

// determined reports which coordinates of the balance point the supports determine, and notes why not.
func (w *Weighed) determined() (x, y bool) {
	hasX, hasY, loaded := true, true, 0
	for i := range w.Lines {
		l := &w.Lines[i]
		hasX, hasY = hasX && l.X != nil, hasY && l.Y != nil
		if l.Net.Value > 0 {
			loaded++
		}
	}
	if loaded < len(w.Lines) {
		w.note(noteUnloaded)
	}
	switch {
	case len(w.Lines) == 1:
		w.note(noteOneScale)
		return false, false
	case !hasX:
		w.note(noteNoX)
		return false, false
	case !hasY:
		w.note(noteNoY)
		return w.apart(), false
	}
	return w.spanned()
}

// apart reports whether the supports differ in x.
func (w *Weighed) apart() bool {
	if w.extent(func(l *Line) *float64 { return l.X }) > leastBase {
		return true
	}
	w.note(noteAcross)
	return false
}

// spanned reports which coordinates are determined by supports whose places are all known.
func (w *Weighed) spanned() (x, y bool) {
	long := w.extent(func(l *Line) *float64 { return l.X })
	wide := w.extent(func(l *Line) *float64 { return l.Y })
	switch {
	case w.triangle() > leastWidth*math.Max(square(long), square(wide)):
		if w.nearEdge() {
			w.note(noteBeyondEdge)
		}
		return true, true
	case wide <= math.Max(leastBase, leastWidth*long) && long > leastBase:
		w.note(noteAlong)
		return true, false
	case long <= math.Max(leastBase, leastWidth*wide):
		w.note(noteAcross)
		return false, wide > leastBase
	}
	w.note(noteSlantwise)
	return false, false
}

// triangle returns twice the area of the largest triangle of three supports, m2.
//
//	2 A = |(x_j - x_i)(y_k - y_i) - (x_k - x_i)(y_j - y_i)|
//
// Source: analytic geometry.
func (w *Weighed) triangle() float64 {
	largest := 0.0
	for i := range w.Lines {
		for j := i + 1; j < len(w.Lines); j++ {
			for k := j + 1; k < len(w.Lines); k++ {
				largest = math.Max(largest, math.Abs(doubleArea(&w.Lines[i], &w.Lines[j], &w.Lines[k])))
			}
		}
	}
	return largest
}

func doubleArea(a, b, c *Line) float64 {
	return float64((*b.X-*a.X)*(*c.Y-*a.Y)) - float64((*c.X-*a.X)*(*b.Y-*a.Y))
}

// nearEdge reports whether all but one hundredth of the mass rests on two of three supports.
func (w *Weighed) nearEdge() bool {
	if len(w.Lines) != 3 {
		return false
	}
	for i := range w.Lines {
		if w.Lines[i].Share < 0.01 {
			return true
		}
	}
	return false
}

func (w *Weighed) note(text string) { w.Notes = append(w.Notes, text) }
