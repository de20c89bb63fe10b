"""Where the calculation can be altered, and in what order a seed takes the places."""
import hashlib
import re
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = ["measure", "sample", "stand", "release"]
# How many of each folder. core/stand has few coefficients of its own.
KINDS = {
    "coefficient": {"measure": 28, "sample": 14, "stand": 2, "release": 16},
    "operator": {"measure": 10, "sample": 11, "stand": 8, "release": 11},
}
SWAPS = {"+": "-", "-": "+", "*": "/", "/": "*", "<": "<=", "<=": "<", ">": ">=", ">=": ">",
         "&&": "||", "||": "&&"}
# A header that more files of core than these reach is left out: each of its places would be minutes
# of compiling.
WIDEST = 30


@dataclass(frozen=True)
class Site:
    kind: str
    folder: str
    path: str
    line: int
    source: str  # the line as it stands, trimmed
    start: int   # in the file
    old: str
    new: str
    column: int  # in the trimmed line

    def key_parts(self):
        return self.path, self.source, f"{self.old} -> {self.new} at {self.column}"

    def key(self):
        return "\t".join(self.key_parts())

    def name(self):
        return hashlib.sha256(self.key().encode()).hexdigest()[:12]

    def altered(self, text):
        end = self.start + len(self.old)
        assert text[self.start:end] == self.old
        return text[:self.start] + self.new + text[end:]

    def __str__(self):
        return f"{self.path}:{self.line}:{self.column}: {self.old} -> {self.new} in: {self.source}"


def blanked(text):
    """Comments, texts and preprocessor lines as blanks of equal length; a text keeps its quotes."""
    def blank(m):
        return re.sub(r"[^\n]", " ", m.group())
    text = re.sub(r'"(\\.|[^"\\\n])*"', lambda m: '"' + " " * (len(m.group()) - 2) + '"', text)
    text = re.sub(r"//[^\n]*|/\*.*?\*/", blank, text, flags=re.S)
    return re.sub(r"^[ \t]*#[^\n]*", blank, text, flags=re.M)


def altered_number(old):
    """About 1 % more, with as many digits as that takes; a whole number becomes the next one."""
    if old.isdigit():
        return str(int(old) + 1)
    digits = len(old.partition(".")[2])
    while round(float(old) * 0.01, digits) == 0.0:
        digits += 1
    return f"{float(old) + round(float(old) * 0.01, digits):.{digits}f}"


def statement_has_text(blank, at):
    begin = max(blank.rfind(c, 0, at) for c in ";{}")
    ends = [e for e in (blank.find(c, at) for c in ";{}") if e >= 0]
    return '"' in blank[begin + 1:min(ends)]


def numbers(blank, whole):
    """Floating literals but zero and those written with a power of ten, which are guards of rounding;
    in the tables of core/measure whole numbers from 1 up too, but not how many digits a text shows."""
    number = r"\d+\.\d+" + (r"|[1-9]\d*(?!\w*>)" if whole else "")
    for m in re.finditer(rf"(?<![\w.'])(?<!e-)({number})(?![\w.'])", blank):
        digits_of_text = re.search(r"number_text\([^;{}]*,\s*$", blank[:m.start()][-100:])
        if float(m.group()) != 0.0 and not digits_of_text:
            yield m.start(), m.group(), altered_number(m.group())


def operators(blank):
    """As clang-format sets them, with a blank on each side, so that no template bracket is one.
    Left out: + and - in a statement with a text, which put words together, and the end of a counting
    loop, since to read past an array is not defined."""
    counting = {m.end() for m in re.finditer(r"\bfor \([\w:]+ \w+ = [^;]*; \w+ (?=<=? )", blank)}
    for m in re.finditer(r"(?<=[ ])([-+*/]|<=?|>=?|&&|\|\|)(?=[ \n])", blank):
        words = m.group() in "+-" and statement_has_text(blank, m.start())
        if not words and m.start() not in counting:
            yield m.start(), m.group(), SWAPS[m.group()]


def sites_of(folder, path, kind):
    text = (ROOT / path).read_text()
    whole = folder == "measure" and path.endswith(".cpp")
    found = numbers(blanked(text), whole) if kind == "coefficient" else operators(blanked(text))
    taken = set()
    for start, old, new in found:
        begin = text.rfind("\n", 0, start) + 1
        source = text[begin:text.find("\n", start)]
        column = start - begin - (len(source) - len(source.lstrip())) + 1
        site = Site(kind, folder, path, text.count("\n", 0, start) + 1, source.strip(), start, old, new,
                    column)
        if site.key() not in taken:  # of lines that are equal in all, the first
            taken.add(site.key())
            yield site


def width_of_headers():
    """How many files of core reach each header, through whatever other headers."""
    reached = {}

    def reach(path):
        if path not in reached:
            reached[path] = set()
            if (ROOT / path).is_file():
                for one in re.findall(r'^#include "([^"]+)"', (ROOT / path).read_text(), re.M):
                    reached[path] |= {one} | reach(one)
        return reached[path]
    widths = {}
    for source in Path(ROOT, "core").glob("*/*.cpp"):
        for header in reach(str(source.relative_to(ROOT))):
            widths[header] = widths.get(header, 0) + 1
    return widths


def drawn(seed, text):
    return hashlib.sha256(f"{seed} {text}".encode()).hexdigest()


def sequence(seed, kind, folder):
    """All places of a folder: files in an order that the seed draws, in turns a place of each, the
    places of a file in an order that the seed draws from the line's text. So a sample reaches many
    files, and a line added elsewhere does not change it."""
    widths = width_of_headers()
    files = sorted((str(p.relative_to(ROOT)) for p in Path(ROOT, "core", folder).glob("*.[ch]pp")),
                   key=lambda path: drawn(seed, path))
    queues = [sorted(sites_of(folder, path, kind), key=lambda s: drawn(seed, s.key()))
              for path in files if widths.get(path, 0) <= WIDEST]
    order = []
    while any(queues):
        order += [queue.pop(0) for queue in queues if queue]
    return order
