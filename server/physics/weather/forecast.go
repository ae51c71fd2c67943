package weather

import (
	"errors"
	"fmt"
	"math"
	"sort"
)

// Change is the wind at one time.
type Change struct {
	Time float64 // s since 1970-01-01 UTC
	Wind Wind
}

// Forecast is the wind over time: it goes from each change to the next along a straight line, the direction by the shorter way round, and
// stays before the first and after the last.
type Forecast struct {
	changes []Change
}

// NewForecast returns the forecast of changes in order of time; the first is the wind now. An error names the change that is impossible.
func NewForecast(changes []Change) (Forecast, error) {
	if len(changes) == 0 {
		return Forecast{}, errors.New("wind changes: there is none")
	}
	for i, change := range changes {
		if !(math.Abs(change.Time) <= 1e11) || i > 0 && !(change.Time > changes[i-1].Time) {
			return Forecast{}, fmt.Errorf("wind change %d, time: has to be later than that before it", i+1)
		}
		if err := change.Wind.Check(); err != nil {
			return Forecast{}, fmt.Errorf("wind change %d, %w", i+1, err)
		}
	}
	return Forecast{changes: append([]Change(nil), changes...)}, nil
}

// At returns the wind at a moment (s since 1970-01-01 UTC). The zero Forecast is calm.
func (f Forecast) At(moment float64) Wind {
	n := len(f.changes)
	if n == 0 {
		return Wind{}
	}
	next := sort.Search(n, func(i int) bool { return f.changes[i].Time > moment })
	if next == 0 || next == n {
		return f.changes[max(0, next-1)].Wind
	}
	before, after := f.changes[next-1], f.changes[next]
	return between(before.Wind, after.Wind, (moment-before.Time)/(after.Time-before.Time))
}

// between returns the wind at a share of the way from one to another.
func between(a, b Wind, share float64) Wind {
	return Wind{
		Speed: mix(a.Speed, b.Speed, share),
		Gust:  mix(a.Gust, b.Gust, share),
		From:  a.From + float64(angleBetween(b.From, a.From)*share),
		Left:  mix(a.Left, b.Left, share),
		Right: mix(a.Right, b.Right, share),
	}
}

// stepsBetween is how many winds between two changes Worst looks at.
const stepsBetween = 8

// Worst returns the moment between begin and end (s since 1970-01-01 UTC) at which a wind costs most, and that wind: at begin and end, at each
// change between, and at seven moments between each two of these. Cost is whatever the caller minds: the wind across, the tailwind.
//
// Valid for: costs that turn no more often than the steps tell. Source: sampling.
func (f Forecast) Worst(begin, end float64, cost func(Wind) float64) Change {
	moments := f.moments(begin, end)
	worst, most := Change{Time: begin, Wind: f.At(begin)}, math.Inf(-1)
	for _, moment := range moments {
		wind := f.At(moment)
		if c := cost(wind); c > most {
			worst, most = Change{Time: moment, Wind: wind}, c
		}
	}
	return worst
}

// moments returns the moments Worst looks at, in order.
func (f Forecast) moments(begin, end float64) []float64 {
	nodes := []float64{begin}
	for _, change := range f.changes {
		if change.Time > begin && change.Time < end {
			nodes = append(nodes, change.Time)
		}
	}
	nodes = append(nodes, max(begin, end))
	out := []float64{begin}
	for i := 1; i < len(nodes); i++ {
		for step := 1; step <= stepsBetween; step++ {
			out = append(out, mix(nodes[i-1], nodes[i], float64(step)/stepsBetween))
		}
	}
	return out
}
