# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Writes erosion.csv and freeform.csv: area and perimeter of outlines moved inwards by d.
# Rerun from this folder:  /usr/bin/python3 erosion.py     (about a minute, no network)

import shapely
from shapely.geometry import Polygon

import offset_curves as oc
from shapes import FREEFORM, SMOOTH

FRACTIONS = [0.0, 0.01, 0.03, 0.06, 0.10, 0.18, 0.28, 0.40, 0.55, 0.70, 0.85, 0.95]


def depths(inradius):
    """Twelve depths, rounded to 0.01 mm so that the table says exactly what was done."""
    return [round(f * inradius, 5) for f in FRACTIONS]


def smooth_rows():
    for name, kind, parameters in SMOOTH:
        curve = oc.ellipse(*parameters) if kind == "oval" else oc.fluted(*parameters)
        oc.check_curvature_monotone(curve)
        sampled = oc.whole_polygon(curve, 200000)
        for d in depths(curve["inradius"]):
            area, length = oc.smooth_erosion(curve, d, 96)
            coarse_area, coarse_length = oc.smooth_erosion(curve, d, 48)
            tolerance = max(abs(area - coarse_area) / area, abs(length - coarse_length) / length,
                            1e-13 * curve["inradius"] ** 2 / area, 1e-12)
            assert oc.verify_feet(curve, d) < 1e-7, (name, d)
            yield name, kind, parameters, d, area, length, tolerance, oc.shapely_buffer(sampled, d)


def polygon_rows():
    for name, points in FREEFORM:
        for d in depths(oc.polygon_inradius(points)):
            area, length, tolerance = oc.polygon_erosion(points, d)
            yield name, "freeform", (), d, area, length, tolerance, oc.shapely_buffer(Polygon(points), d)


def write_freeform():
    with open("freeform.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Corners of the freeform outlines of erosion.csv and solids.csv, counter-clockwise, metres.\n")
        out.write("# Made by: python3 erosion.py\n")
        out.write("shape,corner,x_m,y_m\n")
        for name, points in FREEFORM:
            for k, (x, y) in enumerate(points):
                out.write(f"{name},{k},{x:.6f},{y:.6f}\n")


def main():
    write_freeform()
    worst = 0.0
    with open("erosion.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Area and perimeter of outlines moved inwards by d (true erosion: all points at least d from the outline).\n")
        out.write(f"# Made by: python3 erosion.py (shapely {shapely.__version__}); method in offset_curves.py. Metres, square metres.\n")
        out.write("# p1..p3: oval = length, width; fluted = diameter, flutes, flute_depth with r = D/2 - a/2 + (a/2) cos(n theta);\n")
        out.write("# freeform = corners in freeform.csv. tolerance: estimated relative error of area and perimeter.\n")
        out.write("# shapely_rel: how far shapely's own buffer(-d) of 200000 points lies off in area, relative to the area at d = 0;\n")
        out.write("# it thins vertices within 1 % of d, so some 1e-5 is its limit, not this table's.\n")
        out.write("shape,kind,p1,p2,p3,d_m,area_m2,perimeter_m,tolerance,shapely_rel\n")
        first_area = {}
        for name, kind, parameters, d, area, length, tolerance, check in list(smooth_rows()) + list(polygon_rows()):
            first_area.setdefault(name, area)
            off = abs(check[0] - area) / first_area[name]
            worst = max(worst, off)
            p = [f"{v:g}" for v in parameters] + [""] * (3 - len(parameters))
            out.write(f"{name},{kind},{','.join(p)},{d:.5f},{area:.12g},{length:.12g},{tolerance:.1e},{off:.1e}\n")
    print("erosion.csv written; worst difference from shapely's buffer:", worst)


if __name__ == "__main__":
    main()
