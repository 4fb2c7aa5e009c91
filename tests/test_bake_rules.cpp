// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bake time against the rules of thumb: when they hold, and when they mislead. The table with more pans is the
// program bench/compare_rules.cpp.
#include <cmath>

#include <doctest/doctest.h>

#include "tests/bake_cases.h"

namespace tinwright {
namespace {

using bake_cases::answer;
using bake_cases::mixture;
using bake_cases::question;
using bake_cases::rectangle;
using bake_cases::round;
using bake_cases::stage;

/// p in time ~ size^p.
double exponent(double time, double other_time, double size, double other_size) {
  return std::log(other_time / time) / std::log(other_size / size);
}

/// Pure conduction with one coefficient [W/m²K] at the top and base, `wall` at the side; to where half the difference
/// of temperature is gone from the middle of the recipe's food. The answer's time over the recipe's.
double conduction_factor(const FilledPan& recipe, const FilledPan& mine, double coefficient, double wall) {
  const Substance food = heat_cases::raw(0.4, 1000, 3000);
  Stage oven;
  oven.air = 453.15;
  oven.duration = 1e5;
  oven.around = surroundings_of({coefficient, wall, coefficient});
  const HeatProblem problem{heat_cases::grid_of(recipe), {food, food}};
  const auto half = bake(problem, {.start = 293.15, .stages = {oven}, .until_coldest = 373.15});
  REQUIRE(static_cast<bool>(half));
  oven.duration = half->time;
  return answer(question(recipe, mine, {oven}, food, food)).time / half->time;
}

}  // namespace

TEST_CASE("with a surface as hot as the oven, a pan of the same shape takes the square of its size") {
  // Exact: conduction with a given surface temperature knows only time * diffusivity / size². 5e4 W/m²K leaves 1/Bi of
  // 4e-4 at most, which moves the exponent by about as much.
  const double factor = conduction_factor(round(0.10, 0.04), round(0.15, 0.06), 5e4, 5e4);
  CHECK(exponent(1.0, factor, 0.04, 0.06) == doctest::Approx(2.0).epsilon(0.002));
  const double flat = conduction_factor(round(0.20, 0.03), round(0.20, 0.045), 5e4, 0.0);
  CHECK(exponent(1.0, flat, 0.03, 0.045) == doctest::Approx(2.0).epsilon(0.002));
}

TEST_CASE("with next to no exchange, time goes with depth, not with its square") {
  // Exact in the limit: what is warm all through takes heat in proportion to its volume.
  const double factor = conduction_factor(round(0.20, 0.003), round(0.20, 0.0045), 1.0, 0.0);
  CHECK(exponent(1.0, factor, 0.003, 0.0045) == doctest::Approx(1.0).epsilon(0.01));
}

TEST_CASE("in an oven the exponent of time against depth lies between, more so where less heat gets in") {
  const Substance batter = mixture("layer-cake");
  const auto exponent_in = [&](Place place, Material material) {
    const FilledPan recipe = round(0.24, 0.03);
    Stage oven = stage(175, 120, place, material);
    const HeatProblem problem{heat_cases::grid_of(recipe), {batter, batter}};
    const auto done = bake(problem, {.start = 293.15, .stages = {oven}, .until_coldest = 363.15});
    REQUIRE(static_cast<bool>(done));
    oven.duration = done->time;
    const BakeTime found = answer(question(recipe, round(0.24, 0.045), {oven}, batter, batter));
    return exponent(done->time, found.time, 0.03, 0.045);
  };
  const double bright = exponent_in(Place::kOven, Material::kTinnedSteel);
  const double dark = exponent_in(Place::kOven, Material::kDarkSteel);
  const double fan = exponent_in(Place::kFanOven, Material::kDarkSteel);
  for (const double each : {bright, dark, fan}) {
    CHECK(each > 1.0);
    CHECK(each < 2.0);
  }
  CHECK(bright < fan);
  CHECK(dark < fan);
}

TEST_CASE("a wide shallow pan's width hardly matters, a loaf tin's does") {
  const Substance batter = mixture("pound-cake");
  const auto longer = [&](const FilledPan& recipe, const FilledPan& mine, double minutes) {
    return answer(question(recipe, mine, {stage(170, minutes)}, batter, batter)).time / (60.0 * minutes) - 1.0;
  };
  // A third wider each, as deep as before; the rule that goes by volume or area says 78 % and 33 %.
  const double sheet = longer(round(0.24, 0.02), round(0.32, 0.02), 18);
  const double loaf = longer(rectangle(0.24, 0.09, 0.06), rectangle(0.24, 0.12, 0.06), 50);
  CHECK(sheet > -0.001);
  CHECK(sheet < 0.02);
  CHECK(loaf > 0.10);
  CHECK(loaf < 0.33);
}

TEST_CASE("the same batter in a wider tin is done sooner, though by volume or area it should not be") {
  const Substance batter = mixture("layer-cake");
  const double depth = 0.045 * (0.20 * 0.20) / (0.23 * 0.23);
  const BakeTime found = answer(question(round(0.20, 0.045), round(0.23, depth), {stage(175, 40)}, batter, batter));
  const double by_square = 40.0 * 60.0 * (depth / 0.045) * (depth / 0.045);
  CHECK(found.band.late < 40.0 * 60.0);
  CHECK(found.band.early > by_square);
}

}  // namespace tinwright
