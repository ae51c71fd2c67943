package api_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// changed keeps a change of verdicts of an approval, and returns its name.
func (h *house) changed(approval string) string {
	h.t.Helper()
	_, id, err := club.Approvals.Parse("name", approval)
	h.must(err)
	ctx := h.t.Context()
	h.must(h.store.InTx(ctx, home, func(tx *postgres.Tx) error {
		run, err := tx.BeginRun(ctx, club.Actor{}, club.ReassessmentRun{Cause: club.CauseCore, Reason: "The core changed", CoreVersion: assess.Version})
		if err != nil {
			return err
		}
		_, err = tx.KeepReassessment(ctx, club.Reassessment{RunID: run.ID, ApprovalID: id, Outcome: club.OutcomeChanged, CoreVersion: assess.Version,
			State: club.Submitted, Changes: []club.ChangedVerdict{{FindingID: "stall.speed", Title: "Stall speed", From: "VERDICT_HOLDS", To: "VERDICT_FAILS"}}})
		return err
	}))
	list := h.changes(ines, &pb.ListVerdictChangesRequest{Approval: approval})
	return list[0].GetName()
}

// changes lists what somebody reads of changed verdicts.
func (h *house) changes(who string, req *pb.ListVerdictChangesRequest) []*pb.VerdictChanges {
	h.t.Helper()
	req.Parent = "clubs/" + home
	list, err := h.approvals().ListVerdictChanges(h.as(who), req)
	h.must(err)
	return list.GetVerdictChanges()
}

// otherCore puts an answer beside the one of an approval, as another core would have given it: every verdict is changed by turn.
func (h *house) otherCore(approval *pb.Approval, turn func(id, verdict string) string) {
	h.t.Helper()
	_, id, err := club.Assessments.Parse("assessment", approval.GetAssessment())
	h.must(err)
	ctx := h.t.Context()
	h.must(h.store.InTx(ctx, home, func(tx *postgres.Tx) error {
		kept, err := tx.Assessment(ctx, id)
		if err != nil {
			return err
		}
		var report map[string]any
		if err := json.Unmarshal(kept.Report, &report); err != nil {
			return err
		}
		for _, f := range report["findings"].([]any) {
			finding := f.(map[string]any)
			finding["verdict"] = turn(finding["id"].(string), finding["verdict"].(string))
		}
		if kept.Report, err = json.Marshal(report); err != nil {
			return err
		}
		kept.CoreVersion = "0.0.1"
		_, err = tx.CreateAssessment(ctx, club.Actor{}, kept)
		return err
	}))
}

// work does all jobs of a run.
func (h *house) work(begin func(*jobs.Queue, *postgres.Tx) (club.ReassessmentRun, error)) club.ReassessmentRun {
	h.t.Helper()
	queue, err := jobs.NewQueue()
	h.must(err)
	var run club.ReassessmentRun
	if begin != nil {
		h.must(h.store.InTx(h.t.Context(), home, func(tx *postgres.Tx) error { run, err = begin(queue, tx); return err }))
	}
	defer h.workers()()
	for end := time.Now().Add(60 * time.Second); ; time.Sleep(30 * time.Millisecond) {
		h.must(h.store.Read(h.t.Context(), home, func(tx *postgres.ReadTx) error {
			if run.ID == "" {
				run, _, err = tx.LatestRun(h.t.Context(), club.CauseRules)
				return err
			}
			run, err = tx.Run(h.t.Context(), run.ID)
			return err
		}))
		if run.Done() {
			return run
		}
		if time.Now().After(end) {
			h.t.Fatalf("the run stands at %+v", run)
		}
	}
}

// workers begins to work on jobs; the function returned ends it.
func (h *house) workers() (stop func()) {
	h.t.Helper()
	workers, err := jobs.Start(h.t.Context(), jobs.Config{Store: h.store, Assessor: h.server.Assessor, Count: 2})
	h.must(err)
	return func() {
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		defer cancel()
		h.must(workers.Stop(ctx))
	}
}

// newCore begins a run for the core.
func newCore(t *testing.T) func(*jobs.Queue, *postgres.Tx) (club.ReassessmentRun, error) {
	return func(q *jobs.Queue, tx *postgres.Tx) (club.ReassessmentRun, error) {
		return q.Begin(t.Context(), tx, club.Actor{}, club.ReassessmentRun{Cause: club.CauseCore, CoreVersion: assess.Version, Reason: "The core changed"})
	}
}

