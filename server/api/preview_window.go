package api

import (
	"context"
	"encoding/json"
	"fmt"

	"google.golang.org/protobuf/encoding/protojson"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/document"
)

// PreviewWindow finds the winds in which launch and circuit hold, without keeping anything. It waits in line with the assessments.
func (s *assessmentsService) PreviewWindow(ctx context.Context, req *pb.PreviewWindowRequest) (*pb.WindWindow, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	text, err := protojson.Marshal(req.GetInput())
	if err != nil {
		return nil, fmt.Errorf("assessment input: %w", err)
	}
	in, err := document.Decode(text)
	if err != nil {
		return nil, err
	}
	select {
	case s.computing <- struct{}{}:
		defer func() { <-s.computing }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	found, err := document.Window(in)
	if err != nil {
		return nil, club.RefuseField("document", "NOT_COMPUTABLE", "%v", err)
	}
	answer, err := json.Marshal(found)
	if err != nil {
		return nil, fmt.Errorf("wind window: %w", err)
	}
	window := &pb.WindWindow{}
	return window, readDocument(answer, window)
}
