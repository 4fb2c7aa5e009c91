// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is read off a field of temperatures, on fields made up so that the answer is known.
#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/observe.h"
#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using heat_cases::bare;
using heat_cases::grid_of;
using heat_cases::lined;
using heat_cases::raw;

constexpr double kSets = 353.15;  // [K]

HeatProblem filled_with_anything(const HeatGrid& grid) {
  return {grid, {raw(0.4, 1000, 3000), raw(0.4, 1000, 3000)}};
}

HeatProblem made(const OutlineShape& outline, const GridFineness& fineness = {}) {
  const Pan pan = shapes::pan(outline, StraightWall{0.05, 0.0, 0.0});
  return filled_with_anything(grid_of(bare(pan, 0.04), fineness));
}

std::vector<double> field_of(const HeatProblem& problem, const std::function<double(const HeatGrid::Cell&)>& value) {
  std::vector<double> field;
  for (const HeatGrid::Cell& cell : problem.grid.cells) field.push_back(value(cell));
  return field;
}

/// A column of `count` like cells, one above the other.
HeatProblem column(int count, double size) {
  HeatGrid grid;
  for (int i = 0; i < count; ++i) {
    HeatGrid::Cell cell;
    cell.volume = size;
    cell.middle = {0.5, 0.0, (i + 0.5) * size};
    cell.size = {1.0, 0.0, size};
    cell.neighbours[2] = {i - 1, i + 1 < count ? i + 1 : -1};
    grid.cells.push_back(cell);
  }
  return filled_with_anything(grid);
}

}  // namespace

TEST_CASE("the coldest and the warmest point of an exact parabola are found between the cells") {
  const int count = 9;
  const double size = 0.005;
  const HeatProblem problem = column(count, size);
  for (const double at : {0.0185, 0.0225, 0.0240, 0.0262}) {
    for (const double curve : {4.0e4, -4.0e4}) {
      CAPTURE(at);
      CAPTURE(curve);
      // The mean of curve (z - at)² over a cell.
      const std::vector<double> field = field_of(problem, [&](const HeatGrid::Cell& cell) {
        const double away = cell.middle[2] - at;
        return 350.0 + curve * (away * away + size * size / 12.0);
      });
      const FoodTemperatures food = observe(problem, field);
      CHECK(std::abs((curve > 0.0 ? food.coldest : food.hottest) - 350.0) < 1e-9);
      // At the ends of the column there is no parabola: the outermost cells' means.
      CHECK((curve > 0.0 ? food.hottest : food.coldest) ==
            doctest::Approx(curve > 0.0 ? std::max(field[0], field[8]) : std::min(field[0], field[8])));
      CHECK(food.mean == doctest::Approx(350.0 + curve * (std::pow(0.045 - at, 3) + std::pow(at, 3)) / (3.0 * 0.045)));
    }
  }
}

TEST_CASE("an even field is as cold as it is warm") {
  for (const OutlineShape& outline : {OutlineShape(Round{0.2}), OutlineShape(Rectangle{0.2, 0.1, 0.0})}) {
    const HeatProblem problem = made(outline);
    const FoodTemperatures food = observe(problem, std::vector<double>(problem.grid.cells.size(), 340.0));
    CHECK(food.coldest == doctest::Approx(340.0));
    CHECK(food.mean == doctest::Approx(340.0));
    CHECK(food.hottest == doctest::Approx(340.0));
  }
}

TEST_CASE("the coldest point of a bowl-shaped field is found on the axis and at the middle of a box within 2 %") {
  // T = 350 + a r² + b (z - middle)², as means over the cells; cells grow towards the middle, so a parabola through
  // their means is not quite exact.
  const double a = 4000.0, b = 9000.0, middle = 0.018;
  for (const bool is_round : {true, false}) {
    CAPTURE(is_round);
    const OutlineShape outline = is_round ? OutlineShape(Round{0.2}) : OutlineShape(Rectangle{0.2, 0.16, 0.0});
    const HeatProblem problem = made(outline, {.across = 6, .across_box = 5, .up = 7});
    const std::vector<double> field = field_of(problem, [&](const HeatGrid::Cell& cell) {
      const double rise = cell.middle[2] - middle;
      double r2 = cell.middle[0] * cell.middle[0];
      if (is_round) {
        r2 += 0.25 * cell.size[0] * cell.size[0];  // mean of r² over a ring
      } else {
        r2 += cell.middle[1] * cell.middle[1];
        r2 += (cell.size[0] * cell.size[0] + cell.size[1] * cell.size[1]) / 12.0;
      }
      return 350.0 + a * r2 + b * (rise * rise + cell.size[2] * cell.size[2] / 12.0);
    });
    const double range = a * 0.01 + b * 0.0004;
    const double cell_means_only = *std::min_element(field.begin(), field.end()) - 350.0;
    const double found = observe(problem, field).coldest - 350.0;
    CHECK(std::abs(found) < 0.02 * range);
    CHECK(std::abs(found) < 0.3 * cell_means_only);
  }
}

