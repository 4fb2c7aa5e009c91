// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The heat solver against exact series, an independent finite-element code, and its own invariants.
#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "tests/csv_rows.h"
#include "tests/exact_conduction.h"
#include "tests/heat_cases.h"

namespace tinwright {

extern const std::string_view kHeatFlutedTartCsv;
extern const std::string_view kHeatLinedRoundCsv;
extern const std::string_view kHeatStraightBoxCsv;
extern const std::string_view kHeatStraightRoundCsv;
extern const std::string_view kHeatTaperedLoafCsv;
extern const std::string_view kHeatTaperedRingCsv;
extern const std::string_view kHeatTaperedRoundCsv;

namespace {

using heat_cases::bare;
using heat_cases::grid_of;
using heat_cases::lined;
using heat_cases::raw;

constexpr double kZero = 273.15;  // [K]
constexpr double kStart = 293.15, kAir = 463.15;

BakeAnswer run(const HeatProblem& problem, const BakeQuestion& question) {
  const auto answer = bake(problem, question);
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

/// One stage at kAir from kStart.
BakeAnswer heat(const HeatProblem& problem, const Transfer& transfer, double seconds) {
  return run(problem, {.start = kStart, .stages = {{kAir, seconds}}, .transfer = transfer, .report_every = seconds});
}

HeatProblem same_all_through(const HeatGrid& grid, const ThermalTable& substance) {
  return {grid, {substance, substance}};
}

}  // namespace

TEST_CASE("a short cylinder follows the exact series within 0.3 °C, Bi 0.1 to 10, Fo 0.05 to 2") {
  // Carslaw and Jaeger 1959, products of slab and cylinder: tests/exact_conduction.cpp.
  const double k = 0.4, rho = 1000, c = 3000, diffusivity = k / (rho * c);
  struct Size {
    double radius, height;
  };
  for (const Size& size : {Size{0.12, 0.04}, Size{0.04, 0.08}, Size{0.10, 0.10}}) {
    const Pan pan = shapes::pan(Round{2 * size.radius}, StraightWall{size.height, 0.0, 0.0});
    const double shortest = std::min(size.radius, 0.5 * size.height);
    for (const double biot : {0.1, 1.0, 10.0}) {
      const GridFineness fineness = fineness_for(biot * 0.5 * size.height / shortest);
      const HeatProblem problem = same_all_through(grid_of(bare(pan, size.height), fineness), raw(k, rho, c));
      for (const double fourier : {0.05, 0.2, 0.5, 2.0}) {
        CAPTURE(size.radius);
        CAPTURE(biot);
        CAPTURE(fourier);
        const double h = biot * k / shortest;
        const double seconds = fourier * shortest * shortest / diffusivity;
        const exact::ShortCylinder food{size.radius, size.height, h, h, h};
        const exact::Substance made_of{k, diffusivity};
        const BakeAnswer answer = heat(problem, {h, h, h}, seconds);
        const double core = exact::short_cylinder_theta(food, made_of, 0.0, 0.5 * size.height, seconds);
        const double mean = exact::short_cylinder_mean_theta(food, made_of, seconds);
        CHECK(std::abs(answer.coldest - (kAir + (kStart - kAir) * core)) < 0.3);
        CHECK(std::abs(answer.mean - (kAir + (kStart - kAir) * mean)) < 0.3);
      }
    }
  }
}

TEST_CASE(
    "a box follows the exact series within 0.3 °C at its core and 0.4 °C on average, Bi 0.1 to 10, Fo 0.05 to 0.5") {
  const double k = 0.4, rho = 1000, c = 3000, diffusivity = k / (rho * c);
  const double length = 0.22, width = 0.11, height = 0.07, shortest = 0.5 * height;
  const Pan pan = shapes::pan(Rectangle{length, width, 0.0}, StraightWall{height, 0.0, 0.0});
  for (const double biot : {0.1, 1.0, 10.0}) {
    const HeatProblem problem = same_all_through(grid_of(bare(pan, height), fineness_for(biot)), raw(k, rho, c));
    for (const double fourier : {0.05, 0.2, 0.5}) {
      CAPTURE(biot);
      CAPTURE(fourier);
      const double h = biot * k / shortest;
      const double seconds = fourier * shortest * shortest / diffusivity;
      const exact::Box food{length, width, height, h, h, h};
      const exact::Substance made_of{k, diffusivity};
      const BakeAnswer answer = heat(problem, {h, h, h}, seconds);
      const double core = exact::box_theta(food, made_of, 0.0, 0.0, 0.5 * height, seconds);
      const double mean = exact::box_mean_theta(food, made_of, seconds);
      CHECK(std::abs(answer.coldest - (kAir + (kStart - kAir) * core)) < 0.3);
      CHECK(std::abs(answer.mean - (kAir + (kStart - kAir) * mean)) < 0.4);
    }
  }
}

TEST_CASE("tapered, lined, fluted, ring and loaf pans follow finite elements within 0.5 °C through two stages") {
  // tests/reference/heat/heat.py: FreeFem++ 4.11, estimated error below 0.01 °C; inputs in the .json files beside the
  // tables.
  struct Case {
    std::string name;
    std::string_view csv;
    FilledPan filled;
    ThermalTable fill, crust;
    Transfer transfer;
  };
  const Pan tin = shapes::pan(Round{0.24}, StraightWall{0.04, 0.015, 0.0});
  const auto same = [](double k, double rho, double c) { return std::pair{raw(k, rho, c), raw(k, rho, c)}; };
  std::vector<Case> cases;
  const auto add = [&](const std::string& name, std::string_view csv, const FilledPan& filled,
                       const std::pair<ThermalTable, ThermalTable>& made_of, const Transfer& transfer) {
    cases.push_back({name, csv, filled, made_of.first, made_of.second, transfer});
  };
  add("tapered round", kHeatTaperedRoundCsv, bare(tin, 0.03), same(0.30, 900, 2800), {25, 18, 22});
  add("lined round", kHeatLinedRoundCsv, lined(tin, {0.006, 0.005, 0.035}, 0.022),
      {raw(0.46, 1060, 3400), raw(0.23, 1200, 2310)}, {22, 28, 36});
  add("fluted tart", kHeatFlutedTartCsv,
      bare(shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.025, 0.0, 0.0}), 0.02), same(0.28, 1080, 2600),
      {20, 26, 32});
  add("tapered loaf", kHeatTaperedLoafCsv,
      bare(shapes::pan(Rectangle{0.22, 0.11, 0.0}, StraightWall{0.07, 0.008, 0.0}), 0.05), same(0.26, 930, 2750),
      {25, 20, 16});
  add("tapered ring", kHeatTaperedRingCsv, bare(shapes::ring(0.24, 0.07, StraightWall{0.08, 0.01, 0.0}, 0.005), 0.06),
      same(0.28, 820, 2800), {28, 22, 18});
  add("straight round", kHeatStraightRoundCsv, bare(shapes::pan(Round{0.20}, StraightWall{0.05, 0.0, 0.0}), 0.04),
      same(0.35, 1000, 3000), {20, 24, 14});
  add("straight box", kHeatStraightBoxCsv,
      bare(shapes::pan(Rectangle{0.16, 0.10, 0.0}, StraightWall{0.07, 0.0, 0.0}), 0.06), same(0.32, 950, 2900),
      {26, 18, 12});
  for (const Case& each : cases) {
    CAPTURE(each.name);
    const double h = std::max({each.transfer.top, each.transfer.wall, each.transfer.base});
    const GridFineness fineness = fineness_for(0.5 * h * each.filled.fill_height / each.fill.conductivity(kStart));
    const HeatProblem problem{grid_of(each.filled, fineness), {each.fill, each.crust}};
    const BakeAnswer answer = run(
        problem,
        {.start = kStart, .stages = {{463.15, 720}, {438.15, 1680}}, .transfer = each.transfer, .report_every = 300});
    const auto rows = reference::rows(each.csv);
    REQUIRE(rows.size() == answer.history.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      CAPTURE(rows[i].text("t_min"));
      CHECK(answer.history[i].time == doctest::Approx(60 * rows[i].number("t_min")));
      CHECK(std::abs(answer.history[i].coldest - kZero - rows[i].number("core_c")) < 0.5);
      CHECK(std::abs(answer.history[i].mean - kZero - rows[i].number("mean_c")) < 0.5);
    }
  }
}

