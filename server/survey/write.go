package survey

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"strconv"

	"pitgate/server/physics/field"
)

// decimals of degrees in what is written: 7 are a centimetre (RFC 7946, section 11.2, asks for no more than are needed).
const decimals = 7

// geoOut is a GeoJSON object to be written.
type geoOut struct {
	Type       string         `json:"type"`
	Features   []geoOut       `json:"features,omitempty"`
	Properties map[string]any `json:"properties,omitempty"`
	Geometry   *geoGeometry   `json:"geometry,omitempty"`
}

type geoGeometry struct {
	Type        string `json:"type"`
	Coordinates any    `json:"coordinates"`
}

// decimal is a number written with at most so many decimals.
type decimal struct {
	value float64
	most  int
}

// MarshalJSON writes the number without an exponent.
func (d decimal) MarshalJSON() ([]byte, error) { return []byte(d.String()), nil }

// String writes the number without an exponent and without zeros at its end.
func (d decimal) String() string {
	text := strconv.FormatFloat(d.value, 'f', d.most, 64)
	if d.most > 0 {
		text = string(bytes.TrimRight([]byte(text), "0"))
		text = string(bytes.TrimRight([]byte(text), "."))
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// WriteGeoJSON writes a plan as a FeatureCollection of RFC 7946: outer rings counter-clockwise and closed, positions with 7 decimals (5 mm), heights of the
// ground where they are known, and the properties kind, name and height. Errors name what is impossible.
func WriteGeoJSON(plan Plan) ([]byte, error) {
	datum, err := field.NewDatum(plan.Datum)
	if err != nil {
		return nil, &Error{Member: "datum", Err: err}
	}
	out := geoOut{Type: "FeatureCollection", Features: []geoOut{}}
	for i := range plan.Parts {
		part := &plan.Parts[i]
		if err := part.writable(); err != nil {
			return nil, inFeature(err, i+1, part.Name)
		}
		out.Features = append(out.Features, plan.geoFeature(datum, part))
	}
	data, err := json.MarshalIndent(out, "", "  ")
	return append(data, '\n'), err
}

// writable returns an error when a part has not the places its shape needs, or one that is not a number.
func (p *Part) writable() error {
	f := Feature{Kind: p.Kind, Name: p.Name, Shape: p.Shape, Height: p.Height, Places: make([]field.Position, len(p.Points))}
	if p.Shape < Spot || p.Shape > Area {
		return wrong("shape", "is not known")
	}
	if err := f.check("points"); err != nil {
		return err
	}
	for i, l := range p.Points {
		if !(l.X*l.X+l.Y*l.Y <= field.PlaceReach*field.PlaceReach && l.Z*l.Z <= 1e8) {
			return wrong("points", "point %d lies beyond the reach of the plane", i+1)
		}
	}
	return nil
}

// geoFeature turns a part into a feature.
func (p *Plan) geoFeature(datum field.Datum, part *Part) geoOut {
	positions := make([][]decimal, 0, len(part.Points)+1)
	for _, l := range part.Points {
		positions = append(positions, p.geoPosition(datum, part, l))
	}
	out := geoOut{Type: "Feature", Properties: map[string]any{"kind": part.Kind, "name": part.Name}, Geometry: &geoGeometry{}}
	if part.Height != nil {
		out.Properties["height"] = *part.Height
	}
	switch part.Shape {
	case Spot:
		out.Geometry.Type, out.Geometry.Coordinates = "Point", positions[0]
	case Line:
		out.Geometry.Type, out.Geometry.Coordinates = "LineString", positions
	case Area:
		out.Geometry.Type, out.Geometry.Coordinates = "Polygon", [][][]decimal{append(positions, positions[0])}
	}
	return out
}

// geoPosition turns a point into longitude, latitude and, where the ground is known, height.
func (p *Plan) geoPosition(datum field.Datum, part *Part, l field.Local) []decimal {
	at := p.at(datum, l)
	position := []decimal{{degrees(at.Longitude), decimals}, {degrees(at.Latitude), decimals}}
	if part.Grounded {
		position = append(position, decimal{at.Height, 3})
	}
	return position
}

// gpxOut is a GPX document to be written, elements in the order of its schema.
type gpxOut struct {
	XMLName xml.Name      `xml:"gpx"`
	Space   string        `xml:"xmlns,attr"`
	Own     string        `xml:"xmlns:pitgate,attr"`
	Version string        `xml:"version,attr"`
	Creator string        `xml:"creator,attr"`
	Points  []gpxOutPoint `xml:"wpt"`
	Routes  []gpxOutRoute `xml:"rte"`
}

type gpxOutPoint struct {
	Latitude  string       `xml:"lat,attr"`
	Longitude string       `xml:"lon,attr"`
	Elevation string       `xml:"ele,omitempty"`
	Name      string       `xml:"name,omitempty"`
	Type      Kind         `xml:"type,omitempty"`
	Extra     *gpxOutExtra `xml:"extensions"`
}

type gpxOutExtra struct {
	Height string `xml:"pitgate:height"`
}

type gpxOutRoute struct {
	Name   string        `xml:"name,omitempty"`
	Type   Kind          `xml:"type,omitempty"`
	Extra  *gpxOutExtra  `xml:"extensions"`
	Points []gpxOutPoint `xml:"rtept"`
}

// WriteGPX writes a plan as GPX 1.1: single places as waypoints, lines and areas as routes, those of areas closed. The kind is written as type, the
// height over the ground under extensions. Waypoints come first, so parts may change their order. Errors name what is impossible.
func WriteGPX(plan Plan) ([]byte, error) {
	datum, err := field.NewDatum(plan.Datum)
	if err != nil {
		return nil, &Error{Member: "datum", Err: err}
	}
	out := gpxOut{Space: gpxSpace, Own: extensionSpace, Version: "1.1", Creator: "pitgate"}
	for i := range plan.Parts {
		part := &plan.Parts[i]
		if err := part.writable(); err != nil {
			return nil, inFeature(err, i+1, part.Name)
		}
		out.add(&plan, datum, part)
	}
	data, err := xml.MarshalIndent(out, "", "  ")
	return append([]byte(xml.Header), append(data, '\n')...), err
}

// add adds a part to a document.
func (g *gpxOut) add(plan *Plan, datum field.Datum, part *Part) {
	var extra *gpxOutExtra
	if part.Height != nil {
		extra = &gpxOutExtra{decimal{*part.Height, 3}.String()}
	}
	var points []gpxOutPoint
	for _, l := range part.Points {
		at := plan.at(datum, l)
		p := gpxOutPoint{Latitude: decimal{degrees(at.Latitude), decimals}.String(), Longitude: decimal{degrees(at.Longitude), decimals}.String()}
		if part.Grounded {
			p.Elevation = decimal{at.Height, 3}.String()
		}
		points = append(points, p)
	}
	if part.Shape == Spot {
		points[0].Name, points[0].Type, points[0].Extra = part.Name, part.Kind, extra
		g.Points = append(g.Points, points[0])
		return
	}
	if part.Shape == Area {
		points = append(points, points[0])
	}
	g.Routes = append(g.Routes, gpxOutRoute{part.Name, part.Kind, extra, points})
}
