-- What a change of a rule pack would do to the open approvals, computed before anybody gives the word: by jobs where there are many.

-- +goose Up
CREATE TABLE rule_pack_previews (
    club_id      text NOT NULL,
    preview_id   text NOT NULL,
    rule_pack_id text NOT NULL,
    person_id    text NOT NULL,
    -- Content of the pack, rules in force and core that it is computed with: once one of them is another, it is out of date.
    digest       text NOT NULL CHECK (digest ~ '^[0-9a-f]{64}$'),
    rules_digest text NOT NULL CHECK (rules_digest ~ '^[0-9a-f]{64}$'),
    core_version text NOT NULL CHECK (core_version <> ''),
    -- How many approvals are tried.
    approvals    integer NOT NULL CHECK (approvals >= 0),
    create_time  timestamptz NOT NULL,
    cancel_time  timestamptz,
    PRIMARY KEY (club_id, preview_id),
    FOREIGN KEY (club_id, rule_pack_id) REFERENCES rule_packs,
    FOREIGN KEY (club_id, person_id) REFERENCES people
);
CREATE INDEX rule_pack_previews_by_pack ON rule_pack_previews (club_id, rule_pack_id);

-- What would become of one approval, once.
CREATE TABLE rule_pack_preview_results (
    club_id     text NOT NULL,
    preview_id  text NOT NULL,
    approval_id text NOT NULL,
    outcome     text NOT NULL CHECK (outcome IN ('same', 'changed', 'skipped', 'failed')),
    -- Where the approval stands, and whether it would lapse.
    state       text NOT NULL,
    lapses      boolean NOT NULL,
    changes     jsonb NOT NULL CHECK (jsonb_typeof(changes) = 'array'),
    failure     text NOT NULL DEFAULT '',
    PRIMARY KEY (club_id, preview_id, approval_id),
    FOREIGN KEY (club_id, preview_id) REFERENCES rule_pack_previews ON DELETE CASCADE,
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals,
    CONSTRAINT changes_when_changed CHECK ((outcome = 'changed') = (jsonb_array_length(changes) > 0) AND (outcome = 'failed') = (failure <> ''))
);

-- +goose StatementBegin
DO $$
DECLARE
    name text;
BEGIN
    FOREACH name IN ARRAY ARRAY['rule_pack_previews', 'rule_pack_preview_results']
    LOOP
        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
        EXECUTE format('CREATE POLICY own_club ON %I USING (club_id = NULLIF(current_setting(''app.club_id'', true), ''''))', name);
    END LOOP;
END
$$;
-- +goose StatementEnd
-- A preview is no record: the next one of its pack removes it.
GRANT SELECT, INSERT, DELETE ON rule_pack_previews TO pitgate_app;
GRANT SELECT, INSERT ON rule_pack_preview_results TO pitgate_app;
GRANT UPDATE (cancel_time) ON rule_pack_previews TO pitgate_app;

-- +goose Down
DROP TABLE rule_pack_preview_results, rule_pack_previews CASCADE;