// TestWorseVerdictLapsesASignature has another core judge one finding worse than the one that was signed, and wants the signature lapsed in sight of
// everybody, the change listed with its new answer, ledger entries, and a second run to change nothing.
func TestWorseVerdictLapsesASignature(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	draft, err := h.approvals().CreateApproval(h.as(ada), &pb.CreateApprovalRequest{Parent: "clubs/" + home, Approval: &pb.Approval{
		Model: h.newModel(ada).GetName(), Field: h.newField().GetName(), LaunchPlan: file(t, "plan_dabchick_long_acre", &pb.LaunchPlan{}),
		Day: file(t, "day_long_acre_dry", &pb.DayConditions{}), Limits: &pb.Limits{MaximumMassKg: proto.Float64(1.5)}}})
	h.must(err)
	a := h.signed(draft)
	// The model is too heavy for the owner's own limit, which the former core held.
	bad := h.firstFinding(a, func(v pb.Verdict) bool { return v != pb.Verdict_VERDICT_HOLDS })
	h.otherCore(a, func(id, verdict string) string {
		if id == bad.GetId() {
			return string(assess.VerdictHolds)
		}
		return verdict
	})
	before := h.entryCount()
	if run := h.work(newCore(t)); run.ChangedCount != 1 || run.FailCount != 0 {
		t.Fatalf("the run stands at %+v", run)
	}
	now := h.approval(a)
	last := now.GetTransitions()[len(now.GetTransitions())-1]
	if now.GetState() != pb.ApprovalState_APPROVAL_STATE_LAPSED || !now.GetSignatures()[0].GetLapsed() || !strings.Contains(last.GetReason(), bad.GetId()) {
		t.Errorf("after the run: %v, %v, reason %q", now.GetState(), now.GetSignatures(), last.GetReason())
	}
	if got := h.entryCount() - before; got != 3 { // the run, the new answer, the lapse
		t.Errorf("%d ledger entries, want 3", got)
	}
	list := h.changes(ines, &pb.ListVerdictChangesRequest{})
	if len(list) != 1 || !list[0].GetLapsed() || list[0].GetCause() != pb.ReassessmentCause_REASSESSMENT_CAUSE_CORE || list[0].GetAssessment() == "" ||
		len(list[0].GetChanges()) != 1 || list[0].GetChanges()[0].GetFindingId() != bad.GetId() || list[0].GetChanges()[0].GetTo() != bad.GetVerdict() ||
		list[0].GetChanges()[0].GetNote() == "" {
		t.Errorf("listed %v", list)
	}
	// What was signed and what the core says now are the same, but for the day: desk and bench stand.
	if now.GetAssessment() != list[0].GetAssessment() || fates(t, now) != "+desk +bench -field" {
		t.Errorf("it stands on %s, gates %q", now.GetAssessment(), fates(t, now))
	}
	if run := h.work(newCore(t)); run.ChangedCount != 0 {
		t.Errorf("a second run stands at %+v", run)
	}
}

// firstFinding is the first finding of an approval's answer whose verdict is asked for.
func (h *house) firstFinding(a *pb.Approval, is func(pb.Verdict) bool) *pb.Finding {
	h.t.Helper()
	kept, err := h.assessments().GetAssessment(h.as(ines), &pb.GetAssessmentRequest{Name: a.GetAssessment()})
	h.must(err)
	list := kept.GetReport().GetFindings()
	return list[slices.IndexFunc(list, func(f *pb.Finding) bool { return is(f.GetVerdict()) })]
}

