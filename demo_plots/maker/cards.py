"""The 45 crop tree cards: what stands where, written by hand, with the other sides left to chance.

Places are feet in the block, x east and y north; azimuths are true. Each hand-written case says what
it is for; what a careful forester would decide is in ../expected_marks.tsv.
"""

from .walk import Block
from . import ground

# Rows as in woods.COMPOSITION: weight, mean DBH, standard deviation, least, largest.
UPLAND_MIX = {
    "touch": {"red maple": (62, 9.6, 1.8, 6.5, 14), "sourwood": (7, 7.8, 1.0, 6, 10),
              "blackgum": (4, 8.6, 1.6, 6, 12), "pignut hickory": (6, 10.4, 1.6, 7, 13),
              "chestnut oak": (5, 11.2, 1.4, 9, 14), "mockernut hickory": (3, 9.2, 1.4, 7, 12)},
    "none": {"red maple": (4, 9.8, 1.6, 7, 13), "chestnut oak": (3, 11.8, 1.6, 9, 15),
             "white oak": (3, 12.0, 1.6, 9, 15), "blackgum": (1, 8.6, 1.4, 6, 12)},
    "below": {"red maple": (4, 4.6, 0.8, 3, 6), "sourwood": (2, 5.0, 0.7, 4, 6),
              "sassafras": (1, 5.4, 0.7, 4, 7), "serviceberry (species not told)": (1, 4.4, 0.6, 3, 6)},
}
COVE_MIX = {
    "touch": {"yellow-poplar": (30, 13.0, 2.4, 9, 18), "sugar maple": (25, 9.8, 1.8, 7, 14),
              "red maple": (20, 10.2, 1.6, 7, 14),
              "American beech": (6, 9.4, 1.6, 7, 13), "Ohio buckeye": (3, 8.2, 1.0, 6, 11)},
    "none": {"yellow-poplar": (4, 14.0, 2.0, 10, 18), "sugar maple": (3, 9.6, 1.6, 7, 13),
             "northern red oak": (2, 13.0, 1.6, 10, 16)},
    "below": {"sugar maple": (4, 4.8, 0.8, 3, 6), "American hornbeam": (2, 4.0, 0.5, 3, 5),
              "American beech": (2, 5.2, 0.8, 4, 7)},
}
FLAT_MIX = {
    "touch": {"red maple": (52, 9.2, 1.6, 6.5, 13), "American beech": (26, 9.0, 1.6, 6.5, 13),
              "sugar maple": (8, 8.4, 1.2, 6.5, 11), "blackgum": (5, 8.4, 1.2, 6.5, 11)},
    "none": {"red maple": (5, 9.4, 1.4, 7, 12), "American beech": (2, 8.8, 1.4, 7, 12),
             "white oak": (2, 11.4, 1.4, 9, 14)},
    "below": {"American beech": (4, 4.8, 0.8, 3, 6), "red maple": (3, 4.6, 0.8, 3, 6),
              "eastern hophornbeam": (2, 4.2, 0.5, 3, 5)},
}


