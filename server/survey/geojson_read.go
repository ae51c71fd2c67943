package survey

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// geoObject is a GeoJSON object as far as it is read: a FeatureCollection, a Feature or a geometry.
type geoObject struct {
	Type        string          `json:"type"`
	Features    []geoObject     `json:"features"`
	Geometry    *geoObject      `json:"geometry"`
	Coordinates json.RawMessage `json:"coordinates"`
	Properties  json.RawMessage `json:"properties"`
	CRS         json.RawMessage `json:"crs"`
}

// ReadGeoJSON reads a FeatureCollection or a Feature of RFC 7946. Its properties kind, name, height (m over the ground) and accuracy (m) are read, others are
// left alone. Geometries are Point, LineString and Polygon without holes; a third coordinate is the height of the ground, of which only differences
// count. Rings may run either way
// round, must be closed, and may cross the 180th meridian in one piece.
//
// Errors are of type *Error and name feature and member; latitude and longitude that seem swapped are said to be (field.PlaceError).
func ReadGeoJSON(data []byte) ([]Feature, error) {
	if err := bounded(data); err != nil {
		return nil, &Error{Err: err}
	}
	root, err := decodeGeoJSON(data)
	if err != nil {
		return nil, err
	}
	if len(root.CRS) > 0 && !strings.Contains(string(root.CRS), "CRS84") {
		return nil, wrong("crs", "positions must be longitude and latitude of WGS-84, without another reference system")
	}
	objects := root.Features
	switch root.Type {
	case "FeatureCollection":
	case "Feature":
		objects = []geoObject{*root}
	default:
		return nil, wrong("type", "%q is neither a FeatureCollection nor a Feature", clip(root.Type))
	}
	return readObjects(objects)
}

// decodeGeoJSON decodes one JSON value and nothing after it.
func decodeGeoJSON(data []byte) (*geoObject, error) {
	decoder := json.NewDecoder(bytes.NewReader(data))
	root := &geoObject{}
	if err := decoder.Decode(root); err != nil {
		return nil, jsonError(err)
	}
	if _, err := decoder.Token(); !errors.Is(err, io.EOF) {
		return nil, &Error{Err: errors.New("more text follows the JSON value")}
	}
	return root, nil
}

// jsonError words an error of the JSON decoder.
func jsonError(err error) error {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return wrong(kind.Field, "%s is given where %s belongs", kind.Value, jsonName(kind.Type.Kind().String()))
	}
	return &Error{Err: fmt.Errorf("not JSON: %w", err)}
}

// jsonName names a Go kind as JSON does.
func jsonName(kind string) string {
	switch kind {
	case "slice":
		return "an array"
	case "struct", "map":
		return "an object"
	case "float64":
		return "a number"
	}
	return "a " + kind
}

// readObjects reads features.
func readObjects(objects []geoObject) ([]Feature, error) {
	if len(objects) > MostFeatures {
		return nil, &Error{Err: errTooLarge}
	}
	features, places := make([]Feature, 0, len(objects)), 0
	for i := range objects {
		f, err := readObject(&objects[i])
		if err != nil {
			return nil, inFeature(err, i+1, f.Name)
		}
		if places += len(f.Places); places > MostPlaces {
			return nil, &Error{Err: errTooLarge}
		}
		features = append(features, f)
	}
	return features, nil
}

// geoProperties are the properties that are read.
type geoProperties struct {
	Kind     *string  `json:"kind"`
	Name     *string  `json:"name"`
	Height   *float64 `json:"height"`
	Accuracy *float64 `json:"accuracy"`
}

