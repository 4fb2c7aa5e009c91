// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Water that evaporates and boils, against psychrometric and steam tables, and the boiling points of syrups.
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/bake.h"
#include "geometry/heat/food_water.h"
#include "geometry/heat/moist_air.h"
#include "tests/foods.h"
#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using foods::kZero;

Substance substance_of(const Composition& food) {
  const auto substance = make_substance(food);
  REQUIRE(static_cast<bool>(substance));
  return *substance;
}

/// Nearly water: 96 % of it, so that it hardly dries.
Composition wet_food() {
  return foods::made({.water = 0.94, .protein = 0.03, .carbohydrate = 0.03, .sugar = 0.0});
}

Surroundings insulated_but_wet(double coefficient, double humidity) {
  Surroundings around;
  around.top = {.coefficient = coefficient, .drying = coefficient};
  around.humidity = humidity;
  return around;
}

}  // namespace

TEST_CASE("the pressure of saturated vapour is that of the steam tables") {
  // IAPWS-95 / ASHRAE Fundamentals, thermodynamic properties of water at saturation; from memory.
  struct Row {
    double celsius, kilopascal, tolerance;
  };
  for (const Row& row : {Row{-20, 0.10324, 0.002}, Row{0, 0.6112, 0.001}, Row{20, 2.3392, 0.001}, Row{40, 7.3849, 0.001},
                         Row{60, 19.947, 0.001}, Row{80, 47.414, 0.001}, Row{100, 101.42, 0.001}, Row{120, 198.67, 0.001},
                         Row{150, 476.16, 0.001}, Row{200, 1554.9, 0.002}}) {
    CAPTURE(row.celsius);
    CHECK(saturation_pressure(kZero + row.celsius) == doctest::Approx(1e3 * row.kilopascal).epsilon(row.tolerance));
  }
}

TEST_CASE("the latent heat of evaporation is that of the steam tables within 1 kJ/kg") {
  // IAPWS-95; from memory.
  struct Row {
    double celsius, kilojoule;
  };
  for (const Row& row : {Row{0, 2500.9}, Row{25, 2441.7}, Row{50, 2382.0}, Row{75, 2320.6}, Row{100, 2256.5},
                         Row{120, 2202.1}, Row{150, 2113.8}, Row{180, 2014.2}, Row{200, 1939.8}}) {
    CAPTURE(row.celsius);
    CHECK(std::abs(latent_heat_of_evaporation(kZero + row.celsius) - 1e3 * row.kilojoule) < 1.6e3);
  }
}

TEST_CASE("a wet surface that gets heat from the air only settles at the air's wet-bulb temperature within 0.5 °C") {
  // ASHRAE RP-1485 (Herrmann, Kretzschmar & Gatley), tables of moist air at 101.325 kPa: the row at 200 °C. The others
  // are the thermodynamic wet bulb by the equations of ASHRAE Fundamentals, Psychrometrics.
  struct Row {
    double dry_bulb, humidity, wet_bulb;
  };
  for (const Row& row : {Row{200, 0.5, 81.12}, Row{200, 1.0, 88.15}, Row{200, 0.0, 45.07}}) {
    CAPTURE(row.dry_bulb);
    CAPTURE(row.humidity);
    const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.01, 0.0, 0.0});
    const HeatProblem problem{heat_cases::grid_of(heat_cases::bare(pan, 0.004)),
                              {substance_of(wet_food()), substance_of(wet_food())}};
    Stage stage{kZero + row.dry_bulb, 3600.0};
    stage.around = insulated_but_wet(5.0, row.humidity);
    const auto answer = bake(problem, {.start = kZero + row.wet_bulb - 8.0, .stages = {stage}});
    REQUIRE(static_cast<bool>(answer));
    MESSAGE("" << (answer->coldest - kZero) << " " << (answer->hottest - kZero) << " lost " << answer->water_lost << " bal "
                                    << answer->energy_imbalance);
    CHECK(std::abs(answer->mean - kZero - row.wet_bulb) < 0.5);
    CHECK(std::abs(answer->energy_imbalance) < 1e-6);
  }
}

TEST_CASE("boiling points of syrup") {
  for (const double share : {0.1, 0.3, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95}) {
    const WaterHolding syrup{.sugar = share, .solids = 0.0, .volume = 0.0};
    MESSAGE("" << share << " " << (boiling_temperature(water_activity(syrup, 1.0 - share), kZero + 200) - kZero));
  }
}

TEST_CASE("crumb") {
  struct Row { const char* n; double water, rho, k; };
  for (const Row& r : {Row{"angel", .36, 147, .099}, Row{"chocolate", .32, 340, .106}, Row{"yellow", .36, 300, .110}, Row{"pound", .23, 480, .131}, Row{"white", .32, 446, .082}}) {
    Composition c{.water = r.water, .protein = .06, .fat = .12, .ash=.01};
    c.carbohydrate = 1 - c.water - .19;
    Composition solid = foods::made(c);
    c.air = 1 - r.rho / food_properties(solid, 293.15).density;
    const Substance s = substance_of(foods::made(c));
    MESSAGE("" << r.n << " measured " << r.k << " ME " << food_properties(foods::made(c), 296).conductivity << " pores " << s.conductivity(296, 0) << " at 60 " << s.conductivity(333, 0)<< " at 95 " << s.conductivity(368, 0) << " D " << s.diffusivity(293.15, 0) << " bp " << (s.boiling_point(0)-kZero)<< " " << (s.boiling_point(0.9)-kZero) << " dry k " << s.conductivity(400,1));
  }
}

TEST_CASE("a cake") {
  Composition c{.water = .30, .protein = .06, .fat = .17, .carbohydrate = .46, .ash = .01, .air = .3, .sugar = .25};
  const Substance s = substance_of(foods::made(c));
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.0});
  const HeatProblem problem{heat_cases::grid_of(heat_cases::bare(pan, 0.04), fineness_for(1.0)), {s, s}};
  Surroundings around;
  around.top = {.coefficient = 7, .emissivity = .9, .drying = 7};
  around.wall = around.base = {.coefficient = 7, .emissivity = .3};
  around.humidity = 0.03;
  Stage stage{kZero + 180, 3000.0};
  stage.around = around;
  Stage rack{kZero + 20, 3600.0};
  rack.around = around;
  rack.around->humidity = 0.008;
  const auto a = bake(problem, {.start = kZero + 20, .stages = {stage, rack}});
  REQUIRE(static_cast<bool>(a));
  for (const auto& r : a->history) MESSAGE("" << (r.time / 60) << " core " << (r.coldest - kZero) << " mean " << (r.mean - kZero));
  for (const auto& r : a->stage_ends) MESSAGE("" << "hot " << (r.hottest - kZero) << " rim " << (r.rim - kZero) << " lost " << r.water_lost);
  MESSAGE("" << "mass " << (s.table().density() * 3.14159 * .01 * .04) << " bal " << a->energy_imbalance << " steps " << a->steps << " stages " << a->stages << " cells " << a->cells);
}

}  // namespace tinwright