TEST_CASE("errors fall with the square of the cell size") {
  const double k = 0.4, rho = 1000, c = 3000, h = 20, seconds = 1800, radius = 0.1, height = 0.05;
  const Pan pan = shapes::pan(Round{2 * radius}, StraightWall{height, 0.0, 0.0});
  const exact::ShortCylinder food{radius, height, h, h, h};
  const double exact_mean = exact::short_cylinder_mean_theta(food, {k, k / (rho * c)}, seconds);
  std::vector<double> errors;
  for (const int cells : {8, 16, 32}) {
    GridFineness fineness;
    fineness.across = fineness.up = cells;
    const HeatProblem problem = same_all_through(grid_of(bare(pan, height), fineness), raw(k, rho, c));
    errors.push_back(std::abs(heat(problem, {h, h, h}, seconds).mean - (kAir + (kStart - kAir) * exact_mean)));
  }
  CHECK(std::log2(errors[0] / errors[1]) > 1.7);
  CHECK(std::log2(errors[1] / errors[2]) > 1.7);
}

TEST_CASE("heat is kept: what is stored came in, to 1e-10") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.04, 0.015, 0.0});
  const HeatProblem problem{grid_of(lined(pan, {0.006, 0.005, 0.035}, 0.022)),
                            {raw(0.46, 1060, 3400), raw(0.23, 1200, 2310)}};
  for (const double air : {463.15, 253.15}) {
    const BakeAnswer answer = run(problem, {.start = kStart, .stages = {{air, 3600}}, .transfer = {22, 28, 36}});
    CHECK(std::abs(answer.energy_imbalance) < 1e-10);
  }
}