def upland(dice):
    block = Block("Upland", (600.0, 0.0), (185.2, 200.0), dice)
    crop, near, also, pair = block.crop, block.near, block.also, block.pair

    # 101: the tree underneath. Only the two that crowd the crown are in the way.
    crop(101, 21, 28, "white oak", 16.2, "dominant", live_crown=45)
    near(101, 2, 6, "eastern hophornbeam", 4.6, "overtopped", "below")
    near(101, 120, 9, "red maple", 4.2, "overtopped", "below")
    near(101, 84, 21, "red maple", 11.8, "codominant", "touches")
    near(101, 276, 14, "pignut hickory", 8.0, "intermediate", "below",
         note="top stays below the oak's crown")
    near(101, 184, 33, "blackgum", 9.6, "codominant", "none")

    # 102 and 103: two good oaks in contact, one of each acorn group; a maple crowds both.
    crop(102, 80, 22, "white oak", 15.1)
    crop(103, 99, 21, "northern red oak", 16.0, live_crown=45)
    pair(102, 103)
    near(102, 350, 18, "red maple", 10.4, "codominant", "touches")
    maple = near(102, 151, 18.5, "red maple", 12.1, "codominant", "touches")
    also(103, maple, "touches")
    near(102, 244, 27.5, "red maple", 9.0, "intermediate", "none")
    near(103, 88, 20, "bigtooth aspen", 12.1, "codominant", "touches")

    # 104: an aspen again, but the haul trail is within reach of it.
    crop(104, 164, 29, "black oak", 14.4, fill="S")
    near(104, 100, 18, "bigtooth aspen", 11.2, "codominant", "touches", height=68)
    near(104, 15, 14, "red maple", 8.6, "intermediate", "touches", note="top pushes into the crown")
    near(104, 283, 8, "sassafras", 6.3, "overtopped", "below")

    # 105: left to chance but for its species.
    crop(105, 158, 80, "scarlet oak", 13.2, fill="NESW")

    # 106: a maple that reaches over.
    crop(106, 113, 72, "northern red oak", 14.8, fill="E")
    over = near(106, 262, 16.5, "red maple", 13.4, "dominant", "over")
    near(106, 20, 8, "blackgum", 5.8, "overtopped", "below")
    near(106, 176, 26.5, "pignut hickory", 8.6, "intermediate", "none")

    # 107: a shagbark in the way stays; it is food, roost bark and a good neighbour.
    crop(107, 69, 79, "black oak", 15.6)
    near(107, 282, 18, "shagbark hickory", 13.2, "codominant", "touches", conditions=["roost_bark"])
    near(107, 12, 18, "red maple", 11.2, "codominant", "touches")
    near(107, 196, 13, "sourwood", 7.5, "intermediate", "touches", note="top pushes into the crown")
    also(107, over, "none")

    # 108: a big oak that is failing is no crop tree; its maple is left alone.
    crop(108, 18, 74, "white oak", 17.6, live_crown=25, dieback=30, conditions=["conk", "dead_top"],
         note="conk at 6 ft")
    near(108, 200, 20, "red maple", 9.9, "codominant", "touches")
    near(108, 350, 6, "red maple", 4.0, "overtopped", "below")

    # 109: grape that ties the competitor to the oak.
    crop(109, 25, 121, "black oak", 13.7, conditions=["vines_across"], note="grape from the maple north",
         fill="S", slope=18)
    near(109, 352, 17, "red maple", 10.8, "codominant", "touches", conditions=["vines_across"],
         note="grape ties it to the oak")
    near(109, 250, 14, "red maple", 7.7, "intermediate", "touches")
    near(109, 134, 27, "chestnut oak", 9.4, "intermediate", "none")

    # 110: a leaner.
    crop(110, 72, 130, "white oak", 14.2, fill="NW")
    near(110, 175, 14, "red maple", 9.4, "codominant", "touches", conditions=["lean_15"],
         note="leans into the oak")
    near(110, 84, 7, "red maple", 4.1, "overtopped", "below")

    # 111: fog on the south side; what nobody saw is looked at again.
    crop(111, 118, 132, "chestnut oak", 15.3)
    near(111, 178, 25, "black oak", 11.0, "codominant", "not_looked", note="fog, crown not seen")
    near(111, 12, 18, "red maple", 9.4, "codominant", "touches")
    near(111, 268, 18, "red maple", 10.6, "codominant", "touches")

    # 112: oak against oak, the neighbour failing.
    crop(112, 165, 124, "northern red oak", 15.2, fill="W")
    near(112, 95, 18, "black oak", 10.3, "codominant", "touches", live_crown=20, dieback=35,
         conditions=["crooked", "dead_top"])
    near(112, 190, 19, "red maple", 11.5, "codominant", "touches")
    near(112, 10, 31, "chestnut oak", 11.4, "codominant", "none")

    # 113: a line tree with old wire in the way.
    crop(113, 114, 178, "chestnut oak", 13.8)
    near(113, 2, 22, "northern red oak", 19.2, "codominant", "touches",
         conditions=["line_tree", "metal"], note="blazed, old wire grown in")
    near(113, 170, 14, "red maple", 8.8, "intermediate", "touches")
    near(113, 75, 7, "serviceberry (species not told)", 4.4, "overtopped", "below")

    # 114: the owner's big white oak.
    crop(114, 64, 177, "white oak", 26.4, "dominant", live_crown=55, conditions=["legacy"],
         note="the big oak, owner keeps it", fill="S")
    shared = near(114, 88, 29, "red maple", 12.3, "codominant", "touches")
    also(113, shared, "touches")
    near(114, 258, 18, "pignut hickory", 9.2, "intermediate", "below")

    # 115: a dead ash beside the crop tree is a hazard, not a competitor; a second one is dying.
    crop(115, 19, 173, "chestnut oak", 14.3)
    near(115, 105, 12, "white ash", 13.6, "", "touches", status="dead", height=48,
         conditions=["broken_top"], note="dead two summers, bark falling, dead limbs on the oak")
    near(115, 350, 15, "white ash", 12.8, "codominant", "touches", live_crown=20, dieback=65, height=58,
         conditions=["borer_signs", "dead_top"], note="bark splits, most of the crown gone")
    near(115, 187, 17, "red maple", 9.8, "codominant", "touches")
    near(115, 280, 7, "sourwood", 6.8, "overtopped", "below")

    # The block lies so that the blazed oak of card 113 stands on the north line.
    on_line = next(s for s in block.stems if "line_tree" in s["conditions"])
    (x1, y1), (x2, y2) = ground.NORTH_LINE[1:3]
    line_y = y1 + (y2 - y1) * (600.0 + on_line["x"] - x1) / (x2 - x1)
    block.corner = (600.0, line_y - on_line["y"])
    block.fill(UPLAND_MIX, {"touch": 7, "none": 2, "below": 1, "open": 1})
    return block


