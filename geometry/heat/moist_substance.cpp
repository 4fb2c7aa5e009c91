// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See moist_substance.h.
#include "geometry/heat/moist_substance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/checks.h"
#include "geometry/heat/food_components.h"
#include "geometry/heat/moist_air.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();
/// [-] of the volume that has to stay solid, so that what is left when all has boiled off is still a food.
constexpr double kLeastSolid = 0.05;
/// [K] The end of the boiling curve: at 200 °C next to nothing is left.
constexpr double kCurveEnd = kZeroCelsius + 200.0;
/// [K] Near where it begins, boiling takes most of the water within a few kelvin; after that a point every so often
/// will do.
constexpr double kSteepBoiling = 6.0;
constexpr double kBoilingStep = 1.99;
/// [-] of the water that can leave: a dryness so near 1 counts as dry.
constexpr double kDriest = 1.0 - 1e-6;

double grid_temperature(std::size_t i) {
  return kTableCoolest + static_cast<double>(i) * kTableStep;
}

constexpr std::size_t kGridLines = static_cast<std::size_t>((kTableHottest - kTableCoolest) / kTableStep + 0.5);

/// Above freezing enthalpy hardly bends: from kSmoothFrom up, one straight line serves kSmoothLines of the grid's (8
/// K). It is off by under 10 mK, and a cell changes lines seldom.
constexpr std::size_t kSmoothLines = 32;
/// Conductivity bends more where vapour makes it climb; 2 K to a line keeps it to 0.1 %.
constexpr std::size_t kConductivityLines = 8;
constexpr double kSmoothFrom = kZeroCelsius + 12.0;

constexpr std::size_t kSmoothLine = static_cast<std::size_t>((kSmoothFrom - kTableCoolest) / kTableStep + 0.5);

/// The ends of the straight line that holds a line of the grid.
struct Span {
  std::size_t low, high;
};
Span span_of(std::size_t line, std::size_t width = kSmoothLines) {
  if (line < kSmoothLine) return {line, line + 1};
  const std::size_t low = line - (line - kSmoothLine) % width;
  return {low, std::min(low + width, kGridLines)};
}

/// A value at every point of the grid, from `at` of the ends of its straight lines.
template <class At>
std::vector<double> sampled(const At& at, std::size_t width) {
  std::vector<double> values(kGridLines + 1);
  values.front() = at(grid_temperature(0));
  for (std::size_t low = 0; low < kGridLines;) {
    const std::size_t high = span_of(low, width).high;
    values[high] = at(grid_temperature(high));
    for (std::size_t i = low + 1; i < high; ++i) {
      values[i] = std::lerp(values[low], values[high], static_cast<double>(i - low) / static_cast<double>(high - low));
    }
    low = high;
  }
  return values;
}

/// The line of the grid at a temperature, and how far along it.
struct GridPlace {
  std::size_t line;
  double along;  // beyond 0 to 1 off the grid's ends
};
GridPlace grid_place(double temperature) {
  const double steps = (temperature - kTableCoolest) / kTableStep;
  const auto line = static_cast<std::size_t>(std::clamp(steps, 0.0, static_cast<double>(kGridLines - 1)));
  return {line, steps - static_cast<double>(line)};
}

double mixed(const std::vector<double>& wet, const std::vector<double>& dry, std::size_t i, double dryness) {
  return wet[i] + dryness * (dry[i] - wet[i]);
}

std::vector<double> integrals(const std::vector<double>& values) {
  std::vector<double> sums{0.0};
  for (std::size_t i = 0; i + 1 < values.size(); ++i) {
    sums.push_back(sums.back() + 0.5 * kTableStep * (values[i] + values[i + 1]));
  }
  return sums;
}

std::vector<double> least_slopes(const std::vector<double>& enthalpy) {
  std::vector<double> least(enthalpy.size(), kEndless);
  for (std::size_t i = enthalpy.size() - 1; i-- > 0;) {
    least[i] = std::min(least[i + 1], (enthalpy[i + 1] - enthalpy[i]) / kTableStep);
  }
  least.back() = least[least.size() - 2];
  return least;
}

