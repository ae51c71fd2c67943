-- name: SetEveryClub :exec
SELECT set_config('app.every_club', 'on', true), set_config('role', 'pitgate_app', true);

-- name: EveryClub :many
SELECT club_id FROM clubs ORDER BY club_id;

-- name: InsertRun :exec
INSERT INTO reassessment_runs (club_id, run_id, cause, reason, core_version, by_jobs, create_time)
VALUES (@club_id, @run_id, @cause, @reason, @core_version, @by_jobs, @now);

-- name: Run :one
SELECT r.*, (SELECT count(*) FROM reassessments d WHERE d.club_id = r.club_id AND d.run_id = r.run_id)::integer AS done_count,
    (SELECT count(*) FROM reassessments d WHERE d.club_id = r.club_id AND d.run_id = r.run_id AND d.outcome = 'changed')::integer AS changed_count,
    (SELECT count(*) FROM reassessments d WHERE d.club_id = r.club_id AND d.run_id = r.run_id AND d.outcome = 'failed')::integer AS failed_count
FROM reassessment_runs r WHERE r.club_id = @club_id AND r.run_id = @run_id;

-- name: RunCause :one
SELECT cause, reason FROM reassessment_runs WHERE club_id = @club_id AND run_id = @run_id;

-- name: LatestRunID :one
SELECT run_id FROM reassessment_runs WHERE club_id = @club_id AND cause = @cause
ORDER BY create_time DESC, run_id DESC LIMIT 1;

-- name: SetRunApprovals :exec
UPDATE reassessment_runs SET approvals = @approvals::integer WHERE club_id = @club_id AND run_id = @run_id;

-- name: ApprovalsToReassess :many
-- Those that were computed and may still lead to a flight, oldest first.
SELECT approval_id FROM approvals WHERE club_id = @club_id AND state = ANY(@states::text[]) AND assessment_id IS NOT NULL
ORDER BY create_time, approval_id;

-- name: ApprovalToReassess :one
-- With the document of the newest answer that was kept for it.
SELECT a.approval_id, a.state, a.held_from, a.limits, m.display_name AS model_display_name, p.display_name AS owner_display_name,
    s.assessment_id, s.input, s.input_digest, s.core_version
FROM approvals a
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
JOIN LATERAL (SELECT * FROM assessments s WHERE s.club_id = a.club_id AND s.approval_id = a.approval_id
              ORDER BY s.create_time DESC, s.assessment_id DESC LIMIT 1) s ON true
WHERE a.club_id = @club_id AND a.approval_id = @approval_id;

-- name: NewestAnswer :one
SELECT s.assessment_id FROM assessments s WHERE s.club_id = @club_id AND s.approval_id = @approval_id
ORDER BY s.create_time DESC, s.assessment_id DESC LIMIT 1;

-- name: HasReassessment :one
SELECT EXISTS (SELECT FROM reassessments WHERE club_id = @club_id AND run_id = @run_id AND approval_id = @approval_id);

-- name: InsertReassessment :execrows
INSERT INTO reassessments (club_id, run_id, approval_id, reassessment_id, outcome, core_version, state, lapsed, assessment_id, changes, failure, create_time)
VALUES (@club_id, @run_id, @approval_id, @reassessment_id, @outcome, @core_version, @state, @lapsed, @assessment_id, @changes, @failure, @now)
ON CONFLICT (club_id, run_id, approval_id) DO NOTHING;

-- name: AwaitsRules :one
-- Whether the last change of rules that jobs follow up has not come to this approval, which was computed before it.
SELECT EXISTS (
    SELECT FROM (SELECT * FROM reassessment_runs r WHERE r.club_id = @club_id AND r.cause = 'rules' AND r.by_jobs
                 ORDER BY r.create_time DESC, r.run_id DESC LIMIT 1) r
    JOIN approvals a ON a.club_id = @club_id AND a.approval_id = @approval_id
    JOIN assessments s ON s.club_id = a.club_id AND s.assessment_id = a.assessment_id AND s.create_time <= r.create_time
    WHERE NOT EXISTS (SELECT FROM reassessments d WHERE d.club_id = @club_id AND d.run_id = r.run_id AND d.approval_id = a.approval_id
                          AND d.outcome <> 'failed'));

-- name: ListChanges :many
SELECT d.*, r.cause, r.reason, a.state AS state_now, m.display_name AS model_display_name, p.display_name AS owner_display_name,
    EXISTS (SELECT FROM reassessment_readings g WHERE g.club_id = d.club_id AND g.reassessment_id = d.reassessment_id AND g.person_id = @reader_id) AS read
FROM reassessments d
JOIN reassessment_runs r ON r.club_id = d.club_id AND r.run_id = d.run_id
JOIN approvals a ON a.club_id = d.club_id AND a.approval_id = d.approval_id
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
WHERE d.club_id = @club_id AND d.outcome IN ('changed', 'failed')
  AND (@owner_id::text = '' OR a.owner_id = @owner_id) AND (@approval_id::text = '' OR d.approval_id = @approval_id)
  AND (@reassessment_id::text = '' OR d.reassessment_id = @reassessment_id)
  AND NOT (@unread::boolean AND EXISTS (SELECT FROM reassessment_readings g WHERE g.club_id = d.club_id AND g.reassessment_id = d.reassessment_id
                                            AND g.person_id = @reader_id))
  AND (d.create_time, d.reassessment_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY d.create_time DESC, d.reassessment_id DESC LIMIT @most;

-- name: InsertReading :exec
INSERT INTO reassessment_readings (club_id, reassessment_id, person_id, time) VALUES (@club_id, @reassessment_id, @person_id, @now)
ON CONFLICT DO NOTHING;
