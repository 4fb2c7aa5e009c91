// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What surroundings and drying_surface share: heat between a surface and what is around it, and water as air takes it.
#pragma once

#include "geometry/heat/moist_air.h"
#include "geometry/heat/surroundings.h"

namespace tinwright {

/// Newton's steps for a surface are over when one was so small: the next would be a hundredth of it or less.
inline constexpr double kSettledSurface = 0.01;      // [K]
inline constexpr double kLongestSurfaceMove = 15.0;  // [K] of one of them

/// Heat to the food's surface, the pan's wall in it: conductance * (around - surface) [W/m²].
struct OuterExchange {
  double conductance = 0.0;  // [W/(m² K)]
  double tangent = 0.0;      // [W/(m² K)] by how much less heat comes for each kelvin that the surface is warmer
};
OuterExchange outer_exchange(const Surface& side, double around, double surface);

/// [kg/kg] that the air holds: `humidity`, or saturated where it cannot hold that.
double held_humidity(double air, double humidity);

/// The straight line that a solver goes on with, from where the surface settled.
SurfaceFlow settled_flow(const SurfaceCell& cell, double conductance, double latent, const Drying& leaving,
                         double surface);

}  // namespace tinwright
