#!/usr/bin/python3 -B
"""One day in the woods, done on the real app from outside it, by pointer, touch and keys.

A tract is made; five plots are tallied, one of them empty; a wrong tree is undone; contacts that must not count
are made; the app is killed in the middle and started again; six crop tree cards are filled in, the stand is
decided and one verdict overruled; the packet is looked at and made. Afterwards tract file and packet are read by
programs that are not the app (outside.py).

    day.py BIN_FOLDER PICTURE_FOLDER tablet|phone

On the phone the day is shorter. Needs the packages of .ci/packages.txt.
"""

import sys
import tempfile
from pathlib import Path

import outside
from tablet import Tablet, middle

MOST_TAPS = 65  # for a plot of 30 trees
LONG_PLOT = 30
GLASSES = {"tablet": ((1280, 800), "5.9"), "phone": ((412, 915), "6.3")}  # size and pixels in a millimetre
PAGES = ["Tract", "Walk", "Tally", "Stand", "Light", "Marks", "Setup"]
TALLIED = ["northern red oak", "white oak", "red maple"]  # the stand's set always begins with oaks and maples
KEYED = ["98", "123", "150", "171", "86", "142", "110", "95", "134"]  # tenths of an inch
CLASSES = [10, 12, 14, 16, 18]

# A card: species and DBH of the oak; on each side the neighbours (species, DBH, crown seen), or that it is open.
OPEN = "open"
CARDS = [
    ("white oak", "16.2", {"North": [("red maple", "10.4", "Touches")], "East": [("red maple", "11.8", "Touches")],
                           "South": OPEN, "West": [("pignut hickory", "8.0", "Stays below")]}),
    ("northern red oak", "15.1", {"North": [("red maple", "9.2", "Touches")], "East": OPEN,
                                  "South": [("bigtooth aspen", "12.1", "Touches")],
                                  "West": [("red maple", "9.0", "Clear gap")]}),
    ("black oak", "14.4", {"North": [("red maple", "8.6", "Touches"), ("sassafras", "6.3", "Stays below")],
                           "East": [("bigtooth aspen", "11.2", "Touches")],
                           "South": [("pignut hickory", "9.8", "Touches")], "West": OPEN}),
    ("scarlet oak", "13.2", {"North": [("red maple", "7.8", "Touches")], "East": [("red maple", "10.0", "Touches")],
                             "South": OPEN, "West": OPEN}),
    ("white oak", "18.0", {"North": OPEN, "East": [("American beech", "9.6", "Reaches over")],
                           "South": [("red maple", "12.1", "Touches")], "West": [("blackgum", "9.6", "Clear gap")]}),
    ("chestnut oak", "12.8", {"North": [("red maple", "10.6", "Touches")], "East": OPEN,
                              "South": [("red maple", "9.4", "Touches")],
                              "West": [("bigtooth aspen", "10.8", "Touches")]}),
]
SEEN = {"Touches": "touches", "Reaches over": "over", "Stays below": "below", "Clear gap": "none"}
# FIA species codes, as published by the USDA Forest Service.
CODES = {"red maple": 316, "American beech": 531, "bigtooth aspen": 743, "blackgum": 693, "black oak": 837,
         "chestnut oak": 832, "northern red oak": 833, "pignut hickory": 403, "sassafras": 931, "scarlet oak": 806,
         "white oak": 802}
REASON = "A den or nest is in it."


def make_tract(tablet):
    """At the table, by pointer and keys."""
    tablet.by_pointer = True
    tablet.tap("Skip")
    tablet.tap("I look up. Begin")
    tablet.gone("I look up. Begin")
    tablet.tap("Tract files")
    tablet.write("Name of a new tract", "Test Ridge")
    tablet.tap("Make a new tract")
    tablet.tap("Design of the cruise")  # the demo tract has its design already
    tablet.tap("10")
    tablet.tap("Save the design")
    tablet.gone("Save the design")
    tablet.tap("Add a stand")
    tablet.write("Name of the stand", "North")
    tablet.write("Area, acres", "12")
    tablet.tap("Save stand")
    tablet.gone("Save stand")
    tablet.tap("Add plots")
    tablet.tap("5")
    tablet.tap("Add plots")
    tablet.gone("How many to add")
    tablet.by_pointer = False


