// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What food meets: radiating walls, pans that resist, baths, ovens that ramp and cool, and the kitchen's places.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/heat/bake.h"
#include "geometry/heat/kitchen.h"
#include "geometry/heat/moist_air.h"
#include "tests/foods.h"
#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using foods::kZero;
using heat_cases::raw;
using shapes::relative_error;

constexpr double kConductivity = 0.4, kDensity = 1000.0, kHeatCapacity = 3000.0;

HeatProblem slab(const ThermalTable& made_of, double thickness, int layers) {
  const Pan pan = shapes::pan(Round{0.2}, StraightWall{thickness + 0.01, 0.0, 0.0});
  return {heat_cases::grid_of(heat_cases::bare(pan, thickness), {.across = 1, .across_box = 1, .up = layers}),
          {made_of, made_of}};
}

BakeAnswer run(const HeatProblem& problem, const Surroundings& around, double start, double air, double seconds,
               double longest_step = 20.0) {
  Stage stage{air, seconds};
  stage.around = around;
  const auto answer = bake(problem, {.start = start, .stages = {stage}, .report_every = longest_step});
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

/// [s] for a body of `capacity` [J/(m² K)] behind a surface to go from `start` to `end` [K] by radiation alone among
/// walls at `around`: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, eq. (5.18).
double radiating_time(double capacity, double emissivity, double around, double start, double end) {
  const double before = std::log(std::abs((around + start) / (around - start))) + 2.0 * std::atan(start / around);
  const double after = std::log(std::abs((around + end) / (around - end))) + 2.0 * std::atan(end / around);
  return capacity / (4.0 * emissivity * kStefanBoltzmann * around * around * around) * (after - before);
}

const std::vector<Material> kMaterials{Material::kBrightAluminium, Material::kDarkSteel, Material::kTinnedSteel,
                                       Material::kGlass,           Material::kCeramic,   Material::kSilicone};
const std::vector<Place> kPlaces{Place::kOven, Place::kFanOven, Place::kRack, Place::kRefrigerator, Place::kFreezer};

/// [W/(m² K)] into a surface held at `surface` [K], from all around at `air`.
double total_coefficient(const Surface& side, double air, double surface) {
  const SurfaceCell cell{.temperature = surface, .inner = 1e9, .guess = surface};
  const SurfaceFlow flow = surface_flow(side, air, 0.0, cell);
  return flow.conductance * (flow.towards - surface) / (air - surface);
}

}  // namespace

TEST_CASE("a thin plate heats and cools by radiation as the exact integral says, within 0.15 °C") {
  const double thickness = 0.004, emissivity = 0.85;
  const double capacity = thickness * 2700.0 * 900.0;
  const HeatProblem problem = slab(raw(200.0, 2700.0, 900.0), thickness, 2);
  Surroundings around;
  around.top.emissivity = emissivity;
  struct Case {
    double start, walls, end;  // [K]
  };
  for (const Case& each : {Case{kZero + 350, kZero + 20, kZero + 200}, Case{kZero + 350, kZero + 20, kZero + 60},
                           Case{kZero + 20, kZero + 230, kZero + 100}, Case{kZero + 20, kZero + 230, kZero + 200},
                           Case{kZero + 300, kZero - 90, kZero + 50}}) {
    CAPTURE(each.start);
    CAPTURE(each.end);
    const double seconds = radiating_time(capacity, emissivity, each.walls, each.start, each.end);
    const BakeAnswer answer = run(problem, around, each.start, each.walls, seconds);
    CHECK(std::abs(answer.mean - each.end) < 0.15);
    // In steps of 20 s; of what is left in shorter ones most is that the plate is not quite of one temperature.
    CHECK(std::abs(run(problem, around, each.start, each.walls, seconds, 5.0).mean - each.end) < 0.03);
    CHECK(std::abs(answer.energy_imbalance) < 1e-10);
  }
}

