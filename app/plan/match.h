// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Which of my pans takes this batch.
//
// All pans of a set are filled to one depth, so that they bake alike; a pan whose limit is lower is filled to its
// limit. That common depth is
//   - the depth at which everything is in the pans, or
//   - the recipe's depth, or one of the set's limits, where that is lower and costs less; the rest is left over.
// A set that holds the whole batch below the recipe's depth is simply shallower.
//
// The cost of a set is a sum of four terms, each in the same coin: 0.01 is a hundredth of the depth.
//
//     depth      kDepthWeight · max over the pans of |ln(depth / recipe's depth)|
//     left over  kLeftoverWeight · share of the batch that is left over
//     spread     kSpreadWeight · ln(longest bake scale / shortest), see depth_table.h
//     pans       kPanWeight · ln(number of pans / the recipe's number), 0 where it is not more
//
// The search is exact: no other set of at most `most_pans` pans is cheaper than the last one returned by more than
// `tolerance`, unless `proven` says that it was stopped. It takes the sets by number of pans and stops when one pan
// more costs more than all that is still to be gained; within a number it adds pan by pan (largest first) and drops a
// half-made set as soon as no depth is left at which what it lacks could make it cheap (branch and bound).
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "app/plan/depth_table.h"
#include "geometry/problem.h"

namespace tinwright {

/// The coin: a tenth deeper or shallower costs about 0.1.
inline constexpr double kDepthWeight = 1.0;

/// At this weight an upright set is filled to 1.6 times the recipe's depth before any is left over
/// (ln x = 1.25 (1 − 1/x)); deeper than that it would bake 2.5 times as long (x²) and is another cake.
inline constexpr double kLeftoverWeight = 1.25;

/// Bake time goes with about the square of the depth, so one that differs by a factor costs half as much as a depth
/// that does.
inline constexpr double kSpreadWeight = 0.5;

/// Twice as many tins to butter, fill and wash are worth what the next size of tin changes: tins come in steps of 2 cm,
/// and 26 cm instead of 24 cm makes a layer 16 % thinner (ln (26/24)² = 0.16 = 0.23 ln 2). By the number's logarithm,
/// so that the eighth tin of a large batch counts for little. Our own judgement, no source.
inline constexpr double kPanWeight = 0.23;

/// Sets hold at most this many pans: more do not go into a household oven at once (common practice, no source).
inline constexpr int kMostPans = 8;

/// Differences in cost that are not looked for: half a per cent of the depth, which nobody pours to.
inline constexpr double kCostTolerance = 0.005;

/// Work before the search is stopped and says so, in half-made sets looked at (a set with its price counts for 8). A
/// cupboard of 60 kinds needs some thousands, more where many pans are nearly alike.
inline constexpr std::int64_t kMostNodes = 200'000;

struct PanKind {
  std::string name;  // "20 cm springform"
  int count = 1;     // how many of them are free; 0: none is, it is left out
  DepthTable table;  // of one pan
};

struct MatchQuestion {
  double volume = 0.0;      // [m³] of the batch, > 0
  double depth = 0.0;       // [m] of its filling in the recipe's pan, > 0
  double bake_scale = 0.0;  // [m²] of the recipe's pan at that depth; 0: not known
  int recipe_pans = 1;      // how many pans the recipe fills with it, >= 1
  std::vector<PanKind> pans;
  int most_pans = kMostPans;          // 1 to kMostPans
  int answers = 5;                    // sets wanted, >= 1
  double tolerance = kCostTolerance;  // [1] of cost, >= 0; 0 finds the very best among sets that differ by nothing
};

/// So many pans of one kind, all filled alike.
struct ChosenPan {
  std::size_t kind = 0;      // index into MatchQuestion::pans
  int count = 0;             // >= 1
  double depth = 0.0;        // [m] of the filling
  double volume = 0.0;       // [m³] in each
  double bake_factor = 0.0;  // [1] bake scale over the recipe's; 0 where that is not known
};

struct PanSet {
  std::vector<ChosenPan> pans;  // largest first
  double depth = 0.0;           // [m] common to all that reach it
  double leftover = 0.0;        // [m³] of the batch that stays in the bowl; exactly 0 where all is in
  double depth_cost = 0.0, leftover_cost = 0.0, spread_cost = 0.0, pans_cost = 0.0;

  double cost() const { return depth_cost + leftover_cost + spread_cost + pans_cost; }
  bool all_in() const { return leftover == 0.0; }
};

struct MatchAnswer {
  std::vector<PanSet> sets;  // cheapest first, all different; fewer than wanted if there are no more
  bool proven = true;        // false: stopped at kMostNodes, there may be cheaper sets
  std::int64_t nodes = 0;    // work done, counted as for kMostNodes
};

/// The best sets. A cupboard with a usable pan always has an answer, however costly; what is wrong with it is in its
/// terms. Refused: a volume, depth or bake scale that cannot be (kOutOfRange, place "volume", "depth" or "bake_scale"),
/// no usable pan (kMissing, place "pans").
Result<MatchAnswer> match_pans(const MatchQuestion& question);

/// The best sets for what `set` leaves over, from the pans it does not use. Refused like match_pans: nothing left over
/// is kOutOfRange, no free pan kMissing.
Result<MatchAnswer> pans_for_leftover(const MatchQuestion& question, const PanSet& set);

/// The other way round: what has to be made to fill these pans (kind and count are read) to `depth` [m].
struct AmountToMake {
  double volume = 0.0;     // [m³]
  double factor = 0.0;     // [1] of the question's batch
  bool is_capped = false;  // a pan's limit is below that depth; it is filled to its limit
};
AmountToMake amount_to_fill(const MatchQuestion& question, const std::vector<ChosenPan>& pans, double depth);

}  // namespace tinwright
