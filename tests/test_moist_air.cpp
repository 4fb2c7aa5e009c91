// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Water vapour in air against psychrometric and steam tables, and the drying rate against its own definition.
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/moist_air.h"
#include "tests/foods.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using foods::kZero;
using shapes::relative_error;

constexpr double kConvection = 12.0;  // [W/(m² K)]

double rate_at(double celsius, double activity, double humidity) {
  return drying(kZero + celsius, activity, humidity, kConvection).rate;
}

/// [°C] from which the drying rate goes on as a straight line.
double bend_of(double activity) {
  double low = 0.0;
  double high = 200.0;
  while (high - low > 1e-9) {
    const double middle = 0.5 * (low + high);
    (activity * saturation_pressure(kZero + middle) < 0.95 * kAtmosphere ? low : high) = middle;
  }
  return low;
}

}  // namespace

TEST_CASE("saturated vapour has the pressure of the steam tables") {
  struct Row {
    double celsius, pascal;
  };
  // ASHRAE Handbook - Fundamentals 2017, Psychrometrics, table 3, seen as quoted in the tests of PsychroLib 2.5;
  // 0.03 % is what the rows' own rounding and that edition's newer formulation leave.
  for (const Row& row :
       {Row{-20, 103.24}, Row{-5, 401.74}, Row{5, 872.6}, Row{25, 3169.7}, Row{50, 12351.3}, Row{100, 101418.0}}) {
    CAPTURE(row.celsius);
    CHECK(relative_error(saturation_pressure(kZero + row.celsius), row.pascal) < 3e-4);
  }
  CHECK(relative_error(saturation_pressure(kZero + 150), 476101.4) < 3e-4);  // the same table
  // Hyland & Wexler 1983, their own tables, seen as quoted in the tests of Psychro.jl: the formula itself.
  for (const Row& row : {Row{0, 611.213}, Row{100, 101419.0}, Row{200, 1555070.0}}) {
    CAPTURE(row.celsius);
    CHECK(relative_error(saturation_pressure(kZero + row.celsius), row.pascal) < 1e-5);
  }
  // IAPWS SR1-86(1992), table 1: triple point and normal boiling point.
  CHECK(relative_error(saturation_pressure(273.16), 611.657) < 1e-3);
  CHECK(relative_error(saturation_pressure(373.1243), 101325.0) < 1e-3);
}

TEST_CASE("saturation pressure rises everywhere between the ends of its fit, and keeps its value beyond") {
  for (double celsius = -100.0; celsius < 200.0; celsius += 1.0) {
    CHECK(saturation_pressure(kZero + celsius + 1.0) > saturation_pressure(kZero + celsius));
  }
  CHECK(relative_error(saturation_pressure(kZero - 1e-9), saturation_pressure(kZero)) < 2e-4);
  CHECK(saturation_pressure(kZero + 400.0) == saturation_pressure(kZero + 200.0));
  CHECK(saturation_pressure(kZero - 150.0) == saturation_pressure(kZero - 100.0));
}

TEST_CASE("the latent heat of evaporation is that of the steam tables") {
  struct Row {
    double celsius, kilojoule;
  };
  // Hyland & Wexler 1983, vapour less liquid; seen as quoted in the tests of Psychro.jl.
  for (const Row& row : {Row{0.01, 2500.81}, Row{50, 2591.29 - 209.330}, Row{100, 2675.46 - 419.158},
                         Row{150, 2746.15 - 632.210}, Row{200, 2793.11 - 852.329}}) {
    CAPTURE(row.celsius);
    CHECK(std::abs(latent_heat_of_evaporation(kZero + row.celsius) - 1e3 * row.kilojoule) < 1.05e3);
  }
  // IAPWS-95, from memory: rows between those the cubic was laid through.
  for (const Row& row : {Row{0, 2500.9}, Row{25, 2441.7}, Row{50, 2382.0}, Row{75, 2320.6}, Row{100, 2256.5},
                         Row{120, 2202.1}, Row{150, 2113.8}, Row{180, 2014.2}, Row{200, 1939.8}}) {
    CAPTURE(row.celsius);
    CHECK(std::abs(latent_heat_of_evaporation(kZero + row.celsius) - 1e3 * row.kilojoule) < 0.9e3);
  }
}

TEST_CASE("saturated air holds the water that ASHRAE's table says") {
  // ASHRAE Handbook - Fundamentals 2017, Psychrometrics, table 2, at 101.325 kPa; seen as quoted in the tests of
  // PsychroLib 2.5. The table counts air and vapour as real gases: 0.4 % more at 5 °C, 1.2 % at 85 °C.
  struct Row {
    double celsius, ratio, tolerance;
  };
  for (const Row& row :
       {Row{5, 0.005425, 0.005}, Row{25, 0.020173, 0.005}, Row{50, 0.086863, 0.007}, Row{85, 0.838105, 0.013}}) {
    CAPTURE(row.celsius);
    const double ratio = humidity_ratio(saturation_pressure(kZero + row.celsius));
    CHECK(relative_error(ratio, row.ratio) < row.tolerance);
  }
  CHECK(humidity_ratio(0.0) == 0.0);
}

