package api

import (
	"context"
	"errors"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/physics/sample"
)

// How many samples a person may ask for: whoever decides on other people's flights may look closer.
const (
	memberSamples = 1024
	readerSamples = 4096
)

// PreviewAssessment computes a document as it is given, limits and rules included, and keeps nothing: the answer is that of a device without a server.
// ComposeLimits makes the limits of the club for it.
func (s *assessmentsService) PreviewAssessment(ctx context.Context, req *pb.PreviewAssessmentRequest) (*pb.AssessmentReport, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	if err := c.checkSamples(int(req.GetSampleCount())); err != nil {
		return nil, err
	}
	computed, err := s.preview(ctx, req)
	if err != nil {
		return nil, err
	}
	report := &pb.AssessmentReport{}
	return report, readDocument(computed.Report, report)
}

// preview computes what a request asks for, remedies included where it asks for them.
func (b *backend) preview(ctx context.Context, req *pb.PreviewAssessmentRequest) (club.Assessment, error) {
	options := assess.SpreadOptions{Samples: int(req.GetSampleCount()), Seed: req.GetSeed()}
	if req.GetIncludeRemedies() {
		return b.computeRemedies(ctx, req.GetInput(), options, req.GetRemedyFindingId())
	}
	return b.computeInput(ctx, req.GetInput(), options)
}

// computeRemedies is computeInput with the least changes that let open findings hold, or the one named.
func (b *backend) computeRemedies(ctx context.Context, wire *pb.AssessmentInput, options assess.SpreadOptions, finding string) (club.Assessment, error) {
	in, err := decodeInput(wire)
	if err != nil {
		return club.Assessment{}, err
	}
	release, err := b.waitInLine(ctx)
	if err != nil {
		return club.Assessment{}, err
	}
	defer release()
	options.Watch = func(int, int) bool { return ctx.Err() == nil }
	report, err := document.Mended(in, options, assess.RemedyOptions{FindingID: finding, Watch: options.Watch})
	return answered(ctx, in, report, err)
}

// checkSamples refuses a count of samples that is too small to say anything, or larger than the caller may ask for; zero asks for none.
func (c caller) checkSamples(count int) error {
	most := memberSamples
	if c.readsAll() {
		most = readerSamples
	}
	switch {
	case count > most:
		return club.RefuseField("sample_count", "TOO_MANY_SAMPLES", "ask for %d samples at most, or compute on your own device", most)
	case count != 0 && count < sample.MinimumCount:
		return club.RefuseField("sample_count", "TOO_FEW_SAMPLES", "ask for %d samples or more", sample.MinimumCount)
	}
	return nil
}

// computeInput computes a document from the wire as it is given, with bands from samples when options ask for any.
func (b *backend) computeInput(ctx context.Context, wire *pb.AssessmentInput, options assess.SpreadOptions) (club.Assessment, error) {
	in, err := decodeInput(wire)
	if err != nil {
		return club.Assessment{}, err
	}
	if options.Samples == 0 {
		return b.computed(ctx, in)
	}
	release, err := b.waitInLine(ctx)
	if err != nil {
		return club.Assessment{}, err
	}
	defer release()
	return sampled(ctx, in, options)
}

// sampled runs the core with samples on the one processor whose turn it is, and stops it when nobody waits for the answer any more.
func sampled(ctx context.Context, in assess.Input, options assess.SpreadOptions) (club.Assessment, error) {
	options.Watch = func(int, int) bool { return ctx.Err() == nil }
	report, err := document.AssessSpread(in, options)
	return answered(ctx, in, report, err)
}

// answered is a report as it is kept, or why there is none.
func answered(ctx context.Context, in assess.Input, report assess.Report, err error) (club.Assessment, error) {
	switch {
	case errors.Is(err, assess.ErrStopped):
		return club.Assessment{}, ctx.Err()
	case err != nil:
		return club.Assessment{}, club.RefuseField("document", "NOT_COMPUTABLE", "%v", err)
	}
	return written(in, report)
}
