package sun

import "math"

// Elevations, without the air, of the sun's centre at the limits of daylight, rad.
const (
	// RisingElevation is that of sunrise and sunset: 34' of refraction and 16' of half the disc.
	RisingElevation = -50.0 / 60 * radiansPerDegree
	// CivilElevation is that of the ends of civil twilight.
	CivilElevation = -6.0 * radiansPerDegree
)

// Span is the time the sun stands above a limit on one solar day.
type Span struct {
	Begin, End float64 // s since 1970-01-01 UTC; meaningless when Always or Never
	Always     bool    // the sun does not sink below the limit
	Never      bool    // the sun does not come above the limit
}

// Contains reports whether a moment (s since 1970-01-01 UTC) lies in the span.
func (s Span) Contains(moment float64) bool {
	return s.Always || !s.Never && moment >= s.Begin && moment <= s.End
}

// Daylight is one solar day, from one midnight of the sun to the next.
type Daylight struct {
	Noon     float64 // moment the sun crosses the meridian, s since 1970-01-01 UTC
	Sun      Span    // sunrise to sunset
	Twilight Span    // begin of civil dawn to end of civil dusk
}

// Day returns the daylight of the solar day a moment (s since 1970-01-01 UTC) lies in.
//
// The moment at which the sun's true elevation passes a limit is found between noon and the midnights beside it.
// Valid for: level horizon at the height of the eye; see the package. Source: limits of the Astronomical Almanac (sunrise 90 50' from the
// zenith, civil twilight 96 degrees).
func Day(moment float64, place Place) (Daylight, error) {
	if err := check(moment, place); err != nil {
		return Daylight{}, err
	}
	noon := noonNear(moment, place)
	return Daylight{
		Noon:     noon,
		Sun:      spanAbove(RisingElevation, noon, place),
		Twilight: spanAbove(CivilElevation, noon, place),
	}, nil
}

// noonNear returns the moment nearest to another at which the hour angle is zero, to a thousandth of a second.
func noonNear(moment float64, place Place) float64 {
	for range 8 {
		step := float64(seen(moment, place).HourAngle / fullCircle * secondsPerDay)
		moment -= step
		if math.Abs(step) < 1e-3 {
			break
		}
	}
	return moment
}

// spanAbove returns the time the sun's true elevation is above a limit (rad) between the midnights beside a noon.
func spanAbove(limit, noon float64, place Place) Span {
	over := func(moment float64) float64 { return seen(moment, place).True - limit }
	before, after := noon-secondsPerDay/2, noon+secondsPerDay/2
	switch {
	case !(over(noon) > 0):
		return Span{Never: true}
	case over(before) > 0 || over(after) > 0:
		return Span{Always: true}
	}
	return Span{Begin: crossing(over, before, noon), End: crossing(over, after, noon)}
}

// settled is the change of a moment below which the line through two moments leads to the crossing, s: to milliseconds.
const settled = 0.01

// crossing returns the moment between one with the sun under a limit and one with it over at which it passes the limit: along the line through the last
// two moments looked at, by halves where that leads out of what is left between under and over.
func crossing(over func(float64) float64, under, above float64) float64 {
	before, last := under, above
	missed, miss := over(under), over(above)
	for range mostMoments {
		next := last - float64((last-before)*(miss/(miss-missed)))
		if !(next > min(under, above) && next < max(under, above)) {
			next = under + float64((above-under)/2)
		}
		if math.Abs(next-last) < settled {
			return next
		}
		before, missed = last, miss
		if last, miss = next, over(next); miss > 0 {
			above = last
		} else {
			under = last
		}
	}
	return last
}

// mostMoments bounds the moments looked at for a crossing; about six are.
const mostMoments = 60
