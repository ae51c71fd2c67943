package postgres

import (
	"context"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// CreateLesson proposes a lesson. Uses Text, PredicateText, Remedy and IncidentID of l. Invalid when the predicate does
// not compile.
func (t *Tx) CreateLesson(ctx context.Context, by club.Actor, l club.Lesson) (club.Lesson, error) {
	if _, err := club.CompilePredicate(l.PredicateText); err != nil {
		return club.Lesson{}, err
	}
	id := t.store.id()
	err := t.q.InsertLesson(ctx, pgdb.InsertLessonParams{
		ClubID: t.clubID, LessonID: id, ProposerID: by.PersonID, IncidentID: optional(l.IncidentID), Text: l.Text,
		Predicate: l.PredicateText, Remedy: l.Remedy, Now: t.now,
	})
	if err != nil {
		return club.Lesson{}, err
	}
	_, err = t.record(ctx, "lesson.proposed", by, event{
		"lesson": club.Lessons.Name(t.clubID, id), "incident": club.Incidents.Name(t.clubID, l.IncidentID),
		"text": l.Text, "predicate": l.PredicateText,
	})
	if err != nil {
		return club.Lesson{}, err
	}
	return t.Lesson(ctx, id)
}

// Lesson reads a lesson with its votes. NotFound when there is none.
func (r *ReadTx) Lesson(ctx context.Context, id string) (club.Lesson, error) {
	row, err := r.q.Lesson(ctx, r.clubID, id)
	if err != nil {
		return club.Lesson{}, found(err, "lesson", id)
	}
	lessons, err := r.withVotes(ctx, []club.Lesson{lessonOf(row)})
	if err != nil {
		return club.Lesson{}, err
	}
	return lessons[0], nil
}

// Lessons lists the club's lessons, newest first, and the token of the next page.
func (r *ReadTx) Lessons(ctx context.Context, page club.Page) ([]club.Lesson, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListLessons(ctx, pgdb.ListLessonsParams{
		ClubID: r.clubID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	if err != nil {
		return nil, "", err
	}
	lessons, next := cut(rows, page.Limit(), func(row pgdb.ListLessonsRow) (club.Lesson, place) {
		return lessonOf(pgdb.LessonRow(row)), place{row.CreateTime, row.LessonID}
	})
	lessons, err = r.withVotes(ctx, lessons)
	return lessons, next, err
}

// AdoptedLessons lists the lessons in force, first adopted first. Every submission has to be tried on them: see
// HoldByLesson.
func (r *ReadTx) AdoptedLessons(ctx context.Context) ([]club.Lesson, error) {
	rows, err := r.q.AdoptedLessons(ctx, r.clubID)
	if err != nil {
		return nil, err
	}
	lessons, _ := cut(rows, int32(len(rows)), func(row pgdb.AdoptedLessonsRow) (club.Lesson, place) {
		return lessonOf(pgdb.LessonRow(row)), place{}
	})
	return r.withVotes(ctx, lessons)
}

func lessonOf(row pgdb.LessonRow) club.Lesson {
	return club.Lesson{
		ID: row.LessonID, State: club.LessonState(row.State), Text: row.Text, PredicateText: row.Predicate, Remedy: row.Remedy,
		IncidentID: text(row.IncidentID), ProposerID: row.ProposerID, HoldCount: row.HoldCount, Version: row.Version,
		CreateTime: row.CreateTime, AdoptTime: moment(row.AdoptTime),
	}
}

// withVotes adds who voted for the lessons, in the order of their votes.
func (r *ReadTx) withVotes(ctx context.Context, lessons []club.Lesson) ([]club.Lesson, error) {
	at := map[string]*club.Lesson{}
	ids := []string{}
	for n := range lessons {
		at[lessons[n].ID] = &lessons[n]
		ids = append(ids, lessons[n].ID)
	}
	votes, err := r.q.VotesOf(ctx, r.clubID, ids)
	for _, v := range votes {
		l := at[v.LessonID]
		l.AdopterIDs = append(l.AdopterIDs, v.PersonID)
		l.AdopterDisplayNames = append(l.AdopterDisplayNames, v.DisplayName)
	}
	return lessons, err
}

// VoteLesson adds by's vote. The lesson comes back adopted when this vote was the deciding one; the caller then holds
// what it matches (see OpenApprovals and HoldByLesson) in the same transaction. Forbidden without the role committee,
// Stale when the etag is not that of the lesson, Conflict when by has voted already, FailedPrecondition when it is
// adopted.
func (t *Tx) VoteLesson(ctx context.Context, by club.Actor, lessonID, etag string) (club.Lesson, error) {
	row, err := t.q.LockLesson(ctx, t.clubID, lessonID)
	if err != nil {
		return club.Lesson{}, found(err, "lesson", lessonID)
	}
	if err := club.PermitVote(club.LessonState(row.State), by); err != nil {
		return club.Lesson{}, err
	}
	if err := club.MatchEtag(etag, row.Version); err != nil {
		return club.Lesson{}, err
	}
	if err := t.q.InsertVote(ctx, pgdb.InsertVoteParams{ClubID: t.clubID, LessonID: lessonID, PersonID: by.PersonID, Now: t.now}); err != nil {
		return club.Lesson{}, err
	}
	lesson, err := t.Lesson(ctx, lessonID)
	if err != nil {
		return club.Lesson{}, err
	}
	return t.countVote(ctx, by, lesson)
}

// countVote adopts the lesson when enough have voted, and tells the ledger.
func (t *Tx) countVote(ctx context.Context, by club.Actor, lesson club.Lesson) (club.Lesson, error) {
	params := pgdb.UpdateLessonParams{ClubID: t.clubID, LessonID: lesson.ID, State: string(club.Proposed)}
	if len(lesson.AdopterIDs) >= club.AdoptersNeeded {
		params.State, params.AdoptTime = string(club.Adopted), &t.now
	}
	if err := t.q.UpdateLesson(ctx, params); err != nil {
		return club.Lesson{}, err
	}
	_, err := t.record(ctx, "lesson.vote", by, event{
		"lesson": club.Lessons.Name(t.clubID, lesson.ID), "state": params.State, "votes": len(lesson.AdopterIDs),
	})
	if err != nil {
		return club.Lesson{}, err
	}
	return t.Lesson(ctx, lesson.ID)
}
