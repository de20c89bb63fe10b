"""A screen with fingers, a pointer and keys that belong to no program under test.

A real X server draws into memory (video driver `dummy`). Its input driver `inputtest` is a touch screen whose
contacts come over a socket, so that a program meets them as it meets those of a tablet: through the server, by
XInput 2. The server takes no console and no device of this machine, and picks a display number that is free.
"""

import ctypes
import os
import signal
import socket
import struct
import subprocess
import sys
import time
from pathlib import Path

SERVER = "/usr/lib/xorg/Xorg"
PATIENCE = 60.0  # seconds for a server to come up
NO_SERVER = 77  # exit code: this machine lets no X server start, so nothing was tested; ctest says "Skipped"
FINGERS = 5

# What the driver speaks, by its header xf86-input-inputtest-protocol.h, version 1.1: each message begins with
# its length and kind; axes lie in 64 numbers behind a mask of those that count.
VERSION, SYNC, MOTION, BUTTON, TOUCH = 0, 1, 2, 4, 6
BEGIN, UPDATE, END = 18, 19, 20  # as XInput 2 numbers them
AXES = 64
FULL_SCALE = 0xFFFF  # of an axis of the touch screen and of the pointer

CONFIGURATION = """
Section "ServerFlags"
  Option "AutoAddDevices" "false"
  Option "AutoAddGPU" "false"
  Option "DontVTSwitch" "true"
  Option "BlankTime" "0"
EndSection
Section "Device"
  Identifier "memory"
  Driver "dummy"
  VideoRam 16384
EndSection
Section "Monitor"
  Identifier "glass"
  HorizSync 5-1000
  VertRefresh 5-200
  Modeline "glass" {clock} {w} {w1} {w2} {w3} {h} {h1} {h2} {h3}
EndSection
Section "Screen"
  Identifier "screen"
  Device "memory"
  Monitor "glass"
  DefaultDepth 24
  SubSection "Display"
    Depth 24
    Modes "glass"
    Virtual {w} {h}
  EndSubSection
EndSection
Section "InputDevice"
  Identifier "fingers"
  Driver "inputtest"
  Option "DeviceType" "Touch"
  Option "TouchCount" "{fingers}"
  Option "SocketPath" "{folder}/fingers"
EndSection
Section "InputDevice"
  Identifier "pointer"
  Driver "inputtest"
  Option "DeviceType" "PointerAbsolute"
  Option "SocketPath" "{folder}/pointer"
EndSection
Section "InputDevice"
  Identifier "keys"
  Driver "inputtest"
  Option "DeviceType" "Keyboard"
  Option "SocketPath" "{folder}/keys"
EndSection
Section "ServerLayout"
  Identifier "tablet"
  Screen "screen"
  InputDevice "fingers"
  InputDevice "pointer" "CorePointer"
  InputDevice "keys" "CoreKeyboard"
EndSection
"""


def die_with_parent():
    """In a child: whatever ends the script, no server is left behind."""
    PR_SET_PDEATHSIG = 1
    ctypes.CDLL(None).prctl(PR_SET_PDEATHSIG, signal.SIGTERM)


class Device:
    """One input device of the server."""

    def __init__(self, path):
        self.line = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
        self.line.connect(str(path))
        self.line.settimeout(PATIENCE)
        self.send(VERSION, struct.pack("=HH", 1, 1))
        self.receive()

    def send(self, kind, body):
        self.line.sendall(struct.pack("=Ii", 8 + len(body), kind) + body)

    def receive(self):
        head = self.line.recv(8, socket.MSG_WAITALL)
        if len(head) < 8:
            raise SystemExit("the X server hung up on its input device")
        length, kind = struct.unpack("=Ii", head)
        self.line.recv(length - 8, socket.MSG_WAITALL)
        return kind

    def settle(self):
        """Returns when the server has handed on all that was sent."""
        self.send(SYNC, b"")
        while self.receive() != 1:
            pass

    @staticmethod
    def axes(x, y):
        return struct.pack("=I8s4x", 0, bytes([0b11] + [0] * 7)) + struct.pack(
            f"={2 * AXES}d", x, y, *[0.0] * (2 * AXES - 2))

    @staticmethod
    def no_axes():
        return struct.pack("=I8s4x", 0, bytes(8)) + bytes(16 * AXES)


