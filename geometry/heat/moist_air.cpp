// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See moist_air.h.
#include "geometry/heat/moist_air.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

#include "geometry/checks.h"
#include "geometry/heat/food_components.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

constexpr double kCoolestFitOfPressure = kZeroCelsius - 100.0;
constexpr double kHottestFitOfPressure = kZeroCelsius + 200.0;
/// [-] of the atmosphere: the vapour pressure from which the drying rate goes on as a straight line.
constexpr double kLastShare = 0.95;

/// [1/K] d ln(pressure) / d temperature of the fit over ice or over water.
double relative_slope(double t, bool is_over_ice) {
  if (is_over_ice) {
    return 5.6745359e3 / (t * t) - 9.677843e-3 +
           t * (2.0 * 6.2215701e-7 + t * (3.0 * 2.0747825e-9 - t * 4.0 * 9.484024e-13)) + 4.1635019 / t;
  }
  return 5.8002206e3 / (t * t) - 4.8640239e-2 + t * (2.0 * 4.1764768e-5 - t * 3.0 * 1.4452093e-8) + 6.5459673 / t;
}

/// Hermite's cubics of the saturation pressure between whole degrees: pressure = c[0] + c[1] u + c[2] u² + c[3] u³, u
/// from 0 to 1. Its two fits meet at 0 °C at an angle; that is between two of them.
constexpr std::size_t kPressureLines = 300;
using PressureTable = std::array<std::array<double, 4>, kPressureLines>;

PressureTable make_pressure_table() {
  PressureTable table;
  for (std::size_t i = 0; i < kPressureLines; ++i) {
    const double t = kCoolestFitOfPressure + static_cast<double>(i);
    const bool is_over_ice = t + 0.5 < kZeroCelsius;
    const double low = saturation_pressure(t);
    const double high = saturation_pressure(t + 1.0);
    const double low_slope = low * relative_slope(t, is_over_ice);
    const double high_slope = high * relative_slope(t + 1.0, is_over_ice);
    table[i] = {low, low_slope, 3.0 * (high - low) - 2.0 * low_slope - high_slope,
                2.0 * (low - high) + low_slope + high_slope};
  }
  return table;
}

}  // namespace

double saturation_pressure(double temperature) {
  GEOMETRY_ASSERT(std::isfinite(temperature));
  const double t = std::clamp(temperature, kCoolestFitOfPressure, kHottestFitOfPressure);
  if (t < kZeroCelsius) {
    return std::exp(-5.6745359e3 / t + 6.3925247 +
                    t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13))) +
                    4.1635019 * std::log(t));
  }
  return std::exp(-5.8002206e3 / t + 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8)) +
                  6.5459673 * std::log(t));
}

SaturationPressure tabulated_saturation_pressure(double temperature) {
  GEOMETRY_ASSERT(std::isfinite(temperature));
  static const PressureTable table = make_pressure_table();
  const double steps = temperature - kCoolestFitOfPressure;
  if (!(steps > 0.0)) return {table.front()[0], 0.0};
  if (steps >= static_cast<double>(kPressureLines)) {
    const auto& last = table.back();
    return {last[0] + last[1] + last[2] + last[3], 0.0};
  }
  const auto line = static_cast<std::size_t>(steps);
  const double u = steps - static_cast<double>(line);
  const auto& c = table[line];
  return {c[0] + u * (c[1] + u * (c[2] + u * c[3])), c[1] + u * (2.0 * c[2] + u * 3.0 * c[3])};
}

double latent_heat_of_evaporation(double temperature) {
  const double t = std::clamp(temperature - kZeroCelsius, 0.0, 250.0);
  return 1e3 * (2500.9 + t * (-2.3885 + t * (0.975e-3 + t * -1.53e-5)));
}

double humidity_ratio(double pressure) {
  GEOMETRY_ASSERT(pressure >= 0.0 && pressure < kAtmosphere);
  return kVapourToAir * pressure / (kAtmosphere - pressure);
}

double saturated_humidity(double temperature) {
  const double pressure = tabulated_saturation_pressure(temperature).pressure;
  return pressure < kAtmosphere ? humidity_ratio(pressure) : std::numeric_limits<double>::infinity();
}

double boiling_temperature(double activity, double hottest) {
  GEOMETRY_ASSERT(activity >= 0.0 && activity <= 1.0);
  const double last = std::min(hottest, kHottestFitOfPressure);
  const auto missing = [&](double t) { return kAtmosphere - activity * saturation_pressure(t); };
  if (missing(last) >= 0.0) return last;
  return find_root(missing, kZeroCelsius, last);
}

Drying drying(double temperature, double activity, double humidity, double convection) {
  const double per_ratio = convection / (kAirHeatCapacity + kVapourHeatCapacity * humidity);
  const SaturationPressure saturated = tabulated_saturation_pressure(temperature);
  const double pressure = activity * saturated.pressure;
  const double last = kLastShare * kAtmosphere;
  const double within = std::min(pressure, last);
  const double beyond = pressure - within;
  const double free = kAtmosphere - within;
  const double ratio_by_pressure = kVapourToAir * kAtmosphere / (free * free);
  const double ratio = humidity_ratio(within) + beyond * ratio_by_pressure;
  const double by_pressure = per_ratio * ratio_by_pressure;
  return {.rate = per_ratio * (ratio - humidity),
          .slope = by_pressure * activity * saturated.slope,
          .by_activity = by_pressure * saturated.pressure};
}

}  // namespace tinwright
