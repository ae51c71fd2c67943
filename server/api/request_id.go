package api

import (
	"context"
	"regexp"

	"github.com/google/uuid"
	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"
)

// requestIDKey is the metadata that names one call, in both directions.
const requestIDKey = "x-request-id"

// requestIDForm is what we take over from a caller.
var requestIDForm = regexp.MustCompile(`^[A-Za-z0-9._-]{1,64}$`)

type requestIDContext struct{}

// withRequestID takes over the caller's id or makes one, and sends it back.
func withRequestID(ctx context.Context, req any, _ *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
	id := incoming(ctx, requestIDKey)
	if !requestIDForm.MatchString(id) {
		id = uuid.NewString()
	}
	// Fails only when headers are gone already, which no interceptor before this one does.
	_ = grpc.SetHeader(ctx, metadata.Pairs(requestIDKey, id))
	return next(context.WithValue(ctx, requestIDContext{}, id), req)
}

// requestIDOf returns the id of the call, or "".
func requestIDOf(ctx context.Context) string {
	id, _ := ctx.Value(requestIDContext{}).(string)
	return id
}

// incoming returns the first value of a metadata key, or "".
func incoming(ctx context.Context, key string) string {
	if values := metadata.ValueFromIncomingContext(ctx, key); len(values) > 0 {
		return values[0]
	}
	return ""
}
