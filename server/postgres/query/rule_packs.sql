-- name: InsertRulePack :exec
INSERT INTO rule_packs (club_id, rule_pack_id, pack, state, content, digest, version, create_time, update_time)
VALUES (@club_id, @rule_pack_id, @pack, 'draft', @content, @digest, 1, @now, @now);

-- name: RulePack :one
SELECT * FROM rule_packs WHERE club_id = @club_id AND rule_pack_id = @rule_pack_id;

-- name: LockRulePack :one
SELECT * FROM rule_packs WHERE club_id = @club_id AND rule_pack_id = @rule_pack_id FOR UPDATE;

-- name: ListRulePacks :many
SELECT * FROM rule_packs
WHERE club_id = @club_id AND (create_time, rule_pack_id) < (@after_time::timestamptz, @after_id::text)
ORDER BY create_time DESC, rule_pack_id DESC LIMIT @most;

-- name: RulePacksInForce :many
SELECT * FROM rule_packs WHERE club_id = @club_id AND state = 'published' ORDER BY pack, in_force_date;

-- name: UpdateRulePack :exec
UPDATE rule_packs SET pack = @pack, state = @state, content = @content, digest = @digest, publish_time = @publish_time,
    retire_time = @retire_time, version = version + 1, update_time = @now
WHERE club_id = @club_id AND rule_pack_id = @rule_pack_id;

-- name: RetireFormerRulePacks :many
-- The versions that begin with this one or after it.
UPDATE rule_packs SET state = 'retired', retire_time = @now::timestamptz, version = version + 1, update_time = @now::timestamptz
WHERE club_id = @club_id AND pack = @pack AND rule_pack_id <> @rule_pack_id AND state = 'published' AND in_force_date >= @first_day::text
RETURNING rule_pack_id;

-- name: RetireReplacedRulePacks :many
-- The versions whose place this one had taken.
UPDATE rule_packs SET state = 'retired', retire_time = @now::timestamptz, version = version + 1, update_time = @now::timestamptz
WHERE club_id = @club_id AND pack = @pack AND rule_pack_id <> @rule_pack_id AND state = 'published' AND in_force_date < @first_day::text
RETURNING rule_pack_id;

-- name: InsertRulePackVote :exec
INSERT INTO rule_pack_votes (club_id, rule_pack_id, purpose, digest, person_id, time)
VALUES (@club_id, @rule_pack_id, @purpose, @digest, @person_id, @now);

-- name: RulePackVotes :many
-- Only words for the content as it stands.
SELECT v.rule_pack_id, v.purpose, v.person_id, p.display_name
FROM rule_pack_votes v
JOIN rule_packs r ON r.club_id = v.club_id AND r.rule_pack_id = v.rule_pack_id AND r.digest = v.digest
JOIN people p ON p.club_id = v.club_id AND p.person_id = v.person_id
WHERE v.club_id = @club_id AND v.rule_pack_id = ANY(@rule_pack_ids::text[]) ORDER BY v.time, v.person_id;

-- name: AssessedApprovals :many
-- What a changed rule is tried on: open approvals that were computed, with the document they were computed from and the answer.
SELECT a.approval_id, a.state, a.held_from, a.limits, m.display_name AS model_display_name, p.display_name AS owner_display_name,
    s.input, s.report, s.input_digest, s.core_version
FROM approvals a
JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
JOIN people p ON p.club_id = a.club_id AND p.person_id = a.owner_id
JOIN assessments s ON s.club_id = a.club_id AND s.assessment_id = a.assessment_id
WHERE a.club_id = @club_id AND a.state = ANY(@states::text[])
ORDER BY a.create_time, a.approval_id;
