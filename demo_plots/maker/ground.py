"""The ground of the demo tract: outline, stands, lines, and feet to latitude and longitude. Invented.

Everything is drawn in feet, x east and y north of a corner; three numbers (how far the line between
ridge and hollow, the road side and the line between cove and flat are shifted) are then solved so
that the stands have exactly the acres they are said to have.
"""

import math

SQUARE_FEET_PER_ACRE = 43560.0
ACRES = {"Upland": 52.0, "Cove": 38.0, "Flat": 28.0}

# An invented place: no such hollow lies here.
ORIGIN_LAT, ORIGIN_LON = 39.3560, -82.2140  # of x = 1350 ft, y = 1000 ft
ORIGIN_X, ORIGIN_Y = 1350.0, 1000.0

# WGS 84: semi-major axis in metres, flattening.
WGS84_A, WGS84_F = 6378137.0, 1.0 / 298.257223563
METRES_PER_FOOT = 0.3048


def _feet_per_degree():
    """Feet for one degree of latitude and of longitude at the origin (radii of curvature M and N)."""
    e2 = WGS84_F * (2.0 - WGS84_F)
    phi = math.radians(ORIGIN_LAT)
    w = math.sqrt(1.0 - e2 * math.sin(phi) ** 2)
    m = WGS84_A * (1.0 - e2) / w**3
    n = WGS84_A / w
    degree = math.radians(1.0) / METRES_PER_FOOT
    return m * degree, n * math.cos(phi) * degree


FEET_PER_DEGREE_LAT, FEET_PER_DEGREE_LON = _feet_per_degree()


def lat_lon(x, y):
    """Over this tract the plane is true to 1 part in 10,000."""
    return (
        ORIGIN_LAT + (y - ORIGIN_Y) / FEET_PER_DEGREE_LAT,
        ORIGIN_LON + (x - ORIGIN_X) / FEET_PER_DEGREE_LON,
    )


def area_acres(ring):
    twice = 0.0
    for (x1, y1), (x2, y2) in zip(ring, ring[1:] + ring[:1]):
        twice += x1 * y2 - x2 * y1
    return twice / 2.0 / SQUARE_FEET_PER_ACRE


def inside(ring, x, y):
    found = False
    for (x1, y1), (x2, y2) in zip(ring, ring[1:] + ring[:1]):
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            found = not found
    return found


def distance_to_line(line, x, y):
    """Feet from a place to the nearest part of a line of straight pieces."""
    best = math.inf
    for (x1, y1), (x2, y2) in zip(line, line[1:]):
        dx, dy = x2 - x1, y2 - y1
        t = ((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy)
        t = min(1.0, max(0.0, t))
        best = min(best, math.hypot(x - x1 - t * dx, y - y1 - t * dy))
    return best


def _solve(wanted, value_at, low, high):
    """The argument at which value_at meets wanted, by halving; value_at must rise."""
    for _ in range(200):
        middle = (low + high) / 2.0
        if value_at(middle) < wanted:
            low = middle
        else:
            high = middle
    return (low + high) / 2.0


NORTH_LINE = [(0.0, 1975.0), (560.0, 1990.0), (1320.0, 2030.0), (2610.0, 1950.0)]


def _shared_line(up):
    """Between the ridge above and the hollow below, west to east."""
    points = [(0, 880), (480, 930), (1010, 1030), (1640, 1090), (2200, 1150), (2668, 1200)]
    return [(float(x), y + up) for x, y in points]


def _road_side(up):
    return [(0.0, up), (880.0, up - 60.0), (1900.0, up - 30.0), (2640.0, up + 40.0)]


def _upland(up):
    return _shared_line(up) + NORTH_LINE[::-1]


def _hollow(up, road):
    return _road_side(road) + [(2700.0, 760.0)] + _shared_line(up)[::-1]


def _cove(up, road, shift):
    side = _road_side(road)
    x = 1520.0 + shift
    y = side[1][1] + (side[2][1] - side[1][1]) * (x - side[1][0]) / (side[2][0] - side[1][0])
    divide = [(x, y), (1570.0 + shift / 2.0, 520.0)]
    return side[:2] + divide + _shared_line(up)[3::-1], divide


def _draw():
    up = _solve(-ACRES["Upland"], lambda u: -area_acres(_upland(u)), -300.0, 300.0)
    hollow = ACRES["Cove"] + ACRES["Flat"]
    road = -_solve(hollow, lambda r: area_acres(_hollow(up, -r)), -300.0, 300.0)
    shift = _solve(ACRES["Cove"], lambda s: area_acres(_cove(up, road, s)[0]), -300.0, 300.0)
    cove, divide = _cove(up, road, shift)
    flat = [divide[0]] + _road_side(road)[2:] + [(2700.0, 760.0)]
    flat += _shared_line(up)[:2:-1] + [divide[1]]
    east = [_road_side(road)[3], (2700.0, 760.0), _shared_line(up)[5], NORTH_LINE[3]]
    rings = {"Upland": _upland(up), "Cove": cove, "Flat": flat}
    return rings, east, _road_side(road)


STANDS, EAST_LINE, _ROAD_SIDE = _draw()
ROAD = [(x, y - 30.0) for x, y in _ROAD_SIDE]
LANDING = (1850.0, ROAD[2][1] + 110.0)
TRAIL = [LANDING, (1800.0, 420.0), (1700.0, 800.0), (1640.0, 1200.0), (1400.0, 1480.0),
         (1150.0, 1640.0), (950.0, 1710.0), (890.0, 1770.0)]
STREAM = [(260.0, 930.0), (430.0, 700.0), (520.0, 560.0), (588.0, 496.0), (604.0, 462.0),
          (760.0, 380.0), (1100.0, 340.0), (1560.0, 330.0), (2000.0, 290.0), (2400.0, 255.0),
          (2672.0, 235.0)]

# kind, name, confirmed, points
LINES = [
    ("stream", "Whetrock Run", True, STREAM),
    ("neighbour_line", "north line", True, NORTH_LINE),
    ("neighbour_line", "east line", False, EAST_LINE),
    ("road", "township road", True, ROAD),
    ("trail", "haul trail", True, TRAIL),
]
