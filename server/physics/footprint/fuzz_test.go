package footprint

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// finite reports whether all values are numbers.
func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v - v) {
			return false
		}
	}
	return true
}

func FuzzLoss(f *testing.F) {
	f.Add(1, 12.0, 0.65, 0.035, 0.07, 0.5, 1.0, 30.0, 50.0, 0.2, 0.4, 6.0, 2.0, 0.03)
	f.Add(4, 0.5, 2.0, 0.2, 0.0, 0.0, 0.0, 60.0, 300.0, 1.5, -1.4, 30.0, -2.0, 1.0)
	f.Add(5, 20.0, 0.2, 0.0, 0.5, 1.0, 3.0, 0.5, 0.0, -1.5, 0.0, 0.0, 0.0, 0.0)
	f.Add(0, 25.0, 1.0, 0.02, 0.05, 0.0, 0.0, 20.0, 1000.0, 0.0, 0.0, 5.0, 1.0, 0.1)
	f.Fuzz(func(t *testing.T, action int, mass, area, drag, induced, neutral, delay, speed, height, climb, bank, wind, from, roughness float64) {
		model := madeUp()
		model.Mass, model.Area, model.CD0, model.InducedFactor, model.NeutralLift = mass, area, drag, induced, neutral
		loss := Loss{
			Action: Action(action), Model: model, Delay: delay, Density: 1.2,
			Wind: Wind{Speed: wind, From: from, Profile: weather.Profile{RoughnessLength: roughness}},
		}
		impact, err := loss.From(Release{Height: height, Speed: speed, Climb: climb, Bank: bank})
		if err != nil {
			return
		}
		if !finite(impact.Place.X, impact.Place.Y, impact.Time, impact.Speed, impact.Angle, impact.Energy) || impact.Time < 0 || impact.Energy < 0 {
			t.Errorf("%+v", impact)
		}
		if impact.Landed && impact.Angle < -1e-6 {
			t.Errorf("lands upward: %+v", impact)
		}
	})
}

func FuzzOutline(f *testing.F) {
	f.Add([]byte{0, 0, 10, 0, 10, 10, 0, 10}, 0.5)
	f.Add([]byte{7, 7, 7, 7, 7, 7}, 0.95)
	f.Add([]byte{1, 1, 2, 2, 3, 3, 250, 250}, 1.0)
	f.Fuzz(func(t *testing.T, places []byte, share float64) {
		cloud := Cloud{width: 1, mass: 1}
		for i := 1; i < len(places) && i < 400; i += 2 {
			cloud.Impacts = append(cloud.Impacts, Impact{Place: field.Point{X: float64(places[i-1]), Y: 3 * float64(places[i])}})
		}
		outline, err := cloud.Outline(share)
		if err != nil {
			return
		}
		if err := outline.Check(); err != nil {
			t.Fatal(err)
		}
		if inside := cloud.ShareInside(outline); inside < share-1e-9 {
			t.Errorf("holds %g of %g", inside, share)
		}
	})
}

func FuzzStrike(f *testing.F) {
	f.Add(2.0, 15.0, 60.0, 0.6)
	f.Add(0.5, 0.001, 300.0, 0.0)
	f.Add(60.0, 1e4, 0.0, 1.6)
	f.Fuzz(func(t *testing.T, width, mass, speed, angle float64) {
		area, err := Strike{width, mass, speed, angle}.CriticalArea(AnnexF().Obstructed())
		if err != nil {
			return
		}
		if !finite(area.Total, area.GlideLength, area.SlideLength, area.SlideTime) || area.Total <= 0 || area.Slide < 0 || area.SlideLength < 0 {
			t.Errorf("%+v", area)
		}
	})
}

func FuzzDecoupled(f *testing.F) {
	f.Add(15.0, 0.2, 100.0, 60.0)
	f.Add(1e-3, 1e4, 1e4, 1e3)
	f.Add(1e6, 1e-6, 1e4, 1e3)
	f.Fuzz(func(t *testing.T, mass, area, height, speed float64) {
		fall, err := DecoupledFrom(mass, area, 1.225, standardGravity, height, speed)
		if err != nil {
			return
		}
		if !finite(fall.Distance, fall.Speed, fall.Angle, fall.Time) || fall.Distance < 0 || fall.Time < 0 {
			t.Errorf("%+v", fall)
		}
	})
}

func FuzzAlong(f *testing.F) {
	f.Add(0.0, 0.0, 100.0, 50.0, 30.0, 20.0, 5.0, 1.0)
	f.Add(0.0, 0.0, 0.0, 1e-4, 10.0, 300.0, 59.0, 0.0)
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, height, speed, wind, from float64) {
		path := []Waypoint{{field.Point{X: x1, Y: y1}, height, speed}, {field.Point{X: x2, Y: y2}, height / 2, speed}, {field.Point{X: x1, Y: y1}, height, speed}}
		states, err := Along(path, Wind{Speed: wind, From: from}, 1)
		if err != nil {
			return
		}
		for _, s := range states {
			if err := s.Check(); err != nil {
				t.Errorf("%+v: %v", s, err)
			}
		}
	})
}
