package api

import (
	"context"
	"errors"

	"buf.build/go/protovalidate"
	"google.golang.org/grpc"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// messageCap is the largest request in bytes beside a photo's.
const messageCap = 1 << 20

// violation is one bad field.
type violation struct{ field, text string }

// invalidError lists every bad field of a request at once.
type invalidError struct{ violations []violation }

// Error implements error.
func (e *invalidError) Error() string {
	text := e.violations[0].field + ": " + e.violations[0].text
	if len(e.violations) > 1 {
		text += " (and more)"
	}
	return text
}

// withValidation checks size and the contract's constraints. A partial update is checked by its handler, once merged.
func withValidation(validator protovalidate.Validator) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, req any, info *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
		msg, ok := req.(proto.Message)
		if !ok {
			return next(ctx, req)
		}
		if info.FullMethod != pb.IncidentsService_AddIncidentPhoto_FullMethodName && proto.Size(msg) > messageCap {
			return nil, club.Refuse(club.Invalid, "MESSAGE_TOO_LARGE", "the request is larger than %d bytes: send less", messageCap)
		}
		if !isPartial(msg) {
			if err := validateMessage(validator, msg); err != nil {
				return nil, err
			}
		}
		return next(ctx, req)
	}
}

// isPartial tells the requests whose resource may lack required parts.
func isPartial(msg proto.Message) bool {
	switch msg.(type) {
	case *pb.UpdateModelRequest, *pb.UpdateFieldRequest, *pb.UpdateIncidentRequest:
		return true
	}
	return false
}

// validateMessage returns an invalidError that names every violated field.
func validateMessage(validator protovalidate.Validator, msg proto.Message) error {
	err := validator.Validate(msg, protovalidate.WithFilter(outsideDocuments))
	var invalid *protovalidate.ValidationError
	if !errors.As(err, &invalid) {
		return err
	}
	out := &invalidError{}
	for _, v := range invalid.Violations {
		path := jsonPath(msg.ProtoReflect().Descriptor(), v.Proto.GetField())
		out.violations = append(out.violations, violation{path, v.Proto.GetMessage()})
	}
	return out
}
