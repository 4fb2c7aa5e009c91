# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Writes erosion_boolean.csv: the area of ovals and fluted outlines moved inwards by d, by polygon booleans
# only. It is the second opinion on erosion.csv, whose smooth outlines come from parallel curves: here are
# no curvature, no medial axis, no parallel curve, and no code of offset_curves.py.
#
# Made with shapely 1.8.5 (GEOS 3.11.1), numpy 1.24.2. Rerun from this folder:
#     /usr/bin/python3 erosion_boolean.py     (15 seconds on one core, no network)
#
# The curve is replaced by a polygon through N points of it. All points nearer than d to that polygon are
# the union of a strip of width d along each edge and a disc of radius d about each corner; GEOS takes this
# union from the polygon. Of a disc only the pie slice between its two strips is built, as the strips and
# discs next to it cover the rest. Its facets turn by at most FACET_TURN; their corners stand out just far
# enough that the slice has the area of the round one. A strip and the slices at its two ends are one piece,
# so that neighbours overlap: with pieces that only touched, the union lost some of them (areas off by 0.1 %).
# Points of a fluted rim crowd towards the valleys, since deep inside only the valleys are near.
#
# Each outline is symmetric about the two sides of one wedge (a quarter of an oval, half a flute), so the
# nearest point of the rim to a point in the wedge lies in the wedge as well: a rim point across a side
# is farther than its mirror image. One edge beyond each side is kept for the slices on the sides.
# `check_whole_rim` tests both shortcuts on every row with a coarse polygon: without symmetry the area is the same, and with
# whole discs it is bracketed by inscribed and circumscribed ones.
#
# The error of the polygon is O(1/N^2); areas at N, 2N, 4N give two extrapolated values. Where the rim left has
# a corner, what remains is O(1/N^3) and of either sign, so that two values may agree by chance: hence a
# second series of N. The finest value is the result, the spread of all four the tolerance (relative to the
# area left, as in erosion.csv).

import math
import time

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geos import geos_version_string
from shapely.ops import unary_union

from shapes import SMOOTH

POINTS = ((200, 400, 800), (270, 540, 1080))  # edges in one wedge
FACET_TURN = 0.0005  # [rad]
AIM = 1e-7  # of the rim's area

# Which of erosion.csv's depths (0 = the rim): shallow, just deep enough that the crest becomes a corner,
# middle, deep, and the deepest, 95 % of the way in. The crest of 21 x 20 becomes no corner before that.
DEPTHS = {
    "ellipse_30x20": (2, 5, 9, 10, 11),
    "ellipse_40x12": (2, 7, 8, 9, 11),
    "ellipse_21x20": (2, 5, 8, 10, 11),
    "fluted_24_n40_a6": (1, 2, 5, 8, 11),
    "fluted_28_n30_a8": (1, 3, 5, 8, 11),
    "fluted_10_n16_a4": (1, 4, 6, 8, 11),
    "fluted_20_n8_a30": (2, 5, 7, 9, 11),
    "fluted_20_n3_a20": (2, 6, 9, 10, 11),
}


def curve(kind, p, t):
    """The outline's points at angles t: the definitions in erosion.csv's head."""
    if kind == "oval":
        return np.column_stack([p[0] / 2 * np.cos(t), p[1] / 2 * np.sin(t)])
    r = p[0] / 2 - p[2] / 2 + p[2] / 2 * np.cos(p[1] * t)
    return np.column_stack([r * np.cos(t), r * np.sin(t)])


def wedges(kind, p):
    return 4 if kind == "oval" else 2 * p[1]


def wedge_angles(kind, p, n):
    u = np.linspace(0, 1, n + 1)
    return 2 * math.pi / wedges(kind, p) * (u if kind == "oval" else 1 - (1 - u) ** 2)


def rim_points(kind, p, n):
    """Corners of one wedge, with one mirrored corner before and one behind."""
    t = wedge_angles(kind, p, n)
    return curve(kind, p, np.concatenate([[-t[1]], t, [2 * t[-1] - t[-2]]]))


def inward_normals(points):
    edge = np.diff(points, axis=0)
    return np.column_stack([-edge[:, 1], edge[:, 0]]) / np.hypot(edge[:, 0], edge[:, 1])[:, None]


def arc(corner, before, after, d):
    """Points of the slice's rim from the strip with normal `before` to that with `after`, or None if the strips overlap."""
    turn = -math.atan2(before[0] * after[1] - before[1] * after[0], before[0] * after[0] + before[1] * after[1])
    if turn <= 0:
        return None
    facets = max(2, math.ceil(turn / FACET_TURN))
    # Area: sin(step) / 2 * ((facets - 2) r^2 + 2 d r) = turn / 2 * d^2, as the two ends stay at d.
    q = turn / math.sin(turn / facets)
    radius = d * q / (1 + math.sqrt(1 + (facets - 2) * q))
    angles = math.atan2(before[1], before[0]) - turn * np.linspace(0, 1, facets + 1)[1:-1]
    between = corner + radius * np.column_stack([np.cos(angles), np.sin(angles)])
    return np.vstack([corner + d * before, between, corner + d * after])


