-- The records of many clubs in one database. Rules that hold for every table:
-- * it has club_id, and every primary, unique and foreign key contains club_id, so that clubs can be spread over servers;
-- * row security is forced: a transaction sees the club named by app.club_id and nothing else;
-- * the program works as the role pitgate_app, which may do only what is granted in 00002.

-- +goose Up
CREATE TABLE clubs (
    club_id      text PRIMARY KEY CHECK (club_id ~ '^[a-z0-9]([a-z0-9-]{0,62}[a-z0-9])?$'),
    display_name text NOT NULL CHECK (display_name <> ''),
    create_time  timestamptz NOT NULL
);

CREATE TABLE people (
    club_id       text NOT NULL REFERENCES clubs,
    person_id     text NOT NULL,
    display_name  text NOT NULL CHECK (display_name <> ''),
    email         text NOT NULL CHECK (email = lower(email) AND email <> ''),
    password_hash text NOT NULL,
    roles         text[] NOT NULL CHECK (roles <@ ARRAY['member', 'safety_officer', 'committee', 'field_keeper', 'administrator']),
    demo          boolean NOT NULL DEFAULT false,
    create_time   timestamptz NOT NULL,
    PRIMARY KEY (club_id, person_id),
    CONSTRAINT people_email_key UNIQUE (club_id, email)
);
CREATE INDEX people_by_time ON people (club_id, create_time, person_id);

-- A session is found by the hash of its token alone: whoever knows the token learns the club.
CREATE TABLE sessions (
    club_id     text NOT NULL,
    token_hash  bytea NOT NULL CHECK (octet_length(token_hash) = 32),
    person_id   text NOT NULL,
    expire_time timestamptz NOT NULL,
    PRIMARY KEY (club_id, token_hash),
    FOREIGN KEY (club_id, person_id) REFERENCES people
);
CREATE INDEX sessions_by_token ON sessions (token_hash);
CREATE INDEX sessions_by_person ON sessions (club_id, person_id);
CREATE INDEX sessions_by_expiry ON sessions (club_id, expire_time);

CREATE TABLE models (
    club_id         text NOT NULL,
    model_id        text NOT NULL,
    owner_id        text NOT NULL,
    display_name    text NOT NULL CHECK (display_name <> ''),
    latest_revision integer NOT NULL CHECK (latest_revision >= 1),
    version         bigint NOT NULL CHECK (version >= 1),
    create_time     timestamptz NOT NULL,
    update_time     timestamptz NOT NULL,
    -- Revisions are never removed, so a removed model only disappears from sight.
    delete_time     timestamptz,
    PRIMARY KEY (club_id, model_id),
    FOREIGN KEY (club_id, owner_id) REFERENCES people
);
CREATE INDEX models_by_time ON models (club_id, create_time, model_id);
CREATE INDEX models_by_owner ON models (club_id, owner_id, create_time, model_id);

CREATE TABLE model_revisions (
    club_id     text NOT NULL,
    model_id    text NOT NULL,
    number      integer NOT NULL CHECK (number >= 1),
    description jsonb NOT NULL,
    digest      text NOT NULL CHECK (digest ~ '^[0-9a-f]{64}$'),
    create_time timestamptz NOT NULL,
    PRIMARY KEY (club_id, model_id, number),
    FOREIGN KEY (club_id, model_id) REFERENCES models
);

CREATE TABLE fields (
    club_id        text NOT NULL REFERENCES clubs,
    field_id       text NOT NULL,
    display_name   text NOT NULL CHECK (display_name <> ''),
    latest_version integer NOT NULL CHECK (latest_version >= 1),
    version        bigint NOT NULL CHECK (version >= 1),
    create_time    timestamptz NOT NULL,
    update_time    timestamptz NOT NULL,
    PRIMARY KEY (club_id, field_id)
);
CREATE INDEX fields_by_time ON fields (club_id, create_time, field_id);

CREATE TABLE field_versions (
    club_id     text NOT NULL,
    field_id    text NOT NULL,
    number      integer NOT NULL CHECK (number >= 1),
    description jsonb NOT NULL,
    digest      text NOT NULL CHECK (digest ~ '^[0-9a-f]{64}$'),
    create_time timestamptz NOT NULL,
    PRIMARY KEY (club_id, field_id, number),
    FOREIGN KEY (club_id, field_id) REFERENCES fields
);

