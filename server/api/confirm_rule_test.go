package api_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
)

const registration = "us-recreational.registration"

// withOfficersRule puts a pack into force whose one rule takes somebody's word: an officer's, or anybody's.
func (h *house) withOfficersRule(officer bool) {
	h.t.Helper()
	h.inForce(h.edited(h.newPack("us-recreational"), func(c *pb.RulePackContent) {
		c.Rules = []*pb.AppliedRule{rule(c, "registration")}
		c.Rules[0].Officer, c.Rules[0].Verified = &officer, proto.Bool(true)
	}))
}

// wordOn is an officer's answer to the rule, on the day of the flight.
func wordOn(a *pb.Approval, confirmed bool) *pb.ConfirmRuleRequest {
	return &pb.ConfirmRuleRequest{Name: a.GetName(), Etag: a.GetEtag(), Rule: registration, Confirmed: &confirmed, Date: "2026-05-16", Reason: "The number stands on the fuselage."}
}

// confirm sends an answer as somebody.
func (h *house) confirm(ctx context.Context, req *pb.ConfirmRuleRequest) (*pb.Approval, error) {
	return h.approvals().ConfirmRule(ctx, req)
}

// TestOfficerAnswersARule wants the owner's word not to count where the rule asks for an officer's, an officer's to be counted by a new assessment and to
// stand in approval and ledger with name, day and reason, and the signature to be over that assessment.
func TestOfficerAnswersARule(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	h.withOfficersRule(true)
	yes := true
	a := h.atField(h.draft(h.newModel(ada), h.newField(), &pb.RuleConfirmation{Rule: registration, Confirmed: &yes, Date: "2026-05-16", Officer: &yes}))
	if f := h.finding(a, "rule."+registration); f.GetVerdict() != pb.Verdict_VERDICT_UNKNOWN || !strings.Contains(f.GetNote(), "officer") {
		t.Errorf("after the owner's word: %v", f)
	}
	before := h.entryCount()
	now, err := h.confirm(h.as(tomas), wordOn(a, true))
	h.must(err)
	if f := h.finding(now, "rule."+registration); f.GetVerdict() != pb.Verdict_VERDICT_HOLDS || !strings.Contains(f.GetNote(), "Person "+tomas) {
		t.Errorf("after the officer's word: %v", f)
	}
	if now.GetState() != pb.ApprovalState_APPROVAL_STATE_READY || now.GetAssessment() == a.GetAssessment() || now.GetSigningDigest() == a.GetSigningDigest() {
		t.Errorf("%v, assessment %s, digest %s", now.GetState(), now.GetAssessment(), now.GetSigningDigest())
	}
	wantWords(t, now, "true "+tomas)
	if got := h.entryCount() - before; got != 2 { // the assessment and the answer
		t.Errorf("%d ledger entries, want 2", got)
	}
	entries, err := h.ledger().ListEntries(h.as(ada), &pb.ListEntriesRequest{Parent: "clubs/" + home, PageSize: 1000})
	h.must(err)
	last := entries.GetEntries()[len(entries.GetEntries())-1].GetEntry()
	for _, part := range []string{`"confirm_rule"`, registration, tomas, "The number stands on the fuselage.", `"confirmed":true`} {
		if !strings.Contains(last, part) {
			t.Errorf("the ledger entry %s lacks %s", last, part)
		}
	}
	signed, err := h.sign(h.as(ines), now)
	h.must(err)
	_, err = h.confirm(h.as(tomas), wordOn(signed, false)) // what is signed stays
	wantRefusal(t, err, codes.FailedPrecondition, "WRONG_STATE")
}

