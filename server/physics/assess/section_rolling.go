package assess

import (
	"math"

	"pitgate/server/physics/landing"
)

// rollingPath is where the rolling tests stand in the document.
const rollingPath = "model.gear.rollingTests"

// rollingSection is what the rolling tests give together.
type rollingSection struct {
	given    bool
	missing  []string
	estimate bool // a value that was read is estimated
	friction landing.Measured
}

// rolled is what one rolling test gives.
type rolled struct {
	way      string
	friction landing.Measured
}

// readRolling works out the rolling tests and tells each. Their values move nothing one by one: their joint spread does.
func (p *pass) readRolling() {
	if p.in.Model == nil || p.in.Model.Gear == nil || len(p.in.Model.Gear.RollingTests) == 0 {
		return
	}
	p.rolling.given = true
	n, mark := p.need(), p.mark()
	p.aside = true
	var found []landing.Measured
	for i := range p.in.Model.Gear.RollingTests {
		test := &p.in.Model.Gear.RollingTests[i]
		p.rolling.estimate = p.rolling.estimate || test.estimated()
		path, begun := at(rollingPath, i), p.mark()
		if done, ok := p.rollOnce(test, path, &n); ok {
			found = append(found, done.friction)
			p.tell(say("gear.rolling_test.%d", i+1), done.friction.Value, p.since(begun)...)
			p.tellText(say("gear.rolling_way.%d", i+1), say("%s, spread %.4f", done.way, done.friction.Spread), p.since(begun)...)
		}
	}
	p.aside = false
	p.rolling.missing = n.missing
	if !n.met() {
		return
	}
	p.rolling.friction = mean(found)
	p.tell("gear.rolling_friction", p.rolling.friction.Value, p.since(mark)...)
	p.tell("gear.rolling_spread", p.rolling.friction.Spread, p.since(mark)...)
}

// estimated reports whether a value of the test is estimated.
func (t *RollingTest) estimated() bool {
	for _, q := range []*Quantity{t.PullNewtons, t.MassKg, t.SpeedMetersPerSecond, t.DistanceMeters, t.SecondMarkSeconds, t.ThirdMarkSeconds} {
		if q != nil && q.Value != nil && q.estimated() {
			return true
		}
	}
	return false
}

// rollOnce works out one test: by its pull, else by its marks, else from speed and distance. A test that cannot be ends the base pass.
func (p *pass) rollOnce(test *RollingTest, path string, outer *need) (rolled, bool) {
	n := p.need()
	mass := p.rollingMass(test, path, &n)
	slope := radians(orElse(test.SlopeDegrees, 0))
	var way string
	var friction landing.Measured
	var err error
	switch {
	case test.PullNewtons != nil:
		way = "steady pull"
		pull := p.reading(path+".pullNewtons", test.PullNewtons, &n)
		if n.met() {
			friction, err = landing.PullFriction(pull, mass, slope)
		}
	case test.SecondMarkSeconds != nil || test.ThirdMarkSeconds != nil:
		way = "roll past three marks"
		friction, err = p.rollPast(test, path, mass.Value, slope, &n)
	default:
		way = "roll to rest"
		friction, err = p.rollOut(test, path, mass.Value, slope, &n)
	}
	outer.lack(n.missing...)
	if err != nil {
		p.refuse(&RollingError{Path: path, Err: err})
	}
	return rolled{way, friction}, n.met() && err == nil
}

// RollingError is a rolling test that cannot be, with its path in the document.
type RollingError struct {
	Path string
	Err  error
}

// Error names the test and what is wrong with it.
func (e *RollingError) Error() string { return e.Path + ": " + e.Err.Error() }

// Unwrap returns what is wrong.
func (e *RollingError) Unwrap() error { return e.Err }