def pieces(points, d):
    """For each edge its strip on the inner side, with the slices at its ends (none at the first and last point)."""
    normals = inward_normals(points)
    arcs = [None] + [arc(c, n0, n1, d) for c, n0, n1 in zip(points[1:], normals, normals[1:])] + [None]
    made = []
    for a, b, n, at_a, at_b in zip(points, points[1:], normals, arcs, arcs[1:]):
        at_a = at_a if at_a is not None else [a + d * n]
        at_b = at_b if at_b is not None else [b + d * n]
        made.append(Polygon(np.vstack([a, b, at_b[::-1], at_a[::-1]])))
    return made


def strips(points, d):
    normals = inward_normals(points)
    return [Polygon([a, b, b + d * n, a + d * n]) for a, b, n in zip(points, points[1:], normals)]


def polygon_area_left(kind, p, n, d):
    points = rim_points(kind, p, n)
    wedge = Polygon(np.vstack([[0.0, 0.0], points[1:-1]]))
    return wedges(kind, p) * wedge.difference(unary_union(pieces(points, d))).area


def extrapolated(kind, p, d):
    """(area from the finest polygons, spread of the four extrapolated values), both [m^2]."""
    values = []
    for series in POINTS:
        coarse, middle, fine = (polygon_area_left(kind, p, n, d) for n in series)
        values += [(4 * middle - coarse) / 3, (4 * fine - middle) / 3]
    return values[-1], max(values) - min(values)


def whole_rim(kind, p, n):
    """The corners of all wedges, counter-clockwise, the first one repeated at the end."""
    t = wedge_angles(kind, p, n)
    pair = np.concatenate([t, 2 * t[-1] - t[-2:0:-1]])
    count = wedges(kind, p) // 2
    points = curve(kind, p, np.concatenate([pair + 2 * t[-1] * k for k in range(count)]))
    return np.vstack([points, points[:1]])


def check_whole_rim(kind, p, d, n=6, sides=720):
    """Asserts that wedge and slices leave what the whole rim and whole discs leave; returns the bracket's width."""
    area = polygon_area_left(kind, p, n, d)
    points = whole_rim(kind, p, n)
    rim = Polygon(points)
    bands = strips(points, d)
    around = np.vstack([points, points[1:2]])
    whole = rim.difference(unary_union(pieces(around, d))).area
    assert abs(whole - area) < 1e-11 * rim.area, (kind, p, d, whole, area)
    angles = 2 * math.pi / sides * np.arange(sides)
    left = []
    for radius in (d, d / math.cos(math.pi / sides)):
        disc = radius * np.column_stack([np.cos(angles), np.sin(angles)])
        left.append(rim.difference(unary_union(bands + [Polygon(c + disc) for c in points[:-1]])).area)
    assert left[1] - 1e-11 * rim.area <= area <= left[0] + 1e-11 * rim.area, (kind, p, d, left, area)
    return (left[0] - left[1]) / rim.area


def read_erosion():
    """(d, area) of the smooth outlines by name; the areas serve the comparison only."""
    table = {}
    with open("erosion.csv", encoding="utf-8") as lines:
        for line in lines:
            cells = line.split(",")
            if not line.startswith("#") and cells[0] in DEPTHS:
                table.setdefault(cells[0], []).append((float(cells[5]), float(cells[6])))
    return table


def main():
    start = time.time()
    table = read_erosion()
    worst_off = worst_spread = widest = 0.0
    with open("erosion_boolean.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Area of ovals and fluted outlines moved inwards by d (all points at least d from the outline), by polygon booleans.\n")
        out.write(f"# Made by: /usr/bin/python3 erosion_boolean.py (shapely {shapely.__version__}, GEOS {geos_version_string});")
        out.write(" method in its head. Metres, square metres.\n")
        out.write("# p1..p3: oval = length, width; fluted = diameter, flutes, flute_depth with r = D/2 - a/2 + (a/2) cos(n theta).\n")
        out.write("# tolerance: estimated relative error of the area, from the spread of its extrapolated values.\n")
        out.write("shape,kind,p1,p2,p3,d_m,area_m2,tolerance\n")
        for name, kind, p in SMOOTH:
            rim_area = extrapolated(kind, p, 0.0)[0]
            for d, other in (table[name][index] for index in DEPTHS[name]):
                area, spread = extrapolated(kind, p, d)
                assert spread < AIM * rim_area, (name, d, spread / rim_area)
                widest = max(widest, check_whole_rim(kind, p, d))
                off = abs(area - other) / rim_area
                worst_off, worst_spread = max(worst_off, off), max(worst_spread, spread / rim_area)
                cells = [f"{v:g}" for v in p] + [""] * (3 - len(p))
                out.write(f"{name},{kind},{','.join(cells)},{d:.5f},{area:.12g},{max(spread / area, 1e-11):.1e}\n")
                print(f"{name:18} d {d:.5f}  off erosion.csv {off:.1e}  spread {spread / rim_area:.1e}  (of the rim's area)")
    print(f"worst difference from erosion.csv {worst_off:.1e}, widest spread {worst_spread:.1e} of the rim's area")
    print(f"whole-disc brackets at most {widest:.1e} wide; {time.time() - start:.0f} s")


if __name__ == "__main__":
    main()