def page(tablet, name):
    """Goes to a page: by the names at the edge, or by the sheet of them where there is no room."""
    there = tablet.wait(lambda things: [t.name for t in things if t.press and t.name in PAGES], "names of pages")
    if len(set(there)) < len(PAGES):
        tablet.tap(there[0])
        tablet.reads("Pages")
    tablet.tap(name)


def start_plot(tablet):
    page(tablet, "Walk")
    tablet.tap("Start plot")
    tablet.find("Keypad")


def count_is(tablet, trees):
    tablet.reads(f"trees: {trees}")


def tally_by_taps(tablet, trees):
    """Each tree by two taps: species, then class; a species that is pinned already needs no tap."""
    for i in range(trees):
        tablet.tap(TALLIED[i % 3])
        tablet.tap(f"{CLASSES[i % 5]}, diameter class")
        count_is(tablet, i + 1)


def tally_by_slides(tablet, trees, before=0):
    for i in range(trees):
        tablet.slide(TALLIED[i % 3], f"{CLASSES[i % 5]}, diameter class")
        count_is(tablet, before + i + 1)


def tally_by_keypad(tablet, diameters):
    """The first asks for the keypad; from then on each species does."""
    tablet.tap("white oak")
    tablet.tap("Keypad")
    tablet.tap("Always keypad")
    for trees, digits in enumerate(diameters, 1):
        for digit in digits:
            tablet.tap(digit)
        tablet.tap("Record")
        tablet.gone("Record")
        count_is(tablet, trees)
        tablet.tap("white oak")
    tablet.tap("Always keypad")
    tablet.tap("Close")


def contacts_that_do_not_count(tablet, trees):
    """While one finger is down a second makes no tree, three at once make none, a slide off the cells none."""
    tablet.tap("white oak")
    cells = [middle(tablet.find(f"{size}, diameter class").seen) for size in (10, 14, 18)]
    glass = tablet.glass
    glass.down(cells[0], 0)
    glass.down(cells[1], 1)
    glass.up(cells[1], 1)
    tablet.look()
    count_is(tablet, trees)
    glass.up(cells[0], 0)
    count_is(tablet, trees + 1)  # one finger, one tree
    tablet.tap("Undo")
    count_is(tablet, trees)
    tablet.tap("white oak")  # on a phone the species lie over the classes again
    for finger, cell in enumerate(cells):
        glass.down(cell, finger)
    for finger, cell in enumerate(cells):
        glass.up(cell, finger)
    glass.down(cells[2])
    glass.move(middle(tablet.find("Keypad").seen))
    glass.up(middle(tablet.find("Keypad").seen))
    # A tree that counts comes after them in time: had they made one, there would be two.
    tablet.tap("12, diameter class")
    count_is(tablet, trees + 1)
    tablet.tap("Undo")
    count_is(tablet, trees)


def wrong_tree_and_kill(tablet, trees):
    tablet.slide("white oak", "14, diameter class")
    count_is(tablet, trees + 1)
    tablet.reads("white oak 14.0 in")
    tablet.tap("Undo")
    count_is(tablet, trees)
    contacts_that_do_not_count(tablet, trees)
    tablet.kill()
    tablet.start()
    page(tablet, "Tally")
    count_is(tablet, trees)


def slid(trees):
    """What tally_by_taps and tally_by_slides record: species code and DBH in tenths of an inch."""
    return [(CODES[TALLIED[i % 3]], 10 * CLASSES[i % 5]) for i in range(trees)]


