-- name: InsertModel :exec
INSERT INTO models (club_id, model_id, owner_id, display_name, latest_revision, version, create_time, update_time)
VALUES (@club_id, @model_id, @owner_id, @display_name, 1, 1, @now, @now);

-- name: InsertRevision :exec
INSERT INTO model_revisions (club_id, model_id, number, description, digest, create_time)
VALUES (@club_id, @model_id, @number, @description, @digest, @now);

-- name: Model :one
SELECT m.*, p.display_name AS owner_display_name, r.description, r.digest
FROM models m
JOIN people p ON p.club_id = m.club_id AND p.person_id = m.owner_id
JOIN model_revisions r ON r.club_id = m.club_id AND r.model_id = m.model_id AND r.number = m.latest_revision
WHERE m.club_id = @club_id AND m.model_id = @model_id AND m.delete_time IS NULL;

-- name: LockModel :one
-- Holds a model still against every other change of it until the transaction ends.
SELECT owner_id, latest_revision, version FROM models
WHERE club_id = @club_id AND model_id = @model_id AND delete_time IS NULL FOR UPDATE;

-- name: ShareModel :one
-- Keeps a model from being changed until the transaction ends.
SELECT owner_id, latest_revision FROM models
WHERE club_id = @club_id AND model_id = @model_id AND delete_time IS NULL FOR SHARE;

-- name: ListModels :many
SELECT m.*, p.display_name AS owner_display_name, r.description, r.digest
FROM models m
JOIN people p ON p.club_id = m.club_id AND p.person_id = m.owner_id
JOIN model_revisions r ON r.club_id = m.club_id AND r.model_id = m.model_id AND r.number = m.latest_revision
WHERE m.club_id = @club_id AND m.delete_time IS NULL AND (@owner_id::text = '' OR m.owner_id = @owner_id)
  AND (m.create_time, m.model_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY m.create_time DESC, m.model_id DESC LIMIT @most;

-- name: UpdateModel :exec
UPDATE models SET display_name = @display_name, latest_revision = @latest_revision, version = version + 1, update_time = @now
WHERE club_id = @club_id AND model_id = @model_id;

-- name: ApprovalsOfModel :one
SELECT count(*) FROM approvals WHERE club_id = @club_id AND model_id = @model_id;

-- name: DeleteModel :exec
UPDATE models SET delete_time = @now::timestamptz, version = version + 1, update_time = @now
WHERE club_id = @club_id AND model_id = @model_id;

-- name: Revision :one
SELECT r.* FROM model_revisions r JOIN models m ON m.club_id = r.club_id AND m.model_id = r.model_id
WHERE r.club_id = @club_id AND r.model_id = @model_id AND r.number = @number AND m.delete_time IS NULL;

-- name: ListRevisions :many
SELECT r.* FROM model_revisions r JOIN models m ON m.club_id = r.club_id AND m.model_id = r.model_id
WHERE r.club_id = @club_id AND r.model_id = @model_id AND r.number < @before AND m.delete_time IS NULL
ORDER BY r.number DESC LIMIT @most;
