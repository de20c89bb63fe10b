"""The cruise: 36 BAF 10 points on a grid, the trees they tally and their regeneration counts."""

import math

from . import ground, woods
from .dice import Dice

BAF = 10.0
RADIUS_FACTOR = math.sqrt(43560.0 / 576.0 / BAF)  # feet of limiting distance for an inch of DBH
MIN_DBH = 3.0
REGEN_ACRES = 0.001
PATCH = 110.0  # feet; well beyond the limiting distance of the thickest tree, 27 in

POINTS = {"Upland": 15, "Cove": 12, "Flat": 9}
# How much denser than the composition the ground between the openings is.
DENSITY = {"Upland": 1.00, "Cove": 1.0, "Flat": 1.28}
EMPTY = {
    ("Upland", 7): "rock outcrop with laurel, no tree in",
    ("Cove", 5): "opening where the ash fell, briers",
    ("Flat", 4): "old log deck, blackberry",
}
NO_FIX = {("Upland", 11), ("Cove", 3), ("Flat", 8)}  # no position: the receiver had no fix

DEAD_SHARE = {"white ash": 0.45, "American elm": 0.3, "slippery elm": 0.25, "scarlet oak": 0.10,
              "black oak": 0.06, "bigtooth aspen": 0.15, "quaking aspen": 0.15, "sassafras": 0.15}
CLUMP_SHARE = {"red maple": 0.25, "American basswood": 0.35, "sourwood": 0.2, "sugar maple": 0.08}
DEN_SHARE = {"American basswood": 0.15, "American beech": 0.12, "blackgum": 0.12, "red maple": 0.06}

# Stems an acre: under 1 ft, 1 to 4.5 ft, over 4.5 ft and thinner than the smallest tallied tree.
REGENERATION = {
    "Upland": {"white oak": (1500, 300, 30), "chestnut oak": (1100, 260, 30), "red maple": (2300, 700, 160),
               "northern red oak": (600, 120, 0), "sassafras": (250, 160, 40), "blackgum": (150, 120, 60),
               "serviceberry (species not told)": (100, 130, 60)},
    "Cove": {"northern red oak": (450, 60, 0), "white oak": (300, 30, 0), "sugar maple": (2100, 800, 220),
             "yellow-poplar": (700, 60, 0), "red maple": (900, 200, 60), "American beech": (150, 300, 160),
             "pawpaw": (0, 350, 300), "white ash": (450, 130, 20)},
    "Flat": {"white oak": (900, 90, 0), "red maple": (2600, 900, 260), "American beech": (300, 700, 420),
             "northern red oak": (250, 30, 0), "sugar maple": (400, 200, 60),
             "eastern hophornbeam": (60, 120, 90)},
}


def _centres(stand, dice):
    """A square grid with a random start that puts exactly the wanted number inside, in walking order."""
    ring, wanted = ground.STANDS[stand], POINTS[stand]
    xs, ys = [p[0] for p in ring], [p[1] for p in ring]
    spacing = math.floor(math.sqrt(43560.0 * ground.ACRES[stand] / wanted))
    while True:
        x0, y0 = min(xs) + dice.between(0, spacing), min(ys) + dice.between(0, spacing)
        rows = []
        y = y0
        while y < max(ys):
            row = []
            x = x0
            while x < max(xs):
                if ground.inside(ring, x, y):
                    row.append((x, y))
                x += spacing
            rows.append(row if len(rows) % 2 == 0 else row[::-1])
            y += spacing
        found = [p for row in rows for p in row]
        if len(found) == wanted:
            return found


def _density_steps(n, dice):
    """n multipliers round 1 with a coefficient of variation of about a sixth, in random order."""
    steps = []
    for i in range(n):
        steps.append((dice.between(0.0, 1.0), 0.70 + 0.60 * (i + 0.5) / n))
    return [value for _, value in sorted(steps)]


def _status(species, dice):
    return "dead" if dice.chance(DEAD_SHARE.get(species, 0.015)) else "live"


def _grow(stand, density, dice):
    """Stems of a round patch about a point at (0, 0); big ones keep some room from each other."""
    acres = math.pi * PATCH**2 / ground.SQUARE_FEET_PER_ACRE
    stems = []
    for species, (per_acre, mean, sd, low, high) in woods.COMPOSITION[stand].items():
        for _ in range(dice.poisson(per_acre * density * acres)):
            stems.append((dice.bounded(mean, sd, low, high), species))
    stems.sort(reverse=True)
    grown = []
    for dbh, species in stems:
        for _ in range(15):
            r, turn = PATCH * math.sqrt(dice.between(0.0, 1.0)), dice.between(0.0, 2.0 * math.pi)
            x, y = r * math.sin(turn), r * math.cos(turn)
            room = [0.45 * (woods.crowded_radius(dbh) + woods.crowded_radius(t[0])) if dbh > 6.0 else 3.0
                    for t in grown]
            if all(math.hypot(x - t[2], y - t[3]) >= need for t, need in zip(grown, room)):
                break
        grown.append((dbh, species, x, y))
    return grown


def _recorded_dbh(dbh):
    """Tape to the tenth from 8 in; a stick to the whole inch below."""
    return math.floor(dbh * 10.0 + 0.5) / 10.0 if dbh >= 8.0 else math.floor(dbh + 0.5)


