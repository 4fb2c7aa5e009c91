// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A programme of stages run on a filled pan, with what happens inside: oven, rack, refrigerator, freezer alike.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "geometry/heat/observe.h"
#include "geometry/heat/solver.h"

namespace tinwright {

/// What ends a stage before its time is up: a temperature of the food passing a value, in whichever direction it has to
/// go.
struct Ending {
  enum class Measure { kColdest, kMean, kHottest };
  Measure measure = Measure::kColdest;
  double value = 0.0;  // [K]
};

/// One stretch of the programme.
struct Stage {
  double air = 0.0;                                   // [K] held, or at its end
  double duration = 0.0;                              // [s] or the longest it may take
  std::optional<double> air_before = std::nullopt;    // [K] it starts from, when it is not held
  double lag = 0.0;                                   // [s] see Air; 0: straight to `air`
  std::optional<Surroundings> around = std::nullopt;  // else as the question's transfer says
  std::optional<Ending> ends_when = std::nullopt;
  double ramp = 0.0;  // [s] from air_before to air, without a lag; 0: all of the duration
};

struct BakeQuestion {
  double start = 0.0;  // [K] of all the food
  std::vector<Stage> stages;
  Transfer transfer = {};                              // for stages without surroundings of their own
  std::optional<double> until_coldest = std::nullopt;  // [K] stop for good when the coldest point gets there
  double report_every = 300.0;                         // [s]; endless: no history
  std::optional<double> sets_at = std::nullopt;        // [K] of the filling, for the wobble
  std::size_t watched_cell = 0;                        // whose temperature goes into every row
  double keeps_fields_to = -1.0;  // [s] answer with every cell's temperature at the rows up to here
};

struct BakeRow {
  double time = 0.0;     // [s]
  double coldest = 0.0;  // [K]
  double mean = 0.0;     // [K] by volume
  double air = 0.0;      // [K]
  double hottest = 0.0;  // [K]
  double watched = 0.0;  // [K] of the watched cell
};

/// The food at one moment.
struct BakeState {
  double time = 0.0;        // [s] since the start
  double coldest = 0.0;     // [K]
  double mean = 0.0;        // [K] by volume
  double hottest = 0.0;     // [K]
  double rim = 0.0;         // [K] mean over the warmest tenth of the filling
  double water_lost = 0.0;  // [kg]
  double wobble = 0.0;      // [m] see wobble_radius, when the filling sets
};

struct BakeAnswer {
  double time = 0.0;                        // [s] until the target was reached, else the programme's length
  bool reached = true;                      // false when a target never was
  double coldest = 0.0;                     // [K] at that time
  double mean = 0.0;                        // [K]
  double hottest = 0.0;                     // [K]
  double water_lost = 0.0;                  // [kg]
  std::size_t coldest_cell = 0;             // at that time
  double energy_imbalance = 0.0;            // [-] heat stored less heat taken in, as a share of what went through
  std::vector<BakeRow> history;             // at multiples of report_every, from 0
  std::vector<BakeState> stage_ends;        // of each stage that was run
  std::vector<std::vector<double>> fields;  // [K] by cell, for each row of history asked for
  long cells = 0, steps = 0, stages = 0;    // work done
};

/// The longest programme [s]: a week.
inline constexpr double kLongestProgramme = 7.0 * 24.0 * 3600.0;
/// Cells times stages of the solver after which a run gives up: some seconds. A day of a loaf takes a fiftieth of this.
inline constexpr double kMostWork = 1e9;
/// [s] to which the time of an ending is found.
inline constexpr double kTimeTolerance = 1e-3;

/// Runs the programme. Problem (place "stages", "start", "until.core", "transfer.…", "report_every") when there is no
/// stage, a duration or temperature is impossible, nothing carries heat to the food, or it takes too many steps. A
/// target that is never reached is an answer, with `reached` false.
Result<BakeAnswer> bake(const HeatProblem& problem, const BakeQuestion& question);

}  // namespace tinwright
