-- name: InsertApproval :exec
INSERT INTO approvals (club_id, approval_id, owner_id, state, model_id, model_revision, field_id, field_version,
    launch_plan, day, limits, confirmations, owner_note, conditions, version, create_time, update_time)
VALUES (@club_id, @approval_id, @owner_id, 'draft', @model_id, @model_revision, @field_id, @field_version,
    @launch_plan, @day, @limits, @confirmations, @owner_note, @conditions, 1, @now, @now);

-- name: ApprovalParts :one
SELECT owner_id, model_id, field_id FROM approvals WHERE club_id = @club_id AND approval_id = @approval_id;

-- name: LockApproval :one
SELECT version FROM approvals WHERE club_id = @club_id AND approval_id = @approval_id FOR UPDATE;

-- name: Approval :one
SELECT a.*, m.display_name AS model_display_name, f.display_name AS field_display_name, p.display_name AS owner_display_name,
    s.input_digest, s.holds_count, s.tight_count, s.fails_count, s.unknown_count
FROM approvals a
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN fields f ON f.club_id = a.club_id AND f.field_id = a.field_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
LEFT JOIN assessments s ON s.club_id = a.club_id AND s.assessment_id = a.assessment_id
WHERE a.club_id = @club_id AND a.approval_id = @approval_id;

-- name: ListApprovals :many
SELECT a.*, m.display_name AS model_display_name, f.display_name AS field_display_name, p.display_name AS owner_display_name,
    s.input_digest, s.holds_count, s.tight_count, s.fails_count, s.unknown_count
FROM approvals a
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN fields f ON f.club_id = a.club_id AND f.field_id = a.field_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
LEFT JOIN assessments s ON s.club_id = a.club_id AND s.assessment_id = a.assessment_id
WHERE a.club_id = @club_id AND (@owner_id::text = '' OR a.owner_id = @owner_id)
  AND (cardinality(@states::text[]) = 0 OR a.state = ANY(@states::text[]))
  AND (a.create_time, a.approval_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY a.create_time DESC, a.approval_id DESC LIMIT @most;

-- name: UpdateApproval :exec
UPDATE approvals SET state = @state, held_from = @held_from, model_revision = @model_revision, field_version = @field_version,
    launch_plan = @launch_plan, day = @day, confirmations = @confirmations, owner_note = @owner_note, conditions = @conditions,
    assessment_id = @assessment_id, kept_gates = @kept_gates, version = version + 1, update_time = @now
WHERE club_id = @club_id AND approval_id = @approval_id;

-- name: ApprovalsRestingOn :many
-- The approvals that a change of this model or field lapses; a held one lapses underneath its hold.
SELECT approval_id FROM approvals
WHERE club_id = @club_id AND (model_id = @model_id OR field_id = @field_id)
  AND CASE WHEN state = 'held' THEN held_from ELSE state END = ANY(@states::text[])
ORDER BY approval_id FOR UPDATE;

-- name: OpenApprovals :many
-- What a lesson is tried on: the named revision, or the latest for one that is yet to be submitted.
SELECT a.approval_id, a.model_id, a.state, r.number, r.description
FROM approvals a
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN model_revisions r ON r.club_id = a.club_id AND r.model_id = a.model_id
    AND r.number = CASE WHEN a.state IN ('draft', 'returned') THEN m.latest_revision ELSE a.model_revision END
WHERE a.club_id = @club_id AND a.state = ANY(@states::text[])
ORDER BY a.create_time, a.approval_id;

-- name: InsertTransition :exec
INSERT INTO transitions (club_id, approval_id, ledger_index, verb, from_state, to_state, actor_id, reason, model_revision,
    assessment_id, gates, time)
VALUES (@club_id, @approval_id, @ledger_index, @verb, @from_state, @to_state, @actor_id, @reason, @model_revision,
    @assessment_id, @gates, @now);

-- name: Transitions :many
SELECT t.*, p.display_name AS actor_display_name
FROM transitions t LEFT JOIN people p ON p.club_id = t.club_id AND p.person_id = t.actor_id
WHERE t.club_id = @club_id AND t.approval_id = @approval_id ORDER BY t.ledger_index;

-- name: InsertRuleWord :exec
INSERT INTO rule_words (club_id, approval_id, ledger_index, rule, confirmed, date, person_id, reason, assessment_id, time)
VALUES (@club_id, @approval_id, @ledger_index, @rule, @confirmed, @date, @person_id, @reason, @assessment_id, @now);

-- name: RuleWords :many
SELECT w.*, p.display_name AS officer_display_name
FROM rule_words w JOIN people p ON p.club_id = w.club_id AND p.person_id = w.person_id
WHERE w.club_id = @club_id AND w.approval_id = @approval_id ORDER BY w.ledger_index;

-- name: InsertSignature :exec
INSERT INTO signatures (club_id, signature_id, approval_id, signer_id, role, meaning, digest, device_time, server_time)
VALUES (@club_id, @signature_id, @approval_id, @signer_id, @role, @meaning, @digest, @device_time, @server_time);

-- name: LapseSignatures :exec
UPDATE signatures SET lapsed = true WHERE club_id = @club_id AND approval_id = @approval_id AND NOT lapsed;

-- name: Signatures :many
SELECT s.*, p.display_name AS signer_display_name
FROM signatures s JOIN people p ON p.club_id = s.club_id AND p.person_id = s.signer_id
WHERE s.club_id = @club_id AND s.approval_id = @approval_id ORDER BY s.server_time, s.signature_id;

-- name: InsertHold :exec
INSERT INTO holds (club_id, hold_id, approval_id, lesson_id, actor_id, reason, time)
VALUES (@club_id, @hold_id, @approval_id, @lesson_id, @actor_id, @reason, @now);

-- name: OpenHoldOfLesson :one
SELECT hold_id FROM holds
WHERE club_id = @club_id AND approval_id = @approval_id AND lesson_id = @lesson_id AND release_time IS NULL;

-- name: ReleaseHolds :exec
UPDATE holds SET release_time = @now::timestamptz, released_by = @released_by::text, release_reason = @release_reason
WHERE club_id = @club_id AND approval_id = @approval_id AND release_time IS NULL;

-- name: Holds :many
SELECT h.*, p.display_name AS actor_display_name, q.display_name AS released_by_display_name
FROM holds h
LEFT JOIN people p ON p.club_id = h.club_id AND p.person_id = h.actor_id
LEFT JOIN people q ON q.club_id = h.club_id AND q.person_id = h.released_by
WHERE h.club_id = @club_id AND h.approval_id = @approval_id ORDER BY h.time, h.hold_id;
