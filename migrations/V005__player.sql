-- V005__player.sql: several players, each with notebooks of their own, who may open them to each other. A sheet's id is its own within a notebook
-- only, so that no answer tells what another notebook holds, and one archive can be read into two.

-- Ids within a notebook: what names a sheet names its notebook, too.
ALTER TABLE share_revision DROP CONSTRAINT share_revision_exists;
ALTER TABLE share_revision DROP CONSTRAINT share_revision_share_exists;
ALTER TABLE share_revision DROP CONSTRAINT share_revision_is_named_once;
ALTER TABLE share DROP CONSTRAINT share_sheet_exists;
ALTER TABLE rig_string DROP CONSTRAINT rig_string_revision_exists;
ALTER TABLE rig_string DROP CONSTRAINT rig_string_is_set_once;
ALTER TABLE sheet_link DROP CONSTRAINT sheet_link_from_exists;
ALTER TABLE sheet_link DROP CONSTRAINT sheet_link_to_exists;
ALTER TABLE sheet_link DROP CONSTRAINT sheet_link_stands_in_one_place;
ALTER TABLE sheet_style DROP CONSTRAINT sheet_style_sheet_exists;
ALTER TABLE sheet_style DROP CONSTRAINT sheet_style_is_named_once;
ALTER TABLE revision DROP CONSTRAINT revision_sheet_exists;
ALTER TABLE revision DROP CONSTRAINT revision_is_numbered_once;

-- Two primary keys were never named; the two databases name them differently, so the tables are made anew.
CREATE TABLE sheet_of_notebook (
    notebook_id    UUID NOT NULL,
    id             UUID NOT NULL,
    kind           VARCHAR(20) NOT NULL,
    head_number    INTEGER NOT NULL,
    title          VARCHAR(300) NOT NULL,
    search_text    VARCHAR(100000) NOT NULL,
    happened_on    DATE,
    played         BOOLEAN NOT NULL,
    saved_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    CONSTRAINT sheet_is_kept_once PRIMARY KEY (notebook_id, id)
);
INSERT INTO sheet_of_notebook (notebook_id, id, kind, head_number, title, search_text, happened_on, played, saved_at)
    SELECT notebook_id, id, kind, head_number, title, search_text, happened_on, played, saved_at FROM sheet;
DROP TABLE sheet;
ALTER TABLE sheet_of_notebook RENAME TO sheet;
ALTER TABLE sheet ADD CONSTRAINT sheet_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id);
ALTER TABLE sheet ADD CONSTRAINT sheet_head_is_counted_from_one CHECK (head_number >= 1);
CREATE INDEX sheet_by_kind_and_title ON sheet (notebook_id, kind, title, id);
CREATE INDEX sheet_by_kind_and_day ON sheet (notebook_id, kind, happened_on, id);

ALTER TABLE revision ADD CONSTRAINT revision_is_numbered_once PRIMARY KEY (notebook_id, sheet_id, revision_number);
ALTER TABLE revision ADD CONSTRAINT revision_sheet_exists
    FOREIGN KEY (notebook_id, sheet_id) REFERENCES sheet (notebook_id, id);

ALTER TABLE sheet_style ADD CONSTRAINT sheet_style_is_named_once PRIMARY KEY (notebook_id, sheet_id, style);
ALTER TABLE sheet_style ADD CONSTRAINT sheet_style_sheet_exists
    FOREIGN KEY (notebook_id, sheet_id) REFERENCES sheet (notebook_id, id);

ALTER TABLE sheet_link ADD CONSTRAINT sheet_link_stands_in_one_place PRIMARY KEY (notebook_id, from_id, place);
ALTER TABLE sheet_link ADD CONSTRAINT sheet_link_from_exists
    FOREIGN KEY (notebook_id, from_id) REFERENCES sheet (notebook_id, id);
ALTER TABLE sheet_link ADD CONSTRAINT sheet_link_to_exists
    FOREIGN KEY (notebook_id, to_id) REFERENCES sheet (notebook_id, id);
DROP INDEX sheet_link_by_target;
CREATE INDEX sheet_link_by_target ON sheet_link (notebook_id, to_id, relation);

ALTER TABLE rig_string ADD CONSTRAINT rig_string_is_set_once
    PRIMARY KEY (notebook_id, rig_id, revision_number, string_number);
ALTER TABLE rig_string ADD CONSTRAINT rig_string_revision_exists
    FOREIGN KEY (notebook_id, rig_id, revision_number) REFERENCES revision (notebook_id, sheet_id, revision_number);

