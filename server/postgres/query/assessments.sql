-- name: InsertAssessment :exec
INSERT INTO assessments (club_id, assessment_id, creator_id, approval_id, input, report, input_digest, core_version,
    holds_count, tight_count, fails_count, unknown_count, create_time)
VALUES (@club_id, @assessment_id, @creator_id, @approval_id, @input, @report, @input_digest, @core_version,
    @holds_count, @tight_count, @fails_count, @unknown_count, @create_time);

-- name: Assessment :one
SELECT * FROM assessments WHERE club_id = @club_id AND assessment_id = @assessment_id;

-- name: ListAssessments :many
SELECT assessment_id, creator_id, approval_id, input_digest, core_version, holds_count, tight_count, fails_count,
    unknown_count, create_time
FROM assessments
WHERE club_id = @club_id AND (@creator_id::text = '' OR creator_id = @creator_id)
  AND (create_time, assessment_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY create_time DESC, assessment_id DESC LIMIT @most;

-- name: KeptReport :one
SELECT report FROM assessments WHERE club_id = @club_id AND assessment_id = @assessment_id;
