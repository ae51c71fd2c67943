package api

import (
	"context"
	"encoding/json"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// submission is a computed submission that waits to be written: the latest revision and version as they were read, and the assessment.
type submission struct {
	model      club.Model
	field      club.Field
	plan, day  json.RawMessage
	words      json.RawMessage
	rules      rulesInForce
	assessment club.Assessment
}

// plannedFlight is what a submission is computed from.
type plannedFlight struct {
	modelID, fieldID  string
	plan, day, limits json.RawMessage
	// words are the confirmations, as a JSON list.
	words json.RawMessage
}

// computeSubmission reads the model's latest revision and the field's latest version, composes the one document and computes it. It writes
// nothing: writing checks that revision and version are still the latest.
func (b *backend) computeSubmission(ctx context.Context, c caller, p plannedFlight) (submission, error) {
	s := submission{plan: p.plan, day: p.day, words: p.words}
	err := b.store.Read(ctx, c.club, func(tx *postgres.ReadTx) (err error) {
		if s.model, err = ownModel(ctx, tx, c, p.modelID); err != nil {
			return err
		}
		if s.field, err = tx.Field(ctx, p.fieldID); err != nil {
			return err
		}
		s.rules, err = readRules(ctx, tx)
		return err
	})
	if err != nil {
		return s, err
	}
	s.assessment, err = b.compute(ctx, composed(s.model.Description, s.field.Description, p), s.rules)
	return s, err
}

// composed joins the parts to the one document.
func composed(model, field json.RawMessage, p plannedFlight) map[string]json.RawMessage {
	parts := map[string]json.RawMessage{"model": model, "field": field, "launchPlan": p.plan, "day": p.day, "limits": p.limits, "confirmations": p.words}
	for name, part := range parts {
		if len(part) == 0 {
			delete(parts, name)
		}
	}
	return parts
}

// compute checks a document, puts the club's rules into its limits, runs the core and returns input, report and counts as they are kept. As many run at a time as there are
// processors; the others wait in line, so that under load the first ones still end within their deadline.
func (b *backend) compute(ctx context.Context, parts any, rules rulesInForce) (club.Assessment, error) {
	text, err := json.Marshal(parts)
	if err != nil {
		return club.Assessment{}, err
	}
	in, err := document.Decode(text)
	if err != nil {
		return club.Assessment{}, err
	}
	if err := rules.put(&in); err != nil {
		return club.Assessment{}, err
	}
	return b.computed(ctx, in)
}

// computed runs the core when its turn has come.
func (b *backend) computed(ctx context.Context, in assess.Input) (club.Assessment, error) {
	release, err := b.waitInLine(ctx)
	if err != nil {
		return club.Assessment{}, err
	}
	defer release()
	return assessed(in)
}

// waitInLine waits for a processor to compute on; the function returned gives it back.
func (b *backend) waitInLine(ctx context.Context) (release func(), err error) {
	select {
	case b.computing <- struct{}{}:
		return func() { <-b.computing }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// assessed runs the core.
func assessed(in assess.Input) (club.Assessment, error) {
	report, err := document.Assess(in)
	if err != nil {
		return club.Assessment{}, club.RefuseField("document", "NOT_COMPUTABLE", "%v", err)
	}
	return written(in, report)
}

// written is an input and its report as they are kept.
func written(in assess.Input, report assess.Report) (club.Assessment, error) {
	input, err := document.Canonical(in)
	if err != nil {
		return club.Assessment{}, err
	}
	answer, err := json.Marshal(report)
	return club.Assessment{Input: input, Report: answer, InputDigest: report.InputDigest, CoreVersion: report.CoreVersion,
		Counts: countsOf(report)}, err
}

// countsOf copies the report's counts.
func countsOf(r assess.Report) club.Counts {
	if r.Counts == nil {
		return club.Counts{}
	}
	return club.Counts{Holds: r.Counts.HoldsCount, Tight: r.Counts.TightCount, Fails: r.Counts.FailsCount, Unknown: r.Counts.UnknownCount}
}

// writeSubmission keeps the assessment, submits the approval on it, and holds it where an adopted lesson applies.
func (b *backend) writeSubmission(ctx context.Context, tx *postgres.Tx, c caller, s submission, d postgres.Decision, note *string) (*pb.Approval, error) {
	if err := stillInForce(ctx, tx, s.rules); err != nil {
		return nil, err
	}
	s.assessment.ApprovalID, s.assessment.CreatorID = d.ID, c.person.ID
	kept, err := tx.CreateAssessment(ctx, c.person.Actor(), s.assessment)
	if err != nil {
		return nil, err
	}
	d.Verb, d.By = club.VerbSubmit, c.person.Actor()
	d.Submission = &postgres.Submission{ModelRevision: s.model.LatestRevision, FieldVersion: s.field.LatestVersion,
		LaunchPlan: s.plan, Day: s.day, Confirmations: s.words, OwnerNote: note, AssessmentID: kept.ID}
	if _, err := tx.Decide(ctx, d); err != nil {
		return nil, err
	}
	if err := holdByLessons(ctx, tx, d.ID, s.model.Description); err != nil {
		return nil, err
	}
	return freshApproval(ctx, tx, c, d.ID)
}

// stillInForce refuses to write an assessment by rules that were replaced while it was computed.
func stillInForce(ctx context.Context, tx *postgres.Tx, computedBy rulesInForce) error {
	if err := tx.LockRules(ctx); err != nil {
		return err
	}
	now, err := readRules(ctx, &tx.ReadTx)
	if err != nil {
		return err
	}
	same, err := now.same(computedBy)
	if err == nil && !same {
		err = club.Refuse(club.Stale, "RULES_CHANGED", "the club's rules changed while this was computed: send it again")
	}
	return err
}

// holdByLessons holds an approval for every adopted lesson that matches its model.
func holdByLessons(ctx context.Context, tx *postgres.Tx, approvalID string, description json.RawMessage) error {
	lessons, err := tx.AdoptedLessons(ctx)
	if err != nil {
		return err
	}
	for _, lesson := range lessons {
		predicate, err := club.CompilePredicate(lesson.PredicateText)
		if err != nil {
			return err
		}
		applies, err := lessonApplies(predicate, description)
		if err != nil {
			return err
		}
		if !applies {
			continue
		}
		if err := tx.HoldByLesson(ctx, club.Actor{}, lesson.ID, approvalID); err != nil {
			return err
		}
	}
	return nil
}

// freshApproval reads an approval as the transaction left it.
func freshApproval(ctx context.Context, tx *postgres.Tx, c caller, id string) (*pb.Approval, error) {
	a, err := tx.Approval(ctx, id)
	if err != nil {
		return nil, err
	}
	return showApproval(c.club, a)
}
