package survey

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/field"
)

// Fix is one place a walker was at.
type Fix struct {
	Position field.Position
	Accuracy float64 // one standard deviation, m; zero means DefaultAccuracy
	// Mark names the corner the walker stood at; empty between corners. Fixes with one mark in a row are one visit.
	Mark string
}

// DefaultAccuracy is the accuracy of a fix that does not tell its own, m: a phone under open sky. Common practice.
const DefaultAccuracy = 5.0

// Corner is a corner of a walked outline.
type Corner struct {
	Place  field.Point
	Spread float64 // one standard deviation, m
	Mark   string
	Fixes  int // that it was taken from
	Visits int // 1 for a corner of an unmarked track
}

// Walked is the outline of a walk.
type Walked struct {
	Corners []Corner // counter-clockwise
	Outline field.Polygon
	// Tolerance is the greatest distance allowed between the track and the outline, m; zero for marked corners.
	Tolerance float64
	Dropped   int     // fixes that are no part of a corner
	Gap       float64 // between the first and the last fix, m: how well the walk closes
	Turned    bool    // it was walked clockwise
}

// Walk turns fixes into an outline in the plane of a datum.
//
// With three marks or more the marked corners are the outline, in the order of their first visits. The fixes of one visit share the same error, so their
// mean, weighted by 1/a^2 with a their accuracy, is as accurate as the best of them, or as they scatter, whichever is worse; visits at different times are
// independent and their weighted mean has a spread of
//
//	s = max(1/sqrt(sum(1/s_i^2)), scatter of the visits/sqrt(n))
//
// Without marks the track is simplified (Simplify) so that it lies within the tolerance (m) of the outline everywhere, and a corner is as accurate as its
// fix. Errors name the fix by its number from 1, or what is wrong with the outline.
func Walk(fixes []Fix, datum field.Datum, tolerance float64) (Walked, error) {
	if !(tolerance >= 0 && tolerance <= 1000) {
		return Walked{}, errors.New("tolerance: outside 0 to 1000 m")
	}
	if len(fixes) > MostPlaces {
		return Walked{}, fmt.Errorf("walk of %d fixes, at most %d are taken", len(fixes), MostPlaces)
	}
	track, err := placed(fixes, datum)
	if err != nil {
		return Walked{}, err
	}
	walked := Walked{}
	if len(track) > 0 {
		walked.Gap = track[0].place.Distance(track[len(track)-1].place)
	}
	if corners := marked(track); len(corners) >= 3 {
		walked.Corners = corners
	} else {
		walked.Tolerance = tolerance
		walked.Corners = unmarked(track, tolerance)
	}
	return walked, walked.finish(len(fixes))
}

// step is a fix on the plane.
type step struct {
	place    field.Point
	accuracy float64
	mark     string
}

// placed puts fixes on the plane.
func placed(fixes []Fix, datum field.Datum) ([]step, error) {
	track := make([]step, 0, len(fixes))
	for i, f := range fixes {
		local, err := datum.Place(f.Position)
		if err != nil {
			return nil, fmt.Errorf("fix %d: %w", i+1, err)
		}
		if f.Accuracy == 0 {
			f.Accuracy = DefaultAccuracy
		}
		if !(f.Accuracy > 0 && f.Accuracy <= 1000) {
			return nil, fmt.Errorf("fix %d: accuracy of %g m is outside 0 to 1000", i+1, f.Accuracy)
		}
		track = append(track, step{local.Point(), f.Accuracy, f.Mark})
	}
	return track, nil
}

// mean is a weighted mean of places with its spread.
type mean struct {
	place  field.Point
	spread float64
}

// weighted returns the mean of places weighted by 1/spread^2, the spread of that mean were they independent, and how the places scatter about it in one
// direction (one standard deviation of a place), m.
//
//	p = sum(p_i/s_i^2)/sum(1/s_i^2),  scatter^2 = sum(w_i |p_i - p|^2)/(2 (1 - sum(w_i^2))), w_i the share of weight
//
// Source: weighted least squares; the scatter without bias for weights of reliability.
func weighted(of []mean) (m mean, scatter float64) {
	total, sum := 0.0, field.Point{}
	for _, o := range of {
		w := 1 / (o.spread * o.spread)
		total += w
		sum = sum.Plus(o.place.Times(w))
	}
	m = mean{sum.Times(1 / total), 1 / math.Sqrt(total)}
	squares, shares := 0.0, 0.0
	for _, o := range of {
		share := 1 / (o.spread * o.spread * total)
		d := o.place.Distance(m.place)
		squares += share * d * d
		shares += share * share
	}
	if shares < 1-1e-12 {
		scatter = math.Sqrt(squares / (2 * (1 - shares)))
	}
	return m, scatter
}

// marked returns the corners that were marked, in the order of their first visits.
func marked(track []step) []Corner {
	visits := map[string][]mean{}
	var corners []Corner
	index := map[string]int{}
	for from := 0; from < len(track); {
		to := from + 1
		for to < len(track) && track[to].mark == track[from].mark {
			to++
		}
		if mark := track[from].mark; mark != "" {
			if _, known := index[mark]; !known {
				index[mark] = len(corners)
				corners = append(corners, Corner{Mark: mark})
			}
			corners[index[mark]].Fixes += to - from
			visits[mark] = append(visits[mark], visit(track[from:to]))
		}
		from = to
	}
	for i := range corners {
		of := visits[corners[i].Mark]
		m, scatter := weighted(of)
		corners[i].Place, corners[i].Visits = m.place, len(of)
		corners[i].Spread = max(m.spread, scatter/math.Sqrt(float64(len(of))))
	}
	return corners
}

// visit returns the place of one visit: as accurate as its best fix, or as its fixes scatter, whichever is worse.
func visit(steps []step) mean {
	of := make([]mean, len(steps))
	best := math.Inf(1)
	for i, s := range steps {
		of[i] = mean{s.place, s.accuracy}
		best = min(best, s.accuracy)
	}
	m, scatter := weighted(of)
	m.spread = max(best, scatter)
	return m
}

// unmarked returns the corners of a track without marks.
func unmarked(track []step, tolerance float64) []Corner {
	line := make(field.Line, len(track))
	for i, s := range track {
		line[i] = s.place
	}
	var corners []Corner
	for _, i := range SimplifyRing(line, tolerance) {
		corners = append(corners, Corner{Place: track[i].place, Spread: track[i].accuracy, Fixes: 1, Visits: 1})
	}
	return corners
}

// finish brings the outline to its normal form and counts what was dropped.
func (w *Walked) finish(fixes int) error {
	if len(w.Corners) > MostCorners {
		return fmt.Errorf("outline of %d corners, at most %d are taken: allow a greater tolerance", len(w.Corners), MostCorners)
	}
	outline := make(field.Polygon, len(w.Corners))
	for i, c := range w.Corners {
		outline[i] = c.Place
	}
	normal, repair, err := outline.Normal()
	if err != nil {
		return err
	}
	corners, used := make([]Corner, 0, len(normal)), 0
	for _, p := range normal {
		for _, c := range w.Corners {
			if c.Place == p {
				corners = append(corners, c)
				used += c.Fixes
				break
			}
		}
	}
	w.Corners, w.Outline, w.Turned, w.Dropped = corners, normal, repair.Turned, fixes-used
	return nil
}
