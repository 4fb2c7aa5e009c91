// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Enthalpy of foods through freezing and above.
#include <cmath>

#include <doctest/doctest.h>

#include "geometry/heat/food_components.h"
#include "geometry/heat/food_properties.h"
#include "tests/foods.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using foods::kZero;
using foods::made;
using shapes::relative_error;

/// ASHRAE Handbook - Refrigeration (2006) ch. 9 table 3, beef carcass, select (from memory).
Composition beef() {
  return made({.water = 0.5821, .protein = 0.1748, .fat = 0.2255, .ash = 0.0082, .freezing_point = kZero - 1.7});
}

Composition milk() {
  return made({.water = 0.8813, .protein = 0.0315, .fat = 0.0325, .carbohydrate = 0.048, .ash = 0.0067});
}

}  // namespace

TEST_CASE("enthalpy is zero at -40 °C, rises everywhere and has no jump where ice begins") {
  for (const Composition& food : {beef(), milk(), made({.water = 1.0}), made({.fat = 1.0})}) {
    CHECK(food_enthalpy(food, kZero - 40.0) == 0.0);
    double lower = food_enthalpy(food, kZero - 60.05);
    for (double celsius = -60.0; celsius < 260.0; celsius += 0.05) {
      const double enthalpy = food_enthalpy(food, kZero + celsius);
      CHECK(enthalpy > lower);
      lower = enthalpy;
    }
    const double t_f = freezing_point(food);
    CHECK(food_enthalpy(food, t_f + 1e-9) - food_enthalpy(food, t_f - 1e-9) < 0.1);
  }
}

TEST_CASE("freezing water gives back the latent heat and the sensible heat of the ice") {
  const Composition water = made({.water = 1.0});
  const double ice_cooling = 2062.3 * 40.0 - 6.0769 * 40.0 * 40.0 / 2.0;  // the fit, integrated by hand
  CHECK(relative_error(food_enthalpy(water, kZero) - food_enthalpy(water, kZero - 40.0), 333600.0 + ice_cooling) <
        2e-4);
}

TEST_CASE("the latent heat falls with temperature as measured") {
  // Smithsonian Meteorological Tables, from memory. The heat capacity of cold water carries the error.
  struct Row {
    double celsius, latent, tolerance;
  };
  for (const Row& row : {Row{0.0, 333.7e3, 1e-3}, Row{-10.0, 312.2e3, 5e-3}, Row{-20.0, 288.9e3, 5e-3},
                         Row{-30.0, 264.1e3, 0.025}, Row{-40.0, 235.7e3, 0.06}}) {
    CAPTURE(row.celsius);
    const double temperature = kZero + row.celsius;
    const double latent =
        component_enthalpy(FoodComponent::kWater, temperature) - component_enthalpy(FoodComponent::kIce, temperature);
    CHECK(relative_error(latent, row.latent) < row.tolerance);
  }
}

TEST_CASE("the enthalpy of beef follows Chen's formulas through freezing") {
  // Chen (1985), as ASHRAE Handbook - Refrigeration gives it for foods (from memory), t in °C, kJ/kg above -40 °C.
  const Composition food = beef();
  const double x_s = 1.0 - food.water;
  const double t_f = -1.7;
  const auto frozen = [&](double t) {
    return (t + 40.0) * (1.55 + 1.26 * x_s + freezable_water(food) * 333.6 * t_f / (40.0 * t));
  };
  for (const double t : {-20.0, -10.0, -5.0, -3.0, -1.7}) {
    CAPTURE(t);
    CHECK(relative_error(food_enthalpy(food, kZero + t), 1e3 * frozen(t)) < 0.06);
  }
  const double unfrozen = 4.19 - 2.30 * x_s - 0.628 * x_s * x_s * x_s;
  CHECK(relative_error(food_enthalpy(food, kZero + 10.0), 1e3 * (frozen(t_f) + 11.7 * unfrozen)) < 0.02);
}

TEST_CASE("freezing lean meat from 10 to -18 °C takes what a plate freezer example counts") {
  // Earle, Unit Operations in Food Processing: 3.23e5 J/kg with all water frozen (seen); a tenth less is right here.
  const Composition lean =
      made({.water = 0.75, .protein = 0.21, .fat = 0.03, .ash = 0.01, .freezing_point = kZero - 2.0});
  const double heat = food_enthalpy(lean, kZero + 10.0) - food_enthalpy(lean, kZero - 18.0);
  CHECK(heat < 3.23e5);
  CHECK(heat > 0.82 * 3.23e5);
}

}  // namespace tinwright
