package postgres

import (
	"context"
	"errors"
	"strings"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// LapseForModel lapses every approval that rests on a revision of the model, and its signatures, and returns their ids.
// A held approval stays held and lapses underneath. UpdateModel calls it.
func (t *Tx) LapseForModel(ctx context.Context, modelID, reason string) ([]string, error) {
	return t.lapse(ctx, pgdb.ApprovalsRestingOnParams{ModelID: modelID}, reason)
}

// LapseForField lapses every approval that rests on a version of the field, in the same way. UpdateField calls it.
func (t *Tx) LapseForField(ctx context.Context, fieldID, reason string) ([]string, error) {
	return t.lapse(ctx, pgdb.ApprovalsRestingOnParams{FieldID: fieldID}, reason)
}

func (t *Tx) lapse(ctx context.Context, which pgdb.ApprovalsRestingOnParams, reason string) ([]string, error) {
	which.ClubID, which.States = t.clubID, statesThat(club.State.RestsOnRevision)
	ids, err := t.q.ApprovalsRestingOn(ctx, which)
	if err != nil {
		return nil, err
	}
	for _, id := range ids {
		a, err := t.Approval(ctx, id)
		if err != nil {
			return nil, err
		}
		if err := t.lapseOne(ctx, a, a.Fates(club.TouchAll(reason)), reason); err != nil {
			return nil, err
		}
	}
	return ids, nil
}

// LapseForAnswer lapses an approval, and its signatures, because another answer took the place of the one it rested on. The new answer is put on the
// approval; the gates that it leaves as they were stand, and transition and ledger say which and why. Signatures keep what they were given over. One that
// rests on nothing any more is left alone.
func (t *Tx) LapseForAnswer(ctx context.Context, approvalID, answerID, reason string) error {
	a, err := t.lockApproval(ctx, approvalID)
	if err != nil || !a.Underneath().RestsOnRevision() {
		return err
	}
	touch, err := t.touched(ctx, a.AssessmentID, answerID, "")
	if err != nil {
		return err
	}
	fates := a.Fates(touch)
	a.AssessmentID = answerID
	return t.lapseOne(ctx, a.Approval, fates, strings.TrimSpace(reason+" "+club.GateWords(fates)))
}

func (t *Tx) lapseOne(ctx context.Context, a club.Approval, fates []club.GateFate, reason string) error {
	if err := t.q.LapseSignatures(ctx, t.clubID, a.ID); err != nil {
		return err
	}
	_, err := t.keepStep(ctx, a.Lapse(fates), step{verb: club.VerbLapse, from: a.State, reason: reason, gates: fates})
	return err
}

// hold keeps a stop on an approval; lessonID is empty when a person did it.
func (t *Tx) hold(ctx context.Context, approvalID, lessonID string, by club.Actor, reason string) error {
	return t.q.InsertHold(ctx, pgdb.InsertHoldParams{
		ClubID: t.clubID, HoldID: t.store.id(), ApprovalID: approvalID, LessonID: optional(lessonID),
		ActorID: optional(by.PersonID), Reason: reason, Now: t.now,
	})
}

// HoldByLesson holds an open approval because of a lesson, whose text is the reason. One that the lesson holds already,
// or that is no longer open, is left alone.
func (t *Tx) HoldByLesson(ctx context.Context, by club.Actor, lessonID, approvalID string) error {
	lesson, err := t.q.Lesson(ctx, t.clubID, lessonID)
	if err != nil {
		return found(err, "lesson", lessonID)
	}
	a, err := t.lockApproval(ctx, approvalID)
	if err != nil || !a.State.Open() {
		return err
	}
	_, err = t.q.OpenHoldOfLesson(ctx, t.clubID, approvalID, &lessonID)
	if !errors.Is(err, pgx.ErrNoRows) {
		return err
	}
	if err := t.hold(ctx, approvalID, lessonID, by, lesson.Text); err != nil {
		return err
	}
	s := step{verb: club.VerbHoldByLesson, by: by, from: a.State, reason: lesson.Text,
		extra: event{"lesson": club.Lessons.Name(t.clubID, lessonID)}}
	a.moveTo(club.Held)
	_, err = t.keepStep(ctx, a.Approval, s)
	return err
}
