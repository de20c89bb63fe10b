#!/usr/bin/python3 -B
"""The real app is killed again and again while trees are tallied; no tree that it showed may be lost.

Each round tallies by real touches or, every other round, by the pointer, until a kill -9 that comes at a random
moment. Then the trees in a copy of the file, read by SQLite, are held against the count that stood on the glass last:
no fewer, and no more than there were gestures. Then the app starts again and must show the count of the file. This
is the death of a process; loss of power is tests/crash.

    kills.py BIN_FOLDER [KILLS] [SEED]     run by hand: its moments are random
"""

import random
import shutil
import sqlite3
import sys
import tempfile
import threading
from pathlib import Path

import day
import outside
from tablet import AppEnded, Tablet, middle

LONGEST = 2.0  # seconds of tallying before a kill


def shown(things):
    counts = [t.name for t in things if t.name.startswith("trees: ")]
    return int(counts[-1].split()[-1])


def in_file(folder):
    """Trees in the file as the dead app left it; a copy is read, so that nothing is mended for the app."""
    with tempfile.TemporaryDirectory(prefix="oaklight-copy-") as name:
        for part in folder.glob("Test-Ridge.gpkg*"):
            if not part.name.endswith((".lock", "-shm")):
                shutil.copy(part, name)
        with sqlite3.connect(Path(name) / "Test-Ridge.gpkg") as file:
            return file.execute("SELECT count(*) FROM tree WHERE deleted = 0").fetchone()[0]


def slide(glass, begin, end, by_pointer):
    if by_pointer:
        glass.point(begin)
        glass.press()
        glass.point(end)
        glass.press(False)
    else:
        glass.down(begin)
        glass.move(end)
        glass.up(end)


def tally_until_killed(tablet, cells, chance, by_pointer):
    """Returns the count last shown, and the count had each gesture made a tree."""
    species, classes = cells
    seen = made = shown(tablet.wait(lambda things: things, "the tally"))
    killer = threading.Timer(chance.uniform(0.0, LONGEST), tablet.process.kill)
    killer.start()
    try:
        while True:
            for _ in range(chance.randint(1, 3)):
                slide(tablet.glass, chance.choice(species), classes[made % len(classes)], by_pointer)
                made += 1
            seen = shown(tablet.look())
    except AppEnded:
        return seen, made
    finally:
        killer.join()
        tablet.process.wait()


def main():
    bin_folder = Path(sys.argv[1]).resolve()
    kills = int(sys.argv[2]) if len(sys.argv) > 2 else 50
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else random.SystemRandom().randrange(1 << 32)
    print(f"seed {seed}")
    chance = random.Random(seed)
    unseen = 0
    with tempfile.TemporaryDirectory(prefix="oaklight-kills-") as name:
        folder = Path(name)
        tablet = Tablet(bin_folder, folder)
        try:
            day.make_tract(tablet)
            day.start_plot(tablet)
            cells = ([middle(tablet.find(species).seen) for species in day.TALLIED],
                     [middle(tablet.find(f"{size}, diameter class").seen) for size in day.CLASSES])
            for kill in range(kills):
                seen, made = tally_until_killed(tablet, cells, chance, by_pointer=kill % 2 == 1)
                kept = in_file(folder)
                assert seen <= kept <= made, f"kill {kill}: {seen} shown, {kept} in the file, {made} gestures"
                unseen += kept - seen
                tablet.start()
                day.page(tablet, "Tally")
                day.count_is(tablet, kept)
        finally:
            tablet.close()
        print(outside.check_records(bin_folder, folder / "Test-Ridge.gpkg").splitlines()[-1])
        outside.equal(tablet.complaints(), "", "what the app wrote on its error stream")
    print(f"{kills} kills, {kept} trees in the file, none that was shown is lost; "
          f"{unseen} were on disk and not shown yet when a kill came")


if __name__ == "__main__":
    main()
