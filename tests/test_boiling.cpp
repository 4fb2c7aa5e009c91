// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Water that boils off, dries and moves inside food: boiling points of syrups, the balances of heat and water, and
// what a dried crust remembers.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/bake.h"
#include "geometry/heat/moist_air.h"
#include "tests/foods.h"
#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using foods::kZero;
using shapes::relative_error;

Substance substance_of(const Composition& food) {
  const auto substance = make_substance(foods::made(food));
  REQUIRE(static_cast<bool>(substance));
  return *substance;
}

/// Cake batter with air in it.
Substance batter() {
  return substance_of(
      {.water = 0.30, .protein = 0.06, .fat = 0.17, .carbohydrate = 0.46, .ash = 0.01, .air = 0.3, .sugar = 0.25});
}

/// Hardly anything but water.
Substance broth() {
  return substance_of({.water = 0.94, .protein = 0.03, .carbohydrate = 0.03, .sugar = 0.0});
}

/// [°C] where `share` by mass of sucrose in water boils.
double syrup_boils_at(double share) {
  const WaterHolding syrup{.sugar = share, .solids = 0.0, .volume = 0.0};
  return boiling_temperature(water_activity(syrup, 1.0 - share), kZero + 200) - kZero;
}

HeatProblem slab(const Substance& food, double thickness, int layers) {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{thickness + 0.01, 0.0, 0.0});
  return {heat_cases::grid_of(heat_cases::bare(pan, thickness), {.across = 1, .across_box = 1, .up = layers}),
          {food, food}};
}

HeatProblem cake(const Substance& food, double height = 0.03) {
  const Pan pan = shapes::pan(Round{0.16}, StraightWall{0.05, 0.005, 0.0});
  return {heat_cases::grid_of(heat_cases::bare(pan, height), {.across = 8, .across_box = 8, .up = 8}), {food, food}};
}

/// An oven round a dark pan, its air moist.
Surroundings oven() {
  Surroundings around;
  around.top = {.coefficient = 8.0, .emissivity = 0.9, .drying = 8.0};
  around.wall = around.base = {.coefficient = 8.0, .emissivity = 0.9};
  around.humidity = 0.03;
  return around;
}

double volume_of(const HeatProblem& problem) {
  double volume = 0.0;
  for (const HeatGrid::Cell& cell : problem.grid.cells) volume += cell.volume;
  return volume;
}

/// [kg] that can leave, before any has.
double water_in(const HeatProblem& problem) {
  return problem.substances[0].water() * volume_of(problem);
}

void ignore(const HeatState&, const std::vector<double>&) {}

struct Balance {
  double heat = 0.0, water = 0.0;  // [-] amiss, as a share of what came in or is there
};

/// Everything that must be kept, cell by cell, while a programme runs; `look` after every step.
template <class Look>
Balance run(const HeatProblem& problem, const Surroundings& around, HeatState& state, const Air& air,
            const Look& look) {
  HeatStepper stepper(problem);
  const double stored = stored_heat(problem, state) - (state.heat_in - state.heat_with_water);
  double time = 0.0;
  while (time < air.duration - 1e-6) {
    time += stepper.step(state, around, air, time, air.duration - time);
    look(state, stepper.temperatures(state));
  }
  Balance balance;
  const double water = water_in(problem);
  double left = 0.0;
  for (std::size_t i = 0; i < state.dryness.size(); ++i) {
    left += (1.0 - state.dryness[i]) * problem.substance_of(i).water() * problem.grid.cells[i].volume;
  }
  const double kept = stored + state.heat_in - state.heat_with_water;
  balance.heat = std::abs(stored_heat(problem, state) - kept) / std::max(std::abs(state.heat_in), std::abs(stored));
  balance.water = water > 0.0 ? std::abs(state.water_lost - (water - left)) / water : 0.0;
  return balance;
}

}  // namespace