// TestBetterVerdictIsToldAndLapsesNothing has another core judge better than the one that was signed.
func TestBetterVerdictIsToldAndLapsesNothing(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	good := h.firstFinding(a, func(v pb.Verdict) bool { return v == pb.Verdict_VERDICT_HOLDS })
	h.otherCore(a, func(id, verdict string) string {
		if id == good.GetId() {
			return string(assess.VerdictFails)
		}
		return verdict
	})
	before := h.entryCount()
	h.work(newCore(t))
	now := h.approval(a)
	if now.GetState() != pb.ApprovalState_APPROVAL_STATE_SIGNED || now.GetSignatures()[0].GetLapsed() || now.GetAssessment() != a.GetAssessment() ||
		now.GetSigningDigest() != a.GetSigningDigest() {
		t.Errorf("what was signed is %v, %v", now.GetState(), now.GetSignatures())
	}
	list := h.changes(ada, &pb.ListVerdictChangesRequest{Unread: true})
	if len(list) != 1 || list[0].GetLapsed() || list[0].GetStateNow() != pb.ApprovalState_APPROVAL_STATE_SIGNED {
		t.Fatalf("the owner reads %v", list)
	}
	if got := h.entryCount() - before; got != 3 { // the run, the new answer, the change
		t.Errorf("%d ledger entries, want 3", got)
	}
	h.markAndRead(list[0])
}

// markAndRead marks a change as ada, and wants it gone from her unread list and from nobody else's.
func (h *house) markAndRead(change *pb.VerdictChanges) {
	h.t.Helper()
	for range 2 {
		marked, err := h.approvals().MarkVerdictChangesRead(h.as(ada), &pb.MarkVerdictChangesReadRequest{Name: change.GetName()})
		h.must(err)
		if !marked.GetRead() {
			h.t.Errorf("marked %v", marked)
		}
	}
	if left := h.changes(ada, &pb.ListVerdictChangesRequest{Unread: true}); len(left) != 0 {
		h.t.Errorf("unread by her: %v", left)
	}
	if all := h.changes(ada, &pb.ListVerdictChangesRequest{}); len(all) != 1 || !all[0].GetRead() {
		h.t.Errorf("all that she reads: %v", all)
	}
	if others := h.changes(ines, &pb.ListVerdictChangesRequest{Unread: true}); len(others) != 1 || others[0].GetRead() {
		h.t.Errorf("unread by the officer: %v", others)
	}
	if none := h.changes(bram, &pb.ListVerdictChangesRequest{}); len(none) != 0 {
		h.t.Errorf("another member reads %v", none)
	}
}

// TestPublicationIsListed publishes a pack that changes a verdict and wants the change in the list.
func TestPublicationIsListed(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	h.inForce(h.edited(h.newPack("eu-open-a3"), massOf(1.5)))
	list := h.changes(ines, &pb.ListVerdictChangesRequest{Approval: a.GetName()})
	if len(list) != 1 || !list[0].GetLapsed() || list[0].GetCause() != pb.ReassessmentCause_REASSESSMENT_CAUSE_RULES || len(list[0].GetChanges()) != 2 {
		t.Errorf("listed %v", list)
	}
}

// massOf is a pack of one rule, the greatest mass.
func massOf(most float64) func(*pb.RulePackContent) {
	return func(c *pb.RulePackContent) {
		c.Rules = []*pb.AppliedRule{rule(c, "mass")}
		yes := true
		c.Rules[0].Verified, c.Rules[0].Value = &yes, proto.Float64(most)
	}
}

// TestManyApprovalsAreLeftToJobs publishes a pack over more approvals than one transaction computes. None lapses at once and none can be signed; the jobs
// then lapse what changes.
func TestManyApprovalsAreLeftToJobs(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	m, f := h.newModel(ada), h.newField()
	ready := h.atField(h.draft(m, f))
	bare := h.bareModel(ada)
	for range 40 {
		_, err := h.submit(h.as(ada), h.draft(bare, f))
		h.must(err)
	}
	h.inForce(h.edited(h.newPack("eu-open-a3"), massOf(1.5)))
	if now := h.approval(ready); now.GetState() != pb.ApprovalState_APPROVAL_STATE_READY {
		t.Fatalf("before the jobs it is %v", now.GetState())
	}
	_, err := h.sign(h.as(ines), ready)
	wantRefusal(t, err, codes.FailedPrecondition, "RULES_CHANGED")
	if run := h.work(nil); run.Approvals != 41 || run.ChangedCount != 41 {
		t.Errorf("the run stands at %+v", run)
	}
	if now := h.approval(ready); now.GetState() != pb.ApprovalState_APPROVAL_STATE_LAPSED {
		t.Errorf("after the jobs it is %v", now.GetState())
	}
	h.signed(h.approval(ready)) // computed by the new rules it can be signed
}
