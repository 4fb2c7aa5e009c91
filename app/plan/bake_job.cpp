// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Solves a BakeJob, see bake_job.h.
#include "app/plan/bake_job.h"

#include <algorithm>
#include <utility>

namespace tinwright {
namespace {

constexpr double kWatchedAfterOven = 3600.0;       // [s] for the carry-over, and on the page's moving picture
constexpr double kLongestCooling = 36.0 * 3600.0;  // [s] of each leg
/// [-] How much denser and lighter than it says a beaten batter may be: its air with it.
constexpr double kDenser = 1.08, kLighter = 0.92;
constexpr double kNoticeableAir = 0.02;  // [-]
/// Of the time all takes, about: what it takes until the recipe's time is carried over, and until the oven's change is
/// known.
constexpr double kTimingShare = 0.75, kChangeShare = 0.85;

/// The food with more or less air, so that it is `factor` times as dense.
std::optional<Substance> as_dense(const SubstanceChoice& choice, double factor) {
  if (!choice.food || choice.food->air < kNoticeableAir) return std::nullopt;
  Composition other = *choice.food;
  other.air = std::clamp(1.0 - (1.0 - other.air) * factor, 0.0, kMostAir);
  const auto substance = make_substance(other);
  return substance ? std::optional(*substance) : std::nullopt;
}

std::vector<std::array<Substance, 2>> other_substances(const BakeJob& job) {
  std::vector<std::array<Substance, 2>> others;
  for (const double factor : {kDenser, kLighter}) {
    const auto fill = as_dense(job.fill, factor);
    const auto dough = job.crust ? as_dense(*job.crust, factor) : fill;
    if (!fill && !dough) continue;
    others.push_back({fill.value_or(job.substances[0]), dough.value_or(job.substances[1])});
  }
  return others;
}

double biot_of(const BakeJob& job) {
  double largest = 0.0;
  for (const Surroundings& around : job.my_surroundings) {
    for (const Surface* side : {&around.top, &around.wall, &around.base}) {
      constexpr double kRadiation = 12.0;  // [W/(m² K)] of a black surface in an oven
      largest = std::max(largest, side->coefficient + kRadiation * side->emissivity);
    }
  }
  return 0.5 * largest * job.mine.fill_height / job.substances[0].conductivity(job.start, 0.0);
}

std::optional<double> sets_at(const BakeJob& job) {
  return job.fill.mixture != nullptr ? job.fill.mixture->sets_at : std::nullopt;
}

BakeTimeQuestion timing_question(const BakeJob& job) {
  return {.recipe_pan = *job.recipe,
          .my_pan = job.mine,
          .substances = job.substances,
          .start = job.start,
          .stages = job.stages,
          .mine = job.my_surroundings,
          .sets_at = sets_at(job),
          .substances_else = other_substances(job),
          .report_every = job.report_every};
}

/// The stages of my pan: the recipe's with the times found for it, or mine as given.
std::vector<Stage> stages_of_mine(const BakeJob& job, const std::optional<BakeTime>& timing) {
  std::vector<Stage> stages = job.stages;
  for (std::size_t i = 0; i < stages.size(); ++i) {
    stages[i].around = job.my_surroundings[i];
    if (timing && i < timing->stage_times.size()) stages[i].duration = timing->stage_times[i];
  }
  return stages;
}

/// Rack, then refrigerator or freezer.
void add_cooling(std::vector<Stage>& stages, const BakeJob& job) {
  const Material material = job.mine.pan.material;
  Stage rack{job.cooling->room, job.cooling->rack.value_or(kLongestCooling)};
  rack.around = surroundings_in(Place::kRack, material);
  if (!job.cooling->rack) rack.ends_when = Ending{Ending::Measure::kHottest, job.cooling->room + kRoomReached};
  stages.push_back(rack);
  if (!job.cooling->store) return;
  const bool freezes = *job.cooling->store < kZeroCelsius;
  Stage store{*job.cooling->store, kLongestCooling};
  store.around = surroundings_in(freezes ? Place::kFreezer : Place::kRefrigerator, material);
  store.ends_when = Ending{Ending::Measure::kHottest, freezes ? kFrozenCore : kColdCore};
  stages.push_back(store);
}

/// [s] after `from` when the warmest point first falls to `temperature`, by the rows of a history.
std::optional<double> falls_to(const std::vector<BakeRow>& history, double from, double temperature) {
  for (std::size_t i = 1; i < history.size(); ++i) {
    const BakeRow& before = history[i - 1];
    const BakeRow& now = history[i];
    if (now.time <= from || now.hottest > temperature) continue;
    if (before.hottest <= temperature) return std::max(0.0, before.time - from);
    const double along = (before.hottest - temperature) / (before.hottest - now.hottest);
    return std::max(0.0, before.time + along * (now.time - before.time) - from);
  }
  return std::nullopt;
}

CoolingAnswer cooling_of(const BakeAnswer& run, const BakeJob& job, double oven_time) {
  CoolingAnswer cooling;
  const double end = run.stage_ends.back().time;
  const auto found = [&](double temperature) {
    const auto passed = falls_to(run.history, oven_time, temperature);
    if (passed) return passed;
    return run.hottest <= temperature + 1e-3 ? std::optional(end - oven_time) : std::nullopt;
  };
  cooling.room = found(job.cooling->room + kRoomReached);
  cooling.cold = found(kColdCore);
  cooling.frozen = found(kFrozenCore);
  const auto at_57 = found(kZeroCelsius + 57.0);
  const auto at_21 = found(kZeroCelsius + 21.0);
  if (at_57 && at_21) cooling.to_21 = *at_21 - *at_57;
  if (at_21 && cooling.cold) cooling.to_5 = *cooling.cold - *at_21;
  for (const BakeRow& row : run.history) {
    if (row.time < oven_time || row.watched <= cooling.carried_over) continue;
    cooling.carried_over = row.watched;
    cooling.carried_over_at = row.time - oven_time;
  }
  return cooling;
}

}  // namespace

std::optional<BakeJobAnswer> solve_bake(FieldReader& reader, const BakeJob& job, const std::string& prefix,
                                        const Progress& progress) {
  const auto failed = [&](const Problem& problem) -> std::optional<BakeJobAnswer> {
    reader.fault(problem, prefix);
    return std::nullopt;
  };
  BakeJobAnswer answer;
  if (job.recipe) {
    BakeTimeQuestion question = timing_question(job);
    if (progress) question.progress = [&](double done) { progress(kTimingShare * done); };
    auto timing = bake_time(question);
    if (!timing) return failed(timing.problem());
    tell(progress, kTimingShare);
    const auto change = oven_change(question, *timing);
    if (!change) return failed(change.problem());
    answer.change = *change;
    answer.grid = std::move(timing->grid);
    answer.run = std::move(timing->mine);
    answer.timing = std::move(*timing);
  } else {
    const auto grid = make_grid(job.mine, fineness_for(biot_of(job)));
    if (!grid) return failed(grid.problem());
    answer.grid = *grid;
  }
  tell(progress, kChangeShare);
  answer.my_stages = stages_of_mine(job, answer.timing);
  BakeQuestion question{.start = job.start, .stages = answer.my_stages};
  question.until_coldest = job.until_coldest;
  question.report_every = job.report_every;
  question.sets_at = sets_at(job);
  const HeatProblem problem{answer.grid, job.substances};
  if (!job.recipe) {
    const auto run = bake(problem, question);
    if (!run) return failed(run.problem());
    answer.run = *run;
  }
  answer.oven_time = answer.run.time;
  answer.wobble = answer.run.stage_ends.empty() ? 0.0 : answer.run.stage_ends.back().wobble;
  if (!job.cooling || !answer.run.reached) return answer;

  // Once more with what follows, now that the oven's time is known.
  double left = answer.oven_time;
  question.stages.clear();
  for (Stage stage : answer.my_stages) {
    if (left <= 0.0) break;
    stage.duration = std::min(stage.duration, left);
    left -= stage.duration;
    question.stages.push_back(stage);
  }
  answer.my_stages = question.stages;
  add_cooling(question.stages, job);
  question.until_coldest.reset();
  question.watched_cell = answer.run.coldest_cell;  // the middle, which on the rack is no longer the coldest
  question.keeps_fields_to = answer.oven_time + kWatchedAfterOven;
  const auto longer = bake(problem, question);
  if (!longer) return failed(longer.problem());
  answer.cooling = cooling_of(*longer, job, answer.oven_time);
  answer.run.history = longer->history;
  answer.run.fields = longer->fields;
  answer.run.stage_ends = longer->stage_ends;
  return answer;
}

}  // namespace tinwright
