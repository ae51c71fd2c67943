-- What officers answer to rules that ask for somebody's word, on approvals of others.

-- +goose Up
CREATE TABLE rule_words (
    club_id       text NOT NULL,
    approval_id   text NOT NULL,
    -- The entry that tells of it.
    ledger_index  bigint NOT NULL,
    -- "<pack>.<rule>"
    rule          text NOT NULL CHECK (rule <> ''),
    confirmed     boolean NOT NULL,
    -- The day for which it is said, e.g. "2026-05-16".
    date          text NOT NULL CHECK (date ~ '^\d{4}-\d{2}-\d{2}$'),
    person_id     text NOT NULL,
    reason        text NOT NULL CHECK (reason <> ''),
    -- The answer that counts it.
    assessment_id text NOT NULL,
    time          timestamptz NOT NULL,
    PRIMARY KEY (club_id, approval_id, ledger_index),
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals,
    FOREIGN KEY (club_id, person_id) REFERENCES people,
    FOREIGN KEY (club_id, assessment_id) REFERENCES assessments,
    FOREIGN KEY (club_id, ledger_index) REFERENCES ledger_entries
);
ALTER TABLE rule_words ENABLE ROW LEVEL SECURITY;
ALTER TABLE rule_words FORCE ROW LEVEL SECURITY;
CREATE POLICY own_club ON rule_words USING (club_id = NULLIF(current_setting('app.club_id', true), ''));
GRANT SELECT, INSERT ON rule_words TO pitgate_app;
CREATE TRIGGER frozen BEFORE UPDATE OR DELETE OR TRUNCATE ON rule_words FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- Only a safety officer answers, and never for an approval or a model of their own.
-- +goose StatementBegin
CREATE FUNCTION refuse_rule_word_of_others() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (SELECT FROM people p WHERE p.club_id = NEW.club_id AND p.person_id = NEW.person_id AND 'safety_officer' = ANY (p.roles)) THEN
        RAISE EXCEPTION 'only a safety officer answers a rule' USING ERRCODE = 'check_violation', CONSTRAINT = 'rule_word_of_officer';
    END IF;
    IF NOT EXISTS (
        SELECT FROM approvals a JOIN models m ON m.club_id = a.club_id AND m.model_id = a.model_id
        WHERE a.club_id = NEW.club_id AND a.approval_id = NEW.approval_id AND a.owner_id <> NEW.person_id AND m.owner_id <> NEW.person_id
    ) THEN
        RAISE EXCEPTION 'the officer owns the approval or the model' USING ERRCODE = 'check_violation', CONSTRAINT = 'rule_word_never_of_owner';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER rule_word_of_officer BEFORE INSERT ON rule_words FOR EACH ROW EXECUTE FUNCTION refuse_rule_word_of_others();

-- +goose Down
DROP TABLE rule_words CASCADE;
DROP FUNCTION refuse_rule_word_of_others();