def tally_five_plots(tablet, pictures):
    """Returns what the plots hold, and the taps that the long one took, from the page Walk to its last tree."""
    start_plot(tablet)
    before = tablet.taps - 1
    tally_by_taps(tablet, LONG_PLOT)
    taps = tablet.taps - before
    tablet.picture(pictures / "tally.png")
    wrong_tree_and_kill(tablet, LONG_PLOT)
    start_plot(tablet)
    tally_by_slides(tablet, 12)
    start_plot(tablet)
    tally_by_keypad(tablet, KEYED)
    start_plot(tablet)
    tally_by_slides(tablet, 10)
    tablet.tap("Same again")
    count_is(tablet, 11)
    page(tablet, "Walk")
    tablet.tap("Empty plot")
    tablet.reads("All plots: 5 done, 0 to do")
    tablet.picture(pictures / "walk.png")
    keyed = [(CODES["white oak"], int(dbh)) for dbh in KEYED]
    return taps, {"1": ("measured", slid(LONG_PLOT)), "2": ("measured", slid(12)), "3": ("measured", keyed),
                  "4": ("measured", slid(10) + slid(10)[-1:]), "5": ("empty", [])}


def tally_three_plots(tablet, pictures):
    """The same, shorter, and the long plot by slides."""
    start_plot(tablet)
    before = tablet.taps - 1
    tally_by_slides(tablet, LONG_PLOT)
    taps = tablet.taps - before
    tablet.picture(pictures / "tally.png")
    wrong_tree_and_kill(tablet, LONG_PLOT)
    start_plot(tablet)
    tally_by_slides(tablet, 3)
    page(tablet, "Walk")
    tablet.tap("Empty plot")
    tablet.reads("North, plot 4")
    nothing = ("planned", [])
    return taps, {"1": ("measured", slid(LONG_PLOT)), "2": ("measured", slid(3)), "3": ("empty", []), "4": nothing,
                  "5": nothing}


def name_tree(tablet, species, dbh):
    tablet.tap("Species")
    tablet.write("Search for a species", species)
    tablet.tap(species)
    tablet.tap("Diameter (DBH)")
    for digit in dbh.replace(".", ""):
        tablet.tap(digit)
    tablet.tap("Take it over")


def fill_card(tablet, species, dbh, sides):
    tablet.tap("New crop tree")
    name_tree(tablet, species, dbh)
    tablet.tap("Codominant")
    tablet.tap("Save")
    tablet.find("All cards")
    for side, neighbours in sides.items():
        if neighbours == OPEN:
            tablet.tap(f"{side}:")
            tablet.tap("Looked: it is open")
            tablet.find(f"{side}: open")
            continue
        for other, size, seen in neighbours:
            tablet.tap(f"{side}:")
            tablet.tap("A neighbour stands here")
            name_tree(tablet, other, size)
            tablet.tap(seen)
            tablet.tap("Save")
            tablet.gone("On these sides of the crop tree")
    tablet.tap("All cards")


def decide(tablet, cards, pictures):
    """Says how much was walked, decides the stand, and overrules one verdict with a reason."""
    page(tablet, "Tract")
    tablet.tap("North")
    tablet.write("Walked for marking, acres", "12")
    tablet.tap("Save stand")
    tablet.gone("Save stand")
    page(tablet, "Light")
    tablet.tap("Decide this stand")
    tablet.reads(f"{len(tagged(cards))} tree(s) decided.")
    tablet.tap("1 white oak")
    tablet.picture(pictures / "card.png")
    tablet.reads("2  red maple 10.4 in, touches, N. Take, decided by the rules.")
    tablet.tap("2  red maple")
    tablet.tap("Keep")
    tablet.tap(REASON)
    tablet.tap("Decide: Keep")
    tablet.reads(f"2  red maple 10.4 in, touches, N. Keep, decided by hand. {REASON}")
    tablet.tap("All cards")


