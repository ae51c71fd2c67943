package engine

import (
	"math"

	"pitgate/server/physics/elementary"
)

// FixedSpeedThrustRatio returns the static thrust of the day over that in reference air, for a turbine held at the same rpm by its limiter.
//
//	F/F0 = delta theta^(-n/2)
//
// where delta and theta are the pressure and temperature ratios and n the exponent of thrust against rpm.
// Valid for: rpm-limited turbines near full speed. Source: corrected-parameter reduction, F/delta = f(N/sqrt(theta)), with F ~ N^n.
func FixedSpeedThrustRatio(c Corrections, exponent float64) float64 {
	return c.Delta * elementary.Pow(c.Theta, -0.5*exponent)
}

// Run is one steady reading of a turbine.
type Run struct {
	Thrust             float64 // N
	Speed              float64 // rpm
	ExhaustTemperature float64 // K
	FuelFlow           float64 // any unit of mass or volume over time
	MassFlow           float64 // kg/s
}

// Corrected reduces a reading to reference air.
//
//	F/delta, N/sqrt(theta), T/theta, Wf/(delta sqrt(theta)), m sqrt(theta)/delta
//
// where delta and theta are the pressure and temperature ratios of the air of the run.
// Valid for: the same engine at the same corrected speed. Source: standard corrected parameters of gas turbines.
func (r Run) Corrected(c Corrections) Run {
	root := math.Sqrt(c.Theta)
	return Run{
		Thrust:             r.Thrust / c.Delta,
		Speed:              r.Speed / root,
		ExhaustTemperature: r.ExhaustTemperature / c.Theta,
		FuelFlow:           r.FuelFlow / (c.Delta * root),
		MassFlow:           r.MassFlow * root / c.Delta,
	}
}