class Glass:
    """The server, one display of it, and what points at it."""

    def __init__(self, folder, width, height):
        self.size = (width, height)
        self.folder = Path(folder)
        configuration = self.folder / "xorg.conf"
        configuration.write_text(CONFIGURATION.format(
            clock=round((width + 120) * (height + 30) * 60 / 1e6, 2), w=width, w1=width + 40, w2=width + 80,
            w3=width + 120, h=height, h1=height + 5, h2=height + 10, h3=height + 30, fingers=FINGERS,
            folder=self.folder), encoding="utf-8")
        told, tell = os.pipe()
        with open(self.folder / "xorg.out", "w", encoding="utf-8") as out:
            self.server = subprocess.Popen(
                [SERVER, "-displayfd", str(tell), "-config", str(configuration), "-logfile",
                 str(self.folder / "xorg.log"), "-nolisten", "tcp", "-noreset", "-seat", "oaklight-test",
                 "-novtswitch"], pass_fds=[tell], stdout=out, stderr=out,
                preexec_fn=die_with_parent)
        os.close(tell)
        with os.fdopen(told) as line:
            number = line.readline().strip()  # the server writes it when it is ready, or ends
        if not number:
            self.server.wait()
            print("NOT TESTED: no X server:\n" + (self.folder / "xorg.out").read_text(encoding="utf-8"), file=sys.stderr)
            raise SystemExit(NO_SERVER)
        self.display = f":{number}"
        self.env = dict(os.environ, DISPLAY=self.display)
        self.fingers = Device(self.folder / "fingers")
        self.pointer = Device(self.folder / "pointer")
        self.contacts = 0

    def close(self):
        self.server.terminate()
        self.server.wait()

    def scaled(self, at):
        return [where * FULL_SCALE / size for where, size in zip(at, self.size)]

    def _touch(self, kind, finger, at):
        self.fingers.send(TOUCH, struct.pack("=II", finger, kind) + Device.axes(*self.scaled(at)))
        self.fingers.settle()

    def down(self, at, finger=0):
        self.contacts += 1
        self._touch(BEGIN, finger, at)

    def move(self, at, finger=0):
        self._touch(UPDATE, finger, at)

    def up(self, at, finger=0):
        self._touch(END, finger, at)

    def tap(self, at):
        self.down(at)
        time.sleep(0.06)  # a finger rests longer than a drop of rain
        self.up(at)

    def drag(self, begin, end, steps=8):
        """A slow drag, that comes to rest before the finger lifts."""
        self.down(begin)
        for step in range(1, steps + 1):
            self.move([a + (b - a) * step / steps for a, b in zip(begin, end)])
            time.sleep(0.02)
        self.up(end)

    def point(self, at):
        self.pointer.send(MOTION, struct.pack("=I4x", 1) + Device.axes(*self.scaled(at)))
        self.pointer.settle()

    def press(self, pressed=True):
        self.pointer.send(BUTTON, struct.pack("=iiI4x", 1, 1, pressed) + Device.no_axes())
        self.pointer.settle()

    def click(self, at):
        """The same as a tap, by the pointer."""
        self.point(at)
        self.press()
        self.press(False)

    def type(self, text):
        subprocess.run(["xdotool", "type", "--delay", "10", text], env=self.env, check=True)

    def key(self, name):
        subprocess.run(["xdotool", "key", name], env=self.env, check=True)

    def picture(self, path):
        subprocess.run(["import", "-window", "root", str(path)], env=self.env, check=True)
