# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# True inward offsets (erosions) of outlines, for the reference tables beside this file. It shares no
# code and no formula table with the library it checks.
#
# Smooth outlines: the parallel curve q(t) = p(t) + d n(t) is kept only where its foot point is still the
# nearest one, that is up to the medial axis. For an ellipse that axis lies on the long axis; for
# r(theta) = D/2 - a/2 + (a/2) cos(n theta) on the n rays through the peaks, since curvature falls
# monotonically from each peak to the next valley (asserted below). What is kept is integrated by
# composite Gauss-Legendre. `verify_feet` confirms by brute force that every kept point is d away from the outline.
#
# Polygons: the polygon less a strip along each edge and a fine disc about each corner; the tolerance comes
# from doubling the sides of the discs. Shapely's own polygon.buffer(-d) is NOT used for the values: it
# drops vertices within 1 % of d before it offsets, which leaves errors near 5e-6 whatever the number of
# points. It serves as a coarse second opinion (`shapely_buffer`).
#
# Needs numpy and shapely (Debian: python3-numpy, python3-shapely). Units: metres.

import math

import numpy as np
from shapely.geometry import Polygon
from shapely.ops import unary_union

GAUSS_X, GAUSS_W = np.polynomial.legendre.leggauss(20)


def ellipse(length, width):
    """Quarter of an ellipse as (p, p', p'') functions of t in [0, pi/2], and its number of copies."""
    a, b = length / 2, width / 2

    def jets(t):
        c, s = np.cos(t), np.sin(t)
        return (a * c, b * s), (-a * s, b * c), (-a * c, -b * s)

    return {"jets": jets, "t_end": math.pi / 2, "copies": 4, "inradius": min(a, b), "outer": a}


def fluted(diameter, flutes, flute_depth):
    """Half a flute, peak (t = 0) to valley (t = pi/n), with its number of copies."""
    n, a = flutes, flute_depth
    mean = diameter / 2 - a / 2

    def jets(t):
        c, s = np.cos(t), np.sin(t)
        r = mean + a / 2 * np.cos(n * t)
        r1 = -a / 2 * n * np.sin(n * t)
        r2 = -a / 2 * n * n * np.cos(n * t)
        return ((r * c, r * s), (r1 * c - r * s, r1 * s + r * c),
                (r2 * c - 2 * r1 * s - r * c, r2 * s + 2 * r1 * c - r * s))

    return {"jets": jets, "t_end": math.pi / n, "copies": 2 * n, "inradius": diameter / 2 - a,
            "outer": diameter / 2}


def curvature(curve, t):
    _, (x1, y1), (x2, y2) = curve["jets"](t)
    return (x1 * y2 - y1 * x2) / (x1 * x1 + y1 * y1) ** 1.5


def check_curvature_monotone(curve):
    k = curvature(curve, np.linspace(0, curve["t_end"], 20001))
    assert np.all(np.diff(k) <= 1e-9 * np.max(np.abs(k))), "curvature is not monotone: the axis is not known"


def offset_point(curve, t, d):
    (x, y), (x1, y1), _ = curve["jets"](t)
    speed = np.hypot(x1, y1)
    return x - d * y1 / speed, y + d * x1 / speed


def first_kept(curve, d):
    """The parameter from which on the parallel curve has not yet crossed the medial axis (y = 0)."""
    t = np.linspace(0, curve["t_end"], 200001)[1:]
    crossed = offset_point(curve, t, d)[1] < 0
    if not crossed.any():
        return 0.0
    last = np.nonzero(crossed)[0][-1]
    assert last + 1 < len(t), "offset deeper than the inradius"
    lo, hi = t[last], t[last + 1]
    for _ in range(200):
        mid = 0.5 * (lo + hi)
        if offset_point(curve, mid, d)[1] < 0:
            lo = mid
        else:
            hi = mid
    return hi


def smooth_erosion(curve, d, panels=64):
    """(area, perimeter) of the erosion by d."""
    start, end = first_kept(curve, d), curve["t_end"]
    # Panels crowd towards `start`, where the parallel curve is sharpest.
    edges = start + (end - start) * np.linspace(0, 1, panels + 1) ** 2
    area = length = 0.0
    for lo, hi in zip(edges[:-1], edges[1:]):
        t = 0.5 * (lo + hi) + 0.5 * (hi - lo) * GAUSS_X
        w = 0.5 * (hi - lo) * GAUSS_W
        _, (x1, y1), _ = curve["jets"](t)
        stretch = 1 - d * curvature(curve, t)
        qx, qy = offset_point(curve, t, d)
        area += 0.5 * float(np.dot(w, (qx * y1 - qy * x1) * stretch))
        length += float(np.dot(w, np.hypot(x1, y1) * np.abs(stretch)))
    return curve["copies"] * area, curve["copies"] * length


def whole_polygon(curve, points):
    """The outline sampled, for the brute-force and shapely checks."""
    t = np.linspace(0, 2 * math.pi, points, endpoint=False)
    (x, y), _, _ = curve["jets"](t)
    return Polygon(np.column_stack([x, y]))


def verify_feet(curve, d, samples=60):
    """Largest relative shortfall of the distance from kept points to the outline (0 = all kept rightly)."""
    start = first_kept(curve, d)
    t = np.linspace(start, curve["t_end"], samples + 2)[1:-1]
    qx, qy = offset_point(curve, t, d)
    s = np.linspace(0, 2 * math.pi, 400001)
    (x, y), _, _ = curve["jets"](s)
    worst = 0.0
    for px, py in zip(qx, qy):
        nearest = math.sqrt(float(np.min((x - px) ** 2 + (y - py) ** 2)))
        worst = max(worst, (d - nearest) / d if d > 0 else 0.0)
    return worst


def strip_and_disc_erosion(points, d, sides):
    """Polygon less one rectangle a side of each edge and one disc a corner (an equal-area polygon of `sides`)."""
    polygon = Polygon(points)
    if d == 0:
        return polygon.area, polygon.length
    step = 2 * math.pi / sides
    radius = d * math.sqrt(step / math.sin(step))
    angles = step * np.arange(sides)
    covered = []
    for (x0, y0), (x1, y1) in zip(points, list(points[1:]) + [points[0]]):
        edge = math.hypot(x1 - x0, y1 - y0)
        nx, ny = -(y1 - y0) / edge * d, (x1 - x0) / edge * d
        covered.append(Polygon([(x0 - nx, y0 - ny), (x1 - nx, y1 - ny), (x1 + nx, y1 + ny), (x0 + nx, y0 + ny)]))
        covered.append(Polygon(np.column_stack([x0 + radius * np.cos(angles), y0 + radius * np.sin(angles)])))
    left = polygon.difference(unary_union(covered))
    return left.area, left.length


def polygon_erosion(points, d):
    """(area, perimeter, relative tolerance), the tolerance from doubling the sides of the discs."""
    coarse = np.array(strip_and_disc_erosion(points, d, 8192))
    fine = np.array(strip_and_disc_erosion(points, d, 16384))
    tolerance = float(np.max(np.abs(fine - coarse) / np.maximum(fine, 1e-12)))
    return float(fine[0]), float(fine[1]), max(tolerance, 1e-12)


def polygon_inradius(points):
    lo, hi = 0.0, math.sqrt(Polygon(points).area)
    for _ in range(40):
        mid = 0.5 * (lo + hi)
        if strip_and_disc_erosion(points, mid, 512)[0] > 0:
            lo = mid
        else:
            hi = mid
    return lo


def shapely_buffer(polygon, d):
    left = polygon.buffer(-d, resolution=256, join_style=1) if d > 0 else polygon
    return left.area, left.length
