package survey

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pitgate/server/physics/field"
)

// sample reads a file beside published rows.
func sample(t testing.TB, source, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", source, name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// placeOf is the place a row names.
func placeOf(features []Feature, in inputs) field.Position {
	return features[int(in["feature"])-1].Places[int(in["place"])-1]
}

func TestGeoJSONOfTheStandard(t *testing.T) {
	t.Parallel()
	features, err := ReadGeoJSON(sample(t, "rfc7946", "example.json"))
	if err != nil {
		t.Fatal(err)
	}
	feature := func(in inputs) Feature { return features[int(in["feature"])-1] }
	refused := map[string]string{
		"hole.json":         "feature 1: geometry.coordinates: a polygon of one ring is needed, got 2: areas with holes are not known here",
		"antimeridian.json": "feature 1: geometry.type: a MultiPolygon has several shapes: give each as a feature of its own, and an area across the 180th meridian in one piece",
	}
	checkPublished(t, "rfc7946", map[string]method{
		"features":  func(inputs) float64 { return float64(len(features)) },
		"shape":     func(in inputs) float64 { return float64(feature(in).Shape) },
		"places":    func(in inputs) float64 { return float64(len(feature(in).Places)) },
		"longitude": func(in inputs) float64 { return degrees(placeOf(features, in).Longitude) },
		"latitude":  func(in inputs) float64 { return degrees(placeOf(features, in).Latitude) },
		"counter-clockwise": func(in inputs) float64 {
			var g field.Polygon
			for _, p := range feature(in).Places {
				g = append(g, field.Point{X: p.Longitude, Y: p.Latitude})
			}
			return math.Copysign(1, g.SignedArea())
		},
		"refused": func(inputs) float64 {
			for name, expect := range refused {
				if _, err := ReadGeoJSON(sample(t, "rfc7946", name)); err == nil || err.Error() != expect {
					t.Errorf("%s: got %v", name, err)
					return 0
				}
			}
			return 1
		},
	})
}

func TestGPXSamples(t *testing.T) {
	t.Parallel()
	files := map[float64][]Feature{}
	for i, name := range []string{"track.gpx", "waypoints.gpx"} {
		features, err := ReadGPX(sample(t, "gpx_samples", name))
		if err != nil {
			t.Fatal(err)
		}
		files[float64(i+1)] = features
	}
	at := func(in inputs) field.Position { return placeOf(files[in["file"]], in) }
	checkPublished(t, "gpx_samples", map[string]method{
		"features":  func(in inputs) float64 { return float64(len(files[in["file"]])) },
		"places":    func(in inputs) float64 { return float64(len(files[in["file"]][int(in["feature"])-1].Places)) },
		"latitude":  func(in inputs) float64 { return degrees(at(in).Latitude) },
		"longitude": func(in inputs) float64 { return degrees(at(in).Longitude) },
		"ground":    func(in inputs) float64 { return at(in).Height },
		"grounded": func(in inputs) float64 {
			if files[in["file"]][int(in["feature"])-1].Grounded[0] {
				return 1
			}
			return 0
		},
		"allowed": func(in inputs) float64 {
			_, err := ReadGPX(gpx(fmt.Sprintf(`<wpt lat="%g" lon="%g"/>`, in["latitude"], in["longitude"])))
			if err != nil {
				return 0
			}
			return 1
		},
	})
}

// gpx wraps elements in a document.
func gpx(body string) []byte {
	return []byte(`<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test">` + body + `</gpx>`)
}

// collection wraps features in a FeatureCollection.
func collection(features ...string) []byte {
	return []byte(`{"type":"FeatureCollection","features":[` + strings.Join(features, ",") + `]}`)
}

// feature writes a feature.
func feature(properties, geometry string) string {
	return `{"type":"Feature","properties":{` + properties + `},"geometry":{` + geometry + `}}`
}

const (
	onePlace = `"type":"Point","coordinates":[-1,52]`
	triangle = `"type":"Polygon","coordinates":[[[-1,52],[-0.999,52],[-1,52.001],[-1,52]]]`
)

func TestGeoJSONThatIsRefused(t *testing.T) {
	t.Parallel()
	good := feature(`"kind":"mast"`, onePlace)
	cases := map[string][]byte{
		"file is empty":                                                              nil,
		"file is not text in UTF-8":                                                  {0xff, 0xfe},
		"not JSON: unexpected EOF":                                                   []byte(`{"type":`),
		"more text follows the JSON value":                                           append(collection(good), '{'),
		"type: \"Polygon\" is neither":                                               []byte(`{"type":"Polygon","coordinates":[]}`),
		"crs: positions must be":                                                     []byte(`{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:27700"}},"features":[]}`),
		"features: object is given where an array":                                   []byte(`{"type":"FeatureCollection","features":{}}`),
		"feature 2: type: \"Point\" is not a Feature":                                collection(good, `{"type":"Point","coordinates":[0,0]}`),
		"feature 2: geometry: is null":                                               collection(good, `{"type":"Feature","geometry":null}`),
		"feature 1: properties.height: string is":                                    collection(feature(`"height":"tall"`, onePlace)),
		"feature 1: properties.kind: \"tower\" is not":                               collection(feature(`"kind":"tower"`, onePlace)),
		"feature 1 (\"Oak\"): properties.height: -2 m":                               collection(feature(`"kind":"tree","name":"Oak","height":-2`, onePlace)),
		"feature 1: properties.accuracy: 2000 m":                                     collection(feature(`"accuracy":2000`, onePlace)),
		"feature 1: geometry: one place is given where a hedge is a line or an area": collection(feature(`"kind":"hedge"`, onePlace)),
		"feature 1: geometry: a strip is a line of two places, got 3": collection(
			feature(`"kind":"strip"`, `"type":"LineString","coordinates":[[-1,52],[-1,52.001],[-1,52.002]]`)),
		"feature 1: geometry: a line needs 2 places, got 1":  collection(feature(``, `"type":"LineString","coordinates":[[-1,52]]`)),
		"feature 1: geometry.type: \"Circle\" is not Point":  collection(feature(``, `"type":"Circle"`)),
		"feature 1: geometry.coordinates: is not a position": collection(feature(``, `"type":"Point","coordinates":[1]`)),
		"feature 1: geometry.coordinates[1]: is not a position": collection(
			feature(``, `"type":"LineString","coordinates":[[-1,52],["a",52]]`)),
		"feature 1: geometry.coordinates: is not an array": collection(feature(``, `"type":"LineString","coordinates":7`)),
		"feature 1: geometry.coordinates[0]: a ring needs four positions": collection(
			feature(``, `"type":"Polygon","coordinates":[[[-1,52],[-1,52.001],[-1,52]]]`)),
		"feature 1: geometry.coordinates[0]: the ring is not closed": collection(
			feature(``, `"type":"Polygon","coordinates":[[[-1,52],[-0.999,52],[-1,52.001],[-1,52.0001]]]`)),
		"feature 2 (\"Spire\"): geometry.coordinates: latitude 179.9 degrees is beyond 90: latitude and longitude seem swapped": collection(good,
			feature(`"name":"Spire"`, `"type":"Point","coordinates":[-17,179.9]`)),
		"feature 1: geometry.coordinates[0][1]: latitude 52, longitude -190": collection(
			feature(``, `"type":"Polygon","coordinates":[[[-1,52],[-190,52],[-1,52.001],[-1,52]]]`)),
	}
	for expect, data := range cases {
		_, err := ReadGeoJSON(data)
		var e *Error
		if err == nil || !strings.HasPrefix(err.Error(), expect) || !errors.As(err, &e) {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
	long := collection(feature(`"name":"`+strings.Repeat("x", 81)+`"`, onePlace))
	if _, err := ReadGeoJSON(long); err == nil || !strings.Contains(err.Error(), "properties.name: longer than 80 characters") {
		t.Errorf("long name: %v", err)
	}
	if _, err := ReadGeoJSON(make([]byte, MostBytes+1)); err == nil {
		t.Error("reads a file beyond the bound")
	}
	if _, err := ReadGeoJSON([]byte(strings.Repeat(`[`, 1<<20))); err == nil {
		t.Error("reads a million arrays in each other")
	}
}

func TestGPXThatIsRefused(t *testing.T) {
	t.Parallel()
	deep := strings.Repeat("<a>", 40) + strings.Repeat("</a>", 40)
	for expect, data := range map[string][]byte{
		"file is empty":                                   nil,
		"not XML: ":                                       []byte("<gpx"),
		"a document type is not allowed":                  []byte(`<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]><gpx>&x;</gpx>`),
		"not XML: XML syntax error":                       gpx(`<wpt lat="1" lon="1"><name>&x;</name></wpt>`),
		"file is larger":                                  gpx(`<extensions>` + deep + `</extensions>`),
		"gpx: version 1.1 in the name space":              []byte(`<gpx version="1.0" creator="x" xmlns="http://www.topografix.com/GPX/1/0"/>`),
		"feature 1: wpt 1 lat: \"north\" is not a number": gpx(`<wpt lat="north" lon="1"/>`),
		"feature 1: wpt 1 lat: \"52,5\" is not a number: a decimal":  gpx(`<wpt lat="52,5" lon="1"/>`),
		"feature 1: wpt 1 lon: \"\" is not a number":                 gpx(`<wpt lat="52"/>`),
		"feature 1: wpt 1 lat: \"NaN\" is not a number":              gpx(`<wpt lat="NaN" lon="0"/>`),
		"feature 1: wpt 1 ele: \"high\" is not a number":             gpx(`<wpt lat="1" lon="0"><ele>high</ele></wpt>`),
		"feature 1: wpt 1 hdop: -3 is outside":                       gpx(`<wpt lat="1" lon="0"><hdop>-3</hdop></wpt>`),
		"feature 1: wpt 1: latitude 179.9 degrees is beyond 90":      gpx(`<wpt lat="179.9" lon="-17"/>`),
		"feature 2 (\"North\"): rtept: a line needs 2 places, got 1": gpx(`<wpt lat="1" lon="1"/><rte><name>North</name><rtept lat="1" lon="1"/></rte>`),
		"feature 1: wpt: one place is given where a road is a line":  gpx(`<wpt lat="1" lon="1"><type>road</type></wpt>`),
	} {
		if _, err := ReadGPX(data); err == nil || !strings.HasPrefix(err.Error(), expect) {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
}

func TestTablesThatAreRefused(t *testing.T) {
	t.Parallel()
	const head = "kind,name,latitude,longitude,ground,height\n"
	for expect, text := range map[string]string{
		"first row: column \"latitude\" is missing":              "kind,name,longitude\n",
		"first row: column \"colour\" is not known":              "kind,name,latitude,longitude,colour\n",
		"first row: column \"name\" is not known or there twice": "kind,name,name,latitude,longitude\n",
		"not a table: ": head + "mast,M\n",
		"feature 1 (\"M\"): row 2 latitude: \"\" is not a number":                      head + "mast,M,,1,,\n",
		"feature 2 (\"N\"): row 3 longitude: \"x\" is not a number":                    head + "mast,M,52,1,,\nmast,N,52,x,,\n",
		"feature 1 (\"M\"): kind: \"tower\" is not one of":                             head + "tower,M,52,1,,\n",
		"feature 1 (\"H\"): row 3 height: 3 m differs from the 2 m of the rows before": head + "hedge,H,52,1,,2\nhedge,H,52.001,1,,3\n",
		"feature 1 (\"P\"): row 2: an area needs 3 places, got 2":                      head + "pits,P,52,1,,\npits,P,52.001,1,,\n",
		"feature 1 (\"P\"): row 2 latitude: latitude 100 degrees is beyond 90":         head + "pits,P,100,1,,\n",
	} {
		if _, err := ReadCSV([]byte(text)); err == nil || !strings.HasPrefix(err.Error(), expect) {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
}

func TestTablesAreRead(t *testing.T) {
	t.Parallel()
	text := "\ufeffKind;Name;Latitude;Longitude;Ground;Height;Accuracy\r\nhedge;East;52.001;-0.999;80.5;2.4;1.5\r\nhedge;East;52.002;-0.999;81;;\r\n" +
		"tree;Oak;52.003;-0.999;;14;\r\npits;;52.0;-1.0;;;\r\npits;;52.0;-0.9995;;;\r\npits;;52.0005;-1.0;;;\r\npits;;52.0;-1.0;;;\r\n"
	features, err := ReadCSV([]byte(text))
	if err != nil || len(features) != 3 {
		t.Fatalf("%d features: %v", len(features), err)
	}
	hedge, oak, pits := features[0], features[1], features[2]
	if hedge.Shape != Line || *hedge.Height != 2.4 || hedge.Places[1].Height != 81 || !hedge.Grounded[0] || hedge.Accuracy[0] != 1.5 {
		t.Errorf("hedge %+v", hedge)
	}
	if oak.Shape != Spot || oak.Grounded[0] || *oak.Height != 14 || pits.Shape != Area || len(pits.Places) != 3 {
		t.Errorf("oak %+v, pits %+v", oak, pits)
	}
}

func FuzzReadGeoJSON(f *testing.F) {
	f.Add(sample(f, "rfc7946", "example.json"))
	f.Add(sample(f, "rfc7946", "hole.json"))
	f.Add(collection(feature(`"kind":"strip","name":"06/24","height":0,"accuracy":2`, `"type":"LineString","coordinates":[[-1,52,80],[-1,52.001,81]]`)))
	f.Fuzz(func(t *testing.T, data []byte) { goesRound(t, data, ReadGeoJSON) })
}

func FuzzReadGPX(f *testing.F) {
	f.Add(sample(f, "gpx_samples", "track.gpx"))
	f.Add(sample(f, "gpx_samples", "waypoints.gpx"))
	f.Add(gpx(`<rte><name>a</name><type>flying-area</type><rtept lat="52" lon="-1"/><rtept lat="52.001" lon="-1"/><rtept lat="52" lon="-0.999"/></rte>`))
	f.Fuzz(func(t *testing.T, data []byte) { goesRound(t, data, ReadGPX) })
}

func FuzzReadCSV(f *testing.F) {
	f.Add([]byte("kind,name,latitude,longitude\nmast,M,52,-1\n"))
	f.Add([]byte("kind;name;latitude;longitude;ground\npits;\"a;b\";52;-1;3\npits;\"a;b\";52.001;-1;\npits;\"a;b\";52.001;-1.001;\n"))
	f.Fuzz(func(t *testing.T, data []byte) { goesRound(t, data, ReadCSV) })
}

// goesRound reads what may be anything; what can be read and placed must be writable in every form and readable again.
func goesRound(t *testing.T, data []byte, read func([]byte) ([]Feature, error)) {
	t.Helper()
	features, err := read(data)
	if err != nil {
		return
	}
	plan, err := Place(features, nil)
	if err != nil {
		return
	}
	for name, form := range forms() {
		text, err := form.write(plan)
		if err != nil {
			t.Fatalf("%s of what was read: %v", name, err)
		}
		if _, err := form.read(text); err != nil {
			t.Fatalf("%s written cannot be read: %v\n%s", name, err, text)
		}
	}
}

// form is a way to write and read.
type form struct {
	write func(Plan) ([]byte, error)
	read  func([]byte) ([]Feature, error)
}

func forms() map[string]form {
	return map[string]form{"GeoJSON": {WriteGeoJSON, ReadGeoJSON}, "GPX": {WriteGPX, ReadGPX}, "table": {WriteCSV, ReadCSV}}
}
