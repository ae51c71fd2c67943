package api_test

import (
	"slices"
	"strings"
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/fieldmaskpb"

	pb "pitgate/proto/pitgate/v1"
)

// newPack drafts one of the supplied packs.
func (h *house) newPack(id string) *pb.RulePack {
	h.t.Helper()
	p, err := h.packs().CreateRulePack(h.as(mei), &pb.CreateRulePackRequest{Parent: "clubs/" + home, RulePack: &pb.RulePack{Content: h.supplied(id)}})
	h.must(err)
	return p
}

// supplied is the content of one of the supplied packs.
func (h *house) supplied(id string) *pb.RulePackContent {
	h.t.Helper()
	all, err := h.packs().ListSuppliedRulePacks(h.as(ada), &pb.ListSuppliedRulePacksRequest{Parent: "clubs/" + home})
	h.must(err)
	i := slices.IndexFunc(all.GetPacks(), func(p *pb.RulePackContent) bool { return p.GetId() == id })
	return all.GetPacks()[i]
}

// publish gives one person's word.
func (h *house) publish(who string, p *pb.RulePack) (*pb.RulePack, error) {
	return h.packs().PublishRulePack(h.as(who), &pb.PublishRulePackRequest{Name: p.GetName(), Etag: p.GetEtag()})
}

// inForce publishes a pack by two committee members.
func (h *house) inForce(p *pb.RulePack) *pb.RulePack {
	h.t.Helper()
	p, err := h.publish(mei, p)
	h.must(err)
	p, err = h.publish(tomas, p)
	h.must(err)
	return p
}

// edited replaces a draft's content.
func (h *house) edited(p *pb.RulePack, change func(*pb.RulePackContent)) *pb.RulePack {
	h.t.Helper()
	p = proto.CloneOf(p)
	change(p.Content)
	p, err := h.packs().UpdateRulePack(h.as(mei), &pb.UpdateRulePackRequest{RulePack: p, UpdateMask: &fieldmaskpb.FieldMask{Paths: []string{"content"}}})
	h.must(err)
	return p
}

// rule finds a rule of a pack.
func rule(c *pb.RulePackContent, id string) *pb.AppliedRule {
	i := slices.IndexFunc(c.GetRules(), func(r *pb.AppliedRule) bool { return r.GetId() == id })
	return c.Rules[i]
}

// TestTwoPublish wants nobody to publish or to retire alone, and a changed proposal to need both words anew.
func TestTwoPublish(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	draft := h.newPack("larkmoor-club")
	proposed, err := h.publish(mei, draft)
	h.must(err)
	if proposed.GetState() != pb.RulePackState_RULE_PACK_STATE_PROPOSED || len(proposed.GetPublisherDisplayNames()) != 1 {
		t.Fatalf("after one word: %v by %v", proposed.GetState(), proposed.GetPublisherDisplayNames())
	}
	_, err = h.publish(mei, proposed)
	wantRefusal(t, err, codes.AlreadyExists, "ALREADY_VOTED")
	_, err = h.publish(tomas, draft)
	wantRefusal(t, err, codes.Aborted, "ETAG_MISMATCH")
	changed := h.edited(proposed, func(c *pb.RulePackContent) { *rule(c, "strip-use").Value = 0.4 })
	if changed.GetState() != pb.RulePackState_RULE_PACK_STATE_DRAFT || changed.GetDigest() == draft.GetDigest() {
		t.Errorf("a changed proposal is %v", changed.GetState())
	}
	half, err := h.publish(tomas, changed)
	h.must(err)
	if half.GetState() != pb.RulePackState_RULE_PACK_STATE_PROPOSED {
		t.Errorf("the word for the former content counts: %v", half.GetState())
	}
	published, err := h.publish(mei, half)
	h.must(err)
	if published.GetState() != pb.RulePackState_RULE_PACK_STATE_PUBLISHED || published.GetPublishTime() == nil {
		t.Fatalf("after two words: %v", published.GetState())
	}
	_, err = h.packs().UpdateRulePack(h.as(mei), &pb.UpdateRulePackRequest{RulePack: published})
	wantRefusal(t, err, codes.FailedPrecondition, "PUBLISHED_ALREADY")
	h.retireInTwo(published)
}

