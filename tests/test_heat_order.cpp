// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the heat solver must do whatever the case: converge with shorter steps, stay between start and air, be faster
// in a hotter oven, and be symmetric where the case is.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/bake.h"
#include "tests/foods.h"
#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using foods::kZero;
using heat_cases::bare;
using heat_cases::grid_of;
using heat_cases::raw;

/// Numbers from 0 to 1 in an order of its own, the same everywhere.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  double operator()() {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<double>(state_ >> 11) * 0x1p-53;
  }
  double between(double low, double high) { return low + (high - low) * (*this)(); }
  int below(int count) { return std::min(static_cast<int>((*this)() * count), count - 1); }

 private:
  std::uint64_t state_;
};

ThermalTable table_of(const Composition& food) {
  const auto table = make_thermal_table(foods::made(food));
  REQUIRE(static_cast<bool>(table));
  return *table;
}

Composition any_food(Dice& dice) {
  const double water = dice.between(0.1, 0.85);
  return {.water = water, .protein = 0.05, .fat = 0.05, .carbohydrate = 0.9 - water, .air = dice.between(0.0, 0.7)};
}

Composition batter() {
  return {.water = 0.35, .protein = 0.06, .fat = 0.15, .carbohydrate = 0.43, .ash = 0.01, .air = 0.2, .sugar = 0.22};
}

HeatProblem round_cake(const Substance& food, int cells) {
  const Pan pan = shapes::pan(Round{0.16}, StraightWall{0.05, 0.0, 0.0});
  return {grid_of(bare(pan, 0.04), {.across = cells, .across_box = cells, .up = cells}), {food, food}};
}

/// After `until` seconds of `air`, in steps of `length` after a short start in small ones.
HeatState ramped(const HeatProblem& problem, const Surroundings& around, const Air& air, double until, double length) {
  const double start_up = 120.0;
  HeatState state = start_at(problem, kZero + 20);
  HeatStepper stepper(problem);
  double time = 0.0;
  while (time < start_up - 1e-9) time += stepper.step(state, around, air, time, std::min(0.5, start_up - time));
  while (time < until - 1e-9) time += stepper.step(state, around, air, time, std::min(length, until - time));
  return state;
}

HeatState held(const HeatProblem& problem, const Surroundings& around, double air, double seconds) {
  HeatState state = start_at(problem, kZero + 20);
  HeatStepper stepper(problem);
  const Air oven{air, air, seconds, 0.0};
  for (double time = 0.0; time < seconds - 1e-6;) time += stepper.step(state, around, oven, time, seconds - time);
  return state;
}

/// A still oven round a pan of glass.
Surroundings radiating() {
  Surroundings around;
  around.top = {.coefficient = 8.0, .emissivity = 0.9};
  around.wall = around.base = {.coefficient = 8.0, .emissivity = 0.9, .resistance = 0.0045};
  return around;
}

/// A round or rectangular pan, upright or slanted, of constants or of a food that freezes but does not dry.
HeatProblem any_problem(Dice& dice) {
  const bool is_box = dice() < 0.3;
  const double height = dice.between(0.01, 0.08);
  const double inset = dice() < 0.5 ? 0.0 : dice.between(0.0, 0.3) * height;
  const WallShape wall = StraightWall{height + 0.01, inset, 0.0};
  const double size = dice.between(0.1, 0.3);
  const double width = dice.between(0.5, 1.0) * size;
  const Pan pan = is_box ? shapes::pan(Rectangle{size, width, 0.0}, wall) : shapes::pan(Round{size}, wall);
  const GridFineness fineness{.across = 3 + dice.below(5), .across_box = 3 + dice.below(2), .up = 3 + dice.below(6)};
  const double conductivity = dice.between(0.05, 1.0);
  const double density = dice.between(200, 1200);
  const double heat_capacity = dice.between(1200, 4000);
  const Composition food = any_food(dice);
  const ThermalTable table = dice() < 0.5 ? raw(conductivity, density, heat_capacity) : table_of(food);
  return {grid_of(bare(pan, height), fineness), {table, table}};
}

