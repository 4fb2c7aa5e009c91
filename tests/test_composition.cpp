// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a food may be made of, and where and how far it freezes.
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/composition.h"
#include "tests/foods.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using foods::kZero;
using foods::made;
using shapes::relative_error;

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

Composition syrup(double sugar) {
  return made({.water = 1.0 - sugar, .carbohydrate = sugar, .sugar = sugar});
}

Composition custard() {
  return made({.water = 0.75, .protein = 0.05, .fat = 0.05, .carbohydrate = 0.14, .ash = 0.01, .sugar = 0.14});
}

struct Refusal {
  std::string why;
  Composition asked;
  ProblemCode code;
  std::string place;
};

}  // namespace

TEST_CASE("impossible compositions are refused with code, place and advice") {
  const std::vector<Refusal> refusals{
      {"nothing at all", {}, ProblemCode::kContradiction, ""},
      {"a part forgotten", {.water = 0.3, .fat = 0.57}, ProblemCode::kContradiction, ""},
      {"too much of it", {.water = 0.6, .fat = 0.43}, ProblemCode::kContradiction, ""},
      {"per cent", {.water = 30.0, .fat = 70.0}, ProblemCode::kOutOfRange, "water"},
      {"NaN protein", {.water = 1.0, .protein = kNan}, ProblemCode::kNotANumber, "protein"},
      {"infinite fat", {.water = 1.0, .fat = kInfinity}, ProblemCode::kNotANumber, "fat"},
      {"negative carbohydrate", {.water = 1.0, .carbohydrate = -0.01}, ProblemCode::kOutOfRange, "carbohydrate"},
      {"negative fibre", {.water = 1.0, .fibre = -1e-300}, ProblemCode::kOutOfRange, "fibre"},
      {"ash of the size of a typing slip", {.water = 1.0, .ash = 1e300}, ProblemCode::kOutOfRange, "ash"},
      {"nearly all air", {.water = 1.0, .air = 0.96}, ProblemCode::kOutOfRange, "air"},
      {"negative air", {.water = 1.0, .air = -0.1}, ProblemCode::kOutOfRange, "air"},
      {"NaN air", {.water = 1.0, .air = kNan}, ProblemCode::kNotANumber, "air"},
      {"sugar without carbohydrate", {.water = 1.0, .sugar = 0.1}, ProblemCode::kContradiction, "sugar"},
      {"NaN sugar", {.water = 1.0, .sugar = kNan}, ProblemCode::kNotANumber, "sugar"},
      {"freezing point in °C", {.water = 1.0, .freezing_point = -2.0}, ProblemCode::kOutOfRange, "freezing_point"},
      {"freezes above 0 °C", {.water = 1.0, .freezing_point = 274.0}, ProblemCode::kOutOfRange, "freezing_point"},
      {"NaN freezing point", {.water = 1.0, .freezing_point = kNan}, ProblemCode::kNotANumber, "freezing_point"},
  };
  for (const Refusal& refusal : refusals) {
    CAPTURE(refusal.why);
    const auto answer = make_composition(refusal.asked);
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK(answer.problem().code == refusal.code);
    CHECK(answer.problem().place == refusal.place);
    CHECK(answer.problem().message.size() > 15);
  }
}

TEST_CASE("a sum that is off is told as a number, with what it has to be") {
  const auto answer = make_composition({.water = 0.3, .fat = 0.57});
  REQUIRE_FALSE(static_cast<bool>(answer));
  CHECK(answer.problem().message.find("0.87") != std::string::npos);
  CHECK(answer.problem().message.find("0.98 to 1.02") != std::string::npos);
}

TEST_CASE("shares that miss 1 by label rounding are scaled, sugar with them, air not") {
  for (const double sum : {0.98, 0.995, 1.0, 1.02}) {
    CAPTURE(sum);
    const Composition food =
        made({.water = sum * 0.5, .fat = sum * 0.2, .carbohydrate = sum * 0.3, .air = 0.4, .sugar = sum * 0.25});
    CHECK(food.water == doctest::Approx(0.5).epsilon(1e-12));
    CHECK(food.water + food.fat + food.carbohydrate == doctest::Approx(1.0).epsilon(1e-15));
    CHECK(*food.sugar == doctest::Approx(0.25).epsilon(1e-12));
    CHECK(food.air == 0.4);
  }
}

TEST_CASE("a food without water, and one of water only, are foods") {
  CHECK(made({.fat = 1.0}).fat == 1.0);
  CHECK(made({.water = 1.0}).water == 1.0);
}

