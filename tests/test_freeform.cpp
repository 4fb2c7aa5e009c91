// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Freeform outlines against elementary figures.
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "geometry/outline.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::curve_of;
using shapes::relative_error;
using std::numbers::pi;

}  // namespace

TEST_CASE("a freeform square and rectangle equal the built-in ones at every inset") {
  const AreaCurve freeform = curve_of(Freeform{{{0.05, 0.02}, {0.35, 0.02}, {0.35, 0.22}, {0.05, 0.22}}});
  const auto rectangle = make_outline(Rectangle{0.3, 0.2, 0.0});
  for (const double d : {0.0, 0.01, 0.05, 0.0999}) {
    CHECK(std::abs(freeform.area(d) - rectangle->curve.area(d)) < 1e-12);
  }
  CHECK(freeform.closes_at() == doctest::Approx(0.1).epsilon(1e-9));
}

TEST_CASE("corners may be given either way round") {
  const AreaCurve left = curve_of(Freeform{{{0, 0}, {0.3, 0}, {0.2, 0.2}}});
  const AreaCurve right = curve_of(Freeform{{{0.2, 0.2}, {0.3, 0}, {0, 0}}});
  CHECK(relative_error(left.area(0.02), right.area(0.02)) < 1e-12);
}

TEST_CASE("a triangle shrinks about its incentre as (1 - d/r)²") {
  const AreaCurve curve = curve_of(Freeform{{{0, 0}, {0.3, 0}, {0.3, 0.4}}});  // 3-4-5: r = 0.1, area 0.06
  CHECK(curve.closes_at() == doctest::Approx(0.1).epsilon(1e-8));
  for (const double d : {0.01, 0.05, 0.09}) {
    CHECK(std::abs(curve.area(d) - 0.06 * (1 - d / 0.1) * (1 - d / 0.1)) < 1e-11);
  }
}

TEST_CASE("an L keeps a quarter circle round its inward corner") {
  // Arms 0.1 wide, 0.3 and 0.25 long outside. Moved inwards by d the arms are 0.1 - 2d wide; the inward corner
  // turns into a quarter circle of radius d, which leaves (1 - π/4) d² more than a sharp corner would take.
  const AreaCurve curve = curve_of(Freeform{{{0, 0}, {0.3, 0}, {0.3, 0.1}, {0.1, 0.1}, {0.1, 0.25}, {0, 0.25}}});
  for (const double d : {0.005, 0.02, 0.04}) {
    const double arm = 0.1 - 2 * d;
    const double sharp = arm * (0.3 - 2 * d) + arm * (0.25 - 2 * d - arm);
    CHECK(relative_error(curve.area(d), sharp + (1 - pi / 4) * d * d) < 1e-8);
  }
}

TEST_CASE("sides that lie on one slanted line without touching make a pan") {
  const Freeform lobed{
      {{0.054, 0.056}, {0.075, 0.055}, {0.096, 0.054}, {0.117, 0.053}, {0.117, 0.113}, {0.054, 0.116}}};
  CHECK(static_cast<bool>(make_outline(lobed)));
}

TEST_CASE("a dumb-bell falls apart into two islands when its neck closes") {
  const Freeform dumb_bell{{{0, 0},
                            {0.1, 0},
                            {0.1, 0.04},
                            {0.2, 0.04},
                            {0.2, 0},
                            {0.3, 0},
                            {0.3, 0.1},
                            {0.2, 0.1},
                            {0.2, 0.06},
                            {0.1, 0.06},
                            {0.1, 0.1},
                            {0, 0.1}}};
  const auto outline = make_outline(dumb_bell);
  REQUIRE(static_cast<bool>(outline));
  CHECK(outline_loops(*outline, 0.005).size() == 1);
  CHECK(outline_loops(*outline, 0.02).size() == 2);
}

TEST_CASE("crossing, touching and empty outlines are refused with what would be right") {
  const std::vector<Freeform> bad{
      {{{0, 0}, {0.3, 0.3}, {0.3, 0}, {0, 0.3}}},                // bow tie
      {{{0, 0}, {0.3, 0}, {0.3, 0.3}, {0.1, 0.0}, {0, 0.3}}},    // a corner on another side
      {{{0, 0}, {0.3, 0}, {0.15, 0}}},                           // no area
      {{{0, 0}, {0.3, 0}, {0.3, 0.2}, {0.3, 0.1}, {0.0, 0.1}}},  // a spike folded back
      {{{0, 0}, {0.3, 0}}},                                      // two corners
      {{{0, 0}, {0.3, 0}, {std::nan(""), 0.2}}},                 // not a number
      {{{0, 0}, {30, 0}, {0, 30}}},                              // 30 m
  };
  for (const Freeform& freeform : bad) {
    const auto outline = make_outline(freeform);
    REQUIRE_FALSE(static_cast<bool>(outline));
    CHECK(outline.problem().place == "outline.points");
    CHECK(outline.problem().message.size() > 20);
  }
}

}  // namespace tinwright