TEST_CASE("sugar syrups boil where measured: within 0.35 °C up to 62 % sugar, 1.3 °C up to 82 %") {
  // Brown 1912, as splined in a table of boiling points of sucrose solutions (vk1od.net, seen). Geankoplis' fit is 2 °C
  // below these at 70 %, so they are no better known than that.
  struct Row {
    double share, rise, tolerance;  // [-] by mass, [°C], [°C]
  };
  for (const Row& row : {Row{0.10, 0.4, 0.35}, Row{0.20, 0.6, 0.35}, Row{0.32, 1.1, 0.35}, Row{0.40, 1.5, 0.35},
                         Row{0.50, 2.0, 0.35}, Row{0.62, 3.4, 0.35}, Row{0.66, 4.8, 0.5}, Row{0.70, 6.5, 1.3},
                         Row{0.74, 8.4, 1.3}, Row{0.78, 10.6, 1.3}, Row{0.80, 12.0, 1.3}, Row{0.82, 13.9, 1.3}}) {
    CAPTURE(row.share);
    CHECK(std::abs(syrup_boils_at(row.share) - syrup_boils_at(0.0) - row.rise) < row.tolerance);
  }
}

TEST_CASE("thicker syrups boil at or above the sweet maker's stages, up to 3 °C too hot at 90 % sugar") {
  // The common table of stages, seen: 85 % 112 to 116 °C, 87 % 118 to 120, 90 % 121 to 130. Beyond, it has 132 to 143
  // at 95 % where the model says 181: so dry a crust keeps a little more water than it should.
  struct Row {
    double share, least, most;
  };
  for (const Row& row : {Row{0.85, 112, 116}, Row{0.87, 118, 120}, Row{0.90, 121, 130}}) {
    CAPTURE(row.share);
    CHECK(syrup_boils_at(row.share) > row.least);
    CHECK(syrup_boils_at(row.share) < row.most + 3.0);
  }
}

TEST_CASE("a food of sugar and water boils up to 2.2 °C above the measured syrup, for its sugar counts as solids too") {
  struct Row {
    double share, rise, tolerance;  // Brown 1912, as above
  };
  for (const Row& row : {Row{0.10, 0.4, 0.3}, Row{0.40, 1.5, 0.3}, Row{0.50, 2.0, 0.5}, Row{0.62, 3.4, 1.1},
                         Row{0.70, 6.5, 1.1}, Row{0.80, 12.0, 2.2}}) {
    CAPTURE(row.share);
    const Substance food = substance_of({.water = 1.0 - row.share, .carbohydrate = row.share, .sugar = row.share});
    CHECK(std::abs(food.boiling_point(0.0) - kZero - syrup_boils_at(0.0) - row.rise) < row.tolerance);
  }
}

TEST_CASE("sugar solutions have the tabled water activity within 0.009") {
  // BC Centre for Disease Control, Food Safety Bulletin 03/97, g of sucrose to 100 g of water at 25 °C (second hand).
  struct Row {
    double sugar, activity;
  };
  for (const Row& row : {Row{40, 0.969}, Row{60, 0.955}, Row{80, 0.941}, Row{100, 0.927}, Row{120, 0.913},
                         Row{140, 0.900}, Row{160, 0.888}, Row{180, 0.876}, Row{200, 0.860}}) {
    CAPTURE(row.sugar);
    const WaterHolding syrup{.sugar = row.sugar, .solids = 0.0, .volume = 0.0};
    CHECK(std::abs(water_activity(syrup, 100.0) - row.activity) < 0.009);
  }
}

TEST_CASE("what is left boils hotter the drier it is, and its surface is less moist") {
  for (const Substance& food : {batter(), broth()}) {
    for (double dryness = 0.0; dryness < 0.99; dryness += 0.01) {
      CHECK(food.boiling_point(dryness + 0.01) >= food.boiling_point(dryness));
      CHECK(food.activity(dryness + 0.01) < food.activity(dryness));
    }
  }
}

