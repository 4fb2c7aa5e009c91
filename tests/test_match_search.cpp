// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The search for sets of pans against trying every set, and the work it takes.
#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/match.h"
#include "tests/dice.h"
#include "tests/match_cases.h"

namespace tinwright {
namespace {

using match_cases::answer_of;
using match_cases::round_pan;

using Counts = std::vector<int>;

/// The price as match.h words it, written down a second time: bisection, and all candidate depths one by one.
double plain_price(const MatchQuestion& question, const Counts& counts) {
  std::vector<double> depths{question.depth};
  double top = 0.0;
  int pans = 0;
  for (std::size_t k = 0; k < counts.size(); ++k) {
    if (counts[k] == 0) continue;
    pans += counts[k];
    depths.push_back(depth_limit(question.pans[k].table));
    top = std::max(top, depths.back());
  }
  const auto held = [&](double depth) {
    double sum = 0.0;
    for (std::size_t k = 0; k < counts.size(); ++k) sum += counts[k] * volume_at(question.pans[k].table, depth);
    return sum;
  };
  double low = 0.0, high = top;
  for (int i = 0; i < 200 && held(top) > question.volume; ++i) {
    const double middle = 0.5 * (low + high);
    (held(middle) < question.volume ? low : high) = middle;
  }
  depths.push_back(high);
  double best = std::numeric_limits<double>::infinity();
  for (const double depth : depths) {
    if (depth > high) continue;
    double off = 0.0, longest = -1e9, shortest = 1e9;
    for (std::size_t k = 0; k < counts.size(); ++k) {
      if (counts[k] == 0) continue;
      const DepthTable& table = question.pans[k].table;
      const double log_bake = std::log(bake_scale_at(table, depth));
      off = std::max(off, std::abs(std::log(std::min(depth, depth_limit(table)) / question.depth)));
      longest = std::max(longest, log_bake);
      shortest = std::min(shortest, log_bake);
    }
    const double leftover = std::max(0.0, 1.0 - held(depth) / question.volume);
    best = std::min(best, kDepthWeight * off + kLeftoverWeight * leftover + kSpreadWeight * (longest - shortest) +
                              kPanWeight * std::max(0.0, std::log(1.0 * pans / question.recipe_pans)));
  }
  return best;
}

/// The price of every set there is, cheapest first.
void price_all(const MatchQuestion& question, Counts& counts, std::size_t k, int pans, std::vector<double>& prices) {
  if (k == question.pans.size()) {
    if (pans > 0) prices.push_back(plain_price(question, counts));
    return;
  }
  for (int count = 0; count <= question.pans[k].count && pans + count <= question.most_pans; ++count) {
    counts[k] = count;
    price_all(question, counts, k + 1, pans + count, prices);
  }
  counts[k] = 0;
}

PanKind random_pan(Dice& dice, int count, double smallest, double largest) {
  const double rim = smallest * std::pow(largest / smallest, dice.between(0.0, 1.0));
  const double depth = dice.between(0.015, 0.08);
  const double taper = dice.between(0.0, 0.2) * rim / 2.0;
  return round_pan("tin", rim, depth, taper, count);
}

MatchQuestion random_question(Dice& dice, int kinds, int most_pans) {
  MatchQuestion question;
  question.depth = dice.between(0.01, 0.07);
  question.volume = 1e-4 * std::pow(100.0, dice.between(0.0, 1.0));
  question.most_pans = most_pans;
  question.recipe_pans = 1 + dice.up_to(1);
  for (int k = 0; k < kinds; ++k) question.pans.push_back(random_pan(dice, dice.up_to(3), 0.07, 0.3));
  question.pans.push_back(random_pan(dice, 1, 0.07, 0.3));
  return question;
}

}  // namespace

TEST_CASE("the search finds what trying every set finds") {
  Dice dice(20261125);
  std::int64_t sets = 0;
  for (int round = 0; round < 2400; ++round) {
    const int kinds = 2 + dice.up_to(4), most_pans = 2 + dice.up_to(3);
    MatchQuestion question = random_question(dice, kinds, most_pans);
    question.tolerance = 0.0;
    CAPTURE(round);
    std::vector<double> prices;
    Counts counts(question.pans.size(), 0);
    price_all(question, counts, 0, 0, prices);
    std::sort(prices.begin(), prices.end());
    sets += static_cast<std::int64_t>(prices.size());
    const MatchAnswer answer = answer_of(question);
    REQUIRE(answer.proven);
    REQUIRE(answer.sets.size() == std::min<std::size_t>(prices.size(), 5));
    for (std::size_t i = 0; i < answer.sets.size(); ++i) {
      REQUIRE(answer.sets[i].cost() == doctest::Approx(prices[i]).epsilon(1e-9));
    }
  }
  CHECK(sets > 50'000);
}

TEST_CASE("with the usual tolerance no set is better by more than it") {
  Dice dice(7);
  for (int round = 0; round < 300; ++round) {
    MatchQuestion question = random_question(dice, 5, 4);
    CAPTURE(round);
    std::vector<double> prices;
    Counts counts(question.pans.size(), 0);
    price_all(question, counts, 0, 0, prices);
    std::sort(prices.begin(), prices.end());
    const MatchAnswer answer = answer_of(question);
    for (std::size_t i = 0; i < answer.sets.size(); ++i) {
      REQUIRE(answer.sets[i].cost() <= prices[i] + kCostTolerance);
    }
  }
}

TEST_CASE("no depth of a set is much cheaper than the one it is filled to") {
  Dice dice(3);
  for (int round = 0; round < 200; ++round) {
    const MatchQuestion question = random_question(dice, 3, 3);
    const PanSet set = answer_of(question).sets.front();
    CAPTURE(round);
    for (double depth = 0.002; depth < set.depth; depth += 0.001) {
      double off = 0.0, held = 0.0, longest = -1e9, shortest = 1e9;
      for (const ChosenPan& pan : set.pans) {
        const DepthTable& table = question.pans[pan.kind].table;
        held += pan.count * volume_at(table, depth);
        off = std::max(off, std::abs(std::log(std::min(depth, depth_limit(table)) / question.depth)));
        longest = std::max(longest, std::log(bake_scale_at(table, depth)));
        shortest = std::min(shortest, std::log(bake_scale_at(table, depth)));
      }
      const double cost = kDepthWeight * off + kLeftoverWeight * (1.0 - held / question.volume) +
                          kSpreadWeight * (longest - shortest) + set.pans_cost;
      // Tapered walls bend the curve between the candidates; a hundredth of the depth is not worth a finer rule.
      REQUIRE(cost > set.cost() - 0.01);
    }
  }
}

TEST_CASE("a cupboard of sixty kinds is searched in a few thousand steps") {
  Dice dice(99);
  std::int64_t most = 0;
  for (int round = 0; round < 12; ++round) {
    MatchQuestion question;
    question.depth = dice.between(0.015, 0.06);
    for (int k = 0; k < 60; ++k) question.pans.push_back(random_pan(dice, 1 + dice.up_to(3), 0.06, 0.3));
    for (const double volume : {0.2e-3, 0.6e-3, 1.5e-3, 3e-3, 8e-3, 20e-3}) {
      question.volume = volume;
      const MatchAnswer answer = answer_of(question);
      CHECK(answer.proven);
      CHECK(answer.sets.size() == 5);
      most = std::max(most, answer.nodes);
    }
  }
  MESSAGE("most steps: ", most);
  CHECK(most < 40'000);
}

TEST_CASE("sixty kinds that are nearly alike stop at the limit and say so, with a set that is as good") {
  Dice dice(5);
  MatchQuestion question;
  question.depth = 0.04;
  question.volume = 8e-3;
  for (int k = 0; k < 60; ++k) question.pans.push_back(round_pan("tin", dice.between(0.16, 0.162), 0.05, 0.005, 3));
  const MatchAnswer answer = answer_of(question);
  CHECK_FALSE(answer.proven);
  CHECK(answer.nodes < kMostNodes + 1000);
  // Eight tins of 16.1 cm hold 8 × 0.95 l: what is best is plain, and the rest differs in millilitres.
  int pans = 0;
  for (const ChosenPan& pan : answer.sets.front().pans) pans += pan.count;
  CHECK(pans == 8);
}

}  // namespace tinwright
