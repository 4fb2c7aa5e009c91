// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See food_properties.h.
#include "geometry/heat/food_properties.h"

#include <array>

#include "geometry/checks.h"
#include "geometry/heat/food_components.h"

namespace tinwright {
namespace {

struct Part {
  FoodComponent component;
  double mass_share;  // [-]
};
using Parts = std::array<Part, 7>;

/// What there is at `temperature`, its water split into liquid and ice.
Parts parts_at(const Composition& food, double temperature) {
  const double ice = ice_fraction(food, temperature);
  return {{{FoodComponent::kWater, food.water - ice},
           {FoodComponent::kIce, ice},
           {FoodComponent::kProtein, food.protein},
           {FoodComponent::kFat, food.fat},
           {FoodComponent::kCarbohydrate, food.carbohydrate},
           {FoodComponent::kFibre, food.fibre},
           {FoodComponent::kAsh, food.ash}}};
}

/// [J/kg] above liquid water and the other parts at 0 °C.
double enthalpy_above_melting(const Composition& food, double temperature) {
  double enthalpy = 0.0;
  for (const Part& part : parts_at(food, temperature)) {
    enthalpy += part.mass_share * component_enthalpy(part.component, temperature);
  }
  return enthalpy;
}

}  // namespace

Properties food_properties(const Composition& food, double temperature) {
  double volume = 0.0;  // [m³/kg]
  double conductivity_volume = 0.0;
  double heat_capacity = 0.0;
  for (const Part& part : parts_at(food, temperature)) {
    const double part_volume = part.mass_share / component_density(part.component, temperature);
    volume += part_volume;
    conductivity_volume += part_volume * component_conductivity(part.component, temperature);
    heat_capacity += part.mass_share * component_heat_capacity(part.component, temperature);
  }
  GEOMETRY_ASSERT(volume > 0.0);
  return {.conductivity = maxwell_eucken(conductivity_volume / volume, air_conductivity(temperature), food.air),
          .density = (1.0 - food.air) / volume,
          .heat_capacity = heat_capacity};
}

double food_enthalpy(const Composition& food, double temperature) {
  return enthalpy_above_melting(food, temperature) - enthalpy_above_melting(food, kEnthalpyZero);
}

double maxwell_eucken(double continuous, double dispersed, double share) {
  GEOMETRY_ASSERT(continuous > 0.0 && dispersed > 0.0 && share >= 0.0 && share <= 1.0);
  const double k_c = continuous;
  const double k_d = dispersed;
  const double both = 2.0 * k_c + k_d;
  const double step = share * (k_c - k_d);
  return k_c * ((both - 2.0 * step) / (both + step));
}

}  // namespace tinwright
