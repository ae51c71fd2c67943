package postgres

import (
	"bytes"
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// replyLife is how long an answer is kept, so that a phone may be offline for weeks.
const replyLife = 30 * 24 * time.Hour

// FindReply looks for the answer to a request that was sent before. Conflict when the same request id came with another
// call, person or body. A second sender of the same id waits until the first one's transaction has ended.
func (t *Tx) FindReply(ctx context.Context, k club.ReplyKey) (reply []byte, found bool, err error) {
	if err := t.q.LockClub(ctx, "reply/"+t.clubID+"/"+k.RequestID); err != nil {
		return nil, false, err
	}
	row, err := t.q.Reply(ctx, t.clubID, k.RequestID)
	if errors.Is(err, pgx.ErrNoRows) {
		return nil, false, nil
	}
	if err != nil {
		return nil, false, err
	}
	if row.Rpc != k.RPC || row.PersonID != k.PersonID || !bytes.Equal(row.BodyDigest, k.BodyDigest) {
		return nil, false, &club.Error{Code: club.Conflict, Field: "request_id", Reason: "REQUEST_ID_REUSED",
			Message: "another request had this id: make a new one"}
	}
	return row.Reply, true, nil
}

// SaveReply keeps the answer, in the transaction that does what was asked, and forgets those older than 30 days.
func (t *Tx) SaveReply(ctx context.Context, k club.ReplyKey, reply []byte) error {
	if err := t.q.SweepReplies(ctx, t.clubID, t.now.Add(-replyLife)); err != nil {
		return err
	}
	return t.q.InsertReply(ctx, pgdb.InsertReplyParams{
		ClubID: t.clubID, RequestID: k.RequestID, Rpc: k.RPC, PersonID: k.PersonID,
		BodyDigest: k.BodyDigest, Reply: append([]byte{}, reply...), Now: t.now,
	})
}
