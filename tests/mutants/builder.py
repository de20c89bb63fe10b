"""Compiles an alteration and links it into a test program, beside the build of tests/run.

Nothing in the repository is altered. An altered file lies in a folder of its own that comes first on
the include path; only what includes it is compiled again, all alterations in one run of ninja. Its
objects stand before the libraries when a program is linked, so that those of the same name in the
libraries are never taken.
"""
import json
import re
import resource
import shlex
import subprocess
import sys
from pathlib import Path

from sites import ROOT

BASE = ROOT / ".build" / "main"
WORK = ROOT / ".build" / "mutants"
FOLDERS = ["measure", "sample", "stand", "release"]
MORE = FOLDERS + ["handoff", "forms", "optimum"]  # asked when the first two are not enough
# Library assertions, so that reading past an array ends the program instead of passing by luck.
OPTIONS = "-O1 -g0 -w -D_GLIBCXX_ASSERTIONS"


def fail(text):
    sys.exit("tests/mutants/run: " + text)


def ninja(folder, *targets):
    return subprocess.run(["ninja", "-k0", "-j2", "-C", folder, *targets], capture_output=True, text=True)


class Builder:
    def __init__(self):
        if not (BASE / "build.ninja").exists():
            fail("build first: tests/run, or cmake and ninja as DEVELOPERS.md says")
        WORK.mkdir(parents=True, exist_ok=True)
        programs = ["bin/test_" + p for p in dict.fromkeys(["published", *MORE])]
        done = ninja(BASE, *programs)
        if done.returncode:
            fail("the sources do not build unaltered:\n" + done.stdout[-3000:])
        self.commands = {}  # of each source: (object, command)
        for entry in json.loads((BASE / "compile_commands.json").read_text()):
            made = re.search(r" -o (\S+) -c ", entry["command"]).group(1)
            if made.startswith(("core/CMakeFiles/oaklight_", "tests/CMakeFiles/")):
                self.commands[made] = (entry["file"], entry["command"])
        self.links = {p: self.link_command(p) for p in dict.fromkeys(["published", *MORE])}
        self.includes = {}
        self.seconds = {p: self.unaltered_seconds(p) for p in self.links}
        self.rules = {}

    @staticmethod
    def link_command(program):
        said = subprocess.run(["ninja", "-C", BASE, "-t", "commands", "bin/test_" + program],
                              capture_output=True, text=True, check=True).stdout
        return shlex.split(said.strip().splitlines()[-1].removeprefix(": && ").removesuffix(" && :"))

    def unaltered_seconds(self, program):
        failed, seconds = self.run(BASE / "bin" / ("test_" + program), 600)
        if failed:
            fail(f"test_{program} fails on unaltered sources: {failed}")
        return seconds

    def reached_from(self, path):
        """What a file includes of ours, and what that includes."""
        if path not in self.includes:
            self.includes[path] = set()
            if (ROOT / path).is_file():
                for one in re.findall(r'^#include "([^"]+)"', (ROOT / path).read_text(), re.M):
                    self.includes[path] |= {one} | self.reached_from(one)
        return self.includes[path]

    def touched(self, site, programs):
        """Objects that an alteration goes into: of the calculation, the tests' helpers and programs."""
        folders = ["core/CMakeFiles/oaklight_calc.dir/", "tests/CMakeFiles/oaklight_test_support.dir/"]
        folders += [f"tests/CMakeFiles/test_{p}.dir/" for p in programs]
        for made, (source, _) in self.commands.items():
            if not made.startswith(tuple(folders)) or not source.startswith(str(ROOT) + "/"):
                continue
            path = source.removeprefix(str(ROOT) + "/")
            if path == site.path or site.path in self.reached_from(path):
                yield made

    def compile(self, wanted):
        """wanted: alteration -> programs. Returns those that compiled for all of them."""
        targets = {}
        for site, programs in wanted.items():
            folder = WORK / site.name()
            altered = folder / site.path
            text = site.altered((ROOT / site.path).read_text())
            if not altered.exists() or altered.read_text() != text:
                altered.parent.mkdir(parents=True, exist_ok=True)
                altered.write_text(text)
            targets[site] = []
            for made in self.touched(site, programs):
                source, command = self.commands[made]
                source = str(altered) if source == str(ROOT / site.path) else source
                head = re.sub(r" -o \S+ -c \S+$", "", command).replace(" -I", f" -I{folder} -I", 1)
                out = f"{site.name()}/{made}"
                self.rules[out] = (source, f"{head} {OPTIONS}", altered)
                targets[site].append(out)
        with open(WORK / "build.ninja", "w") as f:
            f.write("rule cc\n  command = mkdir -p $$(dirname $out) && cd " + str(BASE) +
                    " && $head -MD -MF " + str(WORK) + "/$out.d -o " + str(WORK) + "/$out -c $in\n"
                    "  depfile = $out.d\n  deps = gcc\n")
            for out, (source, head, altered) in self.rules.items():
                f.write(f"build {out}: cc {source} | {altered}\n  head = {head}\n")
        ninja(WORK, *[t for some in targets.values() for t in some])
        return {site for site, some in targets.items() if all((WORK / t).exists() for t in some)}

    def failed_test(self, site, program):
        """The first test of a program that the alteration fails; "" when all pass."""
        folder = WORK / site.name()
        mine = list(self.touched(site, [program]))
        command = [str(folder / word) if word in mine else word for word in self.links[program]]
        before = [str(folder / made) for made in mine if made not in self.links[program]]
        out = folder / ("test_" + program)
        at = command.index("-o")
        command[at:at + 2] = ["-o", str(out), "-fuse-ld=lld", "-Wl,--strip-all", *before]
        subprocess.run(command, cwd=BASE, check=True)
        failed, _ = self.run(out, int(10 * self.seconds[program]) + 20)
        out.unlink()
        return failed

    @staticmethod
    def run(program, cpu_seconds):
        """(first test that failed or how the program ended, seconds of processor time)."""
        def limit():
            resource.setrlimit(resource.RLIMIT_CPU, (cpu_seconds, cpu_seconds + 5))
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        home = WORK / "home"
        home.mkdir(exist_ok=True)
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        done = subprocess.run([program, "--gtest_fail_fast", "--gtest_brief=1", "--gtest_color=no"],
                              capture_output=True, cwd=home, preexec_fn=limit)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        spent = after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime
        if done.returncode == 0:
            return "", spent
        for line in done.stdout.decode(errors="replace").splitlines():
            if line.startswith("[  FAILED  ]"):
                return line.removeprefix("[  FAILED  ] ").split(" ")[0].rstrip(","), spent
        ends = {-24: "ran without end", -9: "ran without end", -6: "aborted", -11: "crashed"}
        return ends.get(done.returncode, f"ended with {done.returncode}"), spent