TEST_CASE("in the end a side of glass passes the difference over the sum of the resistances") {
  const double h = 12.0, bath = 350.0, thickness = 0.02, glass = 0.005 / 1.1, air = kZero + 180, water = kZero + 20;
  Surroundings around;
  around.top = {.coefficient = bath, .held_at = water};
  around.base = {.coefficient = h, .resistance = glass};
  const HeatProblem problem = slab(raw(kConductivity, kDensity, kHeatCapacity), thickness, 10);
  const BakeAnswer answer = run(problem, around, kZero + 60, air, 6.0 * 3600.0);
  const double flux = (air - water) / (1.0 / h + glass + thickness / kConductivity + 1.0 / bath);
  // Exact for a straight line of temperature: its mean is that of its ends.
  const double base = air - flux * (1.0 / h + glass);
  const double top = water + flux / bath;
  CHECK(std::abs(answer.mean - 0.5 * (base + top)) < 0.01);
  CHECK(answer.hottest < base);
  CHECK(answer.coldest > top);
}

TEST_CASE("behind a pan that radiates, heat through its wall is what its outside takes up") {
  const double h = 7.0, emissivity = 0.9, air = kZero + 200;
  for (const double resistance : {0.0, 1e-5, 0.0009, 0.0045, 0.006, 0.05}) {
    for (const double food : {kZero + 10, kZero + 60, kZero + 99}) {
      CAPTURE(resistance);
      CAPTURE(food);
      const Surface side{.coefficient = h, .emissivity = emissivity, .resistance = resistance};
      const auto taken_up = [&](double outside) {
        return h * (air - outside) + emissivity * kStefanBoltzmann * (std::pow(air, 4) - std::pow(outside, 4));
      };
      double low = food;
      double high = air;
      while (high - low > 1e-9) {
        const double middle = 0.5 * (low + high);
        (taken_up(middle) * resistance > middle - food ? low : high) = middle;
      }
      const double flow = total_coefficient(side, air, food) * (air - food);
      CHECK(relative_error(flow, taken_up(low)) < 0.002);
    }
  }
}

TEST_CASE("a bath holds the side it is on, whatever the oven does") {
  const HeatProblem problem = slab(raw(kConductivity, kDensity, kHeatCapacity), 0.01, 6);
  Surroundings around;
  around.base = surroundings_in(Place::kOven, Material::kDarkSteel, kUsualBath).base;
  const BakeAnswer answer = run(problem, around, kZero + 20, kZero + 180, 7200.0);
  CHECK(std::abs(answer.coldest - kUsualBath) < 0.01);
  CHECK(std::abs(answer.hottest - kUsualBath) < 0.01);
}

TEST_CASE("air ramps evenly over its stage and lags by its time constant") {
  const Air held{400.0, 400.0, 600.0, 0.0};
  CHECK(held.at(0.0) == 400.0);
  CHECK(held.at(1e6) == 400.0);
  const Air ramp{300.0, 450.0, 600.0, 0.0};
  CHECK(ramp.at(0.0) == 300.0);
  CHECK(ramp.at(200.0) == doctest::Approx(350.0));
  CHECK(ramp.at(600.0) == doctest::Approx(450.0));
  CHECK(ramp.at(700.0) == doctest::Approx(450.0));
  const Air cooling{473.15, 293.15, 3600.0, 2400.0};
  CHECK(cooling.at(0.0) == doctest::Approx(473.15));
  CHECK(cooling.at(2400.0) == doctest::Approx(293.15 + 180.0 / std::exp(1.0)));
  CHECK(cooling.at(1200.0) == doctest::Approx(293.15 + 180.0 / std::exp(0.5)));
  CHECK(cooling.at(1e6) == doctest::Approx(293.15));
}

