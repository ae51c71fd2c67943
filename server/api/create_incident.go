package api

import (
	"context"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreateIncident keeps a report. Everybody may report; the review is the committee's, so categories, causes and actions come later.
func (s *incidentsService) CreateIncident(ctx context.Context, req *pb.CreateIncidentRequest) (*pb.Incident, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	report, err := reportOf(ctx, req.GetIncident())
	if err != nil {
		return nil, err
	}
	report.ReporterID, report.State = c.person.ID, club.Reported
	return once(ctx, s.backend, req, &pb.Incident{}, func(tx *postgres.Tx) (*pb.Incident, error) {
		if err := checkReferences(ctx, &tx.ReadTx, report); err != nil {
			return nil, err
		}
		kept, err := tx.CreateIncident(ctx, c.person.Actor(), report)
		if err != nil {
			return nil, err
		}
		return showIncident(c.club, kept), nil
	})
}

// reportOf reads what a reporter tells.
func reportOf(ctx context.Context, in *pb.Incident) (club.Incident, error) {
	out := club.Incident{Title: strings.TrimSpace(in.GetTitle()), Narrative: strings.TrimSpace(in.GetNarrative()), Place: in.GetPlace(),
		Injury: club.InjuryOf(in.GetInjury()), InjuryNote: in.GetInjuryNote()}
	switch {
	case out.Title == "":
		return out, club.RefuseField("incident.title", "TITLE_MISSING", "give it a title")
	case out.Narrative == "":
		return out, club.RefuseField("incident.narrative", "NARRATIVE_MISSING", "say what happened")
	case in.GetOccurTime() == nil:
		return out, club.RefuseField("incident.occurTime", "TIME_MISSING", "say when it happened")
	}
	out.OccurTime = in.GetOccurTime().AsTime()
	var err error
	if out.FieldID, err = optionalName(ctx, club.Fields, "incident.field", in.GetField()); err != nil {
		return out, err
	}
	out.ModelID, err = optionalName(ctx, club.Models, "incident.model", in.GetModel())
	return out, err
}

// optionalName reads a name that may be empty.
func optionalName(ctx context.Context, in club.Collection, field, name string) (string, error) {
	if name == "" {
		return "", nil
	}
	_, id, err := locate(ctx, in, field, name)
	return id, err
}

// checkReferences refuses a field or model that the club does not have.
func checkReferences(ctx context.Context, tx *postgres.ReadTx, i club.Incident) error {
	if i.FieldID != "" {
		if _, err := tx.Field(ctx, i.FieldID); err != nil {
			return err
		}
	}
	if i.ModelID == "" {
		return nil
	}
	_, err := tx.Model(ctx, i.ModelID)
	return err
}
