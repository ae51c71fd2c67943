package api_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"google.golang.org/grpc/codes"

	pb "pitgate/proto/pitgate/v1"
)

// surveys are the same two features in the three forms: a strip of 0.002 degrees along 54 N, and a hedge.
var surveys = map[string]string{
	"two.geojson": `{"type":"FeatureCollection","features":[
		{"type":"Feature","properties":{"kind":"strip","name":"09/27"},"geometry":{"type":"LineString","coordinates":[[-1.001,54],[-0.999,54]]}},
		{"type":"Feature","properties":{"kind":"hedge","name":"north hedge","height":2.5,"accuracy":3},"geometry":{"type":"LineString","coordinates":[[-1.001,54.001],[-0.999,54.001]]}}]}`,
	"two.gpx": `<?xml version="1.0"?><gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1" xmlns:p="urn:pitgate:survey:1">
		<rte><name>09/27</name><type>strip</type><rtept lat="54" lon="-1.001"/><rtept lat="54" lon="-0.999"/></rte>
		<rte><name>north hedge</name><type>hedge</type><extensions><p:height>2.5</p:height></extensions>
		<rtept lat="54.001" lon="-1.001"><extensions><p:accuracy>3</p:accuracy></extensions></rtept><rtept lat="54.001" lon="-0.999"/></rte></gpx>`,
	"two.csv": "kind,name,latitude,longitude,height,accuracy\nstrip,09/27,54,-1.001,,\nstrip,09/27,54,-0.999,,\n" +
		"hedge,north hedge,54.001,-1.001,2.5,3\nhedge,north hedge,54.001,-0.999,2.5,3\n",
}

// TestDecodeSurveyReadsThreeForms: the same features come out of every form, at the same metres.
func TestDecodeSurveyReadsThreeForms(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	latitude, longitude := 54.0, -1.0
	for name, text := range surveys {
		before := h.entryCount()
		out, err := h.fields().DecodeSurvey(h.as(kit), &pb.DecodeSurveyRequest{Parent: "clubs/" + home, FileName: name, Content: []byte(text),
			DatumLatitudeDegrees: &latitude, DatumLongitudeDegrees: &longitude})
		h.must(err)
		if len(out.GetFeatures()) != 2 || math.Abs(out.GetDatumLatitudeDegrees()-54) > 1e-12 || h.entryCount() != before {
			t.Fatalf("%s: %d features, datum %v", name, len(out.GetFeatures()), out.GetDatumLatitudeDegrees())
		}
		strip, hedge := out.GetFeatures()[0], out.GetFeatures()[1]
		if strip.GetPart() != pb.FieldPart_FIELD_PART_STRIP || hedge.GetPart() != pb.FieldPart_FIELD_PART_OBSTACLE ||
			hedge.GetObstacleKind() != pb.ObstacleKind_OBSTACLE_KIND_HEDGE || hedge.GetHeightMeters() != 2.5 || hedge.GetPositionSpreadMeters() != 3 {
			t.Errorf("%s: read as %v and %v", name, strip, hedge)
		}
		// A thousandth of a degree of longitude on 54 N is 65.58 m, of latitude 111.30 m.
		p := strip.GetPoints()[1]
		if math.Abs(p.GetXMeters()-65.58) > 0.01 || math.Abs(p.GetYMeters()) > 0.01 || p.ZMeters != nil {
			t.Errorf("%s: end of the strip at %v", name, p)
		}
		if q := hedge.GetPoints()[0]; math.Abs(q.GetYMeters()-111.30) > 0.01 {
			t.Errorf("%s: hedge begins at %v", name, q)
		}
	}
}

