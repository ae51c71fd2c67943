package api_test

import (
	"slices"
	"testing"

	"google.golang.org/grpc/codes"

	pb "pitgate/proto/pitgate/v1"
)

// TestOwnerMayOnlyTightenLimits lets an owner ask for more than the core does, and neither for less nor for a rule's confirmation.
func TestOwnerMayOnlyTightenLimits(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	model, field := h.newModel(ada), h.newField()
	number := func(v float64) *float64 { return &v }
	yes := true
	rows := []struct {
		name   string
		limits *pb.Limits
		want   string
	}{
		{"tighter", &pb.Limits{MinimumClearanceMeters: number(6), MaximumStripUseRatio: number(0.3)}, ""},
		{"looser", &pb.Limits{MinimumClearanceMeters: number(1)}, "limits.minimumClearanceMeters"},
		{"confirmed by the owner", &pb.Limits{Rules: []*pb.AppliedRule{{FindingId: "stall.speed", Verified: &yes}}}, "limits.rules[0].verified"},
	}
	for _, row := range rows {
		before := h.entryCount()
		_, err := h.approvals().CreateApproval(h.as(ada), &pb.CreateApprovalRequest{Parent: "clubs/" + home, Approval: &pb.Approval{
			Model: model.GetName(), Field: field.GetName(), Limits: row.limits,
			LaunchPlan: file(t, "plan_dabchick_long_acre", &pb.LaunchPlan{}), Day: file(t, "day_long_acre_dry", &pb.DayConditions{})}})
		if row.want == "" {
			h.must(err)
			continue
		}
		wantRefusal(t, err, codes.InvalidArgument, "INVALID_FIELDS")
		if !slices.Contains(violated(err), row.want) {
			t.Errorf("%s: violations %v do not name %s", row.name, violated(err), row.want)
		}
		if after := h.entryCount(); after != before {
			t.Errorf("%s: %d entries were written", row.name, after-before)
		}
	}
}
