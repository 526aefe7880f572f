-- V003__owner.sql: a notebook that is reached from elsewhere has an owner's passphrase; only its Argon2id hash is kept, and of a session only its token's.
CREATE TABLE notebook_owner (
    notebook_id      UUID PRIMARY KEY,
    passphrase_hash  VARCHAR(300) NOT NULL,
    changed_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    CONSTRAINT notebook_owner_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id)
);

CREATE TABLE sign_in_session (
    token_sha256  VARCHAR(64) PRIMARY KEY,
    notebook_id   UUID NOT NULL,
    began_at      TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    ends_at       TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    CONSTRAINT sign_in_session_notebook_exists FOREIGN KEY (notebook_id) REFERENCES notebook (id)
);
