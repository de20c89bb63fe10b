"""The app on a screen of its own, pressed and read from outside its process."""

import os
import signal
import subprocess
import sys
import time
from collections import namedtuple

from glass import Glass

PATIENCE = float(os.environ.get("OAKLIGHT_PATIENCE", "120"))  # seconds until something that must come is given up; nothing is judged by how long it takes

ASIDE = 60  # pixels, more than a finger slips

Thing = namedtuple("Thing", "press box seen chosen name value")


class AppEnded(Exception):
    """Its process is gone; with what it had written."""


def middle(box):
    x, y, width, height = box
    return x + width / 2, y + height / 2


class Tablet:
    def __init__(self, bin_folder, folder, size=(1280, 800), pixels_per_mm="5.9"):
        self.bin = bin_folder
        self.folder = folder
        self.size = size
        self.pixels_per_mm = pixels_per_mm
        self.answer = folder / "controls.txt"
        self.ask = folder / "controls.txt.ask"
        self.process = None
        self.taps = 0
        self.by_pointer = False
        self.glass = Glass(folder, *size)
        signal.signal(signal.SIGTERM, lambda *_: sys.exit("told to end"))  # so that all is put away
        self.start()

    def start(self):
        self.ask.unlink(missing_ok=True)
        env = dict(self.glass.env, QT_QPA_PLATFORM="xcb", QT_QUICK_BACKEND="software", LC_ALL="C.UTF-8",
                   XDG_RUNTIME_DIR=str(self.folder))
        with open(self.folder / "app.log", "a", encoding="utf-8") as log:
            self.process = subprocess.Popen(
                [self.bin / "oaklight-tablet", "--folder", self.folder, "--pixels-per-mm", self.pixels_per_mm,
                 "--controls", self.answer], env=env, stdout=log, stderr=log)
        # There is no window manager that would give it the whole glass.
        subprocess.run(["xdotool", "search", "--sync", "--onlyvisible", "--name", "^Oaklight$", "windowsize",
                        "--sync", *map(str, self.size)], env=self.glass.env, check=True,
                       stdout=subprocess.DEVNULL)
        self.wait(lambda things: things, "the first page")

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def close(self):
        if self.process is not None:
            self.process.terminate()
            self.process.wait()
        self.glass.close()

    def complaints(self):
        """What the app wrote on its standard output and error: a sound app writes nothing."""
        return (self.folder / "app.log").read_text(encoding="utf-8")

    # What is on the glass.

    def look(self):
        """All that can be pressed or read now: asked after, and answered when the app is at rest."""
        self.ask.touch()
        end = time.monotonic() + PATIENCE
        while self.ask.exists():
            if self.process.poll() is not None:
                raise AppEnded(self.complaints())
            if time.monotonic() > end:
                raise SystemExit("the app does not come to rest")
            time.sleep(0.005)
        things = []
        for line in self.answer.read_text(encoding="utf-8").splitlines():
            kind, *numbers, name, value = line.split("\t")
            numbers = [int(n) for n in numbers]
            things.append(Thing(kind == "press", tuple(numbers[0:4]), tuple(numbers[4:8]), numbers[8] == 1, name,
                                value))
        return things

    def wait(self, holds, what):
        """Looks until something holds of all that stands still."""
        end = time.monotonic() + PATIENCE
        before = None
        while True:
            now = self.look()
            if now == before:
                cut = [t.name for t in now if t.press and not 0 <= t.box[0] <= t.box[0] + t.box[2] <= self.size[0]]
                assert not cut, f"cut off at the side of the glass: {cut}"
                found = holds(now)
                if found:
                    return found
                if time.monotonic() > end:
                    names = "\n  ".join(f"{'[]' if t.press else '  '} {t.name}" for t in now)
                    raise SystemExit(f"waited in vain for {what}; there are\n  {names}")
                time.sleep(0.02)
            before = now

    def find(self, name, press=True):
        return self.wait(lambda things: hit(things, name, press), f"{'a control' if press else 'words'} {name!r}")

    def reads(self, start):
        """Waits until words stand there that begin so; answers them."""
        return self.wait(lambda things: hit(things, start, False) or hit(things, start, True), f"words {start!r}").name

    def gone(self, name):
        self.wait(lambda things: hit(things, name, True) is None and hit(things, name, False) is None,
                  f"{name!r} to go")

    def has(self, name):
        return bool(self.wait(lambda things: [hit(things, name, True)], "a look")[0])

    # What a person does.

    def reach(self, name):
        """Drags the page until a control lies on the glass; where it is pressed."""
        for _ in range(30):
            thing = self.find(name)
            x, y, width, height = thing.box
            shown = thing.seen
            if shown[2] >= width / 2 and shown[3] >= min(height, 60) * 0.6:
                return middle(shown)
            at = min(max(x + width / 2, 1), self.size[0] - 1)
            room = self.size[1] * 0.25
            by = room if y + height / 2 < self.size[1] / 2 else -room
            self.glass.drag((at, self.size[1] / 2), (at, self.size[1] / 2 + by))
            self.glass.contacts -= 1  # to scroll is no tap
        raise SystemExit(f"{name!r} cannot be scrolled to")

    def tap(self, name):
        self.tap_at(self.reach(name))

    def tap_at(self, at):
        self.taps += 1
        self.glass.click(at) if self.by_pointer else self.glass.tap(at)

    def slide(self, name, to):
        """Press, slide, lift: one gesture, one contact."""
        begin = middle(self.find(name).seen)
        self.taps += 1
        self.glass.down(begin)
        end = middle(self.find(to).seen)  # it may open only now
        if max(abs(a - b) for a, b in zip(begin, end)) < ASIDE:
            # A class that opens right under the finger is meant once the finger has moved. The server may fold
            # two moves into one, so the app must have seen the first.
            self.glass.move((begin[0] + 2 * ASIDE, begin[1]))
            self.look()
        self.glass.move([(a + b) / 2 for a, b in zip(begin, end)])
        self.glass.move(end)
        self.glass.up(end)

    def write(self, name, text):
        """Types a line."""
        self.tap(name)
        self.glass.key("ctrl+a")
        self.glass.type(text)
        self.wait(lambda things: (hit(things, name, True) or Thing(*[None] * 6)).value == text,
                  f"{text!r} in the line {name!r}")

    def picture(self, path):
        self.look()
        self.glass.picture(path)


def hit(things, name, press):
    """The topmost thing of that name; a name may go on after a colon, a comma or a space."""
    same = [t for t in things if t.press == press and t.name == name]
    longer = [t for t in things if t.press == press and t.name.startswith(name)]
    return (same or longer or [None])[-1]
