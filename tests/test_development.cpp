// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Flat pieces cover what they are cut for: against closed forms (CRC Standard Mathematical Tables, solids: frustum of a
// right circular cone, lateral area π (r1 + r2) s; a sector of radius R and angle θ has the arc R θ), against the areas
// and perimeters that geometry works out by itself, and by lengths kept.
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <doctest/doctest.h>
#include <glm/geometric.hpp>

#include "geometry/development.h"
#include "tests/dice.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using glm::dvec2;
using shapes::relative_error;
using std::numbers::pi;

/// Outlines of all kinds [m]; those of the first five have no wall that needs sampling.
std::vector<OutlineShape> outlines() {
  return {Round{0.24},
          Rectangle{0.23, 0.13, 0.0},
          Rectangle{0.23, 0.13, 0.03},
          RegularPolygon{6, 0.2},
          RegularPolygon{7, 0.2},
          Oval{0.30, 0.20},
          Fluted{0.24, 12, 0.006},
          Freeform{{{0, 0}, {0.2, 0}, {0.2, 0.1}, {0.1, 0.1}, {0.1, 0.2}, {0, 0.2}}}};
}

Outline outline_of(const OutlineShape& shape) {
  const auto outline = make_outline(shape);
  REQUIRE(static_cast<bool>(outline));
  return *outline;
}

struct Totals {
  double area = 0.0, upper = 0.0, lower = 0.0, drawn = 0.0, feet = 0.0;
};

Totals totals(const std::vector<Strip>& strips) {
  Totals sum;
  for (const Strip& strip : strips) {
    sum.area += strip.area;
    sum.upper += strip.upper_length;
    sum.lower += strip.lower_length;
    sum.drawn += std::abs(loop_area(strip_outline(strip, {})));
    for (const StripEdge& edge : strip.lower) sum.feet += edge.is_foot ? line_length(edge.line) : 0.0;
  }
  return sum;
}

double distance_to(const Loop& line, dvec2 p) {
  double nearest = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const dvec2 way = line[i + 1] - line[i];
    const double share = std::clamp(glm::dot(p - line[i], way) / glm::dot(way, way), 0.0, 1.0);
    nearest = std::min(nearest, glm::distance(p, line[i] + share * way));
  }
  return nearest;
}

/// The circle through the first, middle and last point of a line.
double radius_of(const Loop& line) {
  const dvec2 a = line.front(), b = line[line.size() / 2], c = line.back();
  const double cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return glm::distance(a, b) * glm::distance(b, c) * glm::distance(c, a) / (2.0 * std::abs(cross));
}

}  // namespace

TEST_CASE("a slightly tapered round wall unrolls into one annular sector with the frustum's area, arcs and radii") {
  const double top = 0.13, foot = 0.12, height = 0.07, slope = std::hypot(top - foot, height);
  const auto strips = develop_wall(outline_of(Round{2.0 * top}), 0.0, top - foot, height, 1e-8);
  REQUIRE(strips.size() == 1);
  const Strip& strip = strips.front();
  CHECK(relative_error(strip.area, pi * (top + foot) * slope) < 1e-12);
  CHECK(relative_error(strip.upper_length, 2.0 * pi * top) < 1e-12);
  CHECK(relative_error(strip.lower_length, 2.0 * pi * foot) < 1e-12);
  const double outer = top * slope / (top - foot), angle = 2.0 * pi * (top - foot) / slope;
  CHECK(relative_error(radius_of(strip.upper), outer) < 1e-6);
  REQUIRE(strip.lower.size() == 1);
  CHECK(strip.lower.front().is_foot);
  CHECK(relative_error(radius_of(strip.lower.front().line), outer - slope) < 1e-6);
  CHECK(relative_error(2.0 * strip.end_heading, angle) < 1e-12);
  CHECK(relative_error(line_length(strip.upper), 2.0 * pi * top) < 1e-7);
  CHECK(relative_error(line_length(strip.lower.front().line), 2.0 * pi * foot) < 1e-7);
}

TEST_CASE("a flat round wall, which would bend by more than half a turn, comes in two equal halves") {
  const double top = 0.115, foot = 0.09, height = 0.03, slope = std::hypot(top - foot, height);
  const auto strips = develop_wall(outline_of(Round{2.0 * top}), 0.0, top - foot, height);
  REQUIRE(strips.size() == 2);
  for (const Strip& strip : strips) CHECK(relative_error(strip.area, 0.5 * pi * (top + foot) * slope) < 1e-12);
  CHECK(relative_error(totals(strips).area, pi * (top + foot) * slope) < 1e-12);
}

