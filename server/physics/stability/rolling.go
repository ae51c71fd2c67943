package stability

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Rolling is what rolling with the ailerons needs.
type Rolling struct {
	Power   float64 // Cl with aileron angle, per rad, as the angle is meant; sign as the lattice gives it
	Damping float64 // Cl with p b/(2V), negative
	Angle   float64 // aileron angle, rad
}

// Ratio returns p b/(2V) of a steady roll, rad.
//
// Formula: -Cl_d d/Cl_p.
// Valid for: rigid wing below the stall; 0 without damping.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (r Rolling) Ratio() float64 {
	if !(r.Damping < 0) {
		return 0
	}
	return -float64(r.Power*r.Angle) / r.Damping
}

// Rate returns the rate of a steady roll, rad/s.
//
// Formula: p = ratio 2V/b.
// Valid for: as Ratio; 0 without span.
// Source: definition.
func (r Rolling) Rate(speed, span float64) float64 {
	if !(span > 0) {
		return 0
	}
	return float64(float64(2*r.Ratio())*speed) / span
}

// TimeConstant returns the time constant of rolling alone, s. The error names an impossible field.
//
// Formula: tau = -1/L_p = -4 I_x/(rho V S b^2 Cl_p).
// Valid for: one degree of freedom.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (r Rolling) TimeConstant(s State) (float64, error) {
	if err := s.checkLateral(); err != nil {
		return 0, err
	}
	if err := checkPositive(named{"damping (negative)", -r.Damping}); err != nil {
		return 0, err
	}
	square := float64(s.Span * s.Span)
	tau := float64(4*s.Inertia.Roll) / float64(float64(float64(s.Density*s.Speed)*float64(s.Area*square))*-r.Damping)
	return tau, checkPositive(named{"time constant", tau})
}

// TimeToBank returns the time from wings level to a bank (rad) after a sudden aileron, s. Errors name the impossible field.
//
// Formula: bank = p (t - tau (1 - e^(-t/tau))), solved for t by bisection.
// Valid for: one degree of freedom, servo time left out.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (r Rolling) TimeToBank(bank float64, s State) (float64, error) {
	tau, err := r.TimeConstant(s)
	if err != nil {
		return 0, err
	}
	rate := math.Abs(r.Rate(s.Speed, s.Span))
	if err := checkPositive(named{"roll rate", rate}, named{"bank", bank}); err != nil {
		return 0, err
	}
	high := bank/rate + tau
	if err := checkResult(high); err != nil {
		return 0, err
	}
	low := 0.0
	for range 200 {
		middle := low + float64(0.5*(high-low))
		if middle <= low || middle >= high {
			break
		}
		if float64(rate*(middle-float64(tau*(1-elementary.Exp(-middle/tau))))) < bank {
			low = middle
		} else {
			high = middle
		}
	}
	return high, nil
}
