-- 0004: what was found after the cut: stumps, trees still standing, hurt leave trees.
-- min_reader: 4    (a program that does not know stumps would leave them pointing at trees it removes)
-- loses: nothing

-- One row for each thing that somebody walked up to and looked at. A tree of the walk may have several: a tag
-- that turns up twice is a finding of its own.
CREATE TABLE stump (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  geom POINT CHECK (geom IS NULL OR (typeof(geom) = 'blob' AND substr(geom, 1, 2) = x'4750')),
  uid TEXT NOT NULL UNIQUE CHECK (typeof(uid) = 'text' AND length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at DATETIME NOT NULL CHECK (typeof(changed_at) = 'text' AND length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (typeof(row_crc) = 'integer' AND row_crc BETWEEN 0 AND 4294967295),
  walk_tree_uid TEXT REFERENCES walk_tree (uid) DEFERRABLE INITIALLY DEFERRED
    CHECK (walk_tree_uid IS NULL OR typeof(walk_tree_uid) = 'text'),
  stand_uid TEXT REFERENCES stand (uid) DEFERRABLE INITIALLY DEFERRED
    CHECK (stand_uid IS NULL OR typeof(stand_uid) = 'text'),
  finding TEXT NOT NULL CHECK (finding IN ('as_marked', 'standing', 'hung', 'not_marked', 'hurt')),
  units TEXT CHECK (units IN ('us', 'metric')),
  species_fia INTEGER CHECK (species_fia IS NULL OR (typeof(species_fia) = 'integer' AND species_fia > 0)),
  over_bark_tenths INTEGER CHECK (over_bark_tenths IS NULL OR (typeof(over_bark_tenths) = 'integer'
    AND over_bark_tenths BETWEEN 1 AND CASE units WHEN 'us' THEN 2000 ELSE 5080 END)),
  under_bark_tenths INTEGER CHECK (under_bark_tenths IS NULL OR (typeof(under_bark_tenths) = 'integer'
    AND under_bark_tenths BETWEEN 1 AND CASE units WHEN 'us' THEN 2000 ELSE 5080 END)),
  height_hundredths INTEGER CHECK (height_hundredths IS NULL OR (typeof(height_hundredths) = 'integer'
    AND height_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END)),
  wound TEXT CHECK (wound IN ('small', 'medium', 'large', 'broken')),
  wound_place TEXT CHECK (wound_place IN ('stem', 'root', 'crown')),
  seen_on TEXT NOT NULL CHECK (typeof(seen_on) = 'text'),
  note TEXT NOT NULL CHECK (typeof(note) = 'text'),
  CHECK ((units IS NULL) = (over_bark_tenths IS NULL AND under_bark_tenths IS NULL AND height_hundredths IS NULL)),
  CHECK (walk_tree_uid IS NOT NULL OR finding IN ('not_marked', 'hurt')),
  CHECK (finding = 'hurt' OR (wound IS NULL AND wound_place IS NULL))
);
CREATE INDEX stump_walk_tree ON stump (walk_tree_uid);
CREATE INDEX stump_stand ON stump (stand_uid);

INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id) VALUES
  ('stump', 'features', 'stump', 'What was found after the cut', 4326);

INSERT INTO gpkg_geometry_columns (table_name, column_name, geometry_type_name, srs_id, z, m) VALUES
  ('stump', 'geom', 'POINT', 4326, 0, 0);
