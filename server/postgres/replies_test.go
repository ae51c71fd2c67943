package postgres_test

import (
	"context"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

func key() club.ReplyKey {
	return club.ReplyKey{RequestID: "7d1f1a52-32a7-4f3f-8f35-0f4c0c7c8a11", RPC: "CreateModel", PersonID: "ada", BodyDigest: []byte{1, 2}}
}

// once does something that must happen once for a request id, and counts how often it did.
func (s *scene) once(k club.ReplyKey, done *atomic.Int32) (reply string, err error) {
	err = s.try(func(ctx context.Context, tx *postgres.Tx) error {
		kept, found, err := tx.FindReply(ctx, k)
		if err != nil || found {
			reply = string(kept)
			return err
		}
		done.Add(1)
		reply = "made"
		return tx.SaveReply(ctx, k, []byte(reply))
	})
	return reply, err
}

func TestReplyIsGivenAgain(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	var done atomic.Int32
	for range 3 {
		if reply, err := s.once(key(), &done); err != nil || reply != "made" {
			t.Errorf("got %q, %v", reply, err)
		}
	}
	if done.Load() != 1 {
		t.Errorf("done %d times", done.Load())
	}
	for name, change := range map[string]func(*club.ReplyKey){
		"body":   func(k *club.ReplyKey) { k.BodyDigest = []byte{1, 3} },
		"call":   func(k *club.ReplyKey) { k.RPC = "CreateField" },
		"person": func(k *club.ReplyKey) { k.PersonID = "bram" },
	} {
		other := key()
		change(&other)
		if _, err := s.once(other, &done); club.CodeOf(err) != club.Conflict {
			t.Errorf("same id with another %s: got %v", name, err)
		}
	}
}

func TestReplySentTwiceAtOnce(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	var done atomic.Int32
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			if reply, err := s.once(key(), &done); err != nil || reply != "made" {
				t.Errorf("got %q, %v", reply, err)
			}
		})
	}
	group.Wait()
	if done.Load() != 1 {
		t.Errorf("done %d times", done.Load())
	}
}

func TestReplyIsForgottenAfterThirtyDays(t *testing.T) {
	t.Parallel()
	var late atomic.Int64
	s := newScene(t, postgres.WithClock(func() time.Time { return time.Unix(1_790_000_000+late.Load(), 0) }))
	var done atomic.Int32
	next := key()
	next.RequestID = "another"
	for _, tt := range []struct{ day, want int64 }{{0, 1}, {29, 1}, {31, 2}} {
		late.Store(tt.day * 86400)
		next.RequestID += "."
		_, err := s.once(next, new(atomic.Int32)) // saving sweeps
		s.must(err)
		_, err = s.once(key(), &done)
		s.must(err)
		if int64(done.Load()) != tt.want {
			t.Errorf("day %d: done %d times, want %d", tt.day, done.Load(), tt.want)
		}
	}
}
