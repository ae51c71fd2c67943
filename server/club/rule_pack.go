package club

import (
	"encoding/json"
	"strings"
	"time"

	pitgatev1 "pitgate/proto/pitgate/v1"
)

// RulePackState is where a version of a rule pack stands.
type RulePackState string

// The states of a rule pack.
const (
	PackDraft     RulePackState = "draft"
	PackProposed  RulePackState = "proposed"
	PackPublished RulePackState = "published"
	PackRetired   RulePackState = "retired"
)

// Proto is the state on the wire.
func (s RulePackState) Proto() pitgatev1.RulePackState {
	return pitgatev1.RulePackState(pitgatev1.RulePackState_value["RULE_PACK_STATE_"+strings.ToUpper(string(s))])
}

// PublishersNeeded is how many committee members must give their word before a rule pack is published or taken out of force.
const PublishersNeeded = 2

// RulePack is one version of a rule pack in a club.
type RulePack struct {
	ID string
	// Pack is the pack's own id, the same for all its versions.
	Pack  string
	State RulePackState
	// FirstDay is the first day in force, as "2026-03-01". ReplacedDay is that of the published version that takes the place of a published one from then
	// on; empty when there is none.
	FirstDay, ReplacedDay string
	// Content is the pack as canonical JSON; Digest is of that.
	Content json.RawMessage
	Digest  string
	// Publishers and retirers gave their word for the content as it stands, first one first.
	PublisherIDs, PublisherDisplayNames []string
	RetirerIDs, RetirerDisplayNames     []string
	Version                             int64
	CreateTime, UpdateTime              time.Time
	// PublishTime and RetireTime are zero before.
	PublishTime, RetireTime time.Time
}

// AssessedApproval is an open approval with the document that it was computed from.
type AssessedApproval struct {
	ID, ModelDisplayName, OwnerDisplayName string
	State, HeldFrom                        State
	// Limits are the owner's own.
	Limits, Input json.RawMessage
	// Report is the kept answer to Input, by that core.
	Report                   json.RawMessage
	InputDigest, CoreVersion string
}

// Underneath is the state that counts: of a held approval the one it was held from.
func (a AssessedApproval) Underneath() State {
	return Approval{State: a.State, HeldFrom: a.HeldFrom}.Underneath()
}

// RulePackPreview is what publishing a pack, or retiring a published one, would do to the open approvals, and how far it is computed.
type RulePackPreview struct {
	ID, RulePackID, PersonID string
	// Digest is that of the pack's content, RulesDigest that of the rules in force, with which it is computed by the core CoreVersion.
	Digest, RulesDigest, CoreVersion                string
	Approvals, DoneCount, ChangedCount, FailedCount int32
	Cancelled                                       bool
	CreateTime                                      time.Time
}

// Done tells whether every approval had its turn.
func (p RulePackPreview) Done() bool { return p.DoneCount >= p.Approvals }

// PreviewResult is what would become of one approval.
type PreviewResult struct {
	PreviewID, ApprovalID, ModelDisplayName, OwnerDisplayName string
	Outcome                                                   Outcome
	State                                                     State
	Lapses                                                    bool
	Changes                                                   []ChangedVerdict
	// Failure says why it could not be computed.
	Failure string
}

// PermitRulePack refuses whoever is not of the committee.
func PermitRulePack(by Actor) error {
	if !by.Has(Committee) {
		return Refuse(Forbidden, "ROLE_MISSING", "this needs the role %s", Committee.Title())
	}
	return nil
}

// PermitPackChange refuses to change, propose or publish a pack that was published.
func PermitPackChange(state RulePackState, by Actor) error {
	if err := PermitRulePack(by); err != nil {
		return err
	}
	if state != PackDraft && state != PackProposed {
		return Refuse(FailedPrecondition, "PUBLISHED_ALREADY", "a published pack stays as it is: open a draft of a new version")
	}
	return nil
}

// PermitPackRetirement refuses to retire what is retired.
func PermitPackRetirement(state RulePackState, by Actor) error {
	if err := PermitRulePack(by); err != nil {
		return err
	}
	if state == PackRetired {
		return Refuse(FailedPrecondition, "RETIRED_ALREADY", "the pack is out of force already")
	}
	return nil
}
