#!/usr/bin/python3
"""Makes a dump of a tract file as a program that knew the first N steps of schema/ left it.

    tests/versions/make.py N > tests/versions/vNNNN.sql

A dump that is there already is never made again: it stands for files that people have. Checksums and
history are written here from their description in schema/README.md alone, so that the dumps are a second
opinion on that page too.
"""

import decimal
import json
import pathlib
import sqlite3
import struct
import sys
import zlib

SCHEMA = pathlib.Path(__file__).resolve().parents[2] / "schema"
DAY = "2026-05-04T13:07:00.000Z"
LATER = "2026-05-05T08:30:15.250Z"
ODD = 'O\'Neil "Red" | 100% ; -- \\ \t\n\U0001F333 \u05e2\u05e5'
OUTSIDE_CHECKSUM = {"fid", "seq", "row_crc"}


def uid(number):
    return f"019df319-6120-7{number:03x}-8000-0000000000{number:02x}"


def point(lon, lat):
    return b"GP\0\1" + struct.pack("<i", 4326) + struct.pack("<BIdd", 1, 1, lon, lat)


def polygon(points):
    lons, lats = zip(*points)
    box = struct.pack("<dddd", min(lons), max(lons), min(lats), max(lats))
    ring = struct.pack("<BIII", 1, 3, 1, len(points)) + b"".join(struct.pack("<dd", *p) for p in points)
    return b"GP\0\3" + struct.pack("<i", 4326) + box + ring


def line(points):
    lons, lats = zip(*points)
    box = struct.pack("<dddd", min(lons), max(lons), min(lats), max(lats))
    text = struct.pack("<BII", 1, 2, len(points)) + b"".join(struct.pack("<dd", *p) for p in points)
    return b"GP\0\3" + struct.pack("<i", 4326) + box + text


def real_text(x):
    """The fewest digits that read back as the same number, as decimals or with an exponent: the shorter."""
    sign, digits, exponent = decimal.Decimal(repr(x)).normalize().as_tuple()
    text = "".join(map(str, digits))
    plain = format(decimal.Decimal(repr(x)).normalize(), "f").removeprefix("-")
    power = exponent + len(digits) - 1
    scientific = text[0] + ("." + text[1:] if text[1:] else "") + f"e{power:+03d}"
    shorter = plain if len(plain) <= len(scientific) else scientific
    return ("-" if sign else "") + shorter


def cell_text(value):
    if isinstance(value, bytes):
        return "b" + value.hex()
    if isinstance(value, str):
        return f"t{len(value.encode())}:{value}"
    return "r" + real_text(value) if isinstance(value, float) else f"i{value}"


def checksum(table, row):
    text = table + "\n"
    for name in sorted(row):
        if name not in OUTSIDE_CHECKSUM and row[name] is not None:
            text += f"{name}={cell_text(row[name])}\n"
    return zlib.crc32(text.encode())


