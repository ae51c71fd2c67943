package api_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/google/uuid"
	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/fieldmaskpb"

	pb "pitgate/proto/pitgate/v1"
)

// TestApprovalStory leads one approval through its whole life over gRPC.
func TestApprovalStory(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	m, f := h.newModel(ada), h.newField()
	a := h.draft(m, f)
	steps := []struct {
		name, who string
		do        func(context.Context, *pb.Approval) (*pb.Approval, error)
		want      pb.ApprovalState
	}{
		{"submit", ada, h.submit, pb.ApprovalState_APPROVAL_STATE_SUBMITTED},
		{"begin review", ines, h.decision("beginReview", ""), pb.ApprovalState_APPROVAL_STATE_DESK_REVIEW},
		{"return", ines, h.decision("return", "weigh it again"), pb.ApprovalState_APPROVAL_STATE_RETURNED},
		{"submit again", ada, h.submit, pb.ApprovalState_APPROVAL_STATE_SUBMITTED},
		{"begin review again", ines, h.decision("beginReview", ""), pb.ApprovalState_APPROVAL_STATE_DESK_REVIEW},
		{"pass desk", ines, h.decision("passDesk", ""), pb.ApprovalState_APPROVAL_STATE_BENCH},
		{"pass bench", tomas, h.decision("passBench", ""), pb.ApprovalState_APPROVAL_STATE_READY},
		{"sign", ines, h.sign, pb.ApprovalState_APPROVAL_STATE_SIGNED},
		{"record flight", ada, h.decision("recordFlight", ""), pb.ApprovalState_APPROVAL_STATE_FLOWN},
	}
	for _, s := range steps {
		if s.name == "submit again" {
			h.revise(m)
		}
		next, err := s.do(h.as(s.who), a)
		if err != nil {
			t.Fatalf("%s: %v", s.name, err)
		}
		if next.GetState() != s.want {
			t.Fatalf("%s: state %v, want %v", s.name, next.GetState(), s.want)
		}
		a = next
	}
	checkStory(t, h, a)
}

// checkStory looks at what the story left behind.
func checkStory(t *testing.T, h *house, a *pb.Approval) {
	t.Helper()
	if a.GetModelRevision() != 2 {
		t.Errorf("model revision %d, want the second one", a.GetModelRevision())
	}
	if len(a.GetSignatures()) != 1 || a.GetSignatures()[0].GetRole() != "safety officer" || a.GetSignatures()[0].GetLapsed() {
		t.Errorf("signatures %v, want one of the safety officer in force", a.GetSignatures())
	}
	kept, err := h.assessments().GetAssessment(h.as(ada), &pb.GetAssessmentRequest{Name: a.GetAssessment()})
	h.must(err)
	if kept.GetInputDigest() == "" || kept.GetApproval() != a.GetName() || len(kept.GetReport().GetFindings()) == 0 {
		t.Errorf("assessment %v lacks digest, approval or findings", kept.GetName())
	}
	entries, err := h.ledger().ListEntries(h.as(bram), &pb.ListEntriesRequest{Parent: "clubs/" + home, PageSize: 1000})
	h.must(err)
	for _, tr := range a.GetTransitions() {
		entry := entries.GetEntries()[tr.GetLedgerIndex()].GetEntry()
		if !strings.Contains(entry, a.GetName()) {
			t.Errorf("ledger entry %d does not name the approval: %s", tr.GetLedgerIndex(), entry)
		}
	}
	if len(a.GetTransitions()) != 10 {
		t.Errorf("%d transitions, want 10", len(a.GetTransitions()))
	}
}

func (h *house) submit(ctx context.Context, a *pb.Approval) (*pb.Approval, error) {
	return h.approvals().SubmitApproval(ctx, &pb.SubmitApprovalRequest{Name: a.GetName(), Etag: a.GetEtag()})
}

func (h *house) sign(ctx context.Context, a *pb.Approval) (*pb.Approval, error) {
	return h.approvals().SignApproval(ctx, &pb.SignApprovalRequest{Name: a.GetName(), Etag: a.GetEtag(), Password: password,
		SigningDigest: a.GetSigningDigest()})
}

// decision makes a step of one verb.
func (h *house) decision(verb, reason string) func(context.Context, *pb.Approval) (*pb.Approval, error) {
	return func(ctx context.Context, a *pb.Approval) (*pb.Approval, error) {
		req, client := &pb.DecisionRequest{Name: a.GetName(), Etag: a.GetEtag(), Reason: reason}, h.approvals()
		switch verb {
		case "beginReview":
			return client.BeginReview(ctx, req)
		case "return":
			return client.ReturnApproval(ctx, req)
		case "passDesk":
			return client.PassDesk(ctx, req)
		case "passBench":
			return client.PassBench(ctx, req)
		case "recordFlight":
			return client.RecordFlight(ctx, req)
		case "release":
			return client.ReleaseApproval(ctx, req)
		case "hold":
			return client.HoldApproval(ctx, req)
		}
		panic("no such verb: " + verb)
	}
}

