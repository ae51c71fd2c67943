package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetIncident reads one report; the whole club learns from it.
func (s *incidentsService) GetIncident(ctx context.Context, req *pb.GetIncidentRequest) (*pb.Incident, error) {
	c, id, err := locate(ctx, club.Incidents, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var i club.Incident
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		i, err = tx.Incident(ctx, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showIncident(c.club, i), nil
}
