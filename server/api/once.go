package api

import (
	"context"
	"crypto/sha256"
	"fmt"

	"google.golang.org/grpc"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// repeatable is a request that a phone may send twice.
type repeatable interface {
	proto.Message
	GetRequestId() string
}

// once runs work in one transaction and keeps its answer there under the request id, so that the same request sent again gets the first
// answer and changes nothing. Without a request id it only runs the work.
func once[R proto.Message](ctx context.Context, b *backend, req repeatable, answer R, work func(*postgres.Tx) (R, error)) (R, error) {
	who := callerOf(ctx)
	key, err := replyKey(ctx, req)
	if err != nil {
		return answer, err
	}
	found := false
	err = b.store.InTx(ctx, who.club, func(tx *postgres.Tx) error {
		if found, err = recallIn(ctx, tx, key, answer); err != nil || found {
			return err
		}
		if answer, err = work(tx); err != nil {
			return err
		}
		return keepReply(ctx, tx, key, answer)
	})
	return answer, err
}

// recall looks for the kept answer of a request before costly work is done for it again.
func recall(ctx context.Context, b *backend, req repeatable, answer proto.Message) (found bool, err error) {
	key, err := replyKey(ctx, req)
	if err != nil || key.RequestID == "" {
		return false, err
	}
	err = b.store.InTx(ctx, callerOf(ctx).club, func(tx *postgres.Tx) error {
		found, err = recallIn(ctx, tx, key, answer)
		return err
	})
	return found, err
}

// recallIn fills answer with the kept reply, if there is one.
func recallIn(ctx context.Context, tx *postgres.Tx, key club.ReplyKey, answer proto.Message) (bool, error) {
	if key.RequestID == "" {
		return false, nil
	}
	kept, found, err := tx.FindReply(ctx, key)
	if err != nil || !found {
		return false, err
	}
	if err := proto.Unmarshal(kept, answer); err != nil {
		return false, fmt.Errorf("kept reply: %w", err)
	}
	return true, nil
}

// keepReply stores the answer beside the change it tells of.
func keepReply(ctx context.Context, tx *postgres.Tx, key club.ReplyKey, answer proto.Message) error {
	if key.RequestID == "" {
		return nil
	}
	text, err := proto.Marshal(answer)
	if err != nil {
		return fmt.Errorf("reply: %w", err)
	}
	return tx.SaveReply(ctx, key, text)
}

// replyKey names a request by its id, RPC and person, with a digest over what it asks for. Secrets stay out of the digest.
func replyKey(ctx context.Context, req repeatable) (club.ReplyKey, error) {
	method, _ := grpc.Method(ctx)
	body := proto.Clone(req).ProtoReflect()
	for _, name := range []protoreflect.Name{"request_id", "password", "first_password"} {
		if fd := body.Descriptor().Fields().ByName(name); fd != nil {
			body.Clear(fd)
		}
	}
	text, err := proto.MarshalOptions{Deterministic: true}.Marshal(body.Interface())
	if err != nil {
		return club.ReplyKey{}, fmt.Errorf("request digest: %w", err)
	}
	sum := sha256.Sum256(text)
	return club.ReplyKey{RequestID: req.GetRequestId(), RPC: method, PersonID: callerOf(ctx).person.ID, BodyDigest: sum[:]}, nil
}
