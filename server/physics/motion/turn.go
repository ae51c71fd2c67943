package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// TurnLoad returns the load factor of a level turn: n = 1/cos(bank).
//
// where bank is the angle of bank (rad). Valid for: bank below 90 degrees. Source: balance of vertical forces.
func TurnLoad(bank float64) float64 {
	return 1 / elementary.Cos(bank)
}

// TurnRadius returns the radius of a level turn through the air, m.
//
//	R = V^2 / (g tan(bank))
//
// where V is the airspeed (m/s), bank the angle of bank (rad). Valid for: steady level turns. Source: balance of forces across the path.
func TurnRadius(speed, bank float64) float64 {
	return speed * speed / (Gravity * elementary.Tan(bank))
}

// TurnRate returns the rate of a level turn, rad/s: g tan(bank) / V.
//
// where V is the airspeed (m/s), bank the angle of bank (rad). Valid for: steady level turns. Source: balance of forces across the path.
func TurnRate(speed, bank float64) float64 {
	return float64(Gravity*elementary.Tan(bank)) / speed
}

// TurnStallSpeed returns the stall speed in a level turn, m/s: Vs sqrt(n).
//
// where Vs is the stall speed in straight flight (m/s) and n the load factor. Valid for: level turns. Source: lift equation.
func TurnStallSpeed(stallSpeed, bank float64) float64 {
	return float64(stallSpeed * math.Sqrt(TurnLoad(bank)))
}

// PullUpRadius returns the radius of a pull-up at the bottom, m: V^2 / (g (n - 1)).
//
// where V is the airspeed (m/s) and n the load factor. Valid for: n above 1. Source: balance of forces across the path.
func PullUpRadius(speed, load float64) float64 {
	return speed * speed / (Gravity * (load - 1))
}

// LoadRadius returns the radius of a level turn at a load factor, m: V^2 / (g sqrt(n^2 - 1)).
//
// where V is the airspeed (m/s) and n the load factor. Valid for: n above 1. Source: balance of forces across the path.
func LoadRadius(speed, load float64) float64 {
	return speed * speed / (Gravity * math.Sqrt(float64(load*load)-1))
}
