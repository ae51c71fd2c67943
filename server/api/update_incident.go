package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// reviewed are the parts of an incident that a review may change.
var reviewed = []string{"state", "title", "narrative", "occur_time", "field", "place", "model", "injury", "injury_note",
	"occurrence_categories", "causes", "actions"}

// UpdateIncident writes the committee's review.
func (s *incidentsService) UpdateIncident(ctx context.Context, req *pb.UpdateIncidentRequest) (*pb.Incident, error) {
	c, id, err := locate(ctx, club.Incidents, "incident.name", req.GetIncident().GetName())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.Incident{}, func(tx *postgres.Tx) (*pb.Incident, error) {
		changed, err := s.mergedIncident(ctx, tx, c, id, req)
		if err != nil {
			return nil, err
		}
		kept, err := tx.UpdateIncident(ctx, c.person.Actor(), changed, req.GetIncident().GetEtag())
		if err != nil {
			return nil, err
		}
		return showIncident(c.club, kept), nil
	})
}

// mergedIncident puts the request into the incident as it stands and checks the whole.
func (s *incidentsService) mergedIncident(ctx context.Context, tx *postgres.Tx, c caller, id string, req *pb.UpdateIncidentRequest) (club.Incident, error) {
	before, err := tx.Incident(ctx, id)
	if err != nil {
		return before, err
	}
	whole := showIncident(c.club, before)
	if err := merge(whole, req.GetIncident(), req.GetUpdateMask(), reviewed...); err != nil {
		return before, err
	}
	if err := validateMessage(s.validator, &pb.UpdateIncidentRequest{Incident: whole}); err != nil {
		return before, err
	}
	after, err := reportOf(ctx, whole)
	if err != nil {
		return before, err
	}
	after.ID, after.State, after.ReporterID = id, club.IncidentStateOf(whole.GetState()), before.ReporterID
	if err := club.CheckCategories(whole.GetOccurrenceCategories()); err != nil {
		return before, err
	}
	after.Categories, after.Causes = whole.GetOccurrenceCategories(), whole.GetCauses()
	if after.Actions, err = actionsOf(ctx, whole.GetActions()); err != nil {
		return before, err
	}
	return after, checkReferences(ctx, &tx.ReadTx, after)
}

// actionsOf reads actions and the names of who does them.
func actionsOf(ctx context.Context, list []*pb.IncidentAction) ([]club.Action, error) {
	out := make([]club.Action, 0, len(list))
	for _, a := range list {
		owner, err := optionalName(ctx, club.People, "incident.actions.owner", a.GetOwner())
		if err != nil {
			return nil, err
		}
		out = append(out, club.Action{Text: a.GetText(), OwnerID: owner, DueDate: a.GetDueDate(), Done: a.GetDone(), Evidence: a.GetEvidence()})
	}
	return out, nil
}