def as_json(row):
    cells = {n: {"bytes": v.hex()} if isinstance(v, bytes) else v for n, v in row.items()}
    return json.dumps(cells, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


# What a person recorded, by table, in the order in which tables may be filled.
SQUARE = [(-81.1, 37.9), (-81.09, 37.9), (-81.09, 37.91), (-81.1, 37.91), (-81.1, 37.9)]
FACTS = dict(units="us", species_fia=833, dbh_tenths=123, status="live", crown_class="codominant",
             live_crown_pct=37.5, dieback_pct=0.0, height_hundredths=7125, half_logs=5,
             conditions="den|conk", note=ODD)
BARE = dict(units="metric", species_fia=802, dbh_tenths=312, status="dead", conditions="", note="")
RECORDS = [
    ("tract", 1, dict(geom=point(-81.095, 37.905), name="Cold Hollow", state="WV", county="Nowhere",
                      contact=ODD, directions="", meeting_place="gate", phone_place="", demo=1)),
    ("stand", 2, dict(geom=polygon(SQUARE), name="Cove", area_ac=41.3, walked_ac=12.0, goal="mast",
                      age_years=85, site_index_ft=70.0)),
    ("stand", 3, dict(name="Ridge", area_ac=0.0, goal="mixed")),
    ("cruise", 4, dict(name="Spring", design="point", units="us", factor=10.0, crew=ODD, date="2026-05-04")),
    ("cruise", 5, dict(name="Fixed", design="fixed", units="metric", plot_area=0.04, small_area=0.004,
                       small_below_tenths=115, min_dbh_tenths=25, regen_area=0.0004, crew="", date="")),
    ("plot", 6, dict(geom=point(-81.095, 37.904), stand_uid=uid(2), cruise_uid=uid(4), label="7b",
                     status="measured", skip_reason="", accuracy_m=4.6, slope_pct=-35.5, note=ODD)),
    ("plot", 7, dict(stand_uid=uid(3), cruise_uid=uid(5), label="1", status="skipped",
                     skip_reason="bees", note="")),
    ("tree", 8, dict(FACTS, plot_uid=uid(6), stems=3, edge_count=4, azimuth_tenths=1234,
                     distance_hundredths=3307, tag="T 1")),
    ("tree", 9, dict(BARE, plot_uid=uid(6), stems=1, edge_count=1, tag="")),
    ("regen", 10, dict(plot_uid=uid(6), species_fia=802, height_class="under_1_ft", count=0)),
    ("walk_tree", 11, dict(FACTS, geom=point(-81.096, 37.906), stand_uid=uid(2), tag="A1", crop=1,
                           looked_sides="N|E|S|W", slope_pct=12.5, crown_n_hundredths=1150,
                           crown_e_hundredths=0, crown_w_hundredths=975)),
    ("walk_tree", 12, dict(BARE, stand_uid=uid(2), tag="A2", crop=0, looked_sides="")),
    ("contact", 13, dict(crop_uid=uid(11), neighbour_uid=uid(12), sides="N|W", seen="touches",
                         units="metric", distance_hundredths=521, azimuth_tenths=0)),
    ("mark", 14, dict(walk_tree_uid=uid(12), verdict="kill_standing", method="girdle", product="firewood",
                      destination="logger", reason=ODD, rules="R1.50|R4.02", by_hand=1,
                      rule_version="2026.1")),
    ("map_line", 15, dict(geom=line(SQUARE[:3]), kind="stream", name=ODD, confirmed=1)),
    ("form_file", 16, dict(path="tally.form.json", version="1 + ours", sha256="0" * 64,
                           built_in_sha256="1" * 64, text='{"version": "1 + ours"}')),
    ("stump", 17, dict(geom=point(-81.096, 37.906), walk_tree_uid=uid(12), stand_uid=uid(2), finding="hurt",
                       units="metric", species_fia=316, over_bark_tenths=314, under_bark_tenths=290,
                       height_hundredths=15, wound="large", wound_place="root", seen_on="2027-02-20",
                       note=ODD)),
    ("acorn_count", 18, dict(walk_tree_uid=uid(11), year=2025, date="2025-08-20", method="branch_tips",
                             per_tip=14.25, tips=8, note=ODD)),
    ("acorn_year", 19, dict(oak_group="white", year=2025, crop="bumper", source=ODD)),
]


class Maker:
    def __init__(self, last):
        self.db = sqlite3.connect(":memory:", isolation_level=None)
        steps = sorted(SCHEMA.glob("0*.sql"))[:last]
        reader = 0
        for step in steps:
            text = step.read_text()
            self.db.executescript(text)
            reader = max(reader, int(text.splitlines()[1].split(":")[1].split()[0]))
        self.db.execute("UPDATE gpkg_contents SET last_change = ?", [DAY])
        for key, value in [("format", "oaklight tract file"), ("created_at", DAY), ("step", str(last)),
                           ("min_reader", str(reader))]:
            self.db.execute("INSERT INTO meta VALUES (?, ?)", [key, value])

    def columns(self, table):
        return [row[1] for row in self.db.execute(f"PRAGMA table_info({table})")]

    def insert(self, table, row):
        row["row_crc"] = checksum(table, row)
        names = ", ".join(row)
        places = ", ".join("?" * len(row))
        self.db.execute(f"INSERT INTO {table} ({names}) VALUES ({places})", list(row.values()))

    def act(self, number, at, kind, label, target, changes):
        """One line of the history; `changes` are (table, before, after)."""
        if not self.columns("user_action"):
            return
        self.insert("user_action", dict(uid=uid(number), at_utc=at, device="tablet A", label=label,
                                        kind=kind, target_uid=target))
        for table, before, after in changes:
            self.insert("change", dict(action_uid=uid(number), table_name=table, row_uid=after["uid"],
                                       before_json=None if before is None else as_json(before),
                                       after_json=as_json(after)))
            self.db.execute("UPDATE gpkg_contents SET last_change = ? WHERE table_name = ?", [at, table])

    def record(self, table, number, values):
        known = self.columns(table)
        row = dict.fromkeys(name for name in known if name != "fid")
        row |= dict(uid=uid(number), deleted=0, changed_at=DAY)
        row |= {name: value for name, value in values.items() if name in known}
        self.insert(table, row)
        return row

    def fill(self):
        made = [(t, n, self.record(t, n, v)) for t, n, v in RECORDS if self.columns(t)]
        # A new file holds its tract and its forms before anybody did anything.
        acted = [(t, None, row) for t, _, row in made if t not in ("tract", "form_file")]
        self.act(100, DAY, "do", "import 9 files", None, acted)
        trees = [row for table, number, row in made if (table, number) == ("tree", 9)]
        if trees:
            before, after = trees[0], dict(trees[0], deleted=1, changed_at=LATER)
            self.db.execute("UPDATE tree SET deleted = 1, changed_at = ?, row_crc = ? WHERE uid = ?",
                            [LATER, checksum("tree", after), after["uid"]])
            after["row_crc"] = checksum("tree", after)
            self.act(101, LATER, "do", "remove a tree", None, [("tree", before, after)])
        shapes = {"tract": [(-81.095, 37.905)], "stand": SQUARE, "plot": [(-81.095, 37.904)],
                  "tree_point": [(-81.095, 37.904)], "map_line": SQUARE[:3],
                  "walk_tree": [(-81.096, 37.906)], "stump": [(-81.096, 37.906)]}
        for table, points in shapes.items():
            lons, lats = zip(*points)
            self.db.execute("UPDATE gpkg_contents SET min_x = ?, min_y = ?, max_x = ?, max_y = ?"
                            " WHERE table_name = ?", [min(lons), min(lats), max(lons), max(lats), table])
        if trees and self.columns("user_action"):
            self.db.execute("UPDATE gpkg_contents SET last_change = ? WHERE table_name = 'tree_point'", [LATER])


def main():
    last = int(sys.argv[1])
    maker = Maker(last)
    maker.fill()
    print(f"-- A tract file of step {last}, made by make.py {last}. Never changed: it stands for files that are out.")
    print("PRAGMA application_id = 1196444487;\nPRAGMA user_version = 10300;\nPRAGMA foreign_keys = OFF;")
    for text in maker.db.iterdump():
        print(text)


main()
