# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# The outlines of the reference tables: one list, so that erosion.py and solids.py speak of the same ones.
# Units: metres. Angles in radians.

import math

SMOOTH = [
    # name, kind, parameters (length, width) or (diameter, flutes, flute_depth)
    ("ellipse_30x20", "oval", (0.30, 0.20)),
    ("ellipse_40x12", "oval", (0.40, 0.12)),
    ("ellipse_21x20", "oval", (0.21, 0.20)),
    ("fluted_24_n40_a6", "fluted", (0.24, 40, 0.006)),
    ("fluted_28_n30_a8", "fluted", (0.28, 30, 0.008)),
    ("fluted_10_n16_a4", "fluted", (0.10, 16, 0.004)),
    ("fluted_20_n8_a30", "fluted", (0.20, 8, 0.030)),
    ("fluted_20_n3_a20", "fluted", (0.20, 3, 0.020)),
]


def l_shape():
    return [(0.0, 0.0), (0.24, 0.0), (0.24, 0.10), (0.10, 0.10), (0.10, 0.20), (0.0, 0.20)]


def t_shape():
    return [(0.08, 0.0), (0.16, 0.0), (0.16, 0.12), (0.24, 0.12), (0.24, 0.20), (0.0, 0.20), (0.0, 0.12), (0.08, 0.12)]


def star(points=5, outer=0.13, inner=0.065):
    corners = []
    for k in range(2 * points):
        r = outer if k % 2 == 0 else inner
        angle = math.pi / 2 + math.pi * k / points
        corners.append((round(r * math.cos(angle), 6), round(r * math.sin(angle), 6)))
    return corners


def heart(count=40, width=0.22):
    """A heart of straight edges through points of x = 16 sin^3 t, y = 13 cos t - 5 cos 2t - 2 cos 3t - cos 4t."""
    scale = width / 32
    corners = []
    for k in range(count):
        t = -2 * math.pi * k / count  # counter-clockwise
        x = 16 * math.sin(t) ** 3
        y = 13 * math.cos(t) - 5 * math.cos(2 * t) - 2 * math.cos(3 * t) - math.cos(4 * t)
        corners.append((round(scale * x, 6), round(scale * y, 6)))
    return corners


FREEFORM = [("l_shape", l_shape()), ("t_shape", t_shape()), ("star_5", star()), ("heart_40", heart())]
