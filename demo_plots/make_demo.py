#!/usr/bin/env python3
"""Writes the demo tract: tract, stands, plots, trees, regeneration, crop trees and map. All invented.

Usage: make_demo.py [FOLDER]    (default: the folder of this script)

The same script writes the same bytes every time: the seeds are below and only the part of Python's
random numbers that never changes between versions is used. They were picked among many so that the
stands come out as they are described in README.md; nothing else was retouched by hand.
"""

import csv
import io
import json
import math
import os
import sys

sys.dont_write_bytecode = True  # no maker/__pycache__ in the tree

from maker import cards, ground, points, walk, woods  # noqa: E402
from maker.dice import Dice  # noqa: E402

CRUISE_SEEDS = {"Upland": 42100, "Cove": 15100, "Flat": 65800}
WALK_SEEDS = {"Upland": 678, "Cove": 681, "Flat": 700}
CRUISE = "2026 points"
CREW = "demo crew"
DATE = "2026-06-09"

STANDS = [
    # goal, age, oak site index in feet at 50 years
    {"stand": "Upland", "goal": "mast", "age_years": 78, "site_index_ft": 64},
    {"stand": "Cove", "goal": "mixed", "age_years": 72, "site_index_ft": 82},
    {"stand": "Flat", "goal": "mast", "age_years": 70, "site_index_ft": 72},
]
# Acorns on a branch tip (last 24 in), mean of eight tips, in three autumns. All of these oaks come out as fair
# producers, which is worth as much as no record: the counts explain, and change no decision.
ACORNS = {"101": {2023: 4.5, 2024: 15.5, 2025: 8.0}, "102": {2023: 3.0, 2024: 13.5, 2025: 6.75},
          "103": {2023: 6.25, 2024: 9.0, 2025: 19.5}, "104": {2023: 5.0, 2024: 8.25, 2025: 16.0},
          "110": {2023: 2.5, 2024: 11.0, 2025: 6.0}}
# Two observers, 15 seconds each.
TIMED = {"106": {2024: 22, 2025: 41}, "107": {2024: 0, 2025: 17}}
ACORN_DAYS = {2023: "2023-08-24", 2024: "2024-08-20", 2025: "2025-08-26"}
ACORN_YEARS = [("white", 2023, "poor"), ("white", 2024, "good"), ("white", 2025, "fair"),
               ("red", 2023, "poor"), ("red", 2024, "fair"), ("red", 2025, "good")]

# Crop trees whose position the crew could not get.
NO_FIX = {"126", "139"}
SLOPES = {"Upland": (4, 14), "Cove": (5, 14), "Flat": (0, 5)}


def text(value):
    """A cell: nothing stays empty, floats without a trailing zero that nobody read."""
    if value is None:
        return ""
    if isinstance(value, list):
        return "|".join(value)
    if isinstance(value, float):
        return f"{value:.1f}"
    return str(value)


def write_csv(folder, name, columns, rows):
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(columns)
    for row in rows:
        assert set(row) <= set(columns), (name, set(row) - set(columns))
        writer.writerow([text(row.get(c)) for c in columns])
    with open(os.path.join(folder, name), "w", encoding="utf-8", newline="") as f:
        f.write(out.getvalue())


def degrees(value):
    return f"{value:.7f}"


def write_tract(folder):
    lat, lon = ground.lat_lon(*ground.LANDING)
    row = {
        "name": "Whetrock Hollow (invented)",
        "state": "OH",
        "county": "Harlow (invented)",
        "contact": "the forester in charge (invented)",
        "directions": "Township road along the south side; blue gate 0.3 mi east of the bridge (invented)",
        "meeting_place": "at the blue gate (invented)",
        "phone_place": "top of the rise, 200 yd west of the gate (invented)",
        "landing_lat": degrees(lat),
        "landing_lon": degrees(lon),
        "demo": "yes",
    }
    write_csv(folder, "tract.csv", list(row), [row])


def write_stands(folder, blocks):
    columns = ["stand", "acres", "walked_acres", "goal", "age_years", "site_index_ft"]
    rows = []
    for stand in STANDS:
        name = stand["stand"]
        walked = f"{blocks[name].acres():.2f}"
        rows.append(dict(stand, acres=ground.ACRES[name], walked_acres=walked))
    write_csv(folder, "stands.csv", columns, rows)


