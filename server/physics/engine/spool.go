package engine

import "pitgate/server/physics/elementary"

// SpeedRatio returns rpm over full rpm for a thrust over full thrust.
//
//	r = (F/Fmax)^(1/n)
//
// where n is the exponent of thrust against rpm. Valid for: share from 0 to 1. Source: inverse of ThrustShare.
func SpeedRatio(share, exponent float64) float64 {
	if share <= 0 {
		return 0
	}
	return elementary.Pow(share, 1/exponent)
}

// ThrustShare returns thrust over full thrust at a speed ratio.
//
//	F/Fmax = r^n
//
// where r is rpm over full rpm and n the exponent. Valid for: r from idle to 1. Source: power-law fit of static thrust against rpm.
func ThrustShare(ratio, exponent float64) float64 {
	if ratio <= 0 {
		return 0
	}
	return elementary.Pow(ratio, exponent)
}

// SpoolRatio returns rpm over full rpm at a time after the throttle is opened from idle.
//
//	r = r0 + (1 - r0) t/ts, at most 1
//
// where r0 is the idle speed ratio and ts the idle-to-full time (s). Valid for: a linear rpm ramp as electronic controllers set it.
// Source: linear ramp.
func SpoolRatio(time, idleRatio, spoolTime float64) float64 {
	switch {
	case spoolTime <= 0 || time >= spoolTime:
		return 1
	case time <= 0:
		return idleRatio
	}
	return idleRatio + float64((1-idleRatio)*(time/spoolTime))
}

// MeanShare returns the mean of the thrust share over a linear rpm ramp.
//
//	(1 - r0^(n+1)) / ((n+1)(1 - r0))
//
// where r0 is the idle speed ratio and n the exponent. Valid for: r0 below 1. Source: integral of ThrustShare over SpoolRatio.
func MeanShare(idleRatio, exponent float64) float64 {
	return (1 - ThrustShare(idleRatio, exponent+1)) / ((exponent + 1) * (1 - idleRatio))
}
