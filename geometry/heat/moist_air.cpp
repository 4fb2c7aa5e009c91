// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See moist_air.h.
#include "geometry/heat/moist_air.h"

#include <algorithm>
#include <cmath>
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

/// [1/K] d ln(pressure) / d temperature, by Clapeyron.
double relative_slope(double temperature) {
  constexpr double kGasConstantOfVapour = 461.5;  // [J/(kg K)]
  return latent_heat_of_evaporation(temperature) / (kGasConstantOfVapour * temperature * temperature);
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

double latent_heat_of_evaporation(double temperature) {
  const double t = std::clamp(temperature - kZeroCelsius, 0.0, 250.0);
  return 1e3 * (2500.9 + t * (-2.3885 + t * (0.975e-3 + t * -1.53e-5)));
}

double humidity_ratio(double pressure) {
  GEOMETRY_ASSERT(pressure >= 0.0 && pressure < kAtmosphere);
  return kVapourToAir * pressure / (kAtmosphere - pressure);
}

double saturated_humidity(double temperature) {
  const double pressure = saturation_pressure(temperature);
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
  const double pressure = activity * saturation_pressure(temperature);
  const double last = kLastShare * kAtmosphere;
  const double within = std::min(pressure, last);
  const double beyond = pressure - within;
  const double free = kAtmosphere - within;
  const double ratio_by_pressure = kVapourToAir * kAtmosphere / (free * free);
  const double ratio = humidity_ratio(within) + beyond * ratio_by_pressure;
  return {.rate = per_ratio * (ratio - humidity),
          .slope = per_ratio * ratio_by_pressure * pressure * relative_slope(temperature)};
}

}  // namespace tinwright
