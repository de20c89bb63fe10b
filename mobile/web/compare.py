#!/usr/bin/python3
"""Holds the published rows as WebAssembly to those of the native build: compare.py WASM.tsv NATIVE.tsv

Sines, powers and the like come from the C library, and two libraries may differ in the last bit. So all four decimals
that the tables print must agree, and the whole numbers to 13 digits; how many differ at all is told.
"""
import csv
import sys

LARGEST = 1e-13


def rows(path):
    with open(path, newline="", encoding="utf-8") as text:
        return {row["id"]: row for row in csv.DictReader(text, delimiter="\t", quoting=csv.QUOTE_NONE)}


def main(here, native):
    here, native = rows(here), rows(native)
    other, worst, wrong = 0, 0.0, []
    for name, row in here.items():
        twin = native.get(name)
        if twin is None:
            wrong.append(f"{name}: no such row natively")
            continue
        a, b = float(row["digits"]), float(twin["digits"])
        if row["digits"] == twin["digits"]:
            continue
        other += 1
        apart = abs(a - b) / max(abs(a), abs(b))
        worst = max(worst, apart)
        if not apart <= LARGEST or row["got"] != twin["got"] or row["met"] != twin["met"]:
            wrong.append(f"{name} ({row['quantity']}): {row['digits']}, natively {twin['digits']}")
    if not here or wrong:
        print("\n".join(wrong) or "no rows", file=sys.stderr)
        return 1
    print(f"{len(here)} published rows: {len(here) - other} in every digit as natively; {other} not, by {worst:.1g} "
          "of themselves at most")
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
