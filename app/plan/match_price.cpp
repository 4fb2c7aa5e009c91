// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See match_price.h.
#include "app/plan/match_price.h"

#include <algorithm>
#include <cmath>

#include "geometry/checks.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

using Pans = std::span<const PanCount>;

const DepthTable& table_of(const MatchQuestion& question, const PanCount& pan) {
  return question.pans[pan.kind].table;
}

double set_volume(const MatchQuestion& question, Pans pans, double depth) {
  double sum = 0.0;
  for (const PanCount& pan : pans) sum += pan.count * volume_at(table_of(question, pan), depth);
  return sum;
}

double highest_limit(const MatchQuestion& question, Pans pans) {
  double highest = 0.0;
  for (const PanCount& pan : pans) highest = std::max(highest, depth_limit(table_of(question, pan)));
  return highest;
}

/// The set filled to `depth`; what is left over is given, so that "nothing" is exact.
PanSet price_at(const MatchQuestion& question, Pans pans, double depth, double leftover) {
  PanSet set;
  set.depth = depth;
  set.leftover = leftover;
  double deviation = 0.0, longest = 0.0, shortest = 0.0;  // of |ln depth|, and of ln bake scale
  int count = 0;
  for (const PanCount& pan : pans) {
    const DepthTable& table = table_of(question, pan);
    const double filled = std::min(depth, depth_limit(table));
    const double log_bake = shape_at(table, filled) + 2.0 * std::log(filled);
    deviation = std::max(deviation, std::abs(std::log(filled / question.depth)));
    longest = count == 0 ? log_bake : std::max(longest, log_bake);
    shortest = count == 0 ? log_bake : std::min(shortest, log_bake);
    count += pan.count;
    const double factor = question.bake_scale > 0.0 ? std::exp(log_bake) / question.bake_scale : 0.0;
    set.pans.push_back({pan.kind, pan.count, filled, volume_at(table, filled), factor});
  }
  set.depth_cost = kDepthWeight * deviation;
  set.leftover_cost = kLeftoverWeight * leftover / question.volume;
  set.spread_cost = kSpreadWeight * (longest - shortest);
  set.pans_cost = pans_cost(question, count);
  return set;
}

}  // namespace

double pans_cost(const MatchQuestion& question, int pans) {
  return kPanWeight * std::max(0.0, std::log(static_cast<double>(pans) / question.recipe_pans));
}

PanSet price_set(const MatchQuestion& question, std::span<const PanCount> pans) {
  GEOMETRY_ASSERT(!pans.empty());
  const double top = highest_limit(question, pans);
  const double held = set_volume(question, pans, top);
  const bool all_in = held >= question.volume;
  const double highest =
      all_in ? find_root([&](double depth) { return set_volume(question, pans, depth) - question.volume; }, 0.0, top)
             : top;
  PanSet best = price_at(question, pans, highest, all_in ? 0.0 : question.volume - held);
  const auto consider = [&](double depth) {
    if (depth >= highest) return;
    const double leftover = std::max(0.0, question.volume - set_volume(question, pans, depth));
    PanSet other = price_at(question, pans, depth, leftover);
    if (other.cost() < best.cost()) best = std::move(other);
  };
  consider(question.depth);
  for (const PanCount& pan : pans) consider(depth_limit(table_of(question, pan)));
  return best;
}

}  // namespace tinwright
