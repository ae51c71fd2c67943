package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Places in the state of a flight.
const (
	atDistance   = iota // along the launch heading, m
	atHeight            // over the start of the launch, m
	atForward           // speed over the ground along the heading, m/s
	atUpward            // speed upward, m/s
	atDrift             // sideways, positive to the right, m
	flightPlaces        // how many there are
)

// flight is the free flight after the launch, in the vertical plane of the launch heading.
type flight struct {
	model  *Aircraft
	air    *Conditions
	launch *Launch
	ground *ground
	held   float64 // lift coefficient held while the path has not risen to the climb
	along  float64 // cosine and sine of the thrust line
	upward float64
	// steepest is the sine of the greatest climb angle.
	steepest float64
	// believed is the thrust by which the pilot sets the climb; nil means the thrust there is.
	believed func(speed, time float64) float64
}

// newFlight returns the flight after a launch.
func newFlight(l *Launch, a *Aircraft, air *Conditions, g *ground) *flight {
	return &flight{
		model: a, air: air, launch: l, ground: g, held: l.ClimbLift * a.CLMax,
		along: elementary.Cos(a.ThrustAngle), upward: elementary.Sin(a.ThrustAngle), steepest: elementary.Sin(l.MaxClimbAngle),
	}
}

// motion is what a flight's state means in the air.
type airMotion struct {
	speed     float64 // airspeed, m/s
	sine      float64 // of the path angle through the air
	cosine    float64
	clearance float64 // of the wheels over the ground, m
	wind      float64 // factor of the wind at the wing's height
	induced   float64 // induced factor in ground effect
}

// through returns the motion through the air of a state.
func (f *flight) through(s State) airMotion {
	m := airMotion{clearance: s[atHeight] - f.ground.height(s[atDistance])}
	wing := max(m.clearance, 0) + f.model.WingHeight
	m.induced = GroundEffect(wing, f.model.Span) * f.model.InducedFactor
	if f.air.Headwind != 0 || f.air.Crosswind != 0 {
		m.wind = f.air.Profile.Factor(wing)
	}
	forward := s[atForward] + float64(f.air.Headwind*m.wind)
	m.speed = math.Sqrt(float64(forward*forward) + float64(s[atUpward]*s[atUpward]))
	if m.speed > 0 {
		m.sine, m.cosine = s[atUpward]/m.speed, forward/m.speed
	} else {
		m.cosine = 1
	}
	return m
}

// lift returns the lift coefficient the model flies with: the one held, less where the load factor reaches its limit or the path has risen to the
// angle the thrust can hold.
//
//	n = min(nmax, cos(g) + V (gt - g) / (g0 tau)),  CL = n W / (q S) kept within 0 and the coefficient held
//
// where g is the path angle, gt the angle of the steady climb at this speed (climbSine), V the airspeed and tau the time constant; the steady climb is that of the
// thrust the pilot believes in.
// Valid for: a pilot who pitches up to the limit and then holds the climb. Source: equation of motion across the path.
func (f *flight) lift(m airMotion, pressureArea, thrust, believed float64) float64 {
	if f.launch.HoldLift {
		return f.held
	}
	if !(pressureArea > 0) {
		return 0
	}
	weight := f.model.Mass * f.air.gravity()
	sine := f.climbSine(m, pressureArea, believed)
	level := cosine(sine)
	across := float64(sine*m.cosine) - float64(level*m.sine)
	lifted := float64(thrust * f.upward)
	wanted := func(change float64) float64 {
		turn := m.speed * change / (f.air.gravity() * pitchTime)
		load := min(f.launch.MaxLoad, m.cosine+turn)
		return min(max((float64(load*weight)-lifted)/pressureArea, 0), f.held)
	}
	if across > steep {
		if most := wanted(across); most == f.held || most == wanted(math.Pi) {
			return most
		}
	}
	if across < -steep && wanted(across) == 0 {
		return 0
	}
	return wanted(angleOf(across, float64(level*m.cosine)+float64(sine*m.sine)))
}

// steep is the sine beyond which an angle is no longer taken from the series of the arc sine.
const steep = 0.03

