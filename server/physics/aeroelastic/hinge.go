package aeroelastic

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/loads"
)

// HingeSlopes returns the hinge moment of a plain sealed flap per rad of incidence and per rad of its own angle, over dynamic pressure, breadth and flap
// chord squared; both
// negative: the air turns the flap back. 0 for a flap without chord.
//
// Formula: with cos f = 2 E - 1, p = pi - f: ch_a = -(p (cos f - 1/2) + sin f (1 - cos f/2))/E^2,
// ch_d = -((1 - cos 2f) - 2 p^2 (1 - 2 cos f) + 4 p sin f)/(4 pi E^2); where E flap chord over chord; -pi/2 both for E = 1.
// Valid for: small angles, sealed gap, hinge at the nose of the flap. Real flaps reach 60 to 70 % of it: kept whole, which is cautious.
// Source: Glauert, ARC R&M 1095; Houghton and Carpenter, Aerodynamics for Engineering Students, section 4.5.1.
func HingeSlopes(chordRatio float64) (incidence, angle float64) {
	e := max(0, min(1, chordRatio))
	if !(e > 1e-3) {
		return 0, 0
	}
	c := float64(2*e) - 1
	s := math.Sqrt(max(0, 1-float64(c*c)))
	p := math.Pi - elementary.Atan2(s, c)
	square := float64(e * e)
	incidence = -(float64(p*(c-0.5)) + float64(s*(1-float64(0.5*c)))) / square
	sum := float64(2*float64(s*s)) - float64(float64(2*float64(p*p))*(1-float64(2*c))) + float64(4*float64(p*s))
	return incidence, -sum / (4 * math.Pi * square)
}

// Control is a hinged part as the air sees it.
type Control struct {
	// MomentArea is the integral of the flap chord squared along the hinge, m3: breadth times chord squared for an even one; TaperedMomentArea.
	MomentArea float64
	ChordRatio float64 // flap chord over chord
	Throw      float64 // greatest angle, rad
	Incidence  float64 // of the surface at the time, rad: the sign that adds to the throw is the cautious one
	// MassMoment is mass times the distance of its middle behind the hinge, kg m: 0 when mass balanced. The load factor pulls at it.
	MassMoment float64
}

// TaperedMomentArea returns the integral of the square of a chord that runs straight from one end to the other, m3.
//
// Formula: b (c_1^2 + c_1 c_2 + c_2^2)/3.
// Valid for: straight taper.
// Source: calculus.
func TaperedMomentArea(breadth, inner, outer float64) float64 {
	return breadth * (float64(inner*inner) + float64(inner*outer) + float64(outer*outer)) / 3
}

func (c Control) check() error {
	err := checkPositive(named{"momentArea", c.MomentArea}, named{"chordRatio", c.ChordRatio}, named{"throw", c.Throw}, named{"half pi less throw", math.Pi/2 - c.Throw})
	if err != nil {
		return err
	}
	if err := checkFinite(named{"incidence", c.Incidence}); err != nil {
		return err
	}
	return checkNotNegative(named{"1 - chordRatio", 1 - c.ChordRatio}, named{"massMoment", c.MassMoment})
}

// perPressure returns the aerodynamic hinge moment at full throw over dynamic pressure, m3.
func (c Control) perPressure() float64 {
	incidence, angle := HingeSlopes(c.ChordRatio)
	return c.MomentArea * (math.Abs(float64(angle*c.Throw)) + math.Abs(float64(incidence*c.Incidence)))
}

// HingeMoment returns the moment about the hinge at full throw that a servo must hold, N m. Errors name the impossible field.
//
// Formula: H = q A (|ch_d d| + |ch_a a|) + n g S; where q dynamic pressure, Pa, A moment area, m3, d throw, a incidence, n load factor, S mass moment, kg m.
// Valid for: as HingeSlopes; beyond 20 degrees the flap stalls and the moment grows less: cautious.
// Source: definition of the hinge-moment coefficient.
func (c Control) HingeMoment(pressure, loadFactor float64) (float64, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	if err := checkNotNegative(named{"pressure", pressure}); err != nil {
		return 0, err
	}
	if err := checkFinite(named{"loadFactor", loadFactor}); err != nil {
		return 0, err
	}
	moment := float64(pressure*c.perPressure()) + c.inertial(loadFactor)
	return moment, checkResult(moment)
}

func (c Control) inertial(loadFactor float64) float64 {
	return float64(math.Abs(loadFactor) * loads.StandardGravity * c.MassMoment)
}