// retireInTwo takes a published pack out of force.
func (h *house) retireInTwo(p *pb.RulePack) {
	h.t.Helper()
	for i, who := range []string{tomas, mei} {
		var err error
		p, err = h.packs().RetireRulePack(h.as(who), &pb.RetireRulePackRequest{Name: p.GetName(), Etag: p.GetEtag()})
		h.must(err)
		if retired := p.GetState() == pb.RulePackState_RULE_PACK_STATE_RETIRED; retired != (i == 1) {
			h.t.Errorf("after %d words: %v", i+1, p.GetState())
		}
	}
}

// signedApproval leads the Dabchick to a signature.
func (h *house) signedApproval() *pb.Approval {
	h.t.Helper()
	return h.signed(h.draft(h.newModel(ada), h.newField()))
}

// signed leads an approval of ada's to a signature.
func (h *house) signed(a *pb.Approval) *pb.Approval {
	h.t.Helper()
	a, err := h.sign(h.as(ines), h.atField(a))
	h.must(err)
	return a
}

// atField submits an approval of ada's and leads it to the field.
func (h *house) atField(a *pb.Approval) *pb.Approval {
	h.t.Helper()
	a, err := h.submit(h.as(ada), a)
	h.must(err)
	for _, s := range []struct{ verb, who string }{{"beginReview", ines}, {"passDesk", ines}, {"passBench", tomas}} {
		a, err = h.decision(s.verb, "")(h.as(s.who), a)
		h.must(err)
	}
	return a
}

// TestPublicationLapsesWhatChanges previews a pack, publishes it and wants exactly what was foretold: the signed approval lapses, the reason names the
// findings, the ledger has entries for both, and nothing is signed anew.
func TestPublicationLapsesWhatChanges(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	draft := h.edited(h.newPack("eu-open-a3"), func(c *pb.RulePackContent) {
		c.Rules = []*pb.AppliedRule{rule(c, "mass")}
		yes := true
		c.Rules[0].Verified = &yes
		*c.Rules[0].Value = 1.5
	})
	preview, err := h.packs().PreviewRulePack(h.as(ines), &pb.PreviewRulePackRequest{Name: draft.GetName()})
	h.must(err)
	wantForetold(t, preview, a)
	if now := h.approval(a); now.GetState() != pb.ApprovalState_APPROVAL_STATE_SIGNED {
		t.Fatalf("the preview changed the approval to %v", now.GetState())
	}
	before := h.entryCount()
	h.inForce(draft)
	after := h.approval(a)
	last := after.GetTransitions()[len(after.GetTransitions())-1]
	if after.GetState() != pb.ApprovalState_APPROVAL_STATE_LAPSED || !after.GetSignatures()[0].GetLapsed() || len(after.GetSignatures()) != 1 {
		t.Errorf("after publication: %v, signatures %v", after.GetState(), after.GetSignatures())
	}
	for _, word := range []string{"eu-open-a3", "mass.class", "rule.eu-open-a3.mass", "to fails", "gates"} {
		if !strings.Contains(last.GetReason(), word) {
			t.Errorf("reason %q does not say %q", last.GetReason(), word)
		}
	}
	if got := h.entryCount() - before; got != 4 { // two words, the new answer and the lapse
		t.Errorf("%d ledger entries, want 4", got)
	}
	again, err := h.submit(h.as(ada), after)
	h.must(err)
	kept, err := h.assessments().GetAssessment(h.as(ada), &pb.GetAssessmentRequest{Name: again.GetAssessment()})
	h.must(err)
	if limits := kept.GetInput().GetLimits(); limits.GetMaximumMassKg() != 1.5 || !strings.Contains(limits.GetRulePack(), "eu-open-a3") {
		t.Errorf("submitted again under limits %v of %q", limits.GetMaximumMassKg(), limits.GetRulePack())
	}
}

func (h *house) approval(a *pb.Approval) *pb.Approval {
	h.t.Helper()
	now, err := h.approvals().GetApproval(h.as(ines), &pb.GetApprovalRequest{Name: a.GetName()})
	h.must(err)
	return now
}

