package postgres_test

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"
	"testing"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// change updates Redshank.
func (s *scene) change(etag string, name *string, description json.RawMessage) (m club.Model, err error) {
	err = s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
		m, err = tx.UpdateModel(ctx, ada, postgres.ModelChange{ID: s.redshank.ID, Etag: etag, DisplayName: name, Description: description})
		return err
	})
	return m, err
}

func TestModelRevisions(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	name := "Redshank II"
	for _, tt := range []struct {
		what        string
		name        *string
		description json.RawMessage
		revision    int32
	}{
		{"another name", &name, nil, 1},
		{"the same in other words", nil, json.RawMessage(`{"fuelSystem": {"airTrap": false}, "mass": {"itemsMassKg": 8.60}}`), 1},
		{"another mass", nil, description(8.9), 2},
		{"back again", nil, description(8.6), 3},
	} {
		m, err := s.change("", tt.name, tt.description)
		if err != nil || m.LatestRevision != tt.revision || m.DisplayName != name {
			t.Errorf("%s: revision %d of %q, %v; want %d", tt.what, m.LatestRevision, m.DisplayName, err, tt.revision)
		}
	}
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		page, next, err := tx.Revisions(ctx, s.redshank.ID, club.Page{Size: 2})
		if err != nil || len(page) != 2 || page[0].Number != 3 || next == "" {
			t.Errorf("first page: %v, %q, %v", page, next, err)
		}
		rest, end, err := tx.Revisions(ctx, s.redshank.ID, club.Page{Size: 2, After: next})
		if err != nil || len(rest) != 1 || rest[0].Number != 1 || end != "" {
			t.Errorf("second page: %v, %q, %v", rest, end, err)
		}
		if rest[0].Digest != page[0].Digest || rest[0].Digest == page[1].Digest {
			t.Error("digests do not follow the descriptions")
		}
		_, err = tx.Revision(ctx, s.redshank.ID, 4)
		s.refused(err, club.NotFound)
		return nil
	})
}

func TestModelStaleEtag(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	read := club.Etag(s.redshank.Version)
	if _, err := s.change(read, nil, description(9)); err != nil {
		t.Fatal(err)
	}
	m, err := s.change(read, nil, description(10))
	s.refused(err, club.Stale)
	if m.LatestRevision != 0 {
		t.Errorf("a stale change made revision %d", m.LatestRevision)
	}
}

func TestModelChangedByTwoAtOnce(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	read := club.Etag(s.redshank.Version)
	errs := make([]error, 6)
	var group sync.WaitGroup
	for n := range errs {
		group.Go(func() { _, errs[n] = s.change(read, nil, description(float64(n)+20)) })
	}
	group.Wait()
	won := 0
	for _, err := range errs {
		if err == nil {
			won++
		} else {
			s.refused(err, club.Stale)
		}
	}
	if won != 1 {
		t.Errorf("%d of %d changes of the same version went through", won, len(errs))
	}
}

func TestModelIsDeletedUnlessNamed(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	remove := func(id, etag string) error {
		return s.try(func(ctx context.Context, tx *postgres.Tx) error { return tx.DeleteModel(ctx, ada, id, etag) })
	}
	var sandmartin club.Model
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		sandmartin, err = tx.CreateModel(ctx, ada, club.Model{DisplayName: "Sandmartin", Description: description(11.8)})
		return err
	})
	s.draft()
	s.refused(remove(s.redshank.ID, ""), club.FailedPrecondition)
	s.refused(remove(sandmartin.ID, "v9"), club.Stale)
	s.must(remove(sandmartin.ID, "v1"))
	s.refused(remove(sandmartin.ID, ""), club.NotFound)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		_, err := tx.Revision(ctx, sandmartin.ID, 1)
		s.refused(err, club.NotFound)
		return nil
	})
}

func TestModelsPageByPage(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	for n := range 6 {
		s.tx(func(ctx context.Context, tx *postgres.Tx) error {
			_, err := tx.CreateModel(ctx, bram, club.Model{DisplayName: fmt.Sprintf("Dabchick %d", n), Description: description(2.1)})
			return err
		})
	}
	var names []string
	page := club.Page{Size: 4}
	for {
		s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
			models, next, err := tx.Models(ctx, "bram", page)
			for _, m := range models {
				names = append(names, m.DisplayName)
			}
			page.After = next
			return err
		})
		if page.After == "" {
			break
		}
	}
	if got := fmt.Sprint(names); got != "[Dabchick 5 Dabchick 4 Dabchick 3 Dabchick 2 Dabchick 1 Dabchick 0]" {
		t.Errorf("got %s", got)
	}
	err := s.Read(t.Context(), larkmoor, func(tx *postgres.ReadTx) error {
		_, _, err := tx.Models(t.Context(), "", club.Page{After: "bm90IGEgdG9rZW4"})
		return err
	})
	s.refused(err, club.Invalid)
}

func TestBadDocumentsAreRefused(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	for _, bad := range []string{`{`, ``, `{"a":1,"a":2}`, `{"name":"\u0000"}`} {
		_, err := s.change("", nil, json.RawMessage(bad))
		s.refused(err, club.Invalid)
	}
	name := "nul \x00"
	_, err := s.change("", &name, nil)
	s.refused(err, club.Invalid)
}

func TestFieldVersions(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	changed := json.RawMessage(`{"displayName":"Quarry Top","heightLimitMeters":{"value":120}}`)
	update := func(etag string) (f club.Field, err error) {
		err = s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
			f, err = tx.UpdateField(ctx, mei, postgres.FieldChange{ID: s.quarry.ID, Etag: etag, Description: changed})
			return err
		})
		return f, err
	}
	if f, err := update("v1"); err != nil || f.LatestVersion != 2 || f.Version != 2 {
		t.Errorf("got %+v, %v", f, err)
	}
	_, err := update("v1")
	s.refused(err, club.Stale)
	if f, err := update("v2"); err != nil || f.LatestVersion != 2 || f.Version != 3 {
		t.Errorf("the same again: got %+v, %v", f, err)
	}
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		v, err := tx.FieldVersion(ctx, s.quarry.ID, 1)
		if err != nil || string(v.Description) != `{"displayName": "Quarry Top"}` {
			t.Errorf("version 1: %s, %v", v.Description, err)
		}
		_, err = tx.FieldVersion(ctx, s.quarry.ID, 3)
		s.refused(err, club.NotFound)
		fields, next, err := tx.Fields(ctx, club.Page{})
		if len(fields) != 1 || next != "" {
			t.Errorf("%d fields, then %q", len(fields), next)
		}
		return err
	})
}
