// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Volumes and surfaces of whole pans against elementary solids and the table of solids.
#include <cmath>
#include <numbers>
#include <string_view>

#include <doctest/doctest.h>

#include "geometry/lining.h"
#include "geometry/pan.h"
#include "tests/csv_rows.h"
#include "tests/shapes.h"

namespace tinwright {

extern const std::string_view kSolidsCsv;
extern const std::string_view kFreeformCsv;

namespace {

using shapes::relative_error;
using std::numbers::pi;

constexpr double kClosedForm = 1e-9;  // relative, against elementary solids

Freeform l_shape() {
  Freeform freeform;
  for (const reference::Row& corner : reference::rows(kFreeformCsv)) {
    if (corner.text("shape") == "l_shape") freeform.corners.emplace_back(corner.number("x_m"), corner.number("y_m"));
  }
  return freeform;
}

std::vector<Pan> varied_pans() {
  return {shapes::pan(Round{0.24}, StraightWall{0.03, 0.01, 0.005}),
          shapes::pan(Round{0.20}, BowlWall{0.08}),
          shapes::pan(Rectangle{0.33, 0.23, 0.02}, StraightWall{0.05, 0.01, 0.008}),
          shapes::pan(Oval{0.30, 0.20}, StraightWall{0.05, 0.01, 0.006}),
          shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.03, 0.005, 0.0}),
          shapes::pan(RegularPolygon{8, 0.2}, SteppedWall{{{0.0, 0.03}, {0.02, 0.02}, {0.02, 0.01}, {0.05, 0.0}}}),
          shapes::pan(l_shape(), StraightWall{0.05, 0.008, 0.0}),
          shapes::ring(0.25, 0.05, StraightWall{0.10, 0.015, 0.01}, 0.01)};
}

}  // namespace

TEST_CASE("a tapered round tin is a frustum: volume and slant area") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.03, 0.01, 0.0});
  const double top = 0.12, bottom = 0.11, h = 0.03;
  CHECK(relative_error(brim_volume(pan), pi * h / 3 * (top * top + top * bottom + bottom * bottom)) < kClosedForm);
  CHECK(relative_error(wall_area(pan, h), pi * (top + bottom) * std::hypot(h, top - bottom)) < kClosedForm);
  CHECK(relative_error(floor_area(pan), pi * bottom * bottom) < kClosedForm);
  CHECK(relative_error(rim_area(pan), pi * top * top) < kClosedForm);
}

TEST_CASE("a cone that just closes at the floor keeps its third of the cylinder") {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.06, 0.1, 0.0});
  CHECK(relative_error(brim_volume(pan), pi * 0.01 * 0.06 / 3) < kClosedForm);
  CHECK(floor_area(pan) == 0.0);
}

TEST_CASE("a tapered sheet tray is a prismatoid: h/6 (bottom + 4 middle + top)") {
  // 18 × 26 in at the top, 17 3/4 × 25 3/4 in at the bottom, 1 in deep.
  const double in = 0.0254;
  const Pan pan = shapes::pan(Rectangle{26 * in, 18 * in, 0.0}, StraightWall{in, 0.125 * in, 0.0});
  const double cubic_inches = (25.75 * 17.75 + 4 * 25.875 * 17.875 + 26 * 18) / 6;
  CHECK(relative_error(brim_volume(pan), cubic_inches * in * in * in) < kClosedForm);
}

TEST_CASE("a bowl is a spherical cap: πh²(3R - h)/3 and 2πRh") {
  const double rim = 0.1;
  for (const double h : {0.02, 0.08, 0.1}) {
    const Pan pan = shapes::pan(Round{2 * rim}, BowlWall{h});
    const double sphere = (rim * rim + h * h) / (2 * h);
    CHECK(relative_error(brim_volume(pan), pi * h * h * (3 * sphere - h) / 3) < kClosedForm);
    CHECK(relative_error(wall_area(pan, h), 2 * pi * sphere * h) < kClosedForm);
    const double part = 0.4 * h;
    CHECK(relative_error(volume(pan, part), pi * part * part * (3 * sphere - part) / 3) < kClosedForm);
  }
}

TEST_CASE("a savarin mould is half a torus (Pappus), by floor radius and by bowl alike") {
  const double ring_radius = 0.08, tube = 0.04;
  const double expected = pi * pi * ring_radius * tube * tube;
  const Pan by_radius = shapes::ring(0.24, 0.08, StraightWall{tube, 0.0, tube});
  const Pan by_bowl = shapes::ring(0.24, 0.08, BowlWall{tube});
  CHECK(relative_error(brim_volume(by_radius), expected) < kClosedForm);
  CHECK(relative_error(brim_volume(by_bowl), expected) < kClosedForm);
  CHECK(relative_error(wall_area(by_radius, tube), 2 * pi * pi * ring_radius * tube) < kClosedForm);
}

TEST_CASE("a tube pan is the difference of two frustums") {
  const Pan pan = shapes::ring(0.25, 0.05, StraightWall{0.1, 0.015, 0.0}, 0.01);
  const auto frustum = [](double r, double s, double h) { return pi * h / 3 * (r * r + r * s + s * s); };
  CHECK(relative_error(brim_volume(pan), frustum(0.125, 0.11, 0.1) - frustum(0.025, 0.035, 0.1)) < kClosedForm);
  CHECK(relative_error(rim_area(pan), pi * (0.125 * 0.125 - 0.025 * 0.025)) < kClosedForm);
  CHECK(relative_error(wall_area(pan, 0.1), pi * 0.235 * std::hypot(0.1, 0.015) + pi * 0.06 * std::hypot(0.1, 0.01)) <
        kClosedForm);
}