/// [kg/kg] of the food's water that can leave, so that kLeastSolid of the volume stays.
double water_that_can_leave(const Composition& food) {
  const double density = food_properties(food, kDensityTemperature).density / (1.0 - food.air);
  const double by_volume =
      (1.0 - kLeastSolid) * component_density(FoodComponent::kWater, kDensityTemperature) / density;
  return std::min(food.water, by_volume);
}

/// What is left of a kilogram of `food` without `gone` kg of water, in the same space: air takes the water's place.
Composition dried(const Composition& food, double gone) {
  Composition dry = food;
  const double left = 1.0 - gone;
  const double density = food_properties(food, kDensityTemperature).density / (1.0 - food.air);
  const double space = density * gone / component_density(FoodComponent::kWater, kDensityTemperature);
  dry.water = (food.water - gone) / left;
  for (double Composition::*share :
       {&Composition::protein, &Composition::fat, &Composition::carbohydrate, &Composition::fibre, &Composition::ash}) {
    dry.*share = food.*share / left;
  }
  dry.sugar.reset();
  dry.freezing_point.reset();
  dry.air = std::clamp(1.0 - (1.0 - food.air) * (1.0 - space), 0.0, kMostAir);
  return dry;
}

/// [W/(m K)] of the wet food, whose pores carry vapour.
double wet_conductivity(const Composition& food, double temperature) {
  Composition solid = food;
  solid.air = 0.0;
  return maxwell_eucken(food_properties(solid, temperature).conductivity, wet_pore_conductivity(temperature), food.air);
}

}  // namespace

Substance::Substance(ThermalTable table) : wet_(std::move(table)) {
  std::vector<double> enthalpy;
  for (std::size_t i = 0; i <= kGridLines; ++i) {
    enthalpy.push_back(wet_.enthalpy(grid_temperature(i)));
    if (wet_.conductivity(grid_temperature(i)) != wet_.conductivity(kTableCoolest)) conducts_evenly_ = false;
  }
  least_ = least_slopes(enthalpy);
}

double Substance::enthalpy(double temperature, double dryness) const {
  if (!drying_) return wet_.enthalpy(temperature);
  const auto [i, along] = grid_place(temperature);
  const double low = mixed(drying_->wet, drying_->dry, i, dryness);
  return low + (mixed(drying_->wet, drying_->dry, i + 1, dryness) - low) * along;
}

double Substance::conductivity(double temperature, double dryness) const {
  if (!drying_) return wet_.conductivity(temperature);
  const auto [i, along] = grid_place(temperature);
  const double within = std::clamp(along, 0.0, 1.0);
  const double low = mixed(drying_->wet_conductivity, drying_->dry_conductivity, i, dryness);
  return low + (mixed(drying_->wet_conductivity, drying_->dry_conductivity, i + 1, dryness) - low) * within;
}

double Substance::conductivity_integral(double temperature, double dryness) const {
  if (!drying_) return wet_.conductivity_integral(temperature);
  const auto [i, along] = grid_place(temperature);
  const double within = std::clamp(along, 0.0, 1.0);
  const double low = mixed(drying_->wet_conductivity, drying_->dry_conductivity, i, dryness);
  const double rise = mixed(drying_->wet_conductivity, drying_->dry_conductivity, i + 1, dryness) - low;
  return mixed(drying_->wet_integral, drying_->dry_integral, i, dryness) +
         kTableStep * (within * (low + 0.5 * within * rise) + (along - within) * (low + within * rise));
}

double Substance::water() const {
  return drying_ ? drying_->water : 0.0;
}

double Substance::activity(double dryness) const {
  if (!drying_) return 0.0;
  const double left = (1.0 - std::clamp(dryness, 0.0, kDriest)) * drying_->leaves + drying_->held;
  return water_activity(drying_->holding, left);
}

double Substance::boiling_point(double dryness) const {
  return drying_ ? boiling_start(dryness).temperature : kEndless;
}

double Substance::diffusivity(double temperature, double dryness) const {
  if (!drying_) return 0.0;
  return water_diffusivity(drying_->holding, (1.0 - dryness) * drying_->leaves + drying_->held, temperature);
}

