// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The tables of enthalpy and conductivity that heat solvers work on.
#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/food_components.h"
#include "geometry/heat/substance.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;

constexpr double kZero = 273.15;
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr Properties kPlain{.conductivity = 0.35, .density = 1000.0, .heat_capacity = 3000.0};

constexpr Melting kFat{
    .solid = {0.30, 920.0, 2000.0}, .liquid = {0.15, 920.0, 2400.0}, .temperature = kZero + 30.0, .latent_heat = 130e3};

template <class Input>
ThermalTable table(const Input& input) {
  const auto made = make_thermal_table(input);
  REQUIRE(static_cast<bool>(made));
  return *made;
}

std::vector<Composition> foods() {
  std::vector<Composition> list{
      {.water = 1.0},
      {.fat = 1.0},
      {.carbohydrate = 1.0},
      {.water = 0.3, .protein = 0.05, .fat = 0.2, .carbohydrate = 0.44, .ash = 0.01, .air = 0.1},
      {.water = 0.75, .protein = 0.05, .fat = 0.05, .carbohydrate = 0.14, .ash = 0.01, .sugar = 0.14},
      {.water = 0.15, .protein = 0.06, .fat = 0.3, .carbohydrate = 0.48, .ash = 0.01, .air = 0.95},
      {.water = 0.9, .carbohydrate = 0.1, .freezing_point = kZero - 39.0},
  };
  return list;
}

}  // namespace

TEST_CASE("temperature undoes enthalpy inside the range and beyond it") {
  std::vector<ThermalTable> tables{table(kPlain)};
  for (const Composition& food : foods()) tables.push_back(table(food));
  for (const ThermalTable& substance : tables) {
    double worst = 0.0;
    for (double temperature = 150.0; temperature < 700.0; temperature += 0.0371) {
      worst = std::max(worst, std::abs(substance.temperature(substance.enthalpy(temperature)) - temperature));
    }
    CHECK(worst < 1e-9);
    const double low = substance.enthalpy(180.0);
    const double range = substance.enthalpy(650.0) - low;
    double worst_enthalpy = 0.0;
    for (int i = 0; i <= 10000; ++i) {
      const double enthalpy = low + range * i / 10000.0;
      worst_enthalpy =
          std::max(worst_enthalpy, std::abs(substance.enthalpy(substance.temperature(enthalpy)) - enthalpy));
    }
    CHECK(worst_enthalpy < 1e-11 * range);
  }
}

TEST_CASE("finding a temperature takes a few comparisons at most") {
  CHECK(table(kPlain).longest_search() == 1);
  for (const Composition& food : foods()) CHECK(table(food).longest_search() <= 4);
}

TEST_CASE("a food's table holds its enthalpy per volume and conductivity") {
  for (const Composition& asked : foods()) {
    const Composition food = *make_composition(asked);
    const ThermalTable substance = table(food);
    CHECK(substance.density() == food_properties(food, kDensityTemperature).density);
    CHECK(std::abs(substance.enthalpy(kZero - 40.0)) < 1e-3);
    for (const double celsius : {-59.75, -18.0, -5.0, 0.0, 4.25, 60.0, 100.0, 250.0}) {  // points of the grid
      CAPTURE(celsius);
      const double temperature = kZero + celsius;
      CHECK(std::abs(substance.enthalpy(temperature) - substance.density() * food_enthalpy(food, temperature)) < 1.0);
      CHECK(relative_error(substance.conductivity(temperature), food_properties(food, temperature).conductivity) <
            1e-9);
    }
    for (const double celsius : {4.37, 61.13, 99.9}) {  // between them
      CAPTURE(celsius);
      const double temperature = kZero + celsius;
      CHECK(relative_error(substance.enthalpy(temperature), substance.density() * food_enthalpy(food, temperature)) <
            1e-6);
      CHECK(relative_error(substance.conductivity(temperature), food_properties(food, temperature).conductivity) <
            1e-5);
    }
  }
}

