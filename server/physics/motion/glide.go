package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Glide is a steady descent without thrust.
type Glide struct {
	Lift  float64 // lift coefficient
	Ratio float64 // lift over drag
	Speed float64 // airspeed along the path, m/s
	Angle float64 // path below the horizontal, rad
	Sink  float64 // m/s
}

// BestGlide returns the glide of the flattest path, its lift coefficient kept at or below the greatest.
//
//	CL = sqrt(CD0/K), L/D = CL/(CD0 + K CL^2), tan(g) = 1/(L/D), V = sqrt(2 W cos(g)/(rho S CL))
//
// where extra is drag coefficient added by a stopped engine, gear or spoilers. Valid for: no thrust, away from the ground. Source: steady glide.
func (a Aircraft) BestGlide(air Conditions, extra float64) Glide {
	a.CD0 += extra
	if !(a.InducedFactor > 0) {
		return a.GlideAt(a.CLMax, air)
	}
	return a.GlideAt(min(a.CLMax, math.Sqrt(a.CD0/a.InducedFactor)), air)
}

// LeastSink returns the glide of the slowest descent, its lift coefficient kept at or below the greatest.
//
//	CL = sqrt(3 CD0/K)
//
// Valid for: no thrust, away from the ground. Source: greatest CL^1.5/CD of a parabolic polar.
func (a Aircraft) LeastSink(air Conditions) Glide {
	if !(a.InducedFactor > 0) {
		return a.GlideAt(a.CLMax, air)
	}
	return a.GlideAt(min(a.CLMax, math.Sqrt(3*a.CD0/a.InducedFactor)), air)
}

// GlideAt returns the steady glide at a lift coefficient; full angles.
//
//	tan(g) = CD/CL, V = sqrt(2 W cos(g)/(rho S CL)), sink = V sin(g)
//
// Valid for: lift above zero. Source: steady glide.
func (a Aircraft) GlideAt(lift float64, air Conditions) Glide {
	drag := a.DragCoefficient(lift, math.Inf(1))
	angle := elementary.Atan2(drag, lift)
	weight := float64(a.Mass * air.gravity())
	speed := math.Sqrt(2 * weight * elementary.Cos(angle) / (air.Density * a.Area * lift))
	return Glide{Lift: lift, Ratio: lift / drag, Speed: speed, Angle: angle, Sink: float64(speed * elementary.Sin(angle))}
}

// Range returns the distance over the ground from a height (m) against a headwind (m/s), m; zero when the wind is as fast as the glide.
//
//	x = h (V cos(g) - w) / sink
//
// Valid for: steady wind. Source: kinematics.
func (g Glide) Range(height, headwind float64) float64 {
	return max(0, height*(float64(g.Speed*elementary.Cos(g.Angle))-headwind)/g.Sink)
}

// TurnHeightLoss returns the height lost in a gliding turn, m.
//
//	dh = psi (CD/CL^2) 4 W / (S rho g sin(2 bank))
//
// where psi is the change of heading (rad), CL the lift coefficient held. Valid for: shallow glide in the turn, bank above zero; the least
// loss at one lift coefficient is at 45 degrees. Source: Rogers, The possible impossible turn; derived from steady turn and glide.
func (a Aircraft) TurnHeightLoss(change, bank, lift float64, air Conditions) float64 {
	drag := a.DragCoefficient(lift, math.Inf(1))
	loading := a.Mass * air.gravity() / a.Area
	return change * drag / (lift * lift) * 4 * loading / (air.Density * air.gravity() * elementary.Sin(2*bank))
}
