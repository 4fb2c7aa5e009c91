// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Extents and drawn loops of outlines.
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>
#include <glm/geometric.hpp>

#include "geometry/outline.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

double loop_area(const std::vector<glm::dvec2>& loop) {
  double twice = 0.0;
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const glm::dvec2 a = loop[i];
    const glm::dvec2 b = loop[(i + 1) % loop.size()];
    twice += a.x * b.y - a.y * b.x;
  }
  return 0.5 * twice;
}

std::vector<OutlineShape> all_kinds() {
  return {Round{0.24},
          Rectangle{0.33, 0.23, 0.03},
          Oval{0.30, 0.20},
          Oval{0.18, 0.28},
          RegularPolygon{5, 0.2},
          Fluted{0.24, 40, 0.006},
          Freeform{{{0, 0}, {0.3, 0}, {0.3, 0.1}, {0.12, 0.1}, {0.12, 0.25}, {0, 0.25}}}};
}

}  // namespace

TEST_CASE("the drawn loops enclose the area that is computed, at the rim and moved inwards, counter-clockwise") {
  for (const OutlineShape& shape : all_kinds()) {
    CAPTURE(shape.index());
    const auto outline = make_outline(shape);
    REQUIRE(static_cast<bool>(outline));
    for (const double share : {0.0, 0.1, 0.5, 0.8}) {
      const double inset = share * outline->curve.closes_at();
      double drawn = 0.0;
      for (const auto& loop : outline_loops(*outline, inset)) drawn += loop_area(loop);
      CHECK(std::abs(drawn - outline->curve.area(inset)) < 2e-3 * outline->curve.area(0.0));
    }
    CHECK(outline_loops(*outline, outline->curve.closes_at()).empty());
  }
}

TEST_CASE("length and width are the extent of the rim's loop") {
  for (const OutlineShape& shape : all_kinds()) {
    CAPTURE(shape.index());
    const auto outline = make_outline(shape);
    REQUIRE(static_cast<bool>(outline));
    double x = 0, y = 0;
    const auto rim = outline_loops(*outline, 0.0);
    for (const glm::dvec2 p : rim.front()) {
      x = std::max(x, std::abs(p.x));
      y = std::max(y, std::abs(p.y));
    }
    if (shape.index() != 3) {  // a pentagon is not symmetric front to back
      CHECK(2 * x == doctest::Approx(outline->length).epsilon(2e-3));
      CHECK(2 * y == doctest::Approx(outline->width).epsilon(2e-3));
    }
  }
}

TEST_CASE("every point of an inset loop is that far from the rim") {
  for (const OutlineShape& shape : {OutlineShape(Oval{0.3, 0.2}), OutlineShape(Fluted{0.24, 40, 0.006})}) {
    const auto outline = make_outline(shape);
    REQUIRE(static_cast<bool>(outline));
    const auto rim = outline_loops(*outline, 0.0).front();
    const double inset = 0.6 * outline->curve.closes_at();
    const auto moved = outline_loops(*outline, inset);
    for (const glm::dvec2 p : moved.front()) {
      double nearest = 1.0;
      for (const glm::dvec2 q : rim) nearest = std::min(nearest, glm::distance(p, q));
      CHECK(nearest == doctest::Approx(inset).epsilon(5e-3));
    }
  }
}

}  // namespace tinwright
