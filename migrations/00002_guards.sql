-- What the database itself refuses, whatever the program does.

-- +goose Up
-- The role belongs to the whole server, so another database may have made it already.
-- +goose StatementBegin
DO $$
BEGIN
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'pitgate_app') THEN
        CREATE ROLE pitgate_app NOLOGIN;
    END IF;
EXCEPTION WHEN duplicate_object OR unique_violation THEN
    NULL;
END
$$;
-- +goose StatementEnd
-- +goose StatementBegin
DO $$
DECLARE
    -- From 16 on, a member may be one who cannot take on the role.
    may text := CASE WHEN current_setting('server_version_num')::integer >= 160000 THEN 'SET' ELSE 'MEMBER' END;
BEGIN
    IF NOT pg_has_role(current_user, 'pitgate_app', may) THEN
        EXECUTE format('GRANT pitgate_app TO %I', current_user);
    END IF;
END
$$;
-- +goose StatementEnd

-- Row security, the same on every table.
-- +goose StatementBegin
DO $$
DECLARE
    name text;
BEGIN
    FOREACH name IN ARRAY ARRAY['clubs', 'people', 'sessions', 'models', 'model_revisions', 'fields', 'field_versions',
        'approvals', 'assessments', 'ledger_entries', 'ledger_heads', 'transitions', 'signatures', 'incidents',
        'incident_photos', 'lessons', 'lesson_votes', 'holds', 'replies']
    LOOP
        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
        EXECUTE format('CREATE POLICY own_club ON %I USING (club_id = NULLIF(current_setting(''app.club_id'', true), ''''))', name);
    END LOOP;
END
$$;
-- +goose StatementEnd

-- Whoever presents the token's hash may read that one session, in order to learn the club.
CREATE POLICY own_token ON sessions FOR SELECT
    USING (token_hash = decode(NULLIF(current_setting('app.token_hash', true), ''), 'hex'));

GRANT SELECT, INSERT ON clubs, people, sessions, models, model_revisions, fields, field_versions, approvals, assessments,
    ledger_entries, ledger_heads, transitions, signatures, incidents, incident_photos, lessons, lesson_votes, holds, replies
    TO pitgate_app;
GRANT UPDATE (password_hash) ON people TO pitgate_app;
GRANT DELETE ON sessions, replies TO pitgate_app;
GRANT UPDATE (display_name, latest_revision, version, update_time, delete_time) ON models TO pitgate_app;
GRANT UPDATE (display_name, latest_version, version, update_time) ON fields TO pitgate_app;
GRANT UPDATE (state, held_from, model_revision, field_version, launch_plan, day, owner_note, conditions, assessment_id,
    version, update_time) ON approvals TO pitgate_app;
GRANT UPDATE (lapsed) ON signatures TO pitgate_app;
GRANT UPDATE (release_time, released_by, release_reason) ON holds TO pitgate_app;
GRANT UPDATE (state, title, narrative, occur_time, field_id, place, model_id, injury, injury_note, categories, causes,
    actions, version, update_time) ON incidents TO pitgate_app;
GRANT UPDATE (state, version, adopt_time) ON lessons TO pitgate_app;

-- Frozen for good, for the owner of the tables too.
-- +goose StatementBegin
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'rows of % are never changed or removed', TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END
$$;
-- +goose StatementEnd
-- +goose StatementBegin
DO $$
DECLARE
    name text;
BEGIN
    FOREACH name IN ARRAY ARRAY['ledger_entries', 'ledger_heads', 'transitions', 'assessments', 'model_revisions', 'field_versions']
    LOOP
        EXECUTE format('CREATE TRIGGER frozen BEFORE UPDATE OR DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', name);
    END LOOP;
END
$$;
-- +goose StatementEnd

-- A signature lapses once and never comes back; nothing else about it changes.
-- +goose StatementBegin
CREATE FUNCTION only_lapse() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    OLD.lapsed := true;
    IF NEW IS DISTINCT FROM OLD THEN
        RAISE EXCEPTION 'a signature can only lapse' USING ERRCODE = 'restrict_violation';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER only_lapse BEFORE UPDATE ON signatures FOR EACH ROW EXECUTE FUNCTION only_lapse();
CREATE TRIGGER frozen BEFORE DELETE OR TRUNCATE ON signatures FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- Nobody signs for a model of their own.
-- +goose StatementBegin
CREATE FUNCTION refuse_own_signature() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (
        SELECT FROM approvals a JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
        WHERE a.club_id = NEW.club_id AND a.approval_id = NEW.approval_id
          AND a.owner_id <> NEW.signer_id AND m.owner_id <> NEW.signer_id
    ) THEN
        RAISE EXCEPTION 'the signer owns the approval or the model'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'signer_is_never_owner';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER signer_is_never_owner BEFORE INSERT ON signatures FOR EACH ROW EXECUTE FUNCTION refuse_own_signature();

-- +goose Down
DROP FUNCTION refuse_change(), only_lapse(), refuse_own_signature() CASCADE;
DROP POLICY own_token ON sessions;
-- +goose StatementBegin
DO $$
DECLARE
    name text;
BEGIN
    FOR name IN SELECT tablename FROM pg_policies WHERE policyname = 'own_club'
    LOOP
        EXECUTE format('DROP POLICY own_club ON %I', name);
        EXECUTE format('ALTER TABLE %I NO FORCE ROW LEVEL SECURITY', name);
        EXECUTE format('ALTER TABLE %I DISABLE ROW LEVEL SECURITY', name);
        EXECUTE format('REVOKE ALL ON %I FROM pitgate_app', name);
    END LOOP;
END
$$;
-- +goose StatementEnd