TEST_CASE("a lumped plate lags behind ramped and lagging air as its exact solution says, within 0.1 °C") {
  // m c dT/dt = h (air - T): for a ramp of b K/s, T = a + b (t - tau) + (start - a + b tau) exp(-t/tau); for air that
  // falls to `to` with time constant L, a sum of two exponentials.
  // The mean of a plate so thin lies a third of its thickness behind its surface.
  const double thickness = 0.004, h = 40.0;
  const double tau = thickness * 2700.0 * 900.0 * (1.0 / h + thickness / (3.0 * 200.0));
  const HeatProblem problem = slab(raw(200.0, 2700.0, 900.0), thickness, 2);
  const double start = 293.15, from = 313.15, to = 493.15, seconds = 900.0;
  Stage stage{to, seconds};
  stage.air_before = from;
  Surroundings around;
  around.top.coefficient = h;
  stage.around = around;
  const auto after = [&](double longest_step) {
    const auto answer = bake(problem, {.start = start, .stages = {stage}, .report_every = longest_step});
    REQUIRE(static_cast<bool>(answer));
    return answer->mean;
  };
  const double b = (to - from) / seconds;
  const double ramped = from + b * (seconds - tau) + (start - from + b * tau) * std::exp(-seconds / tau);
  CHECK(std::abs(after(20.0) - ramped) < 0.1);
  CHECK(std::abs(after(5.0) - ramped) < 0.005);

  const double lag = 600.0;
  stage.lag = lag;
  const double share = (from - to) * lag / (lag - tau);
  const double lagged = to + share * std::exp(-seconds / lag) + (start - to - share) * std::exp(-seconds / tau);
  CHECK(std::abs(after(20.0) - lagged) < 0.1);
  CHECK(std::abs(after(5.0) - lagged) < 0.005);
}

TEST_CASE("every place meets every pan with possible surroundings") {
  for (const Material material : kMaterials) {
    const PanWall wall = pan_wall(material);
    CHECK(wall.conductivity > 0.1);
    CHECK(wall.thickness > 1e-4);
    CHECK(wall.thickness < 0.01);
    CHECK(wall.emissivity > 0.0);
    CHECK(wall.emissivity <= 1.0);
    for (const Place place : kPlaces) {
      const Surroundings dry = surroundings_in(place, material);
      const Surroundings bath = surroundings_in(place, material, kUsualBath);
      CHECK(dry.humidity > 0.0);
      CHECK(dry.humidity < 0.05);
      CHECK_FALSE(dry.wall.held_at.has_value());
      for (const Surface* side : {&dry.top, &dry.wall, &dry.base, &bath.top, &bath.wall, &bath.base}) {
        CHECK(side->coefficient > 0.0);
        CHECK(side->emissivity >= 0.0);
        CHECK(side->emissivity <= 1.0);
        CHECK(side->drying <= side->coefficient);
      }
      for (const Surface* side : {&dry.wall, &dry.base, &bath.wall, &bath.base}) {
        CHECK(side->resistance == doctest::Approx(wall.thickness / wall.conductivity));
        CHECK(side->drying == 0.0);
      }
      CHECK(dry.top.resistance == 0.0);
      CHECK(bath.wall.held_at == kUsualBath);
      CHECK(bath.base.held_at == kUsualBath);
      CHECK_FALSE(bath.top.held_at.has_value());
      const bool is_cold = place == Place::kRefrigerator || place == Place::kFreezer;
      CHECK((dry.top.drying > 0.0) != is_cold);
      const HeatProblem problem = slab(raw(kConductivity, kDensity, kHeatCapacity), 0.02, 4);
      const double air = place == Place::kFreezer ? kZero - 18 : kZero + 30;
      const BakeAnswer answer = run(problem, dry, kZero + 4, air, 600.0);
      CHECK((answer.mean > kZero + 4) == (air > kZero + 4));
    }
  }
  CHECK(surroundings_in(Place::kFanOven, Material::kGlass).top.coefficient >
        surroundings_in(Place::kOven, Material::kGlass).top.coefficient);
}

