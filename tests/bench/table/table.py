"""The same stand table as group.sql with pandas: table.py FILE"""
import math
import sqlite3
import sys

import pandas

db = sqlite3.connect(f"file:{sys.argv[1]}?mode=ro", uri=True)
trees = pandas.read_sql("SELECT plot_uid, species_fia, dbh_tenths, stems * edge_count AS times FROM tree"
                        " WHERE deleted = 0 AND status = 'live'", db)
plots = pandas.read_sql("SELECT p.uid AS plot_uid, s.name AS stand FROM plot AS p JOIN stand AS s ON s.uid = p.stand_uid"
                        " WHERE p.deleted = 0 AND p.status IN ('measured', 'empty')", db)
trees["class"] = 2 * ((trees["dbh_tenths"] + 10) // 20)
trees["ba"] = 10.0 * trees["times"]
trees["trees"] = trees["ba"] * 576.0 / (math.pi * (trees["dbh_tenths"] / 10.0) ** 2)
point = (trees.merge(plots, on="plot_uid").groupby(["stand", "species_fia", "class", "plot_uid"])[["ba", "trees"]]
         .sum().reset_index())
n = plots.groupby("stand").size().rename("n")
for name in ("ba", "trees"):
    point[name + "2"] = point[name] ** 2
cells = point.groupby(["stand", "species_fia", "class"])[["ba", "ba2", "trees", "trees2"]].sum().reset_index()
cells = cells.merge(n, left_on="stand", right_index=True)
for name in ("ba", "trees"):
    spread = (cells[name + "2"] - cells[name] ** 2 / cells["n"]) / (cells["n"] - 1) / cells["n"]
    cells[name + "_se"] = spread.clip(lower=0) ** 0.5
    cells[name] = cells[name] / cells["n"]
print(cells[["stand", "species_fia", "class", "ba", "ba_se", "trees", "trees_se"]]
      .to_csv(index=False, header=False, sep="|"), end="")
