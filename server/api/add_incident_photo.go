package api

import (
	"context"
	"errors"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/photo"
	"pitgate/server/postgres"
)

// AddIncidentPhoto keeps a picture, re-encoded and without its metadata. The reporter, officers and committee may add.
func (s *incidentsService) AddIncidentPhoto(ctx context.Context, req *pb.AddIncidentPhotoRequest) (*pb.Incident, error) {
	c, id, err := locate(ctx, club.Incidents, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	cleaned, err := cleanPhoto(req.GetContent())
	if err != nil {
		return nil, err
	}
	cleaned.IncidentID = id
	return once(ctx, s.backend, req, &pb.Incident{}, func(tx *postgres.Tx) (*pb.Incident, error) {
		before, err := tx.Incident(ctx, id)
		if err != nil {
			return nil, err
		}
		if !c.mayRead(before.ReporterID) {
			return nil, club.Refuse(club.Forbidden, "REPORTER_ONLY", "the reporter, officers and committee add photos")
		}
		if _, err := tx.AddPhoto(ctx, c.person.Actor(), cleaned); err != nil {
			return nil, err
		}
		after, err := tx.Incident(ctx, id)
		if err != nil {
			return nil, err
		}
		return showIncident(c.club, after), nil
	})
}

// cleanPhoto re-encodes an upload.
func cleanPhoto(raw []byte) (club.Photo, error) {
	content, width, height, err := photo.Clean(raw)
	if errors.Is(err, photo.ErrRefused) {
		return club.Photo{}, club.RefuseField("content", "BAD_PHOTO", "%s", strings.TrimPrefix(err.Error(), photo.ErrRefused.Error()+": "))
	}
	return club.Photo{WidthPixels: int32(width), HeightPixels: int32(height), Content: content}, err
}