TEST_CASE("a boiling slab loses the heat that came in over the latent heat, within 0.3 %") {
  const Substance food = broth();
  const HeatProblem problem = slab(food, 0.02, 12);
  Surroundings around;
  around.top = around.base = {.coefficient = 60.0};
  const double boils_at = food.boiling_point(0.0);
  HeatState state = start_at(problem, boils_at - 5.0);
  const double start = stored_heat(problem, state);
  const Balance balance = run(problem, around, state, {kZero + 200, kZero + 200, 1800.0, 0.0}, ignore);
  // Until it boils, all of it warms; from then on what leaves is steam. The two outermost layers run nearly dry.
  const double warming = food.enthalpy(boils_at, 0.0) * volume_of(problem) - start;
  REQUIRE(warming < 0.03 * state.heat_in);
  CHECK(relative_error(state.water_lost, (state.heat_in - warming) / latent_heat_of_evaporation(boils_at)) < 0.003);
  CHECK(balance.heat < 1e-10);
  CHECK(balance.water < 1e-9);
}

TEST_CASE("food that still has water in it is no hotter than that boils") {
  for (const Substance& food : {batter(), broth()}) {
    const HeatProblem problem = slab(food, 0.02, 12);
    Surroundings around;
    around.top = around.base = {.coefficient = 30.0};
    HeatState state = start_at(problem, kZero + 20);
    double above = -1e9;
    const double soaked = 1.0 - 1e-5;
    run(problem, around, state, {kZero + 200, kZero + 200, 3600.0, 0.0},
        [&](const HeatState& now, const std::vector<double>& temperature) {
          for (std::size_t i = 0; i < temperature.size(); ++i) {
            if (now.dryness[i] < soaked) above = std::max(above, temperature[i] - food.boiling_point(now.dryness[i]));
          }
        });
    REQUIRE(state.water_lost > 0.0);
    // What has just moved in from a wetter neighbour boils off in the next step.
    CHECK(above < 0.2);
    CHECK(above > -5.0);
  }
}

TEST_CASE("heat is kept to 1e-10 and water to 1e-9 while food thaws, dries, boils, cools and freezes") {
  for (const Substance& food : {batter(), broth()}) {
    const HeatProblem problem = cake(food);
    HeatState state = start_at(problem, kZero - 18);
    double least = 0.0;
    double most = 0.0;
    double lost = 0.0;
    bool only_loses = true;
    const auto look = [&](const HeatState& now, const std::vector<double>&) {
      const auto [low, high] = std::minmax_element(now.dryness.begin(), now.dryness.end());
      least = std::min(least, *low);
      most = std::max(most, *high);
      only_loses = only_loses && now.water_lost >= lost;
      lost = now.water_lost;
    };
    for (const Air& air : {Air{kZero + 180, kZero + 220, 3600.0, 0.0}, Air{kZero + 220, kZero - 18, 36000.0, 1800.0}}) {
      const Balance balance = run(problem, oven(), state, air, look);
      CHECK(balance.heat < 1e-10);
      CHECK(balance.water < 1e-9);
    }
    CHECK(least >= 0.0);
    CHECK(most <= 1.0);
    CHECK(only_loses);
    CHECK(state.water_lost > 0.05 * water_in(problem));
    CHECK(state.water_lost < water_in(problem));
  }
}

TEST_CASE("heat is kept to 1e-10 by constants behind pans, under radiation, in a bath and in ramped air") {
  const auto constants = make_substance(Properties{0.4, 900.0, 3000.0});
  REQUIRE(static_cast<bool>(constants));
  const HeatProblem problem = cake(*constants);
  Surroundings around = oven();
  around.wall = {.coefficient = 300.0, .resistance = 0.005, .held_at = kZero + 83};
  around.base.resistance = 0.004;
  HeatState state = start_at(problem, kZero + 4);
  CHECK(run(problem, around, state, {kZero + 250, kZero + 150, 3600.0, 900.0}, ignore).heat < 1e-10);
  CHECK(state.water_lost == 0.0);
}

