#!/usr/bin/python3 -B
"""The real app is killed again and again while trees are tallied and undone; nothing that it showed may be lost.

Each round tallies by real touches or, every other round, by the pointer, and undoes one tree in some, until a kill -9
that comes at a random moment. Then the trees in a copy of the file, read by SQLite, are held against the count that
stood on the glass last and the gestures since: no fewer, and no more. The copy must pass `oaklight check`. Then the
app starts again and must show the count of the file. This is the death of a process; loss of power and the command
line are tests/crash.

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
UNDONE = 0.2  # part of the rounds
GESTURES = 3  # at most in one round
FEW = 8  # trees that are left alone, so that an undo never reaches what was done before them


def shown(things):
    counts = [t.name for t in things if t.name.startswith("trees: ")]
    return int(counts[-1].split()[-1])


def in_file(folder, bin_folder):
    """Trees in the file as the dead app left it; a copy is read, so that nothing is mended for the app."""
    with tempfile.TemporaryDirectory(prefix="oaklight-copy-") as name:
        for part in folder.glob("Test-Ridge.gpkg*"):
            if not part.name.endswith((".lock", "-shm")):
                shutil.copy(part, name)
        outside.run(bin_folder / "oaklight", "check", Path(name) / "Test-Ridge.gpkg")
        file = sqlite3.connect(Path(name) / "Test-Ridge.gpkg")
        trees = file.execute("SELECT count(*) FROM tree WHERE deleted = 0").fetchone()[0]
        file.close()
        return trees


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
    """Returns the least and the most trees that the file may hold, and the count last shown.

    Gestures go to the app by way of the X server, so that a count may be shown before the gestures of a round came
    in. They are over when the count is that which they lead to, and so each round only adds or only takes away."""
    species, classes, undo = cells
    settled = seen = shown(tablet.wait(lambda things: things, "the tally"))
    made = change = 0
    killer = threading.Timer(chance.uniform(0.0, LONGEST), tablet.process.kill)
    killer.start()
    try:
        while True:
            back = settled > FEW + GESTURES and chance.random() < UNDONE
            for _ in range(chance.randint(1, GESTURES)):
                change += -1 if back else 1  # before the gesture, which may be done when the kill comes
                if back:
                    tablet.glass.click(undo) if by_pointer else tablet.glass.tap(undo)
                else:
                    slide(tablet.glass, chance.choice(species), classes[made % len(classes)], by_pointer)
                made += 1
            while seen != settled + change:
                seen = shown(tablet.look())
            settled, change = seen, 0
    except AppEnded:
        ends = (seen, settled + change)  # what was shown, and what was asked for
        return min(ends), max(ends), seen
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
                     [middle(tablet.find(f"{size}, diameter class").seen) for size in day.CLASSES],
                     middle(tablet.find("Undo").seen))
            for kill in range(kills):
                least, most, seen = tally_until_killed(tablet, cells, chance, by_pointer=kill % 2 == 1)
                kept = in_file(folder, bin_folder)
                assert least <= kept <= most, f"kill {kill}: {seen} shown, {kept} in the file, {least} to {most} wanted"
                unseen += kept != seen
                tablet.start()
                day.page(tablet, "Tally")
                day.count_is(tablet, kept)
        finally:
            tablet.close()
        print(outside.check_records(bin_folder, folder / "Test-Ridge.gpkg").splitlines()[-1])
        outside.equal(tablet.complaints(), "", "what the app wrote on its error stream")
    print(f"{kills} kills, {kept} trees in the file, nothing that was shown is lost; "
          f"{unseen} kills came when something was on disk and not shown yet")


if __name__ == "__main__":
    main()
