package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// runPlaces is the number of places in the state of a run.
const runPlaces = 2

// run is the travel along strip, rails or stroke. Its state is travel (m) and speed over the ground along it (m/s).
type run struct {
	model   *Aircraft
	air     *Conditions
	launch  *Launch
	ground  *ground
	lift    float64 // lift coefficient held
	inertia float64 // mass moved, kg
	carried float64 // mass that presses on the ground or rails, kg
	foot    float64 // height of the start, m
	pull    func(travel float64) float64
	slope   float64 // sine of the launch's slope
	along   float64 // cosine and sine of the thrust line
	upward  float64
}

// newRun returns the travel of a launch method.
func newRun(l *Launch, a *Aircraft, air *Conditions, g *ground) *run {
	r := &run{model: a, air: air, launch: l, ground: g, lift: a.CLGround, inertia: a.Mass, carried: a.Mass}
	r.slope = elementary.Sin(l.Slope)
	r.along, r.upward = elementary.Cos(a.ThrustAngle), elementary.Sin(a.ThrustAngle)
	switch l.Method {
	case Ramp, Catapult:
		r.inertia += l.DollyMass
		r.carried += l.DollyMass
	case Bungee:
		r.inertia += l.CordMass / 3
		r.pull = l.bungeeForce
	case Wheels, Hand:
	}
	if l.Method == Catapult {
		r.pull = func(travel float64) float64 { return forceAlong(l.Forces, travel) }
	}
	if l.Method == Ramp && l.EndHeight > 0 {
		_, rise := r.place(l.stroke())
		r.foot = l.EndHeight - rise
	}
	return r
}

// profiled reports whether the heights along rails or strip are given.
func (r *run) profiled() bool {
	return (r.launch.Method == Ramp || r.launch.Method == Wheels) && len(r.launch.RailProfile) > 1
}

// sine returns the sine of the slope at a travel.
func (r *run) sine(travel float64) float64 {
	if r.profiled() {
		return sineAlong(r.launch.RailProfile, travel)
	}
	return r.slope
}

// place returns the distance and height of a travel, m.
func (r *run) place(travel float64) (distance, height float64) {
	rail := r.launch.RailProfile
	if !r.profiled() {
		return float64(travel * cosine(r.slope)), r.foot + float64(travel*r.slope)
	}
	done := 0.0
	height = r.foot
	for i := 1; i < len(rail) && done < travel; i++ {
		next := travel
		if i < len(rail)-1 {
			next = min(travel, rail[i].Distance)
		}
		piece := max(next-done, 0)
		sine := sineAlong(rail, done+float64(piece/2))
		distance += float64(piece * cosine(sine))
		height += float64(piece * sine)
		done += piece
	}
	return distance, height
}

// cosine returns the cosine of an angle from -90 to 90 degrees from its sine.
func cosine(sine float64) float64 {
	return math.Sqrt(max(0, 1-float64(sine*sine)))
}

// wingHeight returns the height of the wing over the ground at a travel.
func (r *run) wingHeight(travel float64) float64 {
	if r.launch.Method != Ramp {
		return r.model.WingHeight
	}
	distance, height := r.place(travel)
	return height - r.ground.height(distance) + r.model.WingHeight
}

// airspeed returns the airspeed along the travel, m/s.
func (r *run) airspeed(s State) float64 {
	return s[1] + float64(r.headwind(r.wingHeight(s[0]))*cosine(r.sine(s[0])))
}

// headwind returns the wind against the launch at a height over the ground.
func (r *run) headwind(height float64) float64 {
	if r.air.Headwind == 0 {
		return 0
	}
	return r.air.Headwind * r.air.Profile.Factor(height)
}

// surplus returns the lift and upward thrust beyond the model's own weight across the slope, N.
func (r *run) surplus(t float64, s State) float64 { return r.surplusWith(r.lift, t, s) }

// surplusWith is surplus with a lift coefficient.
func (r *run) surplusWith(coefficient, t float64, s State) float64 {
	u := r.airspeed(s)
	lift := float64(0.5 * r.air.Density * u * math.Abs(u) * r.model.Area * coefficient)
	up := float64(r.model.thrust(u, t) * r.upward)
	return lift + up - float64(r.model.Mass*r.air.gravity()*cosine(r.sine(s[0])))
}

// rate returns the change of travel and speed.
//
//	M dv/dt = T + P - D - mu N - W sin(slope),  N = max(0, W cos(slope) - L)
//
// where T is thrust, P the pull of the launcher, D and L drag and lift in the wind at the wing's height, W the weight carried and M the mass
// moved. A model that stands still stays until the forces move it.
// Valid for: wind level, slope constant or in straight stretches. Source: Newton's second law along the slope.
func (r *run) rate(t float64, s State) State {
	sine := r.sine(s[0])
	level := cosine(sine)
	height := r.wingHeight(s[0])
	u := max(s[1], 0) + float64(r.headwind(height)*level)
	pressure := 0.5 * r.air.Density * u * math.Abs(u) * r.model.Area
	drag := float64(pressure * (r.model.DragCoefficient(r.lift, height) + r.model.GroundDrag))
	thrust := r.model.thrust(u, t)
	weight := r.carried * r.air.gravity()
	up := float64(max(pressure, 0)*r.lift) + float64(thrust*r.upward)
	normal := max(0, float64(weight*level)-up)
	force := float64(thrust*r.along) - drag - float64(r.launch.Friction*normal) - float64(weight*sine)
	if r.pull != nil {
		force += r.pull(s[0])
	}
	if s[1] <= 0 && force < 0 {
		force = 0
	}
	return State{max(s[1], 0), force / r.inertia}
}
