-- The first shape of show.db. Never edited once released: what changes later is a further file.
-- Every record carries the place in the book at which it came (since) and, if it no longer holds,
-- the place at which it ended. Words are numbers of table word; days count from 1970-01-01; years
-- are astronomical; enumerations are the numbers given in docs/formats/show-db.md.

CREATE TABLE book (
  position INTEGER PRIMARY KEY,
  at INTEGER NOT NULL,       -- seconds since 1970-01-01 UTC
  who TEXT NOT NULL,
  operation TEXT NOT NULL,
  summary TEXT NOT NULL,
  detail TEXT NOT NULL       -- JSON: added, replaced (as it was, as it is), superseded, withdrawn
) STRICT;
CREATE TRIGGER book_is_not_rewritten BEFORE UPDATE ON book
BEGIN SELECT RAISE(ABORT, 'the book of changes is never rewritten'); END;
CREATE TRIGGER book_is_not_torn BEFORE DELETE ON book
BEGIN SELECT RAISE(ABORT, 'the book of changes is never shortened'); END;

CREATE TABLE word (id INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT;

CREATE TABLE piece (
  id INTEGER PRIMARY KEY,
  "number" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "form" INTEGER NOT NULL,
  "lot" INTEGER NOT NULL,
  "tray" INTEGER NOT NULL,
  "lender" INTEGER NOT NULL,
  "prose" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE part (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "kind" INTEGER NOT NULL,
  "originality" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE observation (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "part" INTEGER NOT NULL,
  "character" INTEGER NOT NULL,
  "value" INTEGER NOT NULL,
  "number" REAL NOT NULL,
  "certainty" REAL NOT NULL,
  "seen" INTEGER NOT NULL,
  "how" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  "day" INTEGER NOT NULL,
  "source" INTEGER NOT NULL,
  "supersedes" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;
CREATE TRIGGER observation_never_overwritten BEFORE UPDATE OF id, "piece", "part", "character", "value", "number", "certainty", "seen", "how", "by", "day", "source", "supersedes", since ON observation
BEGIN SELECT RAISE(ABORT, 'a observation is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER observation_ends_once BEFORE UPDATE OF ended ON observation WHEN OLD.ended IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a observation ends once'); END;
CREATE TRIGGER observation_never_deleted BEFORE DELETE ON observation
BEGIN SELECT RAISE(ABORT, 'a observation is superseded or withdrawn, never deleted'); END;

CREATE TABLE mark (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "part" INTEGER NOT NULL,
  "kind" INTEGER NOT NULL,
  "seen" INTEGER NOT NULL,
  "text" TEXT NOT NULL,
  "place" INTEGER NOT NULL,
  "outline" INTEGER NOT NULL,
  "certainty" REAL NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE photograph (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "view" INTEGER NOT NULL,
  "file" TEXT NOT NULL,
  "pixels_per_mm" REAL NOT NULL,
  "width_px" INTEGER NOT NULL,
  "height_px" INTEGER NOT NULL,
  "credit" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE note (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "heading" INTEGER NOT NULL,
  "text" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE character (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "label" TEXT NOT NULL,
  "part" INTEGER NOT NULL,
  "shape" INTEGER NOT NULL,
  "unit" TEXT NOT NULL,
  "replaceable" INTEGER NOT NULL,
  "minutes" REAL NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE lineage (
  id INTEGER PRIMARY KEY,
  "character" INTEGER NOT NULL,
  "maker" INTEGER NOT NULL,
  "variants" TEXT NOT NULL,
  "source" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE stated_window (
  id INTEGER PRIMARY KEY,
  "character" INTEGER NOT NULL,
  "value" INTEGER NOT NULL,
  "from_year" INTEGER,
  "to_year" INTEGER,
  "source" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE maker (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "inverted" TEXT NOT NULL,
  "kind" INTEGER NOT NULL,
  "place" INTEGER NOT NULL,
  "from_year" INTEGER,
  "to_year" INTEGER,
  "from_sd" REAL NOT NULL,
  "to_sd" REAL NOT NULL,
  "mark" TEXT NOT NULL,
  "prose" TEXT NOT NULL,
  "living" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE source (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "kind" INTEGER NOT NULL,
  "year" INTEGER,
  "derives_from" TEXT NOT NULL,
  "reliability" REAL,
  "citation" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE claim (
  id INTEGER PRIMARY KEY,
  "source" INTEGER NOT NULL,
  "about" INTEGER NOT NULL,
  "subject" INTEGER NOT NULL,
  "says" INTEGER NOT NULL,
  "text" TEXT NOT NULL,
  "from_year" INTEGER,
  "to_year" INTEGER,
  "approximate" INTEGER NOT NULL,
  "maker" INTEGER NOT NULL,
  "qualifier" INTEGER NOT NULL,
  "role" INTEGER NOT NULL,
  "word" INTEGER NOT NULL,
  "character" INTEGER NOT NULL,
  "weight" REAL,
  "negative" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  "day" INTEGER NOT NULL,
  "supersedes" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;
CREATE TRIGGER claim_never_overwritten BEFORE UPDATE OF id, "source", "about", "subject", "says", "text", "from_year", "to_year", "approximate", "maker", "qualifier", "role", "word", "character", "weight", "negative", "by", "day", "supersedes", since ON claim
BEGIN SELECT RAISE(ABORT, 'a claim is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER claim_ends_once BEFORE UPDATE OF ended ON claim WHEN OLD.ended IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a claim ends once'); END;
CREATE TRIGGER claim_never_deleted BEFORE DELETE ON claim
BEGIN SELECT RAISE(ABORT, 'a claim is superseded or withdrawn, never deleted'); END;

CREATE TABLE event (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "kind" INTEGER NOT NULL,
  "date" TEXT NOT NULL,
  "from_year" INTEGER,
  "to_year" INTEGER,
  "party" INTEGER NOT NULL,
  "place" INTEGER NOT NULL,
  "text" TEXT NOT NULL,
  "source" INTEGER NOT NULL,
  "supersedes" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;
CREATE TRIGGER event_never_overwritten BEFORE UPDATE OF id, "piece", "kind", "date", "from_year", "to_year", "party", "place", "text", "source", "supersedes", since ON event
BEGIN SELECT RAISE(ABORT, 'a event is superseded or withdrawn, never overwritten'); END;
CREATE TRIGGER event_ends_once BEFORE UPDATE OF ended ON event WHEN OLD.ended IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a event ends once'); END;
CREATE TRIGGER event_never_deleted BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'a event is superseded or withdrawn, never deleted'); END;

CREATE TABLE section (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "rank" INTEGER NOT NULL,
  "introduction" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE pick (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "section" INTEGER NOT NULL,
  "in_show" INTEGER NOT NULL,
  "in_book" INTEGER NOT NULL,
  "lead" INTEGER NOT NULL,
  "rank" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE lender (
  id INTEGER PRIMARY KEY,
  "code" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "address" TEXT NOT NULL,
  "credit" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE loan (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "lender" INTEGER NOT NULL,
  "from_day" INTEGER NOT NULL,
  "to_day" INTEGER NOT NULL,
  "return_by" INTEGER NOT NULL,
  "conditions" TEXT NOT NULL,
  "signed_paper" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE value_opinion (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "minor" INTEGER NOT NULL,
  "currency" TEXT NOT NULL,
  "basis" TEXT NOT NULL,
  "day" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE condition_seen (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "part" INTEGER NOT NULL,
  "state" INTEGER NOT NULL,
  "text" TEXT NOT NULL,
  "x_mm" REAL NOT NULL,
  "y_mm" REAL NOT NULL,
  "view" INTEGER NOT NULL,
  "day" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE permission (
  id INTEGER PRIMARY KEY,
  "subject" INTEGER NOT NULL,
  "use" INTEGER NOT NULL,
  "leave" INTEGER NOT NULL,
  "terms" TEXT NOT NULL,
  "day" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE overruling (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "of" INTEGER NOT NULL,
  "phrase" TEXT NOT NULL,
  "reason" TEXT NOT NULL,
  "initials" TEXT NOT NULL,
  "day" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE display_case (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "width_mm" REAL NOT NULL,
  "height_mm" REAL NOT NULL,
  "depth_mm" REAL NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE placement (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "in_case" INTEGER NOT NULL,
  "x_mm" REAL NOT NULL,
  "y_mm" REAL NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE setting (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "value" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE UNIQUE INDEX piece_number ON piece (number) WHERE ended IS NULL;
CREATE UNIQUE INDEX maker_key ON maker (key) WHERE ended IS NULL;
CREATE UNIQUE INDEX source_key ON source (key) WHERE ended IS NULL;
CREATE UNIQUE INDEX character_key ON character (key) WHERE ended IS NULL;
CREATE UNIQUE INDEX section_key ON section (key) WHERE ended IS NULL;
CREATE UNIQUE INDEX setting_key ON setting (key) WHERE ended IS NULL;

-- Reckonings: what a run believed, so that prints can be made without reckoning again.
CREATE TABLE run (
  id INTEGER PRIMARY KEY,
  at INTEGER NOT NULL,
  position INTEGER NOT NULL,  -- of the show that was weighed
  seed INTEGER NOT NULL,
  version TEXT NOT NULL,
  digest TEXT NOT NULL,
  diagnostics TEXT NOT NULL   -- JSON
) STRICT;
CREATE TABLE belief (
  run INTEGER NOT NULL,
  piece INTEGER NOT NULL,
  first_year INTEGER NOT NULL,
  curve BLOB NOT NULL,        -- one 32-bit float a year, little end first
  detail TEXT NOT NULL,       -- JSON: makers, place, limit, conflict, phrases
  PRIMARY KEY (run, piece)
) STRICT, WITHOUT ROWID;
