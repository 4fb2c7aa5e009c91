// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See kitchen.h.
#include "geometry/heat/kitchen.h"

#include <algorithm>

namespace tinwright {
namespace {

constexpr double kFoodEmissivity = 0.9;      // [-] moist food, from memory
constexpr double kWaterCoefficient = 300.0;  // [W/(m² K)] still hot water along a pan: natural convection, from memory

struct PlaceAir {
  double convection;  // [W/(m² K)]
  double humidity;    // [kg/kg]
  bool is_open;       // water may leave
};

PlaceAir place_air(Place place) {
  switch (place) {
    case Place::kOven:
      return {7.0, 0.03, true};
    case Place::kFanOven:
      return {21.0, 0.03, true};
    case Place::kRack:
      return {5.0, 0.0075, true};
    case Place::kRefrigerator:
      return {5.0, 0.004, false};
    case Place::kFreezer:
      break;
  }
  return {6.0, 0.0008, false};
}

}  // namespace

PanWall pan_wall(Material material) {
  switch (material) {
    case Material::kBrightAluminium:
      return {220.0, 1.0e-3, 0.09};
    case Material::kDarkSteel:
      return {52.0, 0.8e-3, 0.9};
    case Material::kTinnedSteel:
      return {52.0, 0.4e-3, 0.08};
    case Material::kGlass:
      return {1.1, 5.0e-3, 0.9};
    case Material::kCeramic:
      return {1.3, 6.0e-3, 0.91};
    case Material::kSilicone:
      break;
  }
  return {0.25, 1.5e-3, 0.9};
}

Surroundings surroundings_in(Place place, Material material, std::optional<double> bath) {
  const PlaceAir air = place_air(place);
  const PanWall pan = pan_wall(material);
  Surroundings around;
  around.humidity = air.humidity;
  around.top.coefficient = air.convection;
  around.top.emissivity = kFoodEmissivity;
  around.top.drying = air.is_open ? air.convection : 0.0;
  around.wall.coefficient = air.convection;
  around.wall.emissivity = pan.emissivity;
  around.wall.resistance = pan.thickness / pan.conductivity;
  if (bath) {
    around.wall.coefficient = kWaterCoefficient;
    around.wall.emissivity = 0.0;
    around.wall.held_at = *bath;
  }
  around.base = around.wall;
  return around;
}

Surroundings scaled(Surroundings around, double factor) {
  for (Surface* side : {&around.top, &around.wall, &around.base}) {
    side->coefficient *= factor;
    side->drying *= factor;
    side->emissivity = std::min(1.0, side->emissivity * factor);
  }
  return around;
}

}  // namespace tinwright
