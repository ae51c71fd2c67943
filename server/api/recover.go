package api

import (
	"context"
	"fmt"
	"runtime/debug"

	"google.golang.org/grpc"
)

// panicError is a panic of a handler; only the log sees the stack.
type panicError struct {
	value any
	stack []byte
}

// Error implements error.
func (p *panicError) Error() string { return fmt.Sprintf("panic: %v\n%s", p.value, p.stack) }

// withRecovery turns a panic into an error, so that one bad call does not end the server.
func withRecovery(ctx context.Context, req any, _ *grpc.UnaryServerInfo, next grpc.UnaryHandler) (resp any, err error) {
	defer func() {
		if v := recover(); v != nil {
			resp, err = nil, &panicError{value: v, stack: debug.Stack()}
		}
	}()
	return next(ctx, req)
}

// withStreamRecovery does the same for streams (health watch and reflection).
func withStreamRecovery(srv any, stream grpc.ServerStream, _ *grpc.StreamServerInfo, next grpc.StreamHandler) (err error) {
	defer func() {
		if v := recover(); v != nil {
			err = statusOf(&panicError{value: v}, "")
		}
	}()
	return next(srv, stream)
}
