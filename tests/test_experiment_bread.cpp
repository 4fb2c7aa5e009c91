// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The heat solver against measurements on bread dough in a round tin. Nothing is fitted; what the source does not say
// of tin and oven is run in every way it might be. Where the solver misses, less is asserted, and why.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include "tests/bake_cases.h"
#include "tests/csv_rows.h"

namespace tinwright {

extern const std::string_view kExperimentTinBreadCsv;

namespace {

using bake_cases::round;
using bake_cases::run;
using bake_cases::substance_of;
using foods::kZero;

constexpr double kPi = 3.14159265358979323846;
constexpr double kMinute = 60.0;                                  // [s]
constexpr double kTin = 0.116, kPoured = 0.0475, kRisen = 0.070;  // [m] across, and heights of the dough
constexpr double kRow = 15.0;                                     // [s]

struct Probe {
  const char* column;
  const char* spread;
  double radius, height;  // [m]
};
constexpr std::array<Probe, 3> kProbes{
    {{"t5", "s5", 0.0, 0.035}, {"t6", "s6", 0.021, 0.028}, {"t7", "s7", 0.041, 0.013}}};

/// One way the unknown tin and oven might be.
struct Way {
  Place place;
  Material tin;
  double density;  // [kg/m³] of the dough as put in
};

/// Flour and water by the measured 0.56 kg to a kg of dry mass; the dry part as white flour (USDA 20081, without its
/// water). The rise takes air only.
Substance dough(double density, double height) {
  constexpr double kDry = 1.0 / 1.56;
  Composition food{.water = 0.56 * kDry,
                   .protein = 0.117 * kDry,
                   .fat = 0.011 * kDry,
                   .carbohydrate = 0.836 * kDry,
                   .fibre = 0.031 * kDry,
                   .ash = 0.005 * kDry};
  food.sugar = 0.03 * kDry;
  const double solid = substance_of(food).table().density();
  food.air = 1.0 - density * kPoured / height / solid;
  return substance_of(food);
}

/// [K] of a field of rings, between the middles of cells.
double temperature_at(const HeatGrid& grid, const std::vector<double>& field, double radius, double height) {
  const auto between = [](double at, double low, double low_value, double high, double high_value) {
    if (!std::isfinite(low)) return high_value;
    if (!std::isfinite(high)) return low_value;
    return low_value + (high_value - low_value) * (at - low) / (high - low);
  };
  constexpr double kNone = std::numeric_limits<double>::infinity();
  const auto along_layer = [&](double layer) {
    double low = -kNone, high = kNone, low_value = 0.0, high_value = 0.0;
    for (std::size_t i = 0; i < field.size(); ++i) {
      if (std::abs(grid.cells[i].middle[2] - layer) > 1e-7) continue;
      const double at = grid.cells[i].middle[0];
      if (at <= radius && at > low) std::tie(low, low_value) = std::pair{at, field[i]};
      if (at > radius && at < high) std::tie(high, high_value) = std::pair{at, field[i]};
    }
    return between(radius, low, low_value, high, high_value);
  };
  double below = -kNone, above = kNone;
  for (const HeatGrid::Cell& cell : grid.cells) {
    if (cell.middle[2] <= height) below = std::max(below, cell.middle[2]);
    if (cell.middle[2] > height) above = std::min(above, cell.middle[2]);
  }
  const double under = std::isfinite(below) ? along_layer(below) : 0.0;
  const double over = std::isfinite(above) ? along_layer(above) : 0.0;
  return between(height, below, under, above, over);
}

/// Temperatures [°C] by probe and row, and the share of the dough that went off as vapour.
struct Bread {
  std::array<std::vector<double>, 3> at;
  double lost = 0.0;
};

Bread bake_bread(const Way& way, double height) {
  const Substance made_of = dough(way.density, height);
  const FilledPan tin = round(kTin, height);
  const HeatProblem problem{heat_cases::grid_of(tin, fineness_for(2.0)), {made_of, made_of}};
  Stage ramp;
  ramp.air_before = kZero + 180.0;
  ramp.air = kZero + 205.0;
  ramp.duration = 25.0 * kMinute;
  ramp.around = surroundings_in(way.place, way.tin);
  Stage hold = ramp;
  hold.air_before.reset();
  hold.duration = 2.0 * kMinute;
  BakeQuestion question{.start = kZero + 29.5, .stages = {ramp, hold}, .report_every = kRow};
  question.keeps_fields_to = 27.0 * kMinute;
  const BakeAnswer answer = run(problem, question);
  Bread bread;
  for (const auto& field : answer.fields) {
    for (std::size_t p = 0; p < kProbes.size(); ++p) {
      bread.at[p].push_back(temperature_at(problem.grid, field, kProbes[p].radius, kProbes[p].height) - kZero);
    }
  }
  bread.lost = answer.water_lost / (way.density * kPoured * 0.25 * kPi * kTin * kTin);
  return bread;
}

/// [min] when the curve passes `level`; endless when it never does.
double passes(const std::vector<double>& minutes, const std::vector<double>& values, double level) {
  for (std::size_t i = 1; i < values.size(); ++i) {
    if (values[i] < level) continue;
    return minutes[i - 1] + (minutes[i] - minutes[i - 1]) * (level - values[i - 1]) / (values[i] - values[i - 1]);
  }
  return std::numeric_limits<double>::infinity();
}

std::vector<double> minutes_of(const std::vector<double>& rows) {
  std::vector<double> minutes;
  for (std::size_t i = 0; i < rows.size(); ++i) minutes.push_back(static_cast<double>(i) * kRow / kMinute);
  return minutes;
}

std::vector<Bread> all_ways(double height) {
  std::vector<Bread> breads;
  for (const Place place : {Place::kOven, Place::kFanOven}) {
    for (const Material tin : {Material::kTinnedSteel, Material::kDarkSteel}) {
      for (const double density : {426.0, 490.0}) breads.push_back(bake_bread({place, tin, density}, height));
    }
  }
  return breads;
}

}  // namespace

TEST_CASE("bread in a tin passes 50, 70 and 90 °C at three places within what is not known of tin and oven") {
  // Not known: bright or dark tin, fan or still, 426 or 490 kg/m³: those eight are run, at the height the dough rises
  // to (with its mass as put in; it rises in the first 8 of 27 min). Measured: from the curve of temperature plus its
  // half range to that of minus it. The two ranges have to meet, for nine times.
  const auto rows = reference::rows(kExperimentTinBreadCsv);
  const std::vector<Bread> breads = all_ways(kRisen);
  for (std::size_t p = 0; p < kProbes.size(); ++p) {
    std::vector<double> minutes, early, late;
    for (const auto& row : rows) {
      if (row.text(kProbes[p].column).empty()) continue;
      minutes.push_back(row.number("t_min"));
      early.push_back(row.number(kProbes[p].column) + row.number(kProbes[p].spread));
      late.push_back(row.number(kProbes[p].column) - row.number(kProbes[p].spread));
    }
    for (const double level : {50.0, 70.0, 90.0}) {
      CAPTURE(kProbes[p].column);
      CAPTURE(level);
      double first = 1e9, last = 0.0;
      for (const Bread& bread : breads) {
        const double at = passes(minutes_of(bread.at[p]), bread.at[p], level);
        first = std::min(first, at);
        last = std::max(last, at);
      }
      CHECK(first <= passes(minutes, late, level));
      CHECK(last >= passes(minutes, early, level));
    }
  }
}

TEST_CASE("bread's middle warms ever faster up to 80 °C and then stays below boiling") {
  // Measured at t5: 4.4 °C/min from 38 to 56 °C and 7.2 from there to 78, 1.6 times as fast: vapour carries the heat.
  // With fixed properties (0.15 to 0.5 W/mK, 9.5 to 25 W/m²K, same height) it is at most 1.21 times, and what is as
  // quick as measured then ends above 103 °C. Measured end: 97 to 98 °C.
  for (const Bread& bread : all_ways(kRisen)) {
    const auto& middle = bread.at[0];
    const auto when = [&](double level) { return passes(minutes_of(middle), middle, level); };
    const double slow = (56.0 - 38.0) / (when(56.0) - when(38.0));
    const double fast = (78.0 - 56.0) / (when(78.0) - when(56.0));
    CHECK(fast > 1.25 * slow);
    CHECK(*std::max_element(middle.begin(), middle.end()) < 100.5);
    CHECK(*std::max_element(bread.at[1].begin(), bread.at[1].end()) < 100.5);
    CHECK(middle.back() > 80.0);
  }
}

TEST_CASE("bread in a bright tin loses about the water measured; in hotter surroundings the solver loses too much") {
  // Measured: 0.560 to 0.475 kg to a kg of dry mass, 5.4 % of the dough. A bright tin in a still oven comes near; a
  // dark one or a fan gives up to three times as much, because vapour that boils off at the tin's wall is counted as
  // gone at once, where in bread it meets colder crumb and condenses. So only the first is held to a band, which is the
  // difference between 426 and 490 kg/m³ (15 %), the scale, and half as much again for the unknown oven; for the others
  // only that they lose no less.
  constexpr double kMeasured = (0.560 - 0.4751) / 1.56;
  const std::vector<Bread> breads = all_ways(kRisen);
  CHECK(shapes::relative_error(breads[0].lost, kMeasured) < 0.30);
  CHECK(shapes::relative_error(breads[1].lost, kMeasured) < 0.30);
  for (std::size_t i = 2; i < breads.size(); ++i) CHECK(breads[i].lost > kMeasured);
}

}  // namespace tinwright
