package api_test

import (
	"slices"
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/answer"
)

func (h *house) compare(person string, from, to *pb.ComparedSide) (*pb.Comparison, error) {
	return h.assessments().PreviewComparison(h.as(person), &pb.PreviewComparisonRequest{Parent: "clubs/" + home, From: from, To: to})
}

// TestComparisonOfRevisions changes a model's mass and compares its revisions, by name and from the assessment of the first.
func TestComparisonOfRevisions(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	m, f := h.newModel(ada), h.newField()
	a, err := h.submit(h.as(ada), h.draft(m, f))
	h.must(err)
	m = h.revise(m)
	plan, day := file(t, "plan_dabchick_long_acre", &pb.LaunchPlan{}), file(t, "day_long_acre_dry", &pb.DayConditions{})
	kept := func(revision string) *pb.ComparedSide {
		return &pb.ComparedSide{Kept: &pb.KeptParts{ModelRevision: m.GetName() + "/revisions/" + revision, Field: f.GetName(), FieldVersion: 1, LaunchPlan: plan, Day: day}}
	}
	for _, from := range []*pb.ComparedSide{kept("1"), {Assessment: a.GetAssessment()}} {
		got, err := h.compare(ada, from, kept("2"))
		h.must(err)
		var paths []string
		for _, d := range got.GetDifferences() {
			paths = append(paths, d.GetToPath())
		}
		if !slices.Contains(paths, "model.mass.emptyMassKg") || len(got.GetMoves()) < 40 || len(got.GetCautions()) == 0 {
			t.Errorf("differences %v, %d findings", paths, len(got.GetMoves()))
		}
	}
	if got, err := h.compare(ines, kept("2"), kept("2")); err != nil || len(got.GetDifferences()) != 0 || got.GetMovedCount() != 0 {
		t.Errorf("a revision against itself: %v, %v", got, err)
	}
	_, err = h.compare(bram, kept("1"), kept("2"))
	wantRefusal(t, err, codes.NotFound, "NOT_FOUND")
}

// TestComparisonIsTheAnswerOfTheDevice compares the server's answer with that of a page without a server.
func TestComparisonIsTheAnswerOfTheDevice(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	from, to := file(t, "redshank_quarry_top", &pb.AssessmentInput{}), file(t, "redshank_quarry_top_long_ramp", &pb.AssessmentInput{})
	got, err := h.compare(ada, &pb.ComparedSide{Input: from}, &pb.ComparedSide{Input: to})
	h.must(err)
	a, err := protojson.Marshal(from)
	h.must(err)
	b, err := protojson.Marshal(to)
	h.must(err)
	text, err := answer.Comparison(a, b, nil)
	h.must(err)
	want := &pb.Comparison{}
	h.must(protojson.Unmarshal(text, want))
	if got.GetMovedCount() == 0 || !proto.Equal(got, want) {
		t.Errorf("%d moved by the server, %d on the device", got.GetMovedCount(), want.GetMovedCount())
	}
}

// TestComparisonRefusals names the side at fault.
func TestComparisonRefusals(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	whole := &pb.ComparedSide{Input: file(t, "dabchick_long_acre", &pb.AssessmentInput{})}
	broken := proto.CloneOf(whole)
	*broken.Input.Model.Surfaces[0].Stations[0].ChordMeters = -1
	for _, c := range []struct {
		from, to *pb.ComparedSide
		field    string
	}{
		{whole, &pb.ComparedSide{}, "to"},
		{&pb.ComparedSide{Input: whole.Input, Assessment: "clubs/x/assessments/y"}, whole, "from"},
		{whole, broken, "to.model.surfaces[0].stations[0].chordMeters"},
		{&pb.ComparedSide{Kept: &pb.KeptParts{ModelRevision: "first"}}, whole, "from.kept.modelRevision"},
		{&pb.ComparedSide{Assessment: "mine"}, whole, "from.assessment"},
	} {
		_, err := h.compare(ada, c.from, c.to)
		if fields := violated(err); !slices.Contains(fields, c.field) {
			t.Errorf("got %v of %v, want %s", fields, err, c.field)
		}
	}
}
