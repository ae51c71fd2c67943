package postgres

import (
	"context"
	"encoding/json"
	"fmt"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// FieldChange is a change of a field; nil parts stay. An empty etag is not checked.
type FieldChange struct {
	ID, Etag    string
	DisplayName *string
	Description json.RawMessage
}

// CreateField keeps a field with version 1. Uses DisplayName and Description of f.
func (t *Tx) CreateField(ctx context.Context, by club.Actor, f club.Field) (club.Field, error) {
	id := t.store.id()
	err := t.q.InsertField(ctx, pgdb.InsertFieldParams{ClubID: t.clubID, FieldID: id, DisplayName: f.DisplayName, Now: t.now})
	if err != nil {
		return club.Field{}, err
	}
	if err := t.freezeFieldVersion(ctx, by, id, 1, f.Description); err != nil {
		return club.Field{}, err
	}
	return t.Field(ctx, id)
}

// freezeFieldVersion keeps a description for good and tells the ledger its digest.
func (t *Tx) freezeFieldVersion(ctx context.Context, by club.Actor, fieldID string, number int32, description []byte) error {
	sum, err := digest("field.description", description)
	if err != nil {
		return err
	}
	err = t.q.InsertFieldVersion(ctx, pgdb.InsertFieldVersionParams{
		ClubID: t.clubID, FieldID: fieldID, Number: number, Description: description, Digest: sum, Now: t.now,
	})
	if err != nil {
		return err
	}
	_, err = t.record(ctx, "field.version", by, event{
		"field": club.Fields.Name(t.clubID, fieldID), "version": number, "digest": sum,
	})
	return err
}

// Field reads a field with its latest description. NotFound when there is none.
func (r *ReadTx) Field(ctx context.Context, id string) (club.Field, error) {
	row, err := r.q.Field(ctx, r.clubID, id)
	if err != nil {
		return club.Field{}, found(err, "field", id)
	}
	return fieldOf(row), nil
}

// Fields lists the club's fields, newest first, and the token of the next page.
func (r *ReadTx) Fields(ctx context.Context, page club.Page) ([]club.Field, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListFields(ctx, pgdb.ListFieldsParams{
		ClubID: r.clubID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	fields, next := cut(rows, page.Limit(), func(row pgdb.ListFieldsRow) (club.Field, place) {
		return fieldOf(pgdb.FieldRow(row)), place{row.CreateTime, row.FieldID}
	})
	return fields, next, err
}

func fieldOf(row pgdb.FieldRow) club.Field {
	return club.Field{
		ID: row.FieldID, DisplayName: row.DisplayName, Description: row.Description, LatestVersion: row.LatestVersion,
		Version: row.Version, CreateTime: row.CreateTime, UpdateTime: row.UpdateTime,
	}
}

// UpdateField changes a field. A description that differs is frozen as the next version, and approvals that rest on the
// former one lapse. Stale when the etag is not that of the field.
func (t *Tx) UpdateField(ctx context.Context, by club.Actor, c FieldChange) (club.Field, error) {
	if _, err := t.q.LockField(ctx, t.clubID, c.ID); err != nil {
		return club.Field{}, found(err, "field", c.ID)
	}
	row, err := t.q.Field(ctx, t.clubID, c.ID)
	if err != nil {
		return club.Field{}, found(err, "field", c.ID)
	}
	if err := club.MatchEtag(c.Etag, row.Version); err != nil {
		return club.Field{}, err
	}
	version, err := t.reviseField(ctx, by, row, c.Description)
	if err != nil {
		return club.Field{}, err
	}
	err = t.q.UpdateField(ctx, pgdb.UpdateFieldParams{
		ClubID: t.clubID, FieldID: c.ID, DisplayName: orElse(c.DisplayName, row.DisplayName), LatestVersion: version, Now: t.now,
	})
	if err != nil {
		return club.Field{}, err
	}
	return t.Field(ctx, c.ID)
}

// reviseField freezes a description unless it is absent or the same as the latest, and returns the latest number.
func (t *Tx) reviseField(ctx context.Context, by club.Actor, row pgdb.FieldRow, description []byte) (int32, error) {
	if description == nil {
		return row.LatestVersion, nil
	}
	sum, err := digest("field.description", description)
	if err != nil || sum == row.Digest {
		return row.LatestVersion, err
	}
	next := row.LatestVersion + 1
	if err := t.freezeFieldVersion(ctx, by, row.FieldID, next, description); err != nil {
		return 0, err
	}
	_, err = t.LapseForField(ctx, row.FieldID, fmt.Sprintf("the field was changed: version %d", next))
	return next, err
}

// FieldVersion reads one frozen description. NotFound when there is none.
func (r *ReadTx) FieldVersion(ctx context.Context, fieldID string, number int32) (club.FieldVersion, error) {
	row, err := r.q.FieldVersion(ctx, r.clubID, fieldID, number)
	if err != nil {
		return club.FieldVersion{}, found(err, "field version", fmt.Sprintf("%s/%d", fieldID, number))
	}
	return club.FieldVersion{
		FieldID: row.FieldID, Number: row.Number, Description: row.Description, Digest: row.Digest, CreateTime: row.CreateTime,
	}, nil
}
