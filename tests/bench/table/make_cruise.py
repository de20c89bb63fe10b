"""Invents a cruise of any size as the files of an import: make_cruise.py TREES FOLDER [TREES_A_POINT]

Ten trees a point of 10 ft2/ac unless told otherwise, ten stands, by a fixed seed: many thin trees and few
thick ones, a third of them oaks. More than 100,000 trees become a folder a stand, part0 to part9. Every number of trees gives the same first trees.
"""
import contextlib
import math
import pathlib
import random
import sys

SPECIES = [("white oak", 14), ("chestnut oak", 8), ("black oak", 6), ("northern red oak", 5), ("red maple", 24),
           ("sugar maple", 9), ("yellow-poplar", 12), ("pignut hickory", 7), ("American beech", 6), ("white ash", 4),
           ("black cherry", 3), ("blackgum", 2)]
STANDS = 10
MOST_IN_A_FILE = 100_000


def main() -> None:
    trees, folder = int(sys.argv[1]), pathlib.Path(sys.argv[2])
    a_point = int(sys.argv[3]) if len(sys.argv) > 3 else 10
    chance = random.Random(20261130)
    points = max(STANDS * 2, trees // a_point)
    names, weights = zip(*SPECIES)
    left = trees
    for stand in range(STANDS):
        # An import takes files of up to 8 MiB: many trees come a stand at a time.
        part = folder / f"part{stand}" if trees > MOST_IN_A_FILE else folder
        part.mkdir(parents=True, exist_ok=True)
        first = stand == 0 or part != folder
        with contextlib.ExitStack() as files:
            stands, plots, tally = (files.enter_context(open(part / f"{name}.csv", "w" if first else "a"))
                                    for name in ("stands", "plots", "trees"))
            if stand == 0:
                (part / "tract.csv").write_text(
                    "name,state,county,demo\nMeasured Hollow (invented),OH,Harlow (invented),yes\n")
            if first:
                stands.write("stand,acres,walked_acres\n")
                plots.write("cruise,stand,plot,status,baf_ft2_ac,min_dbh_in,crew,date\n")
                tally.write("stand,plot,species,dbh_in,stems,edge_count,status,logs\n")
            stands.write(f"S{stand:02d},{points * 2.5 / STANDS:.1f},\n")
            for point in range(-(-stand * points // STANDS), -(-(stand + 1) * points // STANDS)):
                here = left // (points - point)
                left -= here
                plots.write(f"2026 points,S{stand:02d},P{point},{'measured' if here else 'empty'},10,3.0,invented,"
                            "2026-06-09\n")
                for _ in range(here):
                    dbh = min(60.0, 3.0 - 6.0 * math.log(1.0 - chance.random()))
                    logs = f"{chance.randint(1, 6) / 2:.1f}" if dbh >= 10 else ""
                    status = "dead" if chance.random() < 0.04 else "live"
                    species = chance.choices(names, weights)[0]
                    tally.write(f"S{stand:02d},P{point},{species},{dbh:.1f},1,1,{status},{logs}\n")


main()
