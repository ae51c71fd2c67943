-- name: LockClub :exec
-- One writer at a time for what is named, until the transaction ends.
SELECT pg_advisory_xact_lock(hashtextextended(@name::text, 0));

-- name: LedgerHead :one
SELECT * FROM ledger_heads WHERE club_id = @club_id ORDER BY size DESC LIMIT 1;

-- name: InsertLedgerEntry :exec
INSERT INTO ledger_entries (club_id, entry_index, entry, leaf_hash) VALUES (@club_id, @entry_index, @entry, @leaf_hash);

-- name: InsertLedgerHead :exec
INSERT INTO ledger_heads (club_id, size, root, hashes, signature, time)
VALUES (@club_id, @size, @root, @hashes, @signature, @now);

-- name: LedgerEntries :many
SELECT * FROM ledger_entries WHERE club_id = @club_id AND entry_index >= @first ORDER BY entry_index LIMIT @most;

-- name: LeafHashes :many
SELECT leaf_hash FROM ledger_entries WHERE club_id = @club_id AND entry_index < @size ORDER BY entry_index;
