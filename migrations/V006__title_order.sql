-- V006__title_order.sql: titles sort by a key of the program's own making, so that every database puts them in the same order, and by an index.
ALTER TABLE sheet ADD COLUMN title_order VARCHAR(800);
CREATE INDEX sheet_by_title_order ON sheet (notebook_id, kind, title_order, id);
DROP INDEX IF EXISTS sheet_by_kind_and_title;
