-- name: RemovePreviews :exec
DELETE FROM rule_pack_previews WHERE club_id = @club_id AND rule_pack_id = @rule_pack_id;

-- name: InsertPreview :exec
INSERT INTO rule_pack_previews (club_id, preview_id, rule_pack_id, person_id, digest, rules_digest, core_version, approvals, create_time)
VALUES (@club_id, @preview_id, @rule_pack_id, @person_id, @digest, @rules_digest, @core_version, @approvals, @now);

-- name: PreviewOfPack :one
SELECT preview_id FROM rule_pack_previews
WHERE club_id = @club_id AND rule_pack_id = @rule_pack_id AND digest = @digest AND rules_digest = @rules_digest AND core_version = @core_version
  AND cancel_time IS NULL ORDER BY create_time DESC LIMIT 1;

-- name: Preview :one
SELECT v.*, count(r.approval_id)::integer AS done_count, count(*) FILTER (WHERE r.outcome = 'changed')::integer AS changed_count,
    count(*) FILTER (WHERE r.outcome = 'failed')::integer AS failed_count
FROM rule_pack_previews v LEFT JOIN rule_pack_preview_results r ON r.club_id = v.club_id AND r.preview_id = v.preview_id
WHERE v.club_id = @club_id AND v.preview_id = @preview_id GROUP BY v.club_id, v.preview_id;

-- name: CancelPreview :exec
UPDATE rule_pack_previews SET cancel_time = @now::timestamptz WHERE club_id = @club_id AND preview_id = @preview_id AND cancel_time IS NULL;

-- name: LockPreview :one
SELECT (cancel_time IS NULL)::boolean AS goes_on FROM rule_pack_previews WHERE club_id = @club_id AND preview_id = @preview_id FOR SHARE;

-- name: HasPreviewResult :one
SELECT EXISTS (SELECT FROM rule_pack_preview_results WHERE club_id = @club_id AND preview_id = @preview_id AND approval_id = @approval_id);

-- name: InsertPreviewResult :exec
INSERT INTO rule_pack_preview_results (club_id, preview_id, approval_id, outcome, state, lapses, changes, failure)
VALUES (@club_id, @preview_id, @approval_id, @outcome, @state, @lapses, @changes, @failure) ON CONFLICT DO NOTHING;

-- name: PreviewResults :many
-- What changes or cannot be computed, in the order of the approvals.
SELECT r.*, m.display_name AS model_display_name, p.display_name AS owner_display_name
FROM rule_pack_preview_results r
JOIN approvals a ON a.club_id = r.club_id AND a.approval_id = r.approval_id
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
WHERE r.club_id = @club_id AND r.preview_id = @preview_id AND r.outcome IN ('changed', 'failed') ORDER BY a.create_time, a.approval_id;

-- name: AssessedApproval :one
-- One that is open and was computed, with the document that it was computed from and the answer.
SELECT a.approval_id, a.state, a.held_from, a.limits, m.display_name AS model_display_name, p.display_name AS owner_display_name,
    s.input, s.report, s.input_digest, s.core_version
FROM approvals a
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
JOIN assessments s ON s.club_id = a.club_id AND s.assessment_id = a.assessment_id
WHERE a.club_id = @club_id AND a.approval_id = @approval_id;
