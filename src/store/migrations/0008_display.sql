-- Cases with their shelves, air and lights; what a meter showed, what a piece had before, and what it
-- or its lender asks for; the credit that goes with a leave.

ALTER TABLE display_case ADD COLUMN "made_of" TEXT NOT NULL DEFAULT '';
ALTER TABLE display_case ADD COLUMN "shelf" TEXT NOT NULL DEFAULT '';
ALTER TABLE display_case ADD COLUMN "shelf_thick_mm" REAL NOT NULL DEFAULT 0;
ALTER TABLE display_case ADD COLUMN "shelf_span_mm" REAL NOT NULL DEFAULT 0;
ALTER TABLE display_case ADD COLUMN "leak_per_day" REAL;
ALTER TABLE display_case ADD COLUMN "hours_per_day" REAL;
ALTER TABLE display_case ADD COLUMN "buffer_kg" REAL;
ALTER TABLE display_case ADD COLUMN "reservoir_g_kg" REAL;
ALTER TABLE display_case ADD COLUMN "rh_percent" REAL;
ALTER TABLE display_case ADD COLUMN "warmer_c" REAL NOT NULL DEFAULT 0;
ALTER TABLE placement ADD COLUMN "shelf" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE permission ADD COLUMN "credit" TEXT NOT NULL DEFAULT '';

CREATE TABLE fixture (
  id INTEGER PRIMARY KEY,
  "in_case" INTEGER NOT NULL,
  "name" TEXT NOT NULL,
  "intensity_cd" REAL NOT NULL,
  "x_mm" REAL NOT NULL,
  "y_mm" REAL NOT NULL,
  "z_mm" REAL NOT NULL,
  "dimmed" REAL NOT NULL,
  "uv_uw_lm" REAL,
  "size_mm" REAL NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE light_reading (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "in_case" INTEGER NOT NULL,
  "lux" REAL NOT NULL,
  "uv_uw_lm" REAL,
  "day" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE exposure (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "lux_hours" REAL NOT NULL,
  "text" TEXT NOT NULL,
  "day" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;

CREATE TABLE requirement (
  id INTEGER PRIMARY KEY,
  "piece" INTEGER NOT NULL,
  "lender" INTEGER NOT NULL,
  "light_class" TEXT NOT NULL,
  "lux" REAL,
  "lux_hours_year" REAL,
  "rh_low" REAL,
  "rh_high" REAL,
  "c_low" REAL,
  "c_high" REAL,
  "waiver" TEXT NOT NULL,
  "text" TEXT NOT NULL,
  "day" INTEGER NOT NULL,
  "by" INTEGER NOT NULL,
  since INTEGER NOT NULL,
  ended INTEGER
) STRICT;
