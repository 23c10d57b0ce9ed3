-- The list of tasks that leads to opening day, once the curator keeps one of his own.

CREATE TABLE task (
  id INTEGER PRIMARY KEY,
  "key" TEXT NOT NULL,
  "group" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "after" TEXT NOT NULL,
  "least_days" REAL NOT NULL,
  "likely_days" REAL NOT NULL,
  "greatest_days" REAL NOT NULL,
  "holds" INTEGER NOT NULL,
  "done" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;
