package reach

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// TestOutlooksAreThoseOfTheSurvey wants the points told apart as Survey does, and its ways to touch down where Touchdowns and the landing straight on say.
// A way just beside a full circle more or less jumps while its drift is corrected; Survey may then take what an answer held to the height at hand gives up,
// in fewer than one point of a hundred.
func TestOutlooksAreThoseOfTheSurvey(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewSource(5))
	reached, apart, count := 0, 0, 0
	for range 12 {
		wind := ProfileWind(r.Float64()*9, r.Float64()*2*math.Pi, weather.NewProfile(weather.OpenGrass, 10))
		m := prepare(t, sport(), wind, longAcre(), hedges())
		points := make([]Point, 60)
		for i := range points {
			points[i] = Point{
				At: field.Point{X: r.Float64()*900 - 400, Y: r.Float64()*800 - 300}, Height: 80 * r.Float64(), Heading: 6 * r.Float64(), Airspeed: 18 + 15*r.Float64(),
			}
		}
		survey, places := m.Survey(points), m.Touchdowns()
		for i, look := range m.Outlooks(points) {
			result := &survey.Results[i]
			if look.Reached != result.Reachable {
				apart++
			}
			count++
			if !look.Reached || !result.Reachable {
				continue
			}
			reached++
			at, _ := m.Touchdown(points[i], *result)
			if !slices.Contains(places, at) && (!look.Straight || look.At != at) {
				t.Errorf("%+v: touches down at %v, which is not said", points[i], at)
			}
		}
	}
	if apart > count/100 {
		t.Errorf("%d of %d points are told apart otherwise than by the survey", apart, count)
	}
	if reached < count/10 || reached > count*9/10 {
		t.Errorf("%d of %d are reached: the set decides nothing", reached, count)
	}
}
