// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A filled pan through a programme of stages, and how long that programme takes in my pan when a recipe gives it for
// another. Reading is in bake_reader.cpp, what is said about it in bake_words.cpp.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "app/files/fields.h"
#include "app/files/substance_reader.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"
#include "geometry/heat/bake.h"
#include "geometry/heat/bake_time.h"
#include "geometry/heat/food_components.h"

namespace tinwright {

/// The words for places in a programme, in the order of Place: oven, fan oven, rack, refrigerator, freezer.
const std::vector<std::string_view>& place_names();

struct BakeJob {
  FilledPan mine;
  std::optional<FilledPan> recipe = std::nullopt;  // when times are given for another pan
  SubstanceChoice fill;
  std::optional<SubstanceChoice> crust = std::nullopt;
  std::array<Substance, 2> substances;  // by Part
  /// The recipe's programme where there is a recipe, else mine; every stage with its surroundings.
  std::vector<Stage> stages = {};
  std::vector<Surroundings> my_surroundings = {};      // of each stage, in my pan
  double start = 0.0;                                  // [K]
  std::optional<double> until_coldest = std::nullopt;  // [K]
  double report_every = 300.0;                         // [s]
  struct Cooling {
    double room = 293.15;         // [K]
    std::optional<double> rack;   // [s]; else until the food is within kRoomReached of the room
    std::optional<double> store;  // [K] refrigerator or freezer air after the rack
  };
  std::optional<Cooling> cooling = std::nullopt;
  bool is_dry = true;         // all constants: nothing can evaporate
  bool egg_or_dairy = false;  // a filling that has to be kept cold
};

/// [K] above the room at which food counts as cooled to it; and the cores that count as cold and as frozen.
inline constexpr double kRoomReached = 5.0;
inline constexpr double kColdCore = 273.15 + 5.0;     // FDA Food Code 3-501.14
inline constexpr double kFrozenCore = 273.15 - 15.0;  // within 3 K of a freezer at -18 °C

/// Reads {pan, lining?: {floor, wall, height, substance}, fill: {height, substance}, start, stages, transfer?: {top,
/// wall, base}, until?: {core}, report_every?, recipe?: {pan, lining?: {floor, wall, height}, fill: {height}, stages},
/// cool?: {room?, rack?, store?}} under `prefix`. A stage is {air, for, from?, in?, bath?, lag?, off?}. With a recipe
/// its stages are carried over to the pan, and there are none beside it.
std::optional<BakeJob> read_bake_job(FieldReader& reader, const std::string& prefix = "");

/// The same with pans and linings that were worked out already.
struct BakePans {
  FilledPan mine;
  std::optional<FilledPan> recipe;
};
std::optional<BakeJob> read_bake_job(FieldReader& reader, const std::string& prefix, const BakePans& pans);

struct CoolingAnswer {
  std::optional<double> room, cold, frozen;  // [s] after the oven, when the warmest point gets there
  double carried_over = 0.0;                 // [K] the highest the oven's coldest place gets
  double carried_over_at = 0.0;              // [s] after the oven
  std::optional<double> to_21, to_5;         // [s] from 57 to 21 °C, and on from there to 5 °C, at the warmest point
};

struct BakeJobAnswer {
  BakeAnswer run;  // my pan: the whole programme with cooling; `time` and what belongs to it at the end of the oven
  double oven_time = 0.0;            // [s]
  double wobble = 0.0;               // [m] as it comes out, see wobble_radius; 0 for what does not set
  std::vector<Stage> my_stages;      // as run, cooling left out
  std::optional<BakeTime> timing;    // with a recipe
  std::optional<OvenChange> change;  // with a recipe
  std::optional<CoolingAnswer> cooling;
  HeatGrid grid;  // of my pan, for drawing run.fields
};

std::optional<BakeJobAnswer> solve_bake(FieldReader& reader, const BakeJob& job, const std::string& prefix = "",
                                        const Progress& progress = {});

/// The answer in one sentence: "Bake it for about 34 min in your pan: start looking after 31 min."
std::string bake_sentence(const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice);
/// The label of the line that says bake_sentence's time with its band.
inline constexpr const char* kInMyPan = "In my pan";
Report describe_bake(const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice);

}  // namespace tinwright
