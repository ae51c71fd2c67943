package postgres

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"pitgate/server/club"
	"pitgate/server/ledger"
	"pitgate/server/postgres/pgdb"
)

// ModelChange is a change of a model; nil parts stay. An empty etag is not checked.
type ModelChange struct {
	ID, Etag    string
	DisplayName *string
	Description json.RawMessage
}

// digest is SHA-256 over the canonical form of a document, in hex. Field is named in the error.
func digest(field string, document []byte) (string, error) {
	sum, err := ledger.Digest(document)
	if err != nil {
		return "", club.RefuseField(field, "BAD_DOCUMENT", "%v", err)
	}
	return hex.EncodeToString(sum), nil
}

// hexSum is SHA-256 over plain bytes, in hex.
func hexSum(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])
}

// CreateModel registers a model owned by by, with revision 1. Uses DisplayName and Description of m.
func (t *Tx) CreateModel(ctx context.Context, by club.Actor, m club.Model) (club.Model, error) {
	id := t.store.id()
	err := t.q.InsertModel(ctx, pgdb.InsertModelParams{
		ClubID: t.clubID, ModelID: id, OwnerID: by.PersonID, DisplayName: m.DisplayName, Now: t.now,
	})
	if err != nil {
		return club.Model{}, err
	}
	if err := t.freezeRevision(ctx, by, id, 1, m.Description); err != nil {
		return club.Model{}, err
	}
	return t.Model(ctx, id)
}

// freezeRevision keeps a description for good and tells the ledger its digest.
func (t *Tx) freezeRevision(ctx context.Context, by club.Actor, modelID string, number int32, description []byte) error {
	sum, err := digest("model.description", description)
	if err != nil {
		return err
	}
	err = t.q.InsertRevision(ctx, pgdb.InsertRevisionParams{
		ClubID: t.clubID, ModelID: modelID, Number: number, Description: description, Digest: sum, Now: t.now,
	})
	if err != nil {
		return err
	}
	_, err = t.record(ctx, "model.revision", by, event{
		"model": club.Models.Name(t.clubID, modelID), "revision": number, "digest": sum,
	})
	return err
}

// Model reads a model with its latest description. NotFound when there is none.
func (r *ReadTx) Model(ctx context.Context, id string) (club.Model, error) {
	row, err := r.q.Model(ctx, r.clubID, id)
	if err != nil {
		return club.Model{}, found(err, "model", id)
	}
	return modelOf(row), nil
}

