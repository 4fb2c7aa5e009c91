// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A programme of stages run on a filled pan, with what happens inside.
#pragma once

#include <optional>
#include <vector>

#include "geometry/heat/solver.h"

namespace tinwright {

/// Air held at one temperature for a while.
struct Stage {
  double air = 0.0;       // [K]
  double duration = 0.0;  // [s]
};

struct BakeQuestion {
  double start = 0.0;  // [K] of all the food
  std::vector<Stage> stages;
  Transfer transfer;
  std::optional<double> until_coldest = std::nullopt;  // [K] stop when the coldest point gets there
  double report_every = 300.0;                         // [s]
};

struct BakeRow {
  double time = 0.0;     // [s]
  double coldest = 0.0;  // [K]
  double mean = 0.0;     // [K] by volume
  double air = 0.0;      // [K]
};

struct BakeAnswer {
  double time = 0.0;                      // [s] until the coldest point got there, else the programme's length
  bool reached = true;                    // false when it never did
  double coldest = 0.0;                   // [K] at that time
  double mean = 0.0;                      // [K]
  double hottest = 0.0;                   // [K] the warmest cell, which cools last
  double energy_imbalance = 0.0;          // [-] heat stored less heat taken in, as a share of what went through
  std::vector<BakeRow> history;           // at multiples of report_every, from 0
  long cells = 0, steps = 0, stages = 0;  // work done
};

/// The longest programme [s]: a week.
inline constexpr double kLongestProgramme = 7.0 * 24.0 * 3600.0;
/// Steps after which a run gives up; a week takes a quarter of this.
inline constexpr long kMostSteps = 200000;

/// Runs the programme. Problem (place "stages", "start", "until.core", "transfer.…", "report_every") when there is no
/// stage, a duration or temperature is impossible, nothing carries heat to the food, or the target lies beyond what the
/// air can reach.
Result<BakeAnswer> bake(const HeatProblem& problem, const BakeQuestion& question);

}  // namespace tinwright
