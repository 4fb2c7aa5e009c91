// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Conductivity, density and heat capacity of foods from what they are made of.
#include <cmath>
#include <string>
#include <vector>

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

Composition whole_milk() {  // 88.13 water, 3.15 protein, 3.25 fat, 4.80 carbohydrate, 0.67 ash (seen)
  return made({.water = 0.8813, .protein = 0.0315, .fat = 0.0325, .carbohydrate = 0.048, .ash = 0.0067});
}

}  // namespace

TEST_CASE("water and ice have their measured properties") {
  // Incropera table A.6 and handbook values of ice, from memory. Tolerance: the fits' own error.
  struct Row {
    FoodComponent component;
    double celsius, conductivity, density, heat_capacity;
  };
  for (const Row& row :
       {Row{FoodComponent::kWater, 20.0, 0.598, 998.2, 4182.0}, Row{FoodComponent::kWater, 60.0, 0.654, 983.2, 4185.0},
        Row{FoodComponent::kWater, 100.0, 0.679, 958.4, 4217.0}, Row{FoodComponent::kIce, 0.0, 2.22, 916.7, 2050.0},
        Row{FoodComponent::kIce, -20.0, 2.39, 919.4, 1943.0}}) {
    CAPTURE(row.celsius);
    const double temperature = kZero + row.celsius;
    CHECK(relative_error(component_conductivity(row.component, temperature), row.conductivity) < 0.012);
    CHECK(relative_error(component_density(row.component, temperature), row.density) < 0.003);
    CHECK(relative_error(component_heat_capacity(row.component, temperature), row.heat_capacity) < 0.007);
  }
}

TEST_CASE("the parts weigh what the published fits give at 20 °C") {
  // Choi & Okos (1986) densities at 20 °C as a public nutrition program tabulates them (seen).
  CHECK(component_density(FoodComponent::kWater, kZero + 20.0) == doctest::Approx(995.74).epsilon(1e-5));
  CHECK(component_density(FoodComponent::kProtein, kZero + 20.0) == doctest::Approx(1319.53).epsilon(1e-5));
  CHECK(component_density(FoodComponent::kFat, kZero + 20.0) == doctest::Approx(917.23).epsilon(1e-5));
  CHECK(component_density(FoodComponent::kCarbohydrate, kZero + 20.0) == doctest::Approx(1592.89).epsilon(1e-5));
  CHECK(component_density(FoodComponent::kAsh, kZero + 20.0) == doctest::Approx(2418.18).epsilon(1e-5));
}

TEST_CASE("conductivity over density and heat capacity is the diffusivity that was fitted apart") {
  // Choi & Okos (1986) fit diffusivity [1e-6 m²/s] too, a + b t + c t² (Ibarz & Barbosa-Canovas, appendix, seen in a
  // poor scan; the sign of fat's slope from memory). The four fits are independent and part by up to 6 % in 0-100 °C
  // (fibre most), so this finds a slipped digit or sign, not the last ones.
  struct Row {
    std::string name;
    FoodComponent component;
    double a, b, c, tolerance;
  };
  const std::vector<Row> rows{
      {"protein", FoodComponent::kProtein, 6.8714e-2, 4.7578e-4, -1.4646e-6, 0.035},
      {"fat", FoodComponent::kFat, 9.8777e-2, -1.2569e-4, -3.8286e-8, 0.045},
      {"carbohydrate", FoodComponent::kCarbohydrate, 8.0842e-2, 5.3052e-4, -2.3218e-6, 0.02},
      {"fibre", FoodComponent::kFibre, 7.3976e-2, 5.1902e-4, -2.2202e-6, 0.06},
      {"ash", FoodComponent::kAsh, 1.2461e-1, 3.7321e-4, -1.2244e-6, 0.02},
      {"water", FoodComponent::kWater, 1.3168e-1, 6.2477e-4, -2.4022e-6, 0.045},
      {"ice", FoodComponent::kIce, 1.1756, -6.0833e-3, 9.5037e-5, 0.005},
  };
  for (const Row& row : rows) {
    for (double warm = 0.0; warm <= 100.0; warm += 10.0) {
      const double t = row.component == FoodComponent::kIce ? -0.4 * warm : warm;
      CAPTURE(row.name);
      CAPTURE(t);
      const double diffusivity = component_conductivity(row.component, kZero + t) /
                                 component_density(row.component, kZero + t) /
                                 component_heat_capacity(row.component, kZero + t);
      CHECK(relative_error(diffusivity, 1e-6 * (row.a + row.b * t + row.c * t * t)) < row.tolerance);
    }
  }
}