Surroundings any_surroundings(Dice& dice) {
  Surroundings around;
  for (Surface* side : {&around.top, &around.wall, &around.base}) {
    side->coefficient = dice() < 0.2 ? 0.0 : std::pow(10.0, dice.between(0.3, 2.5));
    side->emissivity = dice() < 0.5 ? 0.0 : dice();
    side->resistance = dice() < 0.5 ? 0.0 : dice.between(0.0, 0.02);
  }
  return around;
}

double farthest(const std::vector<double>& a, const std::vector<double>& b) {
  double most = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) most = std::max(most, std::abs(a[i] - b[i]));
  return most;
}

}  // namespace

TEST_CASE("errors fall with the square of the step, in foods and in ramped air") {
  // The same grid and start-up throughout; the largest error of any cell against steps of half a second.
  struct Case {
    std::string name;
    Substance food;
    Surroundings around;
  };
  const Surroundings moved = surroundings_of({20.0, 15.0, 25.0});
  const Air air{kZero + 120, kZero + 200, 2400.0, 0.0};
  for (const Case& each : {Case{"constants", raw(0.4, 1000, 3000), moved}, Case{"batter", table_of(batter()), moved},
                           Case{"batter, radiation", table_of(batter()), radiating()}}) {
    CAPTURE(each.name);
    const HeatProblem problem = round_cake(each.food, 8);
    const std::vector<double> exact = temperature_field(problem, ramped(problem, each.around, air, 1080.0, 0.5));
    std::vector<double> errors;
    for (const double length : {40.0, 20.0, 10.0}) {
      errors.push_back(farthest(temperature_field(problem, ramped(problem, each.around, air, 1080.0, length)), exact));
    }
    CHECK(std::log2(errors[0] / errors[1]) > 1.7);
    CHECK(std::log2(errors[1] / errors[2]) > 1.7);
    CHECK(errors[0] < 0.15);
  }
}

TEST_CASE(
    "with drying and boiling, errors still fall with the step, and the longest steps of a first hour are good to 0.2 "
    "°C") {
  // Water that left or moved is settled at the end of a step, which is of first order.
  const auto moist = make_substance(foods::made(batter()));
  REQUIRE(static_cast<bool>(moist));
  const HeatProblem problem = round_cake(*moist, 8);
  Surroundings around = radiating();
  around.top.drying = around.top.coefficient;
  around.humidity = 0.03;
  const Air air{kZero + 120, kZero + 200, 2400.0, 0.0};
  const HeatState exact = ramped(problem, around, air, 2400.0, 0.5);
  const std::vector<double> exact_field = temperature_field(problem, exact);
  const FoodTemperatures found = observe(problem, exact_field);
  REQUIRE(exact.water_lost > 0.01);
  std::vector<double> errors;
  for (const double length : {40.0, 20.0, 10.0}) {
    const HeatState state = ramped(problem, around, air, 2400.0, length);
    const FoodTemperatures food = observe(problem, temperature_field(problem, state));
    errors.push_back(farthest(temperature_field(problem, state), exact_field));
    CHECK(std::abs(state.water_lost - exact.water_lost) < 0.005 * exact.water_lost);
    CHECK(std::abs(food.mean - found.mean) < 0.2);
    CHECK(std::abs(food.coldest - found.coldest) < 0.2);
  }
  CHECK(std::log2(errors[0] / errors[1]) > 0.9);
  CHECK(std::log2(errors[1] / errors[2]) > 0.9);
}

TEST_CASE("without evaporation no cell is ever colder or hotter than start and air, in 200 cases at random") {
  Dice dice(20261125);
  for (int n = 0; n < 200; ++n) {
    CAPTURE(n);
    const HeatProblem problem = any_problem(dice);
    const double start = kZero + dice.between(-20, 100);
    Air air{kZero + dice.between(-20, 240), kZero + dice.between(-20, 240), dice.between(600, 7200), 0.0};
    if (dice() < 0.3) air.lag = dice.between(300, 3000);
    if (dice() < 0.4) air.from = air.to;
    const Surroundings around = any_surroundings(dice);
    const double low = std::min({start, air.from, air.to});
    const double high = std::max({start, air.from, air.to});
    HeatState state = start_at(problem, start);
    HeatStepper stepper(problem);
    double beyond = -1.0;
    for (double time = 0.0; time < air.duration - 1e-6;) {
      time += stepper.step(state, around, air, time, air.duration - time);
      const auto [coldest, hottest] =
          std::minmax_element(stepper.temperatures(state).begin(), stepper.temperatures(state).end());
      beyond = std::max({beyond, low - *coldest, *hottest - high});
    }
    CHECK(beyond < 1e-5);
  }
}