def cove(dice):
    block = Block("Cove", (600.0, 480.0), (186.0, 187.4), dice)
    crop, near, also, pair = block.crop, block.near, block.also, block.pair

    # 116: beside the stream. Hemlock, cherry and the bank ash are not felled.
    crop(116, 20, 22, "white oak", 15.0)
    near(116, 4, 20, "black cherry", 12.3, "codominant", "touches")
    near(116, 88, 18, "red maple", 12.0, "codominant", "touches")
    near(116, 170, 10, "eastern hemlock", 8.2, "intermediate", "below")
    near(116, 254, 19.5, "white ash", 10.1, "codominant", "touches", dieback=10,
         conditions=["bank_tree", "borer_signs"], note="roots hold the bank")

    crop(117, 75, 26, "northern red oak", 14.4, fill="NSE")

    # 118: a very big yellow-poplar over the crop oak.
    crop(118, 115, 19, "northern red oak", 18.1, "dominant", fill="E", slope=22)
    near(118, 200, 28, "yellow-poplar", 26.2, "dominant", "touches")
    near(118, 350, 14, "sugar maple", 9.6, "intermediate", "touches", note="top pushes into the crown")
    near(118, 275, 9, "Ohio buckeye", 5.4, "overtopped", "below")

    # 119 and 120: one den tree stands between two crop oaks.
    crop(119, 164, 25, "white oak", 14.0, fill="ES")
    crop(120, 161, 72, "northern red oak", 16.8, live_crown=45)
    den = near(120, 184, 23.5, "American basswood", 19.4, "codominant", "touches",
               conditions=["den", "cavity_high"], note="squirrel den at 25 ft")
    also(119, den, "touches")
    near(120, 8, 17, "red maple", 11.2, "codominant", "touches")
    near(120, 80, 13, "red maple", 9.1, "intermediate", "touches", note="top pushes into the crown")

    # 121: live ash that is starting to go, and a beech with bark disease.
    crop(121, 108, 64, "white oak", 14.5, fill="S")
    near(121, 350, 17, "American beech", 11.6, "codominant", "touches", conditions=["beech_bark"])
    near(121, 262, 18, "white ash", 12.6, "codominant", "touches", dieback=30, conditions=["borer_signs"])

    # 122 and 123: a pair with a maple between them.
    crop(122, 62, 72, "northern red oak", 15.7, fill="E")
    crop(123, 43, 74, "white oak", 14.9, fill="S")
    pair(122, 123)
    maple = near(122, 330, 19, "sugar maple", 10.9, "codominant", "touches")
    also(123, maple, "touches")
    near(122, 160, 7, "American hornbeam", 4.1, "overtopped", "below")
    near(123, 268, 17, "red maple", 9.7, "codominant", "touches")

    # 124: a hawk's nest in the competitor.
    crop(124, 19, 120, "northern red oak", 16.2, fill="S")
    near(124, 5, 20, "sugar maple", 14.1, "codominant", "touches", conditions=["nest"],
         note="hawk on the nest")
    near(124, 92, 19, "yellow-poplar", 12.6, "codominant", "touches")

    # 125: a black cherry kept as a crop tree.
    crop(125, 73, 114, "black cherry", 14.6, fill="NEW")
    crop(126, 117, 119, "white oak", 15.4, fill="NSE")
    # 127: a shagbark, food and roost bark, is kept as the partner of 120.
    crop(127, 140, 76, "shagbark hickory", 13.4, conditions=["roost_bark"], fill="N")
    pair(120, 127)

    # 128: a sick ash that can still be sold.
    crop(128, 165, 163, "white oak", 15.8, fill="N")
    near(128, 62, 18, "white ash", 14.2, "codominant", "touches", dieback=45, conditions=["borer_signs"])
    near(128, 188, 17, "red maple", 11.0, "codominant", "touches")
    near(128, 268, 8, "sugar maple", 4.9, "overtopped", "below")

    crop(129, 112, 167, "northern red oak", 15.0, fill="NEW")
    # 130: on a bank too steep for hand work.
    crop(130, 65, 161, "white oak", 14.7, slope=38, fill="N")
    near(130, 90, 18, "sugar maple", 10.6, "codominant", "touches")
    near(130, 205, 16, "yellow-poplar", 10.8, "codominant", "touches")

    block.fill(COVE_MIX, {"touch": 4, "none": 3, "below": 2, "open": 2})
    return block


