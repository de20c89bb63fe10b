-- A tract file of step 2, made by make.py 2. Never changed: it stands for files that are out.
PRAGMA application_id = 1196444487;
PRAGMA user_version = 10300;
PRAGMA foreign_keys = OFF;
BEGIN TRANSACTION;
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
INSERT INTO "contact" VALUES(1,'019df319-6120-700d-8000-00000000000d',0,'2026-05-04T13:07:00.000Z',4170119794,'019df319-6120-700b-8000-00000000000b','019df319-6120-700c-8000-00000000000c','N|W','touches','metric',521,0);
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
INSERT INTO "cruise" VALUES(1,'019df319-6120-7004-8000-000000000004',0,'2026-05-04T13:07:00.000Z',679392654,'Spring','point','us',10.0,NULL,NULL,NULL,NULL,NULL,'O''Neil "Red" | 100% ; -- \ 	
🌳 עץ','2026-05-04');
INSERT INTO "cruise" VALUES(2,'019df319-6120-7005-8000-000000000005',0,'2026-05-04T13:07:00.000Z',2940463449,'Fixed','fixed','metric',NULL,0.04,0.004,115,25,0.0004,'','');
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
INSERT INTO "form_file" VALUES(1,'019df319-6120-7010-8000-000000000010',0,'2026-05-04T13:07:00.000Z',2157987892,'tally.form.json','1 + ours','0000000000000000000000000000000000000000000000000000000000000000','1111111111111111111111111111111111111111111111111111111111111111','{"version": "1 + ours"}');
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
INSERT INTO "gpkg_contents" VALUES('tract','features','tract','The tract, at its landing','2026-05-04T13:07:00.000Z',-81.095,37.905,-81.095,37.905,4326);
INSERT INTO "gpkg_contents" VALUES('stand','features','stand','Stand boundaries','2026-05-04T13:07:00.000Z',-81.1,37.9,-81.09,37.91,4326);
INSERT INTO "gpkg_contents" VALUES('plot','features','plot','Plot centres','2026-05-04T13:07:00.000Z',-81.095,37.904,-81.095,37.904,4326);
INSERT INTO "gpkg_contents" VALUES('map_line','features','map_line','Streams, property lines, roads, trails, power lines','2026-05-04T13:07:00.000Z',-81.1,37.9,-81.09,37.91,4326);
INSERT INTO "gpkg_contents" VALUES('walk_tree','features','walk_tree','Trees met on the marking walk','2026-05-04T13:07:00.000Z',-81.096,37.906,-81.096,37.906,4326);
INSERT INTO "gpkg_contents" VALUES('tree_point','features','tree_point','Trees of the cruises, at their plot centres','2026-05-04T13:07:00.000Z',-81.095,37.904,-81.095,37.904,4326);
INSERT INTO "gpkg_contents" VALUES('cruise','attributes','cruise','Cruises and their design','2026-05-04T13:07:00.000Z',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "gpkg_contents" VALUES('tree','attributes','tree','Trees tallied on plots','2026-05-04T13:07:00.000Z',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "gpkg_contents" VALUES('regen','attributes','regen','Regeneration counts','2026-05-04T13:07:00.000Z',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "gpkg_contents" VALUES('contact','attributes','contact','Neighbours of crop trees','2026-05-04T13:07:00.000Z',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "gpkg_contents" VALUES('mark','attributes','mark','Verdicts of the marking walk','2026-05-04T13:07:00.000Z',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "gpkg_geometry_columns" VALUES('tract','geom','POINT',4326,0,0);
INSERT INTO "gpkg_geometry_columns" VALUES('stand','geom','POLYGON',4326,0,0);
INSERT INTO "gpkg_geometry_columns" VALUES('plot','geom','POINT',4326,0,0);
INSERT INTO "gpkg_geometry_columns" VALUES('map_line','geom','LINESTRING',4326,0,0);
INSERT INTO "gpkg_geometry_columns" VALUES('walk_tree','geom','POINT',4326,0,0);
INSERT INTO "gpkg_geometry_columns" VALUES('tree_point','geom','POINT',4326,0,0);
CREATE TABLE gpkg_spatial_ref_sys (
  srs_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL PRIMARY KEY,
  organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL,
  definition TEXT NOT NULL,
  description TEXT
);
INSERT INTO "gpkg_spatial_ref_sys" VALUES('Undefined Cartesian SRS',-1,'NONE',-1,'undefined','undefined Cartesian coordinate reference system');
INSERT INTO "gpkg_spatial_ref_sys" VALUES('Undefined geographic SRS',0,'NONE',0,'undefined','undefined geographic coordinate reference system');
INSERT INTO "gpkg_spatial_ref_sys" VALUES('WGS 84 geodetic',4326,'EPSG',4326,'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AXIS["Latitude",NORTH],AXIS["Longitude",EAST],AUTHORITY["EPSG","4326"]]','longitude/latitude in decimal degrees on WGS 84');
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
INSERT INTO "map_line" VALUES(1,X'47500003E610000066666666664654C0F6285C8FC24554C03333333333F3424014AE47E17AF4424001020000000300000066666666664654C03333333333F34240F6285C8FC24554C03333333333F34240F6285C8FC24554C014AE47E17AF44240','019df319-6120-700f-8000-00000000000f',0,'2026-05-04T13:07:00.000Z',3492031094,'stream','O''Neil "Red" | 100% ; -- \ 	
🌳 עץ',1);
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
INSERT INTO "mark" VALUES(1,'019df319-6120-700e-8000-00000000000e',0,'2026-05-04T13:07:00.000Z',1472175780,'019df319-6120-700c-8000-00000000000c','kill_standing','girdle','firewood','logger','O''Neil "Red" | 100% ; -- \ 	
🌳 עץ','R1.50|R4.02',1,'2026.1');
CREATE TABLE meta (
  key TEXT NOT NULL PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;
INSERT INTO "meta" VALUES('format','oaklight tract file');
INSERT INTO "meta" VALUES('created_at','2026-05-04T13:07:00.000Z');
INSERT INTO "meta" VALUES('step','2');
INSERT INTO "meta" VALUES('min_reader','2');
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
INSERT INTO "plot" VALUES(1,X'47500001E61000000101000000AE47E17A144654C0C1CAA145B6F34240','019df319-6120-7006-8000-000000000006',0,'2026-05-04T13:07:00.000Z',3055115953,'019df319-6120-7002-8000-000000000002','019df319-6120-7004-8000-000000000004','7b','measured','',4.6,-35.5,'O''Neil "Red" | 100% ; -- \ 	
🌳 עץ');
INSERT INTO "plot" VALUES(2,NULL,'019df319-6120-7007-8000-000000000007',0,'2026-05-04T13:07:00.000Z',2598034902,'019df319-6120-7003-8000-000000000003','019df319-6120-7005-8000-000000000005','1','skipped','bees',NULL,NULL,'');
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
INSERT INTO "regen" VALUES(1,'019df319-6120-700a-8000-00000000000a',0,'2026-05-04T13:07:00.000Z',1278553040,'019df319-6120-7006-8000-000000000006',802,'under_1_ft',0);
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
INSERT INTO "stand" VALUES(1,X'47500003E610000066666666664654C0F6285C8FC24554C03333333333F3424014AE47E17AF442400103000000010000000500000066666666664654C03333333333F34240F6285C8FC24554C03333333333F34240F6285C8FC24554C014AE47E17AF4424066666666664654C014AE47E17AF4424066666666664654C03333333333F34240','019df319-6120-7002-8000-000000000002',0,'2026-05-04T13:07:00.000Z',2913937061,'Cove',41.3,12.0,'mast',85,70.0);
INSERT INTO "stand" VALUES(2,NULL,'019df319-6120-7003-8000-000000000003',0,'2026-05-04T13:07:00.000Z',2430657300,'Ridge',0.0,NULL,'mixed',NULL,NULL);
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
INSERT INTO "tract" VALUES(1,X'47500001E61000000101000000AE47E17A144654C0A4703D0AD7F34240','019df319-6120-7001-8000-000000000001',0,'2026-05-04T13:07:00.000Z',276811976,'Cold Hollow','WV','Nowhere','O''Neil "Red" | 100% ; -- \ 	
🌳 עץ','','gate','',1);
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
INSERT INTO "tree" VALUES(1,'019df319-6120-7008-8000-000000000008',0,'2026-05-04T13:07:00.000Z',551105297,'019df319-6120-7006-8000-000000000006','us',833,123,'live','codominant',37.5,0.0,7125,5,'den|conk','O''Neil "Red" | 100% ; -- \ 	
🌳 עץ',3,4,1234,3307,'T 1');
INSERT INTO "tree" VALUES(2,'019df319-6120-7009-8000-000000000009',1,'2026-05-05T08:30:15.250Z',1381194215,'019df319-6120-7006-8000-000000000006','metric',802,312,'dead',NULL,NULL,NULL,NULL,NULL,'','',1,1,NULL,NULL,'');
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
);
INSERT INTO "walk_tree" VALUES(1,X'47500001E61000000101000000A01A2FDD244654C08716D9CEF7F34240','019df319-6120-700b-8000-00000000000b',0,'2026-05-04T13:07:00.000Z',2271683202,'019df319-6120-7002-8000-000000000002','A1','us',833,123,'live','codominant',37.5,0.0,7125,5,'den|conk','O''Neil "Red" | 100% ; -- \ 	
🌳 עץ',1,'N|E|S|W',12.5);
INSERT INTO "walk_tree" VALUES(2,NULL,'019df319-6120-700c-8000-00000000000c',0,'2026-05-04T13:07:00.000Z',2161361529,'019df319-6120-7002-8000-000000000002','A2','metric',802,312,'dead',NULL,NULL,NULL,NULL,NULL,'','',0,'',NULL);
CREATE UNIQUE INDEX stand_name_live ON stand (name) WHERE deleted = 0;
CREATE INDEX plot_stand ON plot (stand_uid);
CREATE UNIQUE INDEX plot_label_live ON plot (cruise_uid, stand_uid, label) WHERE deleted = 0;
CREATE INDEX plot_cruise ON plot (cruise_uid);
CREATE INDEX tree_plot ON tree (plot_uid);
CREATE INDEX regen_plot ON regen (plot_uid);
CREATE INDEX walk_tree_stand ON walk_tree (stand_uid);
CREATE UNIQUE INDEX walk_tree_tag_live ON walk_tree (tag) WHERE deleted = 0;
CREATE INDEX contact_crop ON contact (crop_uid);
CREATE INDEX contact_neighbour ON contact (neighbour_uid);
CREATE INDEX mark_walk_tree ON mark (walk_tree_uid);
CREATE UNIQUE INDEX mark_tree_live ON mark (walk_tree_uid) WHERE deleted = 0;
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
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('tract',1);
INSERT INTO "sqlite_sequence" VALUES('stand',2);
INSERT INTO "sqlite_sequence" VALUES('cruise',2);
INSERT INTO "sqlite_sequence" VALUES('plot',2);
INSERT INTO "sqlite_sequence" VALUES('tree',2);
INSERT INTO "sqlite_sequence" VALUES('regen',1);
INSERT INTO "sqlite_sequence" VALUES('walk_tree',2);
INSERT INTO "sqlite_sequence" VALUES('contact',1);
INSERT INTO "sqlite_sequence" VALUES('mark',1);
INSERT INTO "sqlite_sequence" VALUES('map_line',1);
INSERT INTO "sqlite_sequence" VALUES('form_file',1);
COMMIT;
