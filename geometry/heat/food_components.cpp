// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See food_components.h.
#include "geometry/heat/food_components.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// a + b t + c t², t in °C.
struct Curve {
  double a = 0.0;
  double b = 0.0;
  double c = 0.0;

  double at(double t) const { return a + (b + c * t) * t; }
};

struct ComponentCurves {
  Curve conductivity;   // [W/(m K)]
  Curve density;        // [kg/m³]
  Curve heat_capacity;  // [kJ/(kg K)]
};

/// In the order of FoodComponent. Choi & Okos (1986); each number read in two independent copies (Ibarz &
/// Barbosa-Canovas, appendix; ASHRAE 2006 ch. 9 as coded in a public fluid-property library). Misprints in
/// circulation, none of them used here:
///  - water, heat capacity: 4.1289 (ASHRAE 2006) for 4.1762 (Ibarz; Singh & Heldman). 4.1289 gives 4.129 at 20 °C,
///    where water has 4.182; 4.1762 gives 4.177, so it is the sound one;
///  - water, conductivity: 0.457109 for 0.57109, and 6.7306e-6 for 6.7036e-6;
///  - fat, conductivity: +2.7604e-3 for -2.7604e-4 (with it fat would conduct like water at 100 °C);
///  - fat, heat capacity: 1.4373e-3 for 1.4733e-3; fibre, heat capacity: 1.8906e-3 for 1.8306e-3;
///  - carbohydrate, conductivity: 1.3874e-2 for 1.3874e-3.
constexpr std::array<ComponentCurves, 7> kCurves{{
    // water
    {{0.57109, 1.7625e-3, -6.7036e-6}, {997.18, 3.1439e-3, -3.7574e-3}, {4.1762, -9.0864e-5, 5.4731e-6}},
    // ice
    {{2.2196, -6.2489e-3, 1.0154e-4}, {916.89, -0.13071, 0.0}, {2.0623, 6.0769e-3, 0.0}},
    // protein
    {{0.17881, 1.1958e-3, -2.7178e-6}, {1329.9, -0.5184, 0.0}, {2.0082, 1.2089e-3, -1.3129e-6}},
    // fat
    {{0.18071, -2.7604e-4, -1.7749e-7}, {925.59, -0.41757, 0.0}, {1.9842, 1.4733e-3, -4.8008e-6}},
    // carbohydrate
    {{0.20141, 1.3874e-3, -4.3312e-6}, {1599.1, -0.31046, 0.0}, {1.5488, 1.9625e-3, -5.9399e-6}},
    // fibre
    {{0.18331, 1.2497e-3, -3.1683e-6}, {1311.5, -0.36589, 0.0}, {1.8459, 1.8306e-3, -4.6509e-6}},
    // ash
    {{0.32962, 1.4011e-3, -2.9069e-6}, {2423.8, -0.28063, 0.0}, {1.0926, 1.8896e-3, -3.6817e-6}},
}};

/// [kJ/(kg K)] of water that is liquid below 0 °C. Choi & Okos (1986) as printed in Ibarz (ASHRAE 2006 has 4.1289
/// here too, from memory). With it the latent heat falls to 288 kJ/kg at -20 °C, as measured.
constexpr Curve kColdWaterHeatCapacity{4.0817, -5.3062e-3, 9.9516e-4};

/// [W/(m K)] and [W/(m K²)]; see air_conductivity.
constexpr double kAirConductivityAtZero = 0.0243;
constexpr double kAirConductivitySlope = 7.2e-5;

const ComponentCurves& curves(FoodComponent component) {
  return kCurves[static_cast<std::size_t>(component)];
}

/// [°C] held inside the range of the fits.
double fitted_celsius(double temperature) {
  GEOMETRY_ASSERT(std::isfinite(temperature));
  return std::clamp(temperature, kCoolestFit, kHottestFit) - kZeroCelsius;
}

const Curve& heat_capacity_curve(FoodComponent component, double t) {
  return component == FoodComponent::kWater && t < 0.0 ? kColdWaterHeatCapacity : curves(component).heat_capacity;
}

}  // namespace

double component_conductivity(FoodComponent component, double temperature) {
  return curves(component).conductivity.at(fitted_celsius(temperature));
}

double component_density(FoodComponent component, double temperature) {
  return curves(component).density.at(fitted_celsius(temperature));
}

double component_heat_capacity(FoodComponent component, double temperature) {
  const double t = fitted_celsius(temperature);
  return 1e3 * heat_capacity_curve(component, t).at(t);
}

double component_enthalpy(FoodComponent component, double temperature) {
  const double t = fitted_celsius(temperature);
  const Curve& curve = heat_capacity_curve(component, t);
  const double inside = t * (curve.a + t * (curve.b / 2.0 + t * curve.c / 3.0));
  const double beyond = (temperature - kZeroCelsius - t) * curve.at(t);
  return 1e3 * (inside + beyond) - (component == FoodComponent::kIce ? kLatentHeatOfIce : 0.0);
}

double air_conductivity(double temperature) {
  return kAirConductivityAtZero + kAirConductivitySlope * fitted_celsius(temperature);
}

}  // namespace tinwright
