package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetLesson reads one lesson.
func (s *incidentsService) GetLesson(ctx context.Context, req *pb.GetLessonRequest) (*pb.Lesson, error) {
	c, id, err := locate(ctx, club.Lessons, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var l club.Lesson
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		l, err = tx.Lesson(ctx, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showLesson(c.club, l), nil
}