def flat(dice):
    block = Block("Flat", (2345.0, 420.0), (186.0, 187.4), dice)
    crop, near, also, pair = block.crop, block.near, block.also, block.pair

    # 131: beech with bark disease beside the oak.
    crop(131, 19, 26, "white oak", 15.2, fill="N")
    near(131, 88, 19, "American beech", 11.6, "codominant", "touches", conditions=["beech_bark"])
    near(131, 182, 16, "red maple", 9.2, "codominant", "touches")
    near(131, 272, 7, "eastern hophornbeam", 4.3, "overtopped", "below")

    # 132: maples on all four sides, one of them a clump.
    crop(132, 70, 19, "northern red oak", 14.1)
    near(132, 8, 17, "red maple", 10.8, "codominant", "touches")
    near(132, 96, 16, "red maple", 9.6, "codominant", "touches")
    near(132, 176, 18, "red maple", 11.4, "codominant", "touches", conditions=["clump", "v_fork"])
    near(132, 284, 15, "red maple", 8.8, "intermediate", "touches")

    # 133: aspen that would sucker.
    crop(133, 121, 27, "white oak", 14.8, fill="N")
    near(133, 178, 19, "quaking aspen", 11.3, "codominant", "touches")
    near(133, 86, 17, "red maple", 10.1, "codominant", "touches")

    # 134, 135 and 142 lie within 200 ft of the line that nobody has surveyed.
    crop(134, 167, 20, "white oak", 13.6, fill="NES")
    crop(135, 161, 73, "pin oak", 14.2, fill="NES")

    # 136 and 137: a pair.
    crop(136, 113, 75, "white oak", 14.0, fill="E")
    crop(137, 95, 72, "northern red oak", 14.6, fill="N")
    pair(136, 137)
    between = near(136, 322, 17.5, "red maple", 10.2, "codominant", "touches")
    also(137, between, "touches")
    near(137, 238, 17, "American beech", 9.3, "intermediate", "touches")

    # 138: a hollow beech that is a den.
    crop(138, 37, 68, "white oak", 16.6, "dominant", live_crown=45, fill="E")
    near(138, 276, 24, "American beech", 22.4, "codominant", "touches", conditions=["den", "cavity_high"],
         note="raccoon den")
    near(138, 2, 18, "red maple", 11.8, "codominant", "touches")
    near(138, 172, 16, "red maple", 8.7, "intermediate", "touches")

    crop(139, 21, 115, "white oak", 13.4, fill="NWE")
    # 140: a clean beech bears nuts.
    crop(140, 70, 121, "white oak", 13.9, fill="SN")
    near(140, 268, 19, "American beech", 12.2, "codominant", "touches", note="bark clean, nuts under it")
    near(140, 85, 16, "red maple", 9.9, "codominant", "touches")

    crop(141, 119, 120, "black oak", 13.2, fill="NESW")
    crop(142, 165, 112, "white oak", 14.4, fill="NESW")

    # 143: grape over three crowns.
    crop(143, 114, 162, "white oak", 14.9, fill="EW")
    near(143, 5, 17, "red maple", 10.4, "codominant", "touches", conditions=["vines"])
    near(143, 186, 16, "red maple", 9.1, "codominant", "touches", conditions=["vines_across"],
         note="grape arbour across the oak")

    # 144: a dead elm is a roost and no competitor.
    crop(144, 71, 168, "black oak", 13.4, fill="W")
    near(144, 20, 13, "American elm", 14.8, "", "below", status="dead", height=28,
         conditions=["roost_bark", "broken_top", "cavity_high"], note="snag, woodpecker holes")
    near(144, 98, 16, "red maple", 9.4, "codominant", "touches")
    near(144, 190, 15, "American beech", 8.9, "intermediate", "touches")

    # 145: a small ash that is nearly dead.
    crop(145, 21, 161, "white oak", 14.3, fill="NE")
    near(145, 258, 16, "white ash", 9.2, "intermediate", "touches", live_crown=15, dieback=70, height=51,
         conditions=["borer_signs"])
    near(145, 180, 17, "red maple", 10.0, "codominant", "touches")

    block.fill(FLAT_MIX, {"touch": 7, "none": 1, "below": 1, "open": 1})
    return block
