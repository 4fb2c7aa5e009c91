// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The area curve against closed forms and the erosion tables.
#include <cmath>
#include <numbers>
#include <string_view>

#include <doctest/doctest.h>

#include "geometry/outline.h"
#include "tests/csv_rows.h"
#include "tests/shapes.h"

namespace tinwright {

extern const std::string_view kErosionBooleanCsv;
extern const std::string_view kErosionCsv;
extern const std::string_view kEllipsePerimeterCsv;
extern const std::string_view kFreeformCsv;

namespace {

using shapes::curve_of;
using shapes::relative_error;
using std::numbers::pi;

OutlineShape shape_of(const reference::Row& row) {
  if (row.text("kind") == "oval") return Oval{row.number("p1"), row.number("p2")};
  if (row.text("kind") == "fluted") {
    return Fluted{row.number("p1"), static_cast<int>(row.number("p2")), row.number("p3")};
  }
  Freeform freeform;
  for (const reference::Row& corner : reference::rows(kFreeformCsv)) {
    if (corner.text("shape") == row.text("shape"))
      freeform.corners.emplace_back(corner.number("x_m"), corner.number("y_m"));
  }
  return freeform;
}

}  // namespace

TEST_CASE("a round outline moved inwards keeps the area of the smaller circle") {
  const AreaCurve curve = curve_of(Round{0.24});
  for (const double d : {0.0, 0.01, 0.05, 0.119}) {
    CHECK(std::abs(curve.area(d) - pi * (0.12 - d) * (0.12 - d)) < 1e-14 * curve.area(0.0));
    CHECK(relative_error(curve.perimeter(d), 2 * pi * (0.12 - d)) < 1e-12);
  }
  CHECK(curve.area(0.12) == 0.0);
  CHECK(curve.area(0.2) == 0.0);
}

TEST_CASE("a rounded rectangle moved inwards follows the design formula before and past its corner radius") {
  const double a = 0.33, b = 0.23, c = 0.02;
  const AreaCurve curve = curve_of(Rectangle{a, b, c});
  for (const double d : {0.0, 0.005, 0.0199, 0.0201, 0.05, 0.1}) {
    const double r = std::max(c - d, 0.0);
    CHECK(relative_error(curve.area(d), (a - 2 * d) * (b - 2 * d) - (4 - pi) * r * r) < 1e-12);
  }
}

TEST_CASE("a rectangle whose corner radius is half its width is two half circles and a band") {
  const AreaCurve curve = curve_of(Rectangle{0.30, 0.10, 0.05});
  CHECK(relative_error(curve.area(0.0), 0.20 * 0.10 + pi * 0.0025) < 1e-12);
  CHECK(relative_error(curve.perimeter(0.0), 0.40 + pi * 0.10) < 1e-12);
}

TEST_CASE("a regular polygon shrinks as (1 - d/r)²") {
  const AreaCurve curve = curve_of(RegularPolygon{6, 0.20});
  const double hexagon = 6 * std::tan(pi / 6) * 0.01;  // n r² tan(π/n), r the inscribed circle's radius
  CHECK(relative_error(curve.area(0.0), hexagon) < 1e-12);
  CHECK(relative_error(curve.area(0.04), hexagon * 0.36) < 1e-12);
  CHECK(relative_error(curve.perimeter(0.0), 12 * std::tan(pi / 6) * 0.1) < 1e-12);
}

TEST_CASE("an oval's perimeter is the complete elliptic integral (DLMF 19.30.1) within 1e-9") {
  for (const reference::Row& row : reference::rows(kEllipsePerimeterCsv)) {
    CAPTURE(row.text("ratio"));
    // Ovals flatter than 1 : 5 are no pans; the quadrature is held to them only loosely.
    const double bound = row.number("ratio") >= 0.2 ? 1e-9 : 1e-4;
    const AreaCurve curve = curve_of(Oval{row.number("length_m"), row.number("width_m")});
    CHECK(relative_error(curve.perimeter(0.0), row.number("perimeter_m")) < bound);
  }
}

TEST_CASE("moved inwards, ovals and fluted rims agree with an independent polygon library within 1e-6") {
  // tests/reference/erosion_boolean.py: strips and discs taken away by GEOS 3.11 (shapely 1.8.5), extrapolated.
  int rows = 0;
  for (const reference::Row& row : reference::rows(kErosionBooleanCsv)) {
    CAPTURE(row.text("shape"));
    CAPTURE(row.text("d_m"));
    const AreaCurve curve = curve_of(shape_of(row));
    CHECK(std::abs(curve.area(row.number("d_m")) - row.number("area_m2")) < 1e-6 * curve.area(0.0));
    ++rows;
  }
  CHECK(rows >= 40);
}

TEST_CASE("moved inwards, ovals, fluted rims and freeform outlines agree with the erosion table within 1e-6") {
  // tests/reference/erosion.py: freeform by GEOS booleans (shapely 1.8.5); ovals and fluted rims by quadrature of
  // parallel curves written apart from ours. Differences are taken against the rim's area and perimeter.
  std::string shape;
  AreaCurve curve;
  int rows = 0;
  for (const reference::Row& row : reference::rows(kErosionCsv)) {
    if (row.text("shape") != shape) {
      shape = row.text("shape");
      curve = curve_of(shape_of(row));
    }
    const double d = row.number("d_m");
    CAPTURE(shape);
    CAPTURE(d);
    CHECK(std::abs(curve.area(d) - row.number("area_m2")) < 1e-6 * curve.area(0.0));
    CHECK(std::abs(curve.perimeter(d) - row.number("perimeter_m")) < 1e-5 * curve.perimeter(0.0));
    ++rows;
  }
  CHECK(rows >= 100);
}

TEST_CASE("deep flutes moved inwards agree with brute force within 1e-6 of the rim's area") {
  // The parallel curve of half a flute in 400,000 chords, cut where it last crosses the crest's axis.
  const auto brute = [](double diameter, int n, double depth, double d) {
    const double mean = 0.5 * (diameter - depth), e = 0.5 * depth;
    const int steps = 400000;
    double area = 0.0, last_x = 0.0, last_y = 0.0;
    for (int i = steps; i >= 0; --i) {
      const double t = pi / n * i / steps;
      const double r = mean + e * std::cos(n * t), r1 = -e * n * std::sin(n * t), speed = std::hypot(r, r1);
      const double tx = (r1 * std::cos(t) - r * std::sin(t)) / speed, ty = (r1 * std::sin(t) + r * std::cos(t)) / speed;
      const double x = r * std::cos(t) - d * ty, y = r * std::sin(t) + d * tx;
      if (y < 0.0) {  // the chord is cut on the axis
        area += 0.5 * (last_x + (x - last_x) * last_y / (last_y - y)) * last_y;
        break;
      }
      if (i < steps) area += 0.5 * (x * last_y - y * last_x);
      last_x = x;
      last_y = y;
    }
    return 2 * n * area;
  };
  struct Flutes {
    int count;
    double depth;
  };
  for (const Flutes& flutes :
       {Flutes{36, 0.025}, Flutes{60, 0.025}, Flutes{60, 0.015}, Flutes{200, 0.025}, Flutes{100, 0.01}}) {
    const AreaCurve curve = curve_of(Fluted{0.1, flutes.count, flutes.depth});
    for (const double d : {0.0005, 0.002182, 0.008, 0.02}) {
      CAPTURE(flutes.count);
      CAPTURE(flutes.depth);
      CAPTURE(d);
      CHECK(std::abs(curve.area(d) - brute(0.1, flutes.count, flutes.depth, d)) < 1e-6 * curve.area(0.0));
    }
  }
}

TEST_CASE("the area never grows with the inset, and its slope is minus the perimeter") {
  for (const OutlineShape& shape : {OutlineShape(Oval{0.3, 0.2}), OutlineShape(Fluted{0.24, 40, 0.006}),
                                    OutlineShape(Fluted{0.2, 3, 0.02}), OutlineShape(Rectangle{0.3, 0.2, 0.03})}) {
    const AreaCurve curve = curve_of(shape);
    const double step = curve.closes_at() / 1000;
    for (int i = 0; i < 999; ++i) {
      const double d = i * step;
      CHECK(curve.area(d + step) < curve.area(d));
      const double slope = (curve.area(d) - curve.area(d + step)) / step;
      CHECK(slope <= curve.perimeter(d) + 1e-4);
      CHECK(slope >= curve.perimeter(d + step) - 1e-4);
    }
  }
}

}  // namespace tinwright
