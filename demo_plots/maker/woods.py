"""What grows in the demo tract: species, sizes, crowns. Invented, but meant to be believable."""

import math

# Crown width, feet = a + b DBH + c DBH^2 + d (live crown ratio, percent). Bechtold 2003, South. J.
# Appl. For. 27(4):269-278, coefficients from memory; they only shape these invented crowns.
CROWN = {
    "white oak": (3.2375, 1.5234, 0.0, 0.0455),
    "chestnut oak": (2.1480, 1.6928, -0.0176, 0.0569),
    "northern red oak": (2.8908, 1.4077, 0.0, 0.0643),
    "black oak": (2.8974, 1.3697, 0.0, 0.0671),
    "scarlet oak": (0.5656, 1.6766, 0.0, 0.0739),
    "pignut hickory": (3.9234, 1.5220, 0.0, 0.0405),
    "mockernut hickory": (1.5838, 1.6318, 0.0, 0.0721),
    "shagbark hickory": (4.5453, 1.3721, 0.0, 0.0430),
    "red maple": (2.7563, 1.4212, -0.0143, 0.0993),
    "sugar maple": (4.9399, 1.0727, 0.0, 0.1096),
    "American beech": (3.9361, 1.1500, 0.0, 0.1237),
    "white ash": (1.7625, 1.3413, 0.0, 0.0957),
    "yellow-poplar": (3.3543, 1.1627, 0.0, 0.0857),
    "bigtooth aspen": (0.6847, 1.1050, 0.0, 0.1420),
    "quaking aspen": (0.7315, 1.3180, 0.0, 0.0966),
    "black cherry": (3.0237, 1.1119, 0.0, 0.1112),
    "blackgum": (5.5037, 1.0567, 0.0, 0.0880),
    "American basswood": (1.6871, 1.2110, 0.0, 0.1194),
    "sassafras": (4.6311, 1.0108, 0.0, 0.0564),
    "eastern hemlock": (6.1924, 1.4491, -0.0178, 0.0),
}
CROWN_OTHER = CROWN["red maple"]
USUAL_CROWN_RATIO = {"open_grown": 60, "dominant": 50, "codominant": 40, "intermediate": 30,
                     "overtopped": 20}


def crown_radius(species, dbh, crown_class, live_crown=None):
    a, b, c, d = CROWN.get(species, CROWN_OTHER)
    ratio = live_crown if live_crown is not None else USUAL_CROWN_RATIO[crown_class]
    size = max(dbh, 5.0)
    width = a + b * size + c * size * size + d * ratio
    return width / 2.0 * min(1.0, dbh / 5.0)


def crowded_radius(dbh):
    """The ground share of a tree in a full stand drawn as a circle, feet (Gingrich 1967, from memory)."""
    milacres = -0.0507 + 0.1698 * dbh + 0.0317 * dbh * dbh
    return math.sqrt(43.56 * milacres / math.pi)


def open_radius(dbh):
    """Half the open-grown crown width, feet (Krajicek and others 1961, from memory)."""
    return (3.12 + 1.829 * dbh) / 2.0


