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

/// [-] Densities that differ by less are one.
constexpr double kSameDensity = 1e-9;

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

/// From a wax to beyond water; fat and water have 1e5 to 3.3e5. Then what a table of 0.005 K steps can hold.
constexpr ConstantRange kLatentHeatRange{"latent heat", "latent_heat", "334000 J/kg", "1000 to 3000000 J/kg", 1e3, 3e6};
constexpr ConstantRange kMeltingPointRange{"melting temperature", "temperature",        "0 °C",
                                           "-50 to 250 °C",       kTableCoolest + 10.0, kTableHottest - 10.0};
constexpr ConstantRange kMeltingRange{"melting range", "range", "0.2 K", "0.02 to 20 K", 0.02, 20.0};

/// `within` is the part of the question that `constants` are ("solid."), or nothing.
std::optional<Problem> check_constants(const Properties& constants, const std::string& within) {
  for (const auto& [value, range] :
       {std::pair{constants.conductivity, kConductivityRange}, std::pair{constants.density, kDensityRange},
        std::pair{constants.heat_capacity, kHeatCapacityRange}}) {
    auto problem = check_constant(value, range);
    if (!problem) continue;
    problem->place = within + problem->place;
    return problem;
  }
  return std::nullopt;
}

std::optional<Problem> check_melting(const Melting& asked) {
  if (auto problem = check_constants(asked.solid, "solid.")) return problem;
  if (auto problem = check_constants(asked.liquid, "liquid.")) return problem;
  if (auto problem = check_constant(asked.temperature, kMeltingPointRange)) return problem;
  if (auto problem = check_constant(asked.latent_heat, kLatentHeatRange)) return problem;
  if (auto problem = check_constant(asked.range, kMeltingRange)) return problem;
  if (std::abs(asked.liquid.density - asked.solid.density) <= kSameDensity * asked.solid.density) return std::nullopt;
  return Problem{ProblemCode::kContradiction,
                 "solid and liquid need the same density here; what swells or shrinks is left out", "liquid.density"};
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
  integral_.push_back(0.0);
  for (std::size_t i = 0; i + 1 < conductivity_.size(); ++i) {
    integral_.push_back(integral_.back() + 0.5 * step_ * (conductivity_[i] + conductivity_[i + 1]));
  }
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

double ThermalTable::conductivity_integral(double temperature) const {
  const std::size_t i = line_at(temperature);
  const double along = (temperature - kTableCoolest) * per_kelvin_ - static_cast<double>(i);
  const double within = std::clamp(along, 0.0, 1.0);
  const double rise = conductivity_[i + 1] - conductivity_[i];
  const double held = conductivity_[i] + within * rise;
  return integral_[i] + step_ * (within * (conductivity_[i] + 0.5 * within * rise) + (along - within) * held);
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
  if (auto problem = check_constants(constants, "")) return *problem;
  const double per_kelvin = constants.density * constants.heat_capacity;
  return ThermalTable(constants.density, kTableHottest - kTableCoolest,
                      {per_kelvin * (kTableCoolest - kEnthalpyZero), per_kelvin * (kTableHottest - kEnthalpyZero)},
                      {constants.conductivity, constants.conductivity});
}

Result<ThermalTable> make_thermal_table(const Melting& asked) {
  if (auto problem = check_melting(asked)) return *problem;
  const double start = asked.temperature - 0.5 * asked.range;
  const double step = 0.25 * asked.range;
  const auto lines = static_cast<std::size_t>(std::ceil((kTableHottest - kTableCoolest) / step));
  std::vector<double> enthalpy;
  std::vector<double> conductivity;
  enthalpy.reserve(lines + 1);
  conductivity.reserve(lines + 1);
  for (std::size_t i = 0; i <= lines; ++i) {
    const double temperature = kTableCoolest + static_cast<double>(i) * step;
    const double melted = std::clamp((temperature - start) / asked.range, 0.0, 1.0);
    // Heat while melting: the solid's up to the middle, then the liquid's.
    const double solid = asked.solid.heat_capacity * (std::min(temperature, asked.temperature) - kEnthalpyZero);
    const double liquid = asked.liquid.heat_capacity * std::max(0.0, temperature - asked.temperature);
    enthalpy.push_back(asked.solid.density * (solid + melted * asked.latent_heat + liquid));
    conductivity.push_back(std::lerp(asked.solid.conductivity, asked.liquid.conductivity, melted));
  }
  return ThermalTable(asked.solid.density, step, std::move(enthalpy), std::move(conductivity));
}

}  // namespace tinwright
