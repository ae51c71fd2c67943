package api_test

import (
	"bytes"
	"image"
	"image/png"
	"strings"
	"testing"
	"time"

	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/types/known/emptypb"
	"google.golang.org/protobuf/types/known/timestamppb"

	pb "pitgate/proto/pitgate/v1"
)

// askers are the columns of the matrix: nobody, the owner, another member, a safety officer, the committee, the field keeper, the
// administrator, and somebody with every role in another club.
var askers = []string{"", ada, bram, ines, mei, kit, root, pal}

// row is one RPC, what each asker gets, and the request, which names records of ada's.
type row struct {
	method, want string
	// record tells that the request names a record, which must not be found under another club's name.
	record      bool
	req, answer proto.Message
}

// records are ada's.
type records struct {
	model, field, approval, assessment, incident, photo, lesson, pack, changes, preview string
}

// records makes one of each.
func (h *house) records() records {
	m, f := h.newModel(ada), h.newField()
	a, err := h.submit(h.as(ada), h.draft(m, f))
	h.must(err)
	i, err := h.incidents().CreateIncident(h.as(ada), &pb.CreateIncidentRequest{Parent: "clubs/" + home, Incident: &pb.Incident{
		Title: "Flame-out", Narrative: "It stopped in a turn.", OccurTime: timestamppb.New(time.Date(2026, 5, 17, 0, 0, 0, 0, time.UTC))}})
	h.must(err)
	i, err = h.incidents().AddIncidentPhoto(h.as(ada), &pb.AddIncidentPhotoRequest{Name: i.GetName(), Content: picture(h.t)})
	h.must(err)
	l, err := h.incidents().CreateLesson(h.as(mei), &pb.CreateLessonRequest{Parent: "clubs/" + home, Lesson: &pb.Lesson{Text: "x", Predicate: "false"}})
	h.must(err)
	pack := h.newPack("larkmoor-club")
	return records{m.GetName(), f.GetName(), a.GetName(), a.GetAssessment(), i.GetName(), i.GetPhotos()[0].GetName(), l.GetName(), pack.GetName(),
		h.changed(a.GetName()), h.foretell(ines, pack).GetName()}
}

// picture is a small PNG.
func picture(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 8, 8))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// moved is the request with every name put under the other club.
func moved(req proto.Message) proto.Message {
	out := proto.Clone(req)
	moveNames(out.ProtoReflect())
	return out
}

func moveNames(m protoreflect.Message) {
	m.Range(func(fd protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		switch {
		case fd.Kind() == protoreflect.StringKind && !fd.IsList():
			m.Set(fd, protoreflect.ValueOfString(strings.Replace(v.String(), "clubs/"+home, "clubs/"+other, 1)))
		case fd.Kind() == protoreflect.MessageKind && !fd.IsList() && !fd.IsMap():
			moveNames(v.Message())
		}
		return true
	})
}

