#!/usr/bin/env python3
"""Works out the summary of a cruise by its own short road, to check the program against.

Usage: check_summary.py [FOLDER]            writes FOLDER/expected_summary.tsv
       check_summary.py --show PLOT [FOLDER] shows the sums of one plot, tree by tree
       check_summary.py --r R_OUTPUT [FOLDER] compares with the output of check_summary.R

Nothing is shared with the program: standard library only, formulas written out from their definitions
(named beside each figure in the last column, worked through in working.md). Student t is found by
halving on its distribution function, which comes from the incomplete beta function by its continued
fraction (Abramowitz and Stegun 26.5.8 and 26.7.1, from memory); it is tested below against values
printed in the NIST/SEMATECH e-Handbook, 1.3.6.7.2.
"""

import csv
import json
import math
import os
import sys

K = math.pi / 576.0  # square feet of basal area for DBH in inches, squared
WHITE_OAKS = {"white oak", "chestnut oak"}
RED_OAKS = {"northern red oak", "black oak", "scarlet oak", "pin oak"}
MAIN_CANOPY = {"open_grown", "dominant", "codominant", "intermediate"}
LEVEL = 0.95


def beta_fraction(a, b, x):
    """Continued fraction of the incomplete beta function, by Lentz's method."""
    tiny = 1e-300
    c, d = 1.0, 1.0 - (a + b) * x / (a + 1.0)
    d = 1.0 / (d if abs(d) > tiny else tiny)
    h = d
    for m in range(1, 1000):
        for step in (
            m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)),
        ):
            d = 1.0 + step * d
            d = 1.0 / (d if abs(d) > tiny else tiny)
            c = 1.0 + step / c
            c = c if abs(c) > tiny else tiny
            h *= d * c
        if abs(d * c - 1.0) < 1e-16:
            break
    return h


def incomplete_beta(a, b, x):
    front = math.exp(math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b)
                     + a * math.log(x) + b * math.log(1.0 - x))
    if x < (a + 1.0) / (a + b + 2.0):
        return front * beta_fraction(a, b, x) / a
    return 1.0 - front * beta_fraction(b, a, 1.0 - x) / b


def student_t(df, level):
    """The t that a share `level` of the two-sided distribution stays within."""
    low, high = 0.0, 1e4
    for _ in range(200):
        middle = (low + high) / 2.0
        outside = incomplete_beta(df / 2.0, 0.5, df / (df + middle * middle)) if middle else 1.0
        if 1.0 - outside < level:
            low = middle
        else:
            high = middle
    return (low + high) / 2.0


def test_student_t():
    for df, printed in ((1, 12.706), (8, 2.306), (11, 2.201), (14, 2.145), (30, 2.042), (33, 2.035)):
        assert abs(student_t(df, 0.95) - printed) < 5e-4, df


def read(folder, name):
    with open(os.path.join(folder, name), encoding="utf-8", newline="") as f:
        return list(csv.DictReader(f))


def tree_factor(tree, baf):
    """Trees an acre that one tallied stem stands for."""
    return baf / (K * float(tree["dbh_in"]) ** 2)


def times(tree):
    return int(tree["stems"] or 1) * int(tree["edge_count"] or 1)


class Cruise:
    """Plot values z of one quantity: {stand: [one value for each plot, zero where nothing was found]}."""

    def __init__(self, folder):
        self.acres = {r["stand"]: float(r["acres"]) for r in read(folder, "stands.csv")}
        self.plots = [r for r in read(folder, "plots.csv") if r["status"] in ("measured", "empty")]
        self.trees = read(folder, "trees.csv")
        name = os.path.join(folder, "regeneration.csv")
        self.regeneration = read(folder, "regeneration.csv") if os.path.exists(name) else []
        self.baf = {(r["stand"], r["plot"]): float(r["baf_ft2_ac"]) for r in self.plots}

    def per_plot(self, value, rows=None):
        """value(row, baf) is what one row adds to an acre of its plot."""
        sums = {(r["stand"], r["plot"]): [] for r in self.plots}
        for row in self.trees if rows is None else rows:
            key = (row["stand"], row["plot"])
            sums[key].append(value(row, self.baf[key]))
        z = {}
        for (stand, _), parts in sums.items():
            z.setdefault(stand, []).append(math.fsum(parts))
        return z

    def basal_area(self, wanted):
        return self.per_plot(lambda t, baf: baf * times(t) if wanted(t) else 0.0)

    def density(self, wanted, power=0):
        return self.per_plot(lambda t, baf: tree_factor(t, baf) * times(t) * float(t["dbh_in"]) ** power
                             if wanted(t) else 0.0)

    def stems(self, wanted):
        area = float(self.plots[0]["regen_plot_ac"])
        return self.per_plot(lambda r, _: int(r["count"]) / area if wanted(r) else 0.0, self.regeneration)


