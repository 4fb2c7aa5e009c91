// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See surroundings.h.
#include "geometry/heat/surroundings.h"

#include <algorithm>
#include <cmath>

#include "geometry/heat/moist_air.h"
#include "geometry/heat/surroundings_detail.h"

namespace tinwright {
namespace {

/// Newton's steps for the surface's temperature; it was known a moment ago, so two settle it.
constexpr int kMostSteps = 12;
/// [K] Where nothing dries only radiation bends, and a step so small leaves an error of 1e-4 K.
constexpr double kSettledDrySurface = 0.2;

/// [-] A wall so thin against what is outside of it is as warm outside as inside.
constexpr double kThinWall = 0.01;

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

OuterExchange outer_exchange(const Surface& side, double around, double surface) {
  if (side.emissivity <= 0.0) {
    const double conductance =
        side.resistance > 0.0 ? 1.0 / (1.0 / side.coefficient + side.resistance) : side.coefficient;
    return {conductance, conductance};
  }
  const double strength = side.emissivity * kStefanBoltzmann;
  double outside = surface;
  double conductance = 0.0;
  for (int i = 0; i < 3; ++i) {
    const double open = side.coefficient + strength * (outside * outside + around * around) * (outside + around);
    conductance = open / (1.0 + open * side.resistance);
    if (open * side.resistance < kThinWall) break;
    outside = surface + (around - surface) * conductance * side.resistance;
  }
  const double steepest = side.coefficient + 4.0 * strength * outside * outside * outside;
  return {conductance, steepest / (1.0 + steepest * side.resistance)};
}

double held_humidity(double air, double humidity) {
  return std::min(humidity, saturated_humidity(air));
}

SurfaceFlow settled_flow(const SurfaceCell& cell, double conductance, double latent, const Drying& leaving,
                         double surface) {
  const double outer = conductance + latent * leaving.slope;
  const double both = cell.inner * outer / (cell.inner + outer);
  const double flow = cell.inner * (surface - cell.temperature);
  return {both, cell.temperature + flow / both, leaving.rate, surface};
}

SurfaceFlow surface_flow(const Surface& side, double air, double humidity, const SurfaceCell& cell) {
  if (side.coefficient <= 0.0 && side.emissivity <= 0.0) return {0.0, air, 0.0, cell.temperature};
  const double around = side.held_at.value_or(air);
  const bool is_wet = side.drying > 0.0 && cell.activity > 0.0;
  const double held = is_wet ? held_humidity(air, humidity) : 0.0;
  if (!is_wet && side.emissivity <= 0.0) {
    const double outer = outer_exchange(side, around, around).conductance;
    const double both = outer * cell.inner / (outer + cell.inner);
    return {both, around, 0.0, cell.temperature + (around - cell.temperature) * both / cell.inner};
  }
  double surface = cell.guess;
  double latent = 0.0;
  OuterExchange outer;
  Drying leaving;
  for (int i = 0; i < kMostSteps; ++i) {
    outer = outer_exchange(side, around, surface);
    if (is_wet) {
      leaving = drying(surface, cell.activity, held, side.drying);
      if (leaving.rate > cell.most_drying) leaving = {cell.most_drying, 0.0, 0.0};
      if (leaving.rate < 0.0) leaving = dew(surface, held, side.drying, cell.takes_dew);
      latent = latent_heat_of_evaporation(surface);
    }
    const double excess =
        cell.inner * (cell.temperature - surface) + outer.conductance * (around - surface) - latent * leaving.rate;
    const double move = std::clamp(excess / (cell.inner + outer.tangent + latent * leaving.slope), -kLongestSurfaceMove,
                                   kLongestSurfaceMove);
    surface += move;
    if (std::abs(move) < (is_wet ? kSettledSurface : kSettledDrySurface)) {
      leaving.rate += leaving.slope * move;
      break;
    }
  }
  return settled_flow(cell, outer.conductance, latent, leaving, surface);
}

}  // namespace tinwright