def write_cruise(folder):
    plots, trees, regeneration = [], [], []
    for plot, tally, regen in points.cruise(CRUISE_SEEDS):
        row = dict(plot, cruise=CRUISE, baf_ft2_ac=int(points.BAF), min_dbh_in=points.MIN_DBH,
                   regen_plot_ac="0.001", crew=CREW, date=DATE)
        if "lat" in row:
            row["lat"], row["lon"] = degrees(row["lat"]), degrees(row["lon"])
        plots.append(row)
        where = {"stand": plot["stand"], "plot": plot["plot"]}
        for tree in tally:
            facts = {k: v for k, v in tree.items() if not k.startswith("_")}
            facts["dbh_in"] = float(facts["dbh_in"])
            trees.append(dict(facts, **where))
        regeneration += [dict(r, **where) for r in regen]
    write_csv(folder, "plots.csv",
              ["cruise", "stand", "plot", "status", "skip_reason", "baf_ft2_ac", "min_dbh_in",
               "regen_plot_ac", "crew", "date", "lat", "lon", "accuracy_m", "slope_pct", "note"], plots)
    write_csv(folder, "trees.csv",
              ["stand", "plot", "species", "dbh_in", "stems", "edge_count", "status", "crown_class",
               "live_crown_pct", "dieback_pct", "height_ft", "logs", "azimuth_deg", "distance_ft", "tag",
               "conditions", "note"], trees)
    write_csv(folder, "regeneration.csv", ["stand", "plot", "species", "height_class", "count"],
              regeneration)


def azimuth_and_distance(home, stem):
    """As read: whole degrees, half feet."""
    dx, dy = stem["x"] - home["x"], stem["y"] - home["y"]
    azimuth = int(math.degrees(math.atan2(dx, dy)) % 360.0 + 0.5) % 360
    return azimuth, math.floor(2.0 * math.hypot(dx, dy) + 0.5) / 2.0


def sides_of(azimuth, seen):
    """One side, or two where a crown in contact stands within 10 degrees of their border (R2.16)."""
    side = walk.side_of(azimuth)
    if seen not in ("touches", "over"):
        return side
    for turn in (-10, 10):
        other = walk.side_of((azimuth + turn) % 360.0)
        if other != side:
            return "|".join(sorted((side, other), key=walk.SIDE_NAMES.index))
    return side


def finish_stem(block, stem, dice):
    """The readings that are not part of a hand-written case."""
    live = stem["status"] == "live"
    x, y = block.corner[0] + stem["x"], block.corner[1] + stem["y"]
    to_way = min(ground.distance_to_line(line, x, y) for line in (ground.TRAIL, ground.ROAD))
    if live and "height" not in stem and (stem["dbh"] >= 5.0 or dice.chance(0.25)):
        stem["height"] = woods.total_height(block.stand, stem["dbh"], stem["crown"], dice)
    if to_way < 2.0 * stem.get("height", 100.0):
        stem["conditions"] = stem["conditions"] + ["road_near"]
    if live and "live_crown" not in stem:
        usual = woods.USUAL_CROWN_RATIO[stem["crown"]]
        stem["live_crown"] = max(10, 5 * int(dice.normal(usual, 4.0) / 5.0 + 0.5))
    if live and stem["dbh"] >= 11.0:
        stem["logs"] = woods.half_logs(block.stand, stem["dbh"], dice)


def facts_of(block, stem, slope):
    row = {"species": stem["species"], "dbh_in": stem["dbh"], "crown_class": stem["crown"],
           "status": stem["status"], "live_crown_pct": stem.get("live_crown"),
           "dieback_pct": stem.get("dieback"), "height_ft": stem.get("height"), "logs": stem.get("logs"),
           "conditions": stem["conditions"], "slope_pct": slope, "note": stem["note"]}
    if stem["crop"] and stem["tag"] not in NO_FIX:
        lat, lon = ground.lat_lon(block.corner[0] + stem["x"], block.corner[1] + stem["y"])
        row["lat"], row["lon"] = degrees(lat), degrees(lon)
    return row


