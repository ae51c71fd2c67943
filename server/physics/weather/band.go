package weather

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// Wind is a wind with its gusts and the directions it comes from.
type Wind struct {
	Speed float64 // mean, m/s
	Gust  float64 // highest, m/s; not below Speed
	From  float64 // direction it comes from, rad clockwise from true north
	// Left and Right are how far the direction swings anticlockwise and clockwise of From, rad. Half a circle each is any direction.
	Left, Right float64
}

// AnyDirection returns a wind whose direction is not known.
func AnyDirection(speed, gust float64) Wind {
	return Wind{Speed: speed, Gust: gust, Left: math.Pi, Right: math.Pi}
}

// Check returns an error that names what is impossible.
func (w Wind) Check() error {
	if !(w.Speed >= 0 && w.Speed <= 150) {
		return fmt.Errorf("wind speed: has to lie between 0 and 150 m/s")
	}
	if !(w.Gust >= w.Speed && w.Gust <= 150) {
		return fmt.Errorf("gust speed: has to lie between the mean wind and 150 m/s")
	}
	if !(math.Abs(w.From) <= 100) {
		return errors.New("wind direction: is not a direction")
	}
	if !(w.Left >= 0 && w.Left <= math.Pi && w.Right >= 0 && w.Right <= math.Pi) {
		return errors.New("sector of wind direction: has to lie between 0 and half a circle on each side")
	}
	return nil
}

// Lull returns the lowest short mean, as far below the mean as the gust is above, not below zero, m/s.
//
//	l = max(0, 2 w - g)
//
// where w is the mean and g the gust. Valid for: fluctuations that are even about the mean. Source: common practice, no source.
func (w Wind) Lull() float64 { return max(0, float64(2*w.Speed)-w.Gust) }

// Range is a least and a greatest value.
type Range struct {
	Least, Most float64
}

// Components are the winds along and across a heading that a wind of changing speed and direction makes.
type Components struct {
	Head  Range // m/s, negative from behind
	Cross Range // m/s, positive from the right
	// WorstCross is the greatest wind across from either side, m/s.
	WorstCross float64
}

// Over returns the components over a heading (rad clockwise from true north), between lull and gust and over all directions of the wind. The
// heading is the direction of travel.
//
// The extremes of w cos and w sin lie at the ends of speed and direction, or where the direction is along or square to the heading.
// Valid for: any wind that Check passes. Source: plane trigonometry.
func (w Wind) Over(heading float64) Components {
	out := Components{Head: Range{math.Inf(1), math.Inf(-1)}, Cross: Range{math.Inf(1), math.Inf(-1)}}
	for _, from := range w.extremes(heading) {
		for _, speed := range []float64{w.Lull(), w.Gust} {
			out.Head.take(Headwind(speed, from, heading))
			out.Cross.take(Crosswind(speed, from, heading))
		}
	}
	out.WorstCross = max(out.Cross.Most, -out.Cross.Least)
	return out
}

// take widens the range to hold a value.
func (r *Range) take(value float64) {
	r.Least, r.Most = min(r.Least, value), max(r.Most, value)
}

// extremes returns the ends of the sector and those directions along and square to a heading that lie within it.
func (w Wind) extremes(heading float64) []float64 {
	out := []float64{w.From - w.Left, w.From + w.Right}
	for quarter := range 4 {
		from := heading + float64(float64(quarter)*math.Pi/2)
		off := angleBetween(from, w.From)
		if off >= -w.Left && off <= w.Right {
			out = append(out, from)
		}
	}
	return out
}

// angleBetween returns the turn from one direction to another, rad from minus half to half a circle, positive clockwise.
func angleBetween(to, from float64) float64 {
	d := to - from
	return elementary.Atan2(elementary.Sin(d), elementary.Cos(d))
}

// GustFloor returns the gust to reckon with, m/s, and whether it is an estimate: the reported one, or where none is reported (zero or below
// the mean) the mean times the least gust factor of the ground.
//
// Valid for: as LeastGustFactor. Source: LeastGustFactor; a report names a gust only 10 kt above the mean.
func GustFloor(mean, reported float64, ground Roughness) (gust float64, estimated bool) {
	if reported > mean {
		return reported, false
	}
	return float64(mean * LeastGustFactor(ground)), true
}
