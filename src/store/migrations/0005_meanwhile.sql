-- Which pieces a change touched, and what of them, so that a page hears what happened since it
-- last looked, and nobody overwrites what he has not seen.

CREATE TABLE book_thing (
  position INTEGER NOT NULL,  -- of the book
  piece INTEGER NOT NULL,
  thing TEXT NOT NULL,        -- '*': anything of it; else the table, for an observation with its character and part
  PRIMARY KEY (piece, position, thing)
) STRICT, WITHOUT ROWID;
CREATE INDEX book_thing_position ON book_thing (position, piece);
INSERT OR IGNORE INTO book_thing
SELECT DISTINCT since, id, '*' FROM piece UNION
SELECT DISTINCT since, piece, '*' FROM part UNION
SELECT DISTINCT since, piece, '*' FROM observation UNION
SELECT DISTINCT since, piece, '*' FROM mark UNION
SELECT DISTINCT since, piece, '*' FROM photograph UNION
SELECT DISTINCT since, piece, '*' FROM note UNION
SELECT DISTINCT since, piece, '*' FROM event WHERE piece <> 0 UNION
SELECT DISTINCT since, subject, '*' FROM claim WHERE about = 0 UNION
SELECT DISTINCT since, piece, '*' FROM pick UNION
SELECT DISTINCT position, piece, '*' FROM book_line WHERE piece <> 0;

-- Requests that were done, by the names that their askers gave them; none is done twice.
CREATE TABLE request (
  once TEXT PRIMARY KEY,
  position INTEGER NOT NULL,  -- of the book
  answer TEXT NOT NULL        -- JSON; empty until it is laid down
) STRICT, WITHOUT ROWID;
