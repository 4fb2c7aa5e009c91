// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See substance.h.
#include "geometry/heat/substance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <utility>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// Steps of the guide from enthalpy back to temperature: about as fine as the coldest, slowest-rising lines.
constexpr std::size_t kGuideSteps = 2048;
/// [-] of a guide step: each starts this much early, so that rounding at its edge never starts a search too far.
constexpr double kGuideMargin = 1e-6;

struct ConstantRange {
  const char* name;
  const char* place;
  const char* example;
  const char* range;
  double least;
  double most;
};
/// From aerogel to copper; gold; the metals to beyond water. Anything else is a slip of the unit.
constexpr ConstantRange kConductivityRange{"conductivity",       "conductivity", "0.35 W/mK",
                                           "0.001 to 1000 W/mK", 1e-3,           1e3};
constexpr ConstantRange kDensityRange{"density", "density", "1000 kg/m3", "1 to 30000 kg/m3", 1.0, 3e4};
constexpr ConstantRange kHeatCapacityRange{
    "heat capacity", "heat_capacity", "3000 J/kgK", "10 to 20000 J/kgK", 10.0, 2e4};

std::optional<Problem> check_constant(double value, const ConstantRange& range) {
  const std::string name = std::string("the ") + range.name;
  if (!std::isfinite(value)) return Problem{ProblemCode::kNotANumber, name + " is not a number", range.place};
  if (value >= range.least && value <= range.most) return std::nullopt;
  return Problem{ProblemCode::kOutOfRange,
                 name + " has to be " + range.range + ", like " + range.example + "; check its unit", range.place};
}

/// x cut down to a whole number within [0, last]; 0 for anything that is not a number.
std::size_t whole_within(double x, std::size_t last) {
  if (!(x > 0.0)) return 0;
  return x >= static_cast<double>(last) ? last : static_cast<std::size_t>(x);
}

}  // namespace

ThermalTable::ThermalTable(double density, double step, std::vector<double> enthalpy, std::vector<double> conductivity)
    : density_(density),
      step_(step),
      per_kelvin_(1.0 / step),
      enthalpy_(std::move(enthalpy)),
      conductivity_(std::move(conductivity)) {
  GEOMETRY_ASSERT(enthalpy_.size() >= 2 && enthalpy_.size() == conductivity_.size());
  GEOMETRY_ASSERT(enthalpy_.size() <= std::numeric_limits<std::uint16_t>::max());
  double least_rise = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < enthalpy_.size(); ++i) {
    least_rise = std::min(least_rise, enthalpy_[i + 1] - enthalpy_[i]);
  }
  GEOMETRY_ASSERT(least_rise > 0.0);
  least_capacity_ = least_rise / step_;
  make_guide();
}

void ThermalTable::make_guide() {
  const double range = enthalpy_.back() - enthalpy_.front();
  guide_per_enthalpy_ = static_cast<double>(kGuideSteps) / range;
  guide_.resize(kGuideSteps);
  const std::size_t last = enthalpy_.size() - 2;
  std::size_t line = 0;
  const auto edge = [&](double step) { return enthalpy_.front() + step / guide_per_enthalpy_; };
  for (std::size_t i = 0; i < kGuideSteps; ++i) {
    const double start = edge(static_cast<double>(i) - kGuideMargin);
    const double stop = edge(static_cast<double>(i + 1) + kGuideMargin);
    while (line < last && start >= enthalpy_[line + 1]) ++line;
    guide_[i] = static_cast<std::uint16_t>(line);
    std::size_t furthest = line;
    while (furthest < last && stop >= enthalpy_[furthest + 1]) ++furthest;
    longest_search_ = std::max(longest_search_, static_cast<int>(furthest - line) + 1);
  }
}

std::size_t ThermalTable::line_at(double temperature) const {
  return whole_within((temperature - kTableCoolest) * per_kelvin_, enthalpy_.size() - 2);
}

