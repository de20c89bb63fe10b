"""Opens every file of one packet with programs that share no code with Oaklight, and tells what is in them.

    read_packet.py FOLDER READER [--rows]

CSV: Python's csv. XLSX: gnumeric's ssconvert, and its XML for cell types and the frozen head. GeoJSON, GPX and
GeoPackage: GDAL. GPX also: xmllint against the schema beside this script, and Python's ElementTree. All are held
against the CSV cell by cell; totals are added up again from each. Prints JSON; "problems" is empty when all agree.
"""
import csv
import hashlib
import json
import os
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
import zipfile
from decimal import Decimal

from osgeo import gdal, ogr
from osgeo_utils.samples import validate_gpkg

gdal.UseExceptions()
csv.field_size_limit(10_000_000)

DECIMALS = {"number": 0, "dbh_in": 1, "volume_bf": 0, "volume_cords": 2, "latitude_deg": 6, "longitude_deg": 6}
SIGNS = tuple("=+-@\t\r\n\uff1d\uff0b\uff0d\uff20")
GPX = "{http://www.topografix.com/GPX/1/1}"
OURS = "{urn:oaklight:packet}"
problems = []


def problem(text):
    if len(problems) < 20:
        problems.append(text)


def run(*words):
    done = subprocess.run(words, capture_output=True, text=True)
    if done.returncode != 0:
        problem(f"{words[0]}: {done.stderr[:300]}")
    return done


def plain(cell):
    """A cell of the CSV without the apostrophe that keeps a spreadsheet from running it."""
    return cell[1:] if cell.startswith("'") and cell.lstrip("'").startswith(SIGNS) else cell


def shown(column, value):
    if value is None:
        return ""
    if column in DECIMALS:
        return f"{value:.{DECIMALS[column]}f}"
    return str(value)


def one_break(text):
    """A break of lines is one character in the XML of a sheet."""
    return text.replace("\r\n", "\n").replace("\r", "\n")


def read_csv(path):
    with open(path, encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file, strict=True))
    for row in rows:
        for column, cell in row.items():
            if cell.startswith(SIGNS) and column not in DECIMALS:
                problem(f"csv: a cell of {column} would run as a formula: {cell[:40]!r}")
    return [{column: plain(cell) for column, cell in row.items()} for row in rows]


def read_xlsx(path):
    with tempfile.TemporaryDirectory() as folder:
        as_shown = "format=preserve separator=, quoting-mode=auto"
        run("ssconvert", "-S", "-T", "Gnumeric_stf:stf_assistant", "-O", as_shown, path, folder + "/%n.csv")
        with open(folder + "/1.csv", encoding="utf-8", newline="") as file:
            rows = list(csv.DictReader(file))
    for row in rows:
        for column in DECIMALS:  # gnumeric shows a true minus sign
            row[column] = row[column].replace("\u2212", "-")
    with zipfile.ZipFile(path) as book:
        sheet = book.read("xl/worksheets/sheet2.xml").decode()
        whole = "".join(book.read(n).decode("utf-8", "replace") for n in book.namelist() if "/worksheets/" in n)
    if "<f>" in whole or "<f " in whole:
        problem("xlsx: there is a formula")
    if not re.search(r'<pane ySplit="1"[^>]*state="frozen"', sheet):
        problem("xlsx: the head does not stay")
    for cell, kind in re.findall(r'<c r="([A-Z]+)\d+"(?: s="\d+")?(?: t="(\w+)")?>', sheet)[len(rows[0]) if rows else 0:]:
        number = ord(cell[0]) - ord("A") if len(cell) == 1 else 99
        column = list(rows[0])[number] if rows and number < len(rows[0]) else ""
        if (column in DECIMALS) != (kind != "s"):
            problem(f"xlsx: column {column} has a cell of type {kind or 'number'}")
    return rows


def layer_rows(layer):
    names = [field.name for field in layer.schema]
    rows = []
    for feature in layer:
        row = {name: shown(name, feature[name] if feature.IsFieldSetAndNotNull(name) else None) for name in names}
        place = feature.GetGeometryRef()
        at = (f"{place.GetY():.6f}", f"{place.GetX():.6f}") if place else ("", "")
        if at != (row["latitude_deg"], row["longitude_deg"]):
            problem(f"{layer.GetName()}: the point of {row['tag'][:40]!r} is not where its columns say")
        rows.append(row)
    return rows


def read_geojson(path):
    with open(path, encoding="utf-8") as file:
        whole = json.load(file)
    if set(whole) != {"type", "features"} or any("geometry" not in f for f in whole["features"]):
        problem("geojson: not as RFC 7946 has it")
    data = ogr.Open(path)  # a layer lives no longer than what it was opened from
    return layer_rows(data.GetLayer(0))