// revise changes the model's mass, which makes a new revision.
func (h *house) revise(m *pb.Model) *pb.Model {
	h.t.Helper()
	now, err := h.models().GetModel(h.as(ada), &pb.GetModelRequest{Name: m.GetName()})
	h.must(err)
	changed := proto.CloneOf(now)
	*changed.Description.Mass.EmptyMassKg.Value += 0.05
	after, err := h.models().UpdateModel(h.as(ada), &pb.UpdateModelRequest{Model: changed, UpdateMask: &fieldmaskpb.FieldMask{Paths: []string{"description"}}})
	h.must(err)
	if after.GetLatestRevision() != now.GetLatestRevision()+1 {
		h.t.Fatalf("revision %d after a change of %d", after.GetLatestRevision(), now.GetLatestRevision())
	}
	return after
}

// ready leads an approval of the owner to the field gate.
func (h *house) ready(owner string) (*pb.Model, *pb.Approval) {
	h.t.Helper()
	m := h.newModel(owner)
	a, err := h.submit(h.as(owner), h.draft(m, h.newField()))
	h.must(err)
	for _, verb := range []string{"beginReview", "passDesk", "passBench"} {
		officer := ines
		if owner == ines {
			officer = tomas
		}
		a, err = h.decision(verb, "")(h.as(officer), a)
		h.must(err)
	}
	return m, a
}

func TestOwnerNeverSignsOwnModel(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	_, a := h.ready(ines)
	_, err := h.sign(h.as(ines), a)
	wantRefusal(t, err, codes.PermissionDenied, "OWN_APPROVAL")
	_, err = h.sign(h.as(ada), a)
	wantRefusal(t, err, codes.PermissionDenied, "ROLE_MISSING")
	if _, err = h.sign(h.as(tomas), a); err != nil {
		t.Fatalf("another officer: %v", err)
	}
}

func TestSigningNeedsPasswordAndWhatWasShown(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	_, a := h.ready(ada)
	req := &pb.SignApprovalRequest{Name: a.GetName(), Etag: a.GetEtag(), Password: "something else altogether", SigningDigest: a.GetSigningDigest()}
	_, err := h.approvals().SignApproval(h.as(ines), req)
	wantRefusal(t, err, codes.PermissionDenied, "WRONG_PASSWORD")
	req.Password, req.SigningDigest = password, strings.Repeat("0", 64)
	_, err = h.approvals().SignApproval(h.as(ines), req)
	wantRefusal(t, err, codes.FailedPrecondition, "NOT_WHAT_WAS_SHOWN")
}

func TestChangedModelLapsesSignature(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	m, a := h.ready(ada)
	_, err := h.sign(h.as(ines), a)
	h.must(err)
	h.revise(m)
	after, err := h.approvals().GetApproval(h.as(ada), &pb.GetApprovalRequest{Name: a.GetName()})
	h.must(err)
	if after.GetState() != pb.ApprovalState_APPROVAL_STATE_LAPSED || !after.GetSignatures()[0].GetLapsed() {
		t.Fatalf("state %v, signature lapsed %v", after.GetState(), after.GetSignatures()[0].GetLapsed())
	}
}

func TestStaleEtagNamesWhoChangedIt(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	read, err := h.submit(h.as(ada), h.draft(h.newModel(ada), h.newField()))
	h.must(err)
	_, err = h.decision("beginReview", "")(h.as(ines), read)
	h.must(err)
	_, err = h.decision("beginReview", "")(h.as(tomas), read)
	wantRefusal(t, err, codes.Aborted, "ETAG_MISMATCH")
	if !strings.Contains(err.Error(), "Person ines-valdez") {
		t.Errorf("%v does not say who changed it", err)
	}
	_, err = h.approvals().PassDesk(h.as(tomas), &pb.DecisionRequest{Name: read.GetName()})
	wantRefusal(t, err, codes.InvalidArgument, "ETAG_MISSING")
}

func TestRequestIDIsAnsweredOnce(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.draft(h.newModel(ada), h.newField())
	req := &pb.SubmitApprovalRequest{Name: a.GetName(), Etag: a.GetEtag(), RequestId: uuid.NewString()}
	first, err := h.approvals().SubmitApproval(h.as(ada), req)
	h.must(err)
	second, err := h.approvals().SubmitApproval(h.as(ada), req)
	h.must(err)
	if !proto.Equal(first, second) {
		t.Errorf("the second answer differs:\n%v\n%v", first, second)
	}
	req.OwnerNote = "another body"
	_, err = h.approvals().SubmitApproval(h.as(ada), req)
	wantRefusal(t, err, codes.AlreadyExists, "REQUEST_ID_REUSED")
}

