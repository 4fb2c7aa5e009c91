# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Brim volumes of the catalogue's pans by plain integration, against the published volumes of pan_volumes.csv.
# It reads assets/pans.json by itself and shares no code with the library. Area at inset d: rectangles, circles and
# regular polygons by their own formulas; ovals and flutes by offset_curves.py. Needs numpy and shapely.
# Rerun from this folder:  /usr/bin/python3 pan_volumes.py      (prints the table; exit 1 if one is off by more than 12 %)

import csv
import json
import math
import os
import sys
from fractions import Fraction

import numpy as np

import offset_curves as oc

HERE = os.path.dirname(os.path.abspath(__file__))
UNITS = {"in": 25.4, "cm": 10.0, "mm": 1.0}
ALLOWED = 0.12


def millimetres(text):
    *numbers, unit = text.split()
    return float(sum(Fraction(n) for n in numbers)) * UNITS[unit]


def outline_area(outline):
    """Area [mm2] as a function of (inset at the rim's outline, growth of the core)."""
    kind = outline["kind"]
    size = {k: millimetres(v) for k, v in outline.items() if isinstance(v, str) and k != "kind"}
    if kind == "round":
        return lambda d, core: math.pi * (size["diameter"] / 2 - d) ** 2
    if kind == "rectangle":
        length, width, corner = size["length"], size["width"], size.get("corner_radius", 0.0)
        return lambda d, core: (length - 2 * d) * (width - 2 * d) - (4 - math.pi) * max(corner - d, 0) ** 2
    if kind == "polygon":
        sides, flats = outline["sides"], size["across_flats"]
        return lambda d, core: sides * math.tan(math.pi / sides) * (flats / 2 - d) ** 2
    if kind == "ring":
        outer, inner = size["outer_diameter"] / 2, size["inner_diameter"] / 2
        return lambda d, core: math.pi * ((outer - d) ** 2 - (inner + core) ** 2)
    if kind == "oval":
        curve = oc.ellipse(size["length"], size["width"])
    else:
        curve = oc.fluted(size["diameter"], outline["flutes"], size["flute_depth"])
    return lambda d, core: oc.smooth_erosion(curve, d, 12)[0]


def wall_inset(depth, base_inset, radius):
    """Inset at height z of a straight wall whose corner with the floor is rounded, tangent to both."""
    angle = math.atan2(base_inset, depth)
    centre = base_inset - radius * math.tan(angle) + radius / math.cos(angle)
    tangent = radius * (1 - math.sin(angle))

    def inset(z):
        if z < tangent:
            return centre - math.sqrt(max(radius ** 2 - (radius - z) ** 2, 0.0))
        return base_inset * (1 - z / depth)

    return inset, tangent


def volume_ml(pan, below_rim=0.0):
    area, profile = outline_area(pan["outline"]), pan["profile"]
    depth = millimetres(profile["depth"])
    x, w = np.polynomial.legendre.leggauss(24)
    if profile.get("kind") == "bowl":
        rim = millimetres(pan["outline"]["diameter"]) / 2
        ball = (rim * rim + depth * depth) / (2 * depth)
        return (math.pi * depth ** 2 * (3 * ball - depth) / 3) / 1000
    base = millimetres(profile["base_inset"]) if "base_inset" in profile else 0.0
    if "wall_angle" in profile:
        base = depth * math.tan(math.radians(float(profile["wall_angle"].split()[0])))
    radius = millimetres(profile.get("floor_radius", "0 mm"))
    outer, tangent = wall_inset(depth, base, radius)
    core, core_tangent = wall_inset(depth, millimetres(profile.get("core_inset", "0 mm")), radius)
    level = depth - below_rim
    cuts = sorted({0.0, min(tangent, level), min(core_tangent, level), level})
    total = 0.0
    for low, high in zip(cuts[:-1], cuts[1:]):
        for xi, wi in zip(x, w):
            u = 0.5 + 0.5 * xi
            z = low + (high - low) * u * u  # the rounded corner starts with a vertical tangent
            total += 0.5 * wi * 2 * (high - low) * u * area(outer(z), core(z))
    return total / 1000


def main():
    with open(os.path.join(HERE, "../../assets/pans.json"), encoding="utf-8") as handle:
        pans = {pan["id"]: pan for pan in json.load(handle)["pans"]}
    with open(os.path.join(HERE, "pan_volumes.csv"), encoding="utf-8") as handle:
        rows = list(csv.DictReader(line for line in handle if not line.startswith("#")))
    failures = 0
    for row in rows:
        if row["compare"] != "yes":
            continue
        computed = volume_ml(pans[row["pan_id"]]["pan"], float(row["below_rim_mm"]))
        published = float(row["published_ml"])
        off = computed / published - 1
        failures += abs(off) > ALLOWED
        print(f"{row['pan_id']:28} {row['published']:>9} = {published:7.0f} ml  computed {computed:7.0f} ml  {100 * off:+5.1f} %"
              f"{'   OFF' if abs(off) > ALLOWED else ''}")
    if "--all" in sys.argv:
        for pan in pans.values():
            print(f"{pan['id']:28} {volume_ml(pan['pan']):8.1f} ml")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
