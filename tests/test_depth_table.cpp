// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Tables by depth against closed forms and real pans.
#include <cmath>
#include <numbers>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/depth_table.h"
#include "tests/shapes.h"

namespace tinwright {

using shapes::relative_error;
using std::numbers::pi;

TEST_CASE("a table of 48 depths holds a real pan's volume to a few parts in 100 000") {
  const Pan pan = shapes::pan(Round{0.23}, StraightWall{0.06, 0.015, 0.01});
  const auto table =
      make_depth_table([&](double h) { return volume(pan, h); }, [&](double h) { return wall_area(pan, h); }, 0.06);
  REQUIRE(static_cast<bool>(table));
  for (double depth = 0.016; depth < 0.06; depth += 0.0007) {
    CAPTURE(depth);
    CHECK(relative_error(volume_at(*table, depth), volume(pan, depth)) < 1e-4);
  }
  CHECK(relative_error(volume_at(*table, 0.09), volume(pan, 0.06)) < 1e-12);
}

TEST_CASE("the bake scale is the slab's and the cylinder's slowest time (Carslaw and Jaeger 1959)") {
  // Wide: (h/π)². Tall and narrow: (R/j0)² with the first zero of J0, 2.4048 (DLMF table 10.21).
  CHECK(relative_error(bake_scale(0.02, 0.02 * pi * 100.0, 2.0 * pi * 10.0 * 0.02), std::pow(0.02 / pi, 2)) < 1e-3);
  CHECK(relative_error(bake_scale(5.0, 5.0 * pi * 0.0025, 2.0 * pi * 0.05 * 5.0), std::pow(0.05 / 2.4048, 2)) < 1e-3);
}

TEST_CASE("a table refuses what does not grow") {
  const auto code = [](std::vector<DepthSample> samples) {
    const auto table = make_depth_table(samples);
    REQUIRE_FALSE(static_cast<bool>(table));
    CHECK(table.problem().place == "pan");
    return table.problem().code;
  };
  CHECK(code({}) == ProblemCode::kOutOfRange);
  CHECK(code({{0.0, 0.0, 0.0}}) == ProblemCode::kOutOfRange);
  CHECK(code({{0.01, 1e-4, 1e-5}, {0.01, 2e-4, 1e-5}}) == ProblemCode::kOutOfRange);
  CHECK(code({{0.01, 1e-4, 1e-5}, {0.02, 1e-4, 1e-5}}) == ProblemCode::kOutOfRange);
  CHECK(code({{0.01, std::nan(""), 1e-5}}) == ProblemCode::kOutOfRange);
  CHECK(code({{0.01, 1e-4, 0.0}}) == ProblemCode::kOutOfRange);
  CHECK_FALSE(static_cast<bool>(make_depth_table([](double) { return 1.0; }, [](double) { return 1.0; }, -1.0)));
}

}  // namespace tinwright
