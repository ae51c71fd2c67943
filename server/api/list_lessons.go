package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// ListLessons lists the club's lessons.
func (s *incidentsService) ListLessons(ctx context.Context, req *pb.ListLessonsRequest) (*pb.ListLessonsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	out := &pb.ListLessonsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, next, err := tx.Lessons(ctx, pageOf(req))
		out.NextPageToken = next
		for _, l := range list {
			out.Lessons = append(out.Lessons, showLesson(c.club, l))
		}
		return err
	})
	return out, err
}
