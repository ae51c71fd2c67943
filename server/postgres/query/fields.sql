-- name: InsertField :exec
INSERT INTO fields (club_id, field_id, display_name, latest_version, version, create_time, update_time)
VALUES (@club_id, @field_id, @display_name, 1, 1, @now, @now);

-- name: InsertFieldVersion :exec
INSERT INTO field_versions (club_id, field_id, number, description, digest, create_time)
VALUES (@club_id, @field_id, @number, @description, @digest, @now);

-- name: Field :one
SELECT f.*, v.description, v.digest
FROM fields f JOIN field_versions v ON v.club_id = f.club_id AND v.field_id = f.field_id AND v.number = f.latest_version
WHERE f.club_id = @club_id AND f.field_id = @field_id;

-- name: LockField :one
SELECT latest_version, version FROM fields WHERE club_id = @club_id AND field_id = @field_id FOR UPDATE;

-- name: ShareField :one
SELECT latest_version FROM fields WHERE club_id = @club_id AND field_id = @field_id FOR SHARE;

-- name: ListFields :many
SELECT f.*, v.description, v.digest
FROM fields f JOIN field_versions v ON v.club_id = f.club_id AND v.field_id = f.field_id AND v.number = f.latest_version
WHERE f.club_id = @club_id AND (f.create_time, f.field_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY f.create_time DESC, f.field_id DESC LIMIT @most;

-- name: UpdateField :exec
UPDATE fields SET display_name = @display_name, latest_version = @latest_version, version = version + 1, update_time = @now
WHERE club_id = @club_id AND field_id = @field_id;

-- name: FieldVersion :one
SELECT * FROM field_versions WHERE club_id = @club_id AND field_id = @field_id AND number = @number;
