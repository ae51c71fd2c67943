package api

import (
	"context"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreateLesson proposes a lesson. Its predicate must compile.
func (s *incidentsService) CreateLesson(ctx context.Context, req *pb.CreateLessonRequest) (*pb.Lesson, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	lesson, err := lessonOf(ctx, req.GetLesson())
	if err != nil {
		return nil, err
	}
	lesson.ProposerID = c.person.ID
	return once(ctx, s.backend, req, &pb.Lesson{}, func(tx *postgres.Tx) (*pb.Lesson, error) {
		if lesson.IncidentID != "" {
			if _, err := tx.Incident(ctx, lesson.IncidentID); err != nil {
				return nil, err
			}
		}
		kept, err := tx.CreateLesson(ctx, c.person.Actor(), lesson)
		if err != nil {
			return nil, err
		}
		return showLesson(c.club, kept), nil
	})
}

// lessonOf reads a proposal.
func lessonOf(ctx context.Context, in *pb.Lesson) (club.Lesson, error) {
	out := club.Lesson{State: club.Proposed, Text: strings.TrimSpace(in.GetText()), PredicateText: strings.TrimSpace(in.GetPredicate()), Remedy: in.GetRemedy()}
	if out.Text == "" {
		return out, club.RefuseField("lesson.text", "TEXT_MISSING", "say what the next builder should know")
	}
	if _, err := compilePredicate("lesson.predicate", out.PredicateText); err != nil {
		return out, err
	}
	var err error
	out.IncidentID, err = optionalName(ctx, club.Incidents, "lesson.incident", in.GetIncident())
	return out, err
}