func TestAdoptedLessonHolds(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	_, a := h.ready(ada)
	untouched, err := h.submit(h.as(ines), h.draft(h.plainModel(ines, "Dabchick two", 9), h.newField()))
	h.must(err)
	lesson, err := h.incidents().CreateLesson(h.as(mei), &pb.CreateLessonRequest{Parent: "clubs/" + home, Lesson: &pb.Lesson{
		Text: "light ones only", Predicate: "model.mass.empty_mass_kg.value < 5.0"}})
	h.must(err)
	lesson, err = h.vote(mei, lesson)
	h.must(err)
	if lesson.GetState() != pb.LessonState_LESSON_STATE_PROPOSED {
		t.Fatalf("one vote adopted it: %v", lesson.GetState())
	}
	if _, err = h.vote(mei, lesson); err == nil {
		t.Fatal("the same member voted twice")
	}
	lesson, err = h.vote(tomas, lesson)
	h.must(err)
	if lesson.GetState() != pb.LessonState_LESSON_STATE_ADOPTED || lesson.GetHoldCount() != 1 {
		t.Fatalf("state %v, held %d, want adopted and 1", lesson.GetState(), lesson.GetHoldCount())
	}
	held := h.stateOf(a)
	if held.GetState() != pb.ApprovalState_APPROVAL_STATE_HELD || held.GetHolds()[0].GetLesson() != lesson.GetName() {
		t.Fatalf("approval %v with holds %v", held.GetState(), held.GetHolds())
	}
	if got := h.stateOf(untouched).GetState(); got != pb.ApprovalState_APPROVAL_STATE_SUBMITTED {
		t.Errorf("an approval that does not match is %v", got)
	}
	released, err := h.decision("release", "the trap is fitted")(h.as(ines), held)
	h.must(err)
	if released.GetState() != pb.ApprovalState_APPROVAL_STATE_READY {
		t.Errorf("released to %v, want ready", released.GetState())
	}
}

func TestLaterSubmissionIsHeldByAdoptedLesson(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	lesson, err := h.incidents().CreateLesson(h.as(mei), &pb.CreateLessonRequest{Parent: "clubs/" + home, Lesson: &pb.Lesson{
		Text: "every one", Predicate: "true"}})
	h.must(err)
	lesson, err = h.vote(mei, lesson)
	h.must(err)
	_, err = h.vote(tomas, lesson)
	h.must(err)
	a, err := h.submit(h.as(ada), h.draft(h.newModel(ada), h.newField()))
	h.must(err)
	if a.GetState() != pb.ApprovalState_APPROVAL_STATE_HELD {
		t.Fatalf("state %v, want held", a.GetState())
	}
}

func (h *house) vote(person string, l *pb.Lesson) (*pb.Lesson, error) {
	return h.incidents().AdoptLesson(h.as(person), &pb.AdoptLessonRequest{Name: l.GetName(), Etag: l.GetEtag()})
}

func (h *house) stateOf(a *pb.Approval) *pb.Approval {
	h.t.Helper()
	now, err := h.approvals().GetApproval(h.as(ines), &pb.GetApprovalRequest{Name: a.GetName()})
	h.must(err)
	return now
}

// plainModel registers a Dabchick of another mass.
func (h *house) plainModel(owner, name string, massKg float64) *pb.Model {
	h.t.Helper()
	description := file(h.t, "dabchick", &pb.ModelDescription{})
	description.Mass.EmptyMassKg.Value = &massKg
	m, err := h.models().CreateModel(h.as(owner), &pb.CreateModelRequest{Parent: "clubs/" + home,
		Model: &pb.Model{DisplayName: name, Description: description}})
	h.must(err)
	return m
}

func TestBadInputStoresNothing(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	description := file(t, "dabchick", &pb.ModelDescription{})
	bad := -0.2
	description.Surfaces[0].Stations[0].ChordMeters = &bad
	before := h.entryCount()
	_, err := h.models().CreateModel(h.as(ada), &pb.CreateModelRequest{Parent: "clubs/" + home, Model: &pb.Model{DisplayName: "x", Description: description}})
	wantRefusal(t, err, codes.InvalidArgument, "INVALID_DOCUMENT")
	if !slices.Contains(violated(err), "model.surfaces[0].stations[0].chordMeters") {
		t.Errorf("violations %v do not name the field", violated(err))
	}
	_, err = h.models().CreateModel(h.as(ada), &pb.CreateModelRequest{Parent: "clubs/" + home, RequestId: "no uuid", Model: &pb.Model{DisplayName: "x"}})
	wantRefusal(t, err, codes.InvalidArgument, "INVALID_FIELDS")
	list, err := h.models().ListModels(h.as(ines), &pb.ListModelsRequest{Parent: "clubs/" + home})
	h.must(err)
	if len(list.GetModels()) != 0 || h.entryCount() != before {
		t.Errorf("%d models and %d ledger entries were written", len(list.GetModels()), h.entryCount()-before)
	}
}

func (h *house) entryCount() int64 {
	h.t.Helper()
	head, err := h.ledger().GetTreeHead(h.as(ada), &pb.GetTreeHeadRequest{Parent: "clubs/" + home})
	h.must(err)
	return head.GetTreeSize()
}
