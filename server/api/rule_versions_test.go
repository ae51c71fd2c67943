package api_test

import (
	"strings"
	"testing"

	pb "pitgate/proto/pitgate/v1"
)

// massFrom makes a pack of one rule, the greatest mass, that begins on a day.
func massFrom(first string, most float64) func(*pb.RulePackContent) {
	return func(c *pb.RulePackContent) {
		massOf(most)(c)
		c.InForceDate, c.Version = first, first
	}
}

// on is the day of a flight of the Dabchick.
func on(t *testing.T, date string) *pb.DayConditions {
	t.Helper()
	day := file(t, "day_long_acre_dry", &pb.DayConditions{})
	day.Time = date + day.GetTime()[len(date):]
	return day
}

// TestVersionCountsFromItsFirstDayOn publishes a version for a later day. Flights before it stand on the former one, signed as they are; a flight from that
// day on lapses; and neither has a day without the rule.
func TestVersionCountsFromItsFirstDayOn(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	m, f := h.newModel(ada), h.newField()
	former := h.inForce(h.edited(h.newPack("eu-open-a3"), massFrom("2021-01-01", 25)))
	var approvals []*pb.Approval
	days := []string{"2026-05-31", "2026-06-01"}
	for _, day := range days {
		a, err := h.approvals().CreateApproval(h.as(ada), &pb.CreateApprovalRequest{Parent: "clubs/" + home, Approval: &pb.Approval{
			Model: m.GetName(), Field: f.GetName(), LaunchPlan: file(t, "plan_dabchick_long_acre", &pb.LaunchPlan{}), Day: on(t, day)}})
		h.must(err)
		approvals = append(approvals, h.signed(a))
	}
	h.inForce(h.edited(h.newPack("eu-open-a3"), massFrom("2026-06-01", 1.5)))
	for i, want := range []pb.ApprovalState{pb.ApprovalState_APPROVAL_STATE_SIGNED, pb.ApprovalState_APPROVAL_STATE_LAPSED} {
		now := h.approval(approvals[i])
		if now.GetState() != want {
			t.Errorf("the flight on %s is %v", days[i], now.GetState())
		}
		in := file(t, "dabchick_long_acre", &pb.AssessmentInput{})
		in.Limits, in.Day = nil, on(t, days[i])
		made, err := h.packs().ComposeLimits(h.as(ada), &pb.ComposeLimitsRequest{Parent: "clubs/" + home, Input: in})
		h.must(err)
		if got, want := made.GetLimits().GetMaximumMassKg(), []float64{25, 1.5}[i]; got != want || len(made.GetLimits().GetRules()) != 1 {
			t.Errorf("on %s the limit is %v of %d rules, want %v of one", days[i], got, len(made.GetLimits().GetRules()), want)
		}
	}
	now, err := h.packs().GetRulePack(h.as(ada), &pb.GetRulePackRequest{Name: former.GetName()})
	h.must(err)
	if now.GetState() != pb.RulePackState_RULE_PACK_STATE_PUBLISHED || now.GetReplacedDate() != "2026-06-01" {
		t.Errorf("the former version is %v, replaced on %q", now.GetState(), now.GetReplacedDate())
	}
}

// TestPreviewOfALaterVersion foretells a change for a flight on the first day and none for one before it.
func TestPreviewOfALaterVersion(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	a := h.signedApproval() // flies on 2026-05-16
	h.inForce(h.edited(h.newPack("eu-open-a3"), massFrom("2021-01-01", 25)))
	for first, want := range map[string]int{"2026-05-16": 1, "2026-05-17": 0} {
		draft := h.edited(h.newPack("eu-open-a3"), massFrom(first, 1.5))
		preview, err := h.packs().PreviewRulePack(h.as(ines), &pb.PreviewRulePackRequest{Name: draft.GetName()})
		h.must(err)
		if got := preview.GetApprovals(); len(got) != want {
			t.Errorf("from %s on: %v", first, got)
		}
	}
	if !strings.HasPrefix(a.GetDay().GetTime(), "2026-05-16") {
		t.Fatalf("the demo's day is %s", a.GetDay().GetTime())
	}
}