def one_stand(z):
    n = len(z)
    mean = math.fsum(z) / n
    sd = math.sqrt(math.fsum((v - mean) ** 2 for v in z) / (n - 1))
    return {"n": n, "mean": mean, "sd": sd, "se": sd / math.sqrt(n), "df": n - 1.0}


def over_stands(z, acres):
    """Means weighted by acres; degrees of freedom after Satterthwaite."""
    total = math.fsum(acres.values())
    parts = [(acres[s] / total, one_stand(v)) for s, v in z.items()]
    g = [w * w * p["se"] ** 2 for w, p in parts]
    variance = math.fsum(g)
    shares = math.fsum(gi * gi / p["df"] for gi, (_, p) in zip(g, parts))
    return {"n": sum(p["n"] for _, p in parts), "mean": math.fsum(w * p["mean"] for w, p in parts),
            "se": math.sqrt(variance), "df": variance**2 / shares if shares else None}


def stocking(n, d, d2):
    """Gingrich 1967, coefficients from memory."""
    return -0.00507 * n + 0.01698 * d + 0.00317 * d2


def crown_competition(n, d, d2):
    """Krajicek, Brinkman and Gingrich 1961, coefficients from memory."""
    return 0.0175 * n + 0.0205 * d + 0.0060 * d2


def authalic_sine(lat):
    """Sine of the latitude on the sphere of equal area, WGS 84 (Snyder 1987, Map projections: a working
    manual, eq. 3-11 and 3-12, from memory)."""
    e2 = 1.0 / 298.257223563 * (2.0 - 1.0 / 298.257223563)
    e = math.sqrt(e2)

    def q(sine):
        part = math.log((1.0 - e * sine) / (1.0 + e * sine)) / (2.0 * e)
        return (1.0 - e2) * (sine / (1.0 - e2 * sine * sine) - part)

    return q(math.sin(math.radians(lat))) / q(1.0), q(1.0)


def ring_acres(ring):
    """Area of a ring of [longitude, latitude] on the ellipsoid; edges straight in authalic sine and
    longitude, which over one tract is the geodesic to far better than the digits kept."""
    twice = 0.0
    for (lon1, lat1), (lon2, lat2) in zip(ring, ring[1:]):
        twice += math.radians(lon2 - lon1) * (authalic_sine(lat1)[0] + authalic_sine(lat2)[0])
    square_metres = abs(twice) / 2.0 * 6378137.0**2 * authalic_sine(0.0)[1] / 2.0
    return square_metres / (43560.0 * 0.3048**2)


def map_acres(folder):
    name = os.path.join(folder, "map.geojson")
    if not os.path.exists(name):
        return {}
    with open(name, encoding="utf-8") as f:
        features = json.load(f)["features"]
    return {f["properties"]["stand"]: ring_acres(f["geometry"]["coordinates"][0])
            for f in features if f["properties"]["kind"] == "stand"}


