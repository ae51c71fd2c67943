package footprint

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

// flight is a model in the air under one law. Its state is place (0, 1), height (2) and velocity over the ground (3, 4, 5).
type flight struct {
	wind             air
	gravity          float64
	perMass          float64 // rho S/(2 m), 1/m
	mass             float64
	cd0, induced     float64
	stopped, tumble  float64 // drag coefficients of a stopped engine and of tumbling, on the wing area
	clMax            float64
	damping          float64 // 2 sqrt(2) z/g
	slope            float64 // thrust lost with airspeed over mass
	law              law
	sinBank, cosBank float64 // when the bank is constant
	steady           bool    // bank constant
	drag             float64 // zero-lift drag coefficient under the law
	start0           float64 // airspeed at the loss, where ThrustSlope takes nothing
	throttle         float64 // thrust that the throttle gives at the loss, N
	began            float64 // time the law began
	time             float64
	speed            float64 // airspeed where rate was asked last, m/s
	coarse           bool    // in strides
	integrator       motion.Integrator
	table            factors // of the wind, where there is one
	// equations is rate, and room what the integration works in; both serve one flight after another.
	equations motion.Rate
	room      motion.Room
	parts     [3]law
}

// newFlight returns room for flights.
func newFlight() *flight {
	f := &flight{}
	f.equations = f.rate
	return f
}

// prepare prepares a flight from a state.
func (f *flight) prepare(l *Loss, r Release) {
	m := l.Model
	precision := l.Precision
	if !(precision > 0) {
		precision = defaultPrecision
	}
	*f = flight{
		equations: f.equations, room: f.room, coarse: f.coarse, table: f.table,
		wind: l.Wind.prepare(), gravity: l.gravity(), perMass: l.Density * m.Area / (2 * m.Mass), mass: m.Mass,
		cd0: m.CD0, induced: m.InducedFactor, stopped: m.StoppedDrag, tumble: m.DragArea / m.Area, clMax: m.CLMax,
		damping: 2 * math.Sqrt2 * m.PathDamping / l.gravity(), slope: m.ThrustSlope / m.Mass, start0: r.Speed,
		throttle:   l.thrustOf(r, l.liftOf(r, r.Bank)),
		integrator: motion.Integrator{Tolerance: precision, EndOnly: true, Room: &f.room},
	}
	f.wind.table = f.table
}

// start returns the first state.
func (f *flight) start(r Release) motion.State {
	wx, wy := f.wind.at(r.Height)
	v := r.velocity()
	return motion.State{r.Place.X, r.Place.Y, r.Height, v.X + wx, v.Y + wy, v.Z}
}

// height is the event that the ground is reached.
func height(_ float64, s motion.State) float64 { return s[2] }

// landing is the event that the ground is reached.
var landing = motion.Event{Value: height, Direction: motion.Falling, Terminal: true}

// firstStep is tried first in each part of a flight, s: about what the turns of a spiral allow.
const firstStep = 0.3

// follow flies a law from a state and reports whether the ground was reached.
func (f *flight) follow(part law, state *motion.State) (bool, error) {
	if !(part.lasts > 0) {
		return false, nil
	}
	if f.coarse {
		return f.stride(part, state)
	}
	f.take(part)
	end := min(f.time+part.lasts, longestFlight)
	f.integrator.FirstStep = min(firstStep, end-f.time)
	solution, err := f.integrator.Solve(f.equations, f.time, *state, end, landing)
	if err != nil {
		return false, err
	}
	f.time, *state = solution.End()
	_, landed := solution.Stopped()
	return landed, nil
}

// take sets the law from now on.
func (f *flight) take(part law) {
	f.law, f.began = part, f.time
	f.steady = part.bank.constant()
	f.setBank(0)
	f.drag = f.cd0
	switch {
	case part.lift == 0:
		f.drag = f.tumble
	case part.stopped:
		f.drag += f.stopped
	}
}

// setBank works out the bank at a time after the law began.
func (f *flight) setBank(after float64) {
	bank := limitBank(f.law.bank.at(after))
	f.sinBank, f.cosBank = elementary.Sin(bank), elementary.Cos(bank)
}