TEST_CASE("enthalpy of a food rises at least as fast as the least heat capacity") {
  for (const Composition& food : foods()) {
    const ThermalTable substance = table(food);
    double least = kInfinity;
    for (double temperature = 200.0; temperature < 600.0; temperature += 0.05) {
      least = std::min(least, substance.capacity(temperature));
      CHECK(substance.conductivity(temperature) > 0.0);
    }
    CHECK(least > 0.0);
    CHECK(least == substance.least_capacity());
  }
}

TEST_CASE("freezing a kilogram of water in the table takes its latent heat") {
  const ThermalTable water = table(Composition{.water = 1.0});
  const double ice_cooling = 2062.3 * 40.0 - 6.0769 * 40.0 * 40.0 / 2.0;
  const double heat = (water.enthalpy(kZero) - water.enthalpy(kZero - 40.0)) / water.density();
  CHECK(relative_error(heat, kLatentHeatOfIce + ice_cooling) < 2e-4);
}

TEST_CASE("freezing shows as a large heat capacity below the freezing point and as better conduction") {
  const ThermalTable custard = table(foods()[4]);
  CHECK(custard.capacity(kZero - 3.0) > 5.0 * custard.capacity(kZero + 5.0));
  CHECK(custard.conductivity(kZero - 30.0) > 2.0 * custard.conductivity(kZero + 5.0));
}

TEST_CASE("constants give one straight line of enthalpy and one conductivity") {
  const ThermalTable substance = table(kPlain);
  CHECK(substance.density() == 1000.0);
  CHECK(relative_error(substance.least_capacity(), 3e6) < 1e-15);
  for (const double temperature : {1.0, 100.0, 213.15, 233.15, 293.15, 450.0, 533.15, 2000.0}) {
    CAPTURE(temperature);
    CHECK(std::abs(substance.enthalpy(temperature) - 3e6 * (temperature - kEnthalpyZero)) < 1e-5);
    CHECK(substance.conductivity(temperature) == 0.35);
    CHECK(substance.capacity(temperature) == substance.least_capacity());
  }
}

TEST_CASE("beyond the range enthalpy goes on along its last line and conductivity keeps its last value") {
  for (const Composition& food : foods()) {
    const ThermalTable substance = table(food);
    const double end = substance.capacity(kTableHottest - 0.1);
    CHECK(relative_error(substance.enthalpy(kTableHottest + 300.0) - substance.enthalpy(kTableHottest), 300.0 * end) <
          1e-9);
    CHECK(substance.conductivity(kTableHottest + 300.0) == substance.conductivity(kTableHottest));
    CHECK(substance.conductivity(10.0) == substance.conductivity(kTableCoolest));
    CHECK(substance.enthalpy(10.0) < substance.enthalpy(kTableCoolest));
  }
}

TEST_CASE("constants that no substance has are refused with code, place and advice") {
  struct Refusal {
    std::string why;
    Properties asked;
    ProblemCode code;
    std::string place;
  };
  const std::vector<Refusal> refusals{
      {"no conductivity", {0.0, 1000.0, 3000.0}, ProblemCode::kOutOfRange, "conductivity"},
      {"negative conductivity", {-0.35, 1000.0, 3000.0}, ProblemCode::kOutOfRange, "conductivity"},
      {"NaN conductivity", {kNan, 1000.0, 3000.0}, ProblemCode::kNotANumber, "conductivity"},
      {"infinite density", {0.35, kInfinity, 3000.0}, ProblemCode::kNotANumber, "density"},
      {"density in g/ml", {0.35, 0.9, 3000.0}, ProblemCode::kOutOfRange, "density"},
      {"heat capacity in kJ/kgK", {0.35, 1000.0, 3.0}, ProblemCode::kOutOfRange, "heat_capacity"},
      {"NaN heat capacity", {0.35, 1000.0, kNan}, ProblemCode::kNotANumber, "heat_capacity"},
  };
  for (const Refusal& refusal : refusals) {
    CAPTURE(refusal.why);
    const auto answer = make_thermal_table(refusal.asked);
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK(answer.problem().code == refusal.code);
    CHECK(answer.problem().place == refusal.place);
    CHECK(answer.problem().message.find("the ") == 0);
  }
}

