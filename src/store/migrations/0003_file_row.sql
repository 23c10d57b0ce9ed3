-- What an imported file says of one subject (a piece, maker or source), cell by cell as written.

CREATE TABLE file_row (
  id INTEGER PRIMARY KEY,
  "source" INTEGER NOT NULL,
  "subject" INTEGER NOT NULL,
  "cells" TEXT NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;
