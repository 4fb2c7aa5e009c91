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

/// The straight lines in turn: those of the grid below kSmoothFrom, then every kSmoothLines-th.
constexpr std::size_t kKnots = kSmoothLine + (kGridLines - kSmoothLine + kSmoothLines - 1) / kSmoothLines;
constexpr std::size_t knot_line(std::size_t knot) {
  return knot < kSmoothLine ? knot : kSmoothLine + (knot - kSmoothLine) * kSmoothLines;
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
  const double low = drying_->enthalpy[i].at(dryness);
  return low + (drying_->enthalpy[i + 1].at(dryness) - low) * along;
}

double Substance::conductivity(double temperature, double dryness) const {
  return conduction(temperature, dryness).conductivity;
}

double Substance::conductivity_integral(double temperature, double dryness) const {
  return conduction(temperature, dryness).integral;
}

double Substance::water() const {
  return drying_ ? drying_->water : 0.0;
}

double Substance::activity(double dryness) const {
  return drying_ ? water_activity(drying_->holding, drying_->left(std::clamp(dryness, 0.0, kDriest))) : 0.0;
}

Substance::ByDryness Substance::activity_by_dryness(double dryness) const {
  if (!drying_) return {};
  const ByWater at = water_activity_by_water(drying_->holding, drying_->left(std::clamp(dryness, 0.0, kDriest)));
  return {at.value, -at.slope * drying_->leaves};
}

double Substance::boiling_point(double dryness) const {
  std::size_t near = 0;
  return drying_ ? boiling_start(dryness, near).temperature : kEndless;
}

double Substance::diffusivity(double temperature, double dryness) const {
  return drying_ ? self_diffusion(temperature).value * let_through(dryness).value : 0.0;
}

Substance::ByTemperature Substance::self_diffusion(double temperature) const {
  if (!drying_ || temperature < kZeroCelsius) return {};
  const auto [i, along] = grid_place(temperature);
  const double rise = drying_->self_diffusion[i + 1] - drying_->self_diffusion[i];
  return {drying_->self_diffusion[i] + along * rise, rise / kTableStep};
}

Substance::ByDryness Substance::let_through(double dryness) const {
  if (!drying_) return {};
  const ByWater at = tinwright::let_through(drying_->holding, drying_->left(dryness));
  return {at.value, -at.slope * drying_->leaves};
}

double Substance::water_enthalpy(double temperature) const {
  if (!drying_) return 0.0;
  const auto [i, along] = grid_place(temperature);
  const double low = drying_->enthalpy[i].more;
  return -(low + (drying_->enthalpy[i + 1].more - low) * along) / drying_->water;
}

double Substance::least_capacity(double coolest, double dryness) const {
  const std::size_t i = grid_place(coolest).line;
  if (!drying_ || dryness <= 0.0) return least_[i];
  return least_[i] + std::min(dryness, 1.0) * (drying_->dry_least[i] - least_[i]);
}

/// The first point of the boiling curve with more than `value`, or one past the last; the search starts from `near`.
std::size_t Substance::next_on_curve(double Boiling::*of, double value, std::size_t near) const {
  const auto& curve = drying_->curve;
  std::size_t after = std::min(near, curve.size());
  while (after < curve.size() && !(value < curve[after].*of)) ++after;
  while (after > 0 && value < curve[after - 1].*of) --after;
  return after;
}

Substance::Boiling Substance::boiling_start(double dryness, std::size_t& near) const {
  const auto& curve = drying_->curve;
  if (dryness <= 0.0) return curve.front();
  if (dryness >= curve.back().dryness) return curve.back();
  near = next_on_curve(&Boiling::dryness, dryness, near);
  const Boiling& high = curve[near];
  const double left = dryness - high.dryness;
  return {high.temperature + left * high.kelvin_by_dryness, dryness, high.enthalpy + left * high.enthalpy_by_dryness};
}

Substance::Edge Substance::edge(double dryness, std::size_t near) const {
  if (!drying_) return {dryness, kEndless, kEndless, 0.0};
  const Boiling start = boiling_start(dryness, near);
  const double first = dryness <= 0.0 ? start.enthalpy : enthalpy(start.temperature, dryness);
  return {dryness, first, start.temperature, first - start.enthalpy, near};
}

Substance::Line Substance::boiling_line(double h, Edge& edge) const {
  const auto& curve = drying_->curve;
  edge.near = next_on_curve(&Boiling::enthalpy, h - edge.shift, edge.near);
  Line line;
  line.is_boiling = true;
  if (edge.near == curve.size()) {
    const Boiling& end = curve.back();
    line.slope = 1.0 / least_capacity(end.temperature, std::max(edge.dryness, end.dryness));
    line.low = end.enthalpy + edge.shift;
    line.high = kEndless;
    line.offset = std::max(end.temperature, edge.temperature) - line.low * line.slope;
    return line;
  }
  const Boiling& high = curve[edge.near];
  const Boiling& low = edge.near == 0 ? high : curve[edge.near - 1];
  line.low = std::max(edge.enthalpy, low.enthalpy + edge.shift);
  line.high = high.enthalpy + edge.shift;
  line.slope = high.kelvin_by_enthalpy;
  line.offset = high.temperature - line.high * line.slope;
  return line;
}

