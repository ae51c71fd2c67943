package api

import (
	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// showIncident writes a report and its review.
func showIncident(clubID string, i club.Incident) *pb.Incident {
	out := &pb.Incident{Name: club.Incidents.Name(clubID, i.ID), State: i.State.Proto(), Title: i.Title, Narrative: i.Narrative,
		OccurTime: showTime(i.OccurTime), Field: club.Fields.Name(clubID, i.FieldID), Place: i.Place, Model: club.Models.Name(clubID, i.ModelID),
		Injury: i.Injury.Proto(), InjuryNote: i.InjuryNote, ReporterDisplayName: i.ReporterDisplayName,
		OccurrenceCategories: i.Categories, Causes: i.Causes, CategoryWarnings: club.CategoryWarnings(i.Categories), Etag: club.Etag(i.Version),
		CreateTime: showTime(i.CreateTime), UpdateTime: showTime(i.UpdateTime)}
	for _, a := range i.Actions {
		out.Actions = append(out.Actions, &pb.IncidentAction{Text: a.Text, Owner: club.People.Name(clubID, a.OwnerID),
			DueDate: a.DueDate, Done: a.Done, Evidence: a.Evidence})
	}
	for _, p := range i.Photos {
		out.Photos = append(out.Photos, showPhoto(clubID, p))
	}
	for _, id := range i.LessonIDs {
		out.Lessons = append(out.Lessons, club.Lessons.Name(clubID, id))
	}
	return out
}

// showPhoto writes a picture; only a single one has content.
func showPhoto(clubID string, p club.Photo) *pb.IncidentPhoto {
	return &pb.IncidentPhoto{Name: club.PhotoName(clubID, p.IncidentID, p.ID), WidthPixels: p.WidthPixels,
		HeightPixels: p.HeightPixels, Content: p.Content}
}

// showLesson writes a lesson.
func showLesson(clubID string, l club.Lesson) *pb.Lesson {
	return &pb.Lesson{Name: club.Lessons.Name(clubID, l.ID), State: l.State.Proto(), Text: l.Text, Predicate: l.PredicateText,
		Remedy: l.Remedy, Incident: club.Incidents.Name(clubID, l.IncidentID), AdopterDisplayNames: l.AdopterDisplayNames,
		HoldCount: l.HoldCount, Etag: club.Etag(l.Version), CreateTime: showTime(l.CreateTime), AdoptTime: showTime(l.AdoptTime)}
}
