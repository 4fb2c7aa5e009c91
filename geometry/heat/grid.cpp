// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See grid.h.
#include "geometry/heat/grid.h"

#include <algorithm>
#include <cmath>

#include "geometry/heat/grid_detail.h"

namespace tinwright {
namespace {

/// [-] A rectangle whose half width is so many times the filling's height is cut in rings too: its corners hardly tell.
/// Against the exact series a square 2.5 times as wide is within 0.3 °C at its core.
constexpr double kShallow = 4.0;

/// [m] Layers need not be thinner than this on average: food so thin is nearly of one temperature through its depth.
constexpr double kThinnest = 0.35e-3;
constexpr int kFewestLayers = 4;

/// Of several cells across a face, the one with most of it counts.
void find_neighbours(HeatGrid& grid) {
  std::vector<std::array<std::array<double, 2>, 3>> widest(grid.cells.size());
  const auto note = [&](int from, int to, double area) {
    HeatGrid::Cell& cell = grid.cells[static_cast<std::size_t>(from)];
    const HeatGrid::Cell& other = grid.cells[static_cast<std::size_t>(to)];
    // They touch along the axis in which their middles are as far apart as half their sizes together.
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const double apart = other.middle[axis] - cell.middle[axis];
      const double touching = 0.5 * (cell.size[axis] + other.size[axis]);
      if (touching <= 0.0 || std::abs(std::abs(apart) - touching) > 1e-6 * touching) continue;
      const std::size_t way = apart > 0.0 ? 1 : 0;
      double& known = widest[static_cast<std::size_t>(from)][axis][way];
      if (area > known) {
        known = area;
        cell.neighbours[axis][way] = to;
      }
    }
  };
  for (const HeatGrid::Face& face : grid.faces) {
    note(face.a, face.b, face.area);
    note(face.b, face.a, face.area);
  }
}

}  // namespace

double bounded_corner(double corner, const CornerLinks& links) {
  constexpr double kShare = 0.9;  // of the bound, for conductivities that differ
  const auto in_series = [](double a, double b) { return a > 0.0 && b > 0.0 ? a * b / (a + b) : 0.0; };
  const double most =
      kShare * 0.5 * (in_series(links.across_below, links.up_outer) + in_series(links.across_above, links.up_inner));
  return std::clamp(corner, -most, most);
}

GridFineness fineness_for(double biot) {
  // Found by trying against the exact series of tests/test_bake.cpp.
  const double share = std::clamp(std::log10(10.0 * std::max(biot, 0.1)) / 2.0, 0.0, 1.0);  // 0 at Bi 0.1, 1 at Bi 10
  const auto between = [&](int least, int most) {
    return static_cast<int>(std::lround(least + share * (most - least)));
  };
  return {.across = between(14, 28), .across_box = between(10, 16), .up = between(14, 32), .through_dough = 3};
}

Result<HeatGrid> make_grid(const FilledPan& filled, const GridFineness& fineness) {
  const bool is_shallow = filled.pan.outline.curve.closes_at() > kShallow * filled.fill_height;
  const bool is_box = std::holds_alternative<Rectangle>(filled.pan.outline.shape) && !is_shallow;
  GridFineness cut = fineness;
  if (is_box) cut.across = fineness.across_box;
  cut.up = std::clamp(static_cast<int>(filled.fill_height / kThinnest), std::min(kFewestLayers, cut.up), cut.up);
  auto plan = make_layers(filled, cut);
  if (!plan) return plan.problem();
  HeatGrid grid = is_box ? make_box_grid(filled.pan, *plan) : make_ring_grid(filled.pan, *plan);
  find_neighbours(grid);
  return grid;
}

}  // namespace tinwright
