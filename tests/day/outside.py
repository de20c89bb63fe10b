"""Reads a tract file and a packet with programs that are not the app: GDAL, poppler, Python's csv and hashlib."""

import csv
import hashlib
import json
import subprocess

from osgeo import ogr

ogr.UseExceptions()


def run(*words):
    done = subprocess.run([str(w) for w in words], text=True, capture_output=True)
    assert done.returncode == 0, f"{words} failed:\n{done.stdout}{done.stderr}"
    return done.stdout


def equal(found, wanted, what):
    assert found == wanted, f"{what}: {found!r} where {wanted!r} was expected"


def rows(tract, sql):
    """The rows of a question, each as a tuple of its fields."""
    source = ogr.Open(str(tract))
    layer = source.ExecuteSQL(sql)
    found = [tuple(feature.GetField(i) for i in range(feature.GetFieldCount())) for feature in layer]
    source.ReleaseResultSet(layer)
    return found


def live(table):
    return f"FROM {table} WHERE deleted = 0"


def check_records(bin_folder, tract):
    """Each record against its checksum, and the file as GDAL sees it."""
    said = run(bin_folder / "oaklight", "check", tract)
    layers = run("ogrinfo", "-ro", "-q", tract)
    for layer in ("stand", "plot", "tree", "walk_tree", "contact", "mark"):
        assert f": {layer}" in layers, f"GDAL sees no layer {layer}:\n{layers}"
    return said.strip()


def trees_by_plot(tract):
    """DBH in tenths of an inch and species code of each tree that stands, by plot, in the order of the tally."""
    found = {}
    for label, status in rows(tract, f"SELECT label, status {live('plot')}"):
        found[label] = (status, [])
    for label, species, dbh in rows(
            tract, "SELECT p.label, t.species_fia, t.dbh_tenths FROM tree t JOIN plot p ON p.uid = t.plot_uid"
            " WHERE t.deleted = 0 AND p.deleted = 0 ORDER BY t.fid"):
        found[label][1].append((species, dbh))
    return found


def cards(tract):
    """Tag of each crop tree: (species code, DBH, sides looked at, its neighbours as (species, DBH, sides, seen))."""
    found = {}
    for tag, species, dbh, looked in rows(
            tract, f"SELECT tag, species_fia, dbh_tenths, looked_sides {live('walk_tree')} AND crop = 1 ORDER BY fid"):
        neighbours = rows(
            tract, "SELECT n.species_fia, n.dbh_tenths, c.sides, c.seen FROM contact c"
            " JOIN walk_tree o ON o.uid = c.crop_uid JOIN walk_tree n ON n.uid = c.neighbour_uid"
            f" WHERE c.deleted = 0 AND o.tag = '{tag}' ORDER BY c.fid")
        found[tag] = (species, dbh, looked, neighbours)
    return found


def marks(tract):
    """Tag: (verdict, destination, by hand, reason)."""
    return {tag: tuple(rest) for tag, *rest in rows(
        tract, "SELECT w.tag, m.verdict, m.destination, m.by_hand, m.reason FROM mark m"
        " JOIN walk_tree w ON w.uid = m.walk_tree_uid WHERE m.deleted = 0")}


def check_packet(folder, reader, wanted_marks, pages):
    """The files of one reader's packet against the marks in the tract file, and against one another."""
    manifest = json.loads((folder / f"{reader}.manifest.json").read_text(encoding="utf-8"))
    listed = (folder / f"{reader}.csv").read_bytes()
    equal(hashlib.sha256(listed).hexdigest(), manifest["list_sha256"], "SHA-256 of the list")
    equal(len(listed), manifest["list_bytes"], "bytes of the list")

    with open(folder / f"{reader}.csv", encoding="utf-8", newline="") as lines:
        entries = list(csv.DictReader(lines))
    by_list = {name: {e["tag"] for e in entries if e["list"] == name} for name in ("cut", "keep", "not_yours")}
    cut = {tag for tag, mark in wanted_marks.items() if mark[0] == "take" and mark[1] == reader}
    equal(by_list["cut"], cut, "tags to cut")
    equal(by_list["keep"], {tag for tag, mark in wanted_marks.items() if mark[0] == "keep"}, "tags to keep")
    equal(len(entries), len(wanted_marks), "trees in the list")
    equal(manifest["trees"]["cut"], len(cut), "trees to cut in the manifest")
    for entry in entries:
        _, _, by_hand, reason = wanted_marks[entry["tag"]]
        # What a person typed may be kept from a reader; a tree that is none of his gets no reason to cut it.
        if not by_hand and entry["list"] != "not_yours":
            equal(entry["reason"], reason, f"the reason of {entry['tag']}")

    pdf = folder / f"{reader}.pdf"
    facts = dict(line.split(":", 1) for line in run("pdfinfo", pdf).splitlines() if ":" in line)
    equal(int(facts["Pages"]), pages, "pages of the PDF")
    equal(facts["Encrypted"].strip(), "no", "the PDF is locked")
    texts = run("pdftotext", "-layout", pdf, "-").split("\f")
    assert "BEFORE YOU START" in texts[0], "cautions do not come first"
    assert manifest["list_sha256"] in "".join("".join(texts).split()), "the PDF does not name its list"
    paper = [line.lower().split() for text in texts for line in text.splitlines() if line.strip()]
    for entry in entries:
        names = entry["species"].lower().split()
        assert any(entry["tag"] in words and names[-1] in words and entry["dbh_in"] in words for words in paper), \
            f"{entry['tag']} {entry['species']} {entry['dbh_in']} is in no line of the PDF"
    return len(cut)
