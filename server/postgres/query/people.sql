-- name: SetClub :exec
SELECT set_config('app.club_id', @club_id::text, true), set_config('role', 'pitgate_app', true);

-- name: SetToken :exec
SELECT set_config('app.token_hash', encode(@token_hash::bytea, 'hex'), true), set_config('role', 'pitgate_app', true);

-- name: Club :one
SELECT * FROM clubs WHERE club_id = $1;

-- name: InsertClub :exec
INSERT INTO clubs (club_id, display_name, create_time) VALUES ($1, $2, $3);

-- name: Person :one
SELECT * FROM people WHERE club_id = $1 AND person_id = $2;

-- name: PersonByEmail :one
SELECT * FROM people WHERE club_id = $1 AND email = lower(@email::text);

-- name: ListPeople :many
SELECT * FROM people
WHERE club_id = @club_id AND (create_time, person_id) > (@after_time::timestamptz, @after_id::text)
ORDER BY create_time, person_id LIMIT @most;

-- name: DemoPeople :many
SELECT * FROM people WHERE club_id = $1 AND demo ORDER BY create_time, person_id;

-- name: InsertPerson :exec
INSERT INTO people (club_id, person_id, display_name, email, password_hash, roles, demo, create_time)
VALUES (@club_id, @person_id, @display_name, lower(@email::text), @password_hash, @roles, @demo, @create_time);

-- name: SetPassword :execrows
UPDATE people SET password_hash = @password_hash WHERE club_id = @club_id AND person_id = @person_id;

-- name: InsertSession :exec
INSERT INTO sessions (club_id, token_hash, person_id, expire_time) VALUES (@club_id, @token_hash, @person_id, @expire_time);

-- name: SessionByToken :one
SELECT * FROM sessions WHERE token_hash = @token_hash AND expire_time > @now;

-- name: DeleteSession :exec
DELETE FROM sessions WHERE club_id = $1 AND token_hash = $2;

-- name: DeleteOtherSessions :exec
DELETE FROM sessions WHERE club_id = @club_id AND person_id = @person_id AND token_hash <> @keep_token_hash;

-- name: SweepSessions :execrows
DELETE FROM sessions WHERE club_id = @club_id AND expire_time <= @now;
