package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// TryLesson tells which models and open approvals a predicate would match, and keeps nothing.
func (s *incidentsService) TryLesson(ctx context.Context, req *pb.TryLessonRequest) (*pb.TryLessonResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	predicate, err := compilePredicate("predicate", req.GetPredicate())
	if err != nil {
		return nil, err
	}
	out := &pb.TryLessonResponse{}
	return out, s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		if err := tryOnModels(ctx, tx, c, predicate, out); err != nil {
			return err
		}
		return tryOnApprovals(ctx, tx, c, predicate, out)
	})
}

// tryOnModels goes through all models of the club, page by page.
func tryOnModels(ctx context.Context, tx *postgres.ReadTx, c caller, p *club.Predicate, out *pb.TryLessonResponse) error {
	page := club.Page{Size: 1000}
	for {
		models, next, err := tx.Models(ctx, "", page)
		if err != nil {
			return err
		}
		for _, m := range models {
			matches, err := predicateMatches(p, m.Description)
			if err != nil {
				return err
			}
			if matches {
				out.MatchingModels = append(out.MatchingModels, club.Models.Name(c.club, m.ID))
			}
		}
		out.TriedModelCount += int32(len(models))
		if next == "" {
			return nil
		}
		page.After = next
	}
}

// tryOnApprovals goes through the approvals that a lesson may hold.
func tryOnApprovals(ctx context.Context, tx *postgres.ReadTx, c caller, p *club.Predicate, out *pb.TryLessonResponse) error {
	open, err := tx.OpenApprovals(ctx)
	if err != nil {
		return err
	}
	for _, a := range open {
		matches, err := predicateMatches(p, a.Description)
		if err != nil {
			return err
		}
		if matches {
			out.MatchingApprovals = append(out.MatchingApprovals, club.Approvals.Name(c.club, a.ID))
		}
	}
	return nil
}
