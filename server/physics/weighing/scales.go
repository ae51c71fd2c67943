package weighing

import (
	"fmt"
	"math"
)

// What is taken where a reading gives no spread of its own.
const (
	// DefaultScaleShare is one standard deviation of a scale as a share of what it shows.
	DefaultScaleShare = 0.005
	// DefaultPlaceShare is one standard deviation of a place as a share of the distance between the outermost supports.
	DefaultPlaceShare = 0.003
	// LeastPlaceSpread is the least that is taken for a place, m.
	LeastPlaceSpread = 0.001
)

// scalesList is what the document calls the readings.
const scalesList = "model.mass.scaleReadings"

// Reading is what one scale under the model shows.
type Reading struct {
	// Name of the support, e.g. "left wheel".
	Name string
	// X and Y of the support in m; nil when not measured.
	X, Y *float64
	// Shown is what the scale shows in kg, tare included: the first weighing, then its repeats.
	Shown []float64
	// Tare is the cradle, block or dish that the scale carries too, kg.
	Tare float64
	// Spread is one standard deviation of the scale itself, kg. Zero: DefaultScaleShare of what it shows.
	Spread float64
	// PlaceSpread is one standard deviation of X and of Y, m. Zero: DefaultPlaceShare of the supports' distance, at least LeastPlaceSpread.
	PlaceSpread float64
}

// Line is one reading worked out.
type Line struct {
	Name string
	X, Y *float64
	// Count of readings taken.
	Count int
	// Mean of what the scale showed and the tare, kg.
	Mean, Tare float64
	// Net is the mean without tare, with the spread of scale and repeats together, kg.
	Net Estimate
	// Share of the total mass, 0 to 1.
	Share float64
	// Deviation is the sample standard deviation of the repeats; RepeatSpread that of their mean, widened for their number. kg.
	Deviation, RepeatSpread float64
	// ScaleSpread is that of the scale itself, kg.
	ScaleSpread float64
	// XSpread and YSpread are those of the place, m.
	XSpread, YSpread float64
	// Scattered is true when the repeats scatter more than the scale itself explains.
	Scattered bool
}

// Weighed is the outcome of a weighing.
type Weighed struct {
	State
	// Lines are the readings worked out, in their order.
	Lines []Line
	// Notes say what is not known and what looks odd, in sentences.
	Notes []string
}

// Weigh returns mass and balance point from the readings of one or more scales that carry the model together.
//
//	M = sum(m_i), x = sum(m_i x_i)/M, y = sum(m_i y_i)/M
//
// where m_i is the mean of scale i less its tare (kg) and x_i, y_i the place of its support (m). Spreads by balance. Supports that stand in a line
// give the balance point along it only: across it X or Y is not Known, and Notes say so. A reading without X leaves X unknown, one without Y leaves
// Y unknown; the mass is known in any case.
// Valid for: a level model that nothing but the scales holds up. Source: moments about the datum; JCGM 100:2008, 5.1.2.
// Error: *FieldError when there is no reading, a number is out of bounds, a tare takes off more than the scale shows, or all show nothing.
func Weigh(readings []Reading) (Weighed, error) {
	var w Weighed
	if len(readings) == 0 {
		return w, &FieldError{scalesList, -1, "", "needs at least one reading"}
	}
	for i := range readings {
		if err := readings[i].check(i); err != nil {
			return Weighed{}, err
		}
		w.Lines = append(w.Lines, readings[i].line())
	}
	w.Mass = total(w.axis(func(*Line) (*float64, float64) { return nil, 0 }))
	if !(w.Mass.Value > leastMass) {
		return Weighed{}, &FieldError{scalesList, -1, "", "carries nothing: no scale shows more than its tare"}
	}
	w.share()
	w.spreadPlaces(readings)
	w.locate()
	w.noteScatter()
	return w, nil
}

