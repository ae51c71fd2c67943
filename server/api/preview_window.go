package api

import (
	"context"
	"encoding/json"
	"fmt"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/document"
)

// PreviewWindow finds the winds in which launch and circuit hold, without keeping anything. It waits in line with the assessments.
func (s *assessmentsService) PreviewWindow(ctx context.Context, req *pb.PreviewWindowRequest) (*pb.WindWindow, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	in, err := decodeInput(req.GetInput())
	if err != nil {
		return nil, err
	}
	release, err := s.waitInLine(ctx)
	if err != nil {
		return nil, err
	}
	defer release()
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