class Table:
    def __init__(self):
        self.rows = []

    def add(self, stand, figure, value, unit, how, share=1e-9):
        # Same formulas in double arithmetic: agreement to 1e-9 of the value, where nothing else is said.
        tolerance = max(share * abs(value), 1e-12)
        self.rows.append((stand, figure, repr(float(value)), unit, f"{tolerance:.1e}", how))

    def estimate(self, stand, name, unit, e, acres, how):
        """Mean and error of one quantity, per acre and in total; of species and classes less is told."""
        self.add(stand, name + ".mean", e["mean"], unit + "/ac", how)
        if not e["df"] or e["se"] == 0.0:
            return  # found on no plot: nothing is known of its error
        self.add(stand, name + ".se", e["se"], unit + "/ac", "sd / sqrt(n); over stands sqrt(sum W^2 se^2)")
        self.add(stand, name + ".df", e["df"], "", "n - 1; over stands Satterthwaite")
        if ".species." in name or ".class." in name:
            return
        t = student_t(e["df"], LEVEL)
        half = t * e["se"]
        self.add(stand, name + ".t", t, "", "two-sided 95 %, numerically")
        self.add(stand, name + ".half", half, unit + "/ac", "t se; the interval is mean -+ half")
        self.add(stand, name + ".half_pct", 100.0 * half / e["mean"], "%", "100 t se / mean")
        if "sd" in e:
            self.add(stand, name + ".cv_pct", 100.0 * e["sd"] / e["mean"], "%", "100 sd / mean")
        self.add(stand, name + ".total", e["mean"] * acres, unit, "mean x acres")
        self.add(stand, name + ".total_se", e["se"] * acres, unit, "se x acres")


def live(t):
    return t["status"] != "dead"


def dbh_class(t):
    """2-inch classes: class 6 holds 5.0 to 6.9 in."""
    return 2 * math.floor((float(t["dbh_in"]) + 1.0) / 2.0)


def in_guard(t):
    """Main canopy, and all live trees of 5 in and more (rule R2.27)."""
    return live(t) and (t["crown_class"] in MAIN_CANOPY or float(t["dbh_in"]) >= 5.0)


def quantities(cruise):
    """Name, unit, plot values and meaning of every quantity with an error."""
    trees = [t for t in cruise.trees if live(t)]
    yield "ba", "ft2", cruise.basal_area(live), "BAF x stems x edge count, live trees"
    yield "tpa", "trees", cruise.density(live), "BAF / (pi/576 DBH^2) each, live trees"
    groups = (("white_oak_group", WHITE_OAKS), ("red_oak_group", RED_OAKS), ("oak", WHITE_OAKS | RED_OAKS))
    for name, members in groups:
        yield "ba." + name, "ft2", cruise.basal_area(lambda t: live(t) and t["species"] in members), "as ba"
    yield "ba.dead", "ft2", cruise.basal_area(lambda t: not live(t)), "as ba, dead trees"
    yield "tpa.dead", "trees", cruise.density(lambda t: not live(t)), "as tpa, dead trees"
    for s in sorted({t["species"] for t in trees}):
        chosen = lambda t, s=s: live(t) and t["species"] == s
        yield f"ba.species.{s}", "ft2", cruise.basal_area(chosen), "as ba"
        yield f"tpa.species.{s}", "trees", cruise.density(chosen), "as tpa"
    for c in sorted({dbh_class(t) for t in trees}):
        chosen = lambda t, c=c: live(t) and dbh_class(t) == c
        yield f"ba.class.{c}", "ft2", cruise.basal_area(chosen), "as ba; class 6 is 5.0 to 6.9 in"
        yield f"tpa.class.{c}", "trees", cruise.density(chosen), "as tpa; class 6 is 5.0 to 6.9 in"
    for height in ("under_1_ft", "from_1_to_4_5_ft", "over_4_5_ft"):
        all_of = lambda r, h=height: r["height_class"] == h
        oaks = lambda r, h=height: r["height_class"] == h and r["species"] in WHITE_OAKS | RED_OAKS
        yield f"regen.{height}", "stems", cruise.stems(all_of), "count / regeneration plot acres"
        yield f"regen.oak.{height}", "stems", cruise.stems(oaks), "count / regeneration plot acres"


def stand_means(cruise, wanted, stand):
    """Trees, sum of DBH, sum of DBH squared, per acre of one stand."""
    return [one_stand(cruise.density(wanted, p)[stand])["mean"] for p in (0, 1, 2)]


