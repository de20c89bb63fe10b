#!/usr/bin/env python3
"""Draws a cruise and a marking walk from the Lansing Woods stem map: species and places real, DBH invented.

Usage: make_lansing.py LANSING.csv FOLDER [unseen]    (the map comes from extract.R and is not kept here)

20 fixed plots of 1/10 acre at random places of the 924 ft square, every stem with azimuth and distance; and crop
tree cards on a block of about an acre. What is 'seen' on them follows from crowns drawn as circles; with 'unseen'
nobody has looked up, and contact is left to size and distance. The same map gives the same files. README.md says
what is real and what is not.
"""

import csv
import math
import os
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))

from maker.dice import Dice  # noqa: E402
from maker.walk import SIDE_NAMES, seen_by_place, side_of  # noqa: E402
from maker.woods import crown_radius, open_radius  # noqa: E402

SEED = 1969
SIDE = 924.0  # feet; y is taken as north
STEMS = 2251
ACRES = SIDE * SIDE / 43560.0
PLOTS = 20
PLOT_ACRES = 0.1
PLOT_RADIUS = math.sqrt(PLOT_ACRES * 43560.0 / math.pi)
BLOCK = (357.0, 357.0, 210.0)  # south-west corner and side of the walked square, feet
MOST_CARDS = 20
CLASS_RADIUS = 37.0  # feet within which a stem is compared with the others for its crown class
# Species codes of the USDA Forest Service inventory; the map tells no more than these groups.
SPECIES = {"blackoak": 837, "redoak": 833, "whiteoak": 802, "hickory": 400, "maple": 310, "misc": 9901}
# Whose crown width stands for the group's (maker/woods.py).
CROWN_OF = {"blackoak": "black oak", "redoak": "northern red oak", "whiteoak": "white oak",
            "hickory": "pignut hickory", "maple": "red maple", "misc": "red maple"}
OAKS = {"blackoak", "redoak", "whiteoak"}
# Invented DBH: log-normal, median in inches and standard deviation of the logarithm, within 3 to 30 in. Oaks thicker
# than the rest, as in an old oak-hickory wood with maple coming up. Nothing about the real sizes is claimed.
DBH = {"blackoak": (14.0, 0.25), "redoak": (14.5, 0.25), "whiteoak": (13.5, 0.28),
       "hickory": (9.5, 0.32), "maple": (8.5, 0.35), "misc": (8.5, 0.35)}
NOTE = "stem map of Lansing Woods: species and place real, DBH invented (seeded)"


def read_map(path):
    with open(path, encoding="utf-8", newline="") as f:
        rows = list(csv.DictReader(line for line in f if not line.startswith("#")))
    if len(rows) != STEMS or {r["species"] for r in rows} != set(SPECIES):
        sys.exit(f"{path}: this is not the Lansing Woods map: {STEMS} stems of six groups are expected, "
                 f"{len(rows)} found. Make it with extract.R.")
    return [{"x": float(r["x_ft"]), "y": float(r["y_ft"]), "group": r["species"]} for r in rows]


def invent_diameters(stems, dice):
    for stem in stems:
        median, spread = DBH[stem["group"]]
        logarithm = dice.bounded(math.log(median), spread, math.log(3.0), math.log(30.0))
        stem["dbh"] = math.floor(math.exp(logarithm) * 10.0 + 0.5) / 10.0


def derive_crown_classes(stems):
    """From DBH against the root mean square of the stems around: a derived guess, nobody saw a crown."""
    for stem in stems:
        near = [s["dbh"] ** 2 for s in stems if apart(stem, s) <= CLASS_RADIUS]
        relative = stem["dbh"] / math.sqrt(math.fsum(near) / len(near))
        limits = ((1.35, "dominant"), (0.85, "codominant"), (0.60, "intermediate"), (0.0, "overtopped"))
        stem["crown"] = next(name for least, name in limits if relative >= least)
        stem["radius"] = crown_radius(CROWN_OF[stem["group"]], stem["dbh"], stem["crown"])


def apart(a, b):
    return math.hypot(a["x"] - b["x"], a["y"] - b["y"])


def azimuth(a, b):
    return int(math.degrees(math.atan2(b["x"] - a["x"], b["y"] - a["y"])) % 360.0)


def in_map(x, y):
    return 0.0 <= x <= SIDE and 0.0 <= y <= SIDE


def draw_plots(stems, dice):
    """Rows of plots.csv and trees.csv. A stem counts twice where the walk through it ends off the map."""
    plots, trees = [], []
    for number in range(1, PLOTS + 1):
        centre = {"x": dice.between(0.0, SIDE), "y": dice.between(0.0, SIDE)}
        inside = [s for s in stems if apart(centre, s) <= PLOT_RADIUS]
        label = f"L{number:02d}"
        plots.append({"cruise": "Lansing fixed plots", "stand": "Lansing", "plot": label,
                      "status": "measured" if inside else "empty", "plot_ac": PLOT_ACRES, "crew": "drawn by script",
                      "date": "2026-11-02", "note": NOTE})
        for stem in sorted(inside, key=lambda s: (azimuth(centre, s), apart(centre, s), s["group"])):
            beyond = in_map(2.0 * stem["x"] - centre["x"], 2.0 * stem["y"] - centre["y"])
            trees.append({"stand": "Lansing", "plot": label, "species": SPECIES[stem["group"]], "dbh_in": stem["dbh"],
                          "stems": 1, "edge_count": 1 if beyond else 2, "status": "live",
                          "crown_class": stem["crown"], "azimuth_deg": azimuth(centre, stem),
                          "distance_ft": math.floor(apart(centre, stem) * 10.0) / 10.0, "note": "DBH invented"})
    return plots, trees


