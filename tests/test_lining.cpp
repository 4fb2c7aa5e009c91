// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Linings against elementary solids, conservation, and limits.
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "geometry/lining.h"
#include "geometry/offset_profile.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;
using std::numbers::pi;

double frustum(double r, double s, double h) {
  return pi * h / 3 * (r * r + r * s + s * s);
}

Pan cavity(const Pan& pan, const Lining& lining) {
  const auto made = line_pan(pan, lining);
  REQUIRE(static_cast<bool>(made));
  return *made;
}

}  // namespace

TEST_CASE("the cavity of a lined tapered tin is a frustum") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.03, 0.01, 0.0});
  const Lining lining{0.005, 0.004, 0.028};
  const double run = 0.004 * std::hypot(1.0, 1.0 / 3);  // w √(1 + d'²)
  const auto radius = [&](double z) { return 0.12 - 0.01 * (1 - z / 0.03) - run; };
  const Pan inside = cavity(pan, lining);
  CHECK(relative_error(brim_volume(inside), frustum(radius(0.005), radius(0.028), 0.023)) < 1e-9);
  CHECK(depth(inside) == doctest::Approx(0.023));
  CHECK(relative_error(floor_area(inside), pi * std::pow(radius(0.005), 2)) < 1e-9);
}

TEST_CASE("an evenly lined half ball is a smaller half ball") {
  const Pan pan = shapes::pan(Round{0.2}, BowlWall{0.1});
  const Pan inside = cavity(pan, {0.01, 0.01, 0.1});
  CHECK(relative_error(brim_volume(inside), 2 * pi / 3 * std::pow(0.09, 3)) < 1e-9);
}

TEST_CASE("a ball lined only on its wall starts where the dough stops meeting in the middle") {
  const Pan pan = shapes::pan(Round{0.2}, BowlWall{0.1});
  const Pan inside = cavity(pan, {0.0, 0.01, 0.1});
  CHECK(relative_error(brim_volume(inside), 2 * pi / 3 * std::pow(0.09, 3)) < 1e-6);
}

TEST_CASE("a rounded floor corner keeps its centre under an even lining") {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.02});
  const Pan same = shapes::pan(Round{0.2 - 2 * 0.008}, StraightWall{0.05 - 0.008, 0.0, 0.012});
  const Pan inside = cavity(pan, {0.008, 0.008, 0.05});
  CHECK(relative_error(brim_volume(inside), brim_volume(same)) < 1e-9);
  CHECK(relative_error(floor_area(inside), floor_area(same)) < 1e-9);
}

TEST_CASE("a lining thicker than the corner's radius leaves a sharp corner") {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.004});
  const Pan inside = cavity(pan, {0.01, 0.01, 0.05});
  CHECK(relative_error(brim_volume(inside), pi * 0.09 * 0.09 * 0.04) < 1e-9);
}

TEST_CASE("dough on a ledge rounds over its edge at the lining's thickness") {
  // A step 20 mm in at half height: above it the dough lies on the ledge, and turns the edge in a quarter circle.
  const Profile wall({straight_piece(0.0, 0.03, 0.03, 0.03), straight_piece(0.03, 0.0, 0.06, 0.0)});
  const Profile inside = offset_profile(wall, 0.005, 0.0, 0.06);
  CHECK(inside.inset(0.01) == doctest::Approx(0.035));
  CHECK(inside.inset(0.03 + 0.003) == doctest::Approx(0.03 + 0.004));  // 3-4-5
  CHECK(inside.inset(0.0351) == doctest::Approx(0.005));
}

TEST_CASE("dough and cavity make the pan") {
  for (const Pan& pan : {shapes::pan(Oval{0.3, 0.2}, StraightWall{0.05, 0.01, 0.006}),
                         shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.03, 0.005, 0.0}),
                         shapes::ring(0.25, 0.05, StraightWall{0.10, 0.015, 0.01}, 0.01)}) {
    const Lining lining{0.004, 0.003, 0.9 * depth(pan)};
    const double dough = lining_volume(pan, lining);
    CHECK(relative_error(dough + brim_volume(cavity(pan, lining)), volume(pan, lining.height)) < 1e-12);
  }
}

TEST_CASE("a thin lining takes its surface times its thickness") {
  const Pan pan = shapes::pan(Rectangle{0.33, 0.23, 0.02}, StraightWall{0.05, 0.01, 0.008});
  const double thin = 1e-6;
  const double surface = floor_area(pan) + wall_area(pan, depth(pan));
  CHECK(relative_error(lining_volume(pan, {thin, thin, depth(pan)}), surface * thin) < 1e-4);
}

TEST_CASE("no lining leaves the pan as it is") {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.01, 0.008});
  CHECK(relative_error(brim_volume(cavity(pan, {0.0, 0.0, 0.05})), brim_volume(pan)) < 1e-12);
}

TEST_CASE("linings that leave nothing to fill, or stand over the rim, are refused with their place") {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.01, 0.0});
  const auto place = [&](const Lining& lining) {
    const auto made = line_pan(pan, lining);
    REQUIRE_FALSE(static_cast<bool>(made));
    CHECK_FALSE(made.problem().message.empty());
    return made.problem().place;
  };
  CHECK(place({0.005, 0.005, 0.06}) == "lining.height");
  CHECK(place({0.005, 0.005, 0.0}) == "lining.height");
  CHECK(place({0.03, 0.005, 0.03}) == "lining.floor");
  CHECK(place({-0.001, 0.005, 0.03}) == "lining.floor");
  CHECK(place({0.005, 0.2, 0.03}) == "lining.wall");
  const Pan upright = shapes::pan(Round{0.24}, StraightWall{0.03, 0.0, 0.0});
  CHECK_FALSE(static_cast<bool>(line_pan(upright, {0.005, 0.12, 0.03})));  // meets exactly in the middle
  CHECK(place({0.005, std::nan(""), 0.03}) == "lining.wall");
}

}  // namespace tinwright
