-- Several versions of a pack are published side by side, each in force from its own first day on.

-- +goose Up
-- ISO days compare as text.
ALTER TABLE rule_packs ADD COLUMN in_force_date text NOT NULL GENERATED ALWAYS AS (coalesce(content ->> 'inForceDate', '')) STORED;
DROP INDEX rule_packs_in_force;
-- From one day on one version of a pack is in force.
CREATE UNIQUE INDEX rule_packs_in_force ON rule_packs (club_id, pack, in_force_date) WHERE state = 'published';

-- A version goes by two words of its own, when two publish another that begins with it or before it, or with the later one that had taken its place.
-- +goose StatementBegin
CREATE OR REPLACE FUNCTION guard_rule_pack() RETURNS trigger LANGUAGE plpgsql AS $$
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
                            AND (p.state IN ('draft', 'proposed') AND p.in_force_date <= OLD.in_force_date AND has_two_words(p.club_id, p.rule_pack_id, 'publish', p.digest)
                                 OR p.state = 'published' AND p.in_force_date > OLD.in_force_date AND has_two_words(p.club_id, p.rule_pack_id, 'retire', p.digest))) THEN
        RAISE EXCEPTION 'two committee members retire a rule pack' USING ERRCODE = 'check_violation', CONSTRAINT = 'rule_pack_needs_two';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd

-- +goose Down
DROP INDEX rule_packs_in_force;
-- The former form knows one published version of a pack: the newest stays.
ALTER TABLE rule_packs DISABLE TRIGGER guard_rule_pack;
UPDATE rule_packs r SET state = 'retired', retire_time = now() WHERE state = 'published' AND EXISTS (
    SELECT FROM rule_packs p WHERE p.club_id = r.club_id AND p.pack = r.pack AND p.state = 'published' AND p.in_force_date > r.in_force_date);
ALTER TABLE rule_packs ENABLE TRIGGER guard_rule_pack;
ALTER TABLE rule_packs DROP COLUMN in_force_date;
CREATE UNIQUE INDEX rule_packs_in_force ON rule_packs (club_id, pack) WHERE state = 'published';
-- +goose StatementBegin
CREATE OR REPLACE FUNCTION guard_rule_pack() RETURNS trigger LANGUAGE plpgsql AS $$
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