TEST_CASE("a hotter oven is never slower, in 60 cases at random") {
  // Wet food only under what an oven does: seared at hundreds of W/m²K it dries to a crust that insulates, and the
  // middle may then wait longer.
  Dice dice(77);
  for (int n = 0; n < 60; ++n) {
    CAPTURE(n);
    HeatProblem problem = any_problem(dice);
    Surroundings around = any_surroundings(dice);
    around.top.coefficient = dice.between(5.0, 40.0);
    if (n % 2 == 0) {
      const auto moist = make_substance(foods::made(any_food(dice)));
      REQUIRE(static_cast<bool>(moist));
      problem.substances = {*moist, *moist};
      for (Surface* side : {&around.top, &around.wall, &around.base}) side->coefficient = dice.between(5.0, 25.0);
      around.top.drying = dice.between(0.0, 1.0) * around.top.coefficient;
      around.humidity = 0.02;
    }
    const double oven = kZero + dice.between(140, 220);
    const double warmer = dice.between(5.0, 30.0);
    const auto time = [&](double air) {
      Stage stage{air, 6.0 * 3600.0};
      stage.around = around;
      BakeQuestion question{.start = kZero + 5.0, .stages = {stage}};
      question.until_coldest = kZero + 80;
      const auto answer = bake(problem, question);
      REQUIRE(static_cast<bool>(answer));
      REQUIRE(answer->reached);
      return answer->time;
    };
    CHECK(time(oven + warmer) <= time(oven) + 0.01);
  }
}

TEST_CASE("a slab between two like sides is alike on both, to 1e-9, wet or not") {
  const auto moist = make_substance(foods::made(batter()));
  REQUIRE(static_cast<bool>(moist));
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{0.05, 0.0, 0.0});
  const HeatGrid grid = grid_of(bare(pan, 0.04), {.across = 1, .across_box = 1, .up = 12});
  Surroundings around;
  around.top = around.base = {.coefficient = 8.0, .emissivity = 0.9, .drying = 8.0};
  around.humidity = 0.02;
  for (const Substance& food : {Substance(table_of(batter())), *moist}) {
    const HeatProblem problem{grid, {food, food}};
    const std::vector<double> field = temperature_field(problem, held(problem, around, kZero + 190, 2400.0));
    for (std::size_t i = 0; i < field.size(); ++i) {
      for (std::size_t j = 0; j < field.size(); ++j) {
        const double middle = grid.cells[i].middle[2] + grid.cells[j].middle[2];
        if (std::abs(middle - 0.04) < 1e-9) CHECK(std::abs(field[i] - field[j]) < 1e-9);
      }
    }
    CHECK(*std::max_element(field.begin(), field.end()) > *std::min_element(field.begin(), field.end()) + 5.0);
  }
}

TEST_CASE("a square tin is alike along both sides, to 1e-9") {
  const auto moist = make_substance(foods::made(batter()));
  REQUIRE(static_cast<bool>(moist));
  const Pan pan = shapes::pan(Rectangle{0.2, 0.2, 0.0}, StraightWall{0.05, 0.01, 0.0});
  const HeatProblem problem{grid_of(bare(pan, 0.04), {.across = 6, .across_box = 6, .up = 5}), {*moist, *moist}};
  Surroundings around = radiating();
  around.top.drying = 8.0;
  const std::vector<double> field = temperature_field(problem, held(problem, around, kZero + 190, 2400.0));
  const auto& cells = problem.grid.cells;
  int pairs = 0;
  for (std::size_t i = 0; i < field.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const bool is_swapped = std::abs(cells[i].middle[0] - cells[j].middle[1]) < 1e-9 &&
                              std::abs(cells[i].middle[1] - cells[j].middle[0]) < 1e-9 &&
                              std::abs(cells[i].middle[2] - cells[j].middle[2]) < 1e-9;
      if (!is_swapped) continue;
      ++pairs;
      CHECK(std::abs(field[i] - field[j]) < 1e-9);
    }
  }
  CHECK(pairs == 5 * (6 * 6 - 6) / 2);
}

}  // namespace tinwright
