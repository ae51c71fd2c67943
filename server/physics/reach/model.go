package reach

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// What a zero field of Model stands for.
const (
	DefaultBank          = math.Pi / 4
	DefaultTurnMargin    = 1.2
	DefaultApproachRatio = 1.3
	DefaultLineUp        = 2.0
	DefaultSteepest      = 15 * math.Pi / 180
)

// Model is a model that glides with its engine stopped.
type Model struct {
	Mass          float64 // kg
	Area          float64 // reference wing area, m2
	CD0           float64 // zero-lift drag coefficient with the engine stopped
	InducedFactor float64 // drag coefficient over lift coefficient squared
	CLMax         float64 // greatest lift coefficient
	// Drag replaces CD0 and InducedFactor: the drag coefficient at a lift coefficient, above zero. Nil means the parabola of the two.
	Drag          func(lift float64) float64
	Density       float64 // of the air, kg/m3
	Gravity       float64 // m/s2; zero means standard
	BankLimit     float64 // steepest bank flown, rad; zero means 45 degrees
	TurnMargin    float64 // speed in a turn over the stall speed in it; zero means 1.2
	ApproachRatio float64 // speed at touchdown's approach over stall speed; zero means 1.3
	Reaction      float64 // time until the pilot acts, s
	RollRate      float64 // rad/s; zero means at once
	// SpeedShare is the share of speed beyond the approach speed that comes back as height, 0 to 1.
	SpeedShare float64
	LineUp     float64 // time wings level before touchdown, s; zero means 2
	LandingRun float64 // from touchdown to rest in still air, m; it changes with the square of the speed over the ground
	HalfWidth  float64 // of the ground a landing needs, and to each side of the path over obstacles, m
	Clearance  float64 // height to keep over obstacles, m
	Steepest   float64 // steepest descent straight ahead with slip or brakes, rad; zero means 15 degrees
}

// ErrModel is the cause of errors of models that cannot glide.
var ErrModel = errors.New("model: mass, area, density, greatest lift and drag must be above zero")

// Check returns an error that names the first impossible value.
func (m Model) Check() error {
	for _, v := range []struct {
		name               string
		value, least, most float64
	}{
		{"model mass", m.Mass, 1e-3, 1e5}, {"model area", m.Area, 1e-4, 1e4}, {"model zero-lift drag", m.CD0, 0, 10},
		{"model induced factor", m.InducedFactor, 0, 100}, {"model greatest lift", m.CLMax, 1e-3, 20}, {"model air density", m.Density, 1e-3, 100},
		{"model gravity", m.Gravity, 0, 1000}, {"model bank limit", m.BankLimit, 0, 1.4}, {"model turn margin", m.TurnMargin, 0, 5},
		{"model approach ratio", m.ApproachRatio, 0, 5}, {"model reaction", m.Reaction, 0, 60}, {"model roll rate", m.RollRate, 0, 100},
		{"model speed share", m.SpeedShare, 0, 1}, {"model line-up time", m.LineUp, 0, 60}, {"model landing run", m.LandingRun, 0, 1e5},
		{"model half width", m.HalfWidth, 0, 1000}, {"model clearance", m.Clearance, 0, 1000}, {"model steepest descent", m.Steepest, 0, 1.57},
	} {
		if !(v.value >= v.least && v.value <= v.most) {
			return fmt.Errorf("%s: %g is outside %g to %g", v.name, v.value, v.least, v.most)
		}
	}
	if !(m.drag(m.CLMax) > 0 && m.drag(0.2*m.CLMax) > 0) || math.IsInf(m.drag(m.CLMax), 0) {
		return ErrModel
	}
	return nil
}

// withDefaults fills in what is zero.
func (m Model) withDefaults() Model {
	for _, f := range []struct {
		value *float64
		other float64
	}{
		{&m.Gravity, motion.Gravity}, {&m.BankLimit, DefaultBank}, {&m.TurnMargin, DefaultTurnMargin}, {&m.ApproachRatio, DefaultApproachRatio},
		{&m.LineUp, DefaultLineUp}, {&m.Steepest, DefaultSteepest},
	} {
		if *f.value == 0 {
			*f.value = f.other
		}
	}
	return m
}

// drag returns the drag coefficient at a lift coefficient.
func (m *Model) drag(lift float64) float64 {
	if m.Drag != nil {
		return m.Drag(lift)
	}
	return m.CD0 + float64(m.InducedFactor*lift*lift)
}

// stall returns the stall speed, m/s: sqrt(2 m g / (rho S CLmax)). Source: lift equation.
func (m *Model) stall() float64 {
	return math.Sqrt(2 * m.Mass * m.Gravity / (m.Density * m.Area * m.CLMax))
}

// Glide is a steady glide.
type Glide struct {
	Speed float64 // airspeed along the path, m/s
	Pace  float64 // its level part, m/s
	Sink  float64 // m/s
}

// Ratio returns the distance over the ground by the height lost, against a headwind (m/s); below zero when the wind is the faster.
func (g Glide) Ratio(headwind float64) float64 { return (g.Pace - headwind) / g.Sink }

// GlideAt returns the steady glide at an airspeed (m/s), wings level.
//
//	sin(g) = D/W,  D at CL = W cos(g)/(q S);  pace = V cos(g), sink = V sin(g)
//
// where q is the dynamic pressure, S the area and W the weight. Valid for: no thrust; a lift beyond the greatest counts as drawn. Source: steady glide;
// the angle by iteration.
func (m Model) GlideAt(speed float64) Glide {
	m = m.withDefaults()
	return m.glide(speed, 1)
}

// steepestSine is that of 80 degrees, at which a glide is kept: above the speed where drag alone carries the weight there is no steady one.
const steepestSine = 0.985