// rate returns the change of the state with time: the equations of Loss.From.
func (f *flight) rate(t float64, s motion.State) motion.State {
	wx, wy := f.wind.at(s[2])
	x, y, z := s[3]-wx, s[4]-wy, s[5]
	level := math.Sqrt(float64(x*x) + float64(y*y))
	square := float64(x*x) + float64(y*y) + float64(z*z)
	speed := math.Sqrt(square)
	f.speed = speed
	out := motion.State{s[3], s[4], s[5], 0, 0, -f.gravity}
	if speed == 0 {
		return out
	}
	if !f.steady {
		f.setBank(t - f.began)
	}
	along, across := f.forces(t-f.began, speed, square, z)
	along /= speed
	out[3] += float64(along * x)
	out[4] += float64(along * y)
	out[5] += float64(along * z)
	if level > 0 {
		f.addLift(&out, across, x, y, z, level, speed)
	}
	return out
}

// push returns the thrust over the mass at a time after the law began and an airspeed, m/s2.
//
//	F/m = (Ft - k (Ft/F0) (V - V0))/m, none less than zero
//
// where Ft is the thrust of the throttle at that time, F0 and V0 thrust and airspeed at the loss and k the slope: an engine that runs down loses with its
// thrust what the airspeed changes of it. Valid for: thrust straight in airspeed. Source: thrust in proportion to the air that the engine takes.
func (f *flight) push(after, speed float64) float64 {
	thrust := f.law.thrust.at(after)
	if !(f.slope > 0) || !(f.throttle > 0) {
		return max(0, thrust/f.mass)
	}
	share := min(1, thrust/f.throttle)
	return max(0, thrust/f.mass-float64(share*f.slope*(speed-f.start0)))
}

// forces returns the accelerations along and across the airspeed, without gravity.
func (f *flight) forces(after, speed, square, climb float64) (along, across float64) {
	push := f.push(after, speed)
	dynamic := float64(f.perMass * square)
	lift := f.law.lift
	along = push - float64(dynamic*(f.drag+float64(f.induced*lift*lift)))
	if f.damping > 0 && lift > 0 {
		gain := along - f.gravity*climb/speed
		lift = min(max(lift+float64(lift*f.damping*gain), -f.clMax/2), f.clMax)
		along = push - float64(dynamic*(f.drag+float64(f.induced*lift*lift)))
	}
	return along, float64(dynamic * lift)
}

// addLift adds the lift: across the airspeed, at the bank from the vertical plane through it.
//
//	n = (-x z, -y z, h^2)/(h V), r = (y, -x, 0)/h, lift along n cos(b) + r sin(b), times h/(0.1 V) where that is below 1
//
// where x, y, z is the airspeed V, h its level part, b the bank, n the upward and r the rightward normal. Valid for: paths more than 6 degrees from
// the vertical; nearer to it upward has no meaning and the lift fades, so that a path never passes over the vertical. Source: vector algebra.
func (f *flight) addLift(out *motion.State, across, x, y, z, level, speed float64) {
	if fade := level / (uprightShare * speed); fade < 1 {
		across *= fade
	}
	up := float64(across * f.cosBank / (level * speed))
	right := float64(across * f.sinBank / level)
	out[3] += float64(right*y) - float64(up*x*z)
	out[4] -= float64(right*x) + float64(up*y*z)
	out[5] += float64(up * level * level)
}

// uprightShare is the level part of the airspeed over all of it below which the lift fades.
const uprightShare = 0.1

// impact returns what the state at the end of the flight is.
func (f *flight) impact(s motion.State, time float64, landed bool) Impact {
	v := Vector{s[3], s[4], s[5]}
	speed := v.Length()
	return Impact{
		Place: field.Point{X: s[0], Y: s[1]}, Time: time, Velocity: v, Speed: speed, Angle: elementary.Atan2(-v.Z, v.Level()),
		Energy: KineticEnergy(f.mass, speed), Landed: landed,
	}
}