def read_gpkg(path):
    result = validate_gpkg.check(path)
    if result:
        problem(f"gpkg: {result}")
    data = ogr.Open(path)
    layers = [data.GetLayer(i).GetName() for i in range(data.GetLayerCount())]
    with open(path, "rb") as file:
        head = file.read(100)
    if head[68:72] != b"GPKG":
        problem("gpkg: it does not say that it is one")
    return layers, layer_rows(data.GetLayerByName("listed_tree"))


def read_gpx(path):
    schema = os.path.join(os.path.dirname(os.path.abspath(__file__)), "gpx_waypoints.xsd")
    run("xmllint", "--noout", "--schema", schema, path)
    rows = []
    for point in ET.parse(path).getroot().iter(GPX + "wpt"):
        row = {e.tag.removeprefix(OURS): e.text or "" for e in point.find(GPX + "extensions")}
        if (point.get("lat"), point.get("lon")) != (row["latitude_deg"], row["longitude_deg"]):
            problem("gpx: a waypoint is not where its columns say")
        if (point.find(GPX + "name").text or "") != row.get("tag", ""):
            problem("gpx: a waypoint is not named by its tag")
        rows.append(row)
    data = ogr.Open(path)
    names = [feature["name"] or "" for feature in data.GetLayerByName("waypoints")]
    if [one_break(n).strip() for n in names] != [one_break(r.get("tag", "")).strip() for r in rows]:
        problem("gpx: GDAL reads other tags")
    return rows


def totals(rows):
    """Trees, board feet and cords by list and product, added up as decimals."""
    sums = {}
    for row in rows:
        if not row.get("product"):
            continue
        one = sums.setdefault(row["list"] + "|" + row["product"], [0, None, None])
        one[0] += 1
        for i, column in ((1, "volume_bf"), (2, "volume_cords")):
            if row.get(column):
                one[i] = (one[i] or Decimal(0)) + Decimal(row[column])
    return {key: [n, None if b is None else str(b), None if c is None else str(c)] for key, (n, b, c) in sums.items()}


def compare(name, rows, expected, clean=lambda text: text):
    if len(rows) != len(expected):
        problem(f"{name}: {len(rows)} rows, the csv has {len(expected)}")
        return
    for i, (row, want) in enumerate(zip(rows, expected)):
        for column, cell in want.items():
            if clean(row.get(column) or "") != clean(cell):
                problem(f"{name}: row {i + 1}, {column}: {row.get(column)!r:.80} and not {cell!r:.80}")


def check_manifest(folder, reader, rows):
    with open(f"{folder}/{reader}.manifest.json", encoding="utf-8") as file:
        manifest = json.load(file)
    for part in manifest["files"]:
        with open(f"{folder}/{part['name']}", "rb") as file:
            data = file.read()
        if hashlib.sha256(data).hexdigest() != part["sha256"] or len(data) != part["bytes"]:
            problem(f"manifest: {part['name']} is not the file that it names")
    for name, count in manifest["trees"].items():
        if count != sum(row["list"] == name for row in rows):
            problem(f"manifest: it counts {count} trees on {name}")
    if manifest["trees_in_all"] != len(rows):
        problem("manifest: it counts other trees")
    if manifest["trees_with_position"] != sum(bool(row["latitude_deg"]) for row in rows):
        problem("manifest: it counts other positions")
    return sorted(part["name"] for part in manifest["files"])


def main():
    folder, reader = sys.argv[1:3]
    base = f"{folder}/{reader}"
    rows = read_csv(base + ".csv")
    sheet = read_xlsx(base + ".xlsx")
    compare("xlsx", sheet, rows, one_break)
    map_rows = read_geojson(base + ".geojson")
    compare("geojson", map_rows, rows)
    layers, gis = read_gpkg(base + ".gpkg")
    compare("gpkg", gis, rows)
    points = read_gpx(base + ".gpx")
    compare("gpx", points, [row for row in rows if row["latitude_deg"]])
    told = {
        "rows": len(rows),
        "waypoints": len(points),
        "layers": layers,
        "files": check_manifest(folder, reader, rows),
        "totals": {n: totals(r) for n, r in (("csv", rows), ("xlsx", sheet), ("geojson", map_rows), ("gpkg", gis))},
        "gpx_totals": totals(points),
        "problems": problems,
    }
    if "--rows" in sys.argv:
        told["csv"] = rows
        told["gpx"] = points
    json.dump(told, sys.stdout)


main()
