package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// ListIncidents lists the club's reports.
func (s *incidentsService) ListIncidents(ctx context.Context, req *pb.ListIncidentsRequest) (*pb.ListIncidentsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	out := &pb.ListIncidentsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, next, err := tx.Incidents(ctx, pageOf(req))
		out.NextPageToken = next
		for _, i := range list {
			out.Incidents = append(out.Incidents, showIncident(c.club, i))
		}
		return err
	})
	return out, err
}
