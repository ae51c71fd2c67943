package api

import (
	"context"

	"google.golang.org/grpc"

	"pitgate/server/club"
)

// withPermission refuses what the policy does not allow, before anything is read. An RPC that is not in the table is refused to everybody.
func withPermission(policy Policy, demo bool) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, req any, info *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
		if err := permit(ctx, policy, info.FullMethod, demo); err != nil {
			return nil, err
		}
		return next(ctx, req)
	}
}

// permit judges one call.
func permit(ctx context.Context, policy Policy, method string, demo bool) error {
	rule, listed := policy[method]
	who := callerOf(ctx)
	switch {
	case !listed:
		return club.Refuse(club.Forbidden, "NOT_IN_POLICY", "nobody may call this")
	case rule.DemoOnly && !demo:
		return club.Refuse(club.Forbidden, "DEMO_ONLY", "this is for the demo only")
	case rule.Open():
		return nil
	case who.person.ID == "":
		return errSignIn
	case !rule.Permits(who.person.Roles):
		return club.Refuse(club.Forbidden, "ROLE_MISSING", "your role in the club does not allow this")
	}
	return nil
}

// errSignIn keeps one constant text, since it travels in a header too.
var errSignIn = club.Refuse(club.Unauthenticated, "SIGN_IN", "sign in first")

// withOpenStreams lets only streams through that need no session: health and reflection.
func withOpenStreams(policy Policy) grpc.StreamServerInterceptor {
	return func(srv any, stream grpc.ServerStream, info *grpc.StreamServerInfo, next grpc.StreamHandler) error {
		if !policy[info.FullMethod].Open() {
			return statusOf(club.Refuse(club.Forbidden, "NOT_IN_POLICY", "nobody may call this"), "")
		}
		return next(srv, stream)
	}
}
