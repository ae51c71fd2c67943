-- What an owner confirms for the rules that ask for somebody's word.

-- +goose Up
ALTER TABLE approvals ADD COLUMN confirmations jsonb NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(confirmations) = 'array');
GRANT UPDATE (confirmations) ON approvals TO pitgate_app;

-- +goose Down
ALTER TABLE approvals DROP COLUMN confirmations;
