package demo

import (
	"fmt"
	"time"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/fieldmaskpb"
	"google.golang.org/protobuf/types/known/timestamppb"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// past is one incident of the demo and what its review found.
type past struct {
	key, reporter, model, field string
	when                        time.Time
	report, review              *pb.Incident
}

// history is what happened at Larkmoor.
var history = []past{
	{key: "flame-out", reporter: Bram, model: "sandmartin", field: "long_acre", when: time.Date(2026, 5, 17, 13, 20, 0, 0, time.UTC),
		report: &pb.Incident{Title: "Engine stopped in the second turn", Injury: pb.Injury_INJURY_NONE, Place: "Above the farm track",
			Narrative: "Third lap at about 60 m. In the second left turn the exhaust note broke off. I held the speed, turned back and put " +
				"the model down in the crop short of the strip. The nose leg folded. There were bubbles in the line to the pump."},
		review: &pb.Incident{State: pb.IncidentState_INCIDENT_STATE_UNDER_REVIEW, OccurrenceCategories: []string{"FUEL"},
			Causes: []string{"The pick-up drew air in the turn with a third of the fuel left.", "A plain pick-up came free for longer than the air trap lasted."},
			Actions: []*pb.IncidentAction{{Text: "Propose a check for the pick-up in the tank.", Owner: club.People.Name(ClubID, Mei),
				DueDate: "2026-06-30"}}}},
	{key: "link-loss", reporter: Ada, model: "dabchick", field: "long_acre", when: time.Date(2026, 3, 8, 10, 5, 0, 0, time.UTC),
		report: &pb.Incident{Title: "No control for two seconds on the downwind leg", Injury: pb.Injury_INJURY_NONE, Place: "North of the barn",
			Narrative: "On the far side, nose pointing away, the model did not answer for about two seconds. The motor stopped as the " +
				"fail-safe is set. It answered again in a shallow dive and I landed at once."},
		review: &pb.Incident{State: pb.IncidentState_INCIDENT_STATE_CLOSED, OccurrenceCategories: []string{"SCF-NP"},
			Causes: []string{"Both receiver antennas lay along the battery, shaded when flying away."},
			Actions: []*pb.IncidentAction{{Text: "Move one antenna to the fin and repeat the range check.", Owner: club.People.Name(ClubID, Ada),
				DueDate: "2026-03-22", Done: true, Evidence: "Range check repeated on 15 March, 42 m at reduced power."}}}},
	{key: "heavy-landing", reporter: Tomas, model: "nightjar", field: "long_acre", when: time.Date(2025, 9, 21, 15, 40, 0, 0, time.UTC),
		report: &pb.Incident{Title: "Heavy landing on strip 24", Injury: pb.Injury_INJURY_NONE, Place: "First third of the strip",
			Narrative: "Gusty from the left. Too slow on short final, the left boom dropped, hard contact on the left wheel. One gear mount " +
				"torn out of the boom, nobody near."},
		review: &pb.Incident{State: pb.IncidentState_INCIDENT_STATE_CLOSED, OccurrenceCategories: []string{"ARC"},
			Causes: []string{"Approach speed was guessed; the gust was not added to it."}}},
}

// incidents reports what happened and enters the committee's review.
func (l *loader) incidents() error {
	client := pb.NewIncidentsServiceClient(l.conn)
	for _, p := range history {
		report, review := proto.CloneOf(p.report), proto.CloneOf(p.review)
		report.OccurTime, report.Model, report.Field = timestamppb.New(p.when), l.made[p.model], l.made[p.field]
		made, err := client.CreateIncident(l.as(p.reporter), &pb.CreateIncidentRequest{Parent: club.ClubName(ClubID),
			Incident: report, RequestId: requestID(p.key)})
		if err != nil {
			return fmt.Errorf("incident %s: %w", p.key, err)
		}
		l.made[p.key] = made.GetName()
		review.Name, review.Etag = made.GetName(), made.GetEtag()
		if _, err := client.UpdateIncident(l.as(Mei), &pb.UpdateIncidentRequest{Incident: review, RequestId: requestID("review " + p.key),
			UpdateMask: &fieldmaskpb.FieldMask{Paths: []string{"state", "occurrence_categories", "causes", "actions"}}}); err != nil {
			return fmt.Errorf("review of %s: %w", p.key, err)
		}
	}
	return nil
}

// lesson proposes what the flame-out taught. It comes last: it tells that the load is complete.
func (l *loader) lesson() error {
	_, err := pb.NewIncidentsServiceClient(l.conn).CreateLesson(l.as(Mei), &pb.CreateLessonRequest{Parent: club.ClubName(ClubID),
		RequestId: requestID("lesson"), Lesson: &pb.Lesson{
			Text:      "A turbine's tank needs a felt pick-up beside the air trap: a plain pick-up that comes free in long turns fills the trap with air, and the engine stops.",
			Predicate: "model.engines.exists(e, e.kind == EngineKind.ENGINE_KIND_TURBINE) && !model.fuel_system.felt_pickup",
			Remedy:    "Fit a felt pick-up in the tank that feeds the trap and enter it under the fuel system.",
			Incident:  l.made["flame-out"]}})
	if err != nil {
		return fmt.Errorf("lesson: %w", err)
	}
	return nil
}
