package jobs

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"

	"github.com/riverqueue/river"
	"github.com/riverqueue/river/rivertype"

	"pitgate/server/club"
)

// approvalWorker works on ReassessApproval.
type approvalWorker struct {
	river.WorkerDefaults[ReassessApproval]
	assessor Assessor
}

// Work implements river.Worker.
func (w *approvalWorker) Work(ctx context.Context, job *river.Job[ReassessApproval]) error {
	return w.assessor.Reassess(ctx, job.Args)
}

// previewWorker works on PreviewApproval.
type previewWorker struct {
	river.WorkerDefaults[PreviewApproval]
	assessor Assessor
}

// Work implements river.Worker.
func (w *previewWorker) Work(ctx context.Context, job *river.Job[PreviewApproval]) error {
	return w.assessor.Preview(ctx, job.Args)
}

// failures makes jobs visible that fail for good.
type failures struct {
	assessor Assessor
	log      *slog.Logger
}

// HandleError implements river.ErrorHandler.
func (f *failures) HandleError(ctx context.Context, job *rivertype.JobRow, err error) *river.ErrorHandlerResult {
	var refusal *club.Error
	final := errors.As(err, &refusal) && refusal.Code == club.Invalid
	return f.handle(ctx, job, err, final)
}

// HandlePanic implements river.ErrorHandler.
func (f *failures) HandlePanic(ctx context.Context, job *rivertype.JobRow, what any, trace string) *river.ErrorHandlerResult {
	f.log.ErrorContext(ctx, "job panicked", "kind", job.Kind, "args", string(job.EncodedArgs), "trace", trace)
	return f.handle(ctx, job, fmt.Errorf("panic: %v", what), false)
}

// handle keeps a failure at the last attempt, or at once when trying again cannot help.
func (f *failures) handle(ctx context.Context, job *rivertype.JobRow, err error, final bool) *river.ErrorHandlerResult {
	final = final || job.Attempt >= job.MaxAttempts
	f.log.WarnContext(ctx, "job failed", "kind", job.Kind, "args", string(job.EncodedArgs), "attempt", job.Attempt, "final", final, "error", err)
	if !final {
		return nil
	}
	known, kept := f.keep(ctx, job, err.Error())
	if kept != nil {
		f.log.ErrorContext(ctx, "a failed job could not be kept", "args", string(job.EncodedArgs), "error", kept)
	}
	if kept != nil || !known {
		return nil
	}
	return &river.ErrorHandlerResult{SetCancelled: true}
}

// keep has a failure of a known kind of job kept.
func (f *failures) keep(ctx context.Context, job *rivertype.JobRow, reason string) (known bool, err error) {
	switch job.Kind {
	case ReassessApproval{}.Kind():
		args, err := argsOf[ReassessApproval](job)
		if err == nil {
			err = f.assessor.KeepFailure(ctx, args, reason)
		}
		return true, err
	case PreviewApproval{}.Kind():
		args, err := argsOf[PreviewApproval](job)
		if err == nil {
			err = f.assessor.KeepPreviewFailure(ctx, args, reason)
		}
		return true, err
	default:
		return false, nil
	}
}

// argsOf reads what a job is about.
func argsOf[T any](job *rivertype.JobRow) (args T, err error) {
	err = json.Unmarshal(job.EncodedArgs, &args)
	return args, err
}
