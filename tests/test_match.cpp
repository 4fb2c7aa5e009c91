// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Which pans take a batch: cases worked out by hand, and their words.
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/match.h"
#include "app/plan/match_words.h"
#include "tests/match_cases.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using match_cases::answer_of;
using match_cases::round_pan;
using shapes::relative_error;
using std::numbers::pi;

MatchQuestion small_cupboard() {
  MatchQuestion question;
  question.depth = 0.05;
  question.volume = pi * 0.01 * 0.05;  // a 20 cm tin 5 cm deep
  question.bake_scale = bake_scale(0.05, question.volume, 2.0 * pi * 0.1 * 0.05);
  question.pans = {round_pan("26 cm springform", 0.26, 0.06, 0.0, 1), round_pan("20 cm tin", 0.20, 0.06, 0.0, 1),
                   round_pan("18 cm tin", 0.18, 0.05, 0.0, 1), round_pan("9 cm tartlet tin", 0.09, 0.05, 0.0, 6)};
  return question;
}

}  // namespace

TEST_CASE("the recipe's own tin takes the batch as it is") {
  const MatchQuestion question = small_cupboard();
  const PanSet set = answer_of(question).sets.front();
  REQUIRE(set.pans.size() == 1);
  CHECK(set.pans[0].kind == 1);
  CHECK(set.all_in());
  CHECK(relative_error(set.depth, 0.05) < 1e-9);
  CHECK(set.cost() < 1e-9);
  CHECK(relative_error(set.pans[0].bake_factor, 1.0) < 1e-3);
  CHECK(match_words(question, set, UnitChoice::kMetric) ==
        std::vector<std::string>{"as deep as in the recipe: about the recipe's time"});
}

TEST_CASE("a wider tin is shallower, and the words say what that does") {
  MatchQuestion question = small_cupboard();
  question.pans.erase(question.pans.begin() + 1, question.pans.end());
  const PanSet set = answer_of(question).sets.front();
  CHECK(relative_error(set.depth, 0.05 * std::pow(20.0 / 26.0, 2)) < 1e-9);
  CHECK(set.depth_cost == doctest::Approx(2.0 * std::log(26.0 / 20.0)));
  CHECK(match_words(question, set, UnitChoice::kMetric) ==
        std::vector<std::string>{"2 cm shallower than the recipe (3 cm instead of 5 cm): done sooner"});
}

TEST_CASE("what is left over goes into a small tin that is free") {
  MatchQuestion question = small_cupboard();
  question.pans[0].count = question.pans[1].count = 0;
  question.most_pans = 1;
  question.pans[2].table = round_pan("", 0.18, 0.045, 0.0, 1).table;
  const PanSet set = answer_of(question).sets.front();
  CHECK(set.pans[0].kind == 2);
  CHECK(relative_error(set.leftover, pi * (0.01 * 0.05 - 0.0081 * 0.045)) < 1e-9);
  const auto small = pans_for_leftover(question, set);
  REQUIRE(static_cast<bool>(small));
  CHECK(small->sets.front().pans[0].kind == 3);
  const auto words = match_words(question, set, UnitChoice::kMetric);
  REQUIRE(words.size() == 2);
  CHECK(words[1] == "426 ml left over: one 9 cm tartlet tin takes 318 ml of it");
}

TEST_CASE("pans that bake unlike each other are named in the order to look at them") {
  MatchQuestion question = small_cupboard();
  PanSet set;
  set.depth = 0.05;
  set.pans = {{0, 1, 0.05, 2e-3, 1.1}, {3, 2, 0.05, 3e-4, 0.6}};
  const auto words = match_words(question, set, UnitChoice::kMetric);
  REQUIRE(words.size() == 3);
  CHECK(words[0] == "as deep as in the recipe: some of it done sooner");
  CHECK(words[1] == "look at the 9 cm tartlet tin first, the 26 cm springform takes longest");
  CHECK(words[2] == "3 pans to prepare");
  CHECK(set_name(question, set) == "one 26 cm springform and 2 × 9 cm tartlet tin");
}