TEST_CASE("the warmest share is the mean over the warmest part of the volume, part of a cell counting in part") {
  HeatProblem problem = column(4, 0.01);
  const std::vector<double> field{330.0, 370.0, 350.0, 310.0};
  CHECK(warmest_share(problem, field, 0.25) == doctest::Approx(370.0));
  CHECK(warmest_share(problem, field, 0.10) == doctest::Approx(370.0));
  CHECK(warmest_share(problem, field, 0.50) == doctest::Approx(360.0));
  CHECK(warmest_share(problem, field, 0.40) == doctest::Approx((0.25 * 370.0 + 0.15 * 350.0) / 0.40));
  CHECK(warmest_share(problem, field, 1.0) == doctest::Approx(observe(problem, field).mean));
  problem.grid.cells[1].volume *= 3.0;  // half of all
  CHECK(warmest_share(problem, field, 0.5) == doctest::Approx(370.0));
  CHECK(warmest_share(problem, field, 0.75) ==
        doctest::Approx((0.5 * 370.0 + (1.0 / 6.0) * 350.0 + (1.0 / 12.0) * 330.0) / 0.75));
}

TEST_CASE("the middle trembles as far out as the filling is below its setting temperature") {
  // A cone: T = kSets - 30 + slope r.
  for (const double radius : {0.02, 0.031, 0.055, 0.08}) {
    CAPTURE(radius);
    const auto cone = [&](const HeatGrid::Cell& cell) { return kSets - 30.0 * (1.0 - cell.middle[0] / radius); };
    const HeatProblem tin = made(Round{0.2});
    CHECK(std::abs(wobble_radius(tin, field_of(tin, cone), kSets) - radius) < 1e-9);
  }
}

TEST_CASE("the layer that trembles furthest out counts") {
  const HeatProblem tin = made(Round{0.2});
  const auto field = field_of(tin, [](const HeatGrid::Cell& cell) {
    const double radius = 0.07 - 10.0 * std::pow(cell.middle[2] - 0.02, 2);
    return kSets + 400.0 * (cell.middle[0] - radius);
  });
  double nearest = 1.0;
  for (const HeatGrid::Cell& cell : tin.grid.cells) nearest = std::min(nearest, std::abs(cell.middle[2] - 0.02));
  CHECK(std::abs(wobble_radius(tin, field, kSets) - (0.07 - 10.0 * nearest * nearest)) < 1e-9);
}

TEST_CASE("nothing trembles when all is set, and all does when nothing is") {
  const HeatProblem tin = made(Round{0.2});
  const std::size_t cells = tin.grid.cells.size();
  CHECK(wobble_radius(tin, std::vector<double>(cells, kSets + 1.0), kSets) == 0.0);
  CHECK(wobble_radius(tin, std::vector<double>(cells, kSets), kSets) == 0.0);
  // To the middle of the outermost cells.
  CHECK(wobble_radius(tin, std::vector<double>(cells, kSets - 1.0), kSets) > 0.095);
  CHECK(wobble_radius(tin, std::vector<double>(cells, kSets - 1.0), kSets) <= 0.1);
}

TEST_CASE("in a rectangle the shorter way out counts, whichever side that is") {
  const HeatProblem tin = made(Rectangle{0.2, 0.16, 0.0});
  const auto cold_to = [&](double x, double y) {
    return wobble_radius(tin,
                         field_of(tin,
                                  [&](const HeatGrid::Cell& cell) {
                                    return kSets - 20.0 + 20.0 * std::max(cell.middle[0] / x, cell.middle[1] / y);
                                  }),
                         kSets);
  };
  CHECK(std::abs(cold_to(0.05, 0.03) - 0.03) < 1e-9);
  CHECK(std::abs(cold_to(0.02, 0.06) - 0.02) < 1e-9);
}

TEST_CASE("the crust does not tremble") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.04, 0.0, 0.0});
  const HeatProblem tart = filled_with_anything(grid_of(lined(pan, {0.006, 0.008, 0.035}, 0.022)));
  const auto field = field_of(tart, [](const HeatGrid::Cell& cell) {
    return cell.part == Part::kDough ? kSets - 40.0 : kSets - 30.0 * (1.0 - cell.middle[0] / 0.05);
  });
  CHECK(std::abs(wobble_radius(tart, field, kSets) - 0.05) < 1e-9);
}

TEST_CASE("in a tin with a core the distance counts from the axis, to the far end of what trembles") {
  const Pan pan = shapes::ring(0.24, 0.08, StraightWall{0.08, 0.0, 0.0});
  const HeatProblem tin = filled_with_anything(grid_of(bare(pan, 0.05)));
  // Cold between 7 and 9 cm from the axis.
  const auto field = field_of(
      tin, [](const HeatGrid::Cell& cell) { return kSets + 500.0 * (std::abs(cell.middle[0] - 0.08) - 0.01); });
  CHECK(std::abs(wobble_radius(tin, field, kSets) - 0.09) < 1e-9);
}

}  // namespace tinwright
