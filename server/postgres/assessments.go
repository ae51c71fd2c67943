package postgres

import (
	"context"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// CreateAssessment keeps a computation for good; nobody stands for the club itself. Uses Input, Report, InputDigest, CoreVersion, Counts and ApprovalID of a.
func (t *Tx) CreateAssessment(ctx context.Context, by club.Actor, a club.Assessment) (club.Assessment, error) {
	id := t.store.id()
	err := t.q.InsertAssessment(ctx, pgdb.InsertAssessmentParams{
		ClubID: t.clubID, AssessmentID: id, CreatorID: optional(by.PersonID), ApprovalID: optional(a.ApprovalID),
		Input: a.Input, Report: a.Report, InputDigest: a.InputDigest, CoreVersion: a.CoreVersion,
		HoldsCount: a.Counts.Holds, TightCount: a.Counts.Tight, FailsCount: a.Counts.Fails, UnknownCount: a.Counts.Unknown,
		CreateTime: t.now,
	})
	if err != nil {
		return club.Assessment{}, err
	}
	reportDigest, err := digest("assessment.report", a.Report)
	if err != nil {
		return club.Assessment{}, err
	}
	_, err = t.record(ctx, "assessment.kept", by, event{
		"assessment": club.Assessments.Name(t.clubID, id), "approval": club.Approvals.Name(t.clubID, a.ApprovalID),
		"input_digest": a.InputDigest, "report_digest": reportDigest, "core_version": a.CoreVersion,
	})
	if err != nil {
		return club.Assessment{}, err
	}
	return t.Assessment(ctx, id)
}

// Assessment reads a kept computation. NotFound when there is none.
func (r *ReadTx) Assessment(ctx context.Context, id string) (club.Assessment, error) {
	row, err := r.q.Assessment(ctx, r.clubID, id)
	if err != nil {
		return club.Assessment{}, found(err, "assessment", id)
	}
	return club.Assessment{
		ID: row.AssessmentID, Input: row.Input, Report: row.Report, InputDigest: row.InputDigest, CoreVersion: row.CoreVersion,
		Counts:    club.Counts{Holds: row.HoldsCount, Tight: row.TightCount, Fails: row.FailsCount, Unknown: row.UnknownCount},
		CreatorID: text(row.CreatorID), ApprovalID: text(row.ApprovalID), CreateTime: row.CreateTime,
	}, nil
}

// Assessments lists the computations of creatorID, or of all when creatorID is empty, newest first, without input and
// report, and the token of the next page.
func (r *ReadTx) Assessments(ctx context.Context, creatorID string, page club.Page) ([]club.Assessment, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListAssessments(ctx, pgdb.ListAssessmentsParams{
		ClubID: r.clubID, CreatorID: creatorID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	kept, next := cut(rows, page.Limit(), func(row pgdb.ListAssessmentsRow) (club.Assessment, place) {
		return club.Assessment{
			ID: row.AssessmentID, InputDigest: row.InputDigest, CoreVersion: row.CoreVersion,
			Counts:    club.Counts{Holds: row.HoldsCount, Tight: row.TightCount, Fails: row.FailsCount, Unknown: row.UnknownCount},
			CreatorID: text(row.CreatorID), ApprovalID: text(row.ApprovalID), CreateTime: row.CreateTime,
		}, place{row.CreateTime, row.AssessmentID}
	})
	return kept, next, err
}
