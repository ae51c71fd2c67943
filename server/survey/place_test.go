package survey

import (
	"errors"
	"math"
	"reflect"
	"sort"
	"strings"
	"testing"

	"pitgate/server/physics/field"
)

// longAcre is a survey of Long Acre about a datum.
func longAcre(datum field.Position) Plan {
	hedge, barn, wire := 2.4, 6.5, 9.0
	at := func(x, y, z float64) field.Local { return field.Local{X: x, Y: y, Z: z} }
	return Plan{Datum: datum, Parts: []Part{
		{Kind: Strip, Name: "06/24", Shape: Line, Points: []field.Local{at(-123, -71, 0), at(123, 71, 1.2)}, Grounded: true},
		{Kind: FlyingArea, Name: "Long Acre", Shape: Area, Points: []field.Local{at(-300, -250, 0), at(320, -250, 0), at(320, 240, 0), at(-300, 260, 0)}},
		{Kind: Hedge, Name: "East hedge", Shape: Line, Points: []field.Local{at(180, -40, 0.8), at(150, 160, 1)}, Height: &hedge, Grounded: true},
		{Kind: Building, Name: "Barn", Shape: Area, Points: []field.Local{at(200, -120, 0), at(220, -120, 0), at(220, -100, 0), at(200, -100, 0)}, Height: &barn},
		{Kind: Wire, Name: "Power line", Shape: Line, Points: []field.Local{at(-280, 230, 0), at(0, 232, 0), at(300, 228, 0)}, Height: &wire},
		{Kind: PilotPlace, Name: "", Shape: Spot, Points: []field.Local{at(0, -30, 0)}},
	}}
}

func TestPlansGoRound(t *testing.T) {
	t.Parallel()
	for place, datum := range map[string]field.Position{
		"home":            {Latitude: radians(52.1), Longitude: radians(-1.2), Height: 84},
		"180th meridian":  {Latitude: radians(-17), Longitude: radians(179.9995)},
		"near the pole":   {Latitude: radians(89.9), Longitude: radians(40)},
		"Greenwich, zero": {},
	} {
		plan := longAcre(datum)
		for name, form := range forms() {
			text, err := form.write(plan)
			if err != nil {
				t.Fatalf("%s, %s: %v", place, name, err)
			}
			features, err := form.read(text)
			if err != nil {
				t.Fatalf("%s, %s: %v\n%s", place, name, err, text)
			}
			back, err := Place(features, &datum)
			if err != nil {
				t.Fatalf("%s, %s: %v\n%s", place, name, err, text)
			}
			compareParts(t, place+", "+name, plan.Parts, back.Parts)
		}
	}
}

// compareParts compares parts by name: a document may put single places first.
func compareParts(t *testing.T, name string, want, got []Part) {
	t.Helper()
	byName := func(parts []Part) []Part {
		sorted := append([]Part(nil), parts...)
		sort.Slice(sorted, func(i, j int) bool { return sorted[i].Name < sorted[j].Name })
		return sorted
	}
	want, got = byName(want), byName(got)
	if len(want) != len(got) {
		t.Fatalf("%s: %d parts, want %d", name, len(got), len(want))
	}
	for i := range want {
		w, g := want[i], got[i]
		if w.Kind != g.Kind || w.Name != g.Name || w.Shape != g.Shape || w.Grounded != g.Grounded || !reflect.DeepEqual(w.Height, g.Height) {
			t.Errorf("%s: got %+v, want %+v", name, g, w)
			continue
		}
		for j := range w.Points {
			a, b := w.Points[j], g.Points[j]
			if off := math.Hypot(a.X-b.X, a.Y-b.Y); off > 0.01 || math.Abs(a.Z-b.Z) > 1e-3 {
				t.Errorf("%s, %s: point %d comes back %g m and %g m high off", name, w.Name, j+1, off, b.Z-a.Z)
			}
		}
	}
}

func TestWrittenGeoJSONKeepsTheStandard(t *testing.T) {
	t.Parallel()
	plan := longAcre(field.Position{Latitude: radians(52.1), Longitude: radians(-1.2), Height: 84})
	text, err := WriteGeoJSON(plan)
	if err != nil {
		t.Fatal(err)
	}
	for _, number := range strings.FieldsFunc(string(text), func(r rune) bool { return !strings.ContainsRune("0123456789.", r) }) {
		if _, decimals, found := strings.Cut(number, "."); found && len(decimals) > 7 {
			t.Errorf("%s has more than 7 decimals", number)
		}
	}
	features, err := ReadGeoJSON(text)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range features {
		if f.Shape != Area {
			continue
		}
		var ring field.Polygon
		for _, p := range f.Places {
			ring = append(ring, field.Point{X: p.Longitude, Y: p.Latitude})
		}
		if ring.SignedArea() <= 0 {
			t.Errorf("%s: outer ring runs clockwise", f.Name)
		}
	}
}

