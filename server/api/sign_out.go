package api

import (
	"context"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/types/known/emptypb"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// SignOut ends the caller's session on the server and tells the edge to forget its cookie.
func (s *peopleService) SignOut(ctx context.Context, _ *pb.SignOutRequest) (*emptypb.Empty, error) {
	c := callerOf(ctx)
	err := s.store.InTx(ctx, c.club, func(tx *postgres.Tx) error { return tx.DeleteSession(ctx, c.session) })
	if err != nil {
		return nil, err
	}
	return &emptypb.Empty{}, grpc.SetHeader(ctx, metadata.Pairs(sessionEndMetadata, "1"))
}
