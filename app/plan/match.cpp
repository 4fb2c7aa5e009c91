// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The search of match.h: branch and bound, by number of pans.
#include "app/plan/match.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "app/plan/match_bounds.h"
#include "app/plan/match_price.h"
#include "geometry/checks.h"

namespace tinwright {
namespace {

constexpr std::int64_t kNodesOfAPrice = 8;  // a price takes about as long as that many bounds

/// The best sets so far, cheapest first.
class Podium {
 public:
  explicit Podium(int places) : places_(static_cast<std::size_t>(places)) {}

  /// What a set has to stay below to get a place.
  double mark() const { return sets_.size() < places_ ? std::numeric_limits<double>::infinity() : sets_.back().cost(); }
  void offer(PanSet set) {
    if (set.cost() >= mark() || has(set)) return;
    const auto dearer = [](const PanSet& a, const PanSet& b) { return a.cost() < b.cost(); };
    sets_.insert(std::upper_bound(sets_.begin(), sets_.end(), set, dearer), std::move(set));
    if (sets_.size() > places_) sets_.pop_back();
  }
  std::vector<PanSet> take() { return std::move(sets_); }

 private:
  bool has(const PanSet& set) const {
    const auto same = [](const ChosenPan& a, const ChosenPan& b) { return a.kind == b.kind && a.count == b.count; };
    return std::any_of(sets_.begin(), sets_.end(), [&](const PanSet& known) {
      return std::equal(known.pans.begin(), known.pans.end(), set.pans.begin(), set.pans.end(), same);
    });
  }

  std::size_t places_;
  std::vector<PanSet> sets_;
};

/// A half-made set in the intervals [begin, end) that are still worth looking at.
struct HalfMade {
  IntervalBounds bounds;
  std::size_t begin = 0, end = 0;
};

class Search {
 public:
  explicit Search(const MatchQuestion& question)
      : question_(question), kinds_(usable_kinds(question)), most_pans_(usable_pans()), podium_(question.answers) {}

  MatchAnswer run() {
    for (int pans = 1; pans <= most_pans_; ++pans) guess(pans);
    for (wanted_ = 2; wanted_ <= most_pans_ && nodes_ <= kMostNodes; ++wanted_) {
      const double to_spend = mark() - pans_cost(question_, wanted_);
      if (to_spend <= 0.0) break;
      if (start(to_spend / kDepthWeight)) extend(0, 0, 0);
    }
    return {podium_.take(), nodes_ <= kMostNodes, nodes_};
  }

 private:
  /// Prices sets of so many neighbours in size, so that the search starts with something good to beat. For one pan
  /// these are all sets.
  void guess(int pans) {
    for (std::size_t first = 0; first < kinds_.size() && pans_cost(question_, pans) < mark(); ++first) {
      chosen_.clear();
      int missing = pans;
      for (std::size_t k = first; k < kinds_.size() && missing > 0; ++k) {
        chosen_.push_back({kinds_[k].kind, std::min(kinds_[k].count, missing)});
        missing -= chosen_.back().count;
      }
      if (missing == 0) offer_chosen();
    }
    chosen_.clear();
  }

  void offer_chosen() {
    nodes_ += kNodesOfAPrice;
    podium_.offer(price_set(question_, chosen_));
  }

  /// Sets the bounds for common depths within `reach` of the recipe's; false when there are none.
  bool start(double reach) {
    const std::size_t intervals = bound_kinds(question_, reach, kinds_);
    if (intervals == 0) return false;
    most_ = extreme_volumes(kinds_, wanted_ - 1, Extreme::kMost);
    least_ = extreme_volumes(kinds_, wanted_ - 1, Extreme::kLeast);
    HalfMade empty;
    empty.bounds.volume_low.assign(intervals, 0.0);
    empty.bounds.volume_high = empty.bounds.deviation = empty.bounds.volume_low;
    empty.bounds.shape_low.assign(intervals, -std::numeric_limits<double>::infinity());
    empty.bounds.shape_high.assign(intervals, std::numeric_limits<double>::infinity());
    empty.end = intervals;
    levels_.assign(static_cast<std::size_t>(wanted_) + 1, empty);
    return true;
  }

  int usable_pans() const {
    int pans = 0;
    for (const BoundedKind& kind : kinds_) pans += std::min(kind.count, question_.most_pans);
    return std::min(pans, question_.most_pans);
  }

  /// Adds a pan of the kinds from `first` on, of which `used` are in the set, to the set of `level` pans.
  void extend(int level, std::size_t first, int used) {
    for (std::size_t k = first; k < kinds_.size(); ++k, used = 0) {
      if (used == kinds_[k].count) continue;
      if (!is_worth_a_look(level, k)) continue;
      if (++nodes_ > kMostNodes) return;
      if (!add(level, k)) continue;
      if (used == 0) {
        chosen_.push_back({kinds_[k].kind, 1});
      } else {
        ++chosen_.back().count;
      }
      if (level + 1 == wanted_) {
        offer_chosen();
      } else {
        extend(level + 1, k, used + 1);
      }
      if (--chosen_.back().count == 0) chosen_.pop_back();
    }
  }