// wantForetold wants the preview to name the approval with both findings that turn, and no other change.
func wantForetold(t *testing.T, preview *pb.PreviewRulePackResponse, a *pb.Approval) {
	t.Helper()
	if len(preview.GetApprovals()) != 1 || preview.GetTriedApprovalCount() != 1 {
		t.Fatalf("preview %v", preview)
	}
	one, got := preview.GetApprovals()[0], map[string]string{}
	for _, c := range one.GetChanges() {
		got[c.GetFindingId()] = c.GetFrom().String() + ">" + c.GetTo().String()
	}
	if one.GetApproval() != a.GetName() || !one.GetLapses() || one.GetState() != "signed" || len(got) != 2 ||
		got["mass.class"] != "VERDICT_HOLDS>VERDICT_FAILS" || got["rule.eu-open-a3.mass"] != "VERDICT_UNSPECIFIED>VERDICT_FAILS" {
		t.Errorf("foretold %v, %v", one, got)
	}
}

// TestPackThatChangesNothingLapsesNothing publishes a pack whose rules hold, then a looser version of it.
func TestPackThatChangesNothingLapsesNothing(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	yes := true
	wide := func(value float64, version string) func(*pb.RulePackContent) {
		return func(c *pb.RulePackContent) {
			c.Version, c.Rules = version, []*pb.AppliedRule{rule(c, "mass")}
			c.Rules[0].Verified, c.Rules[0].Value = &yes, &value
		}
	}
	first := h.inForce(h.edited(h.newPack("eu-open-a3"), wide(25, "1")))
	h.inForce(h.edited(h.newPack("eu-open-a3"), wide(30, "2")))
	if now := h.approval(a); now.GetState() != pb.ApprovalState_APPROVAL_STATE_SIGNED || now.GetSignatures()[0].GetLapsed() {
		t.Errorf("an approval that no rule changes is %v", now.GetState())
	}
	former, err := h.packs().GetRulePack(h.as(ada), &pb.GetRulePackRequest{Name: first.GetName()})
	h.must(err)
	if former.GetState() != pb.RulePackState_RULE_PACK_STATE_RETIRED || former.GetRetireTime() == nil {
		t.Errorf("the former version is %v", former.GetState())
	}
}

// TestStrictestView composes two packs in force and a draft, and wants the view to say who asks what.
func TestStrictestView(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	h.inForce(h.newPack("us-recreational"))
	draft := h.newPack("eu-open-a3")
	in := file(t, "sandmartin_long_acre", &pb.AssessmentInput{})
	in.Limits = nil
	for with, want := range map[string]struct {
		value float64
		by    string
		asked int
	}{"": {121.92, "rule.us-recreational.height", 1}, draft.GetName(): {120, "rule.eu-open-a3.height", 2}} {
		made, err := h.packs().ComposeLimits(h.as(ada), &pb.ComposeLimitsRequest{Parent: "clubs/" + home, Input: in, WithRulePack: with})
		h.must(err)
		i := slices.IndexFunc(made.GetFigures(), func(f *pb.StrictestFigure) bool { return f.GetLimit() == "maximumHeightMeters" })
		f := made.GetFigures()[i]
		if f.GetValue() != want.value || f.GetDeciding() != want.by || len(f.GetAsked()) != want.asked || made.GetLimits().GetMaximumHeightMeters() != want.value {
			t.Errorf("with %q: %v", with, f)
		}
	}
}

// TestBrokenPackIsRefused names the fault by its path.
func TestBrokenPackIsRefused(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	content := h.supplied("eu-open-a3")
	content.Rules[0].Limit = "maximumColour"
	_, err := h.packs().CreateRulePack(h.as(mei), &pb.CreateRulePackRequest{Parent: "clubs/" + home, RulePack: &pb.RulePack{Content: content}})
	wantRefusal(t, err, codes.InvalidArgument, "INVALID_DOCUMENT")
	if !slices.Contains(violated(err), "rulePack.content.rules[0].limit") {
		t.Errorf("violations %v", violated(err))
	}
}