/// The straight line that holds an enthalpy below boiling: near the last one, or found by halving.
std::size_t Substance::find_knot(double h, double dryness, std::size_t near) const {
  const auto& knots = drying_->knots;
  const auto starts_below = [&](std::size_t knot) { return knots[knot].enthalpy.at(dryness) <= h; };
  std::size_t low = std::min(near, kKnots - 1);
  std::size_t high = kKnots;
  if (!starts_below(low)) {
    high = low;
    low = low > 0 && starts_below(low - 1) ? low - 1 : 0;
  } else if (low + 1 < kKnots && !starts_below(low + 1)) {
    high = low + 1;
  } else if (low + 2 < kKnots && !starts_below(low + 2)) {
    return low + 1;
  }
  while (high - low > 1) {
    const std::size_t middle = (low + high) / 2;
    (starts_below(middle) ? low : high) = middle;
  }
  return low;
}

Substance::Line Substance::other_line(double h, double dryness, Edge& edge, std::size_t& near) const {
  if (edge.dryness != dryness) edge = this->edge(dryness, edge.near);
  if (h >= edge.enthalpy) return boiling_line(h, edge);
  const double dried = std::max(dryness, 0.0);
  near = find_knot(h, dried, near);
  Line line = straight_line(near, dried);
  line.high = std::min(line.high, edge.enthalpy);
  return line;
}

Substance::Line Substance::line(double h, double dryness) const {
  if (drying_) {
    Edge edge;
    std::size_t near = kSmoothLine;
    return line(h, dryness, edge, near);
  }
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
  return boil_off_at(now.temperature_at(h), dryness, 0);
}

Substance::Left Substance::boil_off_at(double t, double dryness, std::size_t near) const {
  const auto& curve = drying_->curve;
  const std::size_t after = next_on_curve(&Boiling::temperature, t, near);
  double left = curve.back().dryness;
  if (after < curve.size() && after > 0) {
    left = curve[after].dryness + (t - curve[after].temperature) * curve[after].dryness_by_kelvin;
  }
  left = std::max(left, dryness);
  return {enthalpy(t, left), left};
}

void Substance::make_boiling_curve(DryingTables& tables) const {
  const auto dryness_at = [&](double temperature) {
    const double wanted = kAtmosphere / saturation_pressure(temperature);
    const auto excess = [&](double dryness) { return water_activity(tables.holding, tables.left(dryness)) - wanted; };
    if (excess(0.0) <= 0.0) return 0.0;
    return excess(kDriest) >= 0.0 ? kDriest : find_root(excess, 0.0, kDriest);
  };
  const double first = boiling_temperature(water_activity(tables.holding, tables.left(0.0)), kCurveEnd);
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
    const double gone = dryness - before.dryness;
    const double taken = stays + tables.water * gone * carried;
    const double warmer = temperature - before.temperature;
    Boiling point{temperature, dryness, before.enthalpy + taken};
    if (gone > 0.0) {  // else nobody asks between these two by dryness
      point.kelvin_by_dryness = warmer / gone;
      point.enthalpy_by_dryness = taken / gone;
    }
    point.kelvin_by_enthalpy = warmer / taken;
    point.dryness_by_kelvin = gone / warmer;
    tables.curve.push_back(point);
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
  const auto mix = [](const std::vector<double>& wet, const std::vector<double>& dry_ones) {
    std::vector<Substance::Mixed> both;
    for (std::size_t i = 0; i < wet.size(); ++i) both.push_back({wet[i], dry_ones[i] - wet[i]});
    return both;
  };
  const std::vector<double> dry_enthalpy =
      sampled([&](double t) { return density * (1.0 - gone) * food_enthalpy(dry, t); }, kSmoothLines);
  const std::vector<double> conductivity =
      sampled([&](double t) { return wet_conductivity(food, t); }, kConductivityLines);
  const std::vector<double> dry_conductivity =
      sampled([&](double t) { return food_properties(dry, t).conductivity; }, kConductivityLines);
  const std::vector<double> enthalpy = sampled([&](double t) { return substance.wet_.enthalpy(t); }, kSmoothLines);
  tables->enthalpy = mix(enthalpy, dry_enthalpy);
  substance.least_ = least_slopes(enthalpy);
  tables->conductivity = mix(conductivity, dry_conductivity);
  tables->integral = mix(integrals(conductivity), integrals(dry_conductivity));
  for (std::size_t i = 0; i <= kGridLines; ++i) {
    tables->self_diffusion.push_back(water_self_diffusion(std::max(grid_temperature(i), kZeroCelsius)));
  }
  for (std::size_t knot = 0; knot <= kKnots; ++knot) {
    const std::size_t i = std::min(knot_line(knot), kGridLines);
    tables->knots.push_back({tables->enthalpy[i], grid_temperature(i)});
  }
  tables->dry_least = least_slopes(dry_enthalpy);
  tables->water = density * gone;
  tables->held = food.water - gone;
  tables->leaves = gone;
  tables->holding = water_holding(food);
  substance.drying_ = tables;
  substance.make_boiling_curve(*tables);
  const double boils = tables->curve.front().temperature;
  while (tables->knots[tables->below_boiling + 1].temperature < boils) ++tables->below_boiling;
  return substance;
}

Result<Substance> make_substance(const Properties& constants) {
  auto table = make_thermal_table(constants);
  if (!table) return table.problem();
  return Substance(*table);
}

}  // namespace tinwright