// check refuses what no scale can show.
func (r *Reading) check(i int) error {
	if len(r.Shown) == 0 {
		return &FieldError{scalesList, i, "readingKg", "is missing"}
	}
	for k, shown := range r.Shown {
		field := "readingKg"
		if k > 0 {
			field = fmt.Sprintf("repeats[%d].readingKg", k-1)
		}
		if err := amount(scalesList, i, field, shown); err != nil {
			return err
		}
	}
	mean, _ := meanOf(r.Shown)
	if r.Tare > mean {
		return &FieldError{scalesList, i, "tareKg", fmt.Sprintf("takes off more than the scale shows: %g of %g kg", r.Tare, mean)}
	}
	return first(
		amount(scalesList, i, "tareKg", r.Tare), amount(scalesList, i, "readingKg.spread", r.Spread), amount(scalesList, i, "placeSpread", r.PlaceSpread),
		coordinate(scalesList, i, "xMeters", r.X), coordinate(scalesList, i, "yMeters", r.Y),
	)
}

// line works out one reading.
//
//	u(m)^2 = u(scale)^2 + u(repeats)^2
//
// Source: JCGM 100:2008, 5.1.2; the scale's own error is the same in every repeat and does not average out (4.2.8, 3.3.2).
func (r *Reading) line() Line {
	mean, deviation := meanOf(r.Shown)
	l := Line{Name: r.Name, X: r.X, Y: r.Y, Count: len(r.Shown), Mean: mean, Tare: r.Tare, Deviation: deviation, ScaleSpread: r.Spread}
	if r.Spread == 0 {
		l.ScaleSpread = DefaultScaleShare * mean
	}
	l.RepeatSpread = RepeatSpread(r.Shown)
	l.Net = known(mean-r.Tare, square(l.ScaleSpread)+square(l.RepeatSpread))
	l.Scattered = l.Count > 1 && deviation > scatterLimit(l.Count-1)*l.ScaleSpread
	return l
}

func (w *Weighed) share() {
	for i := range w.Lines {
		w.Lines[i].Share = w.Lines[i].Net.Value / w.Mass.Value
	}
}

// spreadPlaces gives every support the spread of its place: its own, or a share of the distance between the outermost supports.
func (w *Weighed) spreadPlaces(readings []Reading) {
	x := math.Max(LeastPlaceSpread, DefaultPlaceShare*w.extent(func(l *Line) *float64 { return l.X }))
	y := math.Max(LeastPlaceSpread, DefaultPlaceShare*w.extent(func(l *Line) *float64 { return l.Y }))
	for i := range w.Lines {
		w.Lines[i].XSpread, w.Lines[i].YSpread = x, y
		if own := readings[i].PlaceSpread; own > 0 {
			w.Lines[i].XSpread, w.Lines[i].YSpread = own, own
		}
	}
}

// axis returns the readings as masses on one axis.
func (w *Weighed) axis(place func(*Line) (*float64, float64)) []part {
	parts := make([]part, len(w.Lines))
	for i := range w.Lines {
		l := &w.Lines[i]
		parts[i] = part{mass: l.Net.Value, massSpread: l.Net.Spread}
		if at, spread := place(l); at != nil {
			parts[i].place, parts[i].placeSpread = *at, spread
		}
	}
	return parts
}

// locate finds the balance point on the axes that the supports determine.
func (w *Weighed) locate() {
	x, y := w.determined()
	if x {
		w.X, w.MassX = balance(w.axis(func(l *Line) (*float64, float64) { return l.X, l.XSpread }))
	}
	if y {
		w.Y, _ = balance(w.axis(func(l *Line) (*float64, float64) { return l.Y, l.YSpread }))
	}
}

func (w *Weighed) noteScatter() {
	for i := range w.Lines {
		if l := &w.Lines[i]; l.Scattered {
			w.Notes = append(w.Notes, fmt.Sprintf(
				"%s: %d readings scatter by %.3g kg, more than the scale's own %.3g kg explains: look for wheels that bind, cables that pull or wind, and weigh again.",
				label(l.Name, i), l.Count, l.Deviation, l.ScaleSpread))
		}
	}
}

// label returns the name of a support, or its number.
func label(name string, i int) string {
	if name != "" {
		return name
	}
	return fmt.Sprintf("scale %d", i+1)
}
