// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See surroundings.h.
#include "geometry/heat/surroundings.h"

#include <algorithm>
#include <cmath>

#include "geometry/heat/moist_air.h"

namespace tinwright {
namespace {

/// Newton's steps for the surface's temperature; it was known a moment ago, so two settle it to under 0.01 K.
constexpr int kMostSteps = 12;
constexpr double kSettled = 1e-4;      // [K]
constexpr double kLongestMove = 15.0;  // [K] of one Newton step

/// [-] A wall so thin against what is outside of it is as warm outside as inside.
constexpr double kThinWall = 0.01;

/// [W/(m² K)] of radiation between `surface` and `around` [K], per kelvin between them.
double radiation(double emissivity, double surface, double around) {
  return emissivity * kStefanBoltzmann * (surface * surface + around * around) * (surface + around);
}

/// [W/(m² K)] from what is around to the food's surface at `surface` [K], the pan's wall in it.
double outer_conductance(const Surface& side, double around, double surface) {
  if (side.emissivity <= 0.0) {
    return side.resistance > 0.0 ? 1.0 / (1.0 / side.coefficient + side.resistance) : side.coefficient;
  }
  double outside = surface;
  double conductance = 0.0;
  for (int i = 0; i < 3; ++i) {
    const double open = side.coefficient + radiation(side.emissivity, outside, around);
    conductance = open / (1.0 + open * side.resistance);
    if (open * side.resistance < kThinWall) break;
    outside = surface + (around - surface) * conductance * side.resistance;
  }
  return conductance;
}

/// Water that settles, as on a cold window: only below the air's dew point, whatever the food itself would draw in.
Drying dew(double surface, double humidity, double convection, bool is_taken) {
  const Drying on_water = drying(surface, 1.0, humidity, convection);
  return is_taken && on_water.rate < 0.0 ? on_water : Drying{};
}

}  // namespace

const Surface& Surroundings::at(Side side) const {
  switch (side) {
    case Side::kTop:
      return top;
    case Side::kWall:
      return wall;
    case Side::kBase:
      break;
  }
  return base;
}

Surroundings surroundings_of(const Transfer& transfer) {
  Surroundings around;
  around.top.coefficient = transfer.top;
  around.wall.coefficient = transfer.wall;
  around.base.coefficient = transfer.base;
  return around;
}

double Air::at(double time) const {
  if (lag > 0.0) return to + (from - to) * std::exp(-time / lag);
  return from == to ? to : from + (to - from) * std::min(time / duration, 1.0);
}

SurfaceFlow surface_flow(const Surface& side, double air, double humidity, const SurfaceCell& cell) {
  if (side.coefficient <= 0.0 && side.emissivity <= 0.0) return {0.0, air, 0.0, cell.temperature};
  const double around = side.held_at.value_or(air);
  const bool is_wet = side.drying > 0.0 && cell.activity > 0.0;
  const double held = is_wet ? std::min(humidity, saturated_humidity(air)) : 0.0;
  if (!is_wet && side.emissivity <= 0.0) {
    const double outer = outer_conductance(side, around, around);
    const double both = outer * cell.inner / (outer + cell.inner);
    return {both, around, 0.0, cell.temperature + (around - cell.temperature) * both / cell.inner};
  }
  double surface = cell.guess;
  double conductance = 0.0;
  double latent = 0.0;
  Drying leaving;
  for (int i = 0; i < kMostSteps; ++i) {
    conductance = outer_conductance(side, around, surface);
    if (is_wet) {
      leaving = drying(surface, cell.activity, held, side.drying);
      if (leaving.rate > cell.most_drying) leaving = {cell.most_drying, 0.0};
      if (leaving.rate < 0.0) leaving = dew(surface, held, side.drying, cell.takes_dew);
      latent = latent_heat_of_evaporation(surface);
    }
    const double excess =
        cell.inner * (cell.temperature - surface) + conductance * (around - surface) - latent * leaving.rate;
    const double move =
        std::clamp(excess / (cell.inner + conductance + latent * leaving.slope), -kLongestMove, kLongestMove);
    surface += move;
    if (std::abs(move) < kSettled) break;
  }
  const double outer = conductance + latent * leaving.slope;
  const double both = cell.inner * outer / (cell.inner + outer);
  const double flow = cell.inner * (surface - cell.temperature);
  return {both, cell.temperature + flow / both, leaving.rate, surface};
}

}  // namespace tinwright