// matrix is the whole expectation, written by hand. Etags are stale and bodies incomplete, so that hardly anything changes.
func matrix(t *testing.T, r records) []row {
	t.Helper()
	const all, reading, officer = "UYYYYYYN", "UYNYYNNN", "UDDYDDDN"
	club, stale := "clubs/"+home, &pb.DecisionRequest{Name: r.approval, Etag: "v999", Reason: "r"}
	p := func(service, method, want string, record bool, req, answer proto.Message) row {
		return row{"/pitgate.v1." + service + "Service/" + method, want, record, req, answer}
	}
	decision := func(method, want string) row { return p("Approvals", method, want, true, stale, &pb.Approval{}) }
	plan, day := file(t, "plan_dabchick_long_acre", &pb.LaunchPlan{}), file(t, "day_long_acre_dry", &pb.DayConditions{})
	return []row{
		p("Models", "CreateModel", "UYYYDDDN", false, &pb.CreateModelRequest{Parent: club, Model: &pb.Model{}}, &pb.Model{}),
		p("Models", "GetModel", reading, true, &pb.GetModelRequest{Name: r.model}, &pb.Model{}),
		p("Models", "ListModels", all, false, &pb.ListModelsRequest{Parent: club}, &pb.ListModelsResponse{}),
		p("Models", "UpdateModel", "UYNDDDDN", true, &pb.UpdateModelRequest{Model: &pb.Model{Name: r.model, Etag: "v999", DisplayName: "x"}}, &pb.Model{}),
		p("Models", "DeleteModel", "UYNDDDDN", true, &pb.DeleteModelRequest{Name: r.model, Etag: "v999"}, &emptypb.Empty{}),
		p("Models", "GetModelRevision", reading, true, &pb.GetModelRevisionRequest{Name: r.model + "/revisions/1"}, &pb.ModelRevision{}),
		p("Models", "ListModelRevisions", reading, true, &pb.ListModelRevisionsRequest{Parent: r.model}, &pb.ListModelRevisionsResponse{}),

		p("Fields", "CreateField", "UDDDYYDN", false, &pb.CreateFieldRequest{Parent: club, Field: &pb.Field{}}, &pb.Field{}),
		p("Fields", "GetField", all, true, &pb.GetFieldRequest{Name: r.field}, &pb.Field{}),
		p("Fields", "ListFields", all, false, &pb.ListFieldsRequest{Parent: club}, &pb.ListFieldsResponse{}),
		p("Fields", "UpdateField", "UDDDYYDN", true, &pb.UpdateFieldRequest{Field: &pb.Field{Name: r.field, Etag: "v999", DisplayName: "x"}}, &pb.Field{}),
		p("Fields", "GetFieldVersion", all, true, &pb.GetFieldVersionRequest{Name: r.field, Number: 1}, &pb.FieldVersion{}),
		p("Fields", "CheckField", all, false, &pb.CheckFieldRequest{Parent: club, Description: &pb.FieldDescription{}}, &pb.CheckFieldResponse{}),
		p("Fields", "DecodeSurvey", "UDDDYYDN", false, &pb.DecodeSurveyRequest{Parent: club, FileName: "x.csv", Content: []byte("x")}, &pb.DecodeSurveyResponse{}),

		p("Approvals", "CreateApproval", "UYNDDDDN", true, &pb.CreateApprovalRequest{Parent: club,
			Approval: &pb.Approval{Model: r.model, Field: r.field, LaunchPlan: plan, Day: day}}, &pb.Approval{}),
		p("Approvals", "GetApproval", reading, true, &pb.GetApprovalRequest{Name: r.approval}, &pb.Approval{}),
		p("Approvals", "ListApprovals", all, false, &pb.ListApprovalsRequest{Parent: club}, &pb.ListApprovalsResponse{}),
		p("Approvals", "SubmitApproval", "UYNDDDDN", true, &pb.SubmitApprovalRequest{Name: r.approval, Etag: "v999"}, &pb.Approval{}),
		decision("WithdrawApproval", "UYNDDDDN"),
		decision("HoldApproval", "UYNYDDDN"),
		decision("RecordFlight", "UYNYDDDN"),
		decision("BeginReview", officer), decision("ReturnApproval", officer), decision("PassDesk", officer), decision("PassBench", officer),
		decision("RefuseApproval", officer), decision("ReleaseApproval", officer),
		p("Approvals", "ConfirmRule", officer, true, &pb.ConfirmRuleRequest{Name: r.approval, Etag: "v999", Rule: "a.b", Confirmed: proto.Bool(true), Reason: "r"}, &pb.Approval{}),
		p("Approvals", "SignApproval", officer, true, &pb.SignApprovalRequest{Name: r.approval, Etag: "v999", Password: "x", SigningDigest: "x"}, &pb.Approval{}),

		p("Approvals", "ListVerdictChanges", all, false, &pb.ListVerdictChangesRequest{Parent: club}, &pb.ListVerdictChangesResponse{}),
		p("Approvals", "MarkVerdictChangesRead", reading, true, &pb.MarkVerdictChangesReadRequest{Name: r.changes}, &pb.VerdictChanges{}),

		p("Assessments", "PreviewAssessment", all, false, &pb.PreviewAssessmentRequest{Parent: club, Input: &pb.AssessmentInput{}}, &pb.AssessmentReport{}),
		p("Assessments", "PreviewWindow", all, false, &pb.PreviewWindowRequest{Parent: club, Input: &pb.AssessmentInput{}}, &pb.WindWindow{}),
		p("Assessments", "PreviewComparison", reading, true, &pb.PreviewComparisonRequest{Parent: club, From: &pb.ComparedSide{Assessment: r.assessment},
			To: &pb.ComparedSide{Kept: &pb.KeptParts{ModelRevision: r.model + "/revisions/1", Field: r.field, LaunchPlan: plan, Day: day}}}, &pb.Comparison{}),
		p("Assessments", "DecodeWeather", all, false, &pb.DecodeWeatherRequest{Parent: club, Text: "EGXX 161020Z 24010KT"}, &pb.DecodeWeatherResponse{}),
		p("Assessments", "CreateAssessment", all, false, &pb.CreateAssessmentRequest{Parent: club, Assessment: &pb.Assessment{}}, &pb.Assessment{}),
		p("Assessments", "GetAssessment", reading, true, &pb.GetAssessmentRequest{Name: r.assessment}, &pb.Assessment{}),
		p("Assessments", "ListAssessments", all, false, &pb.ListAssessmentsRequest{Parent: club}, &pb.ListAssessmentsResponse{}),

		p("Incidents", "CreateIncident", all, false, &pb.CreateIncidentRequest{Parent: club, Incident: &pb.Incident{}}, &pb.Incident{}),
		p("Incidents", "GetIncident", all, true, &pb.GetIncidentRequest{Name: r.incident}, &pb.Incident{}),
		p("Incidents", "ListIncidents", all, false, &pb.ListIncidentsRequest{Parent: club}, &pb.ListIncidentsResponse{}),
		p("Incidents", "UpdateIncident", "UDDDYDDN", true, &pb.UpdateIncidentRequest{Incident: &pb.Incident{Name: r.incident, Etag: "v999", Place: "x"}}, &pb.Incident{}),
		p("Incidents", "AddIncidentPhoto", "UYDYYDDN", true, &pb.AddIncidentPhotoRequest{Name: r.incident, Content: picture(t)}, &pb.Incident{}),
		p("Incidents", "GetIncidentPhoto", all, true, &pb.GetIncidentPhotoRequest{Name: r.photo}, &pb.IncidentPhoto{}),
		p("Incidents", "CreateLesson", "UDDDYDDN", false, &pb.CreateLessonRequest{Parent: club, Lesson: &pb.Lesson{}}, &pb.Lesson{}),
		p("Incidents", "GetLesson", all, true, &pb.GetLessonRequest{Name: r.lesson}, &pb.Lesson{}),
		p("Incidents", "ListLessons", all, false, &pb.ListLessonsRequest{Parent: club}, &pb.ListLessonsResponse{}),
		p("Incidents", "TryLesson", "UDDDYDDN", false, &pb.TryLessonRequest{Parent: club, Predicate: "true"}, &pb.TryLessonResponse{}),
		p("Incidents", "AdoptLesson", "UDDDYDDN", true, &pb.AdoptLessonRequest{Name: r.lesson, Etag: "v999"}, &pb.Lesson{}),

		p("RulePacks", "CreateRulePack", "UDDDYDDN", false, &pb.CreateRulePackRequest{Parent: club, RulePack: &pb.RulePack{}}, &pb.RulePack{}),
		p("RulePacks", "GetRulePack", all, true, &pb.GetRulePackRequest{Name: r.pack}, &pb.RulePack{}),
		p("RulePacks", "ListRulePacks", all, false, &pb.ListRulePacksRequest{Parent: club}, &pb.ListRulePacksResponse{}),
		p("RulePacks", "ListSuppliedRulePacks", all, false, &pb.ListSuppliedRulePacksRequest{Parent: club}, &pb.ListSuppliedRulePacksResponse{}),
		p("RulePacks", "UpdateRulePack", "UDDDYDDN", true, &pb.UpdateRulePackRequest{RulePack: &pb.RulePack{Name: r.pack, Etag: "v999"}}, &pb.RulePack{}),
		p("RulePacks", "PreviewRulePack", "UDDYYDDN", true, &pb.PreviewRulePackRequest{Name: r.pack}, &pb.PreviewRulePackResponse{}),
		p("RulePacks", "BeginRulePackPreview", "UDDYYDDN", true, &pb.BeginRulePackPreviewRequest{Name: r.pack}, &pb.RulePackPreview{}),
		p("RulePacks", "GetRulePackPreview", "UDDYYDDN", true, &pb.GetRulePackPreviewRequest{Name: r.preview}, &pb.RulePackPreview{}),
		p("RulePacks", "CancelRulePackPreview", "UDDYYDDN", true, &pb.CancelRulePackPreviewRequest{Name: r.preview}, &pb.RulePackPreview{}),
		p("RulePacks", "PublishRulePack", "UDDDYDDN", true, &pb.PublishRulePackRequest{Name: r.pack, Etag: "v999"}, &pb.RulePack{}),
		p("RulePacks", "RetireRulePack", "UDDDYDDN", true, &pb.RetireRulePackRequest{Name: r.pack, Etag: "v999"}, &pb.RulePack{}),
		p("RulePacks", "ComposeLimits", all, false, &pb.ComposeLimitsRequest{Parent: club}, &pb.ComposeLimitsResponse{}),

		p("Ledger", "GetTreeHead", all, false, &pb.GetTreeHeadRequest{Parent: club}, &pb.TreeHead{}),
		p("Ledger", "ListEntries", all, false, &pb.ListEntriesRequest{Parent: club}, &pb.ListEntriesResponse{}),
		p("Ledger", "GetInclusionProof", all, false, &pb.GetInclusionProofRequest{Parent: club, TreeSize: 2}, &pb.LedgerProof{}),
		p("Ledger", "GetConsistencyProof", all, false, &pb.GetConsistencyProofRequest{Parent: club, FirstTreeSize: 1, SecondTreeSize: 2}, &pb.LedgerProof{}),

		p("People", "GetMe", "UYYYYYYY", false, &pb.GetMeRequest{}, &pb.Person{}),
		p("People", "ListPeople", "UDDYYDYN", false, &pb.ListPeopleRequest{Parent: club}, &pb.ListPeopleResponse{}),
		p("People", "CreatePerson", "UDDDDDYN", false, &pb.CreatePersonRequest{Parent: club, Person: &pb.Person{}}, &pb.Person{}),
		p("People", "ChangePassword", "UYYYYYYY", false, &pb.ChangePasswordRequest{OldPassword: password, NewPassword: "short"}, &emptypb.Empty{}),
		p("People", "ListDemoPeople", "DDDDDDDD", false, &pb.ListDemoPeopleRequest{}, &pb.ListPeopleResponse{}),
		p("People", "SignInDemo", "DDDDDDDD", false, &pb.SignInDemoRequest{Person: club + "/people/" + ada}, &pb.SignInResponse{}),
		{"/grpc.health.v1.Health/Check", "YYYYYYYY", false, &healthpb.HealthCheckRequest{}, &healthpb.HealthCheckResponse{}},
		{"/grpc.health.v1.Health/List", "YYYYYYYY", false, &healthpb.HealthListRequest{}, &healthpb.HealthListResponse{}},
		p("People", "SignOut", "UYYYYYYY", false, &pb.SignOutRequest{}, &emptypb.Empty{}),
		// Signing in ends the session that came with the request: last of all.
		p("People", "SignIn", "YYYYYYYY", false, &pb.SignInRequest{Parent: club, Email: ada + "@" + home + ".example", Password: password}, &pb.SignInResponse{}),
	}
}
