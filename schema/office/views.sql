-- Roll-ups over the tracts of an office: live trees as `oaklight estimate` counts them, and marked trees by product.
-- Means without their errors: for those, ask the tract file. Run it again after a newer program's files came in.

-- One cruise in one stand. `counts`: not replaced by another visit to the same plots on a later day.
CREATE OR REPLACE VIEW office.visit AS
WITH seen AS (
  SELECT p.tract_uid, p.stand_uid, p.cruise_uid, c.date, array_agg(p.label) AS labels,
         bool_or(p.status IN ('measured', 'empty')) AS begun
  FROM office.plot AS p JOIN office.cruise AS c ON c.uid = p.cruise_uid
  WHERE p.deleted = 0
  GROUP BY p.tract_uid, p.stand_uid, p.cruise_uid, c.date)
SELECT a.tract_uid, a.stand_uid, a.cruise_uid, NOT EXISTS (
    SELECT 1 FROM seen AS b
    WHERE b.stand_uid = a.stand_uid AND b.cruise_uid <> a.cruise_uid AND b.labels && a.labels
      AND ((a.date <> '' AND a.date < b.date AND b.begun) OR (b.date <> '' AND b.date < a.date AND NOT a.begun))
  ) AS counts
FROM seen AS a;

-- Live trees of one record of a plot as they stand for an acre of their stand.
-- Point: basal area is the factor for each stem counted (1 m2/ha is 4.356 ft2/ac), trees that over the stem's own basal
-- area (a circle, 1 ft = 12 in). Fixed plot: one over its area in acres (1 ha is 10000/4046.8564224 ac).
-- edge_count: how often a tree counts at the stand's edge.
CREATE OR REPLACE VIEW office.tree_an_acre AS
WITH sized AS (
  SELECT t.uid, t.tract_uid, t.plot_uid, p.stand_uid, t.species_fia, c.design, c.units AS cruise_units, c.factor,
         t.stems::float8 * t.edge_count AS stems,
         t.dbh_tenths / CASE t.units WHEN 'us' THEN 10.0::float8 ELSE 25.4::float8 END AS dbh_in,
         CASE WHEN t.dbh_tenths * CASE t.units WHEN 'us' THEN 254 ELSE 100 END
                   < c.small_below_tenths * CASE c.units WHEN 'us' THEN 254 ELSE 100 END
              THEN c.small_area ELSE c.plot_area END
           * CASE c.units WHEN 'us' THEN 1.0::float8 ELSE 10000 / 4046.8564224::float8 END AS plot_ac
  FROM office.tree AS t
  JOIN office.plot AS p ON p.uid = t.plot_uid
  JOIN office.cruise AS c ON c.uid = p.cruise_uid
  JOIN office.visit AS v ON v.stand_uid = p.stand_uid AND v.cruise_uid = p.cruise_uid AND v.counts
  WHERE t.deleted = 0 AND p.deleted = 0 AND t.status = 'live' AND p.status = 'measured'
    AND (c.min_dbh_tenths IS NULL OR t.dbh_tenths * CASE t.units WHEN 'us' THEN 254 ELSE 100 END
         >= c.min_dbh_tenths * CASE c.units WHEN 'us' THEN 254 ELSE 100 END)),
basal AS (SELECT *, pi() / 576 * dbh_in * dbh_in AS ba_ft2 FROM sized)
SELECT uid, tract_uid, stand_uid, plot_uid, species_fia, dbh_in,
       CASE design WHEN 'point' THEN stems * factor * CASE cruise_units WHEN 'us' THEN 1 ELSE 4.356 END
                   ELSE stems / plot_ac * ba_ft2 END AS ba_ft2_ac,
       CASE design WHEN 'point' THEN stems * factor * CASE cruise_units WHEN 'us' THEN 1 ELSE 4.356 END / ba_ft2
                   ELSE stems / plot_ac END AS trees_ac
