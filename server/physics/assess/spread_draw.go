package assess

import (
	"math"
	"strings"

	"pitgate/server/physics/elementary"
)

// support says which values an uncertain number can have.
type support uint8

const (
	anyValue   support = iota // places, angles and temperatures lie on either side of zero
	positive                  // masses, lengths, forces, times and factors do not
	proportion                // between nothing and all
)

// signed are the ends of names whose numbers lie on either side of zero.
var signed = []string{
	"Celsius", "Degrees", "XMeters", "YMeters", "ZMeters", "ositionSpreadMeters", "levationMeters",
}

// proportions are the ends of names whose numbers cannot be larger than one.
var proportions = []string{"relativeHumidityRatio", "efficiencyRatio", "fillRatio", "settingRatio"}

// support returns the support of a number by its name and by the value it is given with: one that is given as zero or less has either side.
func (u *uncertain) support() support {
	switch {
	case endsIn(u.name, signed) || !(u.value > 0):
		return anyValue
	case endsIn(u.name, proportions) && u.value < 1:
		return proportion
	}
	return positive
}

func endsIn(name string, ends []string) bool {
	for _, end := range ends {
		if strings.HasSuffix(name, end) {
			return true
		}
	}
	return false
}

const (
	// widestLognormal is the greatest spread over its value of a number that is drawn from a lognormal distribution.
	widestLognormal = 0.5
	// leastShare of its value is left of a number that cannot be negative.
	leastShare = 0.01
)

// draw returns how far a number is moved by a normal deviate, so that the median stays the value given and no value is drawn that cannot be:
//
//	any value:  s z
//	positive:   v (exp(k z) - 1), k = sqrt(ln(1 + (s/v)^2)), up to s/v = 0.5; wider ones max(s z, -0.99 v)
//	proportion: 1/(1 + (1/v - 1) exp(-s z/(v (1-v)))) - v
//
// where v is the value and s one standard deviation. The lognormal number has the coefficient of variation s/v; the logistic one the slope s at v.
// Source: lognormal distribution by its coefficient of variation, JCGM 101:2008, 6.4.
func (u *uncertain) draw(z float64) float64 {
	straight := float64(u.spread * z)
	v := u.value
	switch u.support() {
	case positive:
		ratio := u.spread / v
		if ratio > widestLognormal {
			return max(straight, (leastShare-1)*v)
		}
		k := math.Sqrt(elementary.Log(1 + float64(ratio*ratio)))
		return float64(v*elementary.Exp(k*z)) - v
	case proportion:
		odds := float64((1/v - 1) * elementary.Exp(-straight/float64(v*(1-v))))
		return 1/(1+odds) - v
	default:
		return straight
	}
}
