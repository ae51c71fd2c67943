package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// AdoptLesson is one committee member's vote. The second distinct one adopts the lesson and, in the same transaction, holds every open
// approval that it matches, each with its own ledger entry.
func (s *incidentsService) AdoptLesson(ctx context.Context, req *pb.AdoptLessonRequest) (*pb.Lesson, error) {
	c, id, err := locate(ctx, club.Lessons, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	if req.GetEtag() == "" {
		return nil, club.RefuseField("etag", "ETAG_MISSING", "send the etag of the lesson as you read it")
	}
	return once(ctx, s.backend, req, &pb.Lesson{}, func(tx *postgres.Tx) (*pb.Lesson, error) {
		lesson, err := tx.VoteLesson(ctx, c.person.Actor(), id, req.GetEtag())
		if err != nil {
			return nil, err
		}
		if lesson.State == club.Adopted {
			if err := holdMatching(ctx, tx, c, lesson); err != nil {
				return nil, err
			}
		}
		if lesson, err = tx.Lesson(ctx, id); err != nil {
			return nil, err
		}
		return showLesson(c.club, lesson), nil
	})
}

// holdMatching holds every open approval that the lesson matches.
func holdMatching(ctx context.Context, tx *postgres.Tx, c caller, lesson club.Lesson) error {
	predicate, err := club.CompilePredicate(lesson.PredicateText)
	if err != nil {
		return err
	}
	open, err := tx.OpenApprovals(ctx)
	if err != nil {
		return err
	}
	for _, a := range open {
		applies, err := lessonApplies(predicate, a.Description)
		if err != nil {
			return err
		}
		if !applies {
			continue
		}
		if err := tx.HoldByLesson(ctx, c.person.Actor(), lesson.ID, a.ID); err != nil {
			return err
		}
	}
	return nil
}
