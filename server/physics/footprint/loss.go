package footprint

import (
	"errors"
	"fmt"

	"pitgate/server/physics/field"
)

// Loss is a loss of link: the model, the air and what the fail-safe does.
type Loss struct {
	Action Action
	Model  Model
	// Delay is the time from the loss to the fail-safe's action, s; until then the last command holds. Hold and FlyAway do not read it.
	Delay   float64
	Density float64 // of the air, kg/m3
	Gravity float64 // m/s2; zero means standard
	Wind    Wind
	// Precision is the error allowed in a step of the integration, relative and in m and m/s; zero means 3e-4, which puts nineteen of twenty
	// impacts within 0.3 m and the worst within 2 m of those of a fine integration.
	Precision float64

	mistrim   float64 // relative change of the lift coefficient held
	bankCreep float64 // rad/s with the command held
}

// defaultPrecision is the error allowed in a step where none is given.
const defaultPrecision = 3e-4

// gravity returns the acceleration of free fall.
func (l *Loss) gravity() float64 {
	if l.Gravity > 0 {
		return l.Gravity
	}
	return standardGravity
}

// Check returns an error that names the first impossible value, or the value the action needs and does not have.
func (l Loss) Check() error {
	if !l.Action.known() {
		return fmt.Errorf("action: %d is not known", int(l.Action))
	}
	if err := l.Model.Check(); err != nil {
		return err
	}
	if err := l.Wind.Check(); err != nil {
		return err
	}
	if err := firstOutside([]bounded{
		{"delay", l.Delay, 0, 600},
		{"density", l.Density, 0.01, 10},
		{"gravity", l.Gravity, 0, 100},
		{"precision", l.Precision, 0, 0.1},
	}); err != nil {
		return err
	}
	return l.lacks()
}

// lacks returns an error that names what the action needs.
func (l Loss) lacks() error {
	switch m := l.Model; {
	case l.Action == Breakup && !(m.DragArea > 0):
		return errors.New("model drag area: breakup needs it")
	case l.Action == Hold && !(m.HoldEndurance > 0):
		return errors.New("model hold endurance: holding the last command is bounded by the fuel only, so it needs the time to its end")
	case l.Action == IdleNeutral && m.IdleThrust > 0 && !(m.IdleEndurance > 0):
		return errors.New("model idle endurance: idle thrust needs the time to the end of the fuel")
	case l.Action == FlyAway && !(m.FullThrust > 0):
		return errors.New("model full thrust: a fly-away needs it")
	case l.Action == FlyAway && !(m.FullEndurance > 0):
		return errors.New("model full endurance: a fly-away is bounded by the fuel only, so it needs the time to its end")
	}
	return nil
}

// Impact is where and how the model meets the ground.
type Impact struct {
	Place    field.Point
	Time     float64 // after the loss, s
	Velocity Vector  // over the ground
	Speed    float64 // over the ground, m/s
	Angle    float64 // of the path below the horizontal, rad
	Energy   float64 // kinetic, over the ground, J
	// Landed is false when the model was still in the air after two hours; the rest then tells where it was.
	Landed bool
}

// From returns the impact after a loss of link at a state.
//
// Formula: m dv/dt = F along the airspeed + L across it at the bank - D along it - m g, dx/dt = v, with airspeed u = v - w(z),
// L = rho S CL u^2/2, D = rho S (CD0 + K CL^2) u^2/2; CL, bank and thrust follow the action. CL is held but for the damping: it grows by
// 2 sqrt(2) z a/g of itself, where z is PathDamping and a the acceleration along the path, within -CLmax/2 to CLmax.
// Valid for: a point mass without sideslip, attached flow below CLmax, steady wind over level ground.
// Source: equations of motion of a point mass, e.g. Anderson, Aircraft Performance and Design, chapter 4.
func (l Loss) From(r Release) (Impact, error) {
	if err := l.Check(); err != nil {
		return Impact{}, err
	}
	if err := r.Check(); err != nil {
		return Impact{}, err
	}
	return l.fall(newFlight(), r)
}

// fall is From without the checks. What no strides can follow, a path that turns many times in one, is flown by the integrator.
func (l *Loss) fall(f *flight, r Release) (Impact, error) {
	impact, err := l.fallBy(f, r)
	if f.coarse && err == nil && !(impact.Speed < wildSpeed) {
		f.coarse = false
		impact, err = l.fallBy(f, r)
		f.coarse = true
	}
	return impact, err
}

// wildSpeed is a speed that nothing falling comes to, m/s.
const wildSpeed = 1e4

// fallBy flies a loss in strides or by the integrator.
func (l *Loss) fallBy(f *flight, r Release) (Impact, error) {
	elapsed := 0.0
	if l.Action == FlyAway {
		r, elapsed = l.flyOff(r)
	}
	f.prepare(l, r)
	state := f.start(r)
	if state[2] <= 0 && state[5] <= 0 {
		return f.impact(state, elapsed, true), nil
	}
	for _, part := range l.laws(r, f.parts[:0]) {
		landed, err := f.follow(part, &state)
		if err != nil {
			return Impact{}, err
		}
		if landed {
			return f.impact(state, elapsed+f.time, true), nil
		}
	}
	return f.impact(state, elapsed+f.time, false), nil
}

// flyOff returns the state at the end of the fuel of a fly-away and the time to it.
//
//	p = p0 + (V + w(z)) t
//
// where V is the velocity through the air at top speed, level on the heading, and t FullEndurance. Valid for: level flight at top speed all the
// time. Source: kinematics.
func (l *Loss) flyOff(r Release) (Release, float64) {
	r.Speed, r.Climb, r.Bank = max(TopSpeed(l.Model, l.Density, l.gravity()), r.Speed), 0, 0
	v, w := r.velocity(), l.Wind.At(r.Height)
	r.Place = r.Place.Plus(field.Point{X: v.X + w.X, Y: v.Y + w.Y}.Times(l.Model.FullEndurance))
	return r, l.Model.FullEndurance
}
