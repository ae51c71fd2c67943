package api

import (
	"context"
	"log/slog"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// callRecord collects, while a call runs, what its one log line tells.
type callRecord struct{ club, person string }

type callRecordContext struct{}

// withLog writes one line a call and maps its error: nothing else in the package logs or maps.
func withLog(log *slog.Logger, now func() time.Time) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, req any, info *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
		record, start := &callRecord{}, now()
		resp, err := next(context.WithValue(ctx, callRecordContext{}, record), req)
		if err == nil {
			log.LogAttrs(ctx, slog.LevelInfo, "call", callAttrs(ctx, info, record, now().Sub(start), codes.OK)...)
			return resp, nil
		}
		mapped := statusOf(err, requestIDOf(ctx))
		code := status.Code(mapped)
		attrs := append(callAttrs(ctx, info, record, now().Sub(start), code), slog.String("error", err.Error()))
		log.LogAttrs(ctx, levelOf(code), "call refused", attrs...)
		return nil, mapped
	}
}

// levelOf is error only for what is our fault.
func levelOf(code codes.Code) slog.Level {
	switch code {
	case codes.Internal, codes.DataLoss, codes.Unknown:
		return slog.LevelError
	case codes.PermissionDenied, codes.Unauthenticated, codes.ResourceExhausted, codes.DeadlineExceeded:
		return slog.LevelWarn
	default:
		return slog.LevelInfo
	}
}

// callAttrs says who called what and how it went; never what was in it.
func callAttrs(ctx context.Context, info *grpc.UnaryServerInfo, r *callRecord, took time.Duration, code codes.Code) []slog.Attr {
	return []slog.Attr{
		slog.String("method", info.FullMethod),
		slog.String("request_id", requestIDOf(ctx)),
		slog.String("club", r.club),
		slog.String("person", r.person),
		slog.String("code", code.String()),
		slog.Duration("took", took),
	}
}

// noteCaller puts the caller into the call's log line.
func noteCaller(ctx context.Context, club, person string) {
	if r, ok := ctx.Value(callRecordContext{}).(*callRecord); ok {
		r.club, r.person = club, person
	}
}