// angleOf returns an angle from its sine and cosine, rad.
//
//	x + x^3/6 + 3 x^5/40 + 15 x^7/336 + 105 x^9/3456 for small sines x, to the last digit
//
// Valid for: all angles. Source: series of the arc sine.
func angleOf(sine, cosine float64) float64 {
	if cosine <= 0 || math.Abs(sine) > steep {
		return elementary.Atan2(sine, cosine)
	}
	square := float64(sine * sine)
	series := 15.0/336 + float64(square*(105.0/3456))
	series = 3.0/40 + float64(square*series)
	series = 1.0/6 + float64(square*series)
	return sine + float64(float64(sine*square)*series)
}

// belief returns the thrust by which the pilot sets the climb where the thrust is the one given, N.
func (f *flight) belief(speed, t, thrust float64) float64 {
	if f.believed == nil {
		return thrust
	}
	return f.believed(speed, t)
}

// climbSine returns the sine of the angle of the climb at held speed, within the launch's limit.
//
//	sin(g) = (T - D) / W, D with the lift that carries the weight
//
// Valid for: full angles; the drag is that of level flight, an upper bound in a climb. Source: steady climb.
func (f *flight) climbSine(m airMotion, pressureArea, thrust float64) float64 {
	weight := f.model.Mass * f.air.gravity()
	level := min(f.held, weight/pressureArea)
	return min(max((thrust-f.drag(m, pressureArea, level))/weight, -1), f.steepest)
}

// drag returns the drag at a lift coefficient, N: the polar of Aircraft.DragCoefficient.
func (f *flight) drag(m airMotion, pressureArea, lift float64) float64 {
	return float64(pressureArea * (f.model.CD0 + float64(m.induced*lift*lift)))
}

// rate returns the change of a flight's state.
//
//	m dVx/dt = (T - D) cos(g) - L sin(g),  m dVh/dt = (T - D) sin(g) + L cos(g) - W
//
// with g the path angle through the air, any size; forces act along the motion through the air, speeds are over the ground, so a wind that
// changes with height is met in full. Valid for: point mass, no side force. Source: Newton's second law.
func (f *flight) rate(t float64, s State) State {
	m := f.through(s)
	pressureArea := 0.5 * f.air.Density * m.speed * m.speed * f.model.Area
	thrust := f.model.thrust(m.speed, t)
	coefficient := f.lift(m, pressureArea, thrust, f.belief(m.speed, t, thrust))
	along := float64(thrust*f.along) - f.drag(m, pressureArea, coefficient)
	across := float64(pressureArea*coefficient) + float64(thrust*f.upward)
	return State{
		atDistance: s[atForward],
		atHeight:   s[atUpward],
		atForward:  (float64(along*m.cosine) - float64(across*m.sine)) / f.model.Mass,
		atUpward:   (float64(along*m.sine)+float64(across*m.cosine))/f.model.Mass - f.air.gravity(),
		atDrift:    -f.air.Crosswind * m.wind,
	}
}

// Events of a flight, by index.
const (
	eventContact = iota
	eventDone
	eventScreen
	eventLowest
)

// screenGap returns the height beyond the screen, over the higher of the ground and the start of the launch.
func (f *flight) screenGap(s State) float64 {
	return s[atHeight] - max(0, f.ground.height(s[atDistance])) - f.launch.ScreenHeight
}

// events returns the events of a flight. It is done when it is over the screen and past the distance asked for, or far beyond that distance.
func (f *flight) events() []Event {
	contact := func(_ float64, s State) float64 {
		return s[atHeight] - f.ground.height(s[atDistance]) + contactMargin
	}
	screen := func(_ float64, s State) float64 { return f.screenGap(s) }
	reach := f.launch.Distance
	done := func(_ float64, s State) float64 {
		beyond := s[atDistance] - reach
		return max(min(beyond, f.screenGap(s)), beyond-longestFlight)
	}
	looks := 0
	if len(f.ground.points) > 0 {
		looks = 7
	}
	return []Event{
		eventContact: {Value: contact, Direction: Falling, Terminal: true, Looks: looks, Sparing: looks > 0, Place: atHeight, Over: f.ground.highest()},
		eventDone:    {Value: done, Direction: Rising, Terminal: true},
		eventScreen:  {Value: screen, Direction: Rising},
		eventLowest:  {Value: func(_ float64, s State) float64 { return s[atUpward] }, Direction: Rising},
	}
}