TEST_CASE("a longer programme, hotter air and a shallower filling never leave the core colder") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.05, 0.01, 0.0});
  const auto core = [&](double height, double air, double seconds) {
    const HeatProblem problem = same_all_through(grid_of(bare(pan, height)), raw(0.4, 1000, 3000));
    return run(problem, {.start = kStart, .stages = {{air, seconds}}, .transfer = {20, 20, 20}}).coldest;
  };
  CHECK(core(0.03, 443.15, 2400) > core(0.03, 443.15, 1800));
  CHECK(core(0.03, 463.15, 1800) > core(0.03, 443.15, 1800));
  CHECK(core(0.02, 443.15, 1800) > core(0.03, 443.15, 1800));
  CHECK(core(0.03, 443.15, 1800) > core(0.04, 443.15, 1800));
}

TEST_CASE("the time to a core temperature is the time at which the same run has it") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.05, 0.01, 0.0});
  const HeatProblem problem = same_all_through(grid_of(bare(pan, 0.03)), raw(0.4, 1000, 3000));
  BakeQuestion question{.start = kStart, .stages = {{443.15, 7200}}, .transfer = {20, 20, 20}};
  question.until_coldest = 355.15;
  const BakeAnswer until = run(problem, question);
  CHECK(until.reached);
  question.until_coldest.reset();
  question.stages = {{443.15, until.time}};
  CHECK(std::abs(run(problem, question).coldest - 355.15) < 0.02);
}

TEST_CASE("a target beyond the air's temperature is never reached, and says so") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.05, 0.01, 0.0});
  const HeatProblem problem = same_all_through(grid_of(bare(pan, 0.03)), raw(0.4, 1000, 3000));
  BakeQuestion question{.start = kStart, .stages = {{343.15, 3600}}, .transfer = {20, 20, 20}};
  question.until_coldest = 355.15;
  const BakeAnswer answer = run(problem, question);
  CHECK_FALSE(answer.reached);
  CHECK(answer.time == doctest::Approx(3600));
}

