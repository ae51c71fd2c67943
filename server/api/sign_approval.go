package api

import (
	"context"
	"crypto/subtle"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// SignApproval signs at the field. The signer is an officer, never the owner, gives the password again, and sends the digest of what was
// shown: when the approval says anything else by now, nothing is signed.
func (s *approvalsService) SignApproval(ctx context.Context, req *pb.SignApprovalRequest) (*pb.Approval, error) {
	c, id, err := locate(ctx, club.Approvals, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	answer := &pb.Approval{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	before, err := s.approvalToDecide(ctx, c, id, req.GetEtag(), club.VerbSign, "")
	if err != nil {
		return nil, err
	}
	if err := sameDigest(c, before, req.GetSigningDigest()); err != nil {
		return nil, err
	}
	if err := s.doors.passwordAgain(ctx, c, "password", req.GetPassword()); err != nil {
		return nil, err
	}
	answer, err = once(ctx, s.backend, req, answer, func(tx *postgres.Tx) (*pb.Approval, error) {
		d := postgres.Decision{ID: id, Etag: req.GetEtag(), Verb: club.VerbSign, By: c.person.Actor(), Signature: signatureBy(c, req)}
		if _, err := tx.Decide(ctx, d); err != nil {
			return nil, err
		}
		return freshApproval(ctx, tx, c, id)
	})
	return answer, s.explainStale(ctx, c, id, err)
}

// sameDigest refuses to sign anything but what was shown.
func sameDigest(c caller, a club.Approval, shown string) error {
	digest, err := club.SigningDigest(c.club, a)
	if err != nil {
		return err
	}
	if subtle.ConstantTimeCompare([]byte(digest), []byte(shown)) != 1 {
		return &club.Error{Code: club.FailedPrecondition, Field: "signingDigest", Reason: "NOT_WHAT_WAS_SHOWN",
			Message: "what was shown is not what the approval says now: read it again before signing"}
	}
	return nil
}

// signatureBy is the signature to keep.
func signatureBy(c caller, req *pb.SignApprovalRequest) *club.Signature {
	sig := &club.Signature{SignerID: c.person.ID, SignerDisplayName: c.person.DisplayName, Role: club.SafetyOfficer,
		Meaning: club.GoForFirstFlight, Digest: req.GetSigningDigest()}
	if req.GetDeviceTime() != nil {
		sig.DeviceTime = req.GetDeviceTime().AsTime()
	}
	return sig
}