// rollOut works out a roll to rest.
func (p *pass) rollOut(test *RollingTest, path string, mass, slope float64, n *need) (landing.Measured, error) {
	speed := p.reading(path+".speedMetersPerSecond", test.SpeedMetersPerSecond, n)
	distance := p.reading(path+".distanceMeters", test.DistanceMeters, n)
	air := p.rollingDrag(n)
	if !n.met() {
		return landing.Measured{}, nil
	}
	return landing.RollOutFriction(speed, distance, mass, slope, air)
}

// rollPast works out a roll past three marks.
func (p *pass) rollPast(test *RollingTest, path string, mass, slope float64, n *need) (landing.Measured, error) {
	second := p.reading(path+".secondMarkSeconds", test.SecondMarkSeconds, n)
	third := p.reading(path+".thirdMarkSeconds", test.ThirdMarkSeconds, n)
	near, far := n.number(path+".secondMarkMeters", test.SecondMarkMeters), n.number(path+".thirdMarkMeters", test.ThirdMarkMeters)
	air := p.rollingDrag(n)
	if !n.met() {
		return landing.Measured{}, nil
	}
	return landing.TimedFriction(second, third, near, far, mass, slope, air)
}

// reading reads a quantity with its spread.
func (p *pass) reading(path string, q *Quantity, n *need) landing.Measured {
	value := n.quantity(path, q)
	if q == nil || q.Value == nil {
		return landing.Measured{}
	}
	return landing.Measured{Value: value, Spread: q.Deviation(path)}
}

// rollingMass returns the mass in the test: as given there, else as for the flight, whose spread moves this pass already.
func (p *pass) rollingMass(test *RollingTest, path string, n *need) landing.Measured {
	if test.MassKg != nil {
		return p.reading(path+".massKg", test.MassKg, n)
	}
	n.lack(p.mass.missing...)
	return landing.Measured{Value: p.mass.takeoff}
}

// rollingDrag returns what slows and unloads the model in a roll besides the wheels: its drag and lift as it stands.
func (p *pass) rollingDrag(n *need) landing.RollDrag {
	n.lack(p.drag.missing...)
	n.lack(p.air.missing...)
	if !n.met() {
		return landing.RollDrag{}
	}
	lift := p.groundLift(p.groundAttitude())
	drag := p.drag.launch + float64(p.drag.induced*lift*lift)
	return landing.RollDrag{Density: p.air.state.Density, Area: p.wing.area, Drag: max(0, drag), Lift: lift}
}

// mean returns the mean of frictions and its spread: what the single spreads make of it, and no less than their scatter shows.
//
//	u^2 = max(sum u_i^2/n^2, s^2/n)
//
// where s is the standard deviation of the n values. Valid for: tests on one surface. Source: JCGM 100:2008 (GUM), 4.2.3 and 5.1.
func mean(values []landing.Measured) landing.Measured {
	count := float64(len(values))
	var sum, own, scatter float64
	for _, v := range values {
		sum += v.Value
		own += float64(v.Spread * v.Spread)
	}
	middle := sum / count
	for _, v := range values {
		scatter += float64((v.Value - middle) * (v.Value - middle))
	}
	variance := own / (count * count)
	if count > 1 {
		variance = max(variance, scatter/(count*(count-1)))
	}
	return landing.Measured{Value: middle, Spread: math.Sqrt(variance)}
}

// rollingTests returns the rolling friction of the tests as this pass sees it; false where there are none.
func (p *pass) rollingTests(id string, n *need) (float64, bool) {
	if !p.rolling.given {
		return 0, false
	}
	n.lack(p.rolling.missing...)
	if len(p.rolling.missing) > 0 {
		return 0, true
	}
	p.meet(uncertain{name: rollingPath, spread: p.rolling.friction.Spread, estimated: p.rolling.estimate})
	if p.base() {
		p.replaced = append(p.replaced, replacement{id: id, path: "gear.rolling_friction", method: "mean of the rolling tests"})
	}
	return max(0, p.rolling.friction.Value+p.shift(rollingPath)), true
}
