package api_test

import (
	"strings"
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
)

// oneRule is a pack of one rule with a figure of its own.
func oneRule(id string, value float64) func(*pb.RulePackContent) {
	return func(c *pb.RulePackContent) {
		c.Rules = []*pb.AppliedRule{rule(c, id)}
		c.Rules[0].Verified, c.Rules[0].Value = proto.Bool(true), proto.Float64(value)
	}
}

// fates writes what the last step says of the gates: "+" stands, "-" opens again. Each must say why.
func fates(t *testing.T, a *pb.Approval) string {
	t.Helper()
	var out []string
	for _, f := range a.GetTransitions()[len(a.GetTransitions())-1].GetGates() {
		if f.GetWhy() == "" {
			t.Errorf("no word why: %v", f)
		}
		mark := map[bool]string{true: "+", false: "-"}[f.GetStands()]
		out = append(out, mark+strings.ToLower(strings.TrimPrefix(f.GetGate().String(), "GATE_")))
	}
	return strings.Join(out, " ")
}

// take takes an approval through steps "who:verb" and says where each led.
func (h *house) take(a *pb.Approval, steps ...string) (after *pb.Approval, path string) {
	h.t.Helper()
	var led []string
	for _, step := range steps {
		who, verb, _ := strings.Cut(step, ":")
		var err error
		switch verb {
		case "submit":
			a, err = h.submit(h.as(who), a)
		case "sign":
			a, err = h.sign(h.as(who), a)
		default:
			a, err = h.decision(verb, "")(h.as(who), a)
		}
		h.must(err)
		led = append(led, strings.ToLower(strings.TrimPrefix(a.GetState().String(), "APPROVAL_STATE_")))
	}
	return a, strings.Join(led, " ")
}

// TestRulesOpenOnlyTheGatesConcerned publishes a rule that no inspection rests on, takes it out of force again, and publishes one that the bench list
// names. The bench gate stands, then both, then none; each time the approval is signed anew over the present answer and no former signature is touched.
func TestRulesOpenOnlyTheGatesConcerned(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	height := h.inForce(h.edited(h.newPack("eu-open-a3"), oneRule("height", 20)))
	lapsed := h.wantLapsed(a, "-desk +bench -field", []pb.Gate{pb.Gate_GATE_BENCH})
	again, path := h.take(lapsed, ada+":submit", ines+":beginReview", ines+":passDesk")
	if path != "submitted desk_review ready" {
		t.Errorf("with the bench gate kept it went %s", path)
	}
	_, err := h.decision("passBench", "")(h.as(tomas), again)
	wantRefusal(t, err, codes.FailedPrecondition, "WRONG_STATE")
	again, _ = h.take(again, ines+":sign")
	h.wantSignatures(again, a)

	h.retireInTwo(height)
	lapsed = h.wantLapsed(again, "+desk +bench -field", []pb.Gate{pb.Gate_GATE_DESK, pb.Gate_GATE_BENCH})
	third, path := h.take(lapsed, ada+":submit", tomas+":beginReview", tomas+":sign")
	if path != "submitted ready signed" {
		t.Errorf("with desk and bench gate kept it went %s", path)
	}
	h.wantSignatures(third, again)

	h.inForce(h.edited(h.newPack("eu-open-a3"), oneRule("mass", 1.5)))
	lapsed = h.wantLapsed(third, "-desk -bench -field", nil)
	if _, path = h.take(lapsed, ada+":submit", ines+":beginReview", ines+":passDesk", tomas+":passBench"); path != "submitted desk_review bench ready" {
		t.Errorf("with no gate kept it went %s", path)
	}
}

