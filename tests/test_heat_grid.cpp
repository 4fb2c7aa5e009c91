// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Heat grids hold exactly the food, touch exactly its surface, and pass linear temperatures exactly.
#include <array>
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using heat_cases::bare;
using heat_cases::grid_of;
using heat_cases::lined;
using shapes::relative_error;

std::array<double, 3> surfaces(const HeatGrid& grid) {
  std::array<double, 3> sums{};
  for (const HeatGrid::OuterFace& face : grid.outer) sums[static_cast<std::size_t>(face.side)] += face.area;
  return sums;
}

std::vector<Pan> pans() {
  return {shapes::pan(Round{0.24}, StraightWall{0.04, 0.015, 0.0}),
          shapes::pan(Round{0.20}, StraightWall{0.05, 0.005, 0.01}),
          shapes::pan(Oval{0.30, 0.20}, StraightWall{0.05, 0.01, 0.0}),
          shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.04, 0.004, 0.0}),
          shapes::pan(Rectangle{0.22, 0.11, 0.0}, StraightWall{0.07, 0.008, 0.0}),
          shapes::pan(Rectangle{0.33, 0.23, 0.03}, StraightWall{0.05, 0.006, 0.0}),
          shapes::ring(0.24, 0.07, StraightWall{0.08, 0.01, 0.0}, 0.005)};
}

}  // namespace

TEST_CASE("the cells of a bare pan hold its filling within 1e-9 and show its surfaces within 1e-6") {
  for (const Pan& pan : pans()) {
    const double height = 0.7 * depth(pan);
    const HeatGrid grid = grid_of(bare(pan, height));
    double held = 0.0;
    for (const HeatGrid::Cell& cell : grid.cells) {
      CHECK(cell.volume > 0.0);
      held += cell.volume;
    }
    CHECK(relative_error(held, volume(pan, height)) < 1e-9);
    const auto [top, wall, base] = surfaces(grid);
    CHECK(relative_error(top, surface_area(pan, height)) < 1e-6);
    CHECK(relative_error(wall, wall_area(pan, height)) < 1e-6);
    CHECK(relative_error(base, floor_area(pan)) < 1e-6);
  }
}

TEST_CASE("the cells of a lined pan hold dough and filling together within 1e-9") {
  for (const Pan& pan : pans()) {
    if (pan.wall.pieces().size() > 1) continue;  // a lined rounded corner has its own test
    const Lining lining{0.006, 0.005, 0.9 * depth(pan)};
    const auto cavity = line_pan(pan, lining);
    REQUIRE(static_cast<bool>(cavity));
    const double height = 0.6 * depth(*cavity);
    const HeatGrid grid = grid_of(lined(pan, lining, height));
    std::array<double, 2> held{};
    for (const HeatGrid::Cell& cell : grid.cells) held[static_cast<std::size_t>(cell.part)] += cell.volume;
    const double filling = volume(*cavity, height);
    const double dough = lining_volume(pan, lining);
    CHECK(relative_error(held[0] + held[1], filling + dough) < 1e-9);
    // In a rectangle's rounded corner the seam between dough and filling follows the cells, not the corner.
    const auto* rectangle = std::get_if<Rectangle>(&pan.outline.shape);
    const double seam = rectangle != nullptr && rectangle->corner_radius > 0.0 ? 0.02 : 1e-9;
    CHECK(relative_error(held[0], filling) < seam);
    CHECK(relative_error(held[1], dough) < seam);
  }
}

TEST_CASE("a temperature linear in height or sideways passes steadily through a leaning grid") {
  // Away from the surfaces the flows into each cell cancel. In rings "sideways" is linear only where curves are
  // straight: taken here for a large thin-walled ring, nearly a straight bar.
  const HeatGrid grid = grid_of(bare(shapes::pan(Rectangle{0.22, 0.11, 0.0}, StraightWall{0.07, 0.008, 0.0}), 0.05));
  std::vector<bool> is_inside(grid.cells.size(), true);
  for (const HeatGrid::OuterFace& face : grid.outer) is_inside[static_cast<std::size_t>(face.cell)] = false;
  std::vector<double> balance(grid.cells.size()), passing(grid.cells.size());
  for (const HeatGrid::Face& face : grid.faces) {
    const auto a = static_cast<std::size_t>(face.a), b = static_cast<std::size_t>(face.b);
    const double flow = face.area / (face.half_a + face.half_b) * (grid.cells[b].middle[2] - grid.cells[a].middle[2]);
    balance[a] += flow;
    balance[b] -= flow;
    passing[a] += std::abs(flow);
    passing[b] += std::abs(flow);
  }
  for (std::size_t i = 0; i < balance.size(); ++i) {
    if (is_inside[i]) CHECK(std::abs(balance[i]) < 0.02 * passing[i]);
  }
}

TEST_CASE("a filling that does not fit, or is nothing, is refused") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.04, 0.015, 0.0});
  const auto place = [](const FilledPan& filled) {
    const auto grid = make_grid(filled);
    REQUIRE_FALSE(static_cast<bool>(grid));
    return grid.problem().place;
  };
  CHECK(place(bare(pan, 0.05)) == "fill.height");
  CHECK(place(bare(pan, 0.0)) == "fill.height");
  CHECK(place(bare(pan, std::nan(""))) == "fill.height");
  CHECK(place(lined(pan, {0.006, 0.005, 0.05}, 0.02)) == "lining.height");
  CHECK(place(lined(pan, {0.006, 0.005, 0.035}, 0.03)) == "fill.height");
}

}  // namespace tinwright
