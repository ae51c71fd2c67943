package api

import (
	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// showModel writes a model for the wire.
func showModel(clubID string, m club.Model) (*pb.Model, error) {
	out := &pb.Model{Name: club.Models.Name(clubID, m.ID), DisplayName: m.DisplayName, Owner: club.People.Name(clubID, m.OwnerID),
		OwnerDisplayName: m.OwnerDisplayName, Description: &pb.ModelDescription{}, LatestRevision: m.LatestRevision,
		Etag: club.Etag(m.Version), CreateTime: showTime(m.CreateTime), UpdateTime: showTime(m.UpdateTime)}
	return out, readDocument(m.Description, out.Description)
}

// showRevision writes a frozen description.
func showRevision(clubID string, r club.Revision) (*pb.ModelRevision, error) {
	out := &pb.ModelRevision{Name: club.RevisionName(clubID, r.ModelID, r.Number), Number: r.Number, Description: &pb.ModelDescription{},
		Digest: r.Digest, CreateTime: showTime(r.CreateTime)}
	return out, readDocument(r.Description, out.Description)
}

// showField writes a flying site.
func showField(clubID string, f club.Field) (*pb.Field, error) {
	out := &pb.Field{Name: club.Fields.Name(clubID, f.ID), DisplayName: f.DisplayName, Description: &pb.FieldDescription{},
		LatestVersion: f.LatestVersion, Etag: club.Etag(f.Version), CreateTime: showTime(f.CreateTime), UpdateTime: showTime(f.UpdateTime)}
	return out, readDocument(f.Description, out.Description)
}

// showAssessment writes a kept computation; a list leaves input and report out.
func showAssessment(clubID string, a club.Assessment) (*pb.Assessment, error) {
	out := &pb.Assessment{Name: club.Assessments.Name(clubID, a.ID), InputDigest: a.InputDigest, CoreVersion: a.CoreVersion,
		Creator: club.People.Name(clubID, a.CreatorID), CreateTime: showTime(a.CreateTime), Approval: club.Approvals.Name(clubID, a.ApprovalID)}
	if len(a.Input) > 0 {
		out.Input = &pb.AssessmentInput{}
		if err := readDocument(a.Input, out.Input); err != nil {
			return nil, err
		}
	}
	if len(a.Report) > 0 {
		out.Report = &pb.AssessmentReport{}
		return out, readDocument(a.Report, out.Report)
	}
	return out, nil
}