CREATE TABLE approvals (
    club_id        text NOT NULL,
    approval_id    text NOT NULL,
    owner_id       text NOT NULL,
    state          text NOT NULL CHECK (state IN ('draft', 'submitted', 'desk_review', 'returned', 'bench', 'ready', 'signed',
                                                  'flown', 'refused', 'withdrawn', 'lapsed', 'held')),
    -- Where a released approval goes back to.
    held_from      text CHECK (held_from IN ('draft', 'submitted', 'desk_review', 'returned', 'bench', 'ready', 'signed', 'lapsed')),
    model_id       text NOT NULL,
    model_revision integer NOT NULL,
    field_id       text NOT NULL,
    field_version  integer NOT NULL,
    launch_plan    jsonb NOT NULL,
    day            jsonb NOT NULL,
    limits         jsonb,
    owner_note     text NOT NULL DEFAULT '',
    conditions     text[] NOT NULL DEFAULT '{}',
    assessment_id  text,
    version        bigint NOT NULL CHECK (version >= 1),
    create_time    timestamptz NOT NULL,
    update_time    timestamptz NOT NULL,
    PRIMARY KEY (club_id, approval_id),
    FOREIGN KEY (club_id, owner_id) REFERENCES people,
    FOREIGN KEY (club_id, model_id, model_revision) REFERENCES model_revisions,
    FOREIGN KEY (club_id, field_id, field_version) REFERENCES field_versions,
    CONSTRAINT held_from_only_when_held CHECK ((state = 'held') = (held_from IS NOT NULL)),
    CONSTRAINT assessed_after_draft CHECK (assessment_id IS NOT NULL OR state IN ('draft', 'withdrawn', 'held'))
);
CREATE INDEX approvals_by_time ON approvals (club_id, create_time, approval_id);
CREATE INDEX approvals_by_model ON approvals (club_id, model_id);
CREATE INDEX approvals_by_field ON approvals (club_id, field_id);

CREATE TABLE assessments (
    club_id       text NOT NULL,
    assessment_id text NOT NULL,
    creator_id    text NOT NULL,
    approval_id   text,
    input         jsonb NOT NULL,
    report        jsonb NOT NULL,
    input_digest  text NOT NULL CHECK (input_digest ~ '^[0-9a-f]{64}$'),
    core_version  text NOT NULL CHECK (core_version <> ''),
    holds_count   integer NOT NULL CHECK (holds_count >= 0),
    tight_count   integer NOT NULL CHECK (tight_count >= 0),
    fails_count   integer NOT NULL CHECK (fails_count >= 0),
    unknown_count integer NOT NULL CHECK (unknown_count >= 0),
    create_time   timestamptz NOT NULL,
    PRIMARY KEY (club_id, assessment_id),
    FOREIGN KEY (club_id, creator_id) REFERENCES people,
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals
);
CREATE INDEX assessments_by_time ON assessments (club_id, create_time, assessment_id);
ALTER TABLE approvals ADD FOREIGN KEY (club_id, assessment_id) REFERENCES assessments;

CREATE TABLE ledger_entries (
    club_id     text NOT NULL REFERENCES clubs,
    entry_index bigint NOT NULL CHECK (entry_index >= 0),
    entry       text NOT NULL,
    leaf_hash   bytea NOT NULL CHECK (octet_length(leaf_hash) = 32),
    PRIMARY KEY (club_id, entry_index)
);

CREATE TABLE ledger_heads (
    club_id   text NOT NULL REFERENCES clubs,
    size      bigint NOT NULL CHECK (size >= 1),
    root      bytea NOT NULL CHECK (octet_length(root) = 32),
    -- Roots of the full subtrees, largest first: all that is needed to append.
    hashes    bytea[] NOT NULL,
    signature bytea NOT NULL,
    time      timestamptz NOT NULL,
    PRIMARY KEY (club_id, size)
);

CREATE TABLE transitions (
    club_id        text NOT NULL,
    approval_id    text NOT NULL,
    ledger_index   bigint NOT NULL,
    verb           text NOT NULL,
    -- Empty for the one that opens it.
    from_state     text NOT NULL,
    to_state       text NOT NULL,
    -- Absent when the club itself did it.
    actor_id       text,
    reason         text NOT NULL,
    model_revision integer NOT NULL,
    assessment_id  text,
    time           timestamptz NOT NULL,
    PRIMARY KEY (club_id, approval_id, ledger_index),
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals,
    FOREIGN KEY (club_id, actor_id) REFERENCES people,
    FOREIGN KEY (club_id, assessment_id) REFERENCES assessments,
    FOREIGN KEY (club_id, ledger_index) REFERENCES ledger_entries
);

CREATE TABLE signatures (
    club_id      text NOT NULL,
    signature_id text NOT NULL,
    approval_id  text NOT NULL,
    signer_id    text NOT NULL,
    role         text NOT NULL,
    meaning      text NOT NULL CHECK (meaning <> ''),
    digest       text NOT NULL CHECK (digest ~ '^[0-9a-f]{64}$'),
    device_time  timestamptz,
    server_time  timestamptz NOT NULL,
    lapsed       boolean NOT NULL DEFAULT false,
    PRIMARY KEY (club_id, signature_id),
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals,
    FOREIGN KEY (club_id, signer_id) REFERENCES people
);
CREATE UNIQUE INDEX signatures_once ON signatures (club_id, approval_id, signer_id) WHERE NOT lapsed;

