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
	// rulesCap leaves time to compute every open approval of a club by other rules; the database waits 30 s within a transaction.
	rulesCap = 25 * time.Second
	// spreadCap leaves time for the samples of a preview.
	spreadCap = 20 * time.Second
)

// withDeadline caps every call.
func withDeadline(ctx context.Context, req any, info *grpc.UnaryServerInfo, next grpc.UnaryHandler) (any, error) {
	limit := callCap
	switch info.FullMethod {
	case pb.IncidentsService_AddIncidentPhoto_FullMethodName:
		limit = photoCap
	case pb.RulePacksService_PreviewRulePack_FullMethodName, pb.RulePacksService_BeginRulePackPreview_FullMethodName, pb.RulePacksService_PublishRulePack_FullMethodName,
		pb.RulePacksService_RetireRulePack_FullMethodName:
		limit = rulesCap
	}
	if preview, ok := req.(*pb.PreviewAssessmentRequest); ok && (preview.GetSampleCount() > 0 || preview.GetIncludeRemedies()) {
		limit = spreadCap
	}
	ctx, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	return next(ctx, req)
}
