package reach

import (
	"math"
	"testing"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// reference is the 12 kg model of the printed rows.
func reference(drag float64) Model {
	return Model{Mass: 12, Area: 0.65, CD0: drag, InducedFactor: 1 / (math.Pi * 0.75 * 4 / 0.65), CLMax: 1.1, Density: 1.225}
}

// held is the reference with the turn margin that holds a lift coefficient.
func held(in inputs) Turn {
	m := reference(in["drag"])
	m.TurnMargin = math.Sqrt(m.CLMax / in["lift"])
	return m.TurnAt(degrees(in["bank"]))
}

// flat is a model of one glide ratio at every speed.
func flat(ratio float64) Model {
	return Model{Mass: 12, Area: 0.65, CLMax: 1.1, Density: 1.225, Drag: func(lift float64) float64 { return lift / ratio }}
}

// prepare makes a map, or fails.
func prepare(t *testing.T, m Model, wind Wind, areas []field.Polygon, obstacles []field.Obstacle) *Map {
	t.Helper()
	out, err := New(m, wind, areas, obstacles)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

const (
	feet  = 0.3048
	knots = 0.514444
)

// standard is the turn of the handbook's light aeroplane: the model's scale does not matter, its glide at the speed does.
func standard(in inputs) (turn Turn, sink float64) {
	speed := in["speed"] * knots
	bank := math.Atan(in["rate"] * math.Pi / 180 * speed / 9.80665)
	sink = in["sink"] * feet / 60
	ratio := 8.0
	if sink > 0 {
		ratio = math.Sqrt(speed*speed-sink*sink) / sink
	}
	m := flat(ratio)
	m.TurnMargin = 1
	m.CLMax = 2 * m.Mass * 9.80665 / (m.Density * m.Area * speed * speed * math.Cos(bank))
	return m.TurnAt(bank), sink
}

func TestAgainstPrint(t *testing.T) {
	t.Parallel()
	checkPublished(t, "glide_turn_back", map[string]method{
		"ground-reach": func(in inputs) float64 {
			return in["height"] * flat(in["ratio"]).GlideAt(in["speed"]).Ratio(in["wind"])
		},
		"glide-time":  func(in inputs) float64 { return in["height"] / flat(in["ratio"]).GlideAt(in["speed"]).Sink },
		"fly-speed":   func(in inputs) float64 { return reference(in["drag"]).SpeedToFly(in["wind"]).Speed },
		"fly-ratio":   func(in inputs) float64 { return reference(in["drag"]).SpeedToFly(in["wind"]).Ratio(in["wind"]) },
		"turn-loss":   func(in inputs) float64 { return held(in).Loss * degrees(in["change"]) },
		"turn-radius": func(in inputs) float64 { return held(in).Radius },
		"turn-speed":  func(in inputs) float64 { return held(in).Speed },
		"best-bank": func(in inputs) float64 {
			m, best := reference(in["drag"]), 0.0
			for bank := 10.0; bank <= 80; bank += 0.25 {
				if best == 0 || m.TurnAt(degrees(bank)).Loss < m.TurnAt(degrees(best)).Loss {
					best = bank
				}
			}
			return best
		},
		"turn-back-change": func(in inputs) float64 {
			m, err := New(reference(0.045), nil, []field.Polygon{strip(300, 20)}, nil)
			if err != nil {
				return math.NaN()
			}
			return math.Abs(m.TurnBack(field.Point{}, 0, 22, []float64{in["distance"]})[0].First) * 180 / math.Pi
		},
		"standard-radius": func(in inputs) float64 { turn, _ := standard(in); return turn.Radius / feet },
		"standard-loss": func(in inputs) float64 {
			turn, sink := standard(in)
			return (turn.Loss*degrees(in["change"]) + sink*in["reaction"]) / feet
		},
	})
}

// strip is a rectangle along north from the origin.
func strip(length, width float64) field.Polygon {
	return field.Polygon{{X: -width / 2}, {X: width / 2}, {X: width / 2, Y: length}, {X: -width / 2, Y: length}}
}

func TestSpeedToFlyIsTheBest(t *testing.T) {
	t.Parallel()
	m := sport()
	for _, wind := range []float64{-12, -3, 0, 4, 9, 14} {
		best := m.SpeedToFly(wind)
		for _, change := range []float64{0.97, 0.99, 1.01, 1.03} {
			if v := best.Speed * change; v > 1.1*m.withDefaultsStall() && m.GlideAt(v).Ratio(wind) > best.Ratio(wind)+1e-9 {
				t.Errorf("wind %g: %g m/s goes farther than %g", wind, v, best.Speed)
			}
		}
	}
	if g := m.SpeedToFly(500); g.Ratio(500) >= 0 {
		t.Errorf("makes way against 500 m/s: %+v", g)
	}
	curved, parabola := sport(), sport()
	curved.Drag = func(lift float64) float64 { return 0.045 + 0.069*lift*lift }
	if a, b := curved.GlideAt(20), parabola.GlideAt(20); math.Abs(a.Sink-b.Sink) > 1e-12*b.Sink {
		t.Errorf("sink by table %g, by parabola %g", a.Sink, b.Sink)
	}
}

// speeds returns the glides at a thousand speeds from the slowest to the fastest.
func (m Model) speeds() []Glide {
	all := make([]Glide, 1000)
	for i := range all {
		all[i] = m.GlideAt(m.withDefaultsStall() * (slowest + (fastest-slowest)*float64(i)/float64(len(all)-1)))
	}
	return all
}

// TestSpeedToFlyAtItsLimits: against a wind as fast as the fastest glide, and any faster one, it is that glide; in a tail wind where the slowest goes
// farthest it is the slowest.
func TestSpeedToFlyAtItsLimits(t *testing.T) {
	t.Parallel()
	slick, draggy := sport(), sport()
	slick.CD0, draggy.CD0 = 0.01, 0.18
	stall := slick.withDefaultsStall()
	end := slick.GlideAt(fastest * stall)
	for _, wind := range []float64{end.Pace, math.Nextafter(end.Pace, 1e3), end.Pace + 1, 300} {
		if got := slick.SpeedToFly(wind); got != end {
			t.Errorf("wind %g: %+v, want the fastest glide %+v", wind, got, end)
		}
	}
	if got := slick.SpeedToFly(0.999 * end.Pace); !(got.Pace > 0.999*end.Pace) {
		t.Errorf("makes way at %+v", got)
	}
	if got := draggy.SpeedToFly(-40); math.Abs(got.Speed-slowest*stall) > 2e-6*stall {
		t.Errorf("tail wind: %g m/s, want the slowest, %g", got.Speed, slowest*stall)
	}
}

// TestSpeedToFlyOfDraggyModels: where the fastest speeds are steeper than a steady glide, none of a thousand speeds goes farther than the speed to fly in any
// wind that one of them makes way against.
func TestSpeedToFlyOfDraggyModels(t *testing.T) {
	t.Parallel()
	for _, drag := range []float64{0.02, 0.045, 0.09, 0.13, 0.18, 0.4} {
		m := sport()
		m.CD0 = drag
		glides, most := m.speeds(), 0.0
		for _, g := range glides {
			if !g.steep() {
				most = max(most, g.Pace)
			}
		}
		for share := -1.0; share < 0.999; share += 0.03 {
			wind := share * most
			best := m.SpeedToFly(wind)
			for _, g := range glides {
				if g.Ratio(wind) > best.Ratio(wind)*(1+1e-5)+1e-6 {
					t.Fatalf("drag %g, wind %g: %g m/s goes farther than %g", drag, wind, g.Speed, best.Speed)
				}
			}
		}
		if just := m.SpeedToFly(0.9998 * most); !(just.Ratio(0.9998*most) > 0) {
			t.Errorf("drag %g makes no way against %g m/s: %+v", drag, 0.9998*most, just)
		}
		none := m.SpeedToFly(1.01 * most)
		if faster := m.GlideAt(none.Speed * 1.001); none.Ratio(1.01*most) >= 0 || none.steep() || !(faster.steep() || none.Speed >= fastest*m.withDefaultsStall()) {
			t.Errorf("drag %g against %g m/s: %+v, a little faster %+v", drag, 1.01*most, none, faster)
		}
	}
}

// withDefaultsStall is the stall speed with standard gravity.
func (m Model) withDefaultsStall() float64 {
	m = m.withDefaults()
	return m.stall()
}

// Each way through still air ends at the gate it was made for, on its heading.
func TestWaysEndWhereTheyShould(t *testing.T) {
	t.Parallel()
	seed := uint64(7)
	next := func(size float64) float64 {
		seed = seed*6364136223846793005 + 1442695040888963407
		return size * (float64(seed>>11)/(1<<53) - 0.5)
	}
	made := 0
	for range 2000 {
		from, to := gate{heading: next(12)}, gate{at: field.Point{X: next(900), Y: next(900)}, heading: next(12)}
		from.ahead = field.Point{X: elementary.Sin(from.heading), Y: elementary.Cos(from.heading)}
		to.ahead = field.Point{X: elementary.Sin(to.heading), Y: elementary.Cos(to.heading)}
		for _, sides := range [4][2]float64{{1, 1}, {-1, -1}, {1, -1}, {-1, 1}} {
			w, found := join(&from, &to, 50, sides[0], sides[1])
			if !found {
				continue
			}
			made++
			w.angles(&from, &to)
			middle := from
			middle.at, middle.ahead = arc(&from, 50, sides[0], w.turn1)
			middle.at = middle.at.Plus(w.ahead.Times(w.length))
			end, ahead := arc(&middle, 50, sides[1], w.turn2)
			if end.Distance(to.at) > 1e-6 || ahead.Distance(to.ahead) > 1e-8 {
				t.Fatalf("sides %v: ends %g m off, heading %g off", sides, end.Distance(to.at), ahead.Distance(to.ahead))
			}
		}
	}
	if made < 6000 {
		t.Errorf("only %d ways", made)
	}
}

// The path in the wind ends on the line it was made for, at the height that is left over.
func TestPathsEndOnTheArea(t *testing.T) {
	t.Parallel()
	for _, wind := range []Wind{nil, breeze(), func(float64) field.Point { return field.Point{X: -7, Y: 4} }} {
		m := prepare(t, sport(), wind, longAcre(), nil)
		seen := 0
		for _, p := range circuit(120) {
			p.Height += 60
			r := m.From(p)
			path := m.Path(p, r)
			if r.Ahead || len(path) < 3 {
				continue
			}
			seen++
			end, before := path[len(path)-1], path[len(path)-2]
			l := &m.lines[r.track.line]
			if off := before.At.Distance(l.gates[r.track.aim].at); off > 5*closeDrift {
				t.Errorf("line-up %g m off", off)
			}
			if math.Abs(end.Height-r.Margin) > 0.05 {
				t.Errorf("ends at %g m, margin %g m", end.Height, r.Margin)
			}
			if d := m.areas[r.Area].SignedDistance(end.At); d < -0.01 {
				t.Errorf("touches down %g m outside", -d)
			}
			for i := 1; i < len(path); i++ {
				if path[i].Height > path[i-1].Height+10 {
					t.Errorf("climbs from %g to %g", path[i-1].Height, path[i].Height)
				}
			}
		}
		if seen < 100 {
			t.Errorf("only %d paths", seen)
		}
	}
}

func TestDownwindBehindIsReachedUpwindNot(t *testing.T) {
	t.Parallel()
	wind := func(float64) field.Point { return field.Point{Y: -9} } // from the north
	m := prepare(t, sport(), wind, []field.Polygon{strip(300, 30)}, nil)
	upwind := Point{At: field.Point{Y: 800}, Height: 70, Heading: math.Pi, Airspeed: 24}
	downwind := Point{At: field.Point{Y: -500}, Height: 70, Heading: 0, Airspeed: 24}
	if r := m.From(upwind); !r.Reachable {
		t.Errorf("from upwind: %+v", r)
	}
	if r := m.From(downwind); r.Reachable {
		t.Errorf("from downwind: %+v", r)
	}
}

func TestStraightOn(t *testing.T) {
	t.Parallel()
	m := prepare(t, sport(), nil, []field.Polygon{strip(300, 20)}, nil)
	low := Point{At: field.Point{Y: 60}, Height: 4, Airspeed: 20}
	if r := m.From(low); !r.Reachable || !r.Ahead || r.Needed != 0 {
		t.Errorf("low over the strip: %+v", r)
	}
	late := low
	late.At.Y = 250
	if r := m.From(late); r.Reachable {
		t.Errorf("too little strip left: %+v", r)
	}
	high := low
	high.Height = 60
	if r := m.From(high); r.Ahead {
		t.Errorf("comes down 60 m straight on: %+v", r)
	}
	short := low
	short.At.Y, short.Height = -100, 15
	if r := m.From(short); !r.Reachable || math.Abs(r.Turn) > 1e-6 {
		t.Errorf("short final: %+v", r)
	}
}

func TestUsable(t *testing.T) {
	t.Parallel()
	model := sport()
	m := prepare(t, model, nil, []field.Polygon{strip(70, 20), strip(100, 20)}, nil)
	if m.Usable(0) || !m.Usable(1) || m.Usable(2) {
		t.Error("70 m are not enough for a run of 80 m, 100 m are")
	}
	head := func(float64) field.Point { return field.Point{Y: -6} }
	if m = prepare(t, model, head, []field.Polygon{strip(70, 20)}, nil); !m.Usable(0) {
		t.Error("70 m are enough in 6 m/s of headwind")
	}
	model.HalfWidth = 12
	if m = prepare(t, model, nil, []field.Polygon{strip(300, 20)}, nil); m.Usable(0) {
		t.Error("20 m wide ground is not 24 m wide")
	}
	none := prepare(t, sport(), nil, nil, nil)
	if r := none.From(Point{Height: 50, Airspeed: 20}); r.Area != -1 || r.Reachable {
		t.Errorf("without areas: %+v", r)
	}
}

func TestChords(t *testing.T) {
	t.Parallel()
	ell := field.Polygon{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: 150}, {X: 200, Y: 150}, {X: 200, Y: 300}, {X: 0, Y: 300}}
	found := chords(ell, 10)
	if math.Abs(found[0].length-400) > 1e-6 {
		t.Errorf("longest along an edge %g m, want 400", found[0].length)
	}
	for _, c := range found {
		for i := range 21 {
			p := field.Segment{A: c.start, B: c.end}.At(float64(i) / 20)
			if d := ell.SignedDistance(p); d < -1e-6 {
				t.Errorf("%+v leaves the area by %g m", c, -d)
			}
		}
	}
	if c := chords(strip(285, 20), 2)[0]; math.Abs(c.length-285) > 1e-6 || math.Abs(c.start.X) > 1e-6 {
		t.Errorf("strip: %+v", c)
	}
}

func TestObstaclesRaiseWhatIsNeeded(t *testing.T) {
	t.Parallel()
	hedge := field.Obstacle{Points: []field.Point{{X: -400, Y: -30}, {X: 400, Y: -30}}, Height: 12}
	free := prepare(t, sport(), nil, []field.Polygon{strip(300, 20)}, nil)
	closed := prepare(t, sport(), nil, []field.Polygon{strip(300, 20)}, []field.Obstacle{hedge})
	p := Point{At: field.Point{Y: -200}, Height: 40, Airspeed: 22}
	a, b := free.From(p), closed.From(p)
	if !(b.Needed > a.Needed) {
		t.Errorf("needs %g m over a hedge, %g m without", b.Needed, a.Needed)
	}
	tree := field.Obstacle{Points: []field.Point{{X: 60, Y: -100}}, Height: 30}
	beside := prepare(t, sport(), nil, []field.Polygon{strip(300, 20)}, []field.Obstacle{tree})
	if c := beside.From(p); c.Needed != a.Needed {
		t.Errorf("a tree 60 m beside the way changes %g m to %g m", a.Needed, c.Needed)
	}
}

func TestTurnBack(t *testing.T) {
	t.Parallel()
	m := prepare(t, sport(), breeze(), longAcre()[:1], nil)
	slow := sport()
	slow.Reaction = 3
	late := prepare(t, slow, breeze(), longAcre()[:1], nil)
	distances := []float64{250, 350, 450, 600, 800}
	answers, lateAnswers := m.TurnBack(field.Point{}, degrees(60), 24, distances), late.TurnBack(field.Point{}, degrees(60), 24, distances)
	for i, a := range answers {
		if !a.Possible || a.Area != 0 || !(a.Height > 15) || a.Bank > DefaultBank+1e-12 {
			t.Fatalf("%+v", a)
		}
		if !(lateAnswers[i].Height > a.Height) {
			t.Errorf("at %g m slower reaction needs %g m, quick %g m", a.Distance, lateAnswers[i].Height, a.Height)
		}
		p := Point{At: field.Ahead(degrees(60)).Times(a.Distance), Heading: degrees(60), Airspeed: 24}
		if r := m.From(p); r.Needed < a.Height-1e-6 && !r.Ahead && m.lines[r.track.line].ahead.Dot(field.Ahead(degrees(60))) <= against {
			t.Errorf("at %g m the fixed bank needs %g m, the best %g m", a.Distance, r.Needed, a.Height)
		}
	}
	if a := m.TurnBack(field.Point{}, degrees(60), 24, []float64{40})[0]; a.Straight <= 0 {
		t.Errorf("no straight landing at 40 m: %+v", a)
	}
	none := prepare(t, sport(), nil, nil, nil)
	if a := none.TurnBack(field.Point{}, 0, 24, []float64{100, math.NaN()}); a[0].Possible || a[1].Possible {
		t.Errorf("turns back to nothing: %+v", a)
	}
}

func TestProfileWind(t *testing.T) {
	t.Parallel()
	wind := ProfileWind(6, degrees(270), weather.NewProfile(weather.OpenGrass, 10))
	if w := wind(10); math.Abs(w.X-6) > 1e-12 || math.Abs(w.Y) > 1e-12 {
		t.Errorf("west wind blows %+v", w)
	}
	c := newColumn(wind)
	sum, parts := 0.0, 20000
	for i := range parts {
		sum += wind(5+45*(float64(i)+0.5)/float64(parts)).X / float64(parts)
	}
	if got := c.mean(5, 50).X; math.Abs(got-sum) > 0.01 {
		t.Errorf("mean from 5 to 50 m %g, summed %g", got, sum)
	}
	if far := c.mean(600, 700).X; math.Abs(far-wind(490).X) > 0.1 {
		t.Errorf("wind above the column %g", far)
	}
}