def make_packet(tablet, pictures):
    """Looks at each page, then writes the files. Returns trees to take as the page Marks says, and pages."""
    page(tablet, "Marks")
    taken = int(tablet.find("Take (").name[len("Take ("):-1])
    tablet.picture(pictures / "marks.png")
    tablet.tap("Packet to hand over")
    pages = int(tablet.reads("Page 1 of ").split()[-1])
    for number in range(2, pages + 1):
        tablet.tap("Next page")
        tablet.reads(f"Page {number} of {pages}")
    tablet.picture(pictures / "packet.png")
    tablet.tap("Make the packet")
    told = tablet.find("Written: ", press=False)
    assert told.seen[3] == told.box[3], "where the packet lies is told out of sight"
    return taken, pages, Path(told.name.rsplit(" in the folder ", 1)[1])


def tagged(cards):
    """Each tree of the cards in the order in which it got its tag: 1, 2, ..."""
    trees = []
    for species, dbh, sides in cards:
        trees.append((species, dbh))
        for neighbours in sides.values():
            if neighbours != OPEN:
                trees += [(species, dbh) for species, dbh, _ in neighbours]
    return trees


def check_cards(tract, cards):
    found = outside.cards(tract)
    outside.equal(len(found), len(cards), "crop trees")
    for (species, dbh, sides), card in zip(cards, found.values()):
        looked = {side[0] for side, seen in sides.items() if seen == OPEN}
        neighbours = [(CODES[other], tenths(size), side[0], SEEN[seen]) for side, there in sides.items()
                      if there != OPEN for other, size, seen in there]
        outside.equal((card[0], card[1], card[3]), (CODES[species], tenths(dbh), neighbours), "a card")
        assert looked <= set(card[2].split("|")), f"sides seen open: {card[2]} where {looked} was expected"


def tenths(dbh):
    return int(dbh.replace(".", ""))


def check_files(bin_folder, tract, tally, cards, taken, pages, packet):
    """Returns how many trees are to be cut."""
    print(outside.check_records(bin_folder, tract))
    outside.equal(outside.trees_by_plot(tract), tally, "the tally")
    check_cards(tract, cards)
    marks = outside.marks(tract)
    outside.equal(len(marks), len(tagged(cards)), "marks")
    outside.equal({tag: mark for tag, mark in marks.items() if mark[2]}, {"2": ("keep", None, 1, REASON)},
                  "decided by hand")
    outside.equal(sum(mark[0] == "take" for mark in marks.values()), taken, "trees to take")
    return outside.check_packet(packet, "logger", marks, pages)


def main():
    bin_folder, pictures = Path(sys.argv[1]).resolve(), Path(sys.argv[2]) / f"day_{sys.argv[3]}"
    glass = sys.argv[3]
    phone = glass == "phone"
    cards = CARDS[:1] if phone else CARDS
    pictures.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="oaklight-day-") as name:
        folder = Path(name)
        tablet = Tablet(bin_folder, folder, *GLASSES[glass])
        try:
            make_tract(tablet)
            taps, tally = (tally_three_plots if phone else tally_five_plots)(tablet, pictures)
            page(tablet, "Light")
            for card in cards:
                fill_card(tablet, *card)
            decide(tablet, cards, pictures)
            taken, pages, packet = make_packet(tablet, pictures)
        except BaseException:
            tablet.glass.picture(pictures / "failed.png")
            raise
        finally:
            tablet.close()
        outside.equal(tablet.complaints(), "", "what the app wrote on its error stream")
        assert taps <= MOST_TAPS, f"{taps} taps for {LONG_PLOT} trees"
        cut = check_files(bin_folder, folder / "Test-Ridge.gpkg", tally, cards, taken, pages, packet)
    print(f"{LONG_PLOT} trees: {taps} taps; {tablet.glass.contacts} contacts by touch in all; {cut} trees to cut on "
          f"{pages} pages")


if __name__ == "__main__":
    main()