TEST_CASE("a rounded floor corner of an upright round tin takes away the ring of Pappus") {
  const double r = 0.1, depth = 0.05, round = 0.02;
  const Pan pan = shapes::pan(Round{2 * r}, StraightWall{depth, 0.0, round});
  // Cut off: a square of side ρ less its quarter circle, turned about the axis at its own centroid.
  const double square = round * round, quarter = pi * square / 4;
  const double moment = square * (r - round / 2) - quarter * (r - round + 4 * round / (3 * pi));
  CHECK(relative_error(brim_volume(pan), pi * r * r * depth - 2 * pi * moment) < kClosedForm);
  CHECK(relative_error(floor_area(pan), pi * (r - round) * (r - round)) < kClosedForm);
  const double arc_area = 2 * pi * (pi / 2 * round) * (r - round + 2 * round / pi);
  CHECK(relative_error(wall_area(pan, depth), arc_area + 2 * pi * r * (depth - round)) < kClosedForm);
}

TEST_CASE("a ledge belongs to the wall's area and the volumes above and below add up") {
  const Pan pan = shapes::pan(Round{0.2}, SteppedWall{{{0, 0.02}, {0.03, 0.02}, {0.03, 0.0}, {0.05, 0.0}}});
  CHECK(relative_error(brim_volume(pan), pi * (0.0064 * 0.03 + 0.01 * 0.02)) < kClosedForm);
  CHECK(relative_error(wall_area(pan, 0.05), 2 * pi * (0.08 * 0.03 + 0.1 * 0.02) + pi * (0.01 - 0.0064)) < kClosedForm);
}

TEST_CASE("tapered ovals, fluted rims and freeform pans agree with the table of solids within 1e-6") {
  // tests/reference/solids.py: quadrature over the erosions of tests/reference/erosion.py.
  for (const reference::Row& row : reference::rows(kSolidsCsv)) {
    CAPTURE(row.text("solid"));
    CAPTURE(row.text("height_fraction"));
    const StraightWall wall{row.number("depth_m"), row.number("base_inset_m"), 0.0};
    OutlineShape outline = l_shape();
    if (row.text("solid").substr(0, 4) == "oval") outline = Oval{0.30, 0.20};
    if (row.text("solid").substr(0, 6) == "fluted") outline = Fluted{0.24, 40, 0.006};
    Pan pan = shapes::pan(outline, wall);
    if (row.number("lining_floor_m") > 0.0) {
      const auto cavity = line_pan(pan, {row.number("lining_floor_m"), row.number("lining_wall_m"), wall.depth});
      REQUIRE(static_cast<bool>(cavity));
      pan = *cavity;
    }
    const double h = row.number("height_m");
    CHECK(relative_error(volume(pan, h), row.number("volume_m3")) < 1e-6);
    CHECK(relative_error(wall_area(pan, h), row.number("wall_area_m2")) < 1e-5);
    CHECK(relative_error(floor_area(pan), row.number("floor_area_m2")) < 1e-6);
  }
}

TEST_CASE("volume to height and back returns within 1e-9") {
  for (const Pan& pan : varied_pans()) {
    for (const double share : {1e-6, 0.01, 0.2, 0.5, 0.77, 0.999, 1.0}) {
      const double filling = share * brim_volume(pan);
      const auto height = fill_height(pan, filling);
      REQUIRE(static_cast<bool>(height));
      CHECK(relative_error(volume(pan, *height), filling) < 1e-9);
    }
  }
}

TEST_CASE("volume grows with height at the rate of the level surface") {
  for (const Pan& pan : varied_pans()) {
    const int steps = 200;
    for (int i = 0; i < steps; ++i) {
      const double low = depth(pan) * i / steps;
      const double high = depth(pan) * (i + 1) / steps;
      const double middle = surface_area(pan, 0.5 * (low + high));
      CHECK(volume(pan, high) > volume(pan, low));
      CHECK((volume(pan, high) - volume(pan, low)) / (high - low) == doctest::Approx(middle).epsilon(0.2));
    }
  }
}

TEST_CASE("all sizes twice as large hold eight times as much and have four times the wall") {
  const auto pan = [](double k) {
    return shapes::pan(Fluted{0.24 * k, 40, 0.006 * k}, StraightWall{0.03 * k, 0.005 * k, 0.002 * k});
  };
  CHECK(relative_error(brim_volume(pan(2)), 8 * brim_volume(pan(1))) < 1e-7);
  CHECK(relative_error(wall_area(pan(2), 0.06), 4 * wall_area(pan(1), 0.03)) < 1e-6);
}

TEST_CASE("more than the brim is refused with how much too much") {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.0});
  const auto height = fill_height(pan, brim_volume(pan) + 250e-6);
  REQUIRE_FALSE(static_cast<bool>(height));
  CHECK(height.problem().code == ProblemCode::kTooMuch);
  CHECK(height.problem().message.find("250 ml") != std::string::npos);
}

}  // namespace tinwright
