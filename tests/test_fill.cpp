// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Filling, rising and overflowing.
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "geometry/fill.h"
#include "geometry/lining.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;
using std::numbers::pi;

const Pan& tin() {
  static const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.0});
  return pan;
}

FillAnswer fill(const Pan& pan, const FillQuestion& question) {
  const auto answer = fill_cavity(pan, question);
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

}  // namespace

TEST_CASE("an amount in an upright tin stands at volume over area") {
  const FillAnswer answer = fill(tin(), {.amount = 1e-3});
  CHECK(relative_error(answer.height, 1e-3 / (pi * 0.01)) < 1e-9);
  CHECK(relative_error(answer.below_rim, 0.05 - answer.height) < 1e-9);
  CHECK(relative_error(answer.level, answer.height / 0.05) < 1e-9);
  CHECK(answer.overflow == 0.0);
}

TEST_CASE("three quarters of a lined shell: height, amount, and what is left of a bowlful") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.03, 0.01, 0.0});
  const auto cavity = line_pan(pan, {0.005, 0.004, 0.028});
  REQUIRE(static_cast<bool>(cavity));
  const FillAnswer level = fill(*cavity, {.level = 0.75});
  CHECK(level.height == doctest::Approx(0.75 * 0.023));
  CHECK(level.below_rim == doctest::Approx(0.25 * 0.023));
  const FillAnswer back = fill(*cavity, {.amount = level.volume});
  CHECK(relative_error(back.height, level.height) < 1e-9);
  const FillAnswer both = fill(*cavity, {.amount = level.volume + 200e-6, .level = 0.75});
  CHECK(relative_error(both.left, 200e-6) < 1e-9);
  CHECK(both.height == doctest::Approx(level.height));
}

TEST_CASE("an amount short of the wanted level fills as far as it goes") {
  const FillAnswer answer = fill(tin(), {.amount = 0.5e-3, .level = 0.75});
  CHECK(relative_error(answer.height, 0.5e-3 / (pi * 0.01)) < 1e-9);
  CHECK(relative_error(answer.missing, 0.75 * brim_volume(tin()) - 0.5e-3) < 1e-9);
}

TEST_CASE("a rise by a fifth in an upright tin stands a fifth higher") {
  const FillAnswer answer = fill(tin(), {.amount = 1e-3, .rise = 1.2});
  CHECK(relative_error(answer.risen_height, 1.2 * answer.height) < 1e-9);
  CHECK(answer.overflow == 0.0);
}

TEST_CASE("what does not stay inside after rising is the overflow") {
  const double holds = brim_volume(tin());
  const FillAnswer risen = fill(tin(), {.amount = 0.9 * holds, .rise = 1.5});
  CHECK(relative_error(risen.overflow, 0.35 * holds) < 1e-9);
  CHECK(risen.risen_below_rim == 0.0);
  CHECK(relative_error(risen.height, 0.9 * 0.05) < 1e-9);
  const FillAnswer poured = fill(tin(), {.amount = 1.1 * holds});
  CHECK(relative_error(poured.overflow, 0.1 * holds) < 1e-9);
  CHECK(poured.below_rim == 0.0);
}

TEST_CASE("questions without an answer are refused with their place") {
  const auto refused = [](const FillQuestion& question) {
    const auto answer = fill_cavity(tin(), question);
    REQUIRE_FALSE(static_cast<bool>(answer));
    return answer.problem().place;
  };
  CHECK(refused({}) == "volume");
  CHECK(refused({.amount = 0.0}) == "volume");
  CHECK(refused({.amount = -1e-3}) == "volume");
  CHECK(refused({.amount = std::nan("")}) == "volume");
  CHECK(refused({.level = 0.0}) == "level");
  CHECK(refused({.level = 1.01}) == "level");
  CHECK(refused({.level = std::nan("")}) == "level");
  CHECK(refused({.amount = 1e-3, .rise = 0.9}) == "rise");
  CHECK(refused({.amount = 1e-3, .rise = std::nan("")}) == "rise");
}

}  // namespace tinwright