  /// A quick look at the ends of what is left of the intervals: too full at the shallowest, or too empty at the
  /// deepest?
  bool is_worth_a_look(int level, std::size_t k) const {
    const HalfMade& set = levels_[static_cast<std::size_t>(level)];
    const IntervalBounds& pan = kinds_[k].bounds;
    const auto missing = static_cast<std::size_t>(wanted_ - level - 1);
    const std::size_t first = set.begin, last = set.end - 1;
    const double fullness = set.bounds.volume_low[first] + pan.volume_low[first] + least_[k][missing][first];
    if (fullness > fullest()) return false;
    const double high = set.bounds.volume_high[last] + pan.volume_high[last] + most_[k][missing][last];
    return kLeftoverWeight * (question_.volume - high) / question_.volume + pans_cost(question_, wanted_) < mark();
  }

  /// Makes the set of level + 1 pans; false when no interval is left where it, or what grows from it, could get a
  /// place.
  bool add(int level, std::size_t k) {
    const HalfMade& set = levels_[static_cast<std::size_t>(level)];
    HalfMade& grown = levels_[static_cast<std::size_t>(level) + 1];
    const IntervalBounds& pan = kinds_[k].bounds;
    const auto missing = static_cast<std::size_t>(wanted_ - level - 1);
    const double* most = most_[k][missing].data();
    const double* least = least_[k][missing].data();
    const double to_stay_below = mark() - pans_cost(question_, wanted_);
    const double leftover_weight = kLeftoverWeight / question_.volume;
    grown.begin = grown.end = set.end;
    for (std::size_t i = set.begin; i < set.end; ++i) {
      const double low = set.bounds.volume_low[i] + pan.volume_low[i];
      if (low + least[i] > fullest()) break;  // and so in all deeper intervals
      const double high = set.bounds.volume_high[i] + pan.volume_high[i];
      const double deviation = std::max(set.bounds.deviation[i], pan.deviation[i]);
      const double shape_low = std::max(set.bounds.shape_low[i], pan.shape_low[i]);
      const double shape_high = std::min(set.bounds.shape_high[i], pan.shape_high[i]);
      const double cost = kDepthWeight * deviation + kSpreadWeight * std::max(0.0, shape_low - shape_high) +
                          leftover_weight * std::max(0.0, question_.volume - high - most[i]);
      if (cost < to_stay_below) {
        if (grown.begin == set.end) grown.begin = i;
        grown.end = i + 1;
      }
      grown.bounds.volume_low[i] = low;
      grown.bounds.volume_high[i] = high;
      grown.bounds.deviation[i] = deviation;
      grown.bounds.shape_low[i] = shape_low;
      grown.bounds.shape_high[i] = shape_high;
    }
    return grown.begin < set.end;
  }

  double mark() const { return podium_.mark() - question_.tolerance; }

  /// [m³] the batch, with room for the rounding of sums.
  double fullest() const { return question_.volume * (1.0 + 1e-12); }

  const MatchQuestion& question_;
  std::vector<BoundedKind> kinds_;
  int most_pans_;
  ExtremeVolumes most_, least_;
  Podium podium_;
  std::vector<HalfMade> levels_;  // by number of pans
  std::vector<PanCount> chosen_;
  int wanted_ = 0;
  std::int64_t nodes_ = 0;
};

bool is_positive(double value) {
  return std::isfinite(value) && value > 0.0;
}

}  // namespace

Result<MatchAnswer> match_pans(const MatchQuestion& question) {
  GEOMETRY_ASSERT(question.answers >= 1 && question.recipe_pans >= 1);
  GEOMETRY_ASSERT(question.most_pans >= 1 && question.most_pans <= kMostPans);
  const auto refused = [](std::string message, std::string place) {
    return Problem{ProblemCode::kOutOfRange, std::move(message), std::move(place)};
  };
  if (!is_positive(question.volume)) return refused("There has to be some batter or filling to put in pans.", "volume");
  if (!is_positive(question.depth)) return refused("The recipe's filling has to have a depth above zero.", "depth");
  if (!std::isfinite(question.bake_scale) || question.bake_scale < 0.0) {
    return refused("The recipe's bake scale has to be above zero, or zero where it is not known.", "bake_scale");
  }
  if (std::none_of(question.pans.begin(), question.pans.end(), [](const PanKind& pan) { return pan.count > 0; })) {
    return Problem{ProblemCode::kMissing, "There is no pan free to bake in. Put at least one in the cupboard.", "pans"};
  }
  return Search(question).run();
}

Result<MatchAnswer> pans_for_leftover(const MatchQuestion& question, const PanSet& set) {
  MatchQuestion rest = question;
  rest.volume = set.leftover;
  for (const ChosenPan& pan : set.pans) rest.pans[pan.kind].count -= pan.count;
  return match_pans(rest);
}

AmountToMake amount_to_fill(const MatchQuestion& question, const std::vector<ChosenPan>& pans, double depth) {
  AmountToMake amount;
  for (const ChosenPan& pan : pans) {
    const DepthTable& table = question.pans[pan.kind].table;
    amount.volume += pan.count * volume_at(table, depth);
    amount.is_capped = amount.is_capped || depth > depth_limit(table);
  }
  amount.factor = amount.volume / question.volume;
  return amount;
}

}  // namespace tinwright