std::size_t ThermalTable::line_holding(double enthalpy) const {
  const std::size_t last = enthalpy_.size() - 2;
  std::size_t line = guide_[whole_within((enthalpy - enthalpy_.front()) * guide_per_enthalpy_, kGuideSteps - 1)];
  while (line < last && enthalpy >= enthalpy_[line + 1]) ++line;
  return line;
}

double ThermalTable::enthalpy(double temperature) const {
  GEOMETRY_ASSERT(std::isfinite(temperature));
  const std::size_t i = line_at(temperature);
  const double along = (temperature - kTableCoolest) * per_kelvin_ - static_cast<double>(i);
  return enthalpy_[i] + (enthalpy_[i + 1] - enthalpy_[i]) * along;
}

double ThermalTable::temperature(double enthalpy) const {
  GEOMETRY_ASSERT(std::isfinite(enthalpy));
  const std::size_t i = line_holding(enthalpy);
  const double along = (enthalpy - enthalpy_[i]) / (enthalpy_[i + 1] - enthalpy_[i]);
  return kTableCoolest + (static_cast<double>(i) + along) * step_;
}

ThermalTable::Line ThermalTable::line(double enthalpy) const {
  constexpr double kEndless = std::numeric_limits<double>::infinity();
  const std::size_t i = line_holding(enthalpy);
  return {.low = i == 0 ? -kEndless : enthalpy_[i],
          .high = i + 2 == enthalpy_.size() ? kEndless : enthalpy_[i + 1],
          .enthalpy = enthalpy_[i],
          .temperature = kTableCoolest + static_cast<double>(i) * step_,
          .kelvin_per_enthalpy = step_ / (enthalpy_[i + 1] - enthalpy_[i])};
}

double ThermalTable::conductivity(double temperature) const {
  GEOMETRY_ASSERT(std::isfinite(temperature));
  const std::size_t i = line_at(temperature);
  const double along = std::clamp((temperature - kTableCoolest) * per_kelvin_ - static_cast<double>(i), 0.0, 1.0);
  return conductivity_[i] + (conductivity_[i + 1] - conductivity_[i]) * along;
}

double ThermalTable::capacity(double temperature) const {
  const std::size_t i = line_at(temperature);
  return (enthalpy_[i + 1] - enthalpy_[i]) / step_;
}

Result<ThermalTable> make_thermal_table(const Composition& food) {
  const Result<Composition> checked = make_composition(food);
  if (!checked) return checked.problem();
  const double density = food_properties(*checked, kDensityTemperature).density;
  const auto lines = static_cast<std::size_t>(std::lround((kTableHottest - kTableCoolest) / kTableStep));
  std::vector<double> enthalpy;
  std::vector<double> conductivity;
  enthalpy.reserve(lines + 1);
  conductivity.reserve(lines + 1);
  for (std::size_t i = 0; i <= lines; ++i) {
    const double temperature = kTableCoolest + static_cast<double>(i) * kTableStep;
    enthalpy.push_back(density * food_enthalpy(*checked, temperature));
    conductivity.push_back(food_properties(*checked, temperature).conductivity);
  }
  return ThermalTable(density, kTableStep, std::move(enthalpy), std::move(conductivity));
}

Result<ThermalTable> make_thermal_table(const Properties& constants) {
  if (auto problem = check_constant(constants.conductivity, kConductivityRange)) return *problem;
  if (auto problem = check_constant(constants.density, kDensityRange)) return *problem;
  if (auto problem = check_constant(constants.heat_capacity, kHeatCapacityRange)) return *problem;
  const double per_kelvin = constants.density * constants.heat_capacity;
  return ThermalTable(constants.density, kTableHottest - kTableCoolest,
                      {per_kelvin * (kTableCoolest - kEnthalpyZero), per_kelvin * (kTableHottest - kEnthalpyZero)},
                      {constants.conductivity, constants.conductivity});
}

}  // namespace tinwright