TEST_CASE("cooling lamb from 10 to 0 °C takes what the handbook's example says") {
  // ASHRAE Handbook - Refrigeration ch. 9, worked example: 150 kg of lamb, 0.7342 water, 0.2029 protein, 0.0525 fat,
  // 0.0106 ash (inputs seen, retold as an exercise); 3.59 kJ/kgK at 5 °C, 5390 kJ (answer from memory).
  const Composition lamb = made({.water = 0.7342, .protein = 0.2029, .fat = 0.0525, .ash = 0.0106});
  CHECK(relative_error(food_properties(lamb, kZero + 5.0).heat_capacity, 3590.0) < 0.002);
  CHECK(relative_error(150.0 * (food_enthalpy(lamb, kZero + 10.0) - food_enthalpy(lamb, kZero)), 5390e3) < 0.003);
}

TEST_CASE("heat capacities agree with tabulated foods above freezing") {
  // ASHRAE Handbook - Refrigeration (2006) ch. 9 table 3 (seen); shares in %, carbohydrate with its fibre. The table
  // is from Chen's formula for all solids alike, hence 3 %.
  struct Row {
    std::string food;
    double water, protein, fat, carbohydrate, fibre, ash, heat_capacity;
  };
  const std::vector<Row> rows{
      {"globe artichoke", 84.94, 3.27, 0.15, 10.51, 5.40, 1.13, 3900.0},
      {"Jerusalem artichoke", 78.01, 2.00, 0.01, 17.44, 1.60, 2.54, 3630.0},
      {"asparagus", 92.40, 2.28, 0.20, 4.54, 2.10, 0.57, 4030.0},
      {"lima beans", 70.24, 6.84, 0.86, 20.16, 4.90, 1.89, 3520.0},
      {"carrots", 87.79, 1.03, 0.19, 10.14, 3.00, 0.87, 3920.0},
      {"sweet corn", 75.96, 3.22, 1.18, 19.02, 2.70, 0.62, 3620.0},
      {"cucumber", 96.01, 0.69, 0.13, 2.76, 0.80, 0.41, 4090.0},
      {"garlic", 58.58, 6.36, 0.50, 33.07, 2.10, 1.50, 3170.0},
      {"horseradish", 78.66, 9.40, 1.40, 8.28, 2.00, 2.26, 3700.0},
  };
  for (const Row& row : rows) {
    CAPTURE(row.food);
    const Composition food = made({.water = row.water / 100.0,
                                   .protein = row.protein / 100.0,
                                   .fat = row.fat / 100.0,
                                   .carbohydrate = (row.carbohydrate - row.fibre) / 100.0,
                                   .fibre = row.fibre / 100.0,
                                   .ash = row.ash / 100.0});
    CHECK(relative_error(food_properties(food, kZero + 4.0).heat_capacity, row.heat_capacity) < 0.03);
  }
}

TEST_CASE("heat capacities agree with measured kitchen foods") {
  // Geankoplis, Transport Processes, table A.4-1 (seen); compositions from memory. Flour and lean beef are means over
  // 0-100 °C; the table's flour is 9 % under this model and under ASHRAE's, and stays here as a doubted row.
  struct Row {
    std::string food;
    Composition composition;
    double celsius, heat_capacity, tolerance;
  };
  const std::vector<Row> rows{
      {"olive oil", {.fat = 1.0}, 20.0, 2010.0, 0.002},
      {"water", {.water = 1.0}, 20.0, 4185.0, 0.003},
      {"ice", {.water = 1.0}, -20.0, 1958.0, 0.01},
      {"butter", {.water = 0.159, .protein = 0.009, .fat = 0.811, .ash = 0.021}, 4.4, 2300.0, 0.01},
      {"whole milk", whole_milk(), 20.0, 3850.0, 0.02},
      {"lean beef", {.water = 0.72, .protein = 0.21, .fat = 0.06, .ash = 0.01}, 50.0, 3430.0, 0.06},
      {"flour",
       {.water = 0.12, .protein = 0.10, .fat = 0.01, .carbohydrate = 0.738, .fibre = 0.027, .ash = 0.005},
       50.0,
       1840.0,
       0.10},
  };
  for (const Row& row : rows) {
    CAPTURE(row.food);
    const Properties found = food_properties(made(row.composition), kZero + row.celsius);
    CHECK(relative_error(found.heat_capacity, row.heat_capacity) < row.tolerance);
  }
}

TEST_CASE("milk weighs and conducts as milk") {
  // 1.03 g/ml and 0.53-0.56 W/mK near 20 °C: dairy handbooks, from memory.
  const Properties milk = food_properties(whole_milk(), kZero + 20.0);
  CHECK(relative_error(milk.density, 1030.0) < 0.01);
  CHECK(milk.conductivity > 0.53);
  CHECK(milk.conductivity < 0.57);
}

