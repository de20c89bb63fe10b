"""Drawing of marking-walk blocks: crop trees, their neighbours, and what a cruiser sees looking up.

A block holds stems at places in feet. Cards are read off the places, so a neighbour that stands on
two cards has one place, and the distances and azimuths of both cards lead to it.
"""

import math

from . import ground, woods

CLOSED_GAP = 2.0  # a gap under two feet is not free (release rule R1.52)
SIDE_NAMES = "NESW"
CANOPY = ("open_grown", "dominant", "codominant", "intermediate")


def side_of(azimuth):
    return SIDE_NAMES[int(((azimuth + 45.0) % 360.0) // 90.0)]


def offset(x, y, azimuth, distance):
    turn = math.radians(azimuth)
    return x + distance * math.sin(turn), y + distance * math.cos(turn)


def seen_by_place(home, stem):
    """What a cruiser under home sees of stem's crown; both have place, crown radius, class and DBH."""
    d = math.hypot(stem["x"] - home["x"], stem["y"] - home["y"])
    if d > home["radius"] + stem["radius"] + CLOSED_GAP:
        return "none"
    if stem["crown"] == "overtopped" or (stem["crown"] == "intermediate" and d < home["radius"] * 0.7):
        return "below"
    if stem["dbh"] > 1.05 * home["dbh"] and d < 0.75 * (home["radius"] + stem["radius"]):
        return "over"
    return "touches"


class Block:
    """One walked block of one stand; its corner and size are in tract feet."""

    def __init__(self, stand, corner, size, dice):
        self.stand, self.corner, self.size, self.dice = stand, corner, size, dice
        self.stems = []    # every stem on a card, crop trees first in order of their tags
        self.cards = {}    # crop tag -> list of (stem, seen)
        self.open_to_more = {}  # crop tag -> sides that the seeded filling may still use

    def acres(self):
        return self.size[0] * self.size[1] / ground.SQUARE_FEET_PER_ACRE

    def _stem(self, x, y, species, dbh, crown, facts):
        stem = {"x": x, "y": y, "species": species, "dbh": dbh, "crown": crown, "status": "live",
                "conditions": [], "note": "", "crop": False, "tag": ""}
        stem.update(facts)
        grown = stem["crown"] or "codominant"
        ratio = stem.get("live_crown")
        stem["radius"] = woods.crown_radius(species, dbh, grown, ratio) * self.dice.between(0.93, 1.07)
        self.stems.append(stem)
        return stem

    def crop(self, tag, x, y, species, dbh, crown="codominant", fill="", **facts):
        """A crop tree at x, y of the block; fill names the sides left to the seeded filling."""
        facts.setdefault("live_crown", self.dice.pick({35: 2, 40: 4, 45: 4, 50: 2}))
        stem = self._stem(x, y, species, dbh, crown, dict(facts, crop=True, tag=str(tag)))
        self.cards[str(tag)] = []
        self.open_to_more[str(tag)] = fill
        return stem

    def find(self, tag):
        return next(s for s in self.stems if s["crop"] and s["tag"] == str(tag))

    def near(self, tag, azimuth, distance, species, dbh, crown, seen, **facts):
        """A neighbour by azimuth and distance from a crop tree, put on that tree's card."""
        home = self.find(tag)
        x, y = offset(home["x"], home["y"], azimuth, distance)
        stem = self._stem(x, y, species, dbh, crown, facts)
        self.cards[str(tag)].append((stem, seen))
        return stem

    def also(self, tag, stem, seen):
        """The same neighbour on a second card."""
        self.cards[str(tag)].append((stem, seen))

    def pair(self, tag, other):
        a, b = self.find(tag), self.find(other)
        self.also(tag, b, "touches")
        self.also(other, a, "touches")

    def _fits(self, x, y, dbh, crown, radius, home):
        """Room at the foot for a new stem, and no contact with a card that is already full."""
        for s in self.stems:
            d = math.hypot(x - s["x"], y - s["y"])
            both = s["crown"] in CANOPY and crown in CANOPY
            need = 0.55 * (woods.crowded_radius(dbh) + woods.crowded_radius(s["dbh"])) if both else 4.0
            if d < need:
                return False
            if s["crop"] and s is not home and crown in CANOPY and d < radius + s["radius"] + 3.0:
                azimuth = math.degrees(math.atan2(x - s["x"], y - s["y"])) % 360.0
                if side_of(azimuth) not in self.open_to_more[s["tag"]]:
                    return False
        return True

    def fill(self, mixes, shares):
        """Neighbours on the sides left open, by chance: shares of touching, below, none and open."""
        for tag in list(self.cards):
            home = self.find(tag)
            for side in self.open_to_more[tag]:
                if any(self._side_from(home, s) == side for s, _ in self.cards[tag]):
                    continue  # a neighbour of an earlier card already stands there
                kind = self.dice.pick(shares)
                if kind != "open":
                    self._place(home, side, kind, mixes[kind])

    def _side_from(self, home, stem):
        return side_of(math.degrees(math.atan2(stem["x"] - home["x"], stem["y"] - home["y"])) % 360.0)

    def _place(self, home, side, kind, mix):
        dice = self.dice
        for _ in range(200):
            species = dice.pick({name: row[0] for name, row in mix.items()})
            _, mean, sd, low, high = mix[species]
            dbh = math.floor(dice.bounded(mean, sd, low, high) * 10.0 + 0.5) / 10.0
            crown = "overtopped" if kind == "below" else self._crown_for(dbh)
            radius = woods.crown_radius(species, dbh, crown)
            reach = home["radius"] + radius
            low_high = {"touch": (0.66 * reach, 0.96 * reach), "none": (reach + 4.0, reach + 11.0),
                        "below": (4.5, 0.8 * home["radius"])}[kind]
            azimuth = SIDE_NAMES.index(side) * 90.0 + dice.between(-38.0, 38.0)
            x, y = offset(home["x"], home["y"], azimuth, dice.between(*low_high))
            if self._fits(x, y, dbh, crown, radius, home):
                break
        else:
            return
        sick = species == "American beech" and dbh >= 5.0 and dice.chance(0.5)
        stem = self._stem(x, y, species, dbh, crown, {"conditions": ["beech_bark"] if sick else []})
        for tag in self.cards:
            other = self.find(tag)
            seen = seen_by_place(other, stem)
            if other is home or (seen in ("touches", "over") and crown in CANOPY):
                self.cards[tag].append((stem, seen))

    def _crown_for(self, dbh):
        relative = dbh / woods.CANOPY_DBH[self.stand] + self.dice.normal(0.0, 0.05)
        return "dominant" if relative > 1.25 else "codominant" if relative > 0.72 else "intermediate"

    def complete(self):
        """Every live crown that reaches a crop tree must be on its card, and no two stems share a spot."""
        for tag, card in self.cards.items():
            home = self.find(tag)
            listed = [s for s, _ in card]
            assert len({id(s) for s in listed}) == len(listed), (tag, "listed twice")
            for s in self.stems:
                if s is home:
                    continue
                d = math.hypot(s["x"] - home["x"], s["y"] - home["y"])
                assert d >= 4.0, (tag, s["species"], "too close", d)
                if s in listed or s["status"] == "dead":
                    continue
                reach = home["radius"] + s["radius"]
                limit = home["radius"] if s["crown"] == "overtopped" else reach + CLOSED_GAP
                assert d > limit, (tag, s["species"], s["dbh"], s["tag"], "not on the card", d, limit)
        self._crop_spacing()
        self._seen_agrees()

    def _crop_spacing(self):
        crops = [s for s in self.stems if s["crop"]]
        for i, a in enumerate(crops):
            for b in crops[i + 1:]:
                d = math.hypot(a["x"] - b["x"], a["y"] - b["y"])
                paired = any(s is b for s, _ in self.cards[a["tag"]])
                room = woods.open_radius(a["dbh"]) + woods.open_radius(b["dbh"])
                assert paired or d > room, (a["tag"], b["tag"], "closer than crop trees may stand", d, room)

    def _seen_agrees(self):
        for tag, card in self.cards.items():
            home = self.find(tag)
            for s, seen in card:
                d = math.hypot(s["x"] - home["x"], s["y"] - home["y"])
                reach = home["radius"] + s["radius"]
                if seen in ("touches", "over"):
                    assert d <= reach + CLOSED_GAP, (tag, s["species"], seen, d, reach)
                if seen == "none" and s["status"] == "live":
                    assert d > reach + CLOSED_GAP, (tag, s["species"], seen, d, reach)
                if seen == "below" and s["status"] == "live":
                    assert s["crown"] in ("overtopped", "intermediate"), (tag, s["species"])
