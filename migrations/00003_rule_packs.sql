-- The rule packs of a club: two committee members publish one, and two take it out of force.

-- +goose Up
CREATE TABLE rule_packs (
    club_id      text NOT NULL REFERENCES clubs,
    rule_pack_id text NOT NULL,
    -- The pack's own id, the same for all its versions.
    pack         text NOT NULL CHECK (pack <> ''),
    state        text NOT NULL CHECK (state IN ('draft', 'proposed', 'published', 'retired')),
    content      jsonb NOT NULL,
    digest       text NOT NULL CHECK (digest ~ '^[0-9a-f]{64}$'),
    version      bigint NOT NULL CHECK (version >= 1),
    create_time  timestamptz NOT NULL,
    update_time  timestamptz NOT NULL,
    publish_time timestamptz,
    retire_time  timestamptz,
    PRIMARY KEY (club_id, rule_pack_id),
    CONSTRAINT published_at_a_time CHECK (state <> 'published' OR publish_time IS NOT NULL),
    CONSTRAINT retired_at_a_time CHECK ((state = 'retired') = (retire_time IS NOT NULL))
);
CREATE INDEX rule_packs_by_time ON rule_packs (club_id, create_time, rule_pack_id);
-- One version of a pack is in force.
CREATE UNIQUE INDEX rule_packs_in_force ON rule_packs (club_id, pack) WHERE state = 'published';

-- A word is given for one content, named by its digest, once by each person.
CREATE TABLE rule_pack_votes (
    club_id      text NOT NULL,
    rule_pack_id text NOT NULL,
    purpose      text NOT NULL CHECK (purpose IN ('publish', 'retire')),
    digest       text NOT NULL CHECK (digest ~ '^[0-9a-f]{64}$'),
    person_id    text NOT NULL,
    time         timestamptz NOT NULL,
    PRIMARY KEY (club_id, rule_pack_id, purpose, digest, person_id),
    FOREIGN KEY (club_id, rule_pack_id) REFERENCES rule_packs,
    FOREIGN KEY (club_id, person_id) REFERENCES people
);

-- +goose StatementBegin
DO $$
DECLARE
    name text;
BEGIN
    FOREACH name IN ARRAY ARRAY['rule_packs', 'rule_pack_votes']
    LOOP
        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
        EXECUTE format('CREATE POLICY own_club ON %I USING (club_id = NULLIF(current_setting(''app.club_id'', true), ''''))', name);
    END LOOP;
END
$$;
-- +goose StatementEnd
GRANT SELECT, INSERT ON rule_packs, rule_pack_votes TO pitgate_app;
GRANT UPDATE (pack, state, content, digest, version, update_time, publish_time, retire_time) ON rule_packs TO pitgate_app;
CREATE TRIGGER frozen BEFORE UPDATE OR DELETE OR TRUNCATE ON rule_pack_votes FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER frozen BEFORE DELETE OR TRUNCATE ON rule_packs FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- Only the committee has a word.
-- +goose StatementBegin
CREATE FUNCTION refuse_word_of_others() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (SELECT FROM people p WHERE p.club_id = NEW.club_id AND p.person_id = NEW.person_id AND 'committee' = ANY (p.roles)) THEN
        RAISE EXCEPTION 'only a committee member has a word on rule packs'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'rule_pack_word_of_committee';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER rule_pack_word_of_committee BEFORE INSERT ON rule_pack_votes FOR EACH ROW EXECUTE FUNCTION refuse_word_of_others();

-- Nobody publishes alone, nobody takes out of force alone, and what was published stays as it was.
-- +goose StatementBegin
CREATE FUNCTION has_two_words(club text, id text, about text, content_digest text) RETURNS boolean LANGUAGE sql STABLE AS $$
    SELECT count(*) >= 2 FROM rule_pack_votes v
    WHERE v.club_id = club AND v.rule_pack_id = id AND v.purpose = about AND v.digest = content_digest
$$;
-- +goose StatementEnd
-- +goose StatementBegin
CREATE FUNCTION guard_rule_pack() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'INSERT' THEN
        IF NEW.state <> 'draft' THEN
            RAISE EXCEPTION 'a rule pack begins as a draft' USING ERRCODE = 'restrict_violation';
        END IF;
        RETURN NEW;
    END IF;
    IF OLD.state IN ('published', 'retired') AND (NEW.content IS DISTINCT FROM OLD.content OR NEW.digest <> OLD.digest OR NEW.pack <> OLD.pack
            OR NEW.state NOT IN (OLD.state, 'retired')) THEN
        RAISE EXCEPTION 'a published rule pack stays as it is' USING ERRCODE = 'restrict_violation';
    END IF;
    IF NEW.state = 'published' AND OLD.state <> 'published' AND NOT has_two_words(NEW.club_id, NEW.rule_pack_id, 'publish', NEW.digest) THEN
        RAISE EXCEPTION 'two committee members publish a rule pack' USING ERRCODE = 'check_violation', CONSTRAINT = 'rule_pack_needs_two';
    END IF;
    IF NEW.state = 'retired' AND OLD.state = 'published' AND NOT has_two_words(NEW.club_id, NEW.rule_pack_id, 'retire', NEW.digest)
        AND NOT EXISTS (SELECT FROM rule_packs p WHERE p.club_id = NEW.club_id AND p.pack = NEW.pack AND p.rule_pack_id <> NEW.rule_pack_id
                            AND p.state IN ('draft', 'proposed') AND has_two_words(p.club_id, p.rule_pack_id, 'publish', p.digest)) THEN
        RAISE EXCEPTION 'two committee members retire a rule pack' USING ERRCODE = 'check_violation', CONSTRAINT = 'rule_pack_needs_two';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER guard_rule_pack BEFORE INSERT OR UPDATE ON rule_packs FOR EACH ROW EXECUTE FUNCTION guard_rule_pack();

-- +goose Down
DROP TABLE rule_pack_votes, rule_packs CASCADE;
DROP FUNCTION guard_rule_pack(), has_two_words(text, text, text, text), refuse_word_of_others();
