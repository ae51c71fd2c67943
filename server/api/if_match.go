package api

import (
	"context"
	"strings"

	"google.golang.org/grpc"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// withIfMatch copies HTTP's If-Match into the request's etag, or into the etag of the resource it carries, when that is empty.
func withIfMatch(ctx context.Context, req any, _ *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
	etag := strings.Trim(strings.TrimPrefix(incoming(ctx, "if-match"), "W/"), `"`)
	if msg, ok := req.(proto.Message); ok && etag != "" && etag != "*" {
		fillEtag(msg.ProtoReflect(), etag, true)
	}
	return next(ctx, req)
}

// fillEtag sets an empty etag of the message, or one level down.
func fillEtag(m protoreflect.Message, etag string, deeper bool) {
	if fd := m.Descriptor().Fields().ByName("etag"); fd != nil && fd.Kind() == protoreflect.StringKind {
		if m.Get(fd).String() == "" {
			m.Set(fd, protoreflect.ValueOfString(etag))
		}
		return
	}
	if !deeper {
		return
	}
	m.Range(func(fd protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		if fd.Kind() == protoreflect.MessageKind && !fd.IsList() && !fd.IsMap() {
			fillEtag(v.Message(), etag, false)
		}
		return true
	})
}