TEST_CASE("a melting substance takes up its latent heat over its range, and its phases' heat on either side") {
  for (const double range : {0.02, 0.2, 1.0, 20.0}) {
    CAPTURE(range);
    Melting fat = kFat;
    fat.range = range;
    const ThermalTable substance = table(fat);
    const double low = fat.temperature - 0.5 * range, high = fat.temperature + 0.5 * range;
    const double sensible = 0.5 * range * (2000.0 + 2400.0);
    const auto heat = [&](double from, double to) {
      return (substance.enthalpy(to) - substance.enthalpy(from)) / substance.density();
    };
    CHECK(substance.density() == 920.0);
    CHECK(std::abs(substance.enthalpy(kEnthalpyZero)) < 1.0);
    // A step of the table around each corner: a quarter of the range.
    CHECK(relative_error(heat(low - 0.25 * range, high + 0.25 * range), 1.5 * sensible + 130e3) < 1e-9);
    CHECK(relative_error(heat(260.0, 270.0), 10.0 * 2000.0) < 1e-9);
    CHECK(relative_error(heat(350.0, 400.0), 50.0 * 2400.0) < 1e-9);
    CHECK(substance.conductivity(low - 0.26 * range) == doctest::Approx(0.30).epsilon(1e-12));
    CHECK(substance.conductivity(high + 0.26 * range) == doctest::Approx(0.15).epsilon(1e-12));
    CHECK(substance.conductivity(fat.temperature) == doctest::Approx(0.225).epsilon(0.02));
    CHECK(relative_error(substance.least_capacity(), 920.0 * 2000.0) < 1e-6);
    for (double temperature = 200.0; temperature < 560.0; temperature += 0.137) {
      CHECK(std::abs(substance.temperature(substance.enthalpy(temperature)) - temperature) < 1e-9);
    }
  }
}

TEST_CASE("melting that no substance does is refused with code, place and advice") {
  struct Refusal {
    std::string why;
    void (*spoil)(Melting&);
    ProblemCode code;
    std::string place;
  };
  const std::vector<Refusal> refusals{
      {"no conductivity", [](Melting& m) { m.solid.conductivity = 0.0; }, ProblemCode::kOutOfRange,
       "solid.conductivity"},
      {"heat capacity in kJ/kgK", [](Melting& m) { m.liquid.heat_capacity = 2.4; }, ProblemCode::kOutOfRange,
       "liquid.heat_capacity"},
      {"two densities", [](Melting& m) { m.liquid.density = 900.0; }, ProblemCode::kContradiction, "liquid.density"},
      {"NaN density", [](Melting& m) { m.solid.density = kNan; }, ProblemCode::kNotANumber, "solid.density"},
      {"melts at 30 °C given as 30", [](Melting& m) { m.temperature = 30.0; }, ProblemCode::kOutOfRange, "temperature"},
      {"melts at infinity", [](Melting& m) { m.temperature = kInfinity; }, ProblemCode::kNotANumber, "temperature"},
      {"latent heat in kJ/kg", [](Melting& m) { m.latent_heat = 130.0; }, ProblemCode::kOutOfRange, "latent_heat"},
      {"NaN latent heat", [](Melting& m) { m.latent_heat = kNan; }, ProblemCode::kNotANumber, "latent_heat"},
      {"melts at a point", [](Melting& m) { m.range = 0.0; }, ProblemCode::kOutOfRange, "range"},
      {"melts all the time", [](Melting& m) { m.range = 300.0; }, ProblemCode::kOutOfRange, "range"},
  };
  for (const Refusal& refusal : refusals) {
    CAPTURE(refusal.why);
    Melting asked = kFat;
    refusal.spoil(asked);
    const auto answer = make_thermal_table(asked);
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK(answer.problem().code == refusal.code);
    CHECK(answer.problem().place == refusal.place);
    CHECK(answer.problem().message.size() > 15);
  }
}

TEST_CASE("a composition that is refused makes no table") {
  const auto answer = make_thermal_table(Composition{.water = 0.5});
  REQUIRE_FALSE(static_cast<bool>(answer));
  CHECK(answer.problem().code == ProblemCode::kContradiction);
}

}  // namespace tinwright
