package postgres

import (
	"context"
	"errors"

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
		if err := t.lapseOne(ctx, id, reason); err != nil {
			return nil, err
		}
	}
	return ids, nil
}

func (t *Tx) lapseOne(ctx context.Context, id, reason string) error {
	a, err := t.Approval(ctx, id)
	if err != nil {
		return err
	}
	s := step{verb: club.VerbLapse, from: a.State, reason: reason}
	if a.State == club.Held {
		a.HeldFrom = club.Lapsed
	} else {
		a.State = club.Lapsed
	}
	if err := t.q.LapseSignatures(ctx, t.clubID, id); err != nil {
		return err
	}
	_, err = t.keepStep(ctx, a, s)
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