TEST_CASE("a food of one part has that part's properties") {
  const Composition fat = made({.fat = 1.0});
  const Composition water = made({.water = 1.0});
  for (const double celsius : {5.0, 20.0, 95.0, 150.0}) {
    CAPTURE(celsius);
    const double temperature = kZero + celsius;
    const Properties of_fat = food_properties(fat, temperature);
    CHECK(of_fat.conductivity == doctest::Approx(component_conductivity(FoodComponent::kFat, temperature)));
    CHECK(of_fat.density == doctest::Approx(component_density(FoodComponent::kFat, temperature)));
    CHECK(of_fat.heat_capacity == doctest::Approx(component_heat_capacity(FoodComponent::kFat, temperature)));
    CHECK(food_properties(water, temperature).conductivity ==
          doctest::Approx(component_conductivity(FoodComponent::kWater, temperature)));
  }
}

TEST_CASE("volumes add, heats add by mass, conductivities lie between those of the parts") {
  const Composition half = made({.water = 0.5, .carbohydrate = 0.5});
  const double temperature = kZero + 25.0;
  const double water = component_density(FoodComponent::kWater, temperature);
  const double sugar = component_density(FoodComponent::kCarbohydrate, temperature);
  const Properties found = food_properties(half, temperature);
  CHECK(relative_error(found.density, 2.0 * water * sugar / (water + sugar)) < 1e-12);
  CHECK(relative_error(found.heat_capacity,
                       0.5 * (component_heat_capacity(FoodComponent::kWater, temperature) +
                              component_heat_capacity(FoodComponent::kCarbohydrate, temperature))) < 1e-12);
  const double k_w = component_conductivity(FoodComponent::kWater, temperature);
  const double k_c = component_conductivity(FoodComponent::kCarbohydrate, temperature);
  CHECK(relative_error(found.conductivity, (k_w * sugar + k_c * water) / (water + sugar)) < 1e-12);
}

TEST_CASE("air bubbles lower conductivity between the series and parallel bounds, from none to all air") {
  const double solid = 0.35;
  const double air = air_conductivity(kZero + 60.0);
  CHECK(maxwell_eucken(solid, air, 0.0) == solid);
  CHECK(relative_error(maxwell_eucken(solid, air, 1.0), air) < 1e-12);
  CHECK(maxwell_eucken(solid, solid, 0.4) == doctest::Approx(solid));
  double more = solid;
  for (double share = 0.05; share < 1.0; share += 0.05) {
    CAPTURE(share);
    const double k = maxwell_eucken(solid, air, share);
    CHECK(k < more);
    CHECK(k > 1.0 / (share / air + (1.0 - share) / solid));
    CHECK(k < share * air + (1.0 - share) * solid);
    CHECK(k > maxwell_eucken(air, solid, 1.0 - share));  // air continuous: the lower Hashin-Shtrikman bound
    more = k;
  }
  // Maxwell (1873): few bubbles that do not conduct lower it by 3/2 of their share.
  CHECK(relative_error(maxwell_eucken(1.0, 1e-12, 1e-4), 1.0 - 1.5e-4) < 1e-8);
}

TEST_CASE("air takes its share of the density and none of the heat capacity") {
  Composition batter = made({.water = 0.3, .protein = 0.05, .fat = 0.2, .carbohydrate = 0.44, .ash = 0.01});
  const Properties dense = food_properties(batter, kZero + 20.0);
  batter.air = 0.4;
  const Properties aired = food_properties(batter, kZero + 20.0);
  CHECK(relative_error(aired.density, 0.6 * dense.density) < 1e-12);
  CHECK(aired.heat_capacity == dense.heat_capacity);
  CHECK(aired.conductivity < dense.conductivity);
  batter.air = kMostAir;
  CHECK(food_properties(batter, kZero + 20.0).conductivity < 2.0 * air_conductivity(kZero + 20.0));
}

TEST_CASE("still air conducts as tabulated") {  // Incropera table A.4, from memory
  CHECK(relative_error(air_conductivity(250.0), 0.0223) < 0.02);
  CHECK(relative_error(air_conductivity(300.0), 0.0263) < 0.02);
  CHECK(relative_error(air_conductivity(400.0), 0.0338) < 0.02);
}

TEST_CASE("beyond the range of the fits properties keep their last value") {
  const Composition dough = made({.water = 0.3, .fat = 0.2, .carbohydrate = 0.5});
  CHECK(food_properties(dough, kHottestFit + 150.0).heat_capacity == food_properties(dough, kHottestFit).heat_capacity);
  CHECK(food_properties(dough, kHottestFit + 150.0).conductivity == food_properties(dough, kHottestFit).conductivity);
}

}  // namespace tinwright