// Models lists the models of ownerID, or of all when ownerID is empty, newest first, and the token of the next page.
func (r *ReadTx) Models(ctx context.Context, ownerID string, page club.Page) ([]club.Model, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListModels(ctx, pgdb.ListModelsParams{
		ClubID: r.clubID, OwnerID: ownerID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	models, next := cut(rows, page.Limit(), func(row pgdb.ListModelsRow) (club.Model, place) {
		return modelOf(pgdb.ModelRow(row)), place{row.CreateTime, row.ModelID}
	})
	return models, next, err
}

func modelOf(row pgdb.ModelRow) club.Model {
	return club.Model{
		ID: row.ModelID, DisplayName: row.DisplayName, OwnerID: row.OwnerID, OwnerDisplayName: row.OwnerDisplayName,
		Description: row.Description, LatestRevision: row.LatestRevision, Version: row.Version,
		CreateTime: row.CreateTime, UpdateTime: row.UpdateTime,
	}
}

// UpdateModel changes a model. A description that differs is frozen as the next revision, and what rested on the former
// one lapses. Stale when the etag is not that of the model.
func (t *Tx) UpdateModel(ctx context.Context, by club.Actor, c ModelChange) (club.Model, error) {
	if _, err := t.q.LockModel(ctx, t.clubID, c.ID); err != nil {
		return club.Model{}, found(err, "model", c.ID)
	}
	row, err := t.q.Model(ctx, t.clubID, c.ID)
	if err != nil {
		return club.Model{}, found(err, "model", c.ID)
	}
	if err := club.MatchEtag(c.Etag, row.Version); err != nil {
		return club.Model{}, err
	}
	revision, err := t.reviseModel(ctx, by, row, c.Description)
	if err != nil {
		return club.Model{}, err
	}
	err = t.q.UpdateModel(ctx, pgdb.UpdateModelParams{
		ClubID: t.clubID, ModelID: c.ID, DisplayName: orElse(c.DisplayName, row.DisplayName), LatestRevision: revision, Now: t.now,
	})
	if err != nil {
		return club.Model{}, err
	}
	return t.Model(ctx, c.ID)
}

// reviseModel freezes a description unless it is absent or the same as the latest, and returns the latest number.
func (t *Tx) reviseModel(ctx context.Context, by club.Actor, row pgdb.ModelRow, description []byte) (int32, error) {
	if description == nil {
		return row.LatestRevision, nil
	}
	sum, err := digest("model.description", description)
	if err != nil || sum == row.Digest {
		return row.LatestRevision, err
	}
	next := row.LatestRevision + 1
	if err := t.freezeRevision(ctx, by, row.ModelID, next, description); err != nil {
		return 0, err
	}
	_, err = t.LapseForModel(ctx, row.ModelID, fmt.Sprintf("the model was changed: revision %d", next))
	return next, err
}

// DeleteModel takes a model out of sight. FailedPrecondition when an approval names it.
func (t *Tx) DeleteModel(ctx context.Context, by club.Actor, id, etag string) error {
	row, err := t.q.LockModel(ctx, t.clubID, id)
	if err != nil {
		return found(err, "model", id)
	}
	if err := club.MatchEtag(etag, row.Version); err != nil {
		return err
	}
	named, err := t.q.ApprovalsOfModel(ctx, t.clubID, id)
	if err != nil {
		return err
	}
	if named > 0 {
		return club.Refuse(club.FailedPrecondition, "MODEL_IN_USE", "approvals name this model, so it stays")
	}
	if err := t.q.DeleteModel(ctx, t.now, t.clubID, id); err != nil {
		return err
	}
	_, err = t.record(ctx, "model.deleted", by, event{"model": club.Models.Name(t.clubID, id)})
	return err
}

// Revision reads one frozen description. NotFound when there is none.
func (r *ReadTx) Revision(ctx context.Context, modelID string, number int32) (club.Revision, error) {
	row, err := r.q.Revision(ctx, r.clubID, modelID, number)
	if err != nil {
		return club.Revision{}, found(err, "revision", fmt.Sprintf("%s/%d", modelID, number))
	}
	return revisionOf(row), nil
}

// Revisions lists a model's revisions, newest first, and the token of the next page.
func (r *ReadTx) Revisions(ctx context.Context, modelID string, page club.Page) ([]club.Revision, string, error) {
	before := int64(math.MaxInt32)
	if page.After != "" {
		var err error
		if before, err = strconv.ParseInt(page.After, 10, 32); err != nil {
			return nil, "", badToken()
		}
	}
	rows, err := r.q.ListRevisions(ctx, pgdb.ListRevisionsParams{
		ClubID: r.clubID, ModelID: modelID, Before: int32(before), Most: page.Limit() + 1,
	})
	revisions, next := cut(rows, page.Limit(), func(row pgdb.ModelRevision) (club.Revision, place) {
		return revisionOf(row), place{}
	})
	if next != "" {
		next = strconv.Itoa(int(revisions[len(revisions)-1].Number))
	}
	return revisions, next, err
}

func revisionOf(row pgdb.ModelRevision) club.Revision {
	return club.Revision{
		ModelID: row.ModelID, Number: row.Number, Description: row.Description, Digest: row.Digest, CreateTime: row.CreateTime,
	}
}

// orElse is the value that replaces the present one, or the present one when nothing does.
func orElse[T any](replacement *T, present T) T {
	if replacement == nil {
		return present
	}
	return *replacement
}
