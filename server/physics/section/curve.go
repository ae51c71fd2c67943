package section

import "pitgate/server/physics/elementary"

// knot is one entry of a table: a value at a Reynolds number with one standard deviation.
type knot struct{ reynolds, value, spread float64 }

// curve is a value and its spread against the decimal logarithm of the Reynolds number.
type curve struct{ logReynolds, value, spread []float64 }

// newCurve builds a curve from knots of rising Reynolds number.
func newCurve(knots ...knot) curve {
	c := curve{}
	for _, k := range knots {
		c.logReynolds = append(c.logReynolds, elementary.Log10(k.reynolds))
		c.value = append(c.value, k.value)
		c.spread = append(c.spread, k.spread)
	}
	return c
}

// at interpolates linearly in the logarithm and holds the ends.
func (c *curve) at(logReynolds float64) (value, spread float64) {
	last := len(c.value) - 1
	if !(logReynolds > c.logReynolds[0]) {
		return c.value[0], c.spread[0]
	}
	for i := 1; i <= last; i++ {
		if logReynolds <= c.logReynolds[i] {
			share := (logReynolds - c.logReynolds[i-1]) / (c.logReynolds[i] - c.logReynolds[i-1])
			return blend(c.value[i-1], c.value[i], share), blend(c.spread[i-1], c.spread[i], share)
		}
	}
	return c.value[last], c.spread[last]
}

// logOf returns the decimal logarithm of a Reynolds number, held between 1 and 1e9; what is no number counts as 1.
func logOf(reynolds float64) float64 {
	if !(reynolds > 1) {
		return 0
	}
	return elementary.Log10(min(1e9, reynolds))
}

// blend interpolates linearly.
func blend(a, b, share float64) float64 { return a + float64(share*(b-a)) }

// between returns the first index i > 0 with place <= places[i], or the last one, and the share of the way from i-1 to i, held.
func between(places []float64, place float64) (int, float64) {
	i := 1
	for i < len(places)-1 && place > places[i] {
		i++
	}
	return i, max(0, min(1, (place-places[i-1])/(places[i]-places[i-1])))
}
