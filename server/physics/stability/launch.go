package stability

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Push is the thrust as it pulls on the model.
type Push struct {
	Thrust float64 // N
	Angle  float64 // of the force above the axis of the model, rad: positive pushes up as well as forward
	X, Z   float64 // a point of the thrust line: aft of the datum, up, m
}

// ArmAbout returns how far the thrust line passes below a point, m: positive turns the nose up.
//
// Formula: (z - z_t) cos a + (x - x_t) sin a; where a angle of the force.
// Valid for: engines above or below the balance point, ahead or aft.
// Source: moment of a force.
func (p Push) ArmAbout(x, z float64) float64 {
	return float64((z-p.Z)*elementary.Cos(p.Angle)) + float64((x-p.X)*elementary.Sin(p.Angle))
}

// MomentAbout returns the pitching moment of the thrust about a point, nose up positive, N m.
//
// Formula: T times ArmAbout.
// Valid for: as ArmAbout.
// Source: moment of a force.
func (p Push) MomentAbout(x, z float64) float64 { return float64(p.Thrust * p.ArmAbout(x, z)) }

// Upward returns the part of the thrust that carries weight, N.
func (p Push) Upward() float64 { return float64(p.Thrust * elementary.Sin(p.Angle)) }

// Forward returns the part of the thrust that drives, N.
func (p Push) Forward() float64 { return float64(p.Thrust * elementary.Cos(p.Angle)) }

// LaunchTrim is what the pitch control must give at the launch and what is left of it.
type LaunchTrim struct {
	Control float64 // angle that takes away the pitching moment, rad
	Reserve float64 // share of the throw left on that side; negative when the throw does not reach
	// NoseUp reports that the control must hold the nose up, against a moment that lowers it.
	NoseUp bool
	// MomentAtNeutral is the pitching moment without control, nose up positive, N m.
	MomentAtNeutral float64
	// NoseUpLeft and NoseDownLeft are the moments that full throw still gives either way, N m; negative where there is none left.
	NoseUpLeft, NoseDownLeft float64
	// Acceleration in pitch that the neutral control would leave, rad/s2; 0 without inertia.
	Acceleration float64
}

// RampEnd is the moment at which a model leaves ramp, bungee or hand.
type RampEnd struct {
	State  State
	Pitch  Pitch
	Throw  Throw
	Push   Push
	X, Z   float64 // balance point, m
	Held   float64 // incidence above zero lift that the ramp holds, rad
	Steady bool    // true: incidence as flight at this speed needs it; false: Held
}

// LaunchTrim returns the control angle without pitching moment as the model comes free, for one thrust: call it along the spool-up.
//
// Formula: Cm_0 + Cm_a a + Cm_d d + T arm/(q S c) = 0; a held by the ramp, or with CL = (W - T sin)/(q S) of steady flight.
// Valid for: attached flow; after the wheels, hook or hand have let go. Errors name the impossible field.
// Source: balance of moments about the balance point.
func (r RampEnd) LaunchTrim() (LaunchTrim, error) {
	if err := r.check(); err != nil {
		return LaunchTrim{}, err
	}
	force := float64(r.State.Pressure() * r.State.Area)
	scale := float64(force * r.State.Chord)
	extra := r.Push.MomentAbout(r.X, r.Z) / scale
	incidence := r.Held
	if r.Steady {
		trim, err := r.Pitch.Trim((float64(r.State.Mass*r.State.Gravity)-r.Push.Upward())/force, extra)
		if err != nil {
			return LaunchTrim{}, err
		}
		incidence = trim.Incidence
	}
	neutral := r.Pitch.MomentZero + float64(r.Pitch.MomentSlope*incidence) + extra
	return launchTrim(neutral, r.Pitch.MomentControl, scale, r.Throw, r.State.Inertia.Pitch)
}

func (r RampEnd) check() error {
	if err := r.State.checkCommon(); err != nil {
		return err
	}
	if err := checkPositive(named{"state.chord", r.State.Chord}); err != nil {
		return err
	}
	return checkFinite(named{"held", r.Held}, named{"push.thrust", r.Push.Thrust}, named{"push.angle", r.Push.Angle})
}

// launchTrim finds control angle and what is left from the moment coefficient at neutral and that per rad of control.
func launchTrim(neutral, perControl, scale float64, throw Throw, inertia float64) (LaunchTrim, error) {
	control := -neutral / perControl
	t := LaunchTrim{
		Control: control, Reserve: throw.Reserve(control), NoseUp: neutral < 0, MomentAtNeutral: float64(neutral * scale),
		NoseUpLeft:   float64(scale * (float64(perControl*throw.NoseUp) + neutral)),
		NoseDownLeft: -float64(scale * (float64(perControl*throw.NoseDown) + neutral)),
	}
	if inertia > 0 {
		t.Acceleration = t.MomentAtNeutral / inertia
	}
	return t, checkResult(t.Control, t.Reserve, t.MomentAtNeutral, t.NoseUpLeft, t.NoseDownLeft, t.Acceleration)
}

// Roll is a model that runs on its main wheels, nose wheel just carrying nothing.
type Roll struct {
	State     State // its Lift and Drag are not used
	Pitch     Pitch
	Throw     Throw
	Push      Push
	X, Z      float64 // balance point, m
	WheelX    float64 // contact of the main wheels, aft of the datum, m
	GroundZ   float64 // height of the ground in the model's axes, m; below Z
	Incidence float64 // above zero lift with the nose wheel down, rad
	Friction  float64 // rolling friction, -
}

