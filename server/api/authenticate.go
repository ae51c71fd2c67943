package api

import (
	"context"
	"strings"

	"google.golang.org/grpc"

	"pitgate/server/auth"
	"pitgate/server/club"
)

// withCaller finds the session of the bearer token and puts its person into the context. Roles are read anew with every call, so that a
// role taken away ends at once. A bad token is refused, except where no session is needed: an old cookie must not keep anybody from
// signing in.
func withCaller(b *backend, policy Policy) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, req any, info *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
		who, err := b.callerOfToken(ctx, bearer(ctx))
		if err != nil && (club.CodeOf(err) != club.Unauthenticated || !policy[info.FullMethod].Open()) {
			return nil, err
		}
		noteCaller(ctx, who.club, who.person.ID)
		return next(context.WithValue(ctx, callerContext{}, who), req)
	}
}

// bearer returns the token of the authorization metadata, or "".
func bearer(ctx context.Context) string {
	scheme, token, _ := strings.Cut(incoming(ctx, "authorization"), " ")
	if !strings.EqualFold(scheme, "bearer") {
		return ""
	}
	return strings.TrimSpace(token)
}

// callerOfToken reads the session of a token; no token is nobody, and no error.
func (b *backend) callerOfToken(ctx context.Context, token string) (caller, error) {
	if token == "" {
		return caller{}, nil
	}
	clubID, hash, err := auth.ParseToken(token)
	if err != nil {
		return caller{}, errSignIn
	}
	session, person, err := b.store.SessionByToken(ctx, hash)
	switch {
	case club.CodeOf(err) == club.Unauthenticated:
		return caller{}, errSignIn
	case err != nil:
		return caller{}, err
	case session.ClubID != clubID || !b.now().Before(session.ExpireTime):
		return caller{}, errSignIn
	}
	return caller{club: session.ClubID, person: person, session: hash}, nil
}
