-- Approvals computed again when rules or the core change, and the queue's jobs kept apart by club.

-- +goose Up
-- The queue's tables stand in the schema jobs, where its own migrations put them before these run. They belong to the whole system and not to a club:
-- one worker takes the next job of any club, and the program's role, which works for one club, sees and adds that club's jobs only.
GRANT USAGE ON SCHEMA jobs TO pitgate_app;
-- +goose StatementBegin
DO $$
BEGIN
    ALTER TABLE jobs.river_job ENABLE ROW LEVEL SECURITY;
    CREATE POLICY own_club ON jobs.river_job TO pitgate_app USING (args ->> 'club' = NULLIF(current_setting('app.club_id', true), ''));
    GRANT SELECT, INSERT, UPDATE (kind) ON jobs.river_job TO pitgate_app;
    GRANT USAGE ON SEQUENCE jobs.river_job_id_seq TO pitgate_app;
END
$$;
-- +goose StatementEnd

-- Whoever works for all clubs may list them in a transaction that says so.
CREATE POLICY every_club ON clubs FOR SELECT USING (current_setting('app.every_club', true) = 'on');

-- The club itself computes too.
ALTER TABLE assessments ALTER COLUMN creator_id DROP NOT NULL;
CREATE INDEX assessments_by_approval ON assessments (club_id, approval_id, create_time, assessment_id);

-- One change that may turn verdicts, with what was computed because of it.
CREATE TABLE reassessment_runs (
    club_id      text NOT NULL REFERENCES clubs,
    run_id       text NOT NULL,
    cause        text NOT NULL CHECK (cause IN ('rules', 'core', 'asked')),
    -- The cause in words.
    reason       text NOT NULL CHECK (reason <> ''),
    core_version text NOT NULL CHECK (core_version <> ''),
    -- False when everything was computed in the transaction of the change.
    by_jobs      boolean NOT NULL,
    -- How many approvals are computed again; absent until they are listed.
    approvals    integer CHECK (approvals >= 0),
    create_time  timestamptz NOT NULL,
    PRIMARY KEY (club_id, run_id)
);
CREATE INDEX reassessment_runs_by_time ON reassessment_runs (club_id, create_time, run_id);

-- What became of one approval in one run, once.
CREATE TABLE reassessments (
    club_id         text NOT NULL,
    run_id          text NOT NULL,
    approval_id     text NOT NULL,
    reassessment_id text NOT NULL,
    outcome         text NOT NULL CHECK (outcome IN ('same', 'changed', 'skipped', 'failed')),
    -- By which core it was computed.
    core_version    text NOT NULL CHECK (core_version <> ''),
    -- Where the approval stood, and whether it lapsed.
    state           text NOT NULL,
    lapsed          boolean NOT NULL,
    -- The new assessment, when verdicts changed.
    assessment_id   text,
    changes         jsonb NOT NULL CHECK (jsonb_typeof(changes) = 'array'),
    -- Why it could not be computed.
    failure         text NOT NULL DEFAULT '',
    create_time     timestamptz NOT NULL,
    PRIMARY KEY (club_id, run_id, approval_id),
    CONSTRAINT reassessments_id_key UNIQUE (club_id, reassessment_id),
    FOREIGN KEY (club_id, run_id) REFERENCES reassessment_runs,
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals,
    FOREIGN KEY (club_id, assessment_id) REFERENCES assessments,
    CONSTRAINT changes_when_changed CHECK ((outcome = 'changed') = (jsonb_array_length(changes) > 0) AND (outcome = 'failed') = (failure <> ''))
);
CREATE INDEX reassessments_by_time ON reassessments (club_id, create_time, reassessment_id) WHERE outcome IN ('changed', 'failed');
CREATE INDEX reassessments_by_approval ON reassessments (club_id, approval_id);

-- Who has read of a change.
CREATE TABLE reassessment_readings (
    club_id         text NOT NULL,
    reassessment_id text NOT NULL,
    person_id       text NOT NULL,
    time            timestamptz NOT NULL,
    PRIMARY KEY (club_id, reassessment_id, person_id),
    FOREIGN KEY (club_id, reassessment_id) REFERENCES reassessments (club_id, reassessment_id),
    FOREIGN KEY (club_id, person_id) REFERENCES people
);

-- +goose StatementBegin
DO $$
DECLARE
    name text;
BEGIN
    FOREACH name IN ARRAY ARRAY['reassessment_runs', 'reassessments', 'reassessment_readings']
    LOOP
        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
        EXECUTE format('CREATE POLICY own_club ON %I USING (club_id = NULLIF(current_setting(''app.club_id'', true), ''''))', name);
    END LOOP;
    FOREACH name IN ARRAY ARRAY['reassessments', 'reassessment_readings']
    LOOP
        EXECUTE format('CREATE TRIGGER frozen BEFORE UPDATE OR DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', name);
    END LOOP;
END
$$;
-- +goose StatementEnd
GRANT SELECT, INSERT ON reassessment_runs, reassessments, reassessment_readings TO pitgate_app;
GRANT UPDATE (approvals) ON reassessment_runs TO pitgate_app;

-- +goose Down
DROP TABLE reassessment_readings, reassessments, reassessment_runs CASCADE;
DROP INDEX assessments_by_approval;
ALTER TABLE assessments DISABLE TRIGGER frozen;
DELETE FROM assessments WHERE creator_id IS NULL;
ALTER TABLE assessments ENABLE TRIGGER frozen;
ALTER TABLE assessments ALTER COLUMN creator_id SET NOT NULL;
DROP POLICY every_club ON clubs;
-- +goose StatementBegin
DO $$
BEGIN
    DROP POLICY own_club ON jobs.river_job;
    REVOKE ALL ON jobs.river_job FROM pitgate_app;
    REVOKE ALL ON SEQUENCE jobs.river_job_id_seq FROM pitgate_app;
    REVOKE USAGE ON SCHEMA jobs FROM pitgate_app;
END
$$;
-- +goose StatementEnd