// terms returns the moment about the wheels that raises the nose, as fixed (N m) + q (m3) (base + perControl d).
//
// Formula: M = -(W - T sin a)(x_w - x) + (z - z_0)(T cos a - mu N) + T terms about the balance point, N = W - T sin a - q S CL;
// aerodynamic: q S (CL (x_w - x) + c Cm). The inertia force m a acts at the balance point, so drag has no arm beside it.
// Valid for: level ground, drag at the height of the balance point.
// Source: balance of moments about the contact point.
func (r Roll) terms() (fixed, base, perControl float64) {
	back, height := r.WheelX-r.X, r.Z-r.GroundZ
	weight := float64(r.State.Mass*r.State.Gravity) - r.Push.Upward()
	fixed = r.Push.MomentAbout(r.X, r.Z) - float64(weight*(back+float64(r.Friction*height)))
	arm := back + float64(r.Friction*height)
	lift := float64(r.Pitch.LiftSlope * r.Incidence)
	moment := r.Pitch.MomentZero + float64(r.Pitch.MomentSlope*r.Incidence)
	base = float64(r.State.Area * (float64(lift*arm) + float64(r.State.Chord*moment)))
	perControl = float64(r.State.Area * (float64(r.Pitch.LiftControl*arm) + float64(r.State.Chord*r.Pitch.MomentControl)))
	return fixed, base, perControl
}

// LaunchTrim returns the control angle that just lifts the nose at the state's speed, and what is left of the throw.
//
// Valid for: as terms; nose-wheel models. Errors name the impossible field.
// Source: balance of moments about the contact point.
func (r Roll) LaunchTrim() (LaunchTrim, error) {
	if err := r.check(); err != nil {
		return LaunchTrim{}, err
	}
	fixed, base, perControl := r.terms()
	q := r.State.Pressure()
	return launchTrim(fixed+float64(q*base), float64(q*perControl), 1, r.Throw, r.State.Inertia.Pitch)
}

func (r Roll) check() error {
	if err := r.State.checkCommon(); err != nil {
		return err
	}
	if err := checkPositive(named{"state.chord", r.State.Chord}, named{"z over groundZ", r.Z - r.GroundZ}); err != nil {
		return err
	}
	return checkFinite(named{"incidence", r.Incidence}, named{"friction", r.Friction}, named{"wheelX less x", r.WheelX - r.X},
		named{"push.thrust", r.Push.Thrust}, named{"push.angle", r.Push.Angle})
}

// RotationSpeed returns the speed (m/s) at which full nose-up control lifts the nose, and false when no speed does.
//
// 0 means that the nose comes up by itself: thrust below the balance point or wheels ahead of it.
// Formula: q = -fixed/(base + perControl d_up), V = sqrt(2 q/rho); at the thrust of Push.
// Valid for: as LaunchTrim. Errors name the impossible field.
// Source: balance of moments about the contact point.
func (r Roll) RotationSpeed() (float64, bool, error) {
	if err := r.check(); err != nil {
		return 0, false, err
	}
	fixed, base, perControl := r.terms()
	if fixed >= 0 {
		return 0, true, checkResult(fixed)
	}
	power := base + float64(perControl*r.Throw.NoseUp)
	if !(power > 0) {
		return 0, false, checkResult(power)
	}
	speed := math.Sqrt(float64(2*(-fixed/power)) / r.State.Density)
	return speed, true, checkResult(speed)
}

// TailUpSpeed returns the speed (m/s) at which full nose-down control lifts the tail of a model whose main wheels stand ahead of its balance point, and
// false when no speed does.
//
// 0 means that the tail comes up by itself: thrust above the balance point or wheels behind it.
// Formula: q = fixed/-(base + perControl d_down), V = sqrt(2 q/rho); at the thrust of Push and the incidence with the tail on the ground.
// Valid for: as LaunchTrim, places in axes along and across the ground. Errors name the impossible field.
// Source: balance of moments about the contact point.
func (r Roll) TailUpSpeed() (float64, bool, error) {
	if err := r.check(); err != nil {
		return 0, false, err
	}
	fixed, base, perControl := r.terms()
	if fixed <= 0 {
		return 0, true, checkResult(fixed)
	}
	power := -base - float64(perControl*r.Throw.NoseDown)
	if !(power > 0) {
		return 0, false, checkResult(power)
	}
	speed := math.Sqrt(float64(2*(fixed/power)) / r.State.Density)
	return speed, true, checkResult(speed)
}

// Standing returns the model turned nose up by an angle (rad): places and thrust line in axes along and across the ground.
//
// Formula: x' = x cos a + z sin a, z' = z cos a - x sin a. Valid for: any angle. Source: rotation of axes.
func (r Roll) Standing(angle, wheelZ, radius float64) Roll {
	s, c := elementary.Sin(angle), elementary.Cos(angle)
	turn := func(x, z float64) (float64, float64) {
		return float64(x*c) + float64(z*s), float64(z*c) - float64(x*s)
	}
	var ground float64
	r.X, r.Z = turn(r.X, r.Z)
	r.Push.X, r.Push.Z = turn(r.Push.X, r.Push.Z)
	r.WheelX, ground = turn(r.WheelX, wheelZ)
	r.GroundZ = ground - radius
	r.Push.Angle += angle
	return r
}
