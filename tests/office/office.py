"""Many tract files in PostgreSQL with PostGIS, loaded by the commands that schema/office/README.md prints.

    office.py FOLDER_OF_OAKLIGHT

Starts a server of its own in a folder of its own, which no network reaches, as a user without rights. Leaves with 77 where
there is none to start: ctest then says "skipped".
"""

import csv
import glob
import json
import os
import pwd
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
BIN = os.path.abspath(sys.argv[1])


def skip(why):
    print("SKIPPED: " + why)
    sys.exit(77)


def check(holds, what):
    if not holds:
        raise AssertionError(what)


def run(words, **more):
    done = subprocess.run(words, capture_output=True, text=True, **more)
    check(done.returncode == 0, f"{words}: {done.stdout}{done.stderr}")
    return done.stdout


class Server:
    """A PostgreSQL server on a socket in a folder; gone with the object."""

    def __init__(self, folder):
        found = sorted(glob.glob("/usr/lib/postgresql/*/bin/initdb"))
        if not found:
            skip("PostgreSQL is not installed (packages postgresql and postgresql-15-postgis-3)")
        self.programs = os.path.dirname(found[-1])
        if not glob.glob("/usr/share/postgresql/*/extension/postgis.control"):
            skip("PostGIS is not installed (package postgresql-15-postgis-3)")
        self.folder = os.path.join(folder, "server")
        os.mkdir(self.folder, 0o700)
        self.prefix = []
        self.user = pwd.getpwuid(os.getuid()).pw_name
        if os.getuid() == 0:  # the server refuses to run as root
            self.user = "postgres"
            shutil.chown(self.folder, "postgres")
            os.chmod(folder, 0o711)
            self.prefix = ["runuser", "-u", "postgres", "--"]
        data = os.path.join(self.folder, "data")
        self.own(["initdb", "-D", data, "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync"])
        options = f"-c listen_addresses= -c unix_socket_directories={self.folder} -c fsync=off"
        self.own(["pg_ctl", "-D", data, "-w", "-l", os.path.join(self.folder, "log"), "-o", options, "start"])
        self.data = data
        self.environment = dict(os.environ, PGHOST=self.folder, PGUSER=self.user, PGDATABASE="office",
                                SQL=os.path.join(ROOT, "schema/office"), PATH=BIN + ":" + os.environ["PATH"])

    def own(self, words):
        run(self.prefix + [os.path.join(self.programs, words[0])] + words[1:], cwd=self.folder)

    def stop(self):
        self.own(["pg_ctl", "-D", self.data, "-m", "immediate", "stop"])

    def rows(self, sql):
        out = run(["psql", "-qAt", "-v", "ON_ERROR_STOP=1", "-c",
                   f"SELECT coalesce(json_agg(r), '[]') FROM ({sql}) AS r"], env=self.environment)
        return json.loads(out)


def commands():
    """The block of the page, and the part of it that loads files into a database that is there."""
    with open(os.path.join(ROOT, "schema/office/README.md"), encoding="utf-8") as page:
        block = re.search(r"```sh\n(.*?)```", page.read(), re.S).group(1)
    check("createdb office\n" in block, "the page makes the database")
    return block, block.replace("createdb office\n", "")


def load(server, folder, text):
    run(["bash", "-euo", "pipefail", "-c", text], cwd=folder, env=server.environment)


def make_tract(folder, name, source):
    path = os.path.join(folder, name + ".gpkg")
    run([BIN + "/oaklight", "import", path, source])
    return path


def second_cruise(folder):
    """The demo files as another tract: other acres, every third tree left out, points counted twice at the edge."""
    there = os.path.join(folder, "files")
    shutil.copytree(os.path.join(ROOT, "demo_plots"), there, ignore=shutil.ignore_patterns("*.md", "*.tsv", "p*s", "m*r"))
    for name, change in (("tract.csv", lambda i, row: row.update(name="Second Hollow")),
                         ("stands.csv", lambda i, row: row.update(acres=str(float(row["acres"]) + 3.5 * (i + 1))))):
        edit(os.path.join(there, name), change)
    edit(os.path.join(there, "trees.csv"), lambda i, row: i % 3 == 2 and row.get("tag", "") == "")
    return there


