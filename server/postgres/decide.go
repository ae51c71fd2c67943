package postgres

import (
	"context"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// Decision is one verb done to one approval by somebody who has read it.
type Decision struct {
	// Etag is required.
	ID, Etag string
	Verb     club.Verb
	By       club.Actor
	Reason   string
	// Conditions replaces the approval's when not nil; only at the desk gate.
	Conditions []string
	// Submission is needed to submit.
	Submission *Submission
	// Answer is needed to answer a rule.
	Answer *Answer
	// Signature is needed to sign: Digest, and if known DeviceTime.
	Signature *club.Signature
}

// step is a change of state on its way into the database.
type step struct {
	verb   club.Verb
	by     club.Actor
	from   club.State
	reason string
	// extra goes into the ledger entry.
	extra event
	// answer is kept beside the ledger entry when there is one.
	answer *Answer
	// gates says what becomes of the gates that stood.
	gates []club.GateFate
}

// Decide does a verb to an approval: checks in this order whether By may, whether the etag is the present one, and
// whether the state allows it; then changes the state and writes transition, signature or hold, and the ledger entry.
func (t *Tx) Decide(ctx context.Context, d Decision) (club.Approval, error) {
	a, err := t.lockApproval(ctx, d.ID)
	if err != nil {
		return club.Approval{}, err
	}
	if err := d.check(a); err != nil {
		return club.Approval{}, err
	}
	to, err := club.Next(a.Approval, d.Verb, d.By, d.Reason)
	if err != nil {
		return club.Approval{}, err
	}
	s := step{verb: d.Verb, by: d.By, from: a.State, reason: d.Reason, extra: event{}}
	if err := t.carryOut(ctx, d, &a, &s); err != nil {
		return club.Approval{}, err
	}
	if d.Verb != club.VerbConfirmRule { // an answer may open gates again and has moved it already
		a.moveTo(to)
	}
	return t.keepStep(ctx, a.Approval, s)
}

// held is an approval locked until the transaction ends, with what it rests on.
type held struct {
	club.Approval
	latestRevision, latestVersion int32
}

// moveTo changes the state; HeldFrom remembers where a hold found it.
func (a *held) moveTo(to club.State) {
	switch {
	case to != club.Held:
		a.HeldFrom = ""
	case a.State != club.Held:
		a.HeldFrom = a.State
	}
	a.State = to
}

// lockApproval locks model, field and approval, in the order in which changing a model or a field does.
func (t *Tx) lockApproval(ctx context.Context, id string) (held, error) {
	parts, err := t.q.ApprovalParts(ctx, t.clubID, id)
	if err != nil {
		return held{}, found(err, "approval", id)
	}
	model, err := t.q.ShareModel(ctx, t.clubID, parts.ModelID)
	if err != nil {
		return held{}, found(err, "model", parts.ModelID)
	}
	version, err := t.q.ShareField(ctx, t.clubID, parts.FieldID)
	if err != nil {
		return held{}, found(err, "field", parts.FieldID)
	}
	if _, err := t.q.LockApproval(ctx, t.clubID, id); err != nil {
		return held{}, found(err, "approval", id)
	}
	a, err := t.Approval(ctx, id)
	return held{Approval: a, latestRevision: model.LatestRevision, latestVersion: version}, err
}

// check judges the decision before the state machine does.
func (d Decision) check(a held) error {
	if err := club.Permit(a.Approval, d.Verb, d.By); err != nil {
		return err
	}
	if d.Etag == "" {
		return club.RefuseField("etag", "ETAG_MISSING", "a decision needs the etag of what was read")
	}
	return club.MatchEtag(d.Etag, a.Version)
}

// carryOut does what is particular to a verb.
func (t *Tx) carryOut(ctx context.Context, d Decision, a *held, s *step) error {
	switch d.Verb {
	case club.VerbSubmit:
		return t.submit(ctx, d.Submission, a, s)
	case club.VerbReturn:
		s.gates = a.Fates(club.TouchAll("it was sent back to its owner"))
		a.KeptGates = club.Kept(s.gates)
		return nil
	case club.VerbPassDesk:
		if d.Conditions != nil {
			a.Conditions = d.Conditions
		}
		s.extra["conditions"] = list(a.Conditions)
		return nil
	case club.VerbConfirmRule:
		if err := t.refuseAwaiting(ctx, a.ID); err != nil {
			return err
		}
		return t.takeAnswer(ctx, d.Answer, a, s)
	case club.VerbSign:
		return t.sign(ctx, d, a.Approval, s)
	case club.VerbHold:
		return t.hold(ctx, a.ID, "", d.By, d.Reason)
	case club.VerbRelease:
		return t.q.ReleaseHolds(ctx, pgdb.ReleaseHoldsParams{
			ClubID: t.clubID, ApprovalID: a.ID, Now: t.now, ReleasedBy: d.By.PersonID, ReleaseReason: d.Reason,
		})
	default:
		return nil
	}
}

// refuseAwaiting refuses what rests on an answer by rules that were replaced.
func (t *Tx) refuseAwaiting(ctx context.Context, approvalID string) error {
	awaits, err := t.AwaitsRules(ctx, approvalID)
	if err != nil || !awaits {
		return err
	}
	return club.Refuse(club.FailedPrecondition, "RULES_CHANGED",
		"the club's rules changed and this approval has not been computed by them: wait for it, or return it if it cannot be computed")
}

// sign keeps a signature over exactly what the approval says now.
func (t *Tx) sign(ctx context.Context, d Decision, a club.Approval, s *step) error {
	want, err := club.SigningDigest(t.clubID, a)
	if err != nil {
		return err
	}
	if d.Signature == nil || d.Signature.Digest != want {
		return &club.Error{Code: club.FailedPrecondition, Field: "signing_digest", Reason: "NOT_WHAT_WAS_SHOWN",
			Message: "what was shown is not what the approval says now: read it again"}
	}
	if err := t.refuseAwaiting(ctx, a.ID); err != nil {
		return err
	}
	s.extra["signing_digest"], s.extra["meaning"] = want, club.GoForFirstFlight
	params := pgdb.InsertSignatureParams{
		ClubID: t.clubID, SignatureID: t.store.id(), ApprovalID: a.ID, SignerID: d.By.PersonID, Digest: want,
		Role: string(club.SafetyOfficer), Meaning: club.GoForFirstFlight, ServerTime: t.now,
	}
	if !d.Signature.DeviceTime.IsZero() {
		params.DeviceTime = &d.Signature.DeviceTime
	}
	return t.q.InsertSignature(ctx, params)
}

// keepStep writes the changed approval, its transition and the ledger entry, and reads the approval again.
func (t *Tx) keepStep(ctx context.Context, a club.Approval, s step) (club.Approval, error) {
	err := t.q.UpdateApproval(ctx, pgdb.UpdateApprovalParams{
		ClubID: t.clubID, ApprovalID: a.ID, State: string(a.State), HeldFrom: optional(string(a.HeldFrom)),
		ModelRevision: a.ModelRevision, FieldVersion: a.FieldVersion, LaunchPlan: a.LaunchPlan, Day: a.Day, Confirmations: orNone(a.Confirmations),
		OwnerNote: a.OwnerNote, Conditions: list(a.Conditions), AssessmentID: optional(a.AssessmentID), KeptGates: gateNames(a.KeptGates), Now: t.now,
	})
	if err != nil {
		return club.Approval{}, err
	}
	if err := t.writeTransition(ctx, a, s); err != nil {
		return club.Approval{}, err
	}
	return t.Approval(ctx, a.ID)
}

// writeTransition tells the ledger of a step and keeps the transition with its index.
func (t *Tx) writeTransition(ctx context.Context, a club.Approval, s step) error {
	what := event{
		"approval": club.Approvals.Name(t.clubID, a.ID), "verb": s.verb, "from": s.from, "to": a.State, "reason": s.reason,
		"model_revision": club.RevisionName(t.clubID, a.ModelID, a.ModelRevision),
		"field":          club.Fields.Name(t.clubID, a.FieldID), "field_version": a.FieldVersion,
		"assessment": club.Assessments.Name(t.clubID, a.AssessmentID),
	}
	for name, value := range s.extra {
		what[name] = value
	}
	if len(s.gates) > 0 {
		what["gates"] = s.gates
	}
	gates, err := club.FatesDocument(s.gates)
	if err != nil {
		return err
	}
	index, err := t.record(ctx, "approval.transition", s.by, what)
	if err != nil {
		return err
	}
	err = t.q.InsertTransition(ctx, pgdb.InsertTransitionParams{
		ClubID: t.clubID, ApprovalID: a.ID, LedgerIndex: index, Verb: string(s.verb), FromState: string(s.from),
		ToState: string(a.State), ActorID: optional(s.by.PersonID), Reason: s.reason, ModelRevision: a.ModelRevision,
		AssessmentID: optional(a.AssessmentID), Gates: gates, Now: t.now,
	})
	if err != nil || s.answer == nil {
		return err
	}
	return t.keepAnswer(ctx, a.ID, index, s)
}
