-- V004__blob.sql: files a sheet names by their SHA-256, such as a take's MIDI; cut into parts so that neither database meets its limits.
CREATE TABLE blob (
    notebook_id  UUID NOT NULL,
    sha256       VARCHAR(64) NOT NULL,
    byte_count   BIGINT NOT NULL,
    CONSTRAINT blob_is_kept_once PRIMARY KEY (notebook_id, sha256),
    CONSTRAINT blob_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id)
);

CREATE TABLE blob_part (
    notebook_id  UUID NOT NULL,
    sha256       VARCHAR(64) NOT NULL,
    part_number  INTEGER NOT NULL,
    bytes        BYTEA NOT NULL,
    CONSTRAINT blob_part_is_numbered_once PRIMARY KEY (notebook_id, sha256, part_number),
    CONSTRAINT blob_part_blob_exists FOREIGN KEY (notebook_id, sha256) REFERENCES blob (notebook_id, sha256)
);