TEST_CASE("left in the oven for half a day food runs dry and comes to the oven's temperature") {
  // A crumb without sugar keeps next to nothing; batter's sugar holds on to 5 % of its water. The oven's air is damp:
  // what so dry a crust could take up from it must not heat it.
  struct Case {
    Substance food;
    double least_dryness;
  };
  const Substance loaf = substance_of(
      {.water = 0.42, .protein = 0.08, .fat = 0.02, .carbohydrate = 0.47, .ash = 0.01, .air = 0.5, .sugar = 0.0});
  for (const Case& each : {Case{loaf, 0.995}, Case{batter(), 0.94}}) {
    const HeatProblem problem = cake(each.food, 0.02);
    HeatState state = start_at(problem, kZero + 20);
    double hottest = 0.0;
    const Balance balance = run(problem, oven(), state, {kZero + 220, kZero + 220, 40000.0, 0.0},
                                [&](const HeatState&, const std::vector<double>& temperature) {
                                  hottest =
                                      std::max(hottest, *std::max_element(temperature.begin(), temperature.end()));
                                });
    CHECK(*std::min_element(state.dryness.begin(), state.dryness.end()) > each.least_dryness);
    CHECK(*std::max_element(state.dryness.begin(), state.dryness.end()) <= 1.0);
    CHECK(std::abs(observe(problem, temperature_field(problem, state)).coldest - kZero - 220) < 0.1);
    CHECK(hottest < kZero + 220.1);
    CHECK(balance.heat < 1e-10);
    CHECK(balance.water < 1e-9);
  }
}

TEST_CASE("a dried crust that cools in damp air stays as dry as it was") {
  const HeatProblem problem = slab(batter(), 0.01, 6);
  HeatState state = start_at(problem, kZero + 20);
  run(problem, oven(), state, {kZero + 220, kZero + 220, 7200.0, 0.0}, ignore);
  const double lost = state.water_lost;
  const double driest = *std::max_element(state.dryness.begin(), state.dryness.end());
  const double wettest = *std::min_element(state.dryness.begin(), state.dryness.end());
  REQUIRE(wettest > 0.5);
  run(problem, oven(), state, {kZero + 20, kZero + 20, 36000.0, 0.0}, ignore);
  CHECK(state.water_lost >= lost);
  CHECK(*std::min_element(state.dryness.begin(), state.dryness.end()) >= wettest - 1e-12);
  CHECK(*std::max_element(state.dryness.begin(), state.dryness.end()) >= driest - 0.05);
}

TEST_CASE("temperature undoes enthalpy at every dryness") {
  for (const Substance& food : {batter(), broth()}) {
    for (double dryness = 0.0; dryness <= 1.0; dryness += 1.0 / 32.0) {
      CAPTURE(dryness);
      double worst = 0.0;
      for (double celsius = -60.0; kZero + celsius < food.boiling_point(dryness) - 0.01; celsius += 0.83) {
        const double enthalpy = food.enthalpy(kZero + celsius, dryness);
        worst = std::max(worst, std::abs(food.temperature(enthalpy, dryness) - kZero - celsius));
        REQUIRE(food.boil_off(enthalpy, dryness).dryness == dryness);
      }
      CHECK(worst < 1e-9);
    }
  }
}

TEST_CASE("boiling off leaves the temperature as it was, and the boiling point there") {
  for (const Substance& food : {batter(), broth()}) {
    const double start = food.enthalpy(food.boiling_point(0.0), 0.0);
    for (double more = 0.02; more < 1.0; more += 0.02) {
      const double enthalpy = start + more * food.water() * 2.2e6;
      const double temperature = food.temperature(enthalpy, 0.0);
      const Substance::Left left = food.boil_off(enthalpy, 0.0);
      CAPTURE(more);
      CHECK(left.dryness > 0.0);
      CHECK(left.dryness <= 1.0);
      CHECK(std::abs(food.temperature(left.enthalpy, left.dryness) - temperature) < 1e-6);
      CHECK(std::abs(food.boiling_point(left.dryness) - temperature) < 1e-6);
    }
  }
}

}  // namespace tinwright
