package reach

import (
	"math"
	"math/rand"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// oneByOne decides a point by every place of every line, none of them ruled out beforehand.
func oneByOne(m *Map, p Point) bool {
	s := m.begin(&p, &m.turn)
	if straight := m.ahead(&p, &s); straight.Area >= 0 && straight.Needed <= p.Height {
		return true
	}
	for i := range m.lines {
		for aim := range m.lines[i].usable {
			best := Result{Area: -1}
			m.try(&s, &m.turn, &best, i, aim, p.Height)
			if best.Area >= 0 && best.Needed <= p.Height {
				return true
			}
		}
	}
	return false
}

// TestZonesAnswerAsEveryPoint wants the answers of the map to be those of every line tried for every heading: neither the line that was enough on the
// heading before nor what is ruled out by its turns may change one.
func TestZonesAnswerAsEveryPoint(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewSource(11))
	blind, seen := 0, 0
	for n := range 9 {
		model := sport()
		model.BankLimit = []float64{0, 0.5, 0.9}[n%3]
		wind := ProfileWind(r.Float64()*9, r.Float64()*2*math.Pi, weather.NewProfile(weather.OpenGrass, 10))
		m := prepare(t, model, wind, longAcre(), hedges())
		places := make([]field.Point, 40)
		for i := range places {
			places[i] = field.Point{X: r.Float64()*1200 - 500, Y: r.Float64()*1000 - 400}
		}
		height, speed := 20+80*r.Float64(), 18+15*r.Float64()
		for _, zone := range m.Zones(places, height, speed) {
			want := 0
			for k := range Headings {
				if !oneByOne(m, Point{At: zone.At, Height: height, Heading: 2 * math.Pi * float64(k) / Headings, Airspeed: speed}) {
					want++
				}
			}
			if zone.Blind != want {
				t.Errorf("setting %d, %v from %g m: %d headings without an area, one by one %d", n, zone.At, height, zone.Blind, want)
			}
			blind, seen = blind+want, seen+Headings
		}
	}
	if blind < seen/10 || blind > seen*9/10 {
		t.Errorf("%d of %d are out of reach: the set decides nothing", blind, seen)
	}
}