// TestDecodeSurveyRefuses names the feature, and the field of the request.
func TestDecodeSurveyRefuses(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	swapped := strings.ReplaceAll(surveys["two.geojson"], "[-1.001,54.001]", "[54.001,-1.001]")
	crossing := `{"type":"Feature","properties":{"name":"yard","kind":"keep-out"},"geometry":{"type":"Polygon","coordinates":[[[-1,54],[-0.999,54.001],[-0.999,54],[-1,54.001],[-1,54]]]}}`
	latitude := 54.0
	rows := []struct {
		name, words string
		req         *pb.DecodeSurveyRequest
	}{
		{"nothing that is a survey", "column", &pb.DecodeSurveyRequest{FileName: "x.csv", Content: []byte("hello")}},
		{"JSON cut off", "", &pb.DecodeSurveyRequest{FileName: "x.json", Content: []byte(`{"type":`)}},
		{"swapped", "feature 2", &pb.DecodeSurveyRequest{FileName: "x.json", Content: []byte(swapped)}},
		{"crossing", "yard", &pb.DecodeSurveyRequest{FileName: "x.json", Content: []byte(crossing)}},
		{"half a datum", "neither", &pb.DecodeSurveyRequest{FileName: "x.csv", Content: []byte("x"), DatumLatitudeDegrees: &latitude}},
		{"too large", "524288", &pb.DecodeSurveyRequest{FileName: "x.csv", Content: make([]byte, 524289)}},
	}
	for _, row := range rows {
		row.req.Parent = "clubs/" + home
		_, err := h.fields().DecodeSurvey(h.as(kit), row.req)
		if err == nil {
			t.Errorf("%s: read", row.name)
			continue
		}
		if fields := violated(err); len(fields) != 1 || !strings.Contains(err.Error(), row.words) {
			t.Errorf("%s: %v, names %v, want words %q", row.name, err, fields, row.words)
		}
	}
	_, err := h.fields().DecodeSurvey(h.as(ada), &pb.DecodeSurveyRequest{Parent: "clubs/" + home, Content: []byte("x")})
	wantRefusal(t, err, codes.PermissionDenied, "ROLE_MISSING")
}

// TestDecodeSurveyThinsTracks: a circle of 1,500 fixes becomes an outline that a person can look through and that keeps its area.
func TestDecodeSurveyThinsTracks(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	var b strings.Builder
	b.WriteString("kind,name,latitude,longitude,ground\n")
	for i := range 1500 {
		a := float64(i) * 2 * math.Pi / 1500
		fmt.Fprintf(&b, "flying-area,round,%.9f,%.9f,64\n", 54+0.001*math.Sin(a), -1+0.0017*math.Cos(a))
	}
	latitude, longitude := 54.0, -1.0
	req := &pb.DecodeSurveyRequest{Parent: "clubs/" + home, FileName: "walk.csv", Content: []byte(b.String()), DatumLatitudeDegrees: &latitude, DatumLongitudeDegrees: &longitude}
	out, err := h.fields().DecodeSurvey(h.as(mei), req)
	h.must(err)
	points := out.GetFeatures()[0].GetPoints()
	area := 0.0
	for i, p := range points {
		next := points[(i+1)%len(points)]
		area += (p.GetXMeters()*next.GetYMeters() - next.GetXMeters()*p.GetYMeters()) / 2
	}
	if len(points) > 60 || len(points) < 12 || math.Abs(area/38980-1) > 0.02 {
		t.Errorf("%d corners around %.0f m2", len(points), area)
	}
	if len(out.GetNotes()) != 2 || !strings.Contains(out.GetNotes()[0], "1500 places thinned") || !strings.Contains(out.GetNotes()[1], "heights") {
		t.Errorf("notes %q", out.GetNotes())
	}
	req.DatumHeightMeters = new(float64)
	*req.DatumHeightMeters = 60
	out, err = h.fields().DecodeSurvey(h.as(mei), req)
	h.must(err)
	if z := out.GetFeatures()[0].GetPoints()[0].GetZMeters(); z != 4 || out.GetDatumHeightMeters() != 60 {
		t.Errorf("ground at %v over a datum at %v", z, out.GetDatumHeightMeters())
	}
}
