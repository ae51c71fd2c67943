package survey

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"pitgate/server/physics/field"
)

// Names of GPX 1.1 and of what pitgate adds under extensions.
const (
	gpxSpace       = "http://www.topografix.com/GPX/1/1"
	extensionSpace = "urn:pitgate:survey:1"
	deepest        = 24 // of elements in elements
	// metersPerDilution turns a horizontal dilution of precision into one standard deviation, m. Common practice for open sky.
	metersPerDilution = 5.0
)

// gpxFile is a GPX document as far as it is read.
type gpxFile struct {
	XMLName xml.Name
	Version string     `xml:"version,attr"`
	Points  []gpxPoint `xml:"wpt"`
	Routes  []gpxRoute `xml:"rte"`
	Tracks  []gpxTrack `xml:"trk"`
}

type gpxPoint struct {
	Latitude  string   `xml:"lat,attr"`
	Longitude string   `xml:"lon,attr"`
	Elevation string   `xml:"ele"`
	Name      string   `xml:"name"`
	Type      string   `xml:"type"`
	Dilution  string   `xml:"hdop"`
	Extra     gpxExtra `xml:"extensions"`
}

// gpxExtra holds what pitgate adds.
type gpxExtra struct {
	Height   string `xml:"urn:pitgate:survey:1 height"`
	Accuracy string `xml:"urn:pitgate:survey:1 accuracy"`
}

type gpxRoute struct {
	Name   string     `xml:"name"`
	Type   string     `xml:"type"`
	Extra  gpxExtra   `xml:"extensions"`
	Points []gpxPoint `xml:"rtept"`
}

type gpxTrack struct {
	Name     string   `xml:"name"`
	Type     string   `xml:"type"`
	Extra    gpxExtra `xml:"extensions"`
	Segments []struct {
		Points []gpxPoint `xml:"trkpt"`
	} `xml:"trkseg"`
}

// ReadGPX reads a GPX 1.1 document: waypoints become single places, routes lines, every segment of a track a line; routes and tracks whose type is the kind
// of an area, or whose last place is the first again, become areas. The element type gives the kind where it is one, ele the height of the ground, hdop
// the accuracy (5 m for each unit, common practice), and under extensions pitgate's own height (m over the ground) and accuracy (m).
//
// Features count waypoints first, then routes, then segments of tracks. Errors are of type *Error and name feature and element. Documents with a
// document type or entities of their own are refused.
func ReadGPX(data []byte) ([]Feature, error) {
	if err := bounded(data); err != nil {
		return nil, &Error{Err: err}
	}
	if err := scanXML(data); err != nil {
		return nil, err
	}
	var file gpxFile
	if err := xml.Unmarshal(data, &file); err != nil {
		return nil, &Error{Err: fmt.Errorf("not XML: %w", err)}
	}
	if file.XMLName.Local != "gpx" || file.XMLName.Space != gpxSpace || file.Version != "1.1" {
		return nil, wrong("gpx", "version 1.1 in the name space %s is needed, got %q version %q", gpxSpace, clip(file.XMLName.Local), clip(file.Version))
	}
	return file.features()
}

// scanXML refuses what has no business in a survey: document types, deep nesting, too many elements.
func scanXML(data []byte) error {
	decoder := xml.NewDecoder(bytes.NewReader(data))
	depth, elements := 0, 0
	for {
		token, err := decoder.RawToken()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return &Error{Err: fmt.Errorf("not XML: %w", err)}
		}
		switch token.(type) {
		case xml.Directive:
			return &Error{Err: errors.New("a document type is not allowed")}
		case xml.StartElement:
			depth++
			elements++
		case xml.EndElement:
			depth--
		}
		if depth > deepest || elements > 12*MostPlaces {
			return &Error{Err: errTooLarge}
		}
	}
}

// features turns a document into features.
func (g *gpxFile) features() ([]Feature, error) {
	var r gpxReader
	for i := range g.Points {
		p := &g.Points[i]
		r.read(Spot, p.Name, p.Type, p.Extra, "wpt", g.Points[i:i+1])
	}
	for i := range g.Routes {
		t := &g.Routes[i]
		r.read(Line, t.Name, t.Type, t.Extra, "rtept", t.Points)
	}
	for i := range g.Tracks {
		t := &g.Tracks[i]
		for j := range t.Segments {
			r.read(Line, t.Name, t.Type, t.Extra, "trkpt", t.Segments[j].Points)
		}
	}
	return r.features, r.err
}

