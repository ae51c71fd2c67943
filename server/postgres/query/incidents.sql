-- name: InsertIncident :exec
INSERT INTO incidents (club_id, incident_id, reporter_id, state, title, narrative, occur_time, field_id, place, model_id,
    injury, injury_note, categories, causes, actions, version, create_time, update_time)
VALUES (@club_id, @incident_id, @reporter_id, @state, @title, @narrative, @occur_time, @field_id, @place, @model_id,
    @injury, @injury_note, @categories, @causes, @actions, 1, @now, @now);

-- name: Incident :one
SELECT i.*, p.display_name AS reporter_display_name
FROM incidents i JOIN people p ON p.club_id = i.club_id AND p.person_id = i.reporter_id
WHERE i.club_id = @club_id AND i.incident_id = @incident_id;

-- name: LockIncident :one
SELECT version FROM incidents WHERE club_id = @club_id AND incident_id = @incident_id FOR UPDATE;

-- name: ListIncidents :many
SELECT i.*, p.display_name AS reporter_display_name
FROM incidents i JOIN people p ON p.club_id = i.club_id AND p.person_id = i.reporter_id
WHERE i.club_id = @club_id AND (i.create_time, i.incident_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY i.create_time DESC, i.incident_id DESC LIMIT @most;

-- name: UpdateIncident :exec
UPDATE incidents SET state = @state, title = @title, narrative = @narrative, occur_time = @occur_time, field_id = @field_id,
    place = @place, model_id = @model_id, injury = @injury, injury_note = @injury_note, categories = @categories,
    causes = @causes, actions = @actions, version = version + 1, update_time = @now
WHERE club_id = @club_id AND incident_id = @incident_id;

-- name: InsertPhoto :exec
INSERT INTO incident_photos (club_id, photo_id, incident_id, width_pixels, height_pixels, content, create_time)
VALUES (@club_id, @photo_id, @incident_id, @width_pixels, @height_pixels, @content, @now);

-- name: Photo :one
SELECT * FROM incident_photos WHERE club_id = @club_id AND incident_id = @incident_id AND photo_id = @photo_id;

-- name: PhotosOf :many
SELECT photo_id, incident_id, width_pixels, height_pixels FROM incident_photos
WHERE club_id = @club_id AND incident_id = ANY(@incident_ids::text[]) ORDER BY create_time, photo_id;

-- name: LessonsOf :many
SELECT lesson_id, incident_id FROM lessons
WHERE club_id = @club_id AND incident_id = ANY(@incident_ids::text[]) ORDER BY create_time, lesson_id;
