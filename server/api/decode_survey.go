package api

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"path"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/physics/field"
	"pitgate/server/survey"
)

// DecodeSurvey reads a survey file into places in metres. Nothing is kept.
func (s *fieldsService) DecodeSurvey(ctx context.Context, req *pb.DecodeSurveyRequest) (*pb.DecodeSurveyResponse, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	if (req.DatumLatitudeDegrees == nil) != (req.DatumLongitudeDegrees == nil) {
		return nil, club.RefuseField("datumLongitudeDegrees", "BAD_DATUM", "give latitude and longitude of the datum, or neither")
	}
	features, err := surveyReader(req.GetFileName(), req.GetContent())(req.GetContent())
	if err != nil {
		return nil, badSurvey(err)
	}
	var notes []string
	for i := range features {
		if note := thin(&features[i]); note != "" {
			notes = append(notes, surveyNote(i, features[i].Name, note))
		}
	}
	plan, err := survey.Place(features, surveyDatum(req))
	if err != nil {
		return nil, badSurvey(err)
	}
	out := showSurvey(plan, req.DatumLatitudeDegrees == nil || req.DatumHeightMeters != nil)
	out.Notes = append(notes, out.Notes...)
	return out, nil
}

// badSurvey is the refusal of a file; its words name the feature.
func badSurvey(err error) error { return club.RefuseField("content", "BAD_SURVEY", "%v", err) }

// surveyReader chooses the reader: by the content's first sign, and for a file that begins like no other by its ending.
func surveyReader(name string, content []byte) func([]byte) ([]survey.Feature, error) {
	start := bytes.TrimLeft(bytes.TrimPrefix(content, []byte("\ufeff")), " \t\r\n")
	ending := strings.ToLower(path.Ext(name))
	switch {
	case bytes.HasPrefix(start, []byte("{")), ending == ".geojson", ending == ".json":
		return survey.ReadGeoJSON
	case bytes.HasPrefix(start, []byte("<")), ending == ".gpx":
		return survey.ReadGPX
	}
	return survey.ReadCSV
}

// surveyDatum is the datum asked for; nil when the survey's own middle is to be taken.
func surveyDatum(req *pb.DecodeSurveyRequest) *field.Position {
	if req.DatumLatitudeDegrees == nil {
		return nil
	}
	const degree = math.Pi / 180
	return &field.Position{Latitude: req.GetDatumLatitudeDegrees() * degree, Longitude: req.GetDatumLongitudeDegrees() * degree,
		Height: req.GetDatumHeightMeters()}
}

// showSurvey writes a plan for the wire. Heights of the ground count from the datum's, and are left out where that is not known.
func showSurvey(plan survey.Plan, heightKnown bool) *pb.DecodeSurveyResponse {
	const degree = math.Pi / 180
	out := &pb.DecodeSurveyResponse{DatumLatitudeDegrees: plan.Datum.Latitude / degree, DatumLongitudeDegrees: plan.Datum.Longitude / degree}
	grounded := false
	for i := range plan.Parts {
		part := &plan.Parts[i]
		if repaired := part.Repair.String(); repaired != "" {
			out.Notes = append(out.Notes, surveyNote(i, part.Name, repaired))
		}
		grounded = grounded || part.Grounded
		out.Features = append(out.Features, showSurveyPart(part, heightKnown))
	}
	switch {
	case grounded && heightKnown:
		out.DatumHeightMeters = &plan.Datum.Height
	case grounded:
		out.Notes = append(out.Notes, "heights of the ground were left out: the field's own height above sea level is not given")
	}
	return out
}

// surveyNote says to which feature a note belongs.
func surveyNote(i int, name, text string) string {
	if name == "" {
		return fmt.Sprintf("feature %d: %s", i+1, text)
	}
	return fmt.Sprintf("feature %d (%s): %s", i+1, name, text)
}