def card_rows(block, tag, next_tag, written, dice):
    """The rows of one card; gives tags to neighbours met for the first time."""
    home = block.find(tag)
    slope = home.get("slope", int(dice.between(*SLOPES[block.stand]) + 0.5))
    card = {"stand": block.stand, "card": tag}
    rows = [dict(card, role="crop", tag=tag, **facts_of(block, home, slope))]
    read = []
    for stem, seen in block.cards[tag]:
        azimuth, distance = azimuth_and_distance(home, stem)
        read.append((walk.SIDE_NAMES.index(walk.side_of(azimuth)), azimuth, distance, stem, seen))
    free = set(walk.SIDE_NAMES)
    for _, azimuth, distance, stem, seen in sorted(read, key=lambda r: r[:3]):
        if not stem["tag"]:
            stem["tag"] = str(next_tag)
            next_tag += 1
        sides = sides_of(azimuth, seen)
        free -= set(sides.split("|"))
        row = dict(card, role="neighbour", tag=stem["tag"], side=sides, seen=seen, distance_ft=distance,
                   azimuth_deg=azimuth)
        if stem["crop"]:  # another crop tree: told in full on its own card
            row.update(species=stem["species"], dbh_in=stem["dbh"])
        elif stem["tag"] not in written:
            row.update(facts_of(block, stem, slope))
            written.add(stem["tag"])
        rows.append(row)
    rows += [dict(card, role="open", side=s) for s in walk.SIDE_NAMES if s in free]
    return rows, next_tag


def write_cards(folder, blocks):
    rows, next_tag, written = [], 201, set()
    for stand, block in blocks.items():
        dice = Dice(WALK_SEEDS[stand] + 5000)
        for stem in block.stems:
            finish_stem(block, stem, dice)
        for tag in block.cards:
            more, next_tag = card_rows(block, tag, next_tag, written, dice)
            rows += more
    write_csv(folder, "crop_trees.csv",
              ["stand", "card", "role", "tag", "side", "seen", "species", "dbh_in", "crown_class", "status",
               "live_crown_pct", "dieback_pct", "height_ft", "logs", "conditions", "distance_ft",
               "azimuth_deg", "lat", "lon", "slope_pct", "note"], rows)


def write_acorns(folder):
    rows = [{"tag": tag, "year": year, "date": ACORN_DAYS[year], "per_tip": f"{count:.2f}", "tips": 8}
            for tag, years in ACORNS.items() for year, count in years.items()]
    rows += [{"tag": tag, "year": year, "date": ACORN_DAYS[year], "n30": count}
             for tag, years in TIMED.items() for year, count in years.items()]
    rows.sort(key=lambda r: (r["year"], r["tag"]))
    write_csv(folder, "acorns.csv", ["tag", "year", "date", "per_tip", "tips", "n30"], rows)
    years = [{"oak_group": group, "year": year, "crop": crop, "source": "walk of 40 oaks (invented)"}
             for group, year, crop in ACORN_YEARS]
    write_csv(folder, "acorn_years.csv", ["oak_group", "year", "crop", "source"], years)


def write_map(folder):
    def place(x, y):
        lat, lon = ground.lat_lon(x, y)
        return [round(lon, 7), round(lat, 7)]

    features = []
    for stand, ring in ground.STANDS.items():
        closed = [place(*p) for p in ring + ring[:1]]
        features.append({"type": "Feature", "properties": {"kind": "stand", "stand": stand},
                         "geometry": {"type": "Polygon", "coordinates": [closed]}})
    for kind, name, confirmed, line in ground.LINES:
        features.append({"type": "Feature",
                         "properties": {"kind": kind, "name": name, "confirmed": confirmed},
                         "geometry": {"type": "LineString", "coordinates": [place(*p) for p in line]}})
    lines = ",\n".join(json.dumps(f) for f in features)
    with open(os.path.join(folder, "map.geojson"), "w", encoding="utf-8", newline="") as f:
        f.write('{"type": "FeatureCollection", "features": [\n' + lines + "\n]}\n")


def main():
    folder = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(os.path.abspath(__file__))
    os.makedirs(folder, exist_ok=True)
    blocks = {"Upland": cards.upland(Dice(WALK_SEEDS["Upland"])),
              "Cove": cards.cove(Dice(WALK_SEEDS["Cove"])),
              "Flat": cards.flat(Dice(WALK_SEEDS["Flat"]))}
    for block in blocks.values():
        block.complete()
    write_tract(folder)
    write_stands(folder, blocks)
    write_cruise(folder)
    write_cards(folder, blocks)
    write_acorns(folder)
    write_map(folder)


if __name__ == "__main__":
    main()
