package postgres_test

import (
	"context"
	"sync"
	"sync/atomic"
	"testing"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// TestDeadlockIsTriedAgain lets two transactions change the same two models in opposite order. The database breaks one
// off; it must come through all the same.
func TestDeadlockIsTriedAgain(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	ids := []string{s.redshank.ID, ""}
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		m, err := tx.CreateModel(ctx, ada, club.Model{DisplayName: "Sandmartin", Description: description(11.8)})
		ids[1] = m.ID
		return err
	})
	var runs atomic.Int32
	var bothHaveOne, group sync.WaitGroup
	bothHaveOne.Add(2)
	for n := range 2 {
		var meet sync.Once
		group.Go(func() {
			err := s.try(func(ctx context.Context, tx *postgres.Tx) error {
				runs.Add(1)
				if _, err := tx.UpdateModel(ctx, ada, postgres.ModelChange{ID: ids[n]}); err != nil {
					return err
				}
				meet.Do(func() {
					bothHaveOne.Done()
					bothHaveOne.Wait()
				})
				_, err := tx.UpdateModel(ctx, ada, postgres.ModelChange{ID: ids[1-n]})
				return err
			})
			if err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	if runs.Load() != 3 {
		t.Errorf("work ran %d times, want 3: twice, and once again", runs.Load())
	}
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		m, err := tx.Model(ctx, s.redshank.ID)
		if m.Version != 3 {
			t.Errorf("version %d, want 3: one change each", m.Version)
		}
		return err
	})
}
