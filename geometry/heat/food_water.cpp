// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See food_water.h.
#include "geometry/heat/food_water.h"

#include <algorithm>
#include <cmath>

#include "geometry/checks.h"
#include "geometry/heat/food_components.h"
#include "geometry/heat/food_properties.h"
#include "geometry/heat/moist_air.h"

namespace tinwright {
namespace {

constexpr double kMolarMassOfWater = 0.01801528;  // [kg/mol]
constexpr double kMolarMassOfSucrose = 0.3422965;
constexpr double kNorrishOfSucrose = 6.47;  // [-] Chirife, Ferro Fontan & Benmergui (1980), from memory
/// [-] kg of water to a kg of solids at which half the water is held: 2 % moisture at 121 °C in steam, about what dry
/// crust keeps (common practice, no source).
constexpr double kHeldBySolids = 0.02;
constexpr double kWaterDensity = 998.0;  // [kg/m³]

constexpr double kSelfDiffusion = 2.3e-9;        // [m²/s] at kSelfDiffusionAt
constexpr double kSelfDiffusionAt = 298.15;      // [K]
constexpr double kSelfDiffusionEnergy = 18.0e3;  // [J/mol]
constexpr double kGasConstant = 8.314462618;     // [J/(mol K)]

constexpr double kGasConstantOfVapour = 461.5;  // [J/(kg K)]
constexpr double kHottestPore = kZeroCelsius + 80.0;
/// [m²/s] of vapour in air at 0 °C and its power of temperature (ASHRAE Fundamentals after Schirmer; from memory).
constexpr double kVapourDiffusion = 2.26e-5;
constexpr double kVapourDiffusionPower = 1.81;

}  // namespace

WaterHolding water_holding(const Composition& food) {
  constexpr double kAt = kDensityTemperature;
  return {.sugar = food.sugar.value_or(kUsualSugarShare * food.carbohydrate),
          .solids = 1.0 - food.water,
          .volume = food.protein / component_density(FoodComponent::kProtein, kAt) +
                    food.fat / component_density(FoodComponent::kFat, kAt) +
                    food.carbohydrate / component_density(FoodComponent::kCarbohydrate, kAt) +
                    food.fibre / component_density(FoodComponent::kFibre, kAt) +
                    food.ash / component_density(FoodComponent::kAsh, kAt)};
}

ByWater water_activity_by_water(const WaterHolding& holding, double water) {
  GEOMETRY_ASSERT(water > 0.0);
  const double moles_of_water = water / kMolarMassOfWater;
  const double moles_of_sugar = holding.sugar / kMolarMassOfSucrose;
  const double per_mole = 1.0 / (moles_of_water + moles_of_sugar);
  const double x_s = moles_of_sugar * per_mole;
  const double held = kHeldBySolids * holding.solids;
  const double free = water / (water + held);
  const double activity = (1.0 - x_s) * std::exp(-kNorrishOfSucrose * x_s * x_s) * free;
  const double sugar_falls = x_s * per_mole / kMolarMassOfWater;  // [1/kg] -dx_s/dwater
  const double relative =
      sugar_falls * (1.0 / (1.0 - x_s) + 2.0 * kNorrishOfSucrose * x_s) + held / (water * (water + held));
  return {activity, activity * relative};
}

double water_activity(const WaterHolding& holding, double water) {
  return water_activity_by_water(holding, water).value;
}

double water_self_diffusion(double temperature) {
  if (temperature < kZeroCelsius) return 0.0;
  return kSelfDiffusion * std::exp(kSelfDiffusionEnergy / kGasConstant * (1.0 / kSelfDiffusionAt - 1.0 / temperature));
}

ByWater let_through(const WaterHolding& holding, double water) {
  // Mackie & Meares: (1 - share) / (1 + share), squared, with the solids' share of the volume.
  const double of_water = water / kWaterDensity;
  const double per_volume = 1.0 / (2.0 * holding.volume + of_water);
  const double open = of_water * per_volume;
  return {open * open, 4.0 * open * holding.volume * per_volume * per_volume / kWaterDensity};
}

double water_diffusivity(const WaterHolding& holding, double water, double temperature) {
  return water_self_diffusion(temperature) * let_through(holding, water).value;
}

double wet_pore_conductivity(double temperature) {
  const double t = std::min(temperature, kHottestPore);
  const double pressure = saturation_pressure(t);
  const double latent = latent_heat_of_evaporation(t);
  const double pressure_slope = pressure * latent / (kGasConstantOfVapour * t * t);
  const double diffusion = kVapourDiffusion * std::pow(t / kZeroCelsius, kVapourDiffusionPower);
  const double crowding = kAtmosphere / (kAtmosphere - pressure);
  return air_conductivity(temperature) +
         kPoreShare * diffusion * crowding / (kGasConstantOfVapour * t) * latent * pressure_slope;
}

}  // namespace tinwright
