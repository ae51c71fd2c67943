package engine

import (
	"math"

	"pitgate/server/physics/elementary"
)

// FanStaticThrust returns the static thrust of a ducted fan.
//
//	F = (4 rho A P^2)^(1/3)
//
// where rho is the air density (kg/m3), A the exit area (m2), P the power in the jet (W).
// Valid for: uniform exit flow at ambient pressure. Source: momentum theory.
func FanStaticThrust(density, exitArea, jetPower float64) float64 {
	return elementary.Pow(4*density*exitArea*jetPower*jetPower, 1.0/3)
}

// FanJetPower returns the power in the jet of a ducted fan that gives a static thrust.
//
//	P = F^1.5 / (2 sqrt(rho A))
//
// where F is the static thrust (N), rho the density (kg/m3), A the exit area (m2). Valid for: as FanStaticThrust. Source: its inverse.
func FanJetPower(staticThrust, density, exitArea float64) float64 {
	return staticThrust * math.Sqrt(staticThrust/(density*exitArea)) / 2
}

// FanExitSpeed returns the exit speed Ve (m/s) of a ducted fan at an airspeed V (m/s), from rho A Ve (Ve^2 - V^2) / 2 = P.
//
// where rho is the density (kg/m3), A the exit area (m2), P the power in the jet (W).
// Valid for: V not negative. Source: momentum theory, Newton's method from above the root.
func FanExitSpeed(density, exitArea, jetPower, speed float64) float64 {
	cube := 2 * jetPower / (density * exitArea)
	exit := speed + elementary.Pow(cube, 1.0/3)
	for range 60 {
		square := float64(exit * exit)
		residual := float64(exit*(square-float64(speed*speed))) - cube
		step := residual / (float64(3*square) - float64(speed*speed))
		exit -= step
		if !(math.Abs(step) > 1e-13*exit) {
			break
		}
	}
	return exit
}

// FanThrust returns the net thrust of a ducted fan at an airspeed with the power in its jet held.
//
//	F = rho A Ve (Ve - V)
//
// where Ve is FanExitSpeed. Valid for: V not negative. Source: momentum theory.
func FanThrust(density, exitArea, jetPower, speed float64) float64 {
	if !(jetPower > 0) {
		return 0
	}
	exit := FanExitSpeed(density, exitArea, jetPower, speed)
	return density * exitArea * exit * (exit - speed)
}

// PropellerStaticThrust returns the static thrust of an open propeller.
//
//	F = (2 rho A P^2)^(1/3)
//
// where rho is the density (kg/m3), A the disc area (m2), P the power given to the air (W). Valid for: uniform disc. Source: momentum theory.
func PropellerStaticThrust(density, discArea, power float64) float64 {
	return elementary.Pow(2*density*discArea*power*power, 1.0/3)
}

// PropellerPower returns the power given to the air by an open propeller at a static thrust.
//
//	P = F^1.5 / sqrt(2 rho A)
//
// where F is the static thrust (N), rho the density (kg/m3), A the disc area (m2). Valid for: as PropellerStaticThrust. Source: its inverse.
func PropellerPower(staticThrust, density, discArea float64) float64 {
	return staticThrust * math.Sqrt(staticThrust/(2*density*discArea))
}

// PropellerInflow returns the speed w (m/s) added at the disc, from 2 rho A (V + w)^2 w = P.
//
// where rho is the density (kg/m3), A the disc area (m2), V the airspeed (m/s), P the power given to the air (W).
// Valid for: V not negative. Source: momentum theory, Newton's method from above the root.
func PropellerInflow(density, discArea, power, speed float64) float64 {
	cube := power / (2 * density * discArea)
	inflow := elementary.Pow(cube, 1.0/3)
	for range 60 {
		through := speed + inflow
		residual := float64(through*through*inflow) - cube
		step := residual / (through * (through + float64(2*inflow)))
		inflow -= step
		if !(math.Abs(step) > 1e-13*inflow) {
			break
		}
	}
	return inflow
}

// PropellerThrust returns the thrust of an open propeller at an airspeed with its power held.
//
//	F = 2 rho A (V + w) w
//
// where w is PropellerInflow. Valid for: V not negative. Source: momentum theory.
func PropellerThrust(density, discArea, power, speed float64) float64 {
	if !(power > 0) {
		return 0
	}
	inflow := PropellerInflow(density, discArea, power, speed)
	return 2 * density * discArea * (speed + inflow) * inflow
}
