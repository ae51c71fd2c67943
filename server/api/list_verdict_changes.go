package api

import (
	"context"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// ListVerdictChanges lists the approvals whose verdicts changed with rules or core: the caller's, or the club's for officers and committee.
func (s *approvalsService) ListVerdictChanges(ctx context.Context, req *pb.ListVerdictChangesRequest) (*pb.ListVerdictChangesResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	filter := postgres.ChangeFilter{OwnerID: c.ownerFilter(false), Unread: req.GetUnread()}
	if req.GetApproval() != "" {
		if _, filter.ApprovalID, err = locate(ctx, club.Approvals, "approval", req.GetApproval()); err != nil {
			return nil, err
		}
	}
	var list []club.Reassessment
	out := &pb.ListVerdictChangesResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, out.NextPageToken, err = tx.ChangedVerdicts(ctx, c.person.ID, filter, pageOf(req))
		return err
	})
	for _, a := range list {
		out.VerdictChanges = append(out.VerdictChanges, showChanges(c.club, a))
	}
	return out, err
}

// showChanges writes what computing an approval again changed.
func showChanges(clubID string, a club.Reassessment) *pb.VerdictChanges {
	out := &pb.VerdictChanges{
		Name: club.Changes.Name(clubID, a.ID), Approval: club.Approvals.Name(clubID, a.ApprovalID), ModelDisplayName: a.ModelDisplayName,
		OwnerDisplayName: a.OwnerDisplayName, State: a.State.Proto(), StateNow: a.StateNow.Proto(), Cause: causeProto(a.Cause), Reason: a.Reason,
		CoreVersion: a.CoreVersion, Lapsed: a.Lapsed, Failure: a.Failure, Assessment: club.Assessments.Name(clubID, a.AssessmentID), Read: a.Read,
		CreateTime: showTime(a.CreateTime),
	}
	for _, c := range a.Changes {
		out.Changes = append(out.Changes, &pb.VerdictChange{FindingId: c.FindingID, Title: c.Title, Note: c.Note,
			From: verdictProto(assess.Verdict(c.From)), To: verdictProto(assess.Verdict(c.To))})
	}
	return out
}

// causeProto is the cause on the wire.
func causeProto(c club.Cause) pb.ReassessmentCause {
	return pb.ReassessmentCause(pb.ReassessmentCause_value["REASSESSMENT_CAUSE_"+strings.ToUpper(string(c))])
}
