package weather

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// linearSideslip is the sideslip beyond which derivatives are not trusted, rad.
const linearSideslip = 20 * math.Pi / 180

// demonstratedShare is the crosswind over the stall speed that light aeroplanes have to be shown in.
const demonstratedShare = 0.2

// Wheels is what holds an aircraft straight on the ground or in a slip across the wind. Derivatives are per radian and about the main wheels
// on the ground, about the balance point in the air.
type Wheels struct {
	Airspeed       float64 // along the strip, m/s
	Density        float64 // of the air, kg/m3
	Area           float64 // of the wing, m2
	Span           float64 // of the wing, m
	YawStiffness   float64 // yawing moment by sideslip, into the wind positive
	RudderPower    float64 // yawing moment by rudder, taken positive
	RudderThrow    float64 // greatest, rad
	SideForce      float64 // side force by sideslip, taken positive; zero leaves sliding out
	SteeringLoad   float64 // on the steered wheel, N; zero for no steering
	SteeringArm    float64 // from the main wheels to the steered wheel, m
	WheelLoad      float64 // on all wheels, N: weight less lift
	SideFriction   float64 // of the tyres across their rolling, 0.3 on wet grass to 0.8 on dry asphalt
	CrabAtTouching float64 // greatest angle between nose and strip at touching down, rad; zero leaves it out
}

// CrosswindLimit is the greatest wind across the strip that one reason allows.
type CrosswindLimit struct {
	Speed float64 // m/s
	// Extrapolated is true when the angle lies beyond what the derivatives hold for and was held there, so that the limit may be higher.
	Extrapolated bool
}

// Check returns an error that names what is impossible.
func (w Wheels) Check() error {
	for _, v := range []struct {
		name  string
		value float64
		least float64
	}{
		{"airspeed", w.Airspeed, 0.1}, {"air density", w.Density, 0.1}, {"wing area", w.Area, 1e-3}, {"span", w.Span, 1e-2},
		{"yaw stiffness", w.YawStiffness, 1e-6}, {"rudder power", w.RudderPower, 0}, {"rudder throw", w.RudderThrow, 0}, {"side force", w.SideForce, 0},
		{"steering load", w.SteeringLoad, 0}, {"steering arm", w.SteeringArm, 0}, {"wheel load", w.WheelLoad, 0},
		{"side friction", w.SideFriction, 0}, {"crab", w.CrabAtTouching, 0},
	} {
		if !(v.value >= v.least && v.value <= 1e6) {
			return fmt.Errorf("crosswind, %s: has to lie between %g and 1e6", v.name, v.least)
		}
	}
	return nil
}

// acrossAt returns the wind across that makes a sideslip, rad, at an airspeed along the strip.
//
//	w = V tan(b)
//
// where V is the airspeed along the strip and b the sideslip, held to what derivatives hold for. Valid for: wings level or nearly so.
// Source: plane trigonometry.
func acrossAt(airspeed, sideslip float64) CrosswindLimit {
	held := max(0, min(linearSideslip, sideslip))
	return CrosswindLimit{Speed: float64(airspeed * elementary.Tan(held)), Extrapolated: sideslip > linearSideslip}
}

// SlipLimit returns the wind across in which full rudder holds the nose along the strip in a slip.
//
//	b = d Cnd / Cnb
//
// where d is the rudder throw, Cnd the rudder power and Cnb the yaw stiffness. Valid for: Cnb above zero; linear derivatives.
// Source: steady sideslip, e.g. B. Etkin and L. D. Reid, Dynamics of Flight (1996), section 3.8.
func (w Wheels) SlipLimit() CrosswindLimit {
	return acrossAt(w.Airspeed, float64(w.RudderThrow*w.RudderPower)/w.YawStiffness)
}

// WeathercockLimit returns the wind across in which rudder and steered wheel together keep the aircraft from turning into the wind on its
// wheels.
//
//	b = (d Cnd + m F a/(q S s)) / Cnb,  q = rho V^2/2
//
// where m is the side friction, F the load on the steered wheel, a its arm to the main wheels, S the wing area and s the span; the rest as
// SlipLimit. Valid for: main wheels that do not slide (SlideLimit). Source: equilibrium of yawing moments about the main wheels.
func (w Wheels) WeathercockLimit() CrosswindLimit {
	steering := float64(w.SideFriction*w.SteeringLoad) * w.SteeringArm / float64(w.pressureArea()*w.Span)
	return acrossAt(w.Airspeed, (float64(w.RudderThrow*w.RudderPower)+float64(steering))/w.YawStiffness)
}

// SlideLimit returns the wind across in which the tyres begin to slide sideways; without a side force it is endless.
//
//	b = m N / (q S Cyb)
//
// where N is the load on all wheels and Cyb the side force by sideslip. Valid for: linear derivatives. Source: equilibrium of side forces.
func (w Wheels) SlideLimit() CrosswindLimit {
	force := float64(w.pressureArea() * w.SideForce)
	if !(force > 0) {
		return CrosswindLimit{Speed: math.MaxFloat64, Extrapolated: true}
	}
	return acrossAt(w.Airspeed, float64(w.SideFriction*w.WheelLoad)/force)
}

// CrabLimit returns the wind across in which the nose points off the strip by no more than the angle the wheels bear at touching down; without
// an angle it is endless.
//
//	w = V sin(c)
//
// where c is the angle and V the airspeed. Valid for: wings level, track held. Source: wind triangle.
func (w Wheels) CrabLimit() CrosswindLimit {
	if w.CrabAtTouching == 0 {
		return CrosswindLimit{Speed: math.MaxFloat64, Extrapolated: true}
	}
	return CrosswindLimit{Speed: float64(w.Airspeed * elementary.Sin(min(math.Pi/2, w.CrabAtTouching)))}
}

// ApproachLimit returns the wind across up to which one of the two ways of touching down works: nose along the strip in a slip, or crabbed.
func (w Wheels) ApproachLimit() CrosswindLimit {
	slip, crab := w.SlipLimit(), w.CrabLimit()
	if w.CrabAtTouching > 0 && crab.Speed > slip.Speed {
		return crab
	}
	return slip
}

// pressureArea returns dynamic pressure times wing area, N.
func (w Wheels) pressureArea() float64 {
	return float64(0.5 * w.Density * float64(w.Airspeed*w.Airspeed) * w.Area)
}

// DemonstratedCrosswind returns the crosswind (m/s) full-size light aeroplanes have to be shown in, from the stall speed in landing trim (m/s).
//
//	w = 0.2 Vs0
//
// Valid for: comparison only. Source: 14 CFR 23.233(a), edition of 2014.
func DemonstratedCrosswind(stall float64) float64 { return float64(demonstratedShare * stall) }
