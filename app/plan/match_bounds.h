// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a half-made set cannot cost less than, depth interval by depth interval. Between two neighbouring depths of a
// common grid (the recipe's depth is one of them) each pan has a least and a largest volume, a least deviation from the
// recipe's depth and a range of shapes; sums, largest and smallest of these over the pans of a set only get worse when
// pans are added. So the bound of a half-made set holds for all sets that grow from it.
#pragma once

#include <cstddef>
#include <vector>

#include "app/plan/match.h"

namespace tinwright {

/// What is known of one pan, or of a set, in each depth interval. Index: interval, shallowest first.
struct IntervalBounds {
  std::vector<double> volume_low, volume_high;  // [m³] at the interval's lower and upper depth
  std::vector<double> deviation;                // [1] least |ln(depth / recipe's depth)| of the pan furthest off
  std::vector<double> shape_low, shape_high;  // [1] ln(bake scale / common depth²): of one pan its range; of a set the
                                              // largest of the lows and the smallest of the highs
};

/// A kind that can be used, with its bounds.
struct BoundedKind {
  std::size_t kind = 0;  // index into MatchQuestion::pans
  int count = 0;
  IntervalBounds bounds;
};

/// The usable kinds, largest at the recipe's depth first, still without bounds.
std::vector<BoundedKind> usable_kinds(const MatchQuestion& question);

/// Gives the kinds their bounds for common depths whose |ln(depth / recipe's depth)| is at most `reach`. The smaller
/// the reach the finer the grid. Returns the number of intervals; 0 when no pan gets there.
std::size_t bound_kinds(const MatchQuestion& question, double reach, std::vector<BoundedKind>& kinds);

/// volumes[k][r][i]: the most, or the least, that r more pans of the kinds k and after can hold in interval i [m³]; r
/// is 0 to most_pans. Counts are ignored for the least, so that a pan may stand for the one that would be taken.
enum class Extreme { kMost, kLeast };
using ExtremeVolumes = std::vector<std::vector<std::vector<double>>>;
ExtremeVolumes extreme_volumes(const std::vector<BoundedKind>& kinds, int most_pans, Extreme extreme);

}  // namespace tinwright
