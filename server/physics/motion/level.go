package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// LevelDrag returns the drag in level flight at an airspeed, N, with the lift that carries the weight.
//
//	D = q S (CD0 + K (W/(q S))^2)
//
// where q is the dynamic pressure (Pa), S the area, W the weight. Valid for: away from the ground, lift below its greatest.
// Source: parabolic polar.
func (a Aircraft) LevelDrag(speed float64, air Conditions) float64 {
	pressureArea := 0.5 * air.Density * speed * speed * a.Area
	lift := a.Mass * air.gravity() / pressureArea
	return float64(pressureArea * a.DragCoefficient(lift, math.Inf(1)))
}

// TopSpeed returns the greatest airspeed of level flight, m/s, where full thrust (N, at an airspeed) meets drag, and false when thrust is below drag at
// every speed from the stall to 400 m/s.
//
// Valid for: subsonic polar, thrust that falls slower than drag rises. Source: thrust = drag, root bracketed from above.
func (a Aircraft) TopSpeed(air Conditions, thrust func(speed float64) float64) (float64, bool) {
	surplus := func(v float64) float64 { return thrust(v) - a.LevelDrag(v, air) }
	const highest, parts = 400.0, 200
	stall := a.StallSpeed(air)
	if !(stall < highest) {
		return 0, false
	}
	at := func(i int) float64 { return highest - float64((highest-stall)*(float64(i)/parts)) }
	begin := 1
	for i := wideParts; i <= parts; i += wideParts {
		if surplus(at(i)) >= 0 {
			begin = i - wideParts + 1
			break
		}
	}
	for i := begin; i <= parts; i++ {
		if surplus(at(i)) >= 0 {
			return bisect(surplus, at(i), at(i-1)), true
		}
	}
	return 0, false
}

// wideParts is how many parts of the speeds are passed over at once while the top speed is looked for; where that finds none, all are looked at.
const wideParts = 8

// bisect finds where a value falls through zero between low, where it is not negative, and high, to the last digit: by the Illinois form of false position,
// every third time by halves.
func bisect(value func(float64) float64, low, high float64) float64 {
	atLow, atHigh, side := value(low), value(high), 0
	for i := range 200 {
		mid := low + float64((high-low)*(atLow/(atLow-atHigh)))
		if i%3 == 2 || !(mid > low && mid < high) {
			mid = low + float64((high-low)/2)
		}
		if mid <= low || mid >= high {
			break
		}
		if v := value(mid); v >= 0 {
			low, atLow = mid, v
			if side == 1 {
				atHigh /= 2
			}
			side = 1
		} else {
			high, atHigh = mid, v
			if side == -1 {
				atLow /= 2
			}
			side = -1
		}
	}
	return low
}

// ClimbAngleAt returns the angle of a steady climb at an airspeed with a thrust (N), rad, and false when no steady climb short of the vertical exists.
//
//	sin(g) = (T - D)/W with L = W cos(g)
//
// Valid for: full angles. Source: steady climb, iterated on the lift.
func (a Aircraft) ClimbAngleAt(speed, thrust float64, air Conditions) (float64, bool) {
	weight := float64(a.Mass * air.gravity())
	pressureArea := 0.5 * air.Density * speed * speed * a.Area
	surplus := func(angle float64) float64 {
		lift := weight * elementary.Cos(angle) / pressureArea
		drag := float64(pressureArea * a.DragCoefficient(lift, math.Inf(1)))
		return thrust - drag - float64(weight*elementary.Sin(angle))
	}
	if surplus(math.Pi/2) >= 0 || surplus(-math.Pi/2) < 0 {
		return 0, false
	}
	return bisect(surplus, -math.Pi/2, math.Pi/2), true
}

// SlowedSpeed returns the speed left after a distance with drag alone, m/s.
//
//	v = v0 exp(-k x),  k = rho S CD / (2 m)
//
// where x is the distance (m). Valid for: constant drag coefficient, level. Source: Newton's second law, integrated.
func SlowedSpeed(speed, factor, distance float64) float64 {
	return float64(speed * elementary.Exp(-factor*distance))
}

// SlowedTime returns the time a distance takes with drag alone, s.
//
//	t = (exp(k x) - 1) / (k v0)
//
// where k is as for SlowedSpeed. Valid for: k above zero. Source: Newton's second law, integrated.
func SlowedTime(speed, factor, distance float64) float64 {
	return (elementary.Exp(factor*distance) - 1) / (factor * speed)
}

// DragFactor returns k of SlowedSpeed, 1/m: rho S CD / (2 m). Source: definition.
func DragFactor(density, area, dragCoefficient, mass float64) float64 {
	return density * area * dragCoefficient / (2 * mass)
}

// StopDistance returns the distance to rest with drag and rolling friction, m.
//
//	x = ln(1 + k v0^2/(mu g)) / (2 k)
//
// where k is DragFactor less mu times the lift's, mu the friction. Valid for: k and mu above zero, level, no wind. Source: Newton's second law, integrated.
func StopDistance(speed, factor, friction float64) float64 {
	return elementary.Log(1+float64(factor*speed*speed/(friction*Gravity))) / (2 * factor)
}

// MeanForceRun returns the take-off run by the mean force at 0.7 of the lift-off speed of 1.2 times the stall speed, m: a second opinion on Launch.
//
//	s = 1.44 W^2 / (g rho S CLmax (T - [D + mu (W - L)]))
//
// where D and L are drag and lift with the ground lift coefficient in ground effect at that speed, T the thrust there at full power, mu the
// rolling friction. Valid for: constant thrust, level, still air; short by up to half a percent. Source: Anderson, Introduction to Flight, section 6.15.
func (a Aircraft) MeanForceRun(friction float64, air Conditions) float64 {
	weight := float64(a.Mass * air.gravity())
	speed := 0.7 * 1.2 * a.StallSpeed(air)
	pressureArea := 0.5 * air.Density * speed * speed * a.Area
	drag := float64(pressureArea * (a.DragCoefficient(a.CLGround, a.WingHeight) + a.GroundDrag))
	lift := float64(pressureArea * a.CLGround)
	force := a.thrust(speed, fullThrustTime) - drag - float64(friction*(weight-lift))
	return 1.44 * weight * weight / (air.gravity() * air.Density * a.Area * a.CLMax * force)
}

// fullThrustTime is a time by which every engine is at full thrust, s.
const fullThrustTime = 1e6
