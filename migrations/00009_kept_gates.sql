-- Gates that stand through a lapse, because what turned does not concern them.

-- +goose Up
-- Gates of an approval that were passed before it lapsed and that its new answer leaves as they were; they are not asked for again.
ALTER TABLE approvals ADD COLUMN kept_gates text[] NOT NULL DEFAULT '{}' CHECK (kept_gates <@ ARRAY['desk', 'bench']);
GRANT UPDATE (kept_gates) ON approvals TO pitgate_app;
-- Of every gate that stood before a lapse or another answer: whether it stands, and why.
ALTER TABLE transitions ADD COLUMN gates jsonb NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(gates) = 'array');

-- The gates that an approval has behind it in a state; a held one stands where it was held from.
-- +goose StatementBegin
CREATE FUNCTION gates_behind(stands text) RETURNS text[] LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN stands = 'bench' THEN ARRAY['desk'] WHEN stands IN ('ready', 'signed', 'flown') THEN ARRAY['desk', 'bench'] ELSE '{}' END
$$;
-- +goose StatementEnd

-- No approval comes past a gate that was neither passed nor kept; a gate is kept only while revision, field, plan and day stay; and what is signed rests
-- on one answer.
-- +goose StatementBegin
CREATE FUNCTION guard_gates() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    was     text := CASE WHEN OLD.state = 'held' THEN OLD.held_from ELSE OLD.state END;
    becomes text := CASE WHEN NEW.state = 'held' THEN NEW.held_from ELSE NEW.state END;
    behind  text[] := gates_behind(becomes);
    stood   text[] := OLD.kept_gates || gates_behind(was);
    passed  text[] := CASE was WHEN 'desk_review' THEN ARRAY['desk'] WHEN 'bench' THEN ARRAY['bench'] ELSE '{}' END;
    flight  boolean := (NEW.model_revision, NEW.field_version, NEW.launch_plan, NEW.day)
                       IS DISTINCT FROM (OLD.model_revision, OLD.field_version, OLD.launch_plan, OLD.day);
BEGIN
    IF NOT NEW.kept_gates <@ stood THEN
        RAISE EXCEPTION 'a gate that did not stand cannot be kept' USING ERRCODE = 'check_violation', CONSTRAINT = 'kept_gate_stood';
    END IF;
    IF flight AND (NEW.kept_gates || behind) <> '{}' THEN
        RAISE EXCEPTION 'no gate stands for another flight' USING ERRCODE = 'check_violation', CONSTRAINT = 'gates_of_one_flight';
    END IF;
    IF was <> becomes AND (NOT behind <@ (stood || passed) OR becomes = 'signed' AND was <> 'ready' OR becomes = 'flown' AND was <> 'signed') THEN
        RAISE EXCEPTION 'an approval cannot go from % to % past a gate', was, becomes USING ERRCODE = 'check_violation', CONSTRAINT = 'gate_passed_or_kept';
    END IF;
    IF becomes = 'signed' AND NEW.assessment_id IS DISTINCT FROM OLD.assessment_id THEN
        RAISE EXCEPTION 'what is signed rests on its answer' USING ERRCODE = 'check_violation', CONSTRAINT = 'signed_answer_stays';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER guard_gates BEFORE UPDATE ON approvals FOR EACH ROW EXECUTE FUNCTION guard_gates();

-- +goose StatementBegin
CREATE FUNCTION refuse_early_gates() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NEW.kept_gates <> '{}' THEN
        RAISE EXCEPTION 'a new approval has no gate behind it' USING ERRCODE = 'check_violation', CONSTRAINT = 'kept_gate_stood';
    END IF;
    RETURN NEW;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER no_early_gates BEFORE INSERT ON approvals FOR EACH ROW EXECUTE FUNCTION refuse_early_gates();

-- +goose Down
DROP TRIGGER no_early_gates ON approvals;
DROP TRIGGER guard_gates ON approvals;
DROP FUNCTION refuse_early_gates(), guard_gates(), gates_behind(text);
ALTER TABLE transitions DROP COLUMN gates;
ALTER TABLE approvals DROP COLUMN kept_gates;
