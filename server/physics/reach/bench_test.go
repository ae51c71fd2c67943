package reach

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// sport is a 12 kg model.
func sport() Model {
	return Model{
		Mass: 12, Area: 0.65, CD0: 0.045, InducedFactor: 0.069, CLMax: 1.1, Density: 1.225, Reaction: 1, RollRate: 2, SpeedShare: 0.5, LandingRun: 80,
		Clearance: 3,
	}
}

// longAcre is a strip of 285 by 20 m along 60 degrees and a field beside it.
func longAcre() []field.Polygon {
	ahead := field.Point{X: math.Sin(degrees(60)), Y: math.Cos(degrees(60))}
	right := rightOf(ahead)
	box := func(along, across, length, width float64) field.Polygon {
		a := ahead.Times(along).Plus(right.Times(across))
		return field.Polygon{a, a.Plus(ahead.Times(length)), a.Plus(ahead.Times(length)).Plus(right.Times(width)), a.Plus(right.Times(width))}
	}
	return []field.Polygon{box(0, -10, 285, 20), box(350, 60, 160, 120)}
}

// circuit is a launch and a circuit of a number of points over longAcre.
func circuit(count int) []Point {
	points := make([]Point, count)
	ahead := field.Point{X: math.Sin(degrees(60)), Y: math.Cos(degrees(60))}
	left := rightOf(ahead).Times(-1)
	for i := range points {
		a := 2 * math.Pi * float64(i) / float64(count)
		at := ahead.Times(140 + 220*math.Sin(a)).Plus(left.Times(130 * (1 - math.Cos(a))))
		points[i] = Point{At: at, Height: min(45, 3+0.4*float64(i)), Heading: degrees(60) - a, Airspeed: 26, Bank: -0.3}
	}
	return points
}

// hedges are obstacles around longAcre.
func hedges() []field.Obstacle {
	return []field.Obstacle{
		{Points: []field.Point{{X: -60, Y: -160}, {X: -90, Y: 60}}, Height: 2.4},
		{Points: []field.Point{{X: 300, Y: 40}, {X: 260, Y: 260}}, Height: 8},
		{Points: []field.Point{{X: 120, Y: 160}}, Height: 14},
		{Closed: true, Points: []field.Point{{X: 60, Y: -60}, {X: 80, Y: -60}, {X: 80, Y: -40}, {X: 60, Y: -40}}, Height: 6},
	}
}

// breeze is 5 m/s from 240 degrees over grass.
func breeze() Wind {
	return ProfileWind(5, degrees(240), weather.NewProfile(weather.OpenGrass, 10))
}

func BenchmarkNew(b *testing.B) {
	wind, areas, obstacles := breeze(), longAcre(), hedges()
	for b.Loop() {
		if _, err := New(sport(), wind, areas, obstacles); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkMap asks 200 points for their areas and for 72 headings of ground each, the map prepared anew.
func BenchmarkMap(b *testing.B) {
	points := circuit(200)
	for b.Loop() {
		m, err := New(sport(), breeze(), longAcre(), hedges())
		if err != nil {
			b.Fatal(err)
		}
		m.Survey(points)
		for i := range points {
			m.Fan(points[i])
		}
	}
}

// BenchmarkZones asks 200 places on 72 headings each for their areas.
func BenchmarkZones(b *testing.B) {
	places := make([]field.Point, 200)
	for i := range places {
		places[i] = field.Point{X: float64(i%20)*40 - 300, Y: float64(i/20)*60 - 200}
	}
	m, err := New(sport(), breeze(), longAcre(), hedges())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		m.Zones(places, 45, 26)
	}
}

func BenchmarkTurnBack(b *testing.B) {
	m, err := New(sport(), breeze(), longAcre(), hedges())
	if err != nil {
		b.Fatal(err)
	}
	distances := make([]float64, 20)
	for i := range distances {
		distances[i] = 20 * float64(i+1)
	}
	for b.Loop() {
		m.TurnBack(field.Point{}, degrees(60), 24, distances)
	}
}