def summary(folder):
    cruise = Cruise(folder)
    table = Table()
    whole = math.fsum(cruise.acres.values())
    table.add("tract", "acres", whole, "ac", "sum of stands.csv")
    for stand in cruise.acres:
        own = [p for p in cruise.plots if p["stand"] == stand]
        table.add(stand, "plots", len(own), "", "measured and empty")
        table.add(stand, "plots_empty", sum(p["status"] == "empty" for p in own), "", "")
    for stand, acres in map_acres(folder).items():
        table.add(stand, "map_acres", acres, "ac", "outline of map.geojson on WGS 84, authalic sphere", 1e-5)
        assert abs(acres / cruise.acres[stand] - 1.0) < 0.01, (stand, acres)
    for name, unit, z, how in quantities(cruise):
        for stand in cruise.acres:
            if any(z[stand]):
                table.estimate(stand, name, unit, one_stand(z[stand]), cruise.acres[stand], how)
        table.estimate("tract", name, unit, over_stands(z, cruise.acres), whole, how + "; stands by acres")
    sums = {}
    for stand in cruise.acres:
        n, d, d2 = sums[stand] = stand_means(cruise, live, stand)
        table.add(stand, "qmd", math.sqrt(d2 / n), "in", "root of mean DBH^2, trees/ac as weights")
        table.add(stand, "mean_dbh", d / n, "in", "mean DBH, trees/ac as weights")
        table.add(stand, "stocking.live", stocking(n, d, d2), "%", "Gingrich 1967, every live tree tallied")
        table.add(stand, "ccf.live", crown_competition(n, d, d2), "%", "Krajicek et al. 1961")
        g = stand_means(cruise, in_guard, stand)
        table.add(stand, "stocking.guard", stocking(*g), "%",
                  "Gingrich 1967, without overtopped trees under 5 in (R2.27)")
    n, _, d2 = [math.fsum(cruise.acres[s] / whole * v[i] for s, v in sums.items()) for i in range(3)]
    table.add("tract", "qmd", math.sqrt(d2 / n), "in", "from the tract's mean BA and trees/ac")
    return table.rows


def show(folder, plot):
    """Every row of one plot with what it adds; this is what working.md prints."""
    cruise = Cruise(folder)
    ba = tpa = 0.0
    for t in (t for t in cruise.trees if t["plot"] == plot):
        factor = tree_factor(t, cruise.baf[(t["stand"], plot)])
        count = times(t)
        if live(t):
            ba += cruise.baf[(t["stand"], plot)] * count
            tpa += factor * count
        print(f'{t["species"]:18} {t["dbh_in"]:>5} in  {t["status"]:4}  x{count}  {factor:9.4f} trees/ac each')
    print(f"live: BA {ba:.0f} ft2/ac, {tpa:.4f} trees/ac")


def compare_with_r(folder, r_output):
    """Every figure that R printed must be in our table, equal to 1e-9."""
    ours = {(r[0], r[1]): float(r[2]) for r in summary(folder)}
    compared = 0
    with open(r_output, encoding="utf-8") as f:
        for line in f:
            stand, figure, value = line.rstrip("\n").split("\t")
            mine, theirs = ours[(stand, figure)], float(value)
            assert abs(mine - theirs) <= 1e-9 * max(1.0, abs(theirs)), (stand, figure, mine, theirs)
            compared += 1
    assert compared > 0
    print(f"{compared} figures of R agree to 1e-9")


def main(arguments):
    test_student_t()
    option = arguments.pop(0) if arguments and arguments[0] in ("--show", "--r") else None
    operand = arguments.pop(0) if option else None
    folder = arguments[0] if arguments else os.path.dirname(os.path.abspath(__file__))
    if option == "--show":
        return show(folder, operand)
    if option == "--r":
        return compare_with_r(folder, operand)
    with open(os.path.join(folder, "expected_summary.tsv"), "w", encoding="utf-8", newline="") as f:
        f.write("stand\tfigure\tvalue\tunit\ttolerance\thow\n")
        for row in summary(folder):
            f.write("\t".join(row) + "\n")


if __name__ == "__main__":
    main(sys.argv[1:])
