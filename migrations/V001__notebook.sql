-- V001__notebook.sql: a notebook of sheets whose every saved state is kept, and beside them only what has to be asked.
CREATE TABLE notebook (
    id          UUID PRIMARY KEY,
    title       VARCHAR(200) NOT NULL,
    created_at  TIMESTAMP(6) WITH TIME ZONE NOT NULL
);

-- One row a sheet: where its newest revision stands, and what lists, sorting and searching need of it.
CREATE TABLE sheet (
    id             UUID PRIMARY KEY,
    notebook_id    UUID NOT NULL,
    kind           VARCHAR(20) NOT NULL,
    head_number    INTEGER NOT NULL,
    title          VARCHAR(300) NOT NULL,
    search_text    VARCHAR(100000) NOT NULL,
    happened_on    DATE,
    played         BOOLEAN NOT NULL,
    saved_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    CONSTRAINT sheet_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT sheet_head_is_counted_from_one CHECK (head_number >= 1)
);
CREATE INDEX sheet_by_kind_and_title ON sheet (notebook_id, kind, title, id);
CREATE INDEX sheet_by_kind_and_day ON sheet (notebook_id, kind, happened_on, id);

-- Saved states. Rows are added and never changed.
CREATE TABLE revision (
    notebook_id      UUID NOT NULL,
    sheet_id         UUID NOT NULL,
    revision_number  INTEGER NOT NULL,
    parent_number    INTEGER,
    content_format   INTEGER NOT NULL,
    content          VARCHAR(1000000) NOT NULL,
    content_sha256   VARCHAR(64) NOT NULL,
    saved_at         TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    saved_by         VARCHAR(100) NOT NULL,
    reason           VARCHAR(1000) NOT NULL,
    CONSTRAINT revision_is_numbered_once PRIMARY KEY (sheet_id, revision_number),
    CONSTRAINT revision_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT revision_sheet_exists FOREIGN KEY (sheet_id) REFERENCES sheet (id),
    CONSTRAINT revision_parent_is_earlier CHECK (parent_number IS NULL OR parent_number < revision_number)
);

-- Free tags of a sheet's newest revision, to browse by.
CREATE TABLE sheet_style (
    notebook_id  UUID NOT NULL,
    sheet_id     UUID NOT NULL,
    style        VARCHAR(60) NOT NULL,
    CONSTRAINT sheet_style_is_named_once PRIMARY KEY (sheet_id, style),
    CONSTRAINT sheet_style_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT sheet_style_sheet_exists FOREIGN KEY (sheet_id) REFERENCES sheet (id)
);
CREATE INDEX sheet_style_by_style ON sheet_style (notebook_id, style);

-- What a sheet's newest revision refers to; to_number is null where it means "the newest".
CREATE TABLE sheet_link (
    notebook_id  UUID NOT NULL,
    from_id      UUID NOT NULL,
    place        VARCHAR(200) NOT NULL,
    relation     VARCHAR(20) NOT NULL,
    to_id        UUID NOT NULL,
    to_number    INTEGER,
    CONSTRAINT sheet_link_stands_in_one_place PRIMARY KEY (from_id, place),
    CONSTRAINT sheet_link_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT sheet_link_from_exists FOREIGN KEY (from_id) REFERENCES sheet (id),
    CONSTRAINT sheet_link_to_exists FOREIGN KEY (to_id) REFERENCES sheet (id)
);
CREATE INDEX sheet_link_by_target ON sheet_link (to_id, relation);

-- A string's settings in each rig revision, so that its history is one query.
CREATE TABLE rig_string (
    notebook_id      UUID NOT NULL,
    rig_id           UUID NOT NULL,
    revision_number  INTEGER NOT NULL,
    string_number    INTEGER NOT NULL,
    input_number     INTEGER,
    sensitivity      DOUBLE PRECISION,
    trim_decibels    DOUBLE PRECISION NOT NULL,
    set_on           DATE,
    CONSTRAINT rig_string_is_set_once PRIMARY KEY (rig_id, revision_number, string_number),
    CONSTRAINT rig_string_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT rig_string_revision_exists FOREIGN KEY (rig_id, revision_number)
        REFERENCES revision (sheet_id, revision_number)
);
