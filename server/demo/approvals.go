package demo

import (
	"context"
	"fmt"

	"google.golang.org/grpc"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// request is one approval of the demo and how far it has come.
type request struct {
	// document is the whole document whose plan, day and limits are asked for.
	model, field, document, owner, note string
	submit                              bool
	// confirmed are the rules that the owner gives the word on.
	confirmed []string
	decisions []decision
}

// decision is one verb by one officer.
type decision struct {
	verb, officer, reason string
	conditions            []string
}

// requests in several states: ready, in desk review, submitted, draft.
var requests = []request{
	{model: "dabchick", field: "long_acre", document: "dabchick_long_acre", owner: Ada, submit: true,
		note:      "Weighed and balanced on Friday. I would like to fly on the first dry Sunday.",
		confirmed: []string{"eu-open-a3.built-up", "eu-open-a3.area", "uk-association.registration", "larkmoor-club.insured", "larkmoor-club.helper"},
		decisions: []decision{
			{verb: "beginReview", officer: Ines},
			{verb: "passDesk", officer: Ines, conditions: []string{"Mean wind at most 5 m/s", "Timer at 3 min for the first flight"}},
			{verb: "passBench", officer: Ines, reason: "Throws, balance and fail-safe checked against the sheet."},
		}},
	{model: "sandmartin", field: "long_acre", document: "sandmartin_long_acre_wet", owner: Bram, submit: true,
		note:      "The grass will be wet. Is the strip long enough?",
		decisions: []decision{{verb: "beginReview", officer: Tomas}}},
	{model: "redshank", field: "quarry_top", document: "redshank_quarry_top", owner: Ada, submit: true,
		note: "First launch from the ramp. The ramp can be made longer."},
	{model: "nightjar", field: "long_acre", document: "nightjar_long_acre", owner: Tomas,
		note: "Still waiting for the measured thrust."},
}

// approvals opens every request and takes it as far as it has come.
func (l *loader) approvals() error {
	for _, r := range requests {
		made, err := l.open(r)
		if err != nil {
			return fmt.Errorf("approval of %s: %w", r.model, err)
		}
		for _, d := range r.decisions {
			if made, err = l.decide(r, d, made); err != nil {
				return fmt.Errorf("%s of %s: %w", d.verb, r.model, err)
			}
		}
	}
	return nil
}

// open creates one approval, submitted or as a draft.
func (l *loader) open(r request) (*pb.Approval, error) {
	whole, err := read(r.document, &pb.AssessmentInput{})
	if err != nil {
		return nil, err
	}
	return pb.NewApprovalsServiceClient(l.conn).CreateApproval(l.as(r.owner), &pb.CreateApprovalRequest{
		Parent: club.ClubName(ClubID), RequestId: requestID("approval " + r.model), Submit: r.submit,
		Approval: &pb.Approval{Confirmations: confirmations(r.confirmed, whole.GetDay().GetTime()), Model: l.made[r.model], Field: l.made[r.field], LaunchPlan: whole.GetLaunchPlan(),
			Day: whole.GetDay(), Limits: whole.GetLimits(), OwnerNote: r.note}})
}

// decide does one verb.
func (l *loader) decide(r request, d decision, a *pb.Approval) (*pb.Approval, error) {
	client := pb.NewApprovalsServiceClient(l.conn)
	verbs := map[string]func(context.Context, *pb.DecisionRequest, ...grpc.CallOption) (*pb.Approval, error){
		"beginReview": client.BeginReview, "passDesk": client.PassDesk, "passBench": client.PassBench,
	}
	return verbs[d.verb](l.as(d.officer), &pb.DecisionRequest{Name: a.GetName(), Etag: a.GetEtag(), Reason: d.reason,
		Conditions: d.conditions, RequestId: requestID(d.verb + " " + r.model)})
}

// confirmations are the owner's words, given on the day of the flight.
func confirmations(rules []string, day string) []*pb.RuleConfirmation {
	yes := true
	var out []*pb.RuleConfirmation
	for _, rule := range rules {
		out = append(out, &pb.RuleConfirmation{Rule: rule, Confirmed: &yes, Date: day[:len("2026-05-16")]})
	}
	return out
}