// wantLapsed wants a signed approval lapsed with these fates, on a new answer that is listed, and its ledger entry to tell each gate.
func (h *house) wantLapsed(signed *pb.Approval, want string, kept []pb.Gate) *pb.Approval {
	h.t.Helper()
	now := h.approval(signed)
	last := now.GetTransitions()[len(now.GetTransitions())-1]
	if now.GetState() != pb.ApprovalState_APPROVAL_STATE_LAPSED || fates(h.t, now) != want || len(now.GetKeptGates()) != len(kept) {
		h.t.Fatalf("it is %v, gates %q, kept %v; want %q", now.GetState(), fates(h.t, now), now.GetKeptGates(), want)
	}
	change := h.changes(ines, &pb.ListVerdictChangesRequest{Approval: signed.GetName()})[0]
	if now.GetAssessment() == signed.GetAssessment() || now.GetAssessment() != change.GetAssessment() || last.GetAssessment() != now.GetAssessment() {
		h.t.Errorf("it stands on %s, the step names %s, the change %s", now.GetAssessment(), last.GetAssessment(), change.GetAssessment())
	}
	entries, err := h.ledger().ListEntries(h.as(bram), &pb.ListEntriesRequest{Parent: "clubs/" + home, PageSize: 1000})
	h.must(err)
	entry := entries.GetEntries()[last.GetLedgerIndex()].GetEntry()
	for _, f := range strings.Fields(want) {
		part := `"gate":"` + f[1:] + `","stands":` + map[byte]string{'+': "true", '-': "false"}[f[0]]
		if !strings.Contains(entry, part) {
			h.t.Errorf("the ledger entry %s lacks %s", entry, part)
		}
	}
	return now
}

// wantSignatures wants every former signature as it was given, lapsed, and one more over what the approval says now.
func (h *house) wantSignatures(now, before *pb.Approval) {
	h.t.Helper()
	former, all := before.GetSignatures(), now.GetSignatures()
	if len(all) != len(former)+1 {
		h.t.Fatalf("%d signatures, want %d", len(all), len(former)+1)
	}
	for i, was := range former {
		was = proto.CloneOf(was)
		was.Lapsed = true
		if !proto.Equal(was, all[i]) {
			h.t.Errorf("signature %v, given as %v", all[i], was)
		}
	}
	if last := all[len(all)-1]; last.GetLapsed() || last.GetDigest() != now.GetSigningDigest() || last.GetDigest() == former[len(former)-1].GetDigest() {
		h.t.Errorf("the present signature is %v, over %s", last, now.GetSigningDigest())
	}
}

// TestAnotherDayAsksForEveryGate lapses an approval with the bench gate kept and sends it again for another day.
func TestAnotherDayAsksForEveryGate(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	h.inForce(h.edited(h.newPack("eu-open-a3"), oneRule("height", 20)))
	lapsed := h.wantLapsed(a, "-desk +bench -field", []pb.Gate{pb.Gate_GATE_BENCH})
	day := proto.CloneOf(lapsed.GetDay())
	day.TemperatureCelsius.Value = proto.Float64(day.GetTemperatureCelsius().GetValue() + 3)
	again, err := h.approvals().SubmitApproval(h.as(ada), &pb.SubmitApprovalRequest{Name: lapsed.GetName(), Etag: lapsed.GetEtag(), Day: day})
	h.must(err)
	if len(again.GetKeptGates()) > 0 || fates(t, again) != "-bench" {
		t.Errorf("kept %v, gates %q", again.GetKeptGates(), fates(t, again))
	}
	if _, path := h.take(again, ines+":beginReview", ines+":passDesk"); path != "desk_review bench" {
		t.Errorf("it went %s", path)
	}
}

// TestOfficersNoOpensTheDeskAgain has an officer say no to a rule on an approval that is ready for the field.
func TestOfficersNoOpensTheDeskAgain(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	h.withOfficersRule(true)
	ready := h.atField(h.draft(h.newModel(ada), h.newField()))
	now, err := h.confirm(h.as(tomas), wordOn(ready, false))
	h.must(err)
	if now.GetState() != pb.ApprovalState_APPROVAL_STATE_DESK_REVIEW || fates(t, now) != "-desk +bench" {
		t.Errorf("it is %v, gates %q", now.GetState(), fates(t, now))
	}
	_, err = h.sign(h.as(ines), now)
	wantRefusal(t, err, codes.FailedPrecondition, "WRONG_STATE")
	if _, path := h.take(now, ines+":passDesk", ines+":sign"); path != "ready signed" {
		t.Errorf("it went %s", path)
	}
}