CREATE TABLE share_of_notebook (
    notebook_id      UUID NOT NULL,
    id               UUID NOT NULL,
    token_sha256     VARCHAR(64) NOT NULL,
    name             VARCHAR(200) NOT NULL,
    sheet_id         UUID NOT NULL,
    revision_number  INTEGER,
    created_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    expires_at       TIMESTAMP(6) WITH TIME ZONE,
    revoked_at       TIMESTAMP(6) WITH TIME ZONE,
    last_opened_at   TIMESTAMP(6) WITH TIME ZONE,
    opened_count     INTEGER NOT NULL,
    CONSTRAINT share_is_made_once PRIMARY KEY (notebook_id, id)
);
INSERT INTO share_of_notebook (notebook_id, id, token_sha256, name, sheet_id, revision_number, created_at, expires_at, revoked_at, last_opened_at, opened_count)
    SELECT notebook_id, id, token_sha256, name, sheet_id, revision_number, created_at, expires_at, revoked_at, last_opened_at, opened_count FROM share;
DROP TABLE share;
ALTER TABLE share_of_notebook RENAME TO share;
ALTER TABLE share ADD CONSTRAINT share_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id);
ALTER TABLE share ADD CONSTRAINT share_sheet_exists
    FOREIGN KEY (notebook_id, sheet_id) REFERENCES sheet (notebook_id, id);
ALTER TABLE share ADD CONSTRAINT share_token_is_unique UNIQUE (token_sha256);

ALTER TABLE share_revision ADD CONSTRAINT share_revision_is_named_once
    PRIMARY KEY (notebook_id, share_id, sheet_id, revision_number);
ALTER TABLE share_revision ADD CONSTRAINT share_revision_share_exists
    FOREIGN KEY (notebook_id, share_id) REFERENCES share (notebook_id, id);
ALTER TABLE share_revision ADD CONSTRAINT share_revision_exists
    FOREIGN KEY (notebook_id, sheet_id, revision_number) REFERENCES revision (notebook_id, sheet_id, revision_number);

-- Players. passphrase_hash is null until the player has joined; name_lower is null once the account is closed, so that the name is free again.
CREATE TABLE player (
    id               UUID NOT NULL,
    name             VARCHAR(60) NOT NULL,
    name_lower       VARCHAR(180),
    passphrase_hash  VARCHAR(300),
    keeper           BOOLEAN NOT NULL,
    created_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    closed_at        TIMESTAMP(6) WITH TIME ZONE,
    CONSTRAINT player_is_known_once PRIMARY KEY (id),
    CONSTRAINT player_name_is_unique UNIQUE (name_lower)
);

CREATE TABLE notebook_member (
    notebook_id  UUID NOT NULL,
    player_id    UUID NOT NULL,
    may          VARCHAR(10) NOT NULL,
    CONSTRAINT notebook_member_has_one_right PRIMARY KEY (notebook_id, player_id),
    CONSTRAINT notebook_member_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT notebook_member_player_exists FOREIGN KEY (player_id) REFERENCES player (id),
    CONSTRAINT notebook_member_right_is_known CHECK (may IN ('read', 'write', 'own'))
);
CREATE INDEX notebook_member_by_player ON notebook_member (player_id);

-- The owner of before becomes the keeper; whoever had signed in signs in again, now by name.
INSERT INTO player (id, name, name_lower, passphrase_hash, keeper, created_at)
    SELECT notebook_id, 'owner', 'owner', passphrase_hash, TRUE, changed_at FROM notebook_owner;
INSERT INTO notebook_member (notebook_id, player_id, may)
    SELECT notebook_id, notebook_id, 'own' FROM notebook_owner;
DROP TABLE notebook_owner;

-- One-time links; only the hash of the token is kept.
CREATE TABLE invitation (
    token_sha256  VARCHAR(64) NOT NULL,
    player_id     UUID NOT NULL,
    ends_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    CONSTRAINT invitation_is_made_once PRIMARY KEY (token_sha256),
    CONSTRAINT invitation_player_exists FOREIGN KEY (player_id) REFERENCES player (id)
);

DROP TABLE sign_in_session;
CREATE TABLE sign_in_session (
    id            UUID NOT NULL,
    token_sha256  VARCHAR(64) NOT NULL,
    player_id     UUID NOT NULL,
    notebook_id   UUID,
    began_at      TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    ends_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    CONSTRAINT sign_in_session_is_begun_once PRIMARY KEY (id),
    CONSTRAINT sign_in_session_token_is_unique UNIQUE (token_sha256),
    CONSTRAINT sign_in_session_player_exists FOREIGN KEY (player_id) REFERENCES player (id),
    CONSTRAINT sign_in_session_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id)
);
CREATE INDEX sign_in_session_by_player ON sign_in_session (player_id);