// wantWords compares the officers' answers, newest last.
func wantWords(t *testing.T, a *pb.Approval, want ...string) {
	t.Helper()
	var got []string
	for _, w := range a.GetRuleWords() {
		said := map[bool]string{true: "true", false: "false"}[w.GetConfirmed()]
		got = append(got, said+" "+strings.TrimPrefix(w.GetOfficer(), "clubs/"+home+"/people/"))
		if w.GetRule() != registration || w.GetReason() == "" || w.GetTime() == nil || w.GetLedgerIndex() == 0 || w.GetDate() != "2026-05-16" {
			t.Errorf("a word is %v", w)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("words %v, want %v", got, want)
	}
}

// TestOfficersWordStandsAgainstTheOwner has an officer say no, and wants the owner unable to say otherwise when sending again, and another officer able to.
func TestOfficersWordStandsAgainstTheOwner(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	h.withOfficersRule(false)
	yes := true
	a, err := h.submit(h.as(ada), h.draft(h.newModel(ada), h.newField(), &pb.RuleConfirmation{Rule: registration, Confirmed: &yes, Date: "2026-05-16"}))
	h.must(err)
	if f := h.finding(a, "rule."+registration); f.GetVerdict() != pb.Verdict_VERDICT_HOLDS {
		t.Errorf("after the owner's word: %v", f)
	}
	a, err = h.decision("beginReview", "")(h.as(ines), a)
	h.must(err)
	a, err = h.confirm(h.as(ines), wordOn(a, false))
	h.must(err)
	if f := h.finding(a, "rule."+registration); f.GetVerdict() != pb.Verdict_VERDICT_FAILS || !strings.Contains(f.GetNote(), "Person "+ines) {
		t.Errorf("after the officer's no: %v", f)
	}
	a, err = h.decision("return", "put the number on")(h.as(ines), a)
	h.must(err)
	_, err = h.approvals().SubmitApproval(h.as(ada), &pb.SubmitApprovalRequest{Name: a.GetName(), Etag: a.GetEtag(),
		Confirmations: []*pb.RuleConfirmation{{Rule: registration, Confirmed: &yes, Date: "2026-05-16"}}})
	if !slices.Contains(violated(err), "confirmations[0]") {
		t.Errorf("the owner says otherwise: %v", err)
	}
	a, err = h.submit(h.as(ada), a)
	h.must(err)
	a, err = h.decision("beginReview", "")(h.as(tomas), a)
	h.must(err)
	a, err = h.confirm(h.as(tomas), wordOn(a, true))
	h.must(err)
	wantWords(t, a, "false "+ines, "true "+tomas)
	if got := a.GetConfirmations(); len(got) != 1 || !got[0].GetOfficer() || got[0].GetBy() != "Person "+tomas {
		t.Errorf("what counts is %v", got)
	}
}

// TestWhoMayNotAnswer tries everybody who must not, and every fault of a request.
func TestWhoMayNotAnswer(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	h.withOfficersRule(true)
	f := h.newField()
	a := h.atField(h.draft(h.newModel(ada), f))
	for _, who := range []string{ada, bram, mei, kit} {
		_, err := h.confirm(h.as(who), wordOn(a, true))
		wantRefusal(t, err, codes.PermissionDenied, "ROLE_MISSING")
	}
	_, err := h.confirm(h.as(pal), wordOn(a, true))
	wantRefusal(t, err, codes.NotFound, "NOT_FOUND")
	own, err := h.submit(h.as(tomas), h.draft(h.newModel(tomas), f))
	h.must(err)
	own, err = h.decision("beginReview", "")(h.as(ines), own)
	h.must(err)
	_, err = h.confirm(h.as(tomas), wordOn(own, true))
	wantRefusal(t, err, codes.PermissionDenied, "OWN_APPROVAL")
	for field, change := range map[string]func(*pb.ConfirmRuleRequest){
		"rule":      func(r *pb.ConfirmRuleRequest) { r.Rule = "us-recreational.height" },
		"date":      func(r *pb.ConfirmRuleRequest) { r.Date = "2999-01-01" },
		"reason":    func(r *pb.ConfirmRuleRequest) { r.Reason = " " },
		"etag":      func(r *pb.ConfirmRuleRequest) { r.Etag = "" },
		"confirmed": func(r *pb.ConfirmRuleRequest) { r.Confirmed = nil },
	} {
		req := wordOn(a, true)
		change(req)
		if _, err := h.confirm(h.as(ines), req); !slices.Contains(violated(err), field) {
			t.Errorf("a wrong %s: %v", field, err)
		}
	}
	req := wordOn(a, true)
	req.RequestId = "5f0e7a52-7d1e-4c0b-9d55-0a4f2f8f7a11"
	first, err := h.confirm(h.as(ines), req)
	h.must(err)
	again, err := h.confirm(h.as(ines), req)
	h.must(err)
	if !proto.Equal(first, again) || len(h.approval(a).GetRuleWords()) != 1 {
		t.Errorf("sent twice: %v", h.approval(a).GetRuleWords())
	}
	_, err = h.confirm(h.as(ines), wordOn(a, false)) // on what was read before
	wantRefusal(t, err, codes.Aborted, "ETAG_MISMATCH")
}
