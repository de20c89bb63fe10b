-- The stand table of a tract file of points of 10 ft2/ac: basal area and trees an acre by stand, species and
-- 2-inch class, each with its standard error over the points of the stand.
WITH on_point AS (
  SELECT p.stand_uid AS stand, t.species_fia AS species, 2 * ((t.dbh_tenths + 10) / 20) AS class, t.plot_uid,
         sum(10.0 * t.stems * t.edge_count) AS ba,
         sum(10.0 * t.stems * t.edge_count * 576.0 / (3.141592653589793 * t.dbh_tenths * t.dbh_tenths / 100.0)) AS trees
  FROM tree AS t JOIN plot AS p ON p.uid = t.plot_uid
  WHERE t.deleted = 0 AND t.status = 'live'
  GROUP BY 1, 2, 3, 4
), points AS (
  SELECT stand_uid AS stand, count(*) AS n FROM plot
  WHERE deleted = 0 AND status IN ('measured', 'empty') GROUP BY 1
)
SELECT s.name, species, class,
       sum(ba) / n, sqrt(max(0, (sum(ba * ba) - sum(ba) * sum(ba) / n) / (n - 1) / n)),
       sum(trees) / n, sqrt(max(0, (sum(trees * trees) - sum(trees) * sum(trees) / n) / (n - 1) / n))
FROM on_point JOIN points USING (stand) JOIN stand AS s ON s.uid = stand
GROUP BY stand, species, class ORDER BY 1, 2, 3;