double Substance::water_enthalpy(double temperature) const {
  if (!drying_) return 0.0;
  return (enthalpy(temperature, 0.0) - enthalpy(temperature, 1.0)) / drying_->water;
}

double Substance::least_capacity(double coolest, double dryness) const {
  const std::size_t i = grid_place(coolest).line;
  if (!drying_ || dryness <= 0.0) return least_[i];
  return mixed(least_, drying_->dry_least, i, std::min(dryness, 1.0));
}

Substance::Boiling Substance::boiling_start(double dryness) const {
  const auto& curve = drying_->curve;
  if (dryness <= 0.0) return curve.front();
  if (dryness >= curve.back().dryness) return curve.back();
  const auto after = std::upper_bound(curve.begin(), curve.end(), dryness,
                                      [](double d, const Boiling& point) { return d < point.dryness; });
  const Boiling& high = *after;
  const Boiling& low = *std::prev(after);
  const double along = (dryness - low.dryness) / (high.dryness - low.dryness);
  return {std::lerp(low.temperature, high.temperature, along), dryness, std::lerp(low.enthalpy, high.enthalpy, along)};
}

Substance::Edge Substance::edge(double dryness) const {
  if (!drying_) return {dryness, kEndless, kEndless, 0.0};
  const Boiling start = boiling_start(dryness);
  const double first = dryness <= 0.0 ? start.enthalpy : enthalpy(start.temperature, dryness);
  return {dryness, first, start.temperature, first - start.enthalpy};
}

Substance::Line Substance::boiling_line(double h, const Edge& edge) const {
  const auto& curve = drying_->curve;
  const auto after = std::upper_bound(curve.begin(), curve.end(), h - edge.shift,
                                      [](double e, const Boiling& point) { return e < point.enthalpy; });
  Line line;
  line.is_boiling = true;
  if (after == curve.end()) {
    const Boiling& end = curve.back();
    line.slope = 1.0 / least_capacity(end.temperature, std::max(edge.dryness, end.dryness));
    line.low = end.enthalpy + edge.shift;
    line.high = kEndless;
    line.offset = std::max(end.temperature, edge.temperature) - line.low * line.slope;
    return line;
  }
  const Boiling& high = *after;
  const Boiling& low = after == curve.begin() ? high : *std::prev(after);
  line.low = std::max(edge.enthalpy, low.enthalpy + edge.shift);
  line.high = high.enthalpy + edge.shift;
  line.slope = (high.temperature - low.temperature) / (high.enthalpy - low.enthalpy);
  line.offset = high.temperature - line.high * line.slope;
  return line;
}

Substance::Line Substance::cooled_line(double h, double dryness) const {
  const auto at = [&](std::size_t i) { return mixed(drying_->wet, drying_->dry, i, dryness); };
  // Among the ends of the straight lines: those of the grid below kSmoothFrom, or every kSmoothLines-th above.
  const bool is_smooth = h >= at(kSmoothLine);
  const std::size_t stride = is_smooth ? kSmoothLines : 1;
  const std::size_t from = is_smooth ? kSmoothLine : 0;
  std::size_t low = 0;
  std::size_t high = is_smooth ? (kGridLines - from + stride - 1) / stride : from + kSmoothLine;
  while (high - low > 1) {
    const std::size_t middle = (low + high) / 2;
    (at(from + middle * stride) <= h ? low : high) = middle;
  }
  const Span span = span_of(from + low * stride);
  const double at_low = at(span.low);
  Line line;
  line.low = span.low == 0 ? -kEndless : at_low;
  line.high = at(span.high);
  line.slope = static_cast<double>(span.high - span.low) * kTableStep / (line.high - at_low);
  line.offset = grid_temperature(span.low) - at_low * line.slope;
  if (span.high == kGridLines) line.high = kEndless;
  return line;
}

Substance::Line Substance::line(double h, const Edge& edge) const {
  if (h >= edge.enthalpy) return boiling_line(h, edge);
  Line line = cooled_line(h, std::max(edge.dryness, 0.0));
  line.high = std::min(line.high, edge.enthalpy);
  return line;
}

Substance::Line Substance::line(double h, double dryness) const {
  if (drying_) return line(h, edge(dryness));
  const ThermalTable::Line plain = wet_.line(h);
  return {plain.low, plain.high, plain.temperature - plain.enthalpy * plain.kelvin_per_enthalpy,
          plain.kelvin_per_enthalpy, false};
}