TEST_CASE("water boils where its vapour has the pressure of the air") {
  // IAPWS SR1-86(1992), table 1: 373.1243 K at 101325 Pa.
  CHECK(std::abs(boiling_temperature(1.0, kZero + 200) - 373.1243) < 0.03);
  for (const double activity : {0.99, 0.9, 0.7, 0.4, 0.1}) {
    CAPTURE(activity);
    const double boils_at = boiling_temperature(activity, kZero + 200);
    CHECK(relative_error(activity * saturation_pressure(boils_at), kAtmosphere) < 1e-9);
  }
  CHECK(boiling_temperature(0.0, kZero + 180) == kZero + 180);
  CHECK(boiling_temperature(0.4, kZero + 120) == kZero + 120);
  CHECK(boiling_temperature(1e-6, kZero + 400) == doctest::Approx(kZero + 200));
}

TEST_CASE("at the air's dew point nothing leaves a wet surface; below, dew settles; above, water leaves") {
  for (const double activity : {1.0, 0.9, 0.6}) {
    for (const double dew_point : {5.0, 20.0, 32.0, 60.0}) {
      CAPTURE(activity);
      CAPTURE(dew_point);
      const double humidity = humidity_ratio(activity * saturation_pressure(kZero + dew_point));
      CHECK(std::abs(rate_at(dew_point, activity, humidity)) < 1e-15);
      CHECK(rate_at(dew_point - 1.0, activity, humidity) < 0.0);
      CHECK(rate_at(dew_point + 1.0, activity, humidity) > 0.0);
    }
  }
  CHECK(rate_at(50.0, 0.0, 0.0) == 0.0);
}

TEST_CASE("what evaporates takes the heat the air gives at the published wet bulb, within 0.2 °C") {
  // ASHRAE RP-1485 (Herrmann, Kretzschmar & Gatley 2009), moist air at 101.325 kPa and 200 °C; ASHRAE Handbook -
  // Fundamentals 2017, Psychrometrics, example 1 (40 °C). Seen as quoted in CoolProp and in the tests of PsychroLib.
  struct Row {
    double dry_bulb, humidity, wet_bulb;
  };
  for (const Row& row : {Row{200, 0.0, 45.07}, Row{200, 0.5, 81.12}, Row{200, 1.0, 88.15}, Row{40, 0.0065, 20.0}}) {
    CAPTURE(row.dry_bulb);
    CAPTURE(row.humidity);
    const auto excess = [&](double celsius) {
      return latent_heat_of_evaporation(kZero + celsius) * rate_at(celsius, 1.0, row.humidity) -
             kConvection * (row.dry_bulb - celsius);
    };
    CHECK(excess(row.wet_bulb - 0.2) < 0.0);
    CHECK(excess(row.wet_bulb + 0.2) > 0.0);
  }
}

TEST_CASE("the slope of the drying rate is its derivative, within 2.5 % from 5 to 110 °C") {
  // Clapeyron with the vapour as an ideal gas, which it is less and less: 0.05 % off at 5 °C, 2 % at 110 °C.
  const double step = 1e-3;
  for (const double activity : {1.0, 0.85}) {
    const double bend = bend_of(activity);
    for (double celsius = 5.0; celsius <= 110.0; celsius += 7.5) {
      if (std::abs(celsius - bend) < 1.0) continue;
      CAPTURE(activity);
      CAPTURE(celsius);
      const double slope =
          (rate_at(celsius + step, activity, 0.02) - rate_at(celsius - step, activity, 0.02)) / (2.0 * step);
      CHECK(relative_error(drying(kZero + celsius, activity, 0.02, kConvection).slope, slope) < 0.025);
    }
  }
}

TEST_CASE("the drying rate rises without a jump or a kink through boiling, and stays finite") {
  for (const double activity : {1.0, 0.85}) {
    CAPTURE(activity);
    for (double celsius = 0.0; celsius < 200.0; celsius += 0.5) {
      CHECK(rate_at(celsius + 0.5, activity, 0.02) > rate_at(celsius, activity, 0.02));
    }
    const double bend = bend_of(activity);
    CHECK(relative_error(rate_at(bend + 1e-7, activity, 0.02), rate_at(bend - 1e-7, activity, 0.02)) < 1e-6);
    const double before = rate_at(bend - 1e-4, activity, 0.02) - rate_at(bend - 2e-4, activity, 0.02);
    const double after = rate_at(bend + 2e-4, activity, 0.02) - rate_at(bend + 1e-4, activity, 0.02);
    CHECK(relative_error(after, before) < 1e-3);
    CHECK(std::isfinite(rate_at(390.0, activity, 0.02)));
  }
}

TEST_CASE("drying goes with the convection, and damp air carries off less") {
  const Drying one = drying(kZero + 60, 1.0, 0.02, 5.0);
  const Drying three = drying(kZero + 60, 1.0, 0.02, 15.0);
  CHECK(three.rate == doctest::Approx(3.0 * one.rate));
  CHECK(three.slope == doctest::Approx(3.0 * one.slope));
  CHECK(drying(kZero + 60, 1.0, 0.05, 5.0).rate < one.rate);
  CHECK(drying(kZero + 60, 0.9, 0.02, 5.0).rate < one.rate);
}

}  // namespace tinwright
