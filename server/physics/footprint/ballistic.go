package footprint

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// KineticEnergy returns the kinetic energy of a mass (kg) at a speed (m/s), J: m v^2/2. Source: mechanics.
func KineticEnergy(mass, speed float64) float64 { return float64(0.5 * mass * speed * speed) }

// SpeedOfEnergy returns the speed at which a mass (kg) has a kinetic energy (J), m/s: sqrt(2 E/m); zero without mass or energy. Source: mechanics.
func SpeedOfEnergy(mass, energy float64) float64 {
	if !(mass > 0) || !(energy > 0) {
		return 0
	}
	return math.Sqrt(2 * energy / mass)
}

// TerminalSpeed returns the speed of a steady fall, m/s.
//
//	V = sqrt(2 m g/(rho A))
//
// where A is the drag area (m2). Valid for: all four above zero, else zero is given; drag growing with the square of speed.
// Source: balance of weight and drag.
func TerminalSpeed(mass, dragArea, density, gravity float64) float64 {
	if !(mass > 0) || !(dragArea > 0) || !(density > 0) || !(gravity > 0) {
		return 0
	}
	return math.Sqrt(2 * mass * gravity / (density * dragArea))
}

// DragRate returns drag over mass and speed squared, 1/m: b = rho A/(2 m).
//
// where A is the drag area (m2). Valid for: mass above zero, else zero is given. Source: definition of the drag coefficient.
func DragRate(mass, dragArea, density float64) float64 {
	if !(mass > 0) {
		return 0
	}
	return density * dragArea / (2 * mass)
}

// VacuumFall is a fall without drag.
type VacuumFall struct {
	Time     float64 // s
	Distance float64 // m
	Speed    float64 // at the ground, m/s
	Angle    float64 // of the path below the horizontal, rad
}

// InVacuum returns the fall without drag from a height (m) at a speed (m/s) and climb angle (rad).
//
//	t = (V sin(c) + sqrt((V sin(c))^2 + 2 g h))/g, x = V cos(c) t, v^2 = V^2 + 2 g h
//
// Valid for: level ground, no drag, no wind; an upper bound of the distance with drag and no wind. Source: kinematics.
func InVacuum(height, speed, climb, gravity float64) (VacuumFall, error) {
	if !(height >= 0 && height <= 1e5) || !(speed >= 0 && speed <= 1e4) || !(gravity > 0 && gravity <= 1000) || !(math.Abs(climb) <= math.Pi/2) {
		return VacuumFall{}, errors.New("fall: height, speed, gravity or climb angle is out of range")
	}
	up, level := float64(speed*elementary.Sin(climb)), float64(speed*elementary.Cos(climb))
	down := math.Sqrt(float64(up*up) + float64(2*gravity*height))
	time := (up + down) / gravity
	return VacuumFall{
		Time: time, Distance: float64(level * time),
		Speed: math.Sqrt(float64(speed*speed) + float64(2*gravity*height)), Angle: elementary.Atan2(down, level),
	}, nil
}

// FallSpeed returns the speed of a fall from rest through a height, m/s.
//
//	v = V sqrt(1 - e^(-2 g h/V^2))
//
// where V is the terminal speed (m/s) and h the height fallen (m). Valid for: straight down from rest. Source: integral of dv/dt = g - g (v/V)^2.
// Heights and terminal speeds below zero count as zero.
func FallSpeed(height, terminal, gravity float64) float64 {
	if !(height > 0) || !(terminal > 0) {
		return 0
	}
	return float64(terminal * math.Sqrt(1-elementary.Exp(-2*gravity*height/(terminal*terminal))))
}

// Hodograph returns what stays the same along a fall with quadratic drag.
//
//	C = 1/vx^2 + (b/g) (tan(a) sec(a) + ln(tan(a) + sec(a)))
//
// where vx is the level speed (m/s), a the angle of the path over the horizontal (rad) and b the DragRate (1/m).
// Valid for: no wind, no lift, vx above zero. Source: hodograph of a projectile with drag growing with the square of speed, Euler 1753.
// It is an error when there is no level speed.
func Hodograph(v Vector, dragRate, gravity float64) (float64, error) {
	level := v.Level()
	if !(level > 1e-100) || !(gravity > 0) || !(dragRate >= 0) || !(v.Length() < 1e100) {
		return 0, errors.New("hodograph: needs a level speed, gravity and a drag rate that is not negative")
	}
	tangent := v.Z / level
	secant := math.Sqrt(1 + float64(tangent*tangent))
	return 1/float64(level*level) + float64(dragRate/gravity*(float64(tangent*secant)+elementary.Asinh(tangent))), nil
}
