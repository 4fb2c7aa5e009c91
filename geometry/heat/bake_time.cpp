// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See bake_time.h.
#include "geometry/heat/bake_time.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <utility>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// [K] A middle so near its boiling point has as good as stopped getting warmer.
constexpr double kNearBoil = 0.5;
/// [K] A stage that moves the food less than this is carried over by its time.
constexpr double kNoticed = 0.5;

/// Plausible differences (common practice, no source, but for the first, about the spread of 20 to 48 W/m²K measured on
/// cakes by Baik et al. 1999 around its middle): exchange of heat in both ovens alike, my oven's thermostat against the
/// recipe's, and how warm my batter is.
constexpr double kLeastExchange = 0.7, kMostExchange = 1.4;  // [-]
constexpr double kOvenOff = 8.0;                             // [K]
constexpr double kBatterOff = 3.0;                           // [K]

/// The members of the band go on a coarser grid: only how much they differ from each other counts.
constexpr GridFineness kMemberFineness{12, 6, 10, 2};

/// Of the time all takes, about: what the likely bakes take on their finer grid.
constexpr double kLikelyShare = 0.3;

constexpr double kNoRows = std::numeric_limits<double>::infinity();

/// One way the oven and the food might be.
struct Member {
  double exchange = 1.0;                  // [-] both ovens
  double my_oven = 0.0, my_batter = 0.0;  // [K] mine only
  const std::array<Substance, 2>* made_of = nullptr;
};

struct Grids {
  HeatGrid recipe, mine;
};

Problem in_recipe(Problem problem) {
  problem.place = "recipe." + problem.place;
  return problem;
}

Result<Grids> make_grids(const BakeTimeQuestion& q, const GridFineness& fineness) {
  auto recipe = make_grid(q.recipe_pan, fineness);
  if (!recipe) return in_recipe(recipe.problem());
  auto mine = make_grid(q.my_pan, fineness);
  if (!mine) return mine.problem();
  return Grids{*recipe, *mine};
}

std::vector<Stage> recipe_stages(const BakeTimeQuestion& q, const Member& member) {
  std::vector<Stage> stages = q.stages;
  for (Stage& stage : stages) stage.around = scaled(*stage.around, member.exchange);
  return stages;
}

/// Rows of history shorten steps, so the recipe's run and mine keep the same ones.
BakeQuestion asked(const BakeTimeQuestion& q, std::vector<Stage> stages, double start, double report_every) {
  BakeQuestion question;
  question.start = start;
  question.stages = std::move(stages);
  question.sets_at = q.sets_at;
  question.report_every = report_every;
  return question;
}

/// An oven that cools: its stage takes the time it takes, however warm the food is.
bool falls(const Stage& stage) {
  return stage.air_before && *stage.air_before > stage.air;
}

/// The last stage in which the oven heats and the middle gets warmer.
std::size_t last_that_heats(const BakeTimeQuestion& q, const BakeAnswer& run) {
  for (std::size_t i = q.stages.size(); i-- > 0;) {
    const double before = i == 0 ? q.start : run.stage_ends[i - 1].coldest;
    if (!falls(q.stages[i]) && run.stage_ends[i].coldest > before + kNoticed) return i;
  }
  return q.stages.size() - 1;
}

Result<CarriedStages> carry_over(const BakeTimeQuestion& q, const Member& member, const HeatProblem& recipe,
                                 double report_every) {
  BakeQuestion question = asked(q, recipe_stages(q, member), q.start, report_every);
  const auto run = bake(recipe, question);
  if (!run) return in_recipe(run.problem());
  CarriedStages carried{{}, last_that_heats(q, *run), 0.0, run->stage_ends.back()};
  BakeState before{.coldest = q.start, .mean = q.start};
  const double boil = recipe.substances[0].boiling_point(0.0) - kNearBoil;
  for (std::size_t i = 0; i < q.stages.size(); ++i) {
    Stage stage = q.stages[i];
    const BakeState& end = run->stage_ends[i];
    const bool is_last = i == carried.last;
    stage.around = scaled(q.mine[i], member.exchange);
    const bool is_carried = is_last ? end.coldest > before.coldest + kNoticed && before.coldest < boil
                                    : i < carried.last && !falls(stage) && std::abs(end.mean - before.mean) > kNoticed;
    if (is_carried) {
      stage.ends_when = is_last ? Ending{Ending::Measure::kColdest, std::min(end.coldest, boil)}
                                : Ending{Ending::Measure::kMean, end.mean};
      stage.ramp = stage.duration;
      stage.duration = kLongestBake;
    }
    if (is_carried && is_last && end.coldest > boil) {
      question.until_coldest = boil;
      const auto at_boil = bake(recipe, question);
      if (!at_boil) return in_recipe(at_boil.problem());
      carried.hold = std::max(0.0, end.time - at_boil->time);
    }
    carried.stages.push_back(stage);
    before = end;
  }
  return carried;
}

