// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The places food stands in, and the pans it stands in, as surroundings. These are the constants that bake and cooling
// times hang on; a prediction from them alone is rough, which is why bake_time calibrates on the recipe's own time.
#pragma once

#include <optional>

#include "geometry/heat/surroundings.h"
#include "geometry/pan.h"

namespace tinwright {

enum class Place { kOven, kFanOven, kRack, kRefrigerator, kFreezer };

/// What the walls of pans of a material are like.
struct PanWall {
  double conductivity = 0.0;  // [W/(m K)]
  double thickness = 0.0;     // [m]
  double emissivity = 0.0;    // [-] of its outside
};
/// Conductivities: Martinez, Properties of solids (aluminium 220, borosilicate glass 1.1, pottery 1.3); steel 52 and
/// silicone 0.25 from memory. Emissivities: aluminium sheet 0.09, steel strongly oxidised 0.88 to 0.98, glass 0.9,
/// fired clay 0.91 (makers' tables for radiation thermometers); tinplate 0.08 and silicone 0.9 from memory.
/// Thicknesses: common practice, no source.
PanWall pan_wall(Material material);

/// What a pan of `material` meets in a place; in a bath of water at `bath` [K] its wall and base meet that. Convection:
/// 7 W/m²K in a still oven, which with radiation comes to the lower end of the 20 to 48 measured on cakes (Baik et al.
/// 1999, J. Food Sci. 64, 688), three times that with a fan; 5 on a rack and in a refrigerator, 6 in a freezer, with
/// radiation the 8 to 15 measured in household freezers (Anderson et al. 2004, Int. J. Refrig. 27, 63). Oven air holds
/// 0.03 kg/kg of water (Baik et al.), a room 0.0075; food in the cold is taken as covered, so nothing dries there.
Surroundings surroundings_in(Place place, Material material, std::optional<double> bath = std::nullopt);

/// The same, exchanging `factor` times as much heat by convection and radiation.
Surroundings scaled(Surroundings around, double factor);

/// [s] in which an oven that is switched off falls 1/e of the way to the room: 40 min shut, 8 min with its door open
/// (common practice, no source: it differs much between ovens).
inline constexpr double kOvenLagShut = 40.0 * 60.0;
inline constexpr double kOvenLagOpen = 8.0 * 60.0;

/// [K] An open bath in a moderate oven stays at 80 to 87 °C (McGee, On Food and Cooking).
inline constexpr double kUsualBath = 273.15 + 83.0;

}  // namespace tinwright