FROM basal;

-- A stand: the mean over its plots, those without trees among them. NULL where its plots were laid out by two designs,
-- which no mean can join, and where nobody has been yet.
CREATE OR REPLACE VIEW office.stand_summary AS
WITH visited AS (
  SELECT p.stand_uid, count(*) FILTER (WHERE p.status IN ('measured', 'empty')) AS plots,
         count(*) FILTER (WHERE p.status = 'planned') AS planned,
         count(DISTINCT (c.design, c.units, c.factor, c.plot_area, c.small_area, c.small_below_tenths,
                         c.min_dbh_tenths, c.regen_area)) AS designs
  FROM office.plot AS p
  JOIN office.cruise AS c ON c.uid = p.cruise_uid
  JOIN office.visit AS v ON v.stand_uid = p.stand_uid AND v.cruise_uid = p.cruise_uid AND v.counts
  WHERE p.deleted = 0
  GROUP BY p.stand_uid),
sums AS (
  SELECT stand_uid, sum(ba_ft2_ac) AS ba, sum(trees_ac) AS trees FROM office.tree_an_acre GROUP BY stand_uid)
SELECT s.tract_uid, r.name AS tract, s.uid AS stand_uid, s.name AS stand, s.area_ac AS acres, s.goal, v.plots, v.planned,
       CASE WHEN v.designs = 1 THEN coalesce(t.ba, 0) / nullif(v.plots, 0) END AS ba_ft2_ac,
       CASE WHEN v.designs = 1 THEN coalesce(t.trees, 0) / nullif(v.plots, 0) END AS trees_ac,
       s.geom
FROM office.stand AS s
JOIN office.tract AS r ON r.uid = s.tract_uid
LEFT JOIN visited AS v ON v.stand_uid = s.uid
LEFT JOIN sums AS t ON t.stand_uid = s.uid
WHERE s.deleted = 0;

-- A tract: its stands weighed by their acres; those without a figure are left out of the mean and counted.
CREATE OR REPLACE VIEW office.tract_summary AS
SELECT tract_uid, tract, count(*) AS stands, count(*) FILTER (WHERE ba_ft2_ac IS NULL) AS stands_without_figures,
       sum(acres) AS acres, sum(plots) AS plots,
       sum(ba_ft2_ac * acres) / nullif(sum(acres) FILTER (WHERE ba_ft2_ac IS NOT NULL), 0) AS ba_ft2_ac,
       sum(trees_ac * acres) / nullif(sum(acres) FILTER (WHERE trees_ac IS NOT NULL), 0) AS trees_ac
FROM office.stand_summary
GROUP BY tract_uid, tract;

-- Trees that go, by what is made of them. A count over marks as they stand; before anybody cuts, the packet of the
-- tract says which of them need a trained feller first.
CREATE OR REPLACE VIEW office.marked_product AS
SELECT m.tract_uid, r.name AS tract, s.name AS stand, m.verdict, m.product, m.destination, count(*) AS trees
FROM office.mark AS m
JOIN office.walk_tree AS w ON w.uid = m.walk_tree_uid AND w.deleted = 0
JOIN office.stand AS s ON s.uid = w.stand_uid
JOIN office.tract AS r ON r.uid = m.tract_uid
WHERE m.deleted = 0 AND m.verdict IN ('take', 'kill_standing')
GROUP BY m.tract_uid, r.name, s.name, m.verdict, m.product, m.destination;

-- One tag on two trees of a tract, as two tablets can give it: told, for a person to settle.
CREATE OR REPLACE VIEW office.tag_used_twice AS
SELECT w.tract_uid, r.name AS tract, w.tag, count(*) AS trees
FROM office.walk_tree AS w JOIN office.tract AS r ON r.uid = w.tract_uid
WHERE w.deleted = 0
GROUP BY w.tract_uid, r.name, w.tag
HAVING count(*) > 1;