def choose_crop_trees(stems):
    """Main-canopy oaks of the block, no two closer than open-grown crowns allow. Those that touch the fewest other oaks
    come first, since a sound oak is seldom cut for another; among them the thickest."""
    x, y, side = BLOCK
    oaks = [s for s in stems if s["group"] in OAKS and s["crown"] in ("dominant", "codominant")
            and 0.0 <= s["x"] - x <= side and 0.0 <= s["y"] - y <= side]

    def oaks_in_contact(home):
        return sum(s["group"] in OAKS and s is not home and seen_by_place(home, s) in ("touches", "over")
                   for s in stems)

    chosen = []
    for oak in sorted(oaks, key=lambda s: (oaks_in_contact(s), -s["dbh"], s["x"], s["y"])):
        room = all(apart(oak, c) > open_radius(oak["dbh"]) + open_radius(c["dbh"]) for c in chosen)
        if room and len(chosen) < MOST_CARDS:
            chosen.append(oak)
    chosen.sort(key=lambda s: (math.floor((s["y"] - y) / 42.0), s["x"]))
    for number, oak in enumerate(chosen):
        oak["tag"] = str(501 + number)
    return chosen


def sides_at(angle):
    """One side, or two within 10 degrees of their border."""
    names = {side_of((angle + turn) % 360.0) for turn in (-10, 0, 10)}
    return sorted(names, key=SIDE_NAMES.index)


def facts(stem):
    return {"species": SPECIES[stem["group"]], "dbh_in": stem["dbh"], "crown_class": stem["crown"],
            "status": "live", "note": "DBH invented"}


def card_rows(crops, stems, unseen):
    """Rows of crop_trees.csv: every stem within reach of open-grown crowns, and the sides where none stands."""
    rows, next_tag, told = [], 601, {c["tag"] for c in crops}
    for home in crops:
        card = {"stand": "Lansing", "card": home["tag"]}
        rows.append(dict(card, role="crop", tag=home["tag"], **facts(home)))
        free = list(SIDE_NAMES)
        near = [s for s in stems if s is not home and
                0.5 <= apart(home, s) <= open_radius(home["dbh"]) + open_radius(s["dbh"]) + 3.0]
        for stem in sorted(near, key=lambda s: (azimuth(home, s), apart(home, s), s["group"])):
            if "tag" not in stem:
                stem["tag"] = str(next_tag)
                next_tag += 1
            sides = sides_at(azimuth(home, stem))
            free = [f for f in free if f not in sides]
            row = dict(card, role="neighbour", tag=stem["tag"], side="|".join(sides),
                       seen="not_looked" if unseen else seen_by_place(home, stem),
                       distance_ft=math.floor(apart(home, stem) * 10.0 + 0.5) / 10.0,
                       azimuth_deg=azimuth(home, stem))
            if stem["tag"] not in told:
                row.update(facts(stem))
                told.add(stem["tag"])
            rows.append(row)
        rows += [dict(card, role="open", side=s) for s in free]
    return rows


def write(folder, name, columns, rows):
    with open(os.path.join(folder, name), "w", encoding="utf-8", newline="") as f:
        writer = csv.DictWriter(f, columns, restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)


def main():
    if len(sys.argv) not in (3, 4) or sys.argv[3:] not in ([], ["unseen"]):
        sys.exit(__doc__)
    folder = sys.argv[2]
    os.makedirs(folder, exist_ok=True)
    stems = read_map(sys.argv[1])
    dice = Dice(SEED)
    invent_diameters(stems, dice)
    derive_crown_classes(stems)
    plots, trees = draw_plots(stems, dice)
    cards = card_rows(choose_crop_trees(stems), stems, unseen=len(sys.argv) == 4)
    tract = {"name": "Lansing Woods stem map, DBH invented", "state": "MI", "county": "Clinton",
             "contact": "nobody: a published stem map, not a job", "demo": "yes"}
    write(folder, "tract.csv", list(tract), [tract])
    stand = {"stand": "Lansing", "acres": f"{ACRES:.1f}", "walked_acres": f"{BLOCK[2] ** 2 / 43560.0:.2f}",
             "goal": "mast"}
    write(folder, "stands.csv", list(stand), [stand])
    write(folder, "plots.csv", ["cruise", "stand", "plot", "status", "plot_ac", "crew", "date", "note"], plots)
    write(folder, "trees.csv", ["stand", "plot", "species", "dbh_in", "stems", "edge_count", "status", "crown_class",
                                "azimuth_deg", "distance_ft", "note"], trees)
    write(folder, "crop_trees.csv", ["stand", "card", "role", "tag", "side", "seen", "species", "dbh_in",
                                     "crown_class", "status", "distance_ft", "azimuth_deg", "note"], cards)


if __name__ == "__main__":
    main()