// gpxReader gathers features up to the first error.
type gpxReader struct {
	features []Feature
	places   int
	err      error
}

// read adds a feature.
func (r *gpxReader) read(shape Shape, name, kind string, extra gpxExtra, element string, points []gpxPoint) {
	if r.err != nil {
		return
	}
	f := Feature{Shape: shape, Name: strings.TrimSpace(name), Kind: gpxKind(kind)}
	if r.places += len(points); r.places > MostPlaces || len(r.features) >= MostFeatures {
		r.err = &Error{Err: errTooLarge}
		return
	}
	err := f.readGPX(extra, element, points)
	if err != nil {
		r.err = inFeature(err, len(r.features)+1, f.Name)
		return
	}
	r.features = append(r.features, f)
}

// gpxKind returns the kind a type names, none for the types of other programs.
func gpxKind(text string) Kind {
	k := Kind(strings.TrimSpace(text))
	if k.check() != nil {
		return ""
	}
	return k
}

// readGPX fills in a feature.
func (f *Feature) readGPX(extra gpxExtra, element string, points []gpxPoint) error {
	if extra.Height != "" {
		height, err := number("extensions.height", extra.Height)
		if err != nil {
			return err
		}
		f.Height = &height
	}
	for i := range points {
		if err := f.readGPXPoint(fmt.Sprintf("%s %d", element, i+1), &points[i]); err != nil {
			return err
		}
	}
	if f.Shape == Line {
		closed := len(f.Places) > 3 && f.Kind != Strip && f.open()
		if closed && f.Kind == "" || f.Kind.area() {
			f.Shape = Area
		} else if closed {
			f.closeIfAllowed()
		}
	}
	return f.check(element)
}

// closeIfAllowed makes an area of a closed line whose kind may be one, and a line again of one whose kind may not.
func (f *Feature) closeIfAllowed() {
	for _, s := range shapes[f.Kind] {
		if s == Area {
			f.Shape = Area
			return
		}
	}
	f.add(f.Places[0], f.Grounded[0], f.Accuracy[0])
}

// readGPXPoint adds one place.
func (f *Feature) readGPXPoint(member string, p *gpxPoint) error {
	latitude, err := number(member+" lat", p.Latitude)
	if err != nil {
		return err
	}
	longitude, err := number(member+" lon", p.Longitude)
	if err != nil {
		return err
	}
	height, grounded := 0.0, strings.TrimSpace(p.Elevation) != ""
	if grounded {
		if height, err = number(member+" ele", p.Elevation); err != nil {
			return err
		}
	}
	accuracy, err := gpxAccuracy(member, p)
	if err != nil {
		return err
	}
	place, err := position(latitude, longitude, height)
	if err != nil {
		return &Error{Member: member, Err: err}
	}
	f.add(place, grounded, accuracy)
	return nil
}

// gpxAccuracy returns the accuracy of a place, zero where it is not given.
func gpxAccuracy(member string, p *gpxPoint) (float64, error) {
	text, scale, name := p.Extra.Accuracy, 1.0, " extensions.accuracy"
	if text == "" {
		text, scale, name = p.Dilution, metersPerDilution, " hdop"
	}
	if strings.TrimSpace(text) == "" {
		return 0, nil
	}
	value, err := number(member+name, text)
	if err == nil && !(value >= 0 && value*scale <= 1000) {
		err = wrong(member+name, "%g is outside 0 to %g", value, 1000/scale)
	}
	return value * scale, err
}

// number reads a decimal number.
func number(member, text string) (float64, error) {
	text = strings.TrimSpace(text)
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || value-value != 0 || strings.ContainsAny(text, "xX_") {
		hint := ""
		if strings.Contains(text, ",") {
			hint = ": a decimal point is needed, not a comma"
		}
		return 0, wrong(member, "%q is not a number%s", clip(text), hint)
	}
	return value, nil
}

// Fixes returns the places of a feature as fixes of a walk.
func (f *Feature) Fixes() []Fix {
	fixes := make([]Fix, len(f.Places))
	for i, p := range f.Places {
		fixes[i] = Fix{Position: p, Accuracy: f.Accuracy[i]}
	}
	return fixes
}

// at returns the position of a point of a plan, with the height of its ground.
func (p *Plan) at(datum field.Datum, l field.Local) field.Position {
	height := l.Z
	l.Z = 0
	place := datum.Position(l)
	place.Height = p.Datum.Height + height
	return place
}
