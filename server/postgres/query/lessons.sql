-- name: InsertLesson :exec
INSERT INTO lessons (club_id, lesson_id, proposer_id, incident_id, state, text, predicate, remedy, version, create_time)
VALUES (@club_id, @lesson_id, @proposer_id, @incident_id, 'proposed', @text, @predicate, @remedy, 1, @now);

-- name: Lesson :one
SELECT l.*, (SELECT count(*) FROM holds h WHERE h.club_id = l.club_id AND h.lesson_id = l.lesson_id)::integer AS hold_count
FROM lessons l WHERE l.club_id = @club_id AND l.lesson_id = @lesson_id;

-- name: LockLesson :one
SELECT state, version FROM lessons WHERE club_id = @club_id AND lesson_id = @lesson_id FOR UPDATE;

-- name: ListLessons :many
SELECT l.*, (SELECT count(*) FROM holds h WHERE h.club_id = l.club_id AND h.lesson_id = l.lesson_id)::integer AS hold_count
FROM lessons l
WHERE l.club_id = @club_id AND (l.create_time, l.lesson_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY l.create_time DESC, l.lesson_id DESC LIMIT @most;

-- name: AdoptedLessons :many
SELECT l.*, (SELECT count(*) FROM holds h WHERE h.club_id = l.club_id AND h.lesson_id = l.lesson_id)::integer AS hold_count
FROM lessons l WHERE l.club_id = @club_id AND l.state = 'adopted' ORDER BY l.adopt_time, l.lesson_id;

-- name: InsertVote :exec
INSERT INTO lesson_votes (club_id, lesson_id, person_id, time) VALUES (@club_id, @lesson_id, @person_id, @now);

-- name: VotesOf :many
SELECT v.lesson_id, v.person_id, p.display_name
FROM lesson_votes v JOIN people p ON p.club_id = v.club_id AND p.person_id = v.person_id
WHERE v.club_id = @club_id AND v.lesson_id = ANY(@lesson_ids::text[]) ORDER BY v.time, v.person_id;

-- name: UpdateLesson :exec
UPDATE lessons SET state = @state, adopt_time = @adopt_time, version = version + 1
WHERE club_id = @club_id AND lesson_id = @lesson_id;
