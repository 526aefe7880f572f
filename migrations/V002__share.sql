-- V002__share.sql: a link opens exactly what it names; only the hash of its token is kept, so this table alone opens nothing.
CREATE TABLE share (
    id               UUID PRIMARY KEY,
    notebook_id      UUID NOT NULL,
    token_sha256     VARCHAR(64) NOT NULL,
    name             VARCHAR(200) NOT NULL,
    sheet_id         UUID NOT NULL,
    revision_number  INTEGER,
    created_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    expires_at       TIMESTAMP(6) WITH TIME ZONE,
    revoked_at       TIMESTAMP(6) WITH TIME ZONE,
    last_opened_at   TIMESTAMP(6) WITH TIME ZONE,
    opened_count     INTEGER NOT NULL,
    CONSTRAINT share_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT share_sheet_exists FOREIGN KEY (sheet_id) REFERENCES sheet (id),
    CONSTRAINT share_token_is_unique UNIQUE (token_sha256)
);

-- For a share of exact revisions: everything it may show. A share that is kept up to date has no rows here.
CREATE TABLE share_revision (
    share_id         UUID NOT NULL,
    notebook_id      UUID NOT NULL,
    sheet_id         UUID NOT NULL,
    revision_number  INTEGER NOT NULL,
    CONSTRAINT share_revision_is_named_once PRIMARY KEY (share_id, sheet_id, revision_number),
    CONSTRAINT share_revision_share_exists FOREIGN KEY (share_id) REFERENCES share (id),
    CONSTRAINT share_revision_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id),
    CONSTRAINT share_revision_exists FOREIGN KEY (sheet_id, revision_number)
        REFERENCES revision (sheet_id, revision_number)
);