func TestPlacingWithoutADatum(t *testing.T) {
	t.Parallel()
	text, err := WriteGeoJSON(longAcre(field.Position{Latitude: radians(52.1), Longitude: radians(-1.2), Height: 84}))
	if err != nil {
		t.Fatal(err)
	}
	features, err := ReadGeoJSON(text)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := Place(features, nil)
	if err != nil {
		t.Fatal(err)
	}
	if plan.Datum.Height != 84 || math.Abs(degrees(plan.Datum.Latitude)-52.1) > 0.001 {
		t.Errorf("datum %+v", plan.Datum)
	}
	if z := plan.Parts[0].Points[1].Z; math.Abs(z-1.2) > 1e-3 {
		t.Errorf("far end of the strip is %g m over the datum, want 1.2", z)
	}
	features[2].Places[1] = field.Position{Latitude: features[2].Places[1].Longitude, Longitude: features[2].Places[1].Latitude}
	_, err = Place(features, nil)
	var place field.PlaceError
	if !errors.As(err, &place) || !place.Swapped || !strings.HasPrefix(err.Error(), "feature 3 (\"East hedge\"): place 2: ") {
		t.Errorf("swapped: %v", err)
	}
	if _, err := Place(features, &plan.Datum); err == nil || !strings.Contains(err.Error(), "they seem swapped") {
		t.Errorf("swapped, with a datum: %v", err)
	}
	if _, err := Place(nil, nil); err == nil {
		t.Error("places nothing")
	}
}

func TestPlacingOutlines(t *testing.T) {
	t.Parallel()
	clockwise := collection(feature(`"kind":"pits","name":"Pits"`,
		`"type":"Polygon","coordinates":[[[179.9999,-17,5],[179.9999,-16.999,6],[-179.9999,-16.999,7],[-179.9999,-17,8],[-179.9999,-17,8],[179.9999,-17,5]]]`))
	features, err := ReadGeoJSON(clockwise)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := Place(features, nil)
	if err != nil {
		t.Fatal(err)
	}
	pits := &plan.Parts[0]
	if !pits.Repair.Turned || len(pits.Repair.Repeated) != 1 || len(pits.Points) != 4 || pits.Outline().SignedArea() <= 0 {
		t.Errorf("%+v", pits)
	}
	if area := pits.Outline().Area(); math.Abs(area-21.3*110.6) > 10 {
		t.Errorf("area of %g m2 across the 180th meridian", area)
	}
	for i, want := range []float64{0, 3, 2, 1} {
		if got := pits.Points[i].Z; math.Abs(got-want) > 1e-9 {
			t.Errorf("corner %d keeps the ground of another: %g, want %g", i+1, got, want)
		}
	}
	crossing, err := ReadGeoJSON(collection(feature(`"kind":"pits"`, triangle), feature(`"kind":"keep-out","name":"Bow"`,
		`"type":"Polygon","coordinates":[[[-1,52],[-0.999,52.001],[-0.999,52],[-1,52.001],[-1,52]]]`)))
	if err != nil {
		t.Fatal(err)
	}
	var crossed field.CrossingError
	if _, err := Place(crossing, nil); !errors.As(err, &crossed) || !strings.HasPrefix(err.Error(), "feature 2 (\"Bow\"): outline crosses itself: edge 1 meets edge 3") {
		t.Errorf("got %v", err)
	}
}

func TestWritingWhatCannotBe(t *testing.T) {
	t.Parallel()
	good := field.Position{Latitude: radians(52)}
	for expect, plan := range map[string]Plan{
		"datum: datum latitude: outside -90 to 90 degrees":              {Datum: field.Position{Latitude: 3}},
		"feature 1: shape: is not known":                                {Datum: good, Parts: []Part{{}}},
		"feature 1 (\"A\"): points: an area needs 3 places, got 1":      {Datum: good, Parts: []Part{{Name: "A", Shape: Area, Points: make([]field.Local, 1)}}},
		"feature 1: points: point 1 lies beyond the reach of the plane": {Datum: good, Parts: []Part{{Shape: Spot, Points: []field.Local{{X: math.NaN()}}}}},
		"feature 1: kind: \"tower\" is not one of":                      {Datum: good, Parts: []Part{{Kind: "tower", Shape: Spot, Points: make([]field.Local, 1)}}},
	} {
		for name, form := range forms() {
			if _, err := form.write(plan); err == nil || !strings.HasPrefix(err.Error(), expect) {
				t.Errorf("%s: got %v, want %s", name, err, expect)
			}
		}
	}
}

func TestKinds(t *testing.T) {
	t.Parallel()
	standing := 0
	for _, k := range Kinds() {
		if err := k.check(); err != nil || len(shapes[k]) == 0 {
			t.Errorf("%s: %v", k, err)
		}
		if k.Obstacle() {
			standing++
		}
	}
	if standing != 8 || Kind("tower").check() == nil {
		t.Errorf("%d kinds stand up from the ground", standing)
	}
}
