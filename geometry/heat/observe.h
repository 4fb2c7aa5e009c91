// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a cook, or a thermometer, would find in the food: made from the temperature of every cell.
#pragma once

#include <cstddef>
#include <vector>

#include "geometry/heat/solver.h"

namespace tinwright {

struct FoodTemperatures {
  double coldest = 0.0, mean = 0.0, hottest = 0.0;  // [K]; mean by volume
  std::size_t coldest_cell = 0;
};
/// `field` [K] by cell. The coldest and the warmest point are found within their cells by parabolas through the
/// neighbours.
FoodTemperatures observe(const HeatProblem& problem, const std::vector<double>& field);

/// [K] mean over the warmest `share` [-, over 0 to 1] of the filling's volume: its rim, when it bakes.
double warmest_share(const HeatProblem& problem, const std::vector<double>& field, double share);

/// [m] from the middle to the furthest filling still below `temperature` [K]: if that is where it sets, the middle
/// trembles so far. 0 when all is set. In a rectangle the shorter of the two ways out; in a ring from where its
/// parallel curves close.
double wobble_radius(const HeatProblem& problem, const std::vector<double>& field, double temperature);

}  // namespace tinwright
