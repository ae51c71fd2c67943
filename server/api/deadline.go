package api

import (
	"context"
	"time"

	"google.golang.org/grpc"

	pb "pitgate/proto/pitgate/v1"
)

// Longest times a call may take. A caller may ask for less, never for more.
const (
	callCap  = 5 * time.Second
	photoCap = 30 * time.Second
)

// withDeadline caps every call.
func withDeadline(ctx context.Context, req any, info *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
	limit := callCap
	if info.FullMethod == pb.IncidentsService_AddIncidentPhoto_FullMethodName {
		limit = photoCap
	}
	ctx, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	return next(ctx, req)
}
