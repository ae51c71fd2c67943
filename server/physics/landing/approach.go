package landing

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Slope is the straight approach.
type Slope struct {
	Angle    float64 // flown, over the ground, rad below the horizon
	Steepest float64 // with idle thrust at the approach speed, rad; below zero where idle thrust climbs
	Thrust   float64 // needed to hold Angle, N
	Idle     float64 // thrust with the throttle closed at the approach speed, N
	// Drag at the approach speed, N.
	Drag float64
	// Flattened says that idle thrust is more than the wanted angle allows: the approach is flown at Steepest instead.
	Flattened bool
	// Descends is false when idle thrust is as much as the drag: at this speed the model does not come down.
	Descends bool
}

// leastDescent is the flattest slope that counts as coming down, rad.
const leastDescent = 0.005

// settle chooses the slope.
func (f *flight) settle() error {
	w, gradient := f.meanWind()
	if !(f.speed*0.95 > w) {
		return ErrNoWay
	}
	s := Slope{Idle: f.plan.idle(f.speed)}
	s.Steepest = f.steepest(s.Idle, w, gradient)
	s.Descends = s.Steepest >= leastDescent
	s.Angle = f.plan.Angle
	if s.Angle == 0 {
		s.Angle = min(s.Steepest, DefaultSteepest)
	}
	if s.Angle > s.Steepest {
		s.Angle, s.Flattened = s.Steepest, true
	}
	through := airAngle(s.Angle, w, f.speed)
	s.Drag = f.glideDrag(through)
	s.Thrust = s.Drag - float64(elementary.Sin(through)*f.pull(gradient, through))
	f.slope = s
	return nil
}

// meanWind returns the headwind at half the screen height (m/s) and its mean growth with height below the screen (1/s).
func (f *flight) meanWind() (wind, gradient float64) {
	top := max(f.plan.ScreenHeight, 4)
	wind = f.headwind(top / 2)
	return wind, (f.headwind(top) - f.headwind(top/4)) / (0.75 * top)
}

// airAngle returns the slope through the air of a slope over the ground, rad.
//
//	ga = g - asin(w sin(g)/V)
//
// where g is the slope over the ground, w the headwind and V the airspeed (m/s). Valid for: w below V. Source: wind triangle in the vertical plane.
func airAngle(angle, headwind, speed float64) float64 {
	sine := headwind * elementary.Sin(angle) / speed
	sine = min(max(sine, -1), 1)
	return angle - elementary.Atan2(sine, math.Sqrt(max(0, 1-float64(sine*sine))))
}

// groundAngle returns the slope over the ground of a slope through the air, rad: tan(g) = V sin(ga) / (V cos(ga) - w).
func groundAngle(through, headwind, speed float64) float64 {
	return elementary.Atan2(speed*elementary.Sin(through), float64(speed*elementary.Cos(through))-headwind)
}

// glideDrag returns the drag in a straight descent at the approach speed, N, the lift being W cos(ga), away from the ground.
func (f *flight) glideDrag(through float64) float64 {
	q := f.pressureArea(f.speed)
	return float64(q * f.model.DragCoefficient(f.weight*elementary.Cos(through)/q, math.Inf(1)))
}

// pull returns the weight less what the wind's fall with height takes to keep the airspeed, N.
//
//	W - m w' V cos(ga)
//
// where w' is the growth of the headwind with height (1/s). Valid for: steady airspeed on a straight slope. Source: Newton's second law along the path.
func (f *flight) pull(gradient, through float64) float64 {
	return f.weight - float64(f.model.Mass*gradient*f.speed*elementary.Cos(through))
}

// steepest returns the slope over the ground that a thrust leaves at the approach speed, rad.
//
//	sin(ga) = (D - T) / (W - m w' V cos(ga)),  D with the lift W cos(ga)
//
// Valid for: steady descent, thrust along the path; kept within 75 degrees. Source: steady glide with thrust, by iteration.
func (f *flight) steepest(thrust, wind, gradient float64) float64 {
	through := 0.0
	for range 40 {
		sine := (f.glideDrag(through) - thrust) / max(f.pull(gradient, through), 0.1*f.weight)
		sine = min(max(sine, -0.966), 0.966)
		next := elementary.Atan2(sine, math.Sqrt(1-float64(sine*sine)))
		if math.Abs(next-through) < 1e-13 {
			break
		}
		through = next
	}
	return groundAngle(through, wind, f.speed)
}

// line returns the height of the slope at a distance, and distance the reverse.
func (f *flight) line(distance float64) float64 {
	return f.ground(f.plan.AimPoint) + float64((f.plan.AimPoint-distance)*elementary.Tan(f.slope.Angle))
}

func (f *flight) distance(height float64) float64 {
	return f.plan.AimPoint - (height-f.ground(f.plan.AimPoint))/elementary.Tan(f.slope.Angle)
}

// onSlope returns the point of the slope at a height, flown at the approach speed in the wind there.
func (f *flight) onSlope(height float64) Point {
	p := Point{Distance: f.distance(height), Height: height, Airspeed: f.speed}
	w := f.headwind(height - f.ground(p.Distance))
	through := airAngle(f.slope.Angle, w, f.speed)
	p.GroundSpeed = float64(f.speed*elementary.Cos(through)) - w
	p.Sink = f.speed * elementary.Sin(through)
	return p
}