TEST_CASE("every pan of the catalogue, bare and lined, stays between its start and the air, and keeps its heat") {
  // Among them bowls, rounded floors and rounded corners, where the grid leans furthest.
  GridFineness coarse;
  coarse.across = 12;
  coarse.across_box = 8;
  coarse.up = 10;
  coarse.through_dough = 2;
  for (const CataloguePan& entry : catalogue_pans()) {
    FieldReader reader(entry.fields);
    const auto pan = read_pan(reader, "");
    REQUIRE(static_cast<bool>(pan));
    for (const bool is_lined : {false, true}) {
      CAPTURE(entry.id);
      CAPTURE(is_lined);
      const Lining lining{0.003, 0.003, 0.9 * depth(*pan)};
      const FilledPan filled = is_lined ? lined(*pan, lining, 0.5 * depth(*pan)) : bare(*pan, 0.7 * depth(*pan));
      const HeatProblem problem{grid_of(filled, coarse), {raw(0.5, 1050, 3400), raw(0.25, 1200, 2300)}};
      const BakeAnswer answer =
          run(problem, {.start = kStart, .stages = {{kAir, 1200}, {263.15, 600}}, .transfer = {25, 20, 20}});
      for (const BakeRow& row : answer.history) {
        CHECK(row.coldest > 263.15 - 0.5);
        CHECK(row.mean >= row.coldest - 0.5);
        CHECK(row.mean < kAir + 0.5);
      }
      CHECK(std::abs(answer.energy_imbalance) < 1e-10);
    }
  }
}

TEST_CASE("a crust on the floor alone, or next to nothing up the wall, leaves the filling standing against the wall") {
  const Pan pan = shapes::pan(Round{0.23}, StraightWall{0.07, 0.003, 0.0});
  for (const double wall : {0.0, 1e-6, 5e-5, 2e-4}) {
    CAPTURE(wall);
    const FilledPan filled = lined(pan, {0.006, wall, wall > 0.0 ? 0.05 : depth(pan)}, 0.03);
    const HeatProblem problem{grid_of(filled), {raw(0.46, 1060, 3400), raw(0.23, 1200, 2310)}};
    const BakeAnswer answer = run(problem, {.start = kStart, .stages = {{kAir, 1800}}, .transfer = {22, 28, 36}});
    CHECK(answer.coldest > kStart);
    CHECK(answer.hottest < kAir);
    CHECK(std::abs(answer.energy_imbalance) < 1e-10);
  }
}

TEST_CASE("programmes that cannot run are refused with their place") {
  const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.05, 0.01, 0.0});
  const HeatProblem problem = same_all_through(grid_of(bare(pan, 0.03)), raw(0.4, 1000, 3000));
  const auto place = [&](const BakeQuestion& question) {
    const auto answer = bake(problem, question);
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK_FALSE(answer.problem().message.empty());
    return answer.problem().place;
  };
  const Transfer transfer{20, 20, 20};
  CHECK(place({.start = kStart, .stages = {}, .transfer = transfer}) == "stages");
  CHECK(place({.start = kStart, .stages = {{443.15, 0.0}}, .transfer = transfer}) == "stages.0.for");
  CHECK(place({.start = kStart, .stages = {{443.15, 60}, {443.15, std::nan("")}}, .transfer = transfer}) ==
        "stages.1.for");
  CHECK(place({.start = kStart, .stages = {{5000, 60}}, .transfer = transfer}) == "stages.0.air");
  CHECK(place({.start = std::nan(""), .stages = {{443.15, 60}}, .transfer = transfer}) == "start");
  CHECK(place({.start = kStart, .stages = {{443.15, 1e7}}, .transfer = transfer}) == "stages");
  CHECK(place({.start = kStart, .stages = {{443.15, 60}}, .transfer = {-1, 20, 20}}) == "transfer.top");
  CHECK(place({.start = kStart, .stages = {{443.15, 60}}, .transfer = {0, 0, 0}}) == "transfer");
  CHECK(place({.start = kStart, .stages = {{443.15, 60}}, .transfer = transfer, .report_every = 0.0}) ==
        "report_every");
}

}  // namespace tinwright
