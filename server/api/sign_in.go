package api

import (
	"context"
	"errors"
	"strconv"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/auth"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// sessionLife is how long a session lasts: long enough for a week at the field without a network.
const sessionLife = 14 * 24 * time.Hour

// Metadata by which a session reaches the edge, which keeps it in a cookie.
const (
	sessionMetadata       = "pitgate-session"
	sessionExpiryMetadata = "pitgate-session-expiry"
	sessionEndMetadata    = "pitgate-session-end"
)

// SignIn opens a session for a person who knows the password. A wrong club, address or password gets one and the same answer after the
// same work.
func (s *peopleService) SignIn(ctx context.Context, req *pb.SignInRequest) (*pb.SignInResponse, error) {
	clubID, err := club.ParseClub("parent", req.GetParent())
	if err != nil {
		return nil, err
	}
	var person club.Person
	err = s.store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		person, err = tx.PersonByEmail(ctx, req.GetEmail())
		return err
	})
	if err != nil && club.CodeOf(err) != club.NotFound {
		return nil, err
	}
	ok, err := s.doors.verify(ctx, clubID, req.GetEmail(), req.GetPassword(), person.PasswordHash)
	if err != nil {
		return nil, err
	}
	if !ok {
		return nil, club.Refuse(club.Unauthenticated, "WRONG_CREDENTIALS", "address or password is wrong")
	}
	return s.openSession(ctx, clubID, person, req.GetReturnToken())
}

// openSession makes a new token, keeps its hash, and hands the token to the edge and, when asked, to the caller. A session that came with
// the request is ended: a new sign-in never keeps an old token alive.
func (s *peopleService) openSession(ctx context.Context, clubID string, person club.Person, returnToken bool) (*pb.SignInResponse, error) {
	token, hash, err := auth.NewToken(clubID)
	if err != nil {
		return nil, err
	}
	expire := s.now().Add(sessionLife).UTC().Truncate(time.Second)
	out := &pb.SignInResponse{ExpireTime: showTime(expire)}
	err = s.store.InTx(ctx, clubID, func(tx *postgres.Tx) error {
		if old := callerOf(ctx); old.club == clubID {
			if err := tx.DeleteSession(ctx, old.session); err != nil {
				return err
			}
		}
		c, err := tx.Club(ctx)
		out.Person = showPerson(c, person)
		return errors.Join(err, tx.CreateSession(ctx, club.Session{ClubID: clubID, PersonID: person.ID, TokenHash: hash, ExpireTime: expire}))
	})
	if err != nil {
		return nil, err
	}
	if returnToken {
		out.SessionToken = token
	}
	return out, grpc.SetHeader(ctx, metadata.Pairs(sessionMetadata, token, sessionExpiryMetadata, strconv.FormatInt(expire.Unix(), 10)))
}
