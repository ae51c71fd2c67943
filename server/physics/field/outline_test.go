package field

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"
)

// counterClockwise is the outline every way of drawing it must come to.
var counterClockwise = Polygon{{0, 0}, {400, 0}, {400, 150}, {200, 150}, {200, 300}, {0, 300}}

func TestEveryWayOfDrawingComesToOneForm(t *testing.T) {
	t.Parallel()
	clockwise := Polygon{{0, 0}, {0, 300}, {200, 300}, {200, 150}, {400, 150}, {400, 0}}
	cases := []struct {
		name   string
		given  Polygon
		repair Repair
		said   string
	}{
		{"as it should be", counterClockwise, Repair{}, ""},
		{"clockwise", clockwise, Repair{Turned: true}, "corners ran clockwise: order turned round"},
		{"closed", append(counterClockwise[:6:6], Point{}), Repair{Closing: []int{7}}, "the first corner is repeated at the end: 7 dropped"},
		{"doubly closed", append(counterClockwise[:6:6], Point{}, Point{}), Repair{Closing: []int{7}, Repeated: []int{8}},
			"the first corner is repeated at the end: 7 dropped; corner repeats the one before it: 8 dropped"},
		{"repeated corner", Polygon{{0, 0}, {400, 0}, {400, 0}, {400, 0.0005}, {400, 150}, {200, 150}, {200, 300}, {0, 300}},
			Repair{Repeated: []int{3, 4}}, "corner repeats the one before it: 3, 4 dropped"},
		{"clockwise and closed", append(clockwise[:6:6], Point{}), Repair{Closing: []int{7}, Turned: true},
			"the first corner is repeated at the end: 7 dropped; corners ran clockwise: order turned round"},
	}
	for _, c := range cases {
		got, repair, err := c.given.Normal()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !reflect.DeepEqual(got, counterClockwise) {
			t.Errorf("%s: comes to %v", c.name, got)
		}
		if !reflect.DeepEqual(repair, c.repair) || repair.String() != c.said || repair.Any() != (c.said != "") {
			t.Errorf("%s: repaired %+v, %q", c.name, repair, repair)
		}
		if again, second, err := got.Normal(); err != nil || second.Any() || !reflect.DeepEqual(again, got) {
			t.Errorf("%s: the normal form has another: %v %+v %v", c.name, again, second, err)
		}
	}
}

func TestOutlinesThatCannotBe(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name   string
		given  Polygon
		expect string
	}{
		{"none", nil, "outline has 0 different corners, needs three"},
		{"two corners, closed", Polygon{{0, 0}, {1, 0}, {0, 0}}, "outline has 2 different corners, needs three"},
		{"one place", Polygon{{3, 3}, {3, 3}, {3, 3}, {3, 3}}, "outline has 1 different corners, needs three"},
		{"not a number", Polygon{{0, 0}, {1, 0}, {1, math.Inf(1)}}, "outline corner 3 is not a number"},
		{"crossing", Polygon{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, "outline crosses itself: edge 1 meets edge 3 at (5.00, 5.00)"},
		{"crossing after a repeated corner", Polygon{{0, 0}, {0, 0}, {10, 10}, {10, 0}, {0, 10}}, "outline crosses itself: edge 1 meets edge 4 at (5.00, 5.00)"},
		{"a line there and back", Polygon{{0, 0}, {10, 0}, {20, 0}}, "outline crosses itself: edge 1 meets edge 3 at (0.00, 0.00)"},
	}
	for _, c := range cases {
		if got, _, err := c.given.Normal(); err == nil || err.Error() != c.expect || got != nil {
			t.Errorf("%s: got %v, %v", c.name, got, err)
		}
	}
	var crossing CrossingError
	if _, _, err := (Polygon{{0, 0}, {10, 10}, {10, 0}, {0, 10}}).Normal(); !errors.As(err, &crossing) || crossing.At != (Point{5, 5}) {
		t.Errorf("a crossing is not told as one: %v", err)
	}
}

// at is a position in degrees.
func at(latitude, longitude float64) Position {
	return Position{Latitude: degrees(latitude), Longitude: degrees(longitude)}
}

