#!/usr/bin/python3 -B
"""The program `oaklight` is killed at random moments of its work; nothing that it acknowledged may be lost.

Each round lays down the files of one work, starts the program and kills it: every other time at a moment of its
usual time, else soon after one of the first changes that it made in the folder. Afterwards

    a tract file passes `oaklight check` and holds all that was written or nothing of it; all, when the program had
    ended well before the kill. So does each copy that has the name of a tract file.
    a packet whose manifest is there holds the files that the manifest names, each with its checksum.

    kills.py BIN_FOLDER [KILLS [SEED [WORK ...]]]     a few are run by ctest, thousands by hand
"""

import hashlib
import json
import os
import random
import shutil
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CRUISE = ["tract.csv", "stands.csv", "plots.csv", "trees.csv", "regeneration.csv", "crop_trees.csv", "map.geojson"]
OLD_STEP = 3
CHANGES = 12  # after one of so many changes in the folder
SOON = 0.003  # seconds after it, in the mean
UNFINISHED = (".new", ".part", ".making", "-journal")  # names that nobody takes for a product


class Program:
    """The command line program under test."""

    def __init__(self, bin_folder):
        self.path = bin_folder / "oaklight"

    def run(self, *words, wanted=0):
        done = subprocess.run([self.path, *map(str, words)], text=True, capture_output=True)
        if done.returncode != wanted:
            raise SystemExit(f"oaklight {' '.join(map(str, words))} ended with {done.returncode}:\n"
                             f"{done.stdout}{done.stderr}")
        return done.stdout

    def start(self, *words):
        return subprocess.Popen([self.path, *map(str, words)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)

    def records(self, tract):
        """Records of each table in use, in a file that passes its check."""
        report = json.loads(self.run("check", tract, "--json"))
        assert report["sound"], f"{tract}: {report['problems']}"
        return {table["table"]: table["live"] for table in report["records"]}


def older(tract, target):
    """The same records in a file of an older step, by the steps in schema/ and SQLite alone."""
    steps = sorted((ROOT / "schema").glob("0*.sql"))[:OLD_STEP]
    with sqlite3.connect(target) as old:
        for step in steps:
            old.executescript(step.read_text(encoding="utf-8"))
        old.execute("ATTACH ? AS new", (str(tract),))
        tables = [name for name, in old.execute(
            "SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'gpkg%' AND name NOT LIKE 'sqlite%'"
            " AND name NOT LIKE 'rtree%'")]
        for table in tables:
            # Copying nothing would leave a number given to no row, as no file of ours has it.
            if old.execute(f"SELECT NOT EXISTS (SELECT 1 FROM new.{table})").fetchone()[0]:
                continue
            names = ", ".join(row[1] for row in old.execute(f"PRAGMA main.table_info({table})"))
            old.execute(f"INSERT OR REPLACE INTO main.{table} ({names}) SELECT {names} FROM new.{table}")
        old.execute("UPDATE gpkg_contents AS c SET (min_x, min_y, max_x, max_y, last_change) ="
                    " (SELECT min_x, min_y, max_x, max_y, last_change FROM new.gpkg_contents AS n"
                    " WHERE n.table_name = c.table_name)")
        readers = [int(step.read_text(encoding="utf-8").split("-- min_reader:")[1].split()[0]) for step in steps]
        old.execute("UPDATE meta SET value = ? WHERE key = 'step'", (str(OLD_STEP),))
        old.execute("UPDATE meta SET value = ? WHERE key = 'min_reader'", (str(max(readers)),))
    old.close()


def check_tract(program, tract, done, before, after):
    found = program.records(tract)
    assert found == after or (found == before and not done), f"{tract}: {found}, {'after' if done else 'before'} the end"


class Work:
    def __init__(self, name, stock, program):
        self.name, self.stock, self.program = name, stock, program
        self.kills = Counter()

    def words(self, folder):
        raise NotImplementedError

    def lay_out(self, folder):
        """Lays the files down as they are before."""

    def judge(self, folder, done):
        raise NotImplementedError


class Import(Work):
    """Into a tract file that is there."""

    def lay_out(self, folder):
        shutil.copy(self.stock.empty, folder / "woods.gpkg")

    def words(self, folder):
        return ["import", folder / "woods.gpkg", self.stock.cruise]

    def judge(self, folder, done):
        check_tract(self.program, folder / "woods.gpkg", done, self.stock.records_empty, self.stock.records_full)


class ImportNew(Import):
    """Into one that is made for it."""

    def lay_out(self, folder):
        pass

    def judge(self, folder, done):
        if done or (folder / "woods.gpkg").exists():
            super().judge(folder, done)


class Recommend(Work):
    """Marks for each tree of the walk."""

    def lay_out(self, folder):
        shutil.copy(self.stock.full, folder / "woods.gpkg")

    def words(self, folder):
        return ["recommend", folder / "woods.gpkg"]

    def judge(self, folder, done):
        check_tract(self.program, folder / "woods.gpkg", done, self.stock.records_full, self.stock.records_marked)


class Upgrade(Work):
    """A file of an older step is brought up to date and then written to."""

    def lay_out(self, folder):
        shutil.copy(self.stock.old, folder / "woods.gpkg")

    def words(self, folder):
        return ["recommend", folder / "woods.gpkg"]

    def judge(self, folder, done):
        kept = list(folder.glob("woods.before-step-*.gpkg"))
        assert kept or not done, "no copy of the older file was kept"
        for copy in kept:
            with sqlite3.connect(copy) as file:
                step, = file.execute("SELECT value FROM meta WHERE key = 'step'").fetchone()
            file.close()
            assert step == str(OLD_STEP), f"{copy} is of step {step}"
            check_tract(self.program, self.up_to_date(copy), False, self.stock.records_full, None)
        check_tract(self.program, self.up_to_date(folder / "woods.gpkg"), done, self.stock.records_full,
                    self.stock.records_marked)

    def up_to_date(self, tract):
        """`check` only looks, and an older file must be opened for writing once."""
        self.program.run("import", tract, self.stock.nothing)
        return tract


class Packet(Work):
    """Handed over where an older packet lies."""

    def lay_out(self, folder):
        shutil.copytree(self.stock.packet, folder / "packet")

    def words(self, folder):
        return ["packet", self.stock.marked, "--for", "logger", "--out", folder / "packet", "--made-on", "2026-12-02"]

    def judge(self, folder, done):
        seal = folder / "packet" / "logger.manifest.json"
        if not done and not seal.exists():
            return
        manifest = json.loads(seal.read_text(encoding="utf-8"))
        assert not done or manifest["made_on"] == "2026-12-02", "the new packet is not there"
        names = {file["name"] for file in manifest["files"]}
        for file in manifest["files"]:
            found = hashlib.sha256((folder / "packet" / file["name"]).read_bytes()).hexdigest()
            assert found == file["sha256"], f"{file['name']} is of another packet than the manifest"
        others = {path.name for path in (folder / "packet").iterdir()} - names - {seal.name}
        assert not [name for name in others if not name.endswith(UNFINISHED)], f"besides the packet there are {others}"


class Join(Work):
    """What another tablet did is joined into the file from which it started."""

    def lay_out(self, folder):
        shutil.copy(self.stock.full, folder / "woods.gpkg")

    def words(self, folder):
        return ["join", folder / "woods.gpkg", self.stock.marked]

    def judge(self, folder, done):
        check_tract(self.program, folder / "woods.gpkg", done, self.stock.records_full, self.stock.records_marked)
        for copy in folder.glob("woods.before-join*.gpkg"):
            check_tract(self.program, copy, False, self.stock.records_full, None)


class Stock:
    """Files that the works begin with, made once by the program itself."""

    def __init__(self, program, folder):
        self.cruise = folder / "cruise"
        self.cruise.mkdir()
        for name in CRUISE:
            shutil.copy(ROOT / "demo_plots" / name, self.cruise)
        self.nothing = folder / "acorn_years.csv"  # no table of the works
        shutil.copy(ROOT / "demo_plots" / "acorn_years.csv", self.nothing)
        head = self.nothing.read_text(encoding="utf-8").splitlines()[0]
        self.empty, self.full, self.marked, self.old = (
            folder / f"{name}.gpkg" for name in ("empty", "full", "marked", "old"))
        self.nothing.write_text(head + "\n", encoding="utf-8")
        program.run("import", self.empty, self.nothing)
        program.run("import", self.full, self.cruise)
        shutil.copy(self.full, self.marked)
        program.run("recommend", self.marked)
        older(self.full, self.old)
        self.packet = folder / "packet"
        program.run("packet", self.marked, "--for", "logger", "--out", self.packet, "--made-on", "2026-12-01")
        self.records_empty, self.records_full, self.records_marked = (
            program.records(tract) for tract in (self.empty, self.full, self.marked))


WORKS = {"import": Import, "import_new": ImportNew, "recommend": Recommend, "upgrade": Upgrade, "packet": Packet,
         "join": Join}


def state_of(folder):
    """Names and sizes of what lies there; nothing of the lock, which holds no data."""
    found = []
    for below, _, names in os.walk(folder):  # which passes over a folder that went while we looked
        for path in (Path(below) / name for name in names if not name.endswith(".lock")):
            try:
                found.append((str(path), path.stat().st_size))
            except FileNotFoundError:
                pass  # so did it
    return sorted(found)


def usual_time(work):
    times = []
    for _ in range(3):
        with tempfile.TemporaryDirectory(prefix="oaklight-kills-") as name:
            work.lay_out(Path(name))
            begin = time.monotonic()
            work.program.run(*work.words(Path(name)))
            times.append(time.monotonic() - begin)
            work.judge(Path(name), True)
    return statistics.median(times)


def wait_for_moment(process, folder, chance, usual, by_folder):
    if not by_folder:
        time.sleep(chance.uniform(0.0, 1.1 * usual))
        return
    before = state_of(folder)
    for _ in range(chance.randint(1, CHANGES)):
        now = before
        while now == before and process.poll() is None:
            now = state_of(folder)
        before = now
    time.sleep(chance.expovariate(1.0 / SOON))


def kill_once(work, chance, usual, by_folder):
    with tempfile.TemporaryDirectory(prefix="oaklight-kills-") as name:
        folder = Path(name)
        work.lay_out(folder)
        before = state_of(folder)
        process = work.program.start(*work.words(folder))
        wait_for_moment(process, folder, chance, usual, by_folder)
        process.kill()
        code = process.wait()
        assert code in (0, -9), f"{work.name} ended with {code}"
        left = state_of(folder)
        unfinished = [path for path, size in left
                      if path.endswith(UNFINISHED) or ".making/" in path or (path.endswith("-wal") and size > 0)]
        met = "after its end" if code == 0 else "before it wrote" if left == before else \
            "half done" if unfinished else "between"
        work.kills[met] += 1
        work.judge(folder, code == 0)


def main():
    program = Program(Path(sys.argv[1]).resolve())
    kills = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else random.SystemRandom().randrange(1 << 32)
    names = sys.argv[4:] or list(WORKS)
    print(f"seed {seed}", flush=True)
    chance = random.Random(seed)
    begin = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="oaklight-kills-") as folder:
        stock = Stock(program, Path(folder))
        works = [WORKS[name](name, stock, program) for name in names]
        usual = {work.name: usual_time(work) for work in works}
        for kill in range(kills):
            work = works[kill % len(works)]
            try:
                kill_once(work, chance, usual[work.name], by_folder=kill // len(works) % 2 == 1)
            except BaseException:
                print(f"kill {kill}, {work.name}")
                raise
            if (kill + 1) % 100 == 0:
                print(f"{kill + 1} kills in {time.monotonic() - begin:.0f} s", flush=True)
    for work in works:
        print(f"{work.name} ({usual[work.name] * 1000:.0f} ms): {sum(work.kills.values())} kills: "
              + ", ".join(f"{count} {met}" for met, count in sorted(work.kills.items())))
    print(f"{kills} kills in {time.monotonic() - begin:.0f} s: nothing that was acknowledged is lost, nothing is damaged")


if __name__ == "__main__":
    main()
