-- Many tracts in one PostgreSQL database: how the tables of one tract file, put into the schema `incoming` by
-- ogr2ogr, join those of the others in the schema `office`. Run it as often as you like. README.md has the commands.

CREATE EXTENSION IF NOT EXISTS postgis;
CREATE SCHEMA IF NOT EXISTS office;

-- One table: made like the incoming one when it is new, widened by columns that a newer program added. A row is known
-- by its uid; of two states of one row the one that was changed later stays, whichever file came first.
CREATE OR REPLACE PROCEDURE office.take_table(wanted text, tract text) LANGUAGE plpgsql AS $$
DECLARE
  col record;
  names text := '';
  new_values text := '';
BEGIN
  IF to_regclass(format('incoming.%I', wanted)) IS NULL THEN
    RETURN;
  END IF;
  EXECUTE format('CREATE TABLE IF NOT EXISTS office.%I (tract_uid text NOT NULL, uid text PRIMARY KEY)', wanted);
  -- fid is a key inside one file and means nothing in another; row_crc belongs to the row as the file has it.
  FOR col IN
    SELECT a.attname AS name, format_type(a.atttypid, a.atttypmod) AS type FROM pg_attribute AS a
    WHERE a.attrelid = format('incoming.%I', wanted)::regclass AND a.attnum > 0 AND NOT a.attisdropped
      AND a.attname NOT IN ('fid', 'uid', 'row_crc')
    ORDER BY a.attnum
  LOOP
    EXECUTE format('ALTER TABLE office.%I ADD COLUMN IF NOT EXISTS %I %s', wanted, col.name, col.type);
    names := names || format(', %I', col.name);
    new_values := new_values || format(', %1$I = EXCLUDED.%1$I', col.name);
  END LOOP;
  EXECUTE format(
    'INSERT INTO office.%1$I AS known (tract_uid, uid%2$s) SELECT %4$L, uid%2$s FROM incoming.%1$I
     ON CONFLICT (uid) DO UPDATE SET tract_uid = EXCLUDED.tract_uid%3$s
     WHERE known.changed_at < EXCLUDED.changed_at', wanted, names, new_values, tract);
END
$$;

-- A whole tract file. All of it or nothing: psql runs the call as one transaction.
CREATE OR REPLACE PROCEDURE office.take() LANGUAGE plpgsql AS $$
DECLARE
  tract text;
  wanted text;
BEGIN
  SELECT uid INTO STRICT tract FROM incoming.tract;
  FOREACH wanted IN ARRAY ARRAY['tract', 'stand', 'cruise', 'plot', 'tree', 'regen', 'walk_tree', 'contact', 'mark',
                                'map_line', 'stump', 'acorn_count', 'acorn_year']
  LOOP
    CALL office.take_table(wanted, tract);
  END LOOP;
END
$$;