double Substance::temperature(double h, double dryness) const {
  return line(h, dryness).temperature_at(h);
}

Substance::Left Substance::boil_off(double h, double dryness) const {
  const Line now = line(h, dryness);
  if (!now.is_boiling) return {h, dryness};
  const double t = now.temperature_at(h);
  const auto& curve = drying_->curve;
  const auto after = std::upper_bound(curve.begin(), curve.end(), t,
                                      [](double at, const Boiling& point) { return at < point.temperature; });
  double left = curve.back().dryness;
  if (after != curve.end() && after != curve.begin()) {
    const Boiling& low = *std::prev(after);
    left = std::lerp(low.dryness, after->dryness, (t - low.temperature) / (after->temperature - low.temperature));
  }
  left = std::max(left, dryness);
  return {enthalpy(t, left), left};
}

void Substance::make_boiling_curve(DryingTables& tables) const {
  const auto dryness_at = [&](double temperature) {
    const double wanted = kAtmosphere / saturation_pressure(temperature);
    const auto excess = [&](double dryness) {
      return water_activity(tables.holding, (1.0 - dryness) * tables.leaves + tables.held) - wanted;
    };
    if (excess(0.0) <= 0.0) return 0.0;
    return excess(kDriest) >= 0.0 ? kDriest : find_root(excess, 0.0, kDriest);
  };
  const double first = boiling_temperature(water_activity(tables.holding, tables.leaves + tables.held), kCurveEnd);
  tables.curve.push_back({first, 0.0, enthalpy(first, 0.0)});
  for (std::size_t i = grid_place(first).line + 1; grid_temperature(i) <= kCurveEnd + 0.5 * kTableStep; ++i) {
    const Boiling& before = tables.curve.back();
    const double temperature = grid_temperature(i);
    const double beyond = temperature - first;
    if (temperature - before.temperature < (beyond < kSteepBoiling ? 1e-3 : kBoilingStep)) continue;
    const double dryness = std::max(before.dryness, dryness_at(temperature));
    const double middle = 0.5 * (temperature + before.temperature);
    const double carried = water_enthalpy(middle) + latent_heat_of_evaporation(middle);
    const double stays = enthalpy(temperature, dryness) - enthalpy(before.temperature, before.dryness);
    tables.curve.push_back(
        {temperature, dryness, before.enthalpy + stays + tables.water * (dryness - before.dryness) * carried});
  }
}

Result<Substance> make_substance(const Composition& asked) {
  const Result<Composition> checked = make_composition(asked);
  if (!checked) return checked.problem();
  auto table = make_thermal_table(*checked);
  if (!table) return table.problem();
  Substance substance(*table);
  const Composition& food = *checked;
  const double gone = water_that_can_leave(food);
  if (gone <= 0.0) return substance;
  const Composition dry = dried(food, gone);
  auto tables = std::make_shared<Substance::DryingTables>();
  const double density = substance.wet_.density();
  tables->wet = sampled([&](double t) { return substance.wet_.enthalpy(t); }, kSmoothLines);
  tables->dry = sampled([&](double t) { return density * (1.0 - gone) * food_enthalpy(dry, t); }, kSmoothLines);
  tables->wet_conductivity = sampled([&](double t) { return wet_conductivity(food, t); }, kConductivityLines);
  tables->dry_conductivity =
      sampled([&](double t) { return food_properties(dry, t).conductivity; }, kConductivityLines);
  tables->wet_integral = integrals(tables->wet_conductivity);
  tables->dry_integral = integrals(tables->dry_conductivity);
  tables->dry_least = least_slopes(tables->dry);
  tables->water = density * gone;
  tables->held = food.water - gone;
  tables->leaves = gone;
  tables->holding = water_holding(food);
  substance.drying_ = tables;
  substance.make_boiling_curve(*tables);
  return substance;
}

Result<Substance> make_substance(const Properties& constants) {
  auto table = make_thermal_table(constants);
  if (!table) return table.problem();
  return Substance(*table);
}

}  // namespace tinwright
