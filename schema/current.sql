-- What all steps together make. Made by the test of this name; see README.md.

CREATE TABLE gpkg_spatial_ref_sys (
  srs_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL PRIMARY KEY,
  organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL,
  definition TEXT NOT NULL,
  description TEXT
);

CREATE TABLE gpkg_contents (
  table_name TEXT NOT NULL PRIMARY KEY,
  data_type TEXT NOT NULL,
  identifier TEXT UNIQUE,
  description TEXT DEFAULT '',
  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
  min_x DOUBLE,
  min_y DOUBLE,
  max_x DOUBLE,
  max_y DOUBLE,
  srs_id INTEGER,
  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
);

CREATE TABLE gpkg_geometry_columns (
  table_name TEXT NOT NULL,
  column_name TEXT NOT NULL,
  geometry_type_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL,
  z TINYINT NOT NULL,
  m TINYINT NOT NULL,
  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents (table_name),
  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
);

CREATE TABLE meta (
  key TEXT NOT NULL PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;

CREATE TABLE tract (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  geom POINT CHECK (geom IS NULL OR (typeof(geom) = 'blob' AND substr(geom, 1, 2) = x'4750')),
  uid TEXT NOT NULL UNIQUE CHECK (typeof(uid) = 'text' AND length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at DATETIME NOT NULL CHECK (typeof(changed_at) = 'text' AND length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (typeof(row_crc) = 'integer' AND row_crc BETWEEN 0 AND 4294967295),
  name TEXT NOT NULL CHECK (typeof(name) = 'text'),
  state TEXT NOT NULL CHECK (typeof(state) = 'text'),
  county TEXT NOT NULL CHECK (typeof(county) = 'text'),
  contact TEXT NOT NULL CHECK (typeof(contact) = 'text'),
  directions TEXT NOT NULL CHECK (typeof(directions) = 'text'),
  meeting_place TEXT NOT NULL CHECK (typeof(meeting_place) = 'text'),
  phone_place TEXT NOT NULL CHECK (typeof(phone_place) = 'text'),
  demo INTEGER NOT NULL CHECK (demo IN (0, 1))
);

CREATE TABLE stand (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  geom POLYGON CHECK (geom IS NULL OR (typeof(geom) = 'blob' AND substr(geom, 1, 2) = x'4750')),
  uid TEXT NOT NULL UNIQUE CHECK (typeof(uid) = 'text' AND length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at DATETIME NOT NULL CHECK (typeof(changed_at) = 'text' AND length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (typeof(row_crc) = 'integer' AND row_crc BETWEEN 0 AND 4294967295),
  name TEXT NOT NULL CHECK (typeof(name) = 'text' AND name <> ''),
  area_ac REAL NOT NULL CHECK (typeof(area_ac) = 'real' AND area_ac >= 0),
  walked_ac REAL CHECK (walked_ac IS NULL OR (typeof(walked_ac) = 'real' AND walked_ac >= 0)),
  goal TEXT NOT NULL CHECK (goal IN ('mast', 'timber', 'look', 'mixed')),
  age_years INTEGER CHECK (age_years IS NULL OR (typeof(age_years) = 'integer' AND age_years >= 0)),
  site_index_ft REAL CHECK (site_index_ft IS NULL OR (typeof(site_index_ft) = 'real' AND site_index_ft > 0))
);

CREATE UNIQUE INDEX stand_name_live ON stand (name) WHERE deleted = 0;

CREATE TABLE cruise (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  name TEXT NOT NULL,
  design TEXT NOT NULL CHECK (design IN ('point', 'fixed')),
  units TEXT NOT NULL CHECK (units IN ('us', 'metric')),
  factor REAL CHECK (factor > 0),
  plot_area REAL CHECK (plot_area > 0),
  small_area REAL CHECK (small_area > 0),
  small_below_tenths INTEGER CHECK (small_below_tenths BETWEEN 1 AND CASE units WHEN 'us' THEN 2000 ELSE 5080 END),
  min_dbh_tenths INTEGER CHECK (min_dbh_tenths BETWEEN 1 AND CASE units WHEN 'us' THEN 2000 ELSE 5080 END),
  regen_area REAL CHECK (regen_area > 0),
  crew TEXT NOT NULL,
  date TEXT NOT NULL,
  CHECK (CASE design WHEN 'point' THEN factor IS NOT NULL AND plot_area IS NULL AND small_area IS NULL
                                       AND small_below_tenths IS NULL
                     ELSE factor IS NULL AND plot_area IS NOT NULL END)
) STRICT;

CREATE TABLE plot (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  geom POINT CHECK (geom IS NULL OR (typeof(geom) = 'blob' AND substr(geom, 1, 2) = x'4750')),
  uid TEXT NOT NULL UNIQUE CHECK (typeof(uid) = 'text' AND length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at DATETIME NOT NULL CHECK (typeof(changed_at) = 'text' AND length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (typeof(row_crc) = 'integer' AND row_crc BETWEEN 0 AND 4294967295),
  stand_uid TEXT NOT NULL REFERENCES stand (uid) DEFERRABLE INITIALLY DEFERRED CHECK (typeof(stand_uid) = 'text'),
  cruise_uid TEXT NOT NULL REFERENCES cruise (uid) DEFERRABLE INITIALLY DEFERRED CHECK (typeof(cruise_uid) = 'text'),
  label TEXT NOT NULL CHECK (typeof(label) = 'text' AND label <> ''),
  status TEXT NOT NULL CHECK (status IN ('planned', 'measured', 'empty', 'skipped')),
  skip_reason TEXT NOT NULL CHECK (typeof(skip_reason) = 'text'),
  accuracy_m REAL CHECK (accuracy_m IS NULL OR (typeof(accuracy_m) = 'real' AND accuracy_m >= 0)),
  slope_pct REAL CHECK (slope_pct IS NULL OR typeof(slope_pct) = 'real'),
  note TEXT NOT NULL CHECK (typeof(note) = 'text')
);

CREATE INDEX plot_stand ON plot (stand_uid);

CREATE UNIQUE INDEX plot_label_live ON plot (cruise_uid, stand_uid, label) WHERE deleted = 0;

CREATE INDEX plot_cruise ON plot (cruise_uid);

CREATE TABLE tree (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  plot_uid TEXT NOT NULL REFERENCES plot (uid) DEFERRABLE INITIALLY DEFERRED,
  units TEXT NOT NULL CHECK (units IN ('us', 'metric')),
  species_fia INTEGER NOT NULL CHECK (species_fia > 0),
  dbh_tenths INTEGER NOT NULL CHECK (dbh_tenths BETWEEN 1 AND CASE units WHEN 'us' THEN 2000 ELSE 5080 END),
  status TEXT NOT NULL CHECK (status IN ('live', 'dead')),
  crown_class TEXT CHECK (crown_class IN ('open_grown', 'dominant', 'codominant', 'intermediate', 'overtopped')),
  live_crown_pct REAL CHECK (live_crown_pct BETWEEN 0 AND 100),
  dieback_pct REAL CHECK (dieback_pct BETWEEN 0 AND 100),
  height_hundredths INTEGER CHECK (height_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END),
  half_logs INTEGER CHECK (half_logs >= 0),
  conditions TEXT NOT NULL,
  note TEXT NOT NULL,
  stems INTEGER NOT NULL CHECK (stems >= 1),
  edge_count INTEGER NOT NULL CHECK (edge_count IN (1, 2, 4)),
  azimuth_tenths INTEGER CHECK (azimuth_tenths BETWEEN 0 AND 3600),
  distance_hundredths INTEGER CHECK (distance_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END),
  tag TEXT NOT NULL
) STRICT;

CREATE INDEX tree_plot ON tree (plot_uid);

CREATE TABLE regen (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  plot_uid TEXT NOT NULL REFERENCES plot (uid) DEFERRABLE INITIALLY DEFERRED,
  species_fia INTEGER NOT NULL CHECK (species_fia > 0),
  height_class TEXT NOT NULL CHECK (height_class IN ('under_1_ft', 'from_1_to_4_5_ft', 'over_4_5_ft')),
  count INTEGER NOT NULL CHECK (count >= 0)
) STRICT;

CREATE INDEX regen_plot ON regen (plot_uid);

CREATE TABLE walk_tree (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  geom POINT CHECK (geom IS NULL OR (typeof(geom) = 'blob' AND substr(geom, 1, 2) = x'4750')),
  uid TEXT NOT NULL UNIQUE CHECK (typeof(uid) = 'text' AND length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at DATETIME NOT NULL CHECK (typeof(changed_at) = 'text' AND length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (typeof(row_crc) = 'integer' AND row_crc BETWEEN 0 AND 4294967295),
  stand_uid TEXT NOT NULL REFERENCES stand (uid) DEFERRABLE INITIALLY DEFERRED CHECK (typeof(stand_uid) = 'text'),
  tag TEXT NOT NULL CHECK (typeof(tag) = 'text' AND tag <> ''),
  units TEXT NOT NULL CHECK (units IN ('us', 'metric')),
  species_fia INTEGER NOT NULL CHECK (typeof(species_fia) = 'integer' AND species_fia > 0),
  dbh_tenths INTEGER NOT NULL CHECK (typeof(dbh_tenths) = 'integer'
    AND dbh_tenths BETWEEN 1 AND CASE units WHEN 'us' THEN 2000 ELSE 5080 END),
  status TEXT NOT NULL CHECK (status IN ('live', 'dead')),
  crown_class TEXT CHECK (crown_class IN ('open_grown', 'dominant', 'codominant', 'intermediate', 'overtopped')),
  live_crown_pct REAL CHECK (live_crown_pct IS NULL
    OR (typeof(live_crown_pct) = 'real' AND live_crown_pct BETWEEN 0 AND 100)),
  dieback_pct REAL CHECK (dieback_pct IS NULL OR (typeof(dieback_pct) = 'real' AND dieback_pct BETWEEN 0 AND 100)),
  height_hundredths INTEGER CHECK (height_hundredths IS NULL OR (typeof(height_hundredths) = 'integer'
    AND height_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END)),
  half_logs INTEGER CHECK (half_logs IS NULL OR (typeof(half_logs) = 'integer' AND half_logs >= 0)),
  conditions TEXT NOT NULL CHECK (typeof(conditions) = 'text'),
  note TEXT NOT NULL CHECK (typeof(note) = 'text'),
  crop INTEGER NOT NULL CHECK (crop IN (0, 1)),
  looked_sides TEXT NOT NULL CHECK (typeof(looked_sides) = 'text'),
  slope_pct REAL CHECK (slope_pct IS NULL OR typeof(slope_pct) = 'real')
, crown_n_hundredths INTEGER
  CHECK (crown_n_hundredths IS NULL OR (typeof(crown_n_hundredths) = 'integer'
    AND crown_n_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END)), crown_e_hundredths INTEGER
  CHECK (crown_e_hundredths IS NULL OR (typeof(crown_e_hundredths) = 'integer'
    AND crown_e_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END)), crown_s_hundredths INTEGER
  CHECK (crown_s_hundredths IS NULL OR (typeof(crown_s_hundredths) = 'integer'
    AND crown_s_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END)), crown_w_hundredths INTEGER
  CHECK (crown_w_hundredths IS NULL OR (typeof(crown_w_hundredths) = 'integer'
    AND crown_w_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END)));

CREATE INDEX walk_tree_stand ON walk_tree (stand_uid);

CREATE UNIQUE INDEX walk_tree_tag_live ON walk_tree (tag) WHERE deleted = 0;

CREATE TABLE contact (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  crop_uid TEXT NOT NULL REFERENCES walk_tree (uid) DEFERRABLE INITIALLY DEFERRED,
  neighbour_uid TEXT NOT NULL REFERENCES walk_tree (uid) DEFERRABLE INITIALLY DEFERRED,
  sides TEXT NOT NULL,
  seen TEXT NOT NULL CHECK (seen IN ('touches', 'over', 'below', 'none', 'not_looked')),
  units TEXT CHECK (units IN ('us', 'metric')),
  distance_hundredths INTEGER CHECK (distance_hundredths BETWEEN 0 AND CASE units WHEN 'us' THEN 100000 ELSE 30500 END),
  azimuth_tenths INTEGER CHECK (azimuth_tenths BETWEEN 0 AND 3600),
  CHECK (crop_uid <> neighbour_uid),
  CHECK ((units IS NULL) = (distance_hundredths IS NULL))
) STRICT;

CREATE INDEX contact_crop ON contact (crop_uid);

CREATE INDEX contact_neighbour ON contact (neighbour_uid);

CREATE TABLE mark (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  walk_tree_uid TEXT NOT NULL REFERENCES walk_tree (uid) DEFERRABLE INITIALLY DEFERRED,
  verdict TEXT NOT NULL CHECK (verdict IN ('take', 'keep', 'kill_standing', 'look_again')),
  method TEXT NOT NULL CHECK (method IN ('none', 'fell', 'machine_fell', 'girdle')),
  product TEXT NOT NULL CHECK (product IN ('none', 'sawlog', 'pulpwood', 'firewood')),
  destination TEXT CHECK (destination IN ('logger', 'firewood')),
  reason TEXT NOT NULL,
  rules TEXT NOT NULL,
  by_hand INTEGER NOT NULL CHECK (by_hand IN (0, 1)),
  rule_version TEXT NOT NULL
) STRICT;

CREATE INDEX mark_walk_tree ON mark (walk_tree_uid);

CREATE UNIQUE INDEX mark_tree_live ON mark (walk_tree_uid) WHERE deleted = 0;

CREATE TABLE map_line (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  geom LINESTRING CHECK (geom IS NULL OR (typeof(geom) = 'blob' AND substr(geom, 1, 2) = x'4750')),
  uid TEXT NOT NULL UNIQUE CHECK (typeof(uid) = 'text' AND length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at DATETIME NOT NULL CHECK (typeof(changed_at) = 'text' AND length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (typeof(row_crc) = 'integer' AND row_crc BETWEEN 0 AND 4294967295),
  kind TEXT NOT NULL CHECK (kind IN ('stream', 'neighbour_line', 'road', 'trail', 'power_line')),
  name TEXT NOT NULL CHECK (typeof(name) = 'text'),
  confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1))
);

CREATE TABLE form_file (
  fid INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  deleted INTEGER NOT NULL DEFAULT 0 CHECK (deleted IN (0, 1)),
  changed_at TEXT NOT NULL CHECK (length(changed_at) = 24),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  path TEXT NOT NULL UNIQUE,
  version TEXT,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  built_in_sha256 TEXT NOT NULL CHECK (length(built_in_sha256) = 64),
  text TEXT NOT NULL
) STRICT;

CREATE VIEW tree_point AS
  SELECT t.fid AS fid, p.geom AS geom, t.uid AS uid, s.name AS stand, c.name AS cruise, p.label AS plot,
         t.tag AS tag, t.species_fia AS species_fia, t.units AS units, t.dbh_tenths AS dbh_tenths,
         t.status AS status, t.crown_class AS crown_class, t.stems AS stems, t.edge_count AS edge_count,
         t.conditions AS conditions, t.note AS note
  FROM tree AS t
  JOIN plot AS p ON p.uid = t.plot_uid
  JOIN stand AS s ON s.uid = p.stand_uid
  JOIN cruise AS c ON c.uid = p.cruise_uid
  WHERE t.deleted = 0;

CREATE TABLE user_action (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  at_utc TEXT NOT NULL CHECK (length(at_utc) = 24),
  device TEXT NOT NULL,
  label TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('do', 'undo', 'redo')),
  target_uid TEXT REFERENCES user_action (uid),
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295),
  CHECK ((kind = 'do') = (target_uid IS NULL))
) STRICT;

CREATE INDEX user_action_target ON user_action (target_uid) WHERE target_uid IS NOT NULL;

CREATE TABLE change (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  action_uid TEXT NOT NULL REFERENCES user_action (uid) DEFERRABLE INITIALLY DEFERRED,
  table_name TEXT NOT NULL,
  row_uid TEXT NOT NULL CHECK (length(row_uid) = 36),
  before_json TEXT,
  after_json TEXT NOT NULL,
  row_crc INTEGER NOT NULL CHECK (row_crc BETWEEN 0 AND 4294967295)
) STRICT;

CREATE INDEX change_action ON change (action_uid);

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
