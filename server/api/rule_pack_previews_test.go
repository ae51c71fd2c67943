package api_test

import (
	"testing"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
)

const (
	running   = pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_RUNNING
	done      = pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_DONE
	cancelled = pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_CANCELLED
	outdated  = pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_OUTDATED
)

// foretell begins a preview as somebody.
func (h *house) foretell(who string, p *pb.RulePack) *pb.RulePackPreview {
	h.t.Helper()
	v, err := h.packs().BeginRulePackPreview(h.as(who), &pb.BeginRulePackPreviewRequest{Name: p.GetName()})
	h.must(err)
	return v
}

// progress reads how far a preview is.
func (h *house) progress(v *pb.RulePackPreview) *pb.RulePackPreview {
	h.t.Helper()
	v, err := h.packs().GetRulePackPreview(h.as(ines), &pb.GetRulePackPreviewRequest{Name: v.GetName()})
	h.must(err)
	return v
}

// TestFewAreForetoldAtOnce wants a preview over few approvals to be done with the answer, to say what the one call says, to serve everybody until the pack
// or the rules change, and to change nothing.
func TestFewAreForetoldAtOnce(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval()
	draft := h.edited(h.newPack("eu-open-a3"), massOf(1.5))
	before := h.entryCount()
	v := h.foretell(mei, draft)
	one, err := h.packs().PreviewRulePack(h.as(mei), &pb.PreviewRulePackRequest{Name: draft.GetName()})
	h.must(err)
	if v.GetState() != done || v.GetApprovalCount() != 1 || v.GetDoneCount() != 1 || v.GetChangedCount() != 1 || len(v.GetApprovals()) != 1 {
		t.Fatalf("preview %v", v)
	}
	if !proto.Equal(v.GetApprovals()[0], one.GetApprovals()[0]) {
		t.Errorf("the preview says %v, the one call %v", v.GetApprovals()[0], one.GetApprovals()[0])
	}
	if again := h.foretell(tomas, draft); again.GetName() != v.GetName() {
		t.Errorf("a second one was begun: %v", again)
	}
	if now := h.approval(a); now.GetState() != pb.ApprovalState_APPROVAL_STATE_SIGNED || h.entryCount() != before {
		t.Errorf("the preview left %v and %d ledger entries", now.GetState(), h.entryCount()-before)
	}
	draft = h.edited(draft, massOf(25))
	if now := h.progress(v); now.GetState() != outdated {
		t.Errorf("after the pack changed it is %v", now.GetState())
	}
	next := h.foretell(mei, draft)
	if next.GetName() == v.GetName() || next.GetState() != done || next.GetChangedCount() != 0 {
		t.Errorf("the next is %v", next)
	}
	_, err = h.packs().GetRulePackPreview(h.as(mei), &pb.GetRulePackPreviewRequest{Name: v.GetName()})
	wantRefusal(t, err, codes.NotFound, "NOT_FOUND")
	h.inForce(h.edited(h.newPack("us-recreational"), func(c *pb.RulePackContent) { c.Rules = []*pb.AppliedRule{rule(c, "height")} }))
	if now := h.progress(next); now.GetState() != outdated {
		t.Errorf("after other rules came into force it is %v", now.GetState())
	}
}

// TestManyAreForetoldByJobs has more approvals than one call computes: the one call is refused, the preview is followed, cancelled, begun anew and done,
// and nothing lapses before two people publish.
func TestManyAreForetoldByJobs(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	bare, f := h.bareModel(ada), h.newField()
	ready := h.atField(h.draft(bare, f))
	for range 40 {
		_, err := h.submit(h.as(ada), h.draft(bare, f))
		h.must(err)
	}
	draft := h.edited(h.newPack("eu-open-a3"), massOf(1.5))
	_, err := h.packs().PreviewRulePack(h.as(mei), &pb.PreviewRulePackRequest{Name: draft.GetName()})
	wantRefusal(t, err, codes.FailedPrecondition, "TOO_MANY_APPROVALS")
	first := h.foretell(mei, draft)
	if first.GetState() != running || first.GetApprovalCount() != 41 || first.GetDoneCount() != 0 || len(first.GetApprovals()) != 0 {
		t.Fatalf("begun: %v", first)
	}
	stopped, err := h.packs().CancelRulePackPreview(h.as(mei), &pb.CancelRulePackPreviewRequest{Name: first.GetName()})
	h.must(err)
	if stopped.GetState() != cancelled {
		t.Errorf("cancelled: %v", stopped)
	}
	second := h.foretell(mei, draft)
	if second.GetName() == first.GetName() || second.GetState() != running {
		t.Fatalf("begun anew: %v", second)
	}
	defer h.workers()()
	seen := map[int32]bool{}
	for end := time.Now().Add(60 * time.Second); second.GetState() == running; time.Sleep(10 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("the preview stands at %v", second)
		}
		second = h.progress(second)
		seen[second.GetDoneCount()] = true
	}
	if second.GetState() != done || second.GetDoneCount() != 41 || second.GetChangedCount() != 41 || len(second.GetApprovals()) != 41 || second.GetFailedCount() != 0 {
		t.Errorf("done: %v, %d of %d", second.GetState(), second.GetDoneCount(), second.GetApprovalCount())
	}
	if len(seen) < 3 {
		t.Errorf("no progress was seen: %v", seen)
	}
	if now := h.approval(ready); now.GetState() != pb.ApprovalState_APPROVAL_STATE_READY {
		t.Errorf("the preview made it %v", now.GetState())
	}
	stopped, err = h.packs().CancelRulePackPreview(h.as(mei), &pb.CancelRulePackPreviewRequest{Name: second.GetName()})
	h.must(err)
	if stopped.GetState() != done {
		t.Errorf("what is done is cancelled: %v", stopped.GetState())
	}
}