# Rows: trees per acre of 3 in and more, mean DBH, its standard deviation, least and largest DBH.
COMPOSITION = {
    "Upland": {
        "white oak": (27, 12.2, 3.0, 5, 24), "chestnut oak": (18, 11.8, 2.9, 5, 22),
        "northern red oak": (15, 13.2, 3.2, 6, 24), "black oak": (9, 13.0, 3.0, 6, 22),
        "scarlet oak": (6, 12.8, 2.6, 6, 20), "pignut hickory": (9, 9.8, 3.0, 3, 17),
        "mockernut hickory": (5, 8.6, 2.8, 3, 15), "shagbark hickory": (2, 11.0, 2.5, 5, 17),
        "red maple": (38, 7.0, 2.6, 3, 15), "sourwood": (11, 6.3, 1.6, 3, 10),
        "blackgum": (9, 6.6, 2.3, 3, 14), "American beech": (3, 6.5, 2.5, 3, 13),
        "white ash": (4, 9.8, 2.6, 5, 15), "bigtooth aspen": (2, 10.8, 1.6, 7, 14),
        "black cherry": (2, 10.0, 2.5, 5, 15), "sassafras": (2, 6.2, 1.5, 3, 9),
        "eastern hophornbeam": (3, 4.2, 0.8, 3, 6), "serviceberry (species not told)": (2, 4.3, 0.9, 3, 7),
        "Virginia pine": (2, 9.2, 1.8, 5, 13),
    },
    "Cove": {
        "yellow-poplar": (27, 13.8, 3.9, 6, 27), "northern red oak": (16, 14.2, 3.4, 7, 26),
        "white oak": (11, 13.4, 3.2, 6, 23), "black oak": (3, 14.0, 3.0, 8, 21),
        "sugar maple": (26, 8.0, 3.4, 3, 18), "American basswood": (5, 11.5, 3.6, 5, 21),
        "white ash": (6, 11.0, 2.8, 5, 17), "black cherry": (4, 12.0, 2.8, 6, 18),
        "cucumbertree": (3, 11.5, 3.0, 5, 18), "shagbark hickory": (3, 12.0, 2.5, 6, 18),
        "bitternut hickory": (3, 10.0, 2.8, 4, 16), "red maple": (11, 9.4, 3.0, 3, 17),
        "American beech": (6, 8.4, 3.6, 3, 20), "eastern hemlock": (4, 8.2, 3.2, 3, 17),
        "black walnut": (1, 13.5, 2.5, 8, 19), "Ohio buckeye": (3, 7.0, 2.2, 3, 13),
        "slippery elm": (2, 7.6, 2.0, 4, 12), "American hornbeam": (3, 3.9, 0.6, 3, 6),
    },
    "Flat": {
        "white oak": (19, 12.2, 2.8, 6, 22), "northern red oak": (6, 13.0, 2.8, 7, 21),
        "pin oak": (3, 12.6, 2.4, 7, 19), "black oak": (3, 12.6, 2.6, 7, 19),
        "red maple": (48, 8.0, 2.6, 3, 16), "American beech": (24, 7.6, 3.2, 3, 22),
        "sugar maple": (8, 6.8, 2.4, 3, 14), "blackgum": (6, 7.4, 2.6, 3, 14),
        "white ash": (6, 9.0, 2.6, 4, 14), "quaking aspen": (3, 9.8, 1.8, 6, 13),
        "shagbark hickory": (4, 10.6, 2.6, 5, 17), "black cherry": (2, 10.8, 2.4, 6, 15),
        "American elm": (3, 7.2, 2.2, 3, 13), "eastern hophornbeam": (4, 4.2, 0.8, 3, 6),
        "sassafras": (2, 6.4, 1.4, 3, 9),
    },
}
# DBH of a usual canopy tree, inches, and total height that the canopy tends to, feet.
CANOPY_DBH = {"Upland": 12.6, "Cove": 14.6, "Flat": 11.6}
CANOPY_HEIGHT = {"Upland": 88.0, "Cove": 114.0, "Flat": 96.0}
# Midstory trees that seldom reach the canopy even when thick for their age.
SLOW = {"sourwood", "blackgum", "sassafras", "eastern hophornbeam", "American hornbeam", "Ohio buckeye",
        "serviceberry (species not told)", "American beech", "sugar maple", "eastern hemlock"}


def crown_class(stand, species, dbh, dice):
    relative = dbh / CANOPY_DBH[stand] * (0.86 if species in SLOW else 1.0) + dice.normal(0.0, 0.09)
    if relative >= 1.36:
        return "dominant"
    if relative >= 0.76:
        return "codominant"
    return "intermediate" if relative >= 0.54 else "overtopped"


def total_height(stand, dbh, crown, dice):
    """Whole feet: a curve that levels off, less for lower crowns, with some scatter."""
    share = {"dominant": 1.04, "codominant": 1.0, "intermediate": 0.88, "overtopped": 0.70}
    top = CANOPY_HEIGHT[stand] * share.get(crown, 1.0)
    height = 4.5 + (top - 4.5) * (1.0 - math.exp(-0.135 * dbh)) + dice.normal(0.0, 2.5)
    return int(height + 0.5)


def half_logs(stand, dbh, dice):
    """Merchantable 16-ft logs in halves, from DBH 11 in up."""
    logs = 1.0 + 0.16 * (dbh - 11.0) + (0.5 if stand == "Cove" else 0.0) + dice.normal(0.0, 0.3)
    return max(0.5, min(4.0, math.floor(2.0 * logs + 0.5) / 2.0))
