-- Steps that were taken back. What an undone change added is withdrawn; what it took away stands
-- again, testimony as a record of its own.

CREATE TABLE undone (
  by INTEGER PRIMARY KEY,     -- the place in the book of the change that takes another back
  position INTEGER NOT NULL   -- the place of the one that is taken back
) STRICT;
CREATE TABLE restored (
  id INTEGER PRIMARY KEY,     -- the record that stands again
  was INTEGER NOT NULL        -- the record, ended before, that it says anew
) STRICT;
CREATE TRIGGER undone_is_not_rewritten BEFORE UPDATE ON undone
BEGIN SELECT RAISE(ABORT, 'the book of changes is never rewritten'); END;
CREATE TRIGGER undone_is_not_torn BEFORE DELETE ON undone
BEGIN SELECT RAISE(ABORT, 'the book of changes is never shortened'); END;
