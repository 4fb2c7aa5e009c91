// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The solver's wet surface: heated by moving air only and insulated below, food has to come to the thermodynamic
// wet-bulb temperature of the air, which psychrometric tables print.
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

constexpr double kConvection = 8.0;  // [W/(m² K)]; which does not matter once it has settled

/// 94 % water and no sugar: its activity is 0.999, as near water as a food gets.
HeatProblem wet_slab() {
  const auto food = make_substance(foods::made({.water = 0.94, .protein = 0.03, .carbohydrate = 0.03, .sugar = 0.0}));
  REQUIRE(static_cast<bool>(food));
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.01, 0.0, 0.0});
  return {heat_cases::grid_of(heat_cases::bare(pan, 0.004), {.across = 1, .across_box = 1, .up = 6}), {*food, *food}};
}

/// After long enough to settle, and before the slab has lost a quarter of its water.
BakeAnswer settled(double dry_bulb, double humidity, double start) {
  Surroundings around;
  around.top = {.coefficient = kConvection, .drying = kConvection};
  around.humidity = humidity;
  Stage stage{kZero + dry_bulb, dry_bulb < 100.0 ? 5400.0 : 1500.0};
  stage.around = around;
  const auto answer = bake(wet_slab(), {.start = kZero + start, .stages = {stage}});
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

/// [kg/kg] of air at `dry_bulb` that saturates adiabatically to `wet_bulb` [°C], where saturated air holds `saturated`:
/// ASHRAE Handbook - Fundamentals 2017, Psychrometrics, eq. (33).
double humidity_by_wet_bulb(double dry_bulb, double wet_bulb, double saturated) {
  return ((2501.0 - 2.326 * wet_bulb) * saturated - 1.006 * (dry_bulb - wet_bulb)) /
         (2501.0 + 1.86 * dry_bulb - 4.186 * wet_bulb);
}

struct Row {
  double dry_bulb, humidity, wet_bulb;  // [°C], [kg/kg], [°C]
};

void check_settles(const Row& row) {
  CAPTURE(row.dry_bulb);
  CAPTURE(row.humidity);
  CAPTURE(row.wet_bulb);
  for (const double beside : {-4.0, 4.0}) {
    const BakeAnswer answer = settled(row.dry_bulb, row.humidity, row.wet_bulb + beside);
    CHECK(std::abs(answer.mean - kZero - row.wet_bulb) < 0.25);
    CHECK(std::abs(answer.hottest - answer.coldest) < 0.1);
    CHECK(answer.water_lost > 0.0);
  }
}

}  // namespace

TEST_CASE("a wet surface settles at the published wet-bulb temperature of its air within 0.25 °C") {
  // ASHRAE RP-1485 (Herrmann, Kretzschmar & Gatley 2009), tables of moist air at 101.325 kPa, seen as quoted in
  // CoolProp's HumidAirProp.cpp.
  for (const Row& row : {Row{200, 0.0, 45.07}, Row{200, 0.5, 81.12}, Row{200, 1.0, 88.15}}) check_settles(row);
  // ASHRAE Handbook - Fundamentals 2017, Psychrometrics, example 1: 40 °C dry bulb, 20 °C wet bulb, 0.0065 kg/kg; seen
  // as quoted in the tests of PsychroLib.
  check_settles({40, 0.0065, 20.0});
}

TEST_CASE("a wet surface settles at the wet bulb of ASHRAE's adiabatic saturation within 0.25 °C") {
  // Computed: eq. (33) with the saturated ratios of ASHRAE's table 2 (5, 25, 50 and 85 °C).
  struct Saturated {
    double wet_bulb, ratio;
    std::vector<double> dry_bulbs;
  };
  for (const Saturated& row : {Saturated{5, 0.005425, {10, 15}}, Saturated{25, 0.020173, {27, 30, 40, 60}},
                               Saturated{50, 0.086863, {60, 100, 180}}, Saturated{85, 0.838105, {100, 180}}}) {
    for (const double dry_bulb : row.dry_bulbs) {
      check_settles({dry_bulb, humidity_by_wet_bulb(dry_bulb, row.wet_bulb, row.ratio), row.wet_bulb});
    }
  }
}

TEST_CASE("a surface at its wet bulb loses the water that the air's heat evaporates, within 1 %") {
  // ASHRAE RP-1485, 200 °C and 0.5 kg/kg, as above. Some heat goes to warm the slab the last tenth of a degree.
  const double wet_bulb = 81.12;
  const double seconds = 1500.0;
  const double area = 0.25 * 3.14159265358979 * 0.2 * 0.2;
  const double evaporated =
      kConvection * area * (200.0 - wet_bulb) * seconds / latent_heat_of_evaporation(kZero + wet_bulb);
  CHECK(shapes::relative_error(settled(200, 0.5, wet_bulb).water_lost, evaporated) < 0.01);
}

TEST_CASE("in saturated air a wet surface stays at the air's temperature") {
  // ASHRAE Handbook - Fundamentals 2017, table 2: 0.020173 kg/kg at 25 °C.
  CHECK(std::abs(settled(25.0, 0.020173, 21.0).mean - kZero - 25.0) < 0.1);
}

TEST_CASE("radiation lifts a wet surface above the wet bulb, and the wet surface still stays far below the oven") {
  Surroundings around;
  around.top = {.coefficient = kConvection, .emissivity = 0.9, .drying = kConvection};
  around.humidity = 0.5;
  Stage stage{kZero + 200, 1800.0};
  stage.around = around;
  const auto answer = bake(wet_slab(), {.start = kZero + 80, .stages = {stage}});
  REQUIRE(static_cast<bool>(answer));
  CHECK(answer->mean - kZero > 81.12 + 2.0);
  CHECK(answer->mean - kZero < 100.0);
}

}  // namespace tinwright