// square is an outline of about 200 m about a position, clockwise, in degrees.
func square(latitude, longitude float64) []Position {
	const d = 0.001
	wide := d / math.Cos(degrees(latitude))
	east := longitude + wide
	if east > 180 {
		east -= 360
	}
	west := longitude - wide
	if west < -180 {
		west += 360
	}
	return []Position{at(latitude-d, west), at(latitude+d, west), at(latitude+d, east), at(latitude-d, east)}
}

func TestOutlinesFromPositions(t *testing.T) {
	t.Parallel()
	for name, middle := range map[string]Position{
		"home": at(52, -1), "180th meridian": at(-17, 179.9995), "west of it": at(-17, -179.9999), "equator and Greenwich": at(0, 0),
	} {
		corners := square(middle.Latitude*180/math.Pi, middle.Longitude*180/math.Pi)
		found, err := Middle(corners)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		datum, err := NewDatum(found)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		outline, repair, err := datum.Outline(corners)
		if err != nil || !repair.Turned {
			t.Errorf("%s: %v, %+v", name, err, repair)
			continue
		}
		if side := math.Sqrt(outline.Area()); math.Abs(side-222) > 1.5 {
			t.Errorf("%s: square of %g m, drawn with 222", name, side)
		}
		if c := outline.Centroid(); c.Length() > 0.01 {
			t.Errorf("%s: middle is %g m off", name, c.Length())
		}
	}
}

func TestPositionsThatCannotBe(t *testing.T) {
	t.Parallel()
	datum, err := NewDatum(at(52, -1))
	if err != nil {
		t.Fatal(err)
	}
	far, err := NewDatum(at(-17, 179.999))
	if err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		name    string
		datum   Datum
		change  func([]Position)
		middle  Position
		swapped bool
		expect  string
	}{
		{"swapped, both possible", datum, func(p []Position) { p[1] = Position{Latitude: p[1].Longitude, Longitude: p[1].Latitude} }, at(52, -1), true,
			"corner 2: 7218 km from the datum as given and 0.2 km from it with latitude and longitude exchanged: they seem swapped"},
		{"swapped, latitude beyond 90", far, func(p []Position) { p[2] = Position{Latitude: p[2].Longitude, Longitude: p[2].Latitude} }, at(-17, 179.99), true,
			"corner 3: latitude 179.991 degrees is beyond 90: latitude and longitude seem swapped"},
		{"elsewhere", datum, func(p []Position) { p[0].Latitude -= degrees(1) }, at(52, -1), false, "corner 1: 111 km from the datum, more than 20 km"},
		{"off the earth", datum, func(p []Position) { p[3].Longitude = degrees(400) }, at(52, -1), false, "corner 4: latitude 51.999, longitude 400 degrees"},
		{"not a number", datum, func(p []Position) { p[3].Latitude = math.NaN() }, at(52, -1), false, "corner 4: latitude NaN"},
	}
	for _, c := range cases {
		corners := square(c.middle.Latitude*180/math.Pi, c.middle.Longitude*180/math.Pi)
		c.change(corners)
		_, _, err := c.datum.Outline(corners)
		var place PlaceError
		if !errors.As(err, &place) || place.Swapped != c.swapped || !strings.HasPrefix(err.Error(), c.expect) {
			t.Errorf("%s: got %v", c.name, err)
		}
	}
	if _, err := Middle(nil); err == nil {
		t.Error("nothing has a middle")
	}
	if _, err := Middle([]Position{at(0, 0), at(0, 180)}); err == nil {
		t.Error("opposite places have a middle")
	}
}

func FuzzOutline(f *testing.F) {
	f.Add(52.0, -1.0, 52.001, -1.0, 52.0, -0.999, 52.001, -1.0)
	f.Add(0.0, 180.0, 0.0, -180.0, 0.001, 180.0, 0.001, -179.999)
	f.Add(95.0, 3.0, math.NaN(), 0.0, 1e300, 0.0, 0.0, -1e300)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g, h, i float64) {
		corners := []Position{at(a, b), at(c, d), at(e, g), at(h, i)}
		middle, err := Middle(corners)
		if err != nil {
			return
		}
		datum, err := NewDatum(middle)
		if err != nil {
			t.Fatalf("middle %+v is no datum: %v", middle, err)
		}
		outline, _, err := datum.Outline(corners)
		if err == nil && (outline.SignedArea() <= 0 || outline.Check() != nil) {
			t.Errorf("normal form %v: area %g, %v", outline, outline.SignedArea(), outline.Check())
		}
	})
}
