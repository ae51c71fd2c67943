package reach

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// scene is everything a map is made of, to be turned and mirrored.
type scene struct {
	wind      field.Point
	areas     []field.Polygon
	obstacles []field.Obstacle
	points    []Point
}

// larkmoor is a scene without chance symmetries.
func larkmoor() scene {
	return scene{
		wind:  field.Point{X: 3.1, Y: -2.4},
		areas: []field.Polygon{{{X: 0, Y: 0}, {X: 260, Y: 20}, {X: 250, Y: 70}, {X: -10, Y: 40}}, {{X: -300, Y: 200}, {X: -90, Y: 230}, {X: -180, Y: 420}}},
		obstacles: []field.Obstacle{
			{Points: []field.Point{{X: -40, Y: -80}, {X: -60, Y: 120}}, Height: 7}, {Points: []field.Point{{X: 150, Y: 160}}, Height: 20},
		},
		points: scattered(),
	}
}

// scattered are points around the scene's areas on all headings.
func scattered() []Point {
	var out []Point
	for i := range 150 {
		a := float64(i)
		out = append(out, Point{
			At: field.Point{X: 500*math.Sin(1.7*a) + 37, Y: 450 * math.Cos(2.3*a)}, Height: 10 + 0.8*a, Heading: 0.37 * a, Airspeed: 18 + math.Mod(a, 17),
			Bank: 0.5 * math.Sin(a),
		})
	}
	return out
}

// changed returns the scene with every vector changed, and headings.
func (s scene) changed(v func(field.Point) field.Point, heading func(float64) float64, bank float64) scene {
	out := scene{wind: v(s.wind)}
	for _, a := range s.areas {
		var g field.Polygon
		for _, p := range a {
			g = append(g, v(p))
		}
		out.areas = append(out.areas, g)
	}
	for _, o := range s.obstacles {
		c := o
		c.Points = nil
		for _, p := range o.Points {
			c.Points = append(c.Points, v(p))
		}
		out.obstacles = append(out.obstacles, c)
	}
	for _, p := range s.points {
		p.At, p.Heading, p.Bank = v(p.At), heading(p.Heading), bank*p.Bank
		out.points = append(out.points, p)
	}
	return out
}

// prepare makes the scene's map.
func (s scene) prepare(t *testing.T, model Model) *Map {
	t.Helper()
	return prepare(t, model, func(height float64) field.Point { return s.wind.Times(1 + height/200) }, s.areas, s.obstacles)
}

// compareScenes asks both for all points.
func compareScenes(t *testing.T, a, b scene) {
	t.Helper()
	m, n := a.prepare(t, sport()), b.prepare(t, sport())
	reached := 0
	for i := range a.points {
		r, q := m.From(a.points[i]), n.From(b.points[i])
		if r.Reachable {
			reached++
		}
		if r.Area != q.Area || math.Abs(r.Needed-q.Needed) > 1e-5 || r.Ahead != q.Ahead {
			t.Errorf("point %d: %+v against %+v", i, r, q)
		}
	}
	if reached < 20 || reached > len(a.points)-20 {
		t.Errorf("%d of %d reached: the scene does not tell", reached, len(a.points))
	}
}

func TestTurnedSceneGivesTheSame(t *testing.T) {
	t.Parallel()
	s := larkmoor()
	for _, angle := range []float64{0.3, math.Pi / 2, math.Pi, 4} {
		sine, cosine := math.Sin(angle), math.Cos(angle)
		rotate := func(p field.Point) field.Point {
			return field.Point{X: p.X*cosine + p.Y*sine, Y: p.Y*cosine - p.X*sine}
		}
		compareScenes(t, s, s.changed(rotate, func(h float64) float64 { return h + angle }, 1))
	}
}

func TestMirroredSceneGivesTheSame(t *testing.T) {
	t.Parallel()
	s := larkmoor()
	mirror := func(p field.Point) field.Point { return field.Point{X: -p.X, Y: p.Y} }
	compareScenes(t, s, s.changed(mirror, func(h float64) float64 { return -h }, -1))
}