/// My pan's run through them; its stage ends are theirs, the hold's after that of the last.
Result<BakeAnswer> run_mine(const BakeTimeQuestion& q, const Member& member, const CarriedStages& carried,
                            const HeatProblem& mine, double report_every) {
  BakeQuestion question = asked(q, carried.stages, q.start + member.my_batter, report_every);
  if (carried.hold > 0.0) {
    Stage hold = carried.stages[carried.last];
    hold.ends_when.reset();
    hold.duration = carried.hold;
    hold.air_before.reset();
    question.stages.insert(question.stages.begin() + static_cast<std::ptrdiff_t>(carried.last) + 1, hold);
  }
  for (Stage& stage : question.stages) {
    stage.air += member.my_oven;
    if (stage.air_before) *stage.air_before += member.my_oven;
  }
  return bake(mine, question);
}

const std::array<Substance, 2>& made_of(const BakeTimeQuestion& q, const Member& member) {
  return member.made_of != nullptr ? *member.made_of : q.substances;
}

/// How my pan's bake ends on the members' grid; nothing when it never gets there.
Result<std::optional<BakeState>> member_end(const BakeTimeQuestion& q, const Member& member,
                                            const CarriedStages& carried, const Grids& grids, long& runs) {
  const auto run = run_mine(q, member, carried, {grids.mine, made_of(q, member)}, kNoRows);
  if (!run) return run.problem();
  ++runs;
  return run->reached ? std::optional(run->stage_ends.back()) : std::nullopt;
}

/// Whether the recipe's bake is the likely one's: only my oven or my batter differ.
bool bakes_recipe_alike(const Member& member) {
  return member.exchange == 1.0 && member.made_of == nullptr;
}

/// The members that differ in one thing each, as pairs of opposite ways where there are two. Of the batter only the
/// cooler one is run: it tells within 0.06 min what the warmer one would do, in 192 pairs of pans and foods.
std::vector<Member> members(const BakeTimeQuestion& q) {
  std::vector<Member> all{{.exchange = kLeastExchange},
                          {.exchange = kMostExchange},
                          {.my_oven = -kOvenOff},
                          {.my_oven = kOvenOff},
                          {.my_batter = -kBatterOff}};
  for (const auto& substances : q.substances_else) all.push_back({.made_of = &substances});
  return all;
}

/// Differences in independent things add as the roots of squares. Sets the band of `found`, and what else its members
/// tell.
std::optional<Problem> find_band(const BakeTimeQuestion& q, BakeTime& found) {
  const auto grids = make_grids(q, kMemberFineness);
  if (!grids) return grids.problem();
  const auto carried_by = [&](const Member& member) {
    ++found.runs;
    return carry_over(q, member, {grids->recipe, made_of(q, member)}, kNoRows);
  };
  const auto usual = carried_by({});
  if (!usual) return usual.problem();
  const auto likely = member_end(q, {}, *usual, *grids, found.runs);
  if (!likely) return likely.problem();
  if (!*likely) {
    found.band = {found.time, found.time, true};
    return std::nullopt;
  }
  double earlier = 0.0;
  double later = 0.0;
  double rims = 0.0;   // [K²] by how much warmer the rim, times by how much the oven was
  double ovens = 0.0;  // [K²]
  const std::vector<Member> all = members(q);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Member& member = all[i];
    tell(q.progress,
         kLikelyShare + (1.0 - kLikelyShare) * static_cast<double>(i + 1) / static_cast<double>(all.size() + 1));
    const auto carried = bakes_recipe_alike(member) ? usual : carried_by(member);
    if (!carried) return carried.problem();
    const auto other = member_end(q, member, *carried, *grids, found.runs);
    if (!other) return other.problem();
    if (!*other) {
      found.band.is_open = true;
      continue;
    }
    const double apart = (*other)->time - (*likely)->time;
    const bool goes_both_ways = member.my_batter != 0.0;
    if (apart < 0.0 || goes_both_ways) earlier += apart * apart;
    if (apart >= 0.0 || goes_both_ways) later += apart * apart;
    rims += member.my_oven * ((*other)->rim - (*likely)->rim);
    ovens += member.my_oven * member.my_oven;
  }
  found.band.early = std::max(0.0, found.time - std::sqrt(earlier));
  found.band.late = found.time + std::sqrt(later);
  if (ovens > 0.0) found.rim_by_oven = rims / ovens;
  return std::nullopt;
}

double biot_of(const FilledPan& pan, const Substance& fill, double start) {
  constexpr double kUsualCoefficient = 22.0;  // [W/(m² K)] with radiation
  return 0.5 * kUsualCoefficient * pan.fill_height / fill.conductivity(start, 0.0);
}

