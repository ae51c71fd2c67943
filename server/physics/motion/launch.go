package motion

import (
	"errors"
	"math"
)

// Method is how a model gets into the air.
type Method int

// Methods of launch.
const (
	Wheels Method = iota + 1
	Ramp
	Bungee
	Hand
	Catapult
)

// Defaults where a Launch leaves a field at zero.
const (
	DefaultClimbLift     = 0.7
	DefaultMaxLoad       = 1.3
	DefaultMaxClimbAngle = 20 * math.Pi / 180
	DefaultScreenHeight  = 10.0
	DefaultSamples       = 60
	DefaultTolerance     = 1e-7   // of the integrator: places within a millimetre
	pitchTime            = 0.5    // time constant with which the path angle is held, s
	longestRun           = 2000.0 // m
	longestTime          = 60.0   // s
	longestFlight        = 1500.0 // beyond the distance asked for, m
	contactMargin        = 1e-6   // depth below the ground that counts as contact, m
)

// ProfilePoint is a height over the start of the launch at a distance along it.
type ProfilePoint struct {
	Distance float64 // m
	Height   float64 // m
}

// ForcePoint is the force of a catapult at a place of its stroke.
type ForcePoint struct {
	Travel float64 // m
	Force  float64 // N
}

// Launch is how a model is launched. Fields that the method does not use are ignored.
type Launch struct {
	Method Method
	Slope  float64 // of strip, rails or ground under the stroke, rad, uphill positive; of the throw for a hand launch
	// Friction is the friction or rolling resistance over the normal force.
	Friction float64
	// ThrustTime is the time on the thrust curve when the model is let go, s: the spool time when the engine is at full thrust by then.
	ThrustTime float64

	// ReleaseForce is the thrust at which a pin or helper lets the model go, N; zero lets it go at ThrustTime. The throttle is opened at ThrustTime
	// and the run starts when the thrust in the standing wind reaches it.
	ReleaseForce float64

	LiftoffSpeed float64 // airspeed at which a wheeled model is to be rotated, m/s
	// RotationSpeed is the least airspeed at which its controls lift the nose, m/s: rotation waits for it. Zero means that they always do.
	RotationSpeed float64
	// TailUpSpeed is the airspeed at which the tail of a tail-dragger comes up, m/s: until then it rolls with CLTailDown. Zero for a nose wheel.
	TailUpSpeed float64
	CLTailDown  float64

	Length      float64        // travel on the rails of a ramp, m
	EndHeight   float64        // end of the ramp over the ground, m; zero means its start is on the ground
	DollyMass   float64        // kg, of ramp or catapult; it leaves the model at the end of the rails
	RailProfile []ProfilePoint // heights along the rails or the strip by travel, when not straight; only differences count

	Stiffness float64 // of the bungee, N/m
	// PullTest is the force of the cord by its stretch (Travel) from a pull test, straight between points; it takes the place of Stiffness when it has
	// points. A stretch of zero without force is added where the test does not begin there.
	PullTest   []ForcePoint
	Stretch    float64 // at release, m
	HookForce  float64 // pull of the cord at which the hook lets go, N; zero means slack
	Efficiency float64 // share of the bungee's energy that comes back; zero means all
	CordMass   float64 // kg

	Forces []ForcePoint // of the catapult, by travel; the last ends the stroke

	HandSpeed  float64 // over the ground, m/s
	HandHeight float64 // m

	ClimbLift     float64        // lift held after the launch over the greatest; zero means DefaultClimbLift
	MaxLoad       float64        // greatest load factor of the pull-up; zero means DefaultMaxLoad
	MaxClimbAngle float64        // rad; zero means DefaultMaxClimbAngle
	HoldLift      bool           // holds the lift coefficient whatever the path does, for comparison with closed forms
	Ground        []ProfilePoint // ground along the launch; empty means the plane of the strip, or level
	ScreenHeight  float64        // over the start, m; zero means DefaultScreenHeight
	Distance      float64        // path is followed at least this far, m: the farthest obstacle
	Samples       int            // points of the path; zero means DefaultSamples
	Tolerance     float64        // of the integrator; zero means DefaultTolerance
	// Room holds the steps and the path of the launch and is used again by the next with the same one, which ends the use of the result before; nil
	// means room of its own.
	Room *Room
}

// withDefaults fills in what is zero.
func (l Launch) withDefaults() Launch {
	defaults := []struct {
		field *float64
		value float64
	}{
		{&l.ClimbLift, DefaultClimbLift},
		{&l.MaxLoad, DefaultMaxLoad},
		{&l.MaxClimbAngle, DefaultMaxClimbAngle},
		{&l.ScreenHeight, DefaultScreenHeight},
		{&l.Efficiency, 1},
		{&l.Tolerance, DefaultTolerance},
	}
	for _, d := range defaults {
		if *d.field == 0 {
			*d.field = d.value
		}
	}
	if l.Samples < 2 {
		l.Samples = DefaultSamples
	}
	return l
}

// Check returns an error that names the first impossible value.
func (l Launch) Check() error {
	if l.Method < Wheels || l.Method > Catapult {
		return errors.New("launch method: not one of wheels, ramp, bungee, hand, catapult")
	}
	if err := firstOutside(l.ranges()); err != nil {
		return err
	}
	if err := checkProfile("launch ground", l.Ground); err != nil {
		return err
	}
	if err := checkProfile("launch rail", l.RailProfile); err != nil {
		return err
	}
	if err := l.checkPullTest(); err != nil {
		return err
	}
	return l.checkForces()
}

// ranges lists the values with the range each must lie in.
func (l Launch) ranges() []limited {
	return []limited{
		{"launch slope", l.Slope, -1.5, 1.5},
		{"launch friction", l.Friction, 0, 10},
		{"launch thrust time", l.ThrustTime, 0, 1e6},
		{"launch lift-off speed", l.LiftoffSpeed, 0, 1000},
		{"launch release force", l.ReleaseForce, 0, 1e6},
		{"launch rotation speed", l.RotationSpeed, 0, 1000},
		{"launch tail-up speed", l.TailUpSpeed, 0, 1000},
		{"launch tail-down lift", l.CLTailDown, -5, 20},
		{"launch hook force", l.HookForce, 0, 1e6},
		{"launch length", l.Length, 0, 1000},
		{"launch end height", l.EndHeight, 0, 1000},
		{"launch dolly mass", l.DollyMass, 0, 1e4},
		{"launch stiffness", l.Stiffness, 0, 1e6},
		{"launch stretch", l.Stretch, 0, 1000},
		{"launch efficiency", l.Efficiency, 0, 1},
		{"launch cord mass", l.CordMass, 0, 1000},
		{"launch hand speed", l.HandSpeed, 0, 100},
		{"launch hand height", l.HandHeight, 0, 1000},
		{"launch climb lift", l.ClimbLift, 0, 1},
		{"launch greatest load", l.MaxLoad, 0, 20},
		{"launch greatest climb angle", l.MaxClimbAngle, 0, 1.5},
		{"launch screen height", l.ScreenHeight, 0, 1000},
		{"launch distance", l.Distance, 0, 5000},
		{"launch samples", float64(l.Samples), 0, 10000},
		{"launch tolerance", l.Tolerance, 0, 1e-3},
	}
}
