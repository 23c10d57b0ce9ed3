-- What a change took away stands in lines of its own, so that the book of a large import stays
-- small: what was added stands in the tables already, marked with the place it came at (since).

CREATE TABLE book_line (
  position INTEGER NOT NULL,  -- of the book
  what TEXT NOT NULL,         -- 'replaced' or 'withdrawn'
  kind TEXT NOT NULL,         -- name of the table
  id INTEGER NOT NULL,        -- of the record
  piece INTEGER NOT NULL,     -- that it belongs to, 0 if none
  detail TEXT NOT NULL        -- JSON: was, and is or reason
) STRICT;
CREATE INDEX book_line_position ON book_line (position);
CREATE INDEX book_line_piece ON book_line (piece);
CREATE TRIGGER book_line_is_not_rewritten BEFORE UPDATE ON book_line
BEGIN SELECT RAISE(ABORT, 'the book of changes is never rewritten'); END;
CREATE TRIGGER book_line_is_not_torn BEFORE DELETE ON book_line
BEGIN SELECT RAISE(ABORT, 'the book of changes is never shortened'); END;

-- INSERT OR REPLACE would delete the older row without asking the triggers on DELETE.
CREATE TRIGGER book_is_not_replaced BEFORE INSERT ON book
WHEN EXISTS (SELECT 1 FROM book WHERE position = NEW.position)
BEGIN SELECT RAISE(ABORT, 'the book of changes is never rewritten'); END;
CREATE TRIGGER observation_never_replaced BEFORE INSERT ON observation
WHEN EXISTS (SELECT 1 FROM observation WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'an observation is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER claim_never_replaced BEFORE INSERT ON claim
WHEN EXISTS (SELECT 1 FROM claim WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'a claim is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER event_never_replaced BEFORE INSERT ON event
WHEN EXISTS (SELECT 1 FROM event WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'an event is superseded or withdrawn, never overwritten'); END;
-- UPDATE ... SET rowid goes past a trigger on the column id.
CREATE TRIGGER observation_keeps_its_id BEFORE UPDATE ON observation WHEN NEW.id <> OLD.id
BEGIN SELECT RAISE(ABORT, 'an observation is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER claim_keeps_its_id BEFORE UPDATE ON claim WHEN NEW.id <> OLD.id
BEGIN SELECT RAISE(ABORT, 'a claim is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER event_keeps_its_id BEFORE UPDATE ON event WHEN NEW.id <> OLD.id
BEGIN SELECT RAISE(ABORT, 'an event is superseded or withdrawn, never overwritten'); END;

CREATE UNIQUE INDEX display_case_key ON display_case (key) WHERE ended IS NULL;
CREATE INDEX part_piece ON part (piece);
CREATE INDEX claim_subject ON claim (subject);
CREATE INDEX event_piece ON event (piece);
CREATE INDEX photograph_piece ON photograph (piece);

-- Curves come back to the last bit, so that a print made later says the same as one made at once.
-- A reckoning is not a record: the ones of the older shape are dropped and made again.
DROP TABLE belief;
DELETE FROM run;
CREATE TABLE belief (
  run INTEGER NOT NULL,
  piece INTEGER NOT NULL,
  first_year INTEGER NOT NULL,
  curve BLOB NOT NULL,        -- one 64-bit float a year, little end first
  detail TEXT NOT NULL,       -- JSON: makers, place, limit, conflict, phrases
  PRIMARY KEY (run, piece)
) STRICT;
