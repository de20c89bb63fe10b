#!/usr/bin/env python3
"""One day in the woods, done on the real app from outside it.

A tract is made, plots are tallied, one of them empty, a tree is tallied wrongly and undone, and the app is
killed in the middle and started again. Afterwards the file is read by programs that are not the app. Crop
tree cards and the packet are not part of it yet.

    day.py BIN_FOLDER PICTURE_FOLDER      (needs Xvfb, xdotool, ImageMagick and ogrinfo)
"""

import os
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PATIENCE = 20.0  # seconds to wait for a control
SIZE = (1280, 800)
TREES_ON_THE_LONG_PLOT = 30
MOST_TAPS = 65


class App:
    """The app on a screen of its own, pressed by a pointer that belongs to another program."""

    def __init__(self, bin_folder, folder):
        self.bin = bin_folder
        self.folder = folder
        self.list = folder / "controls.txt"
        self.taps = 0
        self.display = f":{100 + os.getpid() % 400}"
        self.screen = subprocess.Popen(
            ["Xvfb", self.display, "-screen", "0", f"{SIZE[0]}x{SIZE[1]}x24", "-nolisten", "tcp"],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        self.env = dict(os.environ, DISPLAY=self.display, QT_QPA_PLATFORM="xcb", QT_QUICK_BACKEND="software",
                        XDG_RUNTIME_DIR=str(folder))
        time.sleep(1.0)
        self.start()

    def start(self):
        self.list.unlink(missing_ok=True)
        self.log = open(self.folder / "app.log", "a", encoding="utf-8")
        self.process = subprocess.Popen(
            [self.bin / "oaklight-tablet", "--folder", self.folder, "--pixels-per-mm", "5.9",
             "--controls", self.list], env=self.env, stdout=self.log, stderr=self.log)
        self.wait(lambda: self.controls(), "the first page")

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def close(self):
        self.process.terminate()
        self.process.wait()
        self.screen.terminate()
        self.screen.wait()

    def xdotool(self, *words):
        subprocess.run(["xdotool", *map(str, words)], env=self.env, check=True)

    def controls(self):
        """What can be pressed now: (name, x, y) of each control's middle, topmost last."""
        try:
            lines = self.list.read_text(encoding="utf-8").splitlines()
        except FileNotFoundError:
            return []
        found = []
        for line in lines:
            x, y, width, height, name = line.split("\t", 4)
            found.append((name, int(x) + int(width) // 2, int(y) + int(height) // 2))
        return found

    def wait(self, holds, what):
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            answer = holds()
            if answer:
                return answer
            if self.process.poll() is not None:
                raise SystemExit(f"the app ended while we waited for {what}")
            time.sleep(0.05)
        names = "\n  ".join(name for name, _, _ in self.controls())
        raise SystemExit(f"waited in vain for {what}; there are\n  {names}")

    def find(self, name):
        def look():
            hits = [c for c in self.controls() if c[0] == name or c[0].startswith(name + ":")]
            return hits[-1] if hits else None
        return self.wait(look, f"a control named {name!r}")

    def has(self, start):
        return any(name.startswith(start) for name, _, _ in self.controls())

    def reach(self, name):
        """Scrolls until a control lies on the glass."""
        for _ in range(40):
            _, x, y = self.find(name)
            if 10 < y < SIZE[1] - 60:
                return x, y
            self.xdotool("mousemove", x, SIZE[1] // 2, "click", 5 if y > 0 else 4)
            time.sleep(0.4)
        raise SystemExit(f"{name!r} cannot be scrolled to")

    def tap(self, name):
        x, y = self.reach(name)
        self.taps += 1
        self.xdotool("mousemove", x, y, "mousedown", 1)
        time.sleep(0.06)
        self.xdotool("mouseup", 1)
        time.sleep(0.12)

    def slide(self, name, to):
        """Press, slide, lift: one gesture."""
        _, x, y = self.find(name)
        self.taps += 1
        self.xdotool("mousemove", x, y, "mousedown", 1)
        time.sleep(0.05)
        _, to_x, to_y = self.find(to)
        self.xdotool("mousemove", (x + to_x) // 2, (y + to_y) // 2)
        self.xdotool("mousemove", to_x, to_y, "mouseup", 1)
        time.sleep(0.12)

    def type(self, text):
        self.xdotool("type", "--delay", "15", text)
        time.sleep(0.1)

    def page(self, name):
        self.tap(name)
        time.sleep(0.3)

    def picture(self, path):
        subprocess.run(["import", "-window", "root", str(path)], env=self.env, check=True)


def read(bin_folder, tract, *words):
    return subprocess.run([bin_folder / "oaklight", *words[:1], tract, *words[1:]], check=True, text=True,
                          capture_output=True).stdout


def make_tract(app):
    app.tap("Skip")
    app.tap("I look up. Begin")
    app.tap("Tract files")
    app.tap("Name of a new tract")
    app.type("Test Ridge")
    app.tap("Make a new tract")
    app.find("Design of the cruise")  # the demo tract has its design already
    app.tap("Add a stand")
    app.tap("Name of the stand")
    app.type("North")
    app.tap("Area, acres")
    app.type("12")
    app.tap("Save stand")
    app.tap("Design of the cruise")
    app.tap("10")
    app.tap("Save the design")
    app.tap("Add plots")
    app.tap("5")
    app.tap("Add plots")
    time.sleep(0.5)
    if app.has("Close"):
        app.tap("Close")


def tally_plot(app, trees):
    app.page("Walk")
    app.tap("Start plot")
    app.find("Keypad")
    before = app.taps
    species = ["northern red oak", "white oak", "red maple"]
    for i in range(trees):
        app.slide(species[i % 3], f"{10 + 2 * (i % 5)}, diameter class")
    return app.taps - before


def main():
    bin_folder, pictures = Path(sys.argv[1]).resolve(), Path(sys.argv[2])
    pictures.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="oaklight-day-") as name:
        folder = Path(name)
        folder.chmod(0o700)
        app = App(bin_folder, folder)
        try:
            make_tract(app)
            taps = tally_plot(app, TREES_ON_THE_LONG_PLOT)
            app.picture(pictures / "day_tally.png")
            assert taps <= MOST_TAPS, f"{taps} taps for {TREES_ON_THE_LONG_PLOT} trees"
            app.slide("red maple", "20, diameter class")  # a wrong tree
            app.tap("Undo")
            app.kill()
            app.start()
            for trees in (3, 4, 2):
                tally_plot(app, trees)
            app.page("Walk")
            app.tap("Empty plot")
            time.sleep(0.5)
            app.picture(pictures / "day_walk.png")
        finally:
            app.close()
        tract = folder / "Test-Ridge.gpkg"
        print(read(bin_folder, tract, "check"))
        rows = subprocess.run(
            ["ogrinfo", "-q", "-ro", tract, "-sql",
             "SELECT (SELECT count(*) FROM tree WHERE deleted = 0) AS trees,"
             " (SELECT count(*) FROM plot WHERE deleted = 0 AND status = 'measured') AS measured,"
             " (SELECT count(*) FROM plot WHERE deleted = 0 AND status = 'empty') AS empty"],
            check=True, text=True, capture_output=True).stdout
        wanted = {"trees": TREES_ON_THE_LONG_PLOT + 9, "measured": 4, "empty": 1}
        for word, count in wanted.items():
            assert f"{word} (Integer" in rows and f"= {count}\n" in rows.split(word, 1)[1].split("\n", 1)[0] + "\n", rows
        print(f"{TREES_ON_THE_LONG_PLOT} trees took {taps} taps; {wanted} are in the file")


if __name__ == "__main__":
    main()
