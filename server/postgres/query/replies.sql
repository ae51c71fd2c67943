-- name: Reply :one
SELECT * FROM replies WHERE club_id = @club_id AND request_id = @request_id;

-- name: InsertReply :exec
INSERT INTO replies (club_id, request_id, rpc, person_id, body_digest, reply, create_time)
VALUES (@club_id, @request_id, @rpc, @person_id, @body_digest, @reply, @now);

-- name: SweepReplies :exec
DELETE FROM replies WHERE club_id = @club_id AND create_time < @before;