// showSurveyPart writes one feature.
func showSurveyPart(part *survey.Part, heights bool) *pb.SurveyFeature {
	out := &pb.SurveyFeature{Name: part.Name, Part: partOfKind(part.Kind), Closed: part.Shape == survey.Area, HeightMeters: part.Height,
		ObstacleKind: obstacleOfKind(part.Kind)}
	if part.Spread > 0 {
		out.PositionSpreadMeters = &part.Spread
	}
	for _, p := range part.Points {
		point := &pb.Point{XMeters: millimeters(p.X), YMeters: millimeters(p.Y)}
		if heights && part.Grounded {
			point.ZMeters = millimeters(p.Z)
		}
		out.Points = append(out.Points, point)
	}
	return out
}

// millimeters rounds a length to the millimetre.
func millimeters(v float64) *float64 {
	rounded := math.Round(v*1000) / 1000
	return &rounded
}

// surveyKinds maps what a file may say to the parts of a field; kinds that stand up from the ground are obstacles.
var surveyKinds = map[survey.Kind]pb.FieldPart{
	survey.FlyingArea: pb.FieldPart_FIELD_PART_FLYING_AREA, survey.KeepOut: pb.FieldPart_FIELD_PART_KEEP_OUT,
	survey.LandingArea: pb.FieldPart_FIELD_PART_LANDING_AREA, survey.Pits: pb.FieldPart_FIELD_PART_PITS,
	survey.Parking: pb.FieldPart_FIELD_PART_PARKING, survey.Strip: pb.FieldPart_FIELD_PART_STRIP,
	survey.PeopleLine: pb.FieldPart_FIELD_PART_PEOPLE_LINE, survey.Road: pb.FieldPart_FIELD_PART_ROAD,
	survey.LaunchSpot: pb.FieldPart_FIELD_PART_LAUNCH_SPOT, survey.PilotPlace: pb.FieldPart_FIELD_PART_PILOT_POSITION,
}

func partOfKind(k survey.Kind) pb.FieldPart {
	if k.Obstacle() {
		return pb.FieldPart_FIELD_PART_OBSTACLE
	}
	return surveyKinds[k]
}

// obstacleOfKind is the obstacle's kind: "hedge" is OBSTACLE_KIND_HEDGE; unspecified for what is none.
func obstacleOfKind(k survey.Kind) pb.ObstacleKind {
	return pb.ObstacleKind(pb.ObstacleKind_value["OBSTACLE_KIND_"+strings.ToUpper(string(k))])
}

// manyCorners is how many corners a person can still look through; a longer track is thinned.
const manyCorners = 60

// thin drops places of a long track that lie close to the line through the others, and says so; whoever walked an area with a position a second
// has hundreds. The distance allowed doubles from 0.5 m until no more than manyCorners are left. An outline that would cross itself stays as it
// is, and so does one that is nowhere on the earth, which is refused later with its reason.
func thin(f *survey.Feature) string {
	before := len(f.Places)
	if before <= manyCorners {
		return ""
	}
	datum, err := field.NewDatum(f.Places[0])
	if err != nil {
		return ""
	}
	line := make(field.Line, before)
	for i, p := range f.Places {
		line[i] = datum.Local(p).Point()
	}
	kept, tolerance := thinned(line, f.Shape == survey.Area)
	if f.Shape == survey.Area && field.Polygon(chosen(line, kept)).Check() != nil {
		return ""
	}
	f.Places, f.Grounded, f.Accuracy = chosen(f.Places, kept), chosen(f.Grounded, kept), chosen(f.Accuracy, kept)
	return fmt.Sprintf("%d places thinned to %d, none of them farther than %.1f m from the line that is left", before, len(kept), tolerance)
}

// thinned returns the indexes of the places that are left and the distance that took, m.
func thinned(line field.Line, closed bool) ([]int, float64) {
	simplify := survey.Simplify
	if closed {
		simplify = survey.SimplifyRing
	}
	tolerance := 0.5
	kept := simplify(line, tolerance)
	for len(kept) > manyCorners {
		tolerance *= 2
		kept = simplify(line, tolerance)
	}
	return kept, tolerance
}

// chosen are the elements at the indexes.
func chosen[E any](of []E, indexes []int) []E {
	out := make([]E, len(indexes))
	for i, at := range indexes {
		out[i] = of[at]
	}
	return out
}