// readObject reads one feature; its name is filled in also beside an error.
func readObject(o *geoObject) (Feature, error) {
	var f Feature
	if o.Type != "Feature" {
		return f, wrong("type", "%q is not a Feature", clip(o.Type))
	}
	var properties geoProperties
	if len(o.Properties) > 0 {
		if err := json.Unmarshal(o.Properties, &properties); err != nil {
			err = jsonError(err)
			err.(*Error).Member = "properties." + err.(*Error).Member //nolint:errorlint,forcetypeassert // jsonError makes no other
			return f, err
		}
	}
	if properties.Name != nil {
		f.Name = *properties.Name
	}
	if properties.Kind != nil {
		f.Kind = Kind(*properties.Kind)
	}
	f.Height = properties.Height
	accuracy := 0.0
	if properties.Accuracy != nil {
		if accuracy = *properties.Accuracy; !(accuracy >= 0 && accuracy <= 1000) {
			return f, wrong("properties.accuracy", "%g m is outside 0 to 1000", accuracy)
		}
	}
	if o.Geometry == nil {
		return f, wrong("geometry", "is null: there is nothing to place")
	}
	if err := f.readGeometry(o.Geometry, accuracy); err != nil {
		return f, err
	}
	return f, underProperties(f.check("geometry"))
}

// underProperties names the properties in an error of Feature.check.
func underProperties(err error) error {
	var e *Error
	if errors.As(err, &e) && e.Member != "geometry" {
		e.Member = "properties." + e.Member
	}
	return err
}

// readGeometry reads a geometry.
func (f *Feature) readGeometry(g *geoObject, accuracy float64) error {
	const member = "geometry.coordinates"
	switch g.Type {
	case "Point":
		f.Shape = Spot
		return f.readPositions(member, "", []json.RawMessage{g.Coordinates}, accuracy)
	case "LineString":
		f.Shape = Line
		positions, err := elements(member, g.Coordinates)
		if err != nil {
			return err
		}
		return f.readPositions(member, "[%d]", positions, accuracy)
	case "Polygon":
		f.Shape = Area
		return f.readRings(member, g.Coordinates, accuracy)
	case "MultiPolygon", "MultiLineString", "MultiPoint", "GeometryCollection":
		return wrong("geometry.type", "a %s has several shapes: give each as a feature of its own, and an area across the 180th meridian in one piece", g.Type)
	}
	return wrong("geometry.type", "%q is not Point, LineString or Polygon", clip(g.Type))
}

// elements splits a JSON array.
func elements(member string, raw json.RawMessage) ([]json.RawMessage, error) {
	var list []json.RawMessage
	if err := json.Unmarshal(raw, &list); err != nil || list == nil {
		return nil, wrong(member, "is not an array")
	}
	return list, nil
}

// readRings reads the rings of a polygon: one, closed.
func (f *Feature) readRings(member string, raw json.RawMessage, accuracy float64) error {
	rings, err := elements(member, raw)
	if err != nil {
		return err
	}
	if len(rings) != 1 {
		return wrong(member, "a polygon of one ring is needed, got %d: areas with holes are not known here", len(rings))
	}
	member += "[0]"
	positions, err := elements(member, rings[0])
	if err != nil {
		return err
	}
	if err := f.readPositions(member, "[%d]", positions, accuracy); err != nil {
		return err
	}
	if len(positions) < 4 {
		return wrong(member, "a ring needs four positions, the last equal to the first; got %d", len(positions))
	}
	if !f.open() {
		return wrong(member, "the ring is not closed: its last position is not its first")
	}
	return nil
}

// readPositions reads positions; their index is written with a format.
func (f *Feature) readPositions(member, index string, raw []json.RawMessage, accuracy float64) error {
	for i, r := range raw {
		name := member
		if index != "" {
			name += fmt.Sprintf(index, i)
		}
		var numbers []float64
		if err := json.Unmarshal(r, &numbers); err != nil || len(numbers) < 2 {
			return wrong(name, "is not a position: longitude, latitude and perhaps height are needed")
		}
		height, grounded := 0.0, len(numbers) > 2
		if grounded {
			height = numbers[2]
		}
		p, err := position(numbers[1], numbers[0], height)
		if err != nil {
			return &Error{Member: name, Err: err}
		}
		f.add(p, grounded, accuracy)
	}
	return nil
}
