# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Writes solids.csv: volumes and wall areas of tapered pans, by integrating true erosion areas over height.
# The inset is linear in z (straight wall), so V(h) = integral of area(inset(z)) dz and
# wall(h) = integral of perimeter(inset(z)) dz * sqrt(1 + (base_inset / depth)^2).
# Smooth outlines: composite Gauss-Legendre, panels split where the parallel curve starts to be trimmed.
# L shape: Gauss-Legendre over polygon erosions. `check_rel`: against Simpson's rule over shapely's buffer(-d).
# Rerun from this folder:  /usr/bin/python3 solids.py     (under a minute, no network)

import math

import numpy as np
from shapely.geometry import Polygon

import offset_curves as oc
from shapes import l_shape

FRACTIONS = [0.25, 0.5, 0.75, 1.0]


def smooth(curve):
    sampled = oc.whole_polygon(curve, 200000)
    sharpest = 1 / float(oc.curvature(curve, np.array([0.0]))[0])
    return {"erosion": lambda d: oc.smooth_erosion(curve, d, 32), "check": lambda d: oc.shapely_buffer(sampled, d)[0],
            "break": sharpest}


def freeform(points):
    polygon = Polygon(points)
    return {"erosion": lambda d: oc.polygon_erosion(points, d)[:2],
            "check": lambda d: oc.shapely_buffer(polygon, d)[0], "break": None}


def integrate(outline, inset, low, high, slope, order):
    """(volume, perimeter integral) from z = low to high; inset(z) has the constant slope -slope."""
    cuts = [low, high]
    if outline["break"] is not None and slope > 0:
        at = low + (inset(low) - outline["break"]) / slope
        if low < at < high:
            cuts.insert(1, at)
    x, w = np.polynomial.legendre.leggauss(order)
    volume = length = 0.0
    for start, end in zip(cuts[:-1], cuts[1:]):
        # z = end - (end - start) u^2 or its mirror image: softens the square-root start of the trimming.
        for xi, wi in zip(x, w):
            u = 0.5 + 0.5 * xi
            if len(cuts) == 3 and start == low:
                z, jacobian = end - (end - start) * u * u, 2 * (end - start) * u
            else:
                z, jacobian = start + (end - start) * u, end - start
            area, perimeter = outline["erosion"](inset(z))
            volume += 0.5 * wi * jacobian * area
            length += 0.5 * wi * jacobian * perimeter
    return volume, length


def simpson(outline, inset, low, high, panels=200):
    z = np.linspace(low, high, panels + 1)
    values = np.array([outline["check"](inset(v)) for v in z])
    weights = np.ones(panels + 1)
    weights[1:-1:2], weights[2:-1:2] = 4, 2
    return float(np.dot(weights, values)) * (high - low) / panels / 3


def cases():
    oval, tart, angle = smooth(oc.ellipse(0.30, 0.20)), smooth(oc.fluted(0.24, 40, 0.006)), freeform(l_shape())
    yield "oval_30x20_tapered", oval, 0.05, 0.010, 0.0, 0.0
    yield "fluted_24_tapered", tart, 0.03, 0.005, 0.0, 0.0
    yield "fluted_24_tapered_lined", tart, 0.03, 0.005, 0.004, 0.003
    yield "l_shape_tapered", angle, 0.05, 0.008, 0.0, 0.0


def main():
    with open("solids.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Tapered pans: volume and wall area from the (cavity's) floor up to height_m. Metres; see solids.py for the method.\n")
        out.write("# Made by: python3 solids.py. Outlines: oval 0.30 x 0.20; fluted 0.24, n 40, a 0.006; l_shape in freeform.csv.\n")
        out.write("# inset(z) = base_inset (1 - z/depth); lined: the floor rises by lining_floor and the inset grows by\n")
        out.write("# lining_wall sqrt(1 + (base_inset/depth)^2); heights then count from the lining's floor, wall_area is the cavity's.\n")
        out.write("# tolerance: estimated relative error. check_rel: difference from Simpson's rule over shapely's buffer(-d), full height only.\n")
        out.write("solid,depth_m,base_inset_m,lining_floor_m,lining_wall_m,height_fraction,height_m,volume_m3,wall_area_m2,floor_area_m2,tolerance,check_rel\n")
        for name, outline, depth, base_inset, floor, wall in cases():
            slope = base_inset / depth
            slant = math.sqrt(1 + slope * slope)

            def inset(z):
                return base_inset * (1 - (z + floor) / depth) + wall * slant

            cavity = depth - floor
            bottom = outline["erosion"](inset(0))[0]
            for fraction in FRACTIONS:
                height = cavity * fraction
                volume, length = integrate(outline, inset, 0, height, slope, 24 if outline["break"] else 10)
                again, length_again = integrate(outline, inset, 0, height, slope, 16 if outline["break"] else 7)
                tolerance = max(abs(volume - again) / volume, abs(length - length_again) / length, 1e-12)
                if not outline["break"]:
                    tolerance = max(tolerance, 1e-9)
                check = ""
                if fraction == 1.0:
                    check = f"{abs(simpson(outline, inset, 0, height) - volume) / volume:.1e}"
                out.write(f"{name},{depth:g},{base_inset:g},{floor:g},{wall:g},{fraction:g},{height:g},{volume:.12g},"
                          f"{length * slant:.12g},{bottom:.12g},{tolerance:.1e},{check}\n")


if __name__ == "__main__":
    main()
