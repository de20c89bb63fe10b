-- 0005: counts of acorns by tree and autumn, the crop of a group of oaks by autumn, and four measured crown radii.
-- min_reader: 5    (a program that knows no counts would remove a tree and leave its counts behind)
-- loses: nothing

-- How far the crown reaches from the stem, level; NULL where nobody taped it, 0 where it has no crown on that side.
ALTER TABLE walk_tree ADD COLUMN crown_n_hundredths INTEGER
  CHECK (crown_n_hundredths IS NULL OR (typeof(crown_n_hundredths) = 'integer'
    AND crown_n_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END));
ALTER TABLE walk_tree ADD COLUMN crown_e_hundredths INTEGER
  CHECK (crown_e_hundredths IS NULL OR (typeof(crown_e_hundredths) = 'integer'
    AND crown_e_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END));
ALTER TABLE walk_tree ADD COLUMN crown_s_hundredths INTEGER
  CHECK (crown_s_hundredths IS NULL OR (typeof(crown_s_hundredths) = 'integer'
    AND crown_s_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END));
ALTER TABLE walk_tree ADD COLUMN crown_w_hundredths INTEGER
  CHECK (crown_w_hundredths IS NULL OR (typeof(crown_w_hundredths) = 'integer'
    AND crown_w_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END));

CREATE TABLE acorn_count (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  walk_tree_uid TEXT NOT NULL REFERENCES walk_tree (uid) DEFERRABLE INITIALLY DEFERRED,
  year INTEGER NOT NULL CHECK (year BETWEEN 1900 AND 2200),
  date TEXT NOT NULL,
  method TEXT NOT NULL CHECK (method IN ('branch_tips', 'timed')),
  per_tip REAL CHECK (per_tip >= 0),
  tips INTEGER CHECK (tips >= 1),
  n30 INTEGER CHECK (n30 >= 0),
  note TEXT NOT NULL,
  CHECK (CASE method WHEN 'branch_tips' THEN per_tip IS NOT NULL AND n30 IS NULL
                     ELSE per_tip IS NULL AND tips IS NULL AND n30 IS NOT NULL END)
) STRICT;
CREATE INDEX acorn_count_walk_tree ON acorn_count (walk_tree_uid);
-- A tree counted twice in one autumn would weigh twice: the database itself refuses that.
CREATE UNIQUE INDEX acorn_count_live ON acorn_count (walk_tree_uid, year, method) WHERE deleted = 0;

CREATE TABLE acorn_year (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  oak_group TEXT NOT NULL CHECK (oak_group IN ('white', 'red')),
  year INTEGER NOT NULL CHECK (year BETWEEN 1900 AND 2200),
  crop TEXT NOT NULL CHECK (crop IN ('poor', 'fair', 'good', 'bumper')),
  source TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX acorn_year_live ON acorn_year (oak_group, year) WHERE deleted = 0;

INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id) VALUES
  ('acorn_count', 'attributes', 'acorn_count', 'Acorns counted by tree and autumn', NULL),
  ('acorn_year', 'attributes', 'acorn_year', 'How a group of oaks bore by autumn', NULL);
