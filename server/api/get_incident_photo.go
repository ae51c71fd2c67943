package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetIncidentPhoto reads one picture with its content.
func (s *incidentsService) GetIncidentPhoto(ctx context.Context, req *pb.GetIncidentPhotoRequest) (*pb.IncidentPhoto, error) {
	c := callerOf(ctx)
	clubID, incidentID, photoID, err := club.ParsePhoto("name", req.GetName())
	if err != nil {
		return nil, err
	}
	if clubID != c.club {
		return nil, notFound("photo")
	}
	var p club.Photo
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		p, err = tx.Photo(ctx, incidentID, photoID)
		return err
	})
	return showPhoto(c.club, p), err
}
