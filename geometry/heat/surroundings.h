// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the food meets on each side: moving air, radiating walls, the pan between, water that leaves. For one step all
// of it becomes a straight line, heat in = conductance * (temperature - the cell's), around the state of that moment.
#pragma once

#include <optional>

#include "geometry/heat/grid.h"

namespace tinwright {

/// [W/(m² K⁴)] Stefan-Boltzmann constant, exact by definition of the SI since 2019.
inline constexpr double kStefanBoltzmann = 5.670374419e-8;

/// One side of the food.
struct Surface {
  /// [W/(m² K)] by which air (or water, or a hot floor) exchanges heat with the outside of the pan or with the bare
  /// food: convection alone, or all of it as one measured, effective coefficient (then emissivity is 0).
  double coefficient = 0.0;
  /// [-] 0 to 1, of food or pan, towards walls at the air's temperature.
  double emissivity = 0.0;
  /// [m² K/W] of the pan's wall.
  double resistance = 0.0;
  /// [W/(m² K)] the part of the coefficient that is convection and carries vapour off; 0 where the surface is covered.
  double drying = 0.0;
  /// [K] what it meets when that is not the air: a water bath.
  std::optional<double> held_at = std::nullopt;
};

struct Surroundings {
  Surface top, wall, base;
  /// [kg/kg] of water in the dry air.
  double humidity = 0.0;

  const Surface& at(Side side) const;
};

/// Effective surface coefficients [W/m²K], each with the pan's wall in it where there is one; nothing evaporates.
struct Transfer {
  double top = 0.0, wall = 0.0, base = 0.0;
};
Surroundings surroundings_of(const Transfer& transfer);

/// Heat into a cell through a square metre of its surface, near its present state.
struct SurfaceFlow {
  double conductance = 0.0;  // [W/(m² K)]
  double towards = 0.0;      // [K] where no heat would flow
  double drying = 0.0;       // [kg/(m² s)] of water that leaves
  double surface = 0.0;      // [K] of the food itself
};

/// The cell behind a surface, at one moment.
struct SurfaceCell {
  double temperature = 0.0;  // [K] of the cell
  double activity = 0.0;     // [-] of its water; 0: nothing evaporates
  double most_drying = 0.0;  // [kg/(m² s)] that it has to give
  bool takes_dew = true;     // false once it has dried: what little it would take up again is left out
  double inner = 0.0;        // [W/(m² K)] its conductivity over the distance from its middle to the surface
  double guess = 0.0;        // [K] the surface's temperature a moment ago
};
/// What a surface of the food does under `air` [K] of `humidity` [kg/kg], or saturated where it cannot hold that.
SurfaceFlow surface_flow(const Surface& side, double air, double humidity, const SurfaceCell& cell);

/// The air over a stage: from one temperature [K] to another, evenly over `duration` [s], or, with a lag [s], as an
/// oven that cools or warms by itself: the difference falls to 1/e in that time.
struct Air {
  double from = 0.0, to = 0.0;
  double duration = 0.0;
  double lag = 0.0;
  double at(double time) const;
};

}  // namespace tinwright