TEST_CASE("a cone down to its tip unrolls into a sector of its slant height") {
  const double top = 0.05, height = 0.12, slope = std::hypot(top, height);
  const auto strips = develop_wall(outline_of(Round{2.0 * top}), 0.0, top, height, 1e-9);
  CHECK(relative_error(totals(strips).area, pi * top * slope) < 1e-12);
  CHECK(totals(strips).lower < 1e-9);
  CHECK(relative_error(totals(strips).drawn, pi * top * slope) < 1e-6);
}

TEST_CASE("a ring's core unrolls into a sector that is longer at its foot") {
  const double top = 0.04, foot = 0.05, height = 0.1, slope = std::hypot(foot - top, height);
  const auto strips = develop_core(top, foot, height, 1e-9);
  REQUIRE(strips.size() == 1);
  CHECK(relative_error(strips.front().area, pi * (top + foot) * slope) < 1e-12);
  CHECK(relative_error(strips.front().upper_length, 2.0 * pi * top) < 1e-12);
  CHECK(relative_error(strips.front().lower_length, 2.0 * pi * foot) < 1e-12);
  CHECK(relative_error(totals(strips).drawn, pi * (top + foot) * slope) < 1e-6);
  CHECK(relative_error(totals(strips).feet, 2.0 * pi * foot) < 1e-6);
}

TEST_CASE("an upright wall of any outline unrolls into a rectangle, perimeter by depth") {
  for (const OutlineShape& shape : outlines()) {
    CAPTURE(shape.index());
    const Outline outline = outline_of(shape);
    const double around = outline.curve.perimeter(0.0);
    const auto strips = develop_wall(outline, 0.0, 0.0, 0.05);
    REQUIRE(strips.size() == 1);
    const Loop loop = strip_outline(strips.front(), {});
    CHECK(relative_error(strips.front().area, 0.05 * around) < 1e-9);
    CHECK(relative_error(loop_area(loop), 0.05 * around) < 1e-9);
    for (const dvec2 p : loop) {
      CHECK(std::min(std::abs(p.y), std::abs(p.y - 0.05)) < 1e-12);
      CHECK(p.x > -1e-9);
      CHECK(p.x < around * (1.0 + 1e-9));
    }
  }
}

TEST_CASE("the wall of a tapered rectangle is four trapezoids joined at its corners") {
  const double a = 0.23, b = 0.13, run = 0.015, height = 0.07, slope = std::hypot(run, height);
  const auto strips = develop_wall(outline_of(Rectangle{a, b, 0.0}), 0.0, run, height);
  REQUIRE(strips.size() == 1);
  const Strip& strip = strips.front();
  CHECK(relative_error(strip.area, slope * (2.0 * (a + b) - 4.0 * run)) < 1e-12);
  CHECK(relative_error(loop_area(strip_outline(strip, {})), strip.area) < 1e-9);
  // Creases are the pan's own corner edges; between them the feet are the floor's sides.
  REQUIRE(strip.folds.size() == 4);
  for (const Loop& fold : strip.folds) {
    CHECK(relative_error(line_length(fold), std::sqrt(2.0 * run * run + height * height)) < 1e-9);
  }
  const double sides[] = {b, a, b};
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(relative_error(glm::distance(strip.folds[i].front(), strip.folds[i + 1].front()), sides[i] - 2.0 * run) <
          1e-9);
    CHECK(relative_error(glm::distance(strip.folds[i].back(), strip.folds[i + 1].back()), sides[i]) < 1e-9);
  }
}

TEST_CASE("a square with fully rounded corners is a round pan") {
  const double radius = 0.1, run = 0.02, height = 0.06;
  const auto round = develop_wall(outline_of(Round{2.0 * radius}), 0.0, run, height, 1e-8);
  const auto square = develop_wall(outline_of(Rectangle{2.0 * radius, 2.0 * radius, radius}), 0.0, run, height, 1e-8);
  REQUIRE(round.size() == square.size());
  CHECK(relative_error(totals(square).area, totals(round).area) < 1e-12);
  CHECK(std::abs(radius_of(square.front().upper) - radius_of(round.front().upper)) < 1e-6);
}

