package club

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"github.com/gowebpki/jcs"
)

// GoForFirstFlight is what an officer's signature at the field means.
const GoForFirstFlight = "go for first flight"

// signed is what a signer signs.
type signed struct {
	Approval         string          `json:"approval"`
	ModelRevision    string          `json:"model_revision"`
	Field            string          `json:"field"`
	FieldVersion     int32           `json:"field_version"`
	LaunchPlan       json.RawMessage `json:"launch_plan"`
	Day              json.RawMessage `json:"day"`
	Limits           json.RawMessage `json:"limits"`
	Conditions       []string        `json:"conditions"`
	Assessment       string          `json:"assessment"`
	AssessmentDigest string          `json:"assessment_digest"`
	Meaning          string          `json:"meaning"`
}

// SigningText is the canonical JSON (RFC 8785) of what a signer signs: approval, model revision, field version, launch
// plan, day, limits, conditions, assessment with the digest of its input, and the meaning of the signature.
func SigningText(clubID string, a Approval) ([]byte, error) {
	raw, err := json.Marshal(signed{
		Approval: Approvals.Name(clubID, a.ID), ModelRevision: RevisionName(clubID, a.ModelID, a.ModelRevision),
		Field: Fields.Name(clubID, a.FieldID), FieldVersion: a.FieldVersion,
		LaunchPlan: a.LaunchPlan, Day: a.Day, Limits: a.Limits, Conditions: append([]string{}, a.Conditions...),
		Assessment: Assessments.Name(clubID, a.AssessmentID), AssessmentDigest: a.AssessmentDigest, Meaning: GoForFirstFlight,
	})
	if err != nil {
		return nil, fmt.Errorf("signing text: %w", err)
	}
	canonical, err := jcs.Transform(raw)
	if err != nil {
		return nil, fmt.Errorf("signing text: %w", err)
	}
	return canonical, nil
}

// SigningDigest is SHA-256 over SigningText, in hex.
func SigningDigest(clubID string, a Approval) (string, error) {
	canonical, err := SigningText(clubID, a)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(canonical)
	return hex.EncodeToString(sum[:]), nil
}
