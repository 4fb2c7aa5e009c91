// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The surface of a food as it dries: drier than the cell behind it, for water comes to it from the cell's middle no
// faster than it moves. Its temperature and its dryness are found together.
#pragma once

#include "geometry/heat/moist_substance.h"
#include "geometry/heat/surroundings.h"

namespace tinwright {

/// Where the water comes from.
struct WaterSource {
  const Substance& substance;
  double dryness = 0.0;  // [-] of the cell
  double half = 0.0;     // [m] from its middle to the surface
};

/// What the surface does, at the dryness at which as much water comes as leaves. `cell` is as surface_flow takes it,
/// its activity that of the cell. `share` is how far the surface was on the way from the cell's dryness to dry, a
/// moment ago (0: not known), and is brought up to date.
SurfaceFlow drying_surface_flow(const Surface& side, double air, double humidity, SurfaceCell cell,
                                const WaterSource& from, double& share);

}  // namespace tinwright