def edit(path, change):
    with open(path, newline="", encoding="utf-8-sig") as file:
        rows = list(csv.DictReader(file))
        columns = list(rows[0])
    kept = [row for i, row in enumerate(rows) if not change(i, row)]
    with open(path, "w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, columns)
        writer.writeheader()
        writer.writerows(kept)


def near(a, b):
    return a == b or (a is not None and b is not None and abs(a - b) <= 1e-9 * max(abs(a), abs(b)))


def hold_figures(server, tract, name):
    """Each figure of the views is that of `oaklight estimate --json`."""
    told = json.loads(run([BIN + "/oaklight", "estimate", tract, "--json"]))
    stands = {row["stand"]: row for row in server.rows(f"SELECT * FROM office.stand_summary WHERE tract = '{name}'")}
    held = 0
    for stand in told["stands"]:
        row = stands[stand["stand"]]
        figures = stand["figures"]
        check("live" in figures, f"{name}: {stand}")
        for view, figure in (("ba_ft2_ac", "ba_ft2_ac"), ("trees_ac", "trees_ac")):
            check(near(row[view], figures["live"][figure]["mean"]),
                  f"{name}, {stand['stand']}, {view}: {row[view]} and {figures['live'][figure]['mean']}")
            held += 1
        check(row["plots"] == figures["plots"] and near(row["acres"], figures["acres"]), f"plots of {stand['stand']}")
    check(held >= 4, "the demo tract has stands with figures")
    whole = server.rows(f"SELECT * FROM office.tract_summary WHERE tract = '{name}'")
    check(len(whole) == 1, f"{name} is one tract")
    for figure in ("ba_ft2_ac", "trees_ac"):
        check(near(whole[0][figure], told["all"]["live"][figure]["mean"]), f"{name}, all, {figure}: {whole[0]}")
    check(near(whole[0]["acres"], told["all"]["acres"]), "acres of the tract")


def hold_marks(server, tract, folder, name):
    """Marked trees by product, against the owner's list, which another code path writes."""
    run([BIN + "/oaklight", "packet", tract, "--for", "owner", "--out", folder, "--work-day", "2026-12-07"])
    told = {}
    with open(os.path.join(folder, "owner.csv"), newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            if row["list"] in ("goes", "goes_if_cleared"):
                key = (row["stand"], row["product"], row["goes_to"])
                told[key] = told.get(key, 0) + 1
    rows = server.rows(f"SELECT * FROM office.marked_product WHERE tract = '{name}'")
    seen = {}
    for row in rows:
        goes_to = "standing" if row["verdict"] == "kill_standing" else row["destination"] or ""
        seen[row["stand"], row["product"], goes_to] = row["trees"]
    check(seen == told, f"{seen}\n{told}")
    check(sum(told.values()) > 10, "the demo tract has marks")


def fingerprint(server):
    """Every row of every table of the office."""
    tables = [r["t"] for r in server.rows("SELECT tablename AS t FROM pg_tables WHERE schemaname = 'office' ORDER BY 1")]
    check(len(tables) == 13, str(tables))
    return {t: server.rows(f"SELECT count(*) AS n, md5(string_agg(x::text, E'\\n' ORDER BY uid)) AS sum "
                           f"FROM office.{t} AS x") for t in tables}


def main():
    with tempfile.TemporaryDirectory() as folder:
        files = os.path.join(folder, "tracts")
        os.mkdir(files)
        os.chmod(files, 0o755)
        server = Server(folder)
        try:
            hold(server, folder, files)
        finally:
            server.stop()
    print("office: figures, marks, loading twice, an older copy and a damaged file hold")


def hold(server, folder, files):
    first = make_tract(files, "hollow", os.path.join(ROOT, "demo_plots"))
    name = sqlite3.connect(first).execute("SELECT name FROM tract").fetchone()[0]
    older = os.path.join(folder, "older.gpkg")
    shutil.copy(first, older)
    run([BIN + "/oaklight", "recommend", first])
    second = make_tract(files, "second", second_cruise(folder))
    block, again = commands()
    load(server, files, block)
    hold_figures(server, first, name)
    hold_figures(server, second, "Second Hollow")
    hold_marks(server, first, folder, name)
    before = fingerprint(server)

    load(server, files, again)
    check(fingerprint(server) == before, "loading twice is loading once")

    # A copy from before the marks were made takes none of them away.
    os.rename(older, os.path.join(files, "older.gpkg"))
    load(server, files, again)
    check(fingerprint(server) == before, "an older copy changes nothing")
    os.remove(os.path.join(files, "older.gpkg"))

    # A damaged file is left out.
    broken = os.path.join(files, "broken.gpkg")
    shutil.copy(first, broken)
    db = sqlite3.connect(broken)
    db.execute("UPDATE tree SET dbh_tenths = dbh_tenths + 1, changed_at = '2099-01-01T00:00:00.000Z'")
    db.commit()
    db.close()
    load(server, files, again)
    check(fingerprint(server) == before, "a damaged file is left out")
    os.remove(broken)
    check(server.rows("SELECT * FROM office.tag_used_twice") == [], "no tag of the demo is used twice")


main()