TEST_CASE("walls keep geometry's own areas and perimeters, whatever the outline, for random sizes") {
  Dice dice(20261);
  for (int round = 0; round < 60; ++round) {
    const double size = dice.between(0.05, 0.4), other = dice.between(0.6, 1.0) * size;
    OutlineShape shape;
    double tolerance = 1e-9;
    const int kind = round % 5;
    if (kind == 0) shape = Round{size};
    if (kind == 1) shape = Rectangle{size, other, dice.between(0.0, 0.5) * other};
    if (kind == 2) shape = RegularPolygon{3 + dice.up_to(9), size};
    double crest = 1.0;  // radius of curvature: creases begin there
    if (kind == 3) {
      shape = Oval{size, other};
      crest = 0.5 * other * other / size;
    }
    if (kind == 4) {
      const int flutes = 3 + dice.up_to(20);
      const double flute_depth = dice.between(0.01, 0.05) * size;
      shape = Fluted{size, flutes, flute_depth};
      crest = 0.25 * size * size / (0.5 * size + 0.5 * flute_depth * flutes * flutes);
    }
    const Outline outline = outline_of(shape);
    const double most = outline.curve.closes_at();
    const double top = dice.up_to(1) * dice.between(0.0, 0.3) * most;
    const double bottom = top + dice.between(0.01, 0.5) * most;
    const double height = dice.between(0.02, 0.12);
    CAPTURE(round);
    CAPTURE(top / most);
    CAPTURE(bottom / most);
    // Creases under flutes and at an oval's ends are sampled: to 1e-4, as development.h says.
    const bool is_creased = bottom > crest;
    if (is_creased) tolerance = 1e-4;
    const Totals sum = totals(develop_wall(outline, top, bottom, height, 1e-8));
    const double slope = std::hypot(bottom - top, height) / (bottom - top);
    CHECK(relative_error(sum.area, slope * (outline.curve.area(top) - outline.curve.area(bottom))) < tolerance);
    CHECK(relative_error(sum.upper, outline.curve.perimeter(top)) < 1e-6);
    CHECK(relative_error(sum.lower, outline.curve.perimeter(bottom)) < 1e-6);
    CHECK(relative_error(sum.feet, outline.curve.perimeter(bottom)) < 1e-5);
    CHECK(relative_error(sum.drawn, sum.area) < (is_creased ? 1e-4 : 1e-5));
  }
}

TEST_CASE("walls of random freeform outlines keep their areas, inward corners and vanishing sides included") {
  Dice dice(77);
  for (int round = 0; round < 25; ++round) {
    const int corners = 5 + dice.up_to(6);
    Freeform star;
    for (int i = 0; i < corners; ++i) {
      const double angle = 2.0 * pi * i / corners;
      const double radius = dice.between(0.06, 0.16);
      star.corners.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
    }
    const Outline outline = outline_of(star);
    const double bottom = dice.between(0.05, 0.6) * outline.curve.closes_at(), height = dice.between(0.02, 0.08);
    CAPTURE(round);
    const Totals sum = totals(develop_wall(outline, 0.0, bottom, height, 1e-7));
    const double slope = std::hypot(bottom, height) / bottom;
    CHECK(relative_error(sum.area, slope * (outline.curve.area(0.0) - outline.curve.area(bottom))) < 2e-4);
    CHECK(relative_error(sum.upper, outline.curve.perimeter(0.0)) < 1e-9);
    CHECK(relative_error(sum.lower, outline.curve.perimeter(bottom)) < 1e-3);
  }
}

TEST_CASE("a tapered oval's strip is as wide as the slope is long, all along") {
  const double run = 0.02, height = 0.05, slope = std::hypot(run, height);
  for (const Strip& strip : develop_wall(outline_of(Oval{0.3, 0.2}), 0.0, run, height, 1e-7)) {
    for (const StripEdge& edge : strip.lower) {
      CHECK(edge.is_foot);
      for (const dvec2 p : edge.line) CHECK(std::abs(distance_to(strip.upper, p) - slope) < 1e-5);
    }
  }
}

TEST_CASE("pan by pan: strips and gores add up to the wall, floors to the floor") {
  const StraightWall tapered{0.06, 0.015, 0.0};
  for (const OutlineShape& shape : outlines()) {
    CAPTURE(shape.index());
    const Pan pan = shapes::pan(shape, tapered);
    const WallPiece& wall = pan.wall.pieces().front();
    const Totals sum = totals(develop_wall(pan.outline, wall.d1, wall.d0, wall.height(), 1e-8));
    CHECK(relative_error(sum.area, wall_area(pan, depth(pan))) <
          (std::holds_alternative<Freeform>(shape) || std::holds_alternative<Fluted>(shape) ? 1e-4 : 1e-9));
    double floor = 0.0;
    for (const Loop& loop : floor_loops(pan)) floor += loop_area(loop);
    CHECK(relative_error(floor, floor_area(pan)) < 1e-3);  // drawn, in chords
  }
}

