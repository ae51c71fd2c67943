package api

import (
	"time"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/timestamppb"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// showApproval writes an approval for the wire, with the digest a signer would sign.
func showApproval(clubID string, a club.Approval) (*pb.Approval, error) {
	out := &pb.Approval{
		Name: club.Approvals.Name(clubID, a.ID), State: a.State.Proto(),
		Model: club.Models.Name(clubID, a.ModelID), ModelDisplayName: a.ModelDisplayName, ModelRevision: a.ModelRevision,
		Field: club.Fields.Name(clubID, a.FieldID), FieldDisplayName: a.FieldDisplayName, FieldVersion: a.FieldVersion,
		Owner: club.People.Name(clubID, a.OwnerID), OwnerDisplayName: a.OwnerDisplayName,
		LaunchPlan: &pb.LaunchPlan{}, Day: &pb.DayConditions{}, Limits: &pb.Limits{},
		Assessment: club.Assessments.Name(clubID, a.AssessmentID), Counts: showCounts(a.Counts),
		Conditions: a.Conditions, Etag: club.Etag(a.Version), OwnerNote: a.OwnerNote,
		CreateTime: showTime(a.CreateTime), UpdateTime: showTime(a.UpdateTime),
	}
	for _, part := range []struct {
		text []byte
		into proto.Message
	}{{a.LaunchPlan, out.LaunchPlan}, {a.Day, out.Day}, {a.Limits, out.Limits}} {
		if err := readDocument(part.text, part.into); err != nil {
			return nil, err
		}
	}
	var err error
	if out.Confirmations, err = showConfirmations(a.Confirmations); err != nil {
		return nil, err
	}
	for _, g := range a.KeptGates {
		out.KeptGates = append(out.KeptGates, g.Proto())
	}
	for _, t := range a.Transitions {
		out.Transitions = append(out.Transitions, showTransition(clubID, t))
	}
	for _, s := range a.Signatures {
		out.Signatures = append(out.Signatures, showSignature(clubID, s))
	}
	for _, h := range a.Holds {
		out.Holds = append(out.Holds, showHold(clubID, h))
	}
	for _, w := range a.RuleWords {
		out.RuleWords = append(out.RuleWords, showRuleWord(clubID, w))
	}
	digest, err := club.SigningDigest(clubID, a)
	out.SigningDigest = digest
	return out, err
}

// showCounts writes counts of verdicts.
func showCounts(c club.Counts) *pb.VerdictCounts {
	return &pb.VerdictCounts{HoldsCount: c.Holds, TightCount: c.Tight, FailsCount: c.Fails, UnknownCount: c.Unknown}
}

// showTransition writes one change of state.
func showTransition(clubID string, t club.Transition) *pb.Transition {
	out := &pb.Transition{FromState: t.From.Proto(), ToState: t.To.Proto(), Actor: club.People.Name(clubID, t.ActorID),
		ActorDisplayName: t.ActorDisplayName, Reason: t.Reason, ModelRevision: t.ModelRevision,
		Assessment: club.Assessments.Name(clubID, t.AssessmentID), Time: showTime(t.Time), LedgerIndex: t.LedgerIndex}
	for _, g := range t.Gates {
		out.Gates = append(out.Gates, &pb.GateFate{Gate: g.Gate.Proto(), Stands: g.Stands, Why: g.Why})
	}
	return out
}

// showSignature writes one signature.
func showSignature(clubID string, s club.Signature) *pb.Signature {
	return &pb.Signature{Signer: club.People.Name(clubID, s.SignerID), SignerDisplayName: s.SignerDisplayName, Role: s.Role.Title(),
		Meaning: s.Meaning, Digest: s.Digest, DeviceTime: showTime(s.DeviceTime), ServerTime: showTime(s.ServerTime), Lapsed: s.Lapsed}
}

// showHold writes one stop.
func showHold(clubID string, h club.Hold) *pb.Hold {
	return &pb.Hold{Reason: h.Reason, Lesson: club.Lessons.Name(clubID, h.LessonID), ActorDisplayName: h.ActorDisplayName,
		Time: showTime(h.Time), Released: h.Released, ReleaseReason: h.ReleaseReason, ReleasedByDisplayName: h.ReleasedByDisplayName}
}

// showRuleWord writes one answer of an officer.
func showRuleWord(clubID string, w club.RuleWord) *pb.RuleWord {
	return &pb.RuleWord{Rule: w.Rule, Confirmed: w.Confirmed, Date: w.Date, Officer: club.People.Name(clubID, w.OfficerID),
		OfficerDisplayName: w.OfficerDisplayName, Reason: w.Reason, Time: showTime(w.Time), LedgerIndex: w.LedgerIndex}
}

// showTime writes a time; a zero time is left out.
func showTime(t time.Time) *timestamppb.Timestamp {
	if t.IsZero() {
		return nil
	}
	return timestamppb.New(t)
}
