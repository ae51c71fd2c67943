package postgres

import (
	"context"
	"encoding/json"
	"fmt"
	"reflect"

	"pitgate/server/club"
)

// Submission is what submitting puts into an approval. Revision and version must be the latest, or it is Stale: assess
// again. Nil parts stay.
type Submission struct {
	ModelRevision, FieldVersion int32
	LaunchPlan, Day             json.RawMessage
	Confirmations               json.RawMessage
	OwnerNote                   *string
	AssessmentID                string
}

// submit puts a submission into an approval. Gates that were kept stand on while the flight is the same and the new answer leaves them as they are.
func (t *Tx) submit(ctx context.Context, in *Submission, a *held, s *step) error {
	if in == nil || in.AssessmentID == "" {
		return club.RefuseField("assessment", "ASSESSMENT_MISSING", "submitting needs an assessment")
	}
	if in.ModelRevision != a.latestRevision || in.FieldVersion != a.latestVersion {
		return club.Refuse(club.Stale, "ASSESSED_BEFORE_CHANGE", "the model or the field was changed meanwhile: assess again")
	}
	if len(a.KeptGates) > 0 {
		touch, err := t.touchedBySubmission(ctx, *in, a.Approval)
		if err != nil {
			return err
		}
		s.gates = a.Fates(touch)
		a.KeptGates = club.Kept(s.gates)
	}
	in.put(&a.Approval)
	return nil
}

// touchedBySubmission says which gates open again: all for another flight, those that the answer concerns for the same one.
func (t *Tx) touchedBySubmission(ctx context.Context, in Submission, a club.Approval) (club.Touch, error) {
	switch {
	case in.ModelRevision != a.ModelRevision:
		return club.TouchAll(fmt.Sprintf("the model was changed: revision %d", in.ModelRevision)), nil
	case in.FieldVersion != a.FieldVersion:
		return club.TouchAll(fmt.Sprintf("the field was changed: version %d", in.FieldVersion)), nil
	case !stays(in.LaunchPlan, a.LaunchPlan):
		return club.TouchAll("the launch plan was changed"), nil
	case !stays(in.Day, a.Day):
		return club.TouchAll("the day was changed"), nil
	default:
		return t.touched(ctx, a.AssessmentID, in.AssessmentID, "")
	}
}

// put takes over what is submitted; a part that says the same in other words stays as it was written.
func (in Submission) put(a *club.Approval) {
	a.ModelRevision, a.FieldVersion, a.AssessmentID = in.ModelRevision, in.FieldVersion, in.AssessmentID
	a.OwnerNote = orElse(in.OwnerNote, a.OwnerNote)
	if !stays(in.LaunchPlan, a.LaunchPlan) {
		a.LaunchPlan = in.LaunchPlan
	}
	if !stays(in.Day, a.Day) {
		a.Day = in.Day
	}
	if in.Confirmations != nil {
		a.Confirmations = in.Confirmations
	}
}

// stays tells whether a part is not submitted anew or says what is there already.
func stays(part, there json.RawMessage) bool {
	if part == nil {
		return true
	}
	var a, b any
	return json.Unmarshal(part, &a) == nil && json.Unmarshal(there, &b) == nil && reflect.DeepEqual(a, b)
}

// touched says which gates open again from one kept answer to another; rule is what an officer answered in between, or empty.
func (t *Tx) touched(ctx context.Context, was, becomes, rule string) (club.Touch, error) {
	former, err := t.q.KeptReport(ctx, t.clubID, was)
	if err != nil {
		return nil, found(err, "assessment", was)
	}
	present, err := t.q.KeptReport(ctx, t.clubID, becomes)
	if err != nil {
		return nil, found(err, "assessment", becomes)
	}
	if rule != "" {
		return club.TouchedByAnswer(former, present, rule)
	}
	return club.TouchedBetween(former, present)
}

// gateNames writes gates as they are kept.
func gateNames(gates []club.Gate) []string {
	out := []string{}
	for _, g := range gates {
		out = append(out, string(g))
	}
	return out
}

func gatesOf(names []string) []club.Gate {
	var out []club.Gate
	for _, name := range names {
		out = append(out, club.Gate(name))
	}
	return out
}
