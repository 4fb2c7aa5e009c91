// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See match_bounds.h.
#include "app/plan/match_bounds.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace tinwright {
namespace {

// The grid, in ln depth [1]. Shorter steps cost more for each bound, longer ones let more sets through.
constexpr double kFewestSteps = 32.0;   // from the recipe's depth to either end of the reach
constexpr double kLongestStep = 0.03;   // however wide the reach
constexpr double kShortestStep = 1e-3;  // however narrow: a fifth of kCostTolerance is short enough
constexpr double kFarthest = 3.0;       // from the recipe's depth: one interval takes all that is shallower
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Growing depths within the reach, up to the highest limit of a pan; the recipe's depth is one of them if it is below
/// that. Empty when the reach lies above the highest limit.
std::vector<double> common_depths(const MatchQuestion& question, double reach) {
  double highest = 0.0;
  for (const PanKind& pan : question.pans) {
    if (pan.count > 0) highest = std::max(highest, depth_limit(pan.table));
  }
  const double near = std::min(reach, kFarthest);
  const double steps = std::max(kFewestSteps, std::ceil(near / kLongestStep));
  const double step = std::max(near / steps, kShortestStep);
  const int first = -static_cast<int>(std::ceil(near / step));
  std::vector<double> depths;
  if (reach > kFarthest) depths.push_back(0.0);
  for (int i = first;; ++i) {
    const double depth = question.depth * std::exp(step * i);  // i = 0 is the recipe's depth itself
    if (depth >= highest || (i > -first && step * i > reach)) break;
    depths.push_back(depth);
  }
  if (!depths.empty() && depths.back() < question.depth * std::exp(reach)) depths.push_back(highest);
  return depths;
}

struct Range {
  double low = kInfinity, high = -kInfinity;
  void take(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
};

/// Range of ln(bake scale / common depth²) for common depths in [low, high]. Up to the pan's limit it is the table's
/// shape, which is linear between its samples; from there it falls with the common depth.
Range shape_range(const DepthTable& table, double low, double high) {
  const double limit = depth_limit(table);
  Range range;
  if (low < limit) {
    const double top = std::min(high, limit);
    range.take(shape_at(table, low));
    range.take(shape_at(table, top));
    for (std::size_t i = 0; i < table.depth.size(); ++i) {
      if (table.depth[i] > low && table.depth[i] < top) range.take(table.shape[i]);
    }
  }
  if (high > limit) {
    range.take(shape_at(table, limit) + 2.0 * std::log(limit / std::max(low, limit)));
    range.take(shape_at(table, limit) + 2.0 * std::log(limit / high));
  }
  return range;
}

IntervalBounds bounds_of(const MatchQuestion& question, const DepthTable& table, const std::vector<double>& depths) {
  IntervalBounds bounds;
  const double limit = depth_limit(table);
  for (std::size_t i = 0; i + 1 < depths.size(); ++i) {
    const double low = std::min(depths[i], limit), high = std::min(depths[i + 1], limit);
    const double deviation_low = low > 0.0 ? std::abs(std::log(low / question.depth)) : kInfinity;
    const bool holds_recipe_depth = low < question.depth && question.depth < high;
    const Range shape = shape_range(table, depths[i], depths[i + 1]);
    bounds.volume_low.push_back(volume_at(table, low));
    bounds.volume_high.push_back(volume_at(table, high));
    bounds.deviation.push_back(holds_recipe_depth ? 0.0
                                                  : std::min(deviation_low, std::abs(std::log(high / question.depth))));
    bounds.shape_low.push_back(shape.low);
    bounds.shape_high.push_back(shape.high);
  }
  return bounds;
}

}  // namespace

std::vector<BoundedKind> usable_kinds(const MatchQuestion& question) {
  std::vector<BoundedKind> kinds;
  for (std::size_t k = 0; k < question.pans.size(); ++k) {
    if (question.pans[k].count > 0) kinds.push_back({k, question.pans[k].count, {}});
  }
  const auto volume = [&](const BoundedKind& kind) {
    return volume_at(question.pans[kind.kind].table, question.depth);
  };
  std::stable_sort(kinds.begin(), kinds.end(),
                   [&](const BoundedKind& a, const BoundedKind& b) { return volume(a) > volume(b); });
  return kinds;
}

std::size_t bound_kinds(const MatchQuestion& question, double reach, std::vector<BoundedKind>& kinds) {
  const std::vector<double> depths = common_depths(question, reach);
  if (depths.size() < 2) return 0;
  for (BoundedKind& kind : kinds) kind.bounds = bounds_of(question, question.pans[kind.kind].table, depths);
  return depths.size() - 1;
}

ExtremeVolumes extreme_volumes(const std::vector<BoundedKind>& kinds, int most_pans, Extreme extreme) {
  const bool wants_most = extreme == Extreme::kMost;
  const std::size_t intervals = kinds.front().bounds.volume_high.size();
  const auto pans = static_cast<std::size_t>(most_pans);
  ExtremeVolumes volumes(kinds.size() + 1, std::vector(pans + 1, std::vector<double>(intervals, 0.0)));
  std::vector<double> sorted;  // of the kinds so far, the extreme ones first
  for (std::size_t i = 0; i < intervals; ++i) {
    sorted.clear();
    for (std::size_t k = kinds.size(); k-- > 0;) {
      const IntervalBounds& bounds = kinds[k].bounds;
      const double volume = wants_most ? bounds.volume_high[i] : bounds.volume_low[i];
      const auto place = wants_most ? std::upper_bound(sorted.begin(), sorted.end(), volume, std::greater<>())
                                    : std::upper_bound(sorted.begin(), sorted.end(), volume);
      sorted.insert(place, static_cast<std::size_t>(std::min(kinds[k].count, most_pans)), volume);
      if (sorted.size() > pans) sorted.resize(pans);
      double sum = 0.0;
      for (std::size_t r = 1; r <= pans; ++r) {
        if (r <= sorted.size()) sum += sorted[r - 1];
        volumes[k][r][i] = sum;
      }
    }
  }
  return volumes;
}

}  // namespace tinwright