def _conditions(species, dbh, status, dice):
    found = []
    if status == "dead":
        if dice.chance(0.4):
            found.append("broken_top")
        if dice.chance(0.35):
            found.append("cavity_high")
        if dice.chance(0.4) and species != "white ash":
            found.append("roost_bark")
        return found
    if dbh >= 9.0 and dice.chance(DEN_SHARE.get(species, 0.02)):
        found += ["den", "cavity_high"]
    if species == "shagbark hickory" and dbh >= 9.0:
        found.append("roost_bark")
    if species == "white ash":
        found.append("borer_signs")
    if species == "American beech" and dbh >= 5.0 and dice.chance(0.5):
        found.append("beech_bark")
    if species == "black cherry" and dice.chance(0.3):
        found.append("canker")
    if dice.chance(0.03):
        found.append("vines")
    if dice.chance(0.02):
        found.append("basal_wound")
    return found


def _tree(stand, species, dbh, measured, dice):
    """The facts of one tallied tree; on measured points more is read."""
    status = _status(species, dice)
    crown = woods.crown_class(stand, species, dbh, dice) if status == "live" else ""
    tree = {"species": species, "dbh_in": dbh, "stems": 1, "edge_count": 1, "status": status,
            "crown_class": crown, "conditions": _conditions(species, dbh, status, dice)}
    if status == "live" and species == "white ash":
        tree["dieback_pct"] = dice.pick({10: 2, 25: 3, 40: 3, 60: 2, 75: 1})
    if measured:
        tree["height_ft"] = woods.total_height(stand, dbh, crown, dice)
        if "broken_top" in tree["conditions"]:
            tree["height_ft"] = int(tree["height_ft"] * dice.between(0.35, 0.7))
        if status == "live":
            usual = woods.USUAL_CROWN_RATIO[crown]
            tree["live_crown_pct"] = max(10, 5 * int(dice.normal(usual, 6.0) / 5.0 + 0.5))
    if status == "live" and dbh < 11.0 and dice.chance(CLUMP_SHARE.get(species, 0.0)):
        tree["stems"] = 2
        tree["conditions"].append("clump")
    if status == "live" and dbh >= 11.0:
        tree["logs"] = woods.half_logs(stand, dbh, dice)
    return tree


def _tally(stand, centre, stems, measured, dice):
    """Trees within their limiting distance; counted twice where the walk through ends outside."""
    ring = ground.STANDS[stand]
    trees = []
    for exact_dbh, species, dx, dy in stems:
        distance = math.hypot(dx, dy)
        dbh = _recorded_dbh(exact_dbh)
        if dbh < MIN_DBH or distance > RADIUS_FACTOR * dbh:
            continue
        if not ground.inside(ring, centre[0] + dx, centre[1] + dy):
            continue
        tree = _tree(stand, species, dbh, measured, dice)
        if not ground.inside(ring, centre[0] + 2.0 * dx, centre[1] + 2.0 * dy):
            tree["edge_count"] = 2
        azimuth = int(math.degrees(math.atan2(dx, dy)) % 360.0)
        tree["_order"] = azimuth
        borderline = distance > 0.96 * RADIUS_FACTOR * dbh
        taped = math.floor(distance * 10.0) / 10.0
        if borderline or tree["edge_count"] == 2:
            tree["azimuth_deg"], tree["distance_ft"] = azimuth, taped
            tree["note"] = "borderline, taped" if borderline else "walk through, counts twice"
        trees.append(tree)
    return _merge(sorted(trees, key=lambda t: t["_order"]))


def _merge(trees):
    """Like small stems of one point share a row, as a crew tallies them."""
    rows = []
    for tree in trees:
        plain = tree["dbh_in"] < 8.0 and "distance_ft" not in tree and not tree["conditions"]
        for row in rows:
            same = all(row.get(k) == tree.get(k)
                       for k in ("species", "dbh_in", "status", "crown_class", "dieback_pct"))
            if plain and same and "distance_ft" not in row and not row["conditions"]:
                row["stems"] += 1
                for key in ("height_ft", "live_crown_pct"):
                    row.pop(key, None)
                break
        else:
            rows.append(tree)
    return rows


def _regeneration(stand, dice):
    rows = []
    for species, rates in REGENERATION[stand].items():
        clumping = dice.pick({0.2: 2, 0.8: 3, 2.0: 2})
        for height, rate in zip(("under_1_ft", "from_1_to_4_5_ft", "over_4_5_ft"), rates):
            count = dice.poisson(rate * REGEN_ACRES * clumping)
            if count:
                rows.append({"species": species, "height_class": height, "count": count})
    return rows


def _plot(stand, number, centre, dice):
    slope = {"Upland": (4, 26), "Cove": (8, 42), "Flat": (0, 7)}[stand]
    plot = {"stand": stand, "plot": f"{stand[0]}{number:02d}", "status": "measured",
            "slope_pct": int(dice.between(*slope) + 0.5), "note": ""}
    accuracy = round(dice.between(2.5, 9.0), 1)
    if (stand, number) in NO_FIX:
        plot["note"] = "no fix under the leaves, found by pacing"
    else:
        plot["lat"], plot["lon"] = ground.lat_lon(*centre)
        plot["accuracy_m"] = accuracy
    return plot


def cruise(seeds):
    """All plots in walking order; each is (plot row, its tree rows, its regeneration rows).

    seeds gives each stand its own, so that one stand can be drawn anew and the others stay.
    """
    result = []
    for stand in POINTS:
        seed = seeds[stand]
        dice = Dice(seed)
        centres = _centres(stand, dice)
        steps = _density_steps(POINTS[stand], dice)
        for i, centre in enumerate(centres):
            own = Dice(seed + i + 1)
            plot = _plot(stand, i + 1, centre, own)
            trees = []
            if (stand, i + 1) in EMPTY:
                plot["status"], plot["note"] = "empty", EMPTY[(stand, i + 1)]
            else:
                stems = _grow(stand, DENSITY[stand] * steps[i], own)
                trees = _tally(stand, centre, stems, i % 3 == 0, own)
            result.append((plot, trees, _regeneration(stand, own)))
    return result