GridFineness usual_fineness(const BakeTimeQuestion& q) {
  return fineness_for(
      std::max(biot_of(q.recipe_pan, q.substances[0], q.start), biot_of(q.my_pan, q.substances[0], q.start)));
}

/// My pan's likely bake, or that of the member by which it differs.
Result<BakeTime> likely_time(const BakeTimeQuestion& q, const CarriedStages& carried, const HeatProblem& problem,
                             const Member& differs) {
  const auto mine = run_mine(q, differs, carried, problem, q.report_every);
  if (!mine) return mine.problem();
  BakeTime found;
  found.time = mine->time;
  found.reached = mine->reached;
  found.recipe_end = carried.recipe_end;
  found.my_end = mine->stage_ends.back();
  found.hold_at_boil = carried.hold;
  double before = 0.0;
  for (std::size_t i = 0; i < mine->stage_ends.size(); ++i) {
    const double length = mine->stage_ends[i].time - before;
    before = mine->stage_ends[i].time;
    if (carried.hold > 0.0 && i == carried.last + 1) {
      found.stage_times.back() += length;
    } else {
      found.stage_times.push_back(length);
    }
  }
  found.mine = *mine;
  found.runs = 2;
  return found;
}

std::optional<Problem> check(const BakeTimeQuestion& q) {
  if (q.stages.empty()) return Problem{ProblemCode::kMissing, "a programme needs at least one stage", "recipe.stages"};
  if (!std::isfinite(q.start)) {
    return Problem{ProblemCode::kNotANumber, "the temperature the food starts from is not a number", "recipe.start"};
  }
  GEOMETRY_ASSERT(q.mine.size() == q.stages.size());
  for (const Stage& stage : q.stages) {
    GEOMETRY_ASSERT(stage.around.has_value());
    static_cast<void>(stage);
  }
  return std::nullopt;
}

/// Whether one step less than `steps` would surely not have done, going by the straight line from how far my rim is
/// `over` [K] the recipe's in an unchanged oven to how far it is in the changed one.
bool is_first_to_do(double over_unchanged, double over, int steps) {
  constexpr double kSurely = 0.25;  // [-] of a step: the rim goes nearly as the oven
  const double by_step = (over_unchanged - over) / steps;
  return steps == 1 || std::abs(over + by_step) > kSameRim + kSurely * std::abs(by_step);
}

}  // namespace

Result<BakeTime> bake_time(const BakeTimeQuestion& q) {
  if (auto problem = check(q)) return *problem;
  auto grids = make_grids(q, usual_fineness(q));
  if (!grids) return grids.problem();
  auto carried = carry_over(q, {}, {std::move(grids->recipe), q.substances}, q.report_every);
  if (!carried) return carried.problem();
  tell(q.progress, 0.5 * kLikelyShare);
  HeatProblem mine{std::move(grids->mine), q.substances};
  auto found = likely_time(q, *carried, mine, {});
  if (!found) return found;
  found->grid = std::move(mine.grid);
  found->carried = std::move(*carried);
  tell(q.progress, kLikelyShare);
  if (!found->reached) return found;
  if (auto problem = find_band(q, *found)) return *problem;
  return found;
}

Result<OvenChange> oven_change(const BakeTimeQuestion& q, const BakeTime& same) {
  OvenChange change;
  change.rim_over = same.my_end.rim - same.recipe_end.rim;
  if (!same.reached || std::abs(change.rim_over) <= kSameRim) return change;
  const HeatProblem mine{same.grid, q.substances};
  const double step = change.rim_over > 0.0 ? -kOvenStep : kOvenStep;
  constexpr int kMostSteps = static_cast<int>(kMostOvenChange / kOvenStep);
  // Wanted is the first step that does, or else the last at which my pan gets there; the band's members say about
  // where.
  const double apart = std::abs(change.rim_over) - kSameRim;
  int steps = 1;
  if (same.rim_by_oven > 0.0) {
    steps = std::clamp(static_cast<int>(std::ceil(apart / (same.rim_by_oven * kOvenStep))), 1, kMostSteps);
  }
  int least = 1;
  int most = kMostSteps;
  bool has_one_that_does = false;
  while (least <= steps && steps <= most) {
    const auto then = likely_time(q, same.carried, mine, {.my_oven = steps * step});
    if (!then) return then.problem();
    const double over = then->my_end.rim - then->recipe_end.rim;
    const bool does = then->reached && (std::abs(over) <= kSameRim || (over > 0.0) != (change.rim_over > 0.0));
    if (does || (then->reached && !has_one_that_does)) {
      change.by = steps * step;
      change.then = *then;
    }
    has_one_that_does = has_one_that_does || does;
    if (does && is_first_to_do(change.rim_over, over, steps)) break;
    if (then->reached && !does) {
      least = ++steps;
    } else {
      most = --steps;
    }
  }
  return change;
}

}  // namespace tinwright