CREATE TABLE incidents (
    club_id     text NOT NULL,
    incident_id text NOT NULL,
    reporter_id text NOT NULL,
    state       text NOT NULL CHECK (state IN ('reported', 'under_review', 'closed')),
    title       text NOT NULL CHECK (title <> ''),
    narrative   text NOT NULL,
    occur_time  timestamptz NOT NULL,
    field_id    text,
    place       text NOT NULL,
    model_id    text,
    injury      text NOT NULL CHECK (injury IN ('', 'none', 'minor', 'serious', 'fatal')),
    injury_note text NOT NULL,
    categories  text[] NOT NULL,
    causes      text[] NOT NULL,
    actions     jsonb NOT NULL,
    version     bigint NOT NULL CHECK (version >= 1),
    create_time timestamptz NOT NULL,
    update_time timestamptz NOT NULL,
    PRIMARY KEY (club_id, incident_id),
    FOREIGN KEY (club_id, reporter_id) REFERENCES people,
    FOREIGN KEY (club_id, field_id) REFERENCES fields,
    FOREIGN KEY (club_id, model_id) REFERENCES models
);
CREATE INDEX incidents_by_time ON incidents (club_id, create_time, incident_id);

CREATE TABLE incident_photos (
    club_id       text NOT NULL,
    photo_id      text NOT NULL,
    incident_id   text NOT NULL,
    width_pixels  integer NOT NULL CHECK (width_pixels > 0),
    height_pixels integer NOT NULL CHECK (height_pixels > 0),
    content       bytea NOT NULL,
    create_time   timestamptz NOT NULL,
    PRIMARY KEY (club_id, photo_id),
    FOREIGN KEY (club_id, incident_id) REFERENCES incidents
);
CREATE INDEX incident_photos_by_incident ON incident_photos (club_id, incident_id);

CREATE TABLE lessons (
    club_id     text NOT NULL,
    lesson_id   text NOT NULL,
    proposer_id text NOT NULL,
    incident_id text,
    state       text NOT NULL CHECK (state IN ('proposed', 'adopted')),
    text        text NOT NULL CHECK (text <> ''),
    predicate   text NOT NULL CHECK (predicate <> ''),
    remedy      text NOT NULL,
    version     bigint NOT NULL CHECK (version >= 1),
    create_time timestamptz NOT NULL,
    adopt_time  timestamptz,
    PRIMARY KEY (club_id, lesson_id),
    FOREIGN KEY (club_id, proposer_id) REFERENCES people,
    FOREIGN KEY (club_id, incident_id) REFERENCES incidents,
    CONSTRAINT adopted_at_a_time CHECK ((state = 'adopted') = (adopt_time IS NOT NULL))
);
CREATE INDEX lessons_by_time ON lessons (club_id, create_time, lesson_id);
CREATE INDEX lessons_by_incident ON lessons (club_id, incident_id);

-- One vote per person.
CREATE TABLE lesson_votes (
    club_id   text NOT NULL,
    lesson_id text NOT NULL,
    person_id text NOT NULL,
    time      timestamptz NOT NULL,
    PRIMARY KEY (club_id, lesson_id, person_id),
    FOREIGN KEY (club_id, lesson_id) REFERENCES lessons,
    FOREIGN KEY (club_id, person_id) REFERENCES people
);

CREATE TABLE holds (
    club_id        text NOT NULL,
    hold_id        text NOT NULL,
    approval_id    text NOT NULL,
    lesson_id      text,
    actor_id       text,
    reason         text NOT NULL CHECK (reason <> ''),
    time           timestamptz NOT NULL,
    release_time   timestamptz,
    released_by    text,
    release_reason text NOT NULL DEFAULT '',
    PRIMARY KEY (club_id, hold_id),
    FOREIGN KEY (club_id, approval_id) REFERENCES approvals,
    FOREIGN KEY (club_id, lesson_id) REFERENCES lessons,
    FOREIGN KEY (club_id, actor_id) REFERENCES people,
    FOREIGN KEY (club_id, released_by) REFERENCES people,
    CONSTRAINT released_by_a_named_person CHECK ((release_time IS NULL) = (released_by IS NULL)
                                             AND (release_time IS NULL OR release_reason <> ''))
);
CREATE INDEX holds_by_approval ON holds (club_id, approval_id);
CREATE UNIQUE INDEX holds_once_by_lesson ON holds (club_id, approval_id, lesson_id) WHERE release_time IS NULL;

-- Answers to requests that a phone may send twice, kept 30 days.
CREATE TABLE replies (
    club_id     text NOT NULL,
    request_id  text NOT NULL,
    rpc         text NOT NULL,
    person_id   text NOT NULL,
    body_digest bytea NOT NULL,
    reply       bytea NOT NULL,
    create_time timestamptz NOT NULL,
    PRIMARY KEY (club_id, request_id),
    FOREIGN KEY (club_id, person_id) REFERENCES people
);
CREATE INDEX replies_by_time ON replies (club_id, create_time);

-- +goose Down
DROP TABLE replies, holds, lesson_votes, lessons, incident_photos, incidents, signatures, transitions, ledger_heads,
    ledger_entries, assessments, approvals, field_versions, fields, model_revisions, models, sessions, people, clubs CASCADE;
