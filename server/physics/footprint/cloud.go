package footprint

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pitgate/server/physics/field"
)

// Cloud is where and how the samples met the ground.
type Cloud struct {
	Impacts []Impact // in the order of the samples; none where only places are known
	Margin  float64  // by which outlines are drawn around impacts, m
	// Aloft is the number of samples still in the air after two hours; they stand among the impacts with Landed false, where they were.
	Aloft int

	// Error is the mean distance of estimated impacts from those flown exactly, m; zero where all are.
	Error float64

	width, mass float64
	places      []field.Point
}

// Places returns the places of the impacts.
func (c Cloud) Places() []field.Point {
	if c.places != nil {
		return c.places
	}
	out := make([]field.Point, len(c.Impacts))
	for i, impact := range c.Impacts {
		out[i] = impact.Place
	}
	return out
}

// Middle returns the mean place of the impacts; the origin when there are none.
func (c Cloud) Middle() field.Point {
	var sum field.Point
	places := c.Places()
	for _, place := range places {
		sum = sum.Plus(place)
	}
	return sum.Times(1 / float64(max(len(places), 1)))
}

// Outline returns a convex outline, counter-clockwise, that holds at least a share of the impacts with the margin about each of them.
//
// Formula: the outline lies as far out in each of 72 directions as the cloud reaches with k impacts beyond, plus the margin; k is the greatest for which
// at most (1 - s) n impacts, less one standard error of that number, lie beyond in any direction (half-space depth). That reach is the mean of the impacts number k/2 to 3k/2 from the far end,
// which scatters less than one of them. Outlines of greater shares hold those of lesser shares. Valid for: shares above 0 to 1; a convex outline also
// holds places between the impacts that none of them reaches. Source: Tukey, Mathematics and the picturing of data, 1975.
func (c Cloud) Outline(share float64) (field.Polygon, error) {
	ends, err := c.farEnds(share)
	if err != nil {
		return nil, err
	}
	return ends.drawn(ends.beyond, c.around()), nil
}

// Outlines are the outline of a share of the impacts and those between which it lies but for the chance that made the impacts.
type Outlines struct{ Inner, Middle, Outer field.Polygon }

// Outlines returns Outline and the outlines one standard error of chance within and beyond it.
//
//	k + sqrt(k) and k - sqrt(k) impacts beyond, none less than zero
//
// where k is the number of impacts beyond each side of Outline: as many of n independent impacts lie beyond a fixed side, give or take the root. Even
// points scatter less. Valid for: as Outline. Source: David & Nagaraja, Order Statistics, 2003, section 7.1 (interval of a quantile); Poisson
// distribution.
func (c Cloud) Outlines(share float64) (Outlines, error) {
	ends, err := c.farEnds(share)
	if err != nil {
		return Outlines{}, err
	}
	chance, margin := chanceOf(ends.beyond), c.around()
	return Outlines{
		Inner: ends.drawn(ends.beyond+chance, margin), Middle: ends.drawn(ends.beyond, margin), Outer: ends.drawn(max(0, ends.beyond-chance), margin),
	}, nil
}

// farEnds looks at the cloud from all sides.
func (c Cloud) farEnds(share float64) (depth, error) {
	if !(share > 0 && share <= 1) {
		return depth{}, fmt.Errorf("share: %g is outside 0 to 1", share)
	}
	places := c.Places()
	if len(places) == 0 {
		return depth{}, errors.New("cloud: has no impacts")
	}
	return depthOf(places, mostOutside(share, len(places))), nil
}

// around returns the margin of the outlines.
func (c Cloud) around() float64 { return max(c.Margin, leastMargin) }

// mostOutside returns how many impacts may lie outside an outline.
//
//	(1 - s) n - sqrt(s (1 - s) n), none below zero
//
// The root is one standard error of the count, by which the impacts drawn may be fewer than those to come. Source: binomial distribution.
func mostOutside(share float64, impacts int) int {
	n := float64(impacts)
	out := float64((1-share)*n) - math.Sqrt(float64(share*(1-share)*n))
	return min(max(int(math.Floor(out+1e-9)), 0), impacts-1)
}

// ShareInside returns the share of impacts inside or on an outline.
func (c Cloud) ShareInside(outline field.Polygon) float64 {
	return c.shareOf(func(place field.Point) bool { return outline.SignedDistance(place) >= 0 })
}

// shareOf returns the share of impacts for whose place something holds; zero without impacts.
func (c Cloud) shareOf(holds func(field.Point) bool) float64 {
	count, places := 0, c.Places()
	for _, place := range places {
		if holds(place) {
			count++
		}
	}
	return float64(count) / float64(max(len(places), 1))
}

// FarthestFrom returns the greatest distance of an impact from a place, m.
func (c Cloud) FarthestFrom(place field.Point) float64 {
	far := 0.0
	for _, impact := range c.Places() {
		far = max(far, impact.Distance(place))
	}
	return far
}

// EnergyAt returns the kinetic energy that a share of the impacts does not exceed, J.
func (c Cloud) EnergyAt(share float64) float64 {
	return c.quantile(share, func(i Impact) float64 { return i.Energy })
}

// SpeedAt returns the speed over the ground that a share of the impacts does not exceed, m/s.
func (c Cloud) SpeedAt(share float64) float64 {
	return c.quantile(share, func(i Impact) float64 { return i.Speed })
}

// TimeAt returns the time from the loss to the ground that a share of the impacts does not exceed, s.
func (c Cloud) TimeAt(share float64) float64 {
	return c.quantile(share, func(i Impact) float64 { return i.Time })
}

// CriticalAreaAt returns the critical area that a share of the impacts does not exceed, m2, for the width and the mass of the model.
func (c Cloud) CriticalAreaAt(share float64, ground Ground) (float64, error) {
	if err := ground.Check(); err != nil {
		return 0, err
	}
	return c.quantile(share, func(i Impact) float64 { return c.strike(i).area(ground).Total }), nil
}

// strike is an impact of the model.
func (c Cloud) strike(i Impact) Strike {
	return Strike{Width: c.width, Mass: c.mass, Speed: i.Speed, Angle: i.Angle}
}

// quantile returns the least value that a share of the impacts does not exceed. A share outside 0 to 1 is brought within it; an empty cloud gives zero.
func (c Cloud) quantile(share float64, of func(Impact) float64) float64 {
	if len(c.Impacts) == 0 {
		return 0
	}
	values := make([]float64, len(c.Impacts))
	for i, impact := range c.Impacts {
		values[i] = of(impact)
	}
	slices.Sort(values)
	if !(share > 0) {
		return values[0]
	}
	index := int(math.Ceil(float64(min(share, 1)*float64(len(values)))-1e-9)) - 1
	return values[max(index, 0)]
}