TEST_CASE("sugar syrups freeze where measured") {
  // 12 %: Clarke, The Science of Ice Cream, fig. 2.8 (seen). The rest: handbook values of sucrose, from memory.
  struct Row {
    double sugar, celsius, tolerance;
  };
  for (const Row& row : {Row{0.12, -0.77, 0.02}, Row{0.10, -0.63, 0.02}, Row{0.20, -1.47, 0.05}, Row{0.30, -2.64, 0.1},
                         Row{0.40, -4.45, 0.2}, Row{0.624, -13.95, 1.2}}) {
    CAPTURE(row.sugar);
    CHECK(std::abs(freezing_point(syrup(row.sugar)) - kZero - row.celsius) < row.tolerance);
  }
}

TEST_CASE("weak syrups freeze by the cryoscopic constant of water, 1.86 K per mol/kg") {
  const double molality = 0.01;  // the constant: any chemistry handbook
  const double sugar = molality * 0.3423;
  const double drop = kZero - freezing_point(syrup(sugar / (1.0 + sugar)));
  CHECK(relative_error(drop, 1.86 * molality) < 3e-3);
}

TEST_CASE("salts lower the freezing point as fitted to meats, less than as much table salt would") {
  // Pham (1996): 46.4 K per kg of ash to a kg of water (seen, quoted in a text on freezing meat). Table salt, two ions:
  // 2 x 1.86 / 0.05844 = 63.7 K.
  const double drop = kZero - freezing_point(made({.water = 0.99, .ash = 0.01}));
  CHECK(relative_error(drop, 46.4 * 0.01 / 0.99) < 1e-9);
  CHECK(drop < 63.7 * 0.01 / 0.99);
}

TEST_CASE("an ice cream mix begins to freeze near -2.5 °C") {
  // 12 % fat, 11 % non-fat milk solids, 15 % sugar, 0.3 % stabiliser, 61.7 % water: about -2.5 °C (seen, in a paper
  // on hydrolysed lactose). Milk solids taken as 36 % protein, 54.5 % lactose (seen), 8 % ash (from memory).
  const Composition mix =
      made({.water = 0.617, .protein = 0.04, .fat = 0.12, .carbohydrate = 0.213, .ash = 0.009, .sugar = 0.21});
  CHECK(std::abs(freezing_point(mix) - kZero + 2.5) < 0.4);
}

TEST_CASE("a freezing point that is given is used, but never 0 °C itself") {
  Composition food = custard();
  food.freezing_point = kZero - 2.2;
  CHECK(freezing_point(food) == kZero - 2.2);
  food.freezing_point = kZero;
  CHECK(freezing_point(food) == kHighestFreezingPoint);
}

TEST_CASE("freezing points stay within their limits whatever the food") {
  CHECK(freezing_point(made({.water = 1.0})) == kHighestFreezingPoint);
  CHECK(freezing_point(made({.water = 0.01, .carbohydrate = 0.94, .ash = 0.05})) == kLowestFreezingPoint);
  CHECK(freezing_point(made({.water = 0.1, .protein = 0.9})) == kLowestFreezingPoint);
  CHECK(freezing_point(made({.fat = 1.0})) == kLowestFreezingPoint);
}

TEST_CASE("more sugar freezes later, and half the carbohydrate counts as sugar when nothing is said") {
  double warmer = kZero;
  for (const double sugar : {0.0, 0.05, 0.1, 0.2, 0.3}) {
    const Composition food = made({.water = 0.6, .carbohydrate = 0.4, .sugar = sugar});
    CHECK(freezing_point(food) < warmer);
    warmer = freezing_point(food);
  }
  CHECK(freezing_point(made({.water = 0.6, .carbohydrate = 0.4})) ==
        freezing_point(made({.water = 0.6, .carbohydrate = 0.4, .sugar = 0.2})));
}

TEST_CASE("there is no ice above the freezing point, and more the colder it gets, up to the freezable water") {
  const Composition food = custard();
  const double t_f = freezing_point(food);
  CHECK(ice_fraction(food, t_f) == 0.0);
  CHECK(ice_fraction(food, t_f + 30.0) == 0.0);
  double less = 0.0;
  for (double below = 0.1; below < 60.0; below += 0.1) {
    const double ice = ice_fraction(food, t_f - below);
    CHECK(ice > less);
    less = ice;
  }
  CHECK(less < freezable_water(food));
  CHECK(less > 0.95 * freezable_water(food));
  CHECK(relative_error(freezable_water(food), 0.75 - 0.4 * 0.05) < 1e-12);
}

TEST_CASE("ice in a frozen carcass is near the handbook's worked example") {
  // ASHRAE Handbook - Refrigeration (2006) ch. 9 example 1, from memory: beef, 0.58 water, t_f -1.7 °C, at -20 °C 52 %
  // of the mass is ice by Tchigeov's formula. The formula used here leaves bound water liquid, so it says less.
  const Composition beef =
      made({.water = 0.5821, .protein = 0.1748, .fat = 0.2255, .ash = 0.0082, .freezing_point = kZero - 1.7});
  const double ice = ice_fraction(beef, kZero - 20.0);
  CHECK(ice < 0.52);
  CHECK(ice > 0.52 * 0.88);
}

}  // namespace tinwright