// TestOwnerConfirms submits without and with the owner's word, which carries the owner's name whatever the request says.
func TestOwnerConfirms(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	yes := true
	h.inForce(h.edited(h.newPack("us-recreational"), func(c *pb.RulePackContent) { c.Rules = []*pb.AppliedRule{rule(c, "registration")} }))
	a, err := h.submit(h.as(ada), h.draft(h.newModel(ada), h.newField()))
	h.must(err)
	if f := h.finding(a, "rule.us-recreational.registration"); f.GetVerdict() != pb.Verdict_VERDICT_UNKNOWN {
		t.Errorf("without a word: %v", f)
	}
	for _, step := range []struct{ verb, reason string }{{"beginReview", ""}, {"return", "confirm the registration"}} {
		a, err = h.decision(step.verb, step.reason)(h.as(ines), a)
		h.must(err)
	}
	word := &pb.RuleConfirmation{Rule: "us-recreational.registration", Confirmed: &yes, By: "Person " + ines, Date: "2026-05-01"}
	a, err = h.approvals().SubmitApproval(h.as(ada), &pb.SubmitApprovalRequest{Name: a.GetName(), Etag: a.GetEtag(), Confirmations: []*pb.RuleConfirmation{word}})
	h.must(err)
	f := h.finding(a, "rule.us-recreational.registration")
	if f.GetVerdict() != pb.Verdict_VERDICT_HOLDS || !strings.Contains(f.GetNote(), "Person "+ada) {
		t.Errorf("with the owner's word: %v", f)
	}
	if got := a.GetConfirmations(); len(got) != 1 || got[0].GetBy() != "Person "+ada || got[0].GetDate() != "2026-05-01" {
		t.Errorf("kept %v", got)
	}
	word.Date = "2999-01-01"
	_, err = h.approvals().CreateApproval(h.as(ada), &pb.CreateApprovalRequest{Parent: "clubs/" + home, Approval: &pb.Approval{Model: a.GetModel(),
		Field: a.GetField(), LaunchPlan: a.GetLaunchPlan(), Day: a.GetDay(), Confirmations: []*pb.RuleConfirmation{word}}})
	if !slices.Contains(violated(err), "confirmations[0].date") {
		t.Errorf("a word of the year 2999: %v", err)
	}
}

// finding reads a finding of an approval's assessment.
func (h *house) finding(a *pb.Approval, id string) *pb.Finding {
	h.t.Helper()
	kept, err := h.assessments().GetAssessment(h.as(ines), &pb.GetAssessmentRequest{Name: a.GetAssessment()})
	h.must(err)
	list := kept.GetReport().GetFindings()
	i := slices.IndexFunc(list, func(f *pb.Finding) bool { return f.GetId() == id })
	return list[i]
}

// TestNobodyVerifiesForAnother lets a committee member set the own name beside a rule, carries it over to the next version, and refuses another's.
func TestNobodyVerifiesForAnother(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	say := func(by string) func(*pb.RulePackContent) {
		return func(c *pb.RulePackContent) {
			r, yes := rule(c, "strip-use"), true
			r.Verified, r.VerifiedBy, r.VerifiedDate = &yes, by, "2026-05-16"
		}
	}
	draft := h.newPack("larkmoor-club")
	other := proto.CloneOf(draft)
	say("Person " + tomas)(other.Content)
	_, err := h.packs().UpdateRulePack(h.as(mei), &pb.UpdateRulePackRequest{RulePack: other})
	wantRefusal(t, err, codes.InvalidArgument, "INVALID_FIELDS")
	published := h.inForce(h.edited(draft, say("Person "+mei)))
	next := published.GetContent()
	next.Version = "draft 2"
	carried, err := h.packs().CreateRulePack(h.as(tomas), &pb.CreateRulePackRequest{Parent: "clubs/" + home, RulePack: &pb.RulePack{Content: next}})
	h.must(err)
	moved := proto.CloneOf(carried)
	*rule(moved.Content, "strip-use").Value = 0.4
	_, err = h.packs().UpdateRulePack(h.as(tomas), &pb.UpdateRulePackRequest{RulePack: moved})
	wantRefusal(t, err, codes.InvalidArgument, "INVALID_FIELDS")
}
