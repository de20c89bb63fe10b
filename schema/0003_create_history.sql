-- 0003: what was done to the file, by whom and when; rows are only ever added.
-- min_reader: 3    (a program that does not write history must not write records)
-- loses: nothing

-- One row for each thing that a person did, including each undo and redo. No GIS layer.
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

-- One row for each record that the action changed, with the record before (NULL: it was new) and after.
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
