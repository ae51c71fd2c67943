package reach

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Map is a model in a wind over a field, prepared for asking.
type Map struct {
	model     Model
	areas     []field.Polygon
	obstacles []field.Obstacle
	top       float64 // no obstacle asks for more height, m
	wind      column
	glides    glides
	final     Glide // at the approach speed
	turn      Turn
	lines     []line
}

// Point is where the engine stops.
type Point struct {
	At       field.Point
	Height   float64 // over the landing areas, m
	Heading  float64 // of the nose, rad clockwise from true north
	Airspeed float64 // m/s
	Bank     float64 // rad, to the right positive
}

// New prepares a map. Areas may be none: then nothing is reached. An area too short for the landing run in every direction is never reached: see Usable.
// Wind nil means still air. The error names what is impossible.
func New(model Model, wind Wind, areas []field.Polygon, obstacles []field.Obstacle) (*Map, error) {
	if err := model.Check(); err != nil {
		return nil, err
	}
	for i, a := range areas {
		if err := a.Check(); err != nil {
			return nil, fmt.Errorf("landing area %d: %w", i+1, err)
		}
	}
	for i, o := range obstacles {
		if err := sound(o); err != nil {
			return nil, fmt.Errorf("obstacle %d: %w", i+1, err)
		}
	}
	m := &Map{model: model.withDefaults(), areas: areas, obstacles: obstacles, wind: newColumn(wind)}
	m.top = math.Inf(-1)
	for i := range obstacles {
		m.top = max(m.top, obstacles[i].Height+m.model.Clearance)
	}
	if !m.wind.finite() {
		return nil, fmt.Errorf("wind: not a number, or faster than 200 m/s")
	}
	m.final = m.model.glide(m.model.ApproachRatio*m.model.stall(), 1)
	m.glides = newGlides(&m.model, m.wind.fastest)
	m.wind.surround(wind, float64(m.final.Sink*m.model.LineUp))
	m.turn = m.model.turn(m.model.OptimumBank())
	for i, a := range areas {
		m.lines = append(m.lines, m.linesOf(i, a)...)
	}
	return m, nil
}

// sound names what is wrong with an obstacle.
func sound(o field.Obstacle) error {
	if !(o.Height >= -1e4 && o.Height <= 1e4) {
		return fmt.Errorf("height: %g is outside -10000 to 10000", o.Height)
	}
	for _, p := range o.Points {
		if !p.Finite() {
			return fmt.Errorf("a point is not a number")
		}
	}
	return nil
}

// Check returns an error that names the first impossible value.
func (p Point) Check() error {
	for _, v := range []struct {
		name               string
		value, least, most float64
	}{
		{"point x", p.At.X, -1e6, 1e6}, {"point y", p.At.Y, -1e6, 1e6}, {"point height", p.Height, -1e4, 1e4},
		{"point heading", p.Heading, -100, 100}, {"point airspeed", p.Airspeed, 0, 1000}, {"point bank", p.Bank, -1.5, 1.5},
	} {
		if !(v.value >= v.least && v.value <= v.most) {
			return fmt.Errorf("%s: %g is outside %g to %g", v.name, v.value, v.least, v.most)
		}
	}
	return nil
}

// Usable reports whether an area is long enough for a landing in some direction in this wind.
func (m *Map) Usable(area int) bool {
	for i := range m.lines {
		if m.lines[i].area == area {
			return true
		}
	}
	return false
}

// room is memory used again from point to point.
type room struct {
	places []Place
	bounds []float64 // one a gate
	// hit is the line and the aim, one more than each, of the last gate that was enough or best: the next heading or point is likely to have it too.
	hitLine, hitAim int
}

// start is the state when the turn begins, measured through the air from where the engine stopped.
type start struct {
	from    field.Point // where the engine stopped
	heading field.Point // of the nose there
	gate    gate        // where the turn begins
	time    float64     // until then, s
	loss    float64     // height lost until then, and in exchange for speed, m
	energy  float64     // of it, the exchange
	room
}

// begin flies on for the reaction time at the bank and speed of the point and rolls into a turn.
//
//	loss = sink(V) t + (Va^2 - V^2)/(2 g), the second part times the speed share where it is a gain
//
// Valid for: airspeed held while reacting. Source: energy of the model; Rogers for the exchange with speed.
func (m *Map) begin(p *Point, turn *Turn) start {
	g := &m.model
	speed := max(p.Airspeed, 0.3*g.stall())
	s := start{from: p.At, heading: field.Point{X: elementary.Sin(p.Heading), Y: elementary.Cos(p.Heading)}}
	s.time = g.Reaction
	rolling := 0.0
	if g.RollRate > 0 {
		rolling = turn.Bank / g.RollRate
	}
	nose := gate{ahead: s.heading, heading: p.Heading}
	load := 1.0
	if bank := min(max(p.Bank, -1.4), 1.4); bank != 0 {
		tangent := elementary.Tan(bank)
		radius := speed * speed / (g.Gravity * math.Abs(tangent))
		angle := speed * g.Reaction / radius
		load = 1 / elementary.Cos(bank)
		side := math.Copysign(1, bank)
		nose.at, nose.ahead = arc(&nose, radius, side, angle)
		nose.heading += float64(side * angle)
	} else {
		nose.at = nose.ahead.Times(speed * g.Reaction)
	}
	nose.at = nose.at.Plus(nose.ahead.Times(speed * rolling))
	s.gate = nose
	s.time += rolling
	s.energy = (float64(m.final.Speed*m.final.Speed) - float64(p.Airspeed*p.Airspeed)) / (2 * g.Gravity)
	if s.energy < 0 {
		s.energy *= g.SpeedShare
	}
	sink := g.glide(speed, load).Sink
	s.loss = s.energy + float64(sink*s.time)
	return s
}