func TestShiftedSceneGivesTheSame(t *testing.T) {
	t.Parallel()
	s := larkmoor()
	shift := field.Point{X: 1300, Y: -700}
	moved := s.changed(func(p field.Point) field.Point { return p.Plus(shift) }, func(h float64) float64 { return h }, 1)
	moved.wind = s.wind
	compareScenes(t, s, moved)
}

func TestMoreHeightNeverLosesAnArea(t *testing.T) {
	t.Parallel()
	s := larkmoor()
	model := sport()
	model.Steepest = 1.57 // straight on, any height is lost
	m := s.prepare(t, model)
	for i, p := range s.points {
		reached := false
		for h := 2.0; h < 220; h += 9 {
			p.Height = h
			r := m.From(p)
			if reached && !r.Reachable {
				t.Errorf("point %d loses its area at %g m", i, h)
			}
			reached = r.Reachable
		}
		if !reached {
			t.Errorf("point %d reaches nothing from 218 m: %+v", i, m.From(p))
		}
	}
}

func TestMoreDemandsNeverNeedLess(t *testing.T) {
	t.Parallel()
	s := larkmoor()
	base := s.prepare(t, sport())
	for name, change := range map[string]func(*Model){
		"drag": func(m *Model) { m.CD0 += 0.02 }, "reaction without speed": func(m *Model) { m.SpeedShare = 0 },
		"landing run": func(m *Model) { m.LandingRun = 110 }, "clearance": func(m *Model) { m.Clearance = 8 }, "line-up": func(m *Model) { m.LineUp = 4 },
	} {
		model := sport()
		change(&model)
		m := s.prepare(t, model)
		worse, total := 0, 0.0
		for _, p := range s.points {
			a, b := base.From(p), m.From(p)
			total += b.Needed - a.Needed
			if b.Area >= 0 && b.Needed < a.Needed-1e-6 {
				worse++
			}
		}
		if total <= 0 || worse > len(s.points)/20 {
			t.Errorf("%s: %g m more in all, %d points need less", name, total, worse)
		}
	}
}

func TestHighOverAnAreaReachesIt(t *testing.T) {
	t.Parallel()
	m := larkmoor().prepare(t, sport())
	for i, a := range m.areas {
		for k := range 36 {
			p := Point{At: a.Centroid(), Height: 150, Heading: degrees(10 * float64(k)), Airspeed: 24}
			if r := m.From(p); !r.Reachable || r.Needed > 100 {
				t.Errorf("150 m over area %d on heading %d: %+v", i, 10*k, r)
			}
		}
	}
}

func TestFanWithoutWindIsAFunctionOfTheTurn(t *testing.T) {
	t.Parallel()
	m := prepare(t, sport(), nil, nil, nil)
	fan := m.Fan(Point{Height: 80, Airspeed: 22})
	best := m.model.speedToFly(0, 1e-6)
	for k := 1; k < Headings/2; k++ {
		a, b := fan[k], fan[Headings-k]
		if math.Abs(a.X+b.X) > 1e-9 || math.Abs(a.Y-b.Y) > 1e-9 {
			t.Errorf("heading %d: %+v and %+v", k, a, b)
		}
	}
	if far := fan[0].Length(); far > 80*best.Ratio(0)+22*m.model.Reaction || far < 60*best.Ratio(0) {
		t.Errorf("straight on %g m", far)
	}
	if low := m.Fan(Point{Height: 6, Airspeed: 22}); low[36].Length() > 130 {
		t.Errorf("from 6 m turned back %g m away", low[36].Length())
	}
	if ground := m.Fan(Point{At: field.Point{X: 5, Y: 5}, Height: 0, Airspeed: 22}); ground[3] != (field.Point{X: 5, Y: 5}) {
		t.Errorf("from the ground %+v", ground[3])
	}
}

func TestFootprintHoldsItsOwnPlacesAndGrows(t *testing.T) {
	t.Parallel()
	points := circuit(40)
	m := prepare(t, sport(), breeze(), longAcre(), nil)
	before := 0.0
	for _, more := range []float64{0, 10, 30, 60} {
		raised := make([]Point, len(points))
		for i, p := range points {
			p.Height += more
			raised[i] = p
		}
		hull := m.Footprint(raised)
		if err := hull.Check(); err != nil {
			t.Fatal(err)
		}
		for _, p := range raised {
			fan := m.Fan(p)
			for _, place := range append(fan[:], p.At) {
				if d := hull.SignedDistance(place); d < -1e-6 {
					t.Fatalf("%+v lies %g m outside", place, -d)
				}
			}
		}
		if area := hull.Area(); area <= before {
			t.Errorf("%g m higher: %g m2 after %g m2", more, area, before)
		} else {
			before = area
		}
	}
}

