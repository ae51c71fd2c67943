package api

import (
	"context"

	"google.golang.org/protobuf/types/known/emptypb"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// ChangePassword replaces the caller's password and ends the caller's other sessions.
func (s *peopleService) ChangePassword(ctx context.Context, req *pb.ChangePasswordRequest) (*emptypb.Empty, error) {
	c := callerOf(ctx)
	if err := s.doors.passwordAgain(ctx, c, "oldPassword", req.GetOldPassword()); err != nil {
		return nil, err
	}
	hash, err := s.doors.hash(ctx, "newPassword", req.GetNewPassword())
	if err != nil {
		return nil, err
	}
	return &emptypb.Empty{}, s.store.InTx(ctx, c.club, func(tx *postgres.Tx) error {
		if err := tx.SetPassword(ctx, c.person.ID, hash); err != nil {
			return err
		}
		return tx.DeleteOtherSessions(ctx, c.person.ID, c.session)
	})
}