TEST_CASE("gores of a bowl have the area of the spherical cap, and the rim's length along their wide ends") {
  const double radius = 0.09, height = 0.07, ball = (radius * radius + height * height) / (2.0 * height);
  const Pan bowl = shapes::pan(Round{2.0 * radius}, BowlWall{height});
  const Gore gore = develop_gore(radius, bowl.wall, false, 12);
  CHECK(relative_error(12.0 * gore.area, 2.0 * pi * ball * height) < 1e-12);  // CRC tables: zone of a sphere
  CHECK(relative_error(12.0 * gore.width, 2.0 * pi * radius) < 1e-12);
  CHECK(relative_error(std::abs(loop_area(gore.edge)), gore.area) < 1e-3);
}

TEST_CASE("gores of half a torus go down one wall and up the other") {
  const double outer = 0.12, inner = 0.04, tube = 0.5 * (outer - inner);
  const Pan torus = shapes::ring(2.0 * outer, 2.0 * inner, BowlWall{tube});
  const Gore gore = develop_gore(outer, torus.wall, false, 16, &*torus.core);
  // Pappus: half a circle's length times the way of its middle round the axis, which by symmetry is that of its centre.
  CHECK(relative_error(16.0 * gore.area, pi * tube * 2.0 * pi * (inner + tube)) < 1e-9);
  CHECK(relative_error(16.0 * gore.area, wall_area(torus, tube)) < 1e-9);
}

TEST_CASE("a wall's length counts slopes, arcs and ledges") {
  const Pan plain = shapes::pan(Round{0.2}, StraightWall{0.04, 0.03, 0.0});
  CHECK(relative_error(wall_length(plain.wall, 0.04), 0.05) < 1e-12);
  CHECK(relative_error(wall_length(plain.wall, 0.02), 0.025) < 1e-12);
  const Pan rounded = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.01});
  CHECK(relative_error(wall_length(rounded.wall, 0.05), 0.5 * pi * 0.01 + 0.04) < 1e-12);
  const Pan stepped = shapes::pan(Round{0.2}, SteppedWall{{{0, 0.02}, {0.03, 0.02}, {0.03, 0.0}, {0.05, 0.0}}});
  CHECK(relative_error(wall_length(stepped.wall, 0.05), 0.03 + 0.02 + 0.02) < 1e-12);
}

TEST_CASE("tabs and the overlap lie outside the wall they hold") {
  const Outline outline = outline_of(Rectangle{0.2, 0.1, 0.0});
  const Strip strip = develop_wall(outline, 0.0, 0.0, 0.05).front();
  const double bare = loop_area(strip_outline(strip, {}));
  CHECK(relative_error(loop_area(strip_outline(strip, {.tab = 0, .tab_width = 0, .lap = 0.015})) - bare, 0.015 * 0.05) <
        1e-9);
  const Loop tabbed = strip_outline(strip, {.tab = 0.012, .tab_width = 0.015, .lap = 0.0});
  CHECK(loop_area(tabbed) > bare + 0.5 * 0.6 * 0.012);
  CHECK(loop_area(tabbed) < bare + 0.6 * 0.012);
  for (const dvec2 p : tabbed) CHECK(p.y < 0.062 + 1e-9);
}

TEST_CASE("a sheet of dough is the floor and all that lies within its reach") {
  const double reach = 0.06;
  const DoughSheet disc = dough_sheet(outline_of(Round{0.24}), 0.01, reach);
  CHECK(relative_error(disc.area, pi * 0.17 * 0.17) < 1e-12);
  // Steiner's formula for convex shapes (Santaló, I.1)
  const DoughSheet sheet = dough_sheet(outline_of(Rectangle{0.23, 0.13, 0.0}), 0.01, reach);
  CHECK(relative_error(sheet.area, 0.21 * 0.11 + 2.0 * (0.21 + 0.11) * reach + pi * reach * reach) < 1e-12);
  CHECK(relative_error(loop_area(sheet.edge), sheet.area) < 1e-3);
  for (const OutlineShape& shape : outlines()) {
    CAPTURE(shape.index());
    const Outline outline = outline_of(shape);
    DoughSheet dough = dough_sheet(outline, 0.01, reach);
    dough.edge.push_back(dough.edge.front());
    for (const Loop& loop : outline_loops(outline, 0.01)) {
      for (const dvec2 p : loop) CHECK(distance_to(dough.edge, p) > reach - 1e-4);
    }
  }
}

}  // namespace tinwright