func TestSurvey(t *testing.T) {
	t.Parallel()
	m := prepare(t, sport(), breeze(), longAcre(), hedges())
	points := circuit(200)
	s := m.Survey(points)
	reached, lost := 0, 0
	for i, r := range s.Results {
		if r.Reachable {
			reached++
		}
		if r.worse(&s.Results[s.Worst]) {
			t.Errorf("point %d is worse than the worst", i)
		}
	}
	for _, n := range s.NoReach {
		for i := n.First; i <= n.Last; i++ {
			lost++
			if s.Results[i].Reachable || m.Footprint(points[n.First:n.Last+1]).SignedDistance(points[i].At) < -1e-6 {
				t.Errorf("point %d does not belong to its stretch", i)
			}
		}
	}
	if reached+lost != len(points) || s.ReachRatio != float64(reached)/200 || reached == 0 || lost == 0 {
		t.Errorf("%d reached, %d lost, ratio %g", reached, lost, s.ReachRatio)
	}
	if none := m.Survey(nil); none.Worst != -1 || none.ReachRatio != 1 {
		t.Errorf("no points: %+v", none)
	}
}

func TestZonesAgreeWithFrom(t *testing.T) {
	t.Parallel()
	m := prepare(t, sport(), breeze(), longAcre(), hedges())
	places := []field.Point{{X: 120, Y: 60}, {X: -200, Y: 100}, {X: 300, Y: 300}, {X: 900, Y: -900}}
	for _, z := range m.Zones(places, 55, 26) {
		blind := 0
		for k := range Headings {
			if !m.From(Point{At: z.At, Height: 55, Heading: degrees(5 * float64(k)), Airspeed: 26}).Reachable {
				blind++
			}
		}
		if blind != z.Blind || math.Abs(z.Reach-float64(72-blind)/72) > 1e-12 {
			t.Errorf("%+v: %d headings by From", z, blind)
		}
	}
	if far := m.Zones(places[3:], 55, 26)[0]; far.Reach != 0 {
		t.Errorf("1200 m away: %+v", far)
	}
}

// Leaving out lines by their bounds must not change the answer: every line and place is tried without bounds.
func TestBoundsLoseNothing(t *testing.T) {
	t.Parallel()
	for name, m := range map[string]*Map{
		"larkmoor": larkmoor().prepare(t, sport()), "breeze": prepare(t, sport(), breeze(), longAcre(), hedges()),
		"gale": prepare(t, sport(), ProfileWind(11, degrees(200), weather.NewProfile(weather.LowCrops, 10)), longAcre(), nil),
	} {
		for i, p := range append(scattered(), circuit(100)...) {
			r := m.From(p)
			s := m.begin(&p, &m.turn)
			least := math.Inf(1)
			if straight := m.ahead(&p, &s); straight.Area >= 0 {
				least = straight.Needed
			}
			for k := range m.lines {
				for aim := range m.lines[k].usable {
					way := m.need(&s, k, aim, &m.turn, math.Inf(1))
					if b := m.bound(&s, &m.lines[k], aim, &m.turn); b > way.need+0.02 {
						t.Errorf("%s point %d: line %d bound %g above what is needed", name, i, k, b)
					}
					least = min(least, way.need+m.lacking(m.draw(nil, &s, &way, &m.turn, way.need, math.Inf(1))))
				}
			}
			if math.Abs(max(least, 0)-r.Needed) > 0.05 {
				t.Errorf("%s point %d: needs %g, by all lines %g", name, i, r.Needed, least)
			}
			q := p
			for _, more := range []float64{-3, 3} {
				if q.Height = r.Needed + more; q.Height > 0 && !r.Ahead && !m.From(q).Ahead && m.reaches(&q, &room{}) != (more > 0) {
					t.Errorf("%s point %d: %g m from what is needed decided the other way", name, i, more)
				}
			}
		}
	}
}