TEST_CASE("the recipe's own number of pans costs nothing") {
  MatchQuestion question = small_cupboard();
  question.pans = {round_pan("20 cm tin", 0.20, 0.06, 0.0, 2)};
  question.volume *= 2.0;
  CHECK(answer_of(question).sets.front().pans_cost == doctest::Approx(kPanWeight * std::log(2.0)));
  question.recipe_pans = 2;
  CHECK(answer_of(question).sets.front().cost() < 1e-9);
}

TEST_CASE("a large batch fills as many tins as there may be, not one") {
  MatchQuestion question = small_cupboard();
  question.pans = {round_pan("18 cm tin", 0.18, 0.05, 0.0, 12)};
  question.volume = 10.0 * pi * 0.0081 * 0.05;
  CHECK(answer_of(question).sets.front().pans[0].count == 8);
}

TEST_CASE("a pan that is full early is named") {
  MatchQuestion question = small_cupboard();
  PanSet set;
  set.depth = 0.05;
  set.pans = {{1, 1, 0.05, 1.5e-3, 1.0}, {3, 1, 0.018, 1e-4, 0.3}};
  const auto words = match_words(question, set, UnitChoice::kMetric);
  CHECK(words[1] == "the 9 cm tartlet tin is full at 1.8 cm");
}

TEST_CASE("a pan much too large still has an answer, and its cost says how thin the layer is") {
  MatchQuestion question = small_cupboard();
  question.pans = {round_pan("tray", 1.2, 0.05, 0.0, 1)};
  const PanSet set = answer_of(question).sets.front();
  CHECK(set.all_in());
  CHECK(relative_error(set.depth, 0.05 / 36.0) < 1e-9);
  CHECK(set.depth_cost == doctest::Approx(std::log(36.0)));
}

TEST_CASE("pans without a free one are left out, and an empty cupboard is told") {
  MatchQuestion question = small_cupboard();
  question.pans[1].count = 0;
  for (const PanSet& set : answer_of(question).sets) {
    for (const ChosenPan& pan : set.pans) CHECK(pan.kind != 1);
  }
  for (PanKind& pan : question.pans) pan.count = 0;
  auto none = match_pans(question);
  REQUIRE_FALSE(static_cast<bool>(none));
  CHECK(none.problem().code == ProblemCode::kMissing);
  CHECK(none.problem().place == "pans");
  question.pans.clear();
  CHECK_FALSE(static_cast<bool>(match_pans(question)));
}

TEST_CASE("a batch, depth or scale that cannot be is refused with its place") {
  const auto place = [](double volume, double depth, double scale) {
    MatchQuestion question = small_cupboard();
    question.volume = volume;
    question.depth = depth;
    question.bake_scale = scale;
    const auto answer = match_pans(question);
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK(answer.problem().code == ProblemCode::kOutOfRange);
    return answer.problem().place;
  };
  CHECK(place(0.0, 0.05, 0.0) == "volume");
  CHECK(place(std::nan(""), 0.05, 0.0) == "volume");
  CHECK(place(1e-3, 0.0, 0.0) == "depth");
  CHECK(place(1e-3, 0.05, -1.0) == "bake_scale");
}

TEST_CASE("the other way round: what two tins need at a depth, and the factor of the batch") {
  const MatchQuestion question = small_cupboard();
  const AmountToMake amount = amount_to_fill(question, {{1, 1, 0, 0, 0}, {2, 1, 0, 0, 0}}, 0.04);
  CHECK(relative_error(amount.volume, pi * 0.04 * (0.01 + 0.0081)) < 1e-9);
  CHECK(relative_error(amount.factor, amount.volume / question.volume) < 1e-12);
  CHECK_FALSE(amount.is_capped);
  CHECK(amount_to_fill(question, {{2, 1, 0, 0, 0}}, 0.055).is_capped);
}

}  // namespace tinwright