TEST_CASE(
    "a dark pan in a still oven takes heat at the coefficients measured on cakes, a bright one at less than half") {
  // Baik et al. 1999, J. Food Sci. 64, 688 (abstract seen): effective coefficients of 20 to 48 W/m²K in a tunnel oven
  // at 186 to 225 °C, 75 to 80 % of it radiation (here 65 to 71). Theirs moved air at up to 0.4 m/s; a still oven is
  // the lower end.
  const Surroundings dark = surroundings_in(Place::kOven, Material::kDarkSteel);
  for (const double oven : {186.0, 200.0, 225.0}) {
    for (const double surface : {60.0, 100.0}) {
      CAPTURE(oven);
      CAPTURE(surface);
      const double total = total_coefficient(dark.wall, kZero + oven, kZero + surface);
      CHECK(total > 20.0);
      CHECK(total < 48.0);
      const double radiation = 1.0 - dark.wall.coefficient / total;
      CHECK(radiation > 0.6);
      CHECK(radiation < 0.8);
    }
  }
  // Cold dough in the cooler oven: below the range that was measured.
  CHECK(total_coefficient(dark.wall, kZero + 186, kZero + 20) < 20.0);
  // A bright pan takes 8.5, for it hardly radiates.
  const Surroundings bright = surroundings_in(Place::kOven, Material::kBrightAluminium);
  CHECK(total_coefficient(bright.wall, kZero + 200, kZero + 80) == doctest::Approx(8.5).epsilon(0.02));
}

TEST_CASE("a household freezer takes heat from food and dark pans as measured, from bright pans less") {
  // Anderson, Sun, Erdogdu & Singh 2004, Int. J. Refrig. 27, 63 (abstract seen): 8 to 15 W/m²K in five household
  // freezers.
  const auto freezing = [](Material material) {
    return total_coefficient(surroundings_in(Place::kFreezer, material).wall, kZero - 18, kZero - 1);
  };
  for (const Material dark : {Material::kDarkSteel, Material::kGlass, Material::kCeramic, Material::kSilicone}) {
    CHECK(freezing(dark) > 8.0);
    CHECK(freezing(dark) < 15.0);
  }
  CHECK(freezing(Material::kBrightAluminium) < 8.0);
  const Surroundings open = surroundings_in(Place::kFreezer, Material::kGlass);
  CHECK(total_coefficient(open.top, kZero - 18, kZero - 1) > 8.0);
}

TEST_CASE("scaled surroundings exchange so many times as much, as far as an emissivity of 1 goes") {
  const Surroundings around = surroundings_in(Place::kOven, Material::kTinnedSteel, kUsualBath);
  for (const double factor : {0.7, 1.0, 1.1}) {
    const Surroundings more = scaled(around, factor);
    CHECK(more.top.coefficient == doctest::Approx(factor * around.top.coefficient));
    CHECK(more.top.drying == doctest::Approx(factor * around.top.drying));
    CHECK(more.top.emissivity == doctest::Approx(factor * around.top.emissivity));
    CHECK(more.wall.resistance == around.wall.resistance);
    CHECK(more.wall.held_at == around.wall.held_at);
    CHECK(more.humidity == around.humidity);
    CHECK(total_coefficient(more.top, kZero + 200, kZero + 80) ==
          doctest::Approx(factor * total_coefficient(around.top, kZero + 200, kZero + 80)).epsilon(1e-6));
  }
  CHECK(scaled(around, 2.0).top.emissivity == 1.0);
}

TEST_CASE("surroundings that cannot be are refused with their place") {
  const HeatProblem problem = slab(raw(kConductivity, kDensity, kHeatCapacity), 0.02, 4);
  const auto place = [&](const auto& change) {
    Surroundings around = surroundings_in(Place::kOven, Material::kGlass);
    change(around);
    Stage stage{kZero + 180, 60.0};
    stage.around = around;
    const auto answer = bake(problem, {.start = kZero + 20, .stages = {stage}});
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK_FALSE(answer.problem().message.empty());
    return answer.problem().place;
  };
  CHECK(place([](Surroundings& around) { around.top.coefficient = -1.0; }) == "stages.0.top");
  CHECK(place([](Surroundings& around) { around.wall.emissivity = 1.1; }) == "stages.0.wall");
  CHECK(place([](Surroundings& around) { around.base.resistance = std::nan(""); }) == "stages.0.base");
  CHECK(place([](Surroundings& around) { around.top.drying = -0.1; }) == "stages.0.top");
  CHECK(place([](Surroundings& around) { around.wall.held_at = 2000.0; }) == "stages.0.wall");
  CHECK(place([](Surroundings& around) { around.humidity = -0.01; }) == "stages.0");
  CHECK(place([](Surroundings& around) { around = {}; }) == "stages.0");
}

}  // namespace tinwright
