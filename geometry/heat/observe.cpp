// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See observe.h.
#include "geometry/heat/observe.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace tinwright {
namespace {

/// [K] How much colder than its mean a cell is at its coldest point, along one axis; `sign` -1: how much warmer at its
/// warmest. A cell at the middle plane or axis is mirrored there. Means of u² over a cell: along a line size²/12 about
/// its own middle, size²/3 from the mirror, size²/2 from an axis.
double dip_along(const HeatProblem& problem, const std::vector<double>& field, std::size_t cell, std::size_t axis,
                 double sign) {
  const HeatGrid::Cell& own = problem.grid.cells[cell];
  const auto [before, after] = own.neighbours[axis];
  const double size = own.size[axis];
  const auto to = [&](int other) { return std::abs(problem.grid.cells[index(other)].middle[axis] - own.middle[axis]); };
  const auto rise = [&](int other) { return sign * (field[index(other)] - field[cell]); };
  const bool is_mirrored = axis < 2 && before < 0 && after >= 0 && own.middle[axis] < 0.51 * size;
  if (is_mirrored) {
    const double distance = to(after);
    const double curve = rise(after) / ((own.middle[axis] + distance) * (own.middle[axis] + distance) -
                                        own.middle[axis] * own.middle[axis]);
    return std::max(0.0, curve * size * size / (problem.grid.is_round ? 2.0 : 3.0));
  }
  if (before < 0 || after < 0) return 0.0;
  const double a = to(before);
  const double b = to(after);
  const double curve = (rise(before) / a + rise(after) / b) / (a + b);
  if (curve <= 0.0) return 0.0;
  const double slope = rise(after) / b - curve * b;
  const double bottom = std::clamp(-0.5 * slope / curve, -0.5 * size, 0.5 * size);
  return curve * size * size / 12.0 - (slope + curve * bottom) * bottom;
}

/// One cell of a layer: where it is along the axis, and how warm.
struct Spot {
  double at, temperature;
};

/// [m] the furthest point along a layer, from the middle outwards, that is below `temperature`.
double reach_of_cold(std::vector<Spot>& layer, double temperature) {
  std::sort(layer.begin(), layer.end(), [](const Spot& a, const Spot& b) { return a.at < b.at; });
  for (std::size_t i = layer.size(); i-- > 0;) {
    if (layer[i].temperature >= temperature) continue;
    if (i + 1 == layer.size()) return layer[i].at;
    const double along = (temperature - layer[i].temperature) / (layer[i + 1].temperature - layer[i].temperature);
    return layer[i].at + along * (layer[i + 1].at - layer[i].at);
  }
  return 0.0;
}

double wobble_along(const HeatProblem& problem, const std::vector<double>& field, double temperature,
                    std::size_t axis) {
  std::map<long, std::vector<Spot>> layers;  // by height in whole micrometres
  const auto& cells = problem.grid.cells;
  const std::size_t across = 1 - axis;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const bool is_beside = cells[i].size[across] > 0.0 && cells[i].middle[across] > 0.51 * cells[i].size[across];
    if (cells[i].part != Part::kFill || is_beside) continue;
    layers[std::lround(1e6 * cells[i].middle[2])].push_back({cells[i].middle[axis], field[i]});
  }
  double furthest = 0.0;
  for (auto& [height, layer] : layers) furthest = std::max(furthest, reach_of_cold(layer, temperature));
  return furthest;
}

}  // namespace

FoodTemperatures observe(const HeatProblem& problem, const std::vector<double>& field) {
  FoodTemperatures found;
  double volume = 0.0;
  std::size_t coldest = 0;
  std::size_t hottest = 0;
  for (std::size_t i = 0; i < field.size(); ++i) {
    if (field[i] < field[coldest]) coldest = i;
    if (field[i] > field[hottest]) hottest = i;
    found.mean += field[i] * problem.grid.cells[i].volume;
    volume += problem.grid.cells[i].volume;
  }
  found.mean /= volume;
  found.coldest_cell = coldest;
  found.coldest = field[coldest];
  found.hottest = field[hottest];
  for (std::size_t axis = 0; axis < 3; ++axis) {
    found.coldest -= dip_along(problem, field, coldest, axis, 1.0);
    found.hottest += dip_along(problem, field, hottest, axis, -1.0);
  }
  return found;
}

double warmest_share(const HeatProblem& problem, const std::vector<double>& field, double share) {
  std::vector<std::size_t> order;
  double whole = 0.0;
  for (std::size_t i = 0; i < field.size(); ++i) {
    if (problem.grid.cells[i].part != Part::kFill) continue;
    order.push_back(i);
    whole += problem.grid.cells[i].volume;
  }
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return field[a] > field[b]; });
  double left = share * whole;
  double sum = 0.0;
  for (const std::size_t i : order) {
    const double taken = std::min(left, problem.grid.cells[i].volume);
    sum += taken * field[i];
    left -= taken;
    if (left <= 0.0) break;
  }
  return sum / (share * whole);
}

double wobble_radius(const HeatProblem& problem, const std::vector<double>& field, double temperature) {
  const double along = wobble_along(problem, field, temperature, 0);
  const bool is_box = std::any_of(problem.grid.cells.begin(), problem.grid.cells.end(),
                                  [](const HeatGrid::Cell& cell) { return cell.size[1] > 0.0; });
  return is_box ? std::min(along, wobble_along(problem, field, temperature, 1)) : along;
}

}  // namespace tinwright
