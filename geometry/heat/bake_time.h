// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How long in my pan, from how long in the recipe's. The recipe's own bake is run; the state it ends in is what "done"
// means; then my pan is run until it is in that state. What is not known of oven and batter cancels to first order, and
// what does not is shown as a band: every plausible oven and batter is calibrated by itself.
//
// A stage of the recipe's programme that is followed by another ends in my pan when its food is as warm on average as
// the recipe's was then; the last one that heats ends when the coldest point is as warm. Stages in which the oven
// falls, and those after the last that heats, keep their time. Where the recipe ends with its middle at the boil, and
// so no longer getting warmer, my pan gets there and then stays as long as the recipe's did.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "geometry/heat/bake.h"
#include "geometry/heat/kitchen.h"
#include "geometry/progress.h"

namespace tinwright {

struct BakeTimeQuestion {
  FilledPan recipe_pan, my_pan;
  std::array<Substance, 2> substances;  // by Part, of both
  double start = 0.0;                   // [K] of both
  std::vector<Stage> stages;            // the recipe's, each with surroundings
  std::vector<Surroundings> mine;       // of my pan in the same stages
  std::optional<double> sets_at;        // [K] of the filling, for the wobble
  /// Lighter and denser, or moister and drier: how the substances might be as well. Each is one more member of the
  /// band.
  std::vector<std::array<Substance, 2>> substances_else;
  double report_every = 60.0;  // [s] rows of the likely run
  Progress progress = {};      // of bake_time
};

/// By how much the cook's oven and batter may differ; see bake_time.cpp for where each comes from.
struct BakeBand {
  double early = 0.0, late = 0.0;  // [s] around the likely time
  bool is_open = false;            // some plausible oven never gets there, so that `late` is not the end of it
};

/// How the stages go in my pan: those of the recipe, with endings in place of their times where the food decides.
struct CarriedStages {
  std::vector<Stage> stages;
  std::size_t last = 0;  // the one that ends with the food done; what follows it goes by time
  double hold = 0.0;     // [s] at the boil, in a stage of its own after that one
  BakeState recipe_end;  // what they carry over
};

struct BakeTime {
  double time = 0.0;  // [s] in the oven, likely
  BakeBand band;
  std::vector<double> stage_times;  // [s] of each stage in my pan; sums to time
  BakeState recipe_end, my_end;
  double hold_at_boil = 0.0;  // [s] that the middle stays at the boil; 0 where it does not get there
  bool reached = true;        // false when my pan does not get there in kLongestBake
  HeatGrid grid;              // of my pan
  CarriedStages carried;      // what the likely run was asked
  double rim_by_oven = 0.0;   // [-] by how much warmer my rim ends in a warmer oven, about; 0 where that is not known
  BakeAnswer mine;            // the likely run
  long runs = 0;              // simulations done
};

/// [s] A bake this long is no bake.
inline constexpr double kLongestBake = 12.0 * 3600.0;

/// Problem as bake and make_grid; place "recipe.…" for the recipe's pan.
Result<BakeTime> bake_time(const BakeTimeQuestion& question);

/// What the oven should be set to so that the rim fares as in the recipe, when the depth is much different.
struct OvenChange {
  double by = 0.0;               // [K] added to every stage; 0 when the recipe's temperature will do
  double rim_over = 0.0;         // [K] my rim at the end above the recipe's, at the recipe's temperature
  std::optional<BakeTime> then;  // the bake at the changed temperature
};
/// The first of lower (or higher) ovens in steps of kOvenStep at which the rim ends within kSameRim of the recipe's, at
/// most kMostOvenChange away; tried from where the band's members say it is.
Result<OvenChange> oven_change(const BakeTimeQuestion& question, const BakeTime& at_recipe_temperature);

inline constexpr double kOvenStep = 5.0;         // [K]
inline constexpr double kSameRim = 5.0;          // [K]
inline constexpr double kMostOvenChange = 40.0;  // [K]

}  // namespace tinwright
