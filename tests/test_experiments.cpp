// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The heat solver against measurements that others have published. Nothing is fitted: what a source does not say is
// taken from textbooks or from the kitchen's own surroundings, and said here. Bands come from the scatter of the
// experiments and from what is not known of them; where the solver misses, less is asserted, and why. Bread in a tin is
// in test_experiment_bread.cpp.
#include <algorithm>
#include <cmath>
#include <string_view>

#include <doctest/doctest.h>

#include "tests/bake_cases.h"
#include "tests/csv_rows.h"

namespace tinwright {

extern const std::string_view kExperimentCoolingMeatCsv;
extern const std::string_view kExperimentPoundCakeCsv;

namespace {

using bake_cases::mixture;
using bake_cases::rectangle;
using bake_cases::round;
using bake_cases::run;
using bake_cases::substance_of;
using foods::kZero;

constexpr double kPi = 3.14159265358979323846;
constexpr double kHour = 3600.0, kMinute = 60.0;  // [s]

// ---- Cooked meat cooling ----

/// [W/m²K] of air at 17 °C along a flat plate, Nu = 0.664 Re^(1/2) Pr^(1/3), and across a cylinder (Churchill &
/// Bernstein 1977); both, with the properties of air, from memory of Incropera's textbook.
constexpr double kAirViscosity = 1.5e-5, kAirConductivity = 0.0256, kAirPrandtl = 0.71;
double along_plate(double speed, double length) {
  const double reynolds = speed * length / kAirViscosity;
  return 0.664 * std::sqrt(reynolds) * std::cbrt(kAirPrandtl) * kAirConductivity / length;
}
double across_cylinder(double speed, double diameter) {
  const double reynolds = speed * diameter / kAirViscosity;
  const double nusselt = 0.3 + 0.62 * std::sqrt(reynolds) * std::cbrt(kAirPrandtl) /
                                   std::pow(1.0 + std::pow(0.4 / kAirPrandtl, 2.0 / 3.0), 0.25) *
                                   std::pow(1.0 + std::pow(reynolds / 282000.0, 0.625), 0.8);
  return nusselt * kAirConductivity / diameter;
}

Substance cooked_beef() {
  return substance_of({.water = 0.60, .protein = 0.30, .fat = 0.09, .ash = 0.01});
}

/// A square slab, or a round roll stood on end, of `volume` [m³]; the sides the source leaves out follow from that.
FilledPan joint(bool is_slab, double volume, double thickness) {
  const double across = std::sqrt(volume / thickness);
  return is_slab ? rectangle(across, across, thickness)
                 : round(thickness, volume / (0.25 * kPi * thickness * thickness));
}

Surface in_water() {
  Surface side;
  side.coefficient = 300.0;
  return side;
}

Surface in_air(bool is_slab, const FilledPan& meat) {
  constexpr double kSpeed = 1.2;  // [m/s]
  const double across = 2.0 * meat.pan.outline.curve.closes_at();
  Surface side;
  side.coefficient = side.drying = is_slab ? along_plate(kSpeed, across) : across_cylinder(kSpeed, across);
  side.emissivity = 0.9;
  return side;
}

struct Cooling {
  double from_50 = 0.0, from_70 = 0.0;  // [h] to 10 °C at the warmest point
};

/// All sides alike; bare meat has no pan, and lies so that air or water gets to all of it.
Cooling cool(const FilledPan& meat, const Substance& beef, const Surface& side) {
  Stage warm;
  warm.air = kZero;
  warm.duration = 24.0 * kHour;
  warm.around = Surroundings{side, side, side, 0.0034};  // 0 °C, 90 % of saturation: assumed, matters little
  warm.ends_when = Ending{Ending::Measure::kHottest, kZero + 50.0};
  Stage cold = warm;
  cold.ends_when->value = kZero + 10.0;
  const double biot = 0.5 * (side.coefficient + 5.0 * side.emissivity) * meat.fill_height / 0.45;
  const HeatProblem problem{heat_cases::grid_of(meat, fineness_for(std::min(biot, 1.0))), {beef, beef}};
  const BakeAnswer answer = run(problem, {.start = kZero + 70.0, .stages = {warm, cold}, .report_every = kHour});
  REQUIRE(answer.reached);
  return {(answer.time - answer.stage_ends[0].time) / kHour, answer.time / kHour};
}

}  // namespace

TEST_CASE("cooked beef cools in water and in moving air as measured, 70 to 10 °C") {
  // Composition of cooked lean beef from memory of USDA's tables. The rolled joints lie in the experiment and stand
  // here, all sides bare. Water: the kitchen's 300 W/m²K, in the textbooks' 50 to 1000 for still liquids. Air:
  // convection as above, radiation to walls as cold as the air, and a wet surface that dries. Bands, around the range
  // of joints alike in mass, thickness and medium (one slab; two rolls, 4 to 16 % apart): food conductivities are good
  // to 10 %, times are printed to 4 %, two such rolls scatter by 10 %: 15 % for water. Correlations of convection are
  // good to 20 %, of which three quarters count where the surface limits: 25 % for air. Not asserted: 50 to 10 °C of
  // the rolls, measured 20 to 60 % longer than here, and in water longer than even a surface held at 0 °C would allow
  // with the conductivity of beef. Rolls hold fat and gaps, and start less even than 70 °C all through.
  const Substance beef = cooked_beef();
  struct Range {
    double from_50_low = 1e9, from_50_high = 0.0, from_70_low = 1e9, from_70_high = 0.0;  // [h]
  };
  for (const bool is_slab : {true, false}) {
    for (const bool is_water : {true, false}) {
      CAPTURE(is_slab);
      CAPTURE(is_water);
      Range measured;
      double mass = 0.0, thickness = 0.0;
      for (const auto& row : reference::rows(kExperimentCoolingMeatCsv)) {
        if ((row.text("shape") == "slab") != is_slab || (row.text("medium") == "water") != is_water) continue;
        mass = row.number("mass_kg");
        thickness = 1e-3 * row.number("thickness_mm");
        measured.from_50_low = std::min(measured.from_50_low, row.number("t_50_10"));
        measured.from_50_high = std::max(measured.from_50_high, row.number("t_50_10"));
        measured.from_70_low = std::min(measured.from_70_low, row.number("t_70_10"));
        measured.from_70_high = std::max(measured.from_70_high, row.number("t_70_10"));
      }
      const FilledPan meat = joint(is_slab, mass / beef.table().density(), thickness);
      const Cooling ours = cool(meat, beef, is_water ? in_water() : in_air(is_slab, meat));
      const double band = is_water ? 0.15 : 0.25;
      CHECK(ours.from_70 > (1.0 - band) * measured.from_70_low);
      CHECK(ours.from_70 < (1.0 + band) * measured.from_70_high);
      if (!is_slab) continue;
      CHECK(ours.from_50 > (1.0 - band) * measured.from_50_low);
      CHECK(ours.from_50 < (1.0 + band) * measured.from_50_high);
    }
  }
}

TEST_CASE("without the water that dries off, beef in air would cool too slowly") {
  // That the agreement above is not luck: the same slab, dry, leaves its band (measured 2.1 h).
  const Substance beef = cooked_beef();
  const FilledPan slab = joint(true, 0.94 / beef.table().density(), 0.05);
  Surface side = in_air(true, slab);
  side.drying = 0.0;
  CHECK(cool(slab, beef, side).from_70 > 1.25 * 2.1);
}
// ---- Pound cake in five ovens ----

TEST_CASE("a pound cake's time at 170 °C predicts those at 150, 160 and 180 °C; at 190 °C the direction only") {
  // Assumed: tin of 18 x 8 cm in a still oven, batter of the catalogue as poured, 20 °C. Done is what bake_time says:
  // the middle as at 170 °C, or at the boil for as long. Times are published to 5 min, there and at 170 °C: 9 %. The
  // best time at 190 °C is 14 % shorter than here, so of that only the direction is asserted. Best was judged by
  // eating; crust, which the solver's middle knows nothing of, may be why.
  const FilledPan tin = rectangle(0.18, 0.08, 0.3 / 840.0 / (0.18 * 0.08));
  const Substance batter = mixture("pound-cake");
  const HeatProblem problem{heat_cases::grid_of(tin, fineness_for(0.5 * 22.0 * tin.fill_height / 0.25)),
                            {batter, batter}};
  const auto oven = [](double air_c, double minutes) {
    return bake_cases::stage(air_c, minutes, Place::kOven, Material::kTinnedSteel);
  };
  const double recipe_time = 42.5 * kMinute;
  const BakeAnswer recipe = run(problem, {.start = kZero + 20.0, .stages = {oven(170.0, 42.5)}});
  const double core = std::min(recipe.coldest, batter.boiling_point(0.0) - 0.5);
  const auto time_to_core = [&](double air_c) {
    const BakeAnswer answer =
        run(problem, {.start = kZero + 20.0, .stages = {oven(air_c, 240.0)}, .until_coldest = core});
    REQUIRE(answer.reached);
    return answer.time;
  };
  const double stays = recipe_time - time_to_core(170.0);
  CHECK(stays >= 0.0);
  double before = 1e9;
  for (const auto& row : reference::rows(kExperimentPoundCakeCsv)) {
    CAPTURE(row.text("oven_c"));
    const double ours = (time_to_core(row.number("oven_c")) + stays) / kMinute;
    const double theirs = 0.5 * (row.number("from_min") + row.number("to_min"));
    CHECK(ours < before);
    before = ours;
    if (row.number("oven_c") < 185.0) CHECK(shapes::relative_error(ours, theirs) < 0.09);
  }
}

}  // namespace tinwright
