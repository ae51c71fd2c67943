package postgres

import (
	"context"
	"encoding/json"
	"fmt"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// CreateIncident keeps a report in state reported. The reporter is by; review parts of i are kept as given. The ledger
// learns a digest of the report and nothing of its words.
func (t *Tx) CreateIncident(ctx context.Context, by club.Actor, i club.Incident) (club.Incident, error) {
	actions, err := writeActions(i.Actions)
	if err != nil {
		return club.Incident{}, err
	}
	id := t.store.id()
	err = t.q.InsertIncident(ctx, pgdb.InsertIncidentParams{
		ClubID: t.clubID, IncidentID: id, ReporterID: by.PersonID, State: string(club.Reported), Title: i.Title,
		Narrative: i.Narrative, OccurTime: i.OccurTime, FieldID: optional(i.FieldID), Place: i.Place,
		ModelID: optional(i.ModelID), Injury: string(i.Injury), InjuryNote: i.InjuryNote, Categories: list(i.Categories),
		Causes: list(i.Causes), Actions: actions, Now: t.now,
	})
	if err != nil {
		return club.Incident{}, err
	}
	return t.recordIncident(ctx, "incident.reported", by, id)
}

// recordIncident reads an incident as it now stands and tells the ledger its digest.
func (t *Tx) recordIncident(ctx context.Context, kind string, by club.Actor, id string) (club.Incident, error) {
	now, err := t.Incident(ctx, id)
	if err != nil {
		return club.Incident{}, err
	}
	raw, err := json.Marshal(now)
	if err != nil {
		return club.Incident{}, fmt.Errorf("incident: %w", err)
	}
	sum, err := digest("incident", raw)
	if err != nil {
		return club.Incident{}, err
	}
	_, err = t.record(ctx, kind, by, event{
		"incident": club.Incidents.Name(t.clubID, id), "state": now.State, "injury": now.Injury, "digest": sum,
	})
	return now, err
}

// writeActions is the actions as the database keeps them.
func writeActions(actions []club.Action) ([]byte, error) {
	raw, err := json.Marshal(append([]club.Action{}, actions...))
	if err != nil {
		return nil, fmt.Errorf("incident.actions: %w", err)
	}
	return raw, nil
}

// Incident reads an incident, its photos without content, and the lessons drawn from it. NotFound when there is none.
func (r *ReadTx) Incident(ctx context.Context, id string) (club.Incident, error) {
	row, err := r.q.Incident(ctx, r.clubID, id)
	if err != nil {
		return club.Incident{}, found(err, "incident", id)
	}
	i, err := incidentOf(row)
	if err != nil {
		return club.Incident{}, err
	}
	whole, err := r.completeIncidents(ctx, []club.Incident{i})
	if err != nil {
		return club.Incident{}, err
	}
	return whole[0], nil
}

// Incidents lists the club's incidents, last reported first, and the token of the next page.
func (r *ReadTx) Incidents(ctx context.Context, page club.Page) ([]club.Incident, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListIncidents(ctx, pgdb.ListIncidentsParams{
		ClubID: r.clubID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	if err != nil {
		return nil, "", err
	}
	var broken error
	incidents, next := cut(rows, page.Limit(), func(row pgdb.ListIncidentsRow) (club.Incident, place) {
		i, err := incidentOf(pgdb.IncidentRow(row))
		if err != nil {
			broken = err
		}
		return i, place{row.CreateTime, row.IncidentID}
	})
	if broken != nil {
		return nil, "", broken
	}
	incidents, err = r.completeIncidents(ctx, incidents)
	return incidents, next, err
}

func incidentOf(row pgdb.IncidentRow) (club.Incident, error) {
	i := club.Incident{
		ID: row.IncidentID, State: club.IncidentState(row.State), Title: row.Title, Narrative: row.Narrative,
		OccurTime: row.OccurTime, FieldID: text(row.FieldID), Place: row.Place, ModelID: text(row.ModelID),
		Injury: club.Injury(row.Injury), InjuryNote: row.InjuryNote, ReporterID: row.ReporterID,
		ReporterDisplayName: row.ReporterDisplayName, Categories: row.Categories, Causes: row.Causes, Version: row.Version,
		CreateTime: row.CreateTime, UpdateTime: row.UpdateTime,
	}
	if err := json.Unmarshal(row.Actions, &i.Actions); err != nil {
		return club.Incident{}, fmt.Errorf("actions of incident %s: %w", row.IncidentID, err)
	}
	return i, nil
}

// completeIncidents adds photos and lessons, with one query each for all of them.
func (r *ReadTx) completeIncidents(ctx context.Context, incidents []club.Incident) ([]club.Incident, error) {
	at := map[string]*club.Incident{}
	ids := []string{}
	for n := range incidents {
		at[incidents[n].ID] = &incidents[n]
		ids = append(ids, incidents[n].ID)
	}
	photos, err := r.q.PhotosOf(ctx, r.clubID, ids)
	if err != nil {
		return nil, err
	}
	for _, p := range photos {
		i := at[p.IncidentID]
		i.Photos = append(i.Photos, club.Photo{
			ID: p.PhotoID, IncidentID: p.IncidentID, WidthPixels: p.WidthPixels, HeightPixels: p.HeightPixels,
		})
	}
	lessons, err := r.q.LessonsOf(ctx, r.clubID, ids)
	if err != nil {
		return nil, err
	}
	for _, l := range lessons {
		i := at[text(l.IncidentID)]
		i.LessonIDs = append(i.LessonIDs, l.LessonID)
	}
	return incidents, nil
}

// UpdateIncident writes every part of i that a review may change; read it first and change what is meant. An empty etag
// is not checked. Stale when it is not that of the incident.
func (t *Tx) UpdateIncident(ctx context.Context, by club.Actor, i club.Incident, etag string) (club.Incident, error) {
	version, err := t.q.LockIncident(ctx, t.clubID, i.ID)
	if err != nil {
		return club.Incident{}, found(err, "incident", i.ID)
	}
	if err := club.MatchEtag(etag, version); err != nil {
		return club.Incident{}, err
	}
	actions, err := writeActions(i.Actions)
	if err != nil {
		return club.Incident{}, err
	}
	err = t.q.UpdateIncident(ctx, pgdb.UpdateIncidentParams{
		ClubID: t.clubID, IncidentID: i.ID, State: string(i.State), Title: i.Title, Narrative: i.Narrative,
		OccurTime: i.OccurTime, FieldID: optional(i.FieldID), Place: i.Place, ModelID: optional(i.ModelID),
		Injury: string(i.Injury), InjuryNote: i.InjuryNote, Categories: list(i.Categories), Causes: list(i.Causes),
		Actions: actions, Now: t.now,
	})
	if err != nil {
		return club.Incident{}, err
	}
	return t.recordIncident(ctx, "incident.reviewed", by, i.ID)
}

// AddPhoto adds a picture to an incident. Uses IncidentID, WidthPixels, HeightPixels and Content of p.
func (t *Tx) AddPhoto(ctx context.Context, by club.Actor, p club.Photo) (club.Photo, error) {
	if _, err := t.q.LockIncident(ctx, t.clubID, p.IncidentID); err != nil {
		return club.Photo{}, found(err, "incident", p.IncidentID)
	}
	p.ID = t.store.id()
	err := t.q.InsertPhoto(ctx, pgdb.InsertPhotoParams{
		ClubID: t.clubID, PhotoID: p.ID, IncidentID: p.IncidentID, WidthPixels: p.WidthPixels,
		HeightPixels: p.HeightPixels, Content: p.Content, Now: t.now,
	})
	if err != nil {
		return club.Photo{}, err
	}
	_, err = t.record(ctx, "incident.photo", by, event{
		"photo": club.PhotoName(t.clubID, p.IncidentID, p.ID), "digest": hexSum(p.Content),
	})
	return p, err
}

// Photo reads a picture with its content. NotFound when there is none.
func (r *ReadTx) Photo(ctx context.Context, incidentID, photoID string) (club.Photo, error) {
	row, err := r.q.Photo(ctx, r.clubID, incidentID, photoID)
	if err != nil {
		return club.Photo{}, found(err, "photo", photoID)
	}
	return club.Photo{
		ID: row.PhotoID, IncidentID: row.IncidentID, WidthPixels: row.WidthPixels, HeightPixels: row.HeightPixels,
		Content: row.Content,
	}, nil
}