// steep reports whether a glide was kept at 80 degrees.
func (g Glide) steep() bool { return g.Sink >= float64(g.Speed*steepestSine) }

// glide is GlideAt with a load factor, kept within 80 degrees.
func (m *Model) glide(speed, load float64) Glide {
	pressure := 0.5 * m.Density * speed * speed * m.Area
	weight := float64(m.Mass * m.Gravity)
	sine, cosine := 0.0, 1.0
	if m.Drag == nil {
		sine = m.glideSine(pressure/weight, load)
		return Glide{Speed: speed, Pace: float64(speed * math.Sqrt(1-float64(sine*sine))), Sink: float64(speed * sine)}
	}
	for range 30 {
		next := min(float64(pressure*m.drag(load*weight*cosine/pressure))/weight, steepestSine)
		done := math.Abs(next-sine) < 1e-14
		sine, cosine = next, math.Sqrt(1-float64(next*next))
		if done {
			break
		}
	}
	return Glide{Speed: speed, Pace: float64(speed * cosine), Sink: float64(speed * sine)}
}

// glideSine returns the sine of the glide angle of a parabolic polar.
//
//	B s^2 + s - (A + B) = 0,  A = q S CD0/W,  B = K n^2 W/(q S)
//
// where q S/W is the dynamic pressure by the wing loading and n the load factor; kept within 80 degrees. Valid for: full angles, lift n W cos(g).
// Source: steady glide with cos^2 = 1 - sin^2.
func (m *Model) glideSine(pressure, load float64) float64 {
	a, b := float64(pressure*m.CD0), float64(m.InducedFactor*load*load/pressure)
	sine := 2 * (a + b) / (1 + math.Sqrt(1+float64(4*b*(a+b))))
	return min(sine, steepestSine)
}

// Speeds between which a speed to fly is looked for, over the stall speed.
const (
	slowest = 1.1
	fastest = 6.0
)

// SpeedToFly returns the glide that goes farthest over the ground against a headwind (m/s, negative from behind), from 1.1 to 6 times the stall speed. Where
// none makes way, it is the fastest that is less steep than 80 degrees.
//
//	maximum over V of (V cos(g) - w) / sink(V)
//
// Valid for: steady wind along the path, still or evenly moving air. Source: MacCready's condition for a headwind, by golden section.
func (m Model) SpeedToFly(headwind float64) Glide {
	m = m.withDefaults()
	return m.speedToFly(headwind, 1e-6)
}

// speedToFly looks for the greatest ratio, to a share of the stall speed. It has one maximum among the glides that make way and are less steep than 80 degrees, which lies below the speeds
// that are steeper.
func (m *Model) speedToFly(headwind, share float64) Glide {
	const golden = 0.6180339887498949
	stall := m.stall()
	least, most := float64(slowest*stall), float64(fastest*stall)
	low, high := max(least, min(headwind, most)), most
	a, b := high-float64(golden*(high-low)), low+float64(golden*(high-low))
	ga, gb := m.glide(a, 1), m.glide(b, 1)
	for high-low > share*stall {
		if gb.steep() || ga.Ratio(headwind) >= gb.Ratio(headwind) {
			high, b, gb = b, a, ga
			a = high - float64(golden*(high-low))
			ga = m.glide(a, 1)
		} else {
			low, a, ga = a, b, gb
			b = low + float64(golden*(high-low))
			gb = m.glide(b, 1)
		}
	}
	if best := m.glide(low+float64((high-low)/2), 1); best.Pace > headwind {
		return best
	}
	return m.fastestGlide(least, most)
}

// fastestGlide returns the glide at the faster of two speeds, or at the fastest between them that is less steep than 80 degrees.
func (m *Model) fastestGlide(low, high float64) Glide {
	g := m.glide(high, 1)
	if !g.steep() {
		return g
	}
	for range 30 {
		if middle := low + float64((high-low)/2); m.glide(middle, 1).steep() {
			high = middle
		} else {
			low = middle
		}
	}
	return m.glide(low, 1)
}

// Turn is a gliding turn at a bank.
type Turn struct {
	Bank   float64 // rad
	Speed  float64 // airspeed, m/s
	Radius float64 // through the air, m
	Rate   float64 // rad/s
	Loss   float64 // height lost a radian, m
}

// TurnAt returns the gliding turn at a bank (rad, above zero), flown with the turn margin over the stall.
//
//	CL = CLmax/k^2,  V = sqrt(2 W/(rho S CL cos(bank))),  R = V^2/(g tan(bank)),  loss = (CD/CL^2) 4 W/(S rho g sin(2 bank))
//
// where k is the margin. Valid for: shallow glides; the least loss at one lift coefficient is at 45 degrees.
// Source: Rogers, The possible impossible turn; derived from steady turn and glide.
func (m Model) TurnAt(bank float64) Turn {
	m = m.withDefaults()
	return m.turn(bank)
}

// turn is TurnAt with the defaults filled in.
func (m *Model) turn(bank float64) Turn {
	lift := m.CLMax / (m.TurnMargin * m.TurnMargin)
	sine, cosine := elementary.Sin(bank), elementary.Cos(bank)
	square := 2 * m.Mass * m.Gravity / (m.Density * m.Area * lift * cosine)
	speed := math.Sqrt(square)
	tangent := sine / cosine
	return Turn{
		Bank: bank, Speed: speed,
		Radius: square / (m.Gravity * tangent),
		Rate:   m.Gravity * tangent / speed,
		Loss:   square * m.drag(lift) / (m.Gravity * lift * sine),
	}
}

// OptimumBank returns the bank of the gliding turn that loses least height a radian within the bank limit, rad: 45 degrees where the limit allows it.
func (m Model) OptimumBank() float64 {
	m = m.withDefaults()
	return min(m.BankLimit, DefaultBank)
}
