// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The weigh check: single cases worked out by hand, and what is refused.
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/weigh.h"

namespace tinwright {
namespace {

WeighStep weighed(const char* label, double grams) {
  return {label, grams * 1e-3, weighed_uncertainty(grams * 1e-3, 1e-3)};
}

WeighQuestion cake() {
  WeighQuestion question;
  question.steps = {weighed("the butter", 180), weighed("the sugar", 210),         weighed("the eggs", 165),
                    weighed("the flour", 140),  weighed("the ground almonds", 62), weighed("the salt", 2)};
  return question;
}

WeighAnswer check(WeighQuestion question, std::vector<ScaleReading> readings) {
  question.readings = std::move(readings);
  const auto answer = weigh_check(question);
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

std::vector<Slip> best(const WeighAnswer& answer) {
  return answer.explanations.front().slips;
}

}  // namespace

TEST_CASE("a reading is as uncertain as OIML R 76-1 table 6 (class III, in service) and the display make it") {
  // Twice 0.5, 1.0, 1.5 divisions, evenly spread: limit / √3; rounding: division / √12 (JCGM 100:2008, 4.3.7, F.2.2.1).
  CHECK(scale_uncertainty(0.4, 1e-3) == doctest::Approx(std::sqrt(1.0 / 3.0 + 1.0 / 12.0) * 1e-3));
  CHECK(scale_uncertainty(1.5, 1e-3) == doctest::Approx(std::sqrt(4.0 / 3.0 + 1.0 / 12.0) * 1e-3));
  CHECK(scale_uncertainty(2.5, 1e-3) == doctest::Approx(std::sqrt(9.0 / 3.0 + 1.0 / 12.0) * 1e-3));
  CHECK(scale_uncertainty(0.4, 5e-3) == doctest::Approx(5.0 * std::sqrt(5.0 / 12.0) * 1e-3));
}

TEST_CASE("expected readings add up, with the bowl unless it is tared") {
  WeighQuestion question = cake();
  CHECK(expected_readings(question).back() == doctest::Approx(0.759));
  question.bowl = 0.4;
  CHECK(expected_readings(question).front() == doctest::Approx(0.180));
  question.is_tared = false;
  CHECK(expected_readings(question).front() == doctest::Approx(0.580));
}

TEST_CASE("a division off is silence, with what is too light to be seen") {
  const WeighAnswer answer = check(cake(), {{5, 0.758}});
  CHECK(answer.verdict == WeighVerdict::kAllThere);
  CHECK(answer.unseen == std::vector<std::size_t>{5});
  CHECK(weigh_words(cake(), answer) == "all there; too light to show here: the salt");
}

TEST_CASE("62 g short are the ground almonds") {
  const WeighAnswer answer = check(cake(), {{5, 0.697}});
  CHECK(answer.verdict == WeighVerdict::kLikely);
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 4}});
  CHECK(answer.difference == doctest::Approx(-0.062));
  CHECK(weigh_words(cake(), answer) == "62 g short: the ground almonds left out, most likely");
}

TEST_CASE("too much by one step is that step twice, short by half of one is half of it") {
  CHECK(best(check(cake(), {{5, 0.759 + 0.140}})) == std::vector<Slip>{{SlipKind::kTwice, 3}});
  const WeighAnswer half = check(cake(), {{5, 0.759 - 0.105}});
  CHECK(best(half) == std::vector<Slip>{{SlipKind::kHalf, 1}});
  CHECK(weigh_words(cake(), half) == "105 g short: only half of the sugar, most likely");
}

TEST_CASE("two steps left out are found when no single one fits") {
  const WeighAnswer answer = check(cake(), {{5, 0.759 - 0.140 - 0.165}});
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 2}, {SlipKind::kLeftOut, 3}});
  CHECK(weigh_words(cake(), answer) == "305 g short: the eggs left out and the flour left out, most likely");
}

TEST_CASE("one left out and another twice are found") {
  WeighQuestion question = cake();
  question.steps = {weighed("the butter", 183), weighed("the sugar", 250), weighed("the flour", 310)};
  const WeighAnswer answer = check(question, {{2, 0.743 + 0.183 - 0.250}});
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 1}, {SlipKind::kTwice, 0}});
}

TEST_CASE("the bowl is thought of, either way round") {
  WeighQuestion question = cake();
  question.bowl = 0.437;
  const WeighAnswer over = check(question, {{1, 0.390 + 0.437}});
  CHECK(best(over) == std::vector<Slip>{{SlipKind::kBowl, 0}});
  CHECK(weigh_words(question, over) == "437 g too much: the scale not set to zero with the bowl on it, most likely");
  question.is_tared = false;
  CHECK(best(check(question, {{1, 0.390}})) == std::vector<Slip>{{SlipKind::kBowl, 0}});
}

TEST_CASE("two steps of one weight cannot be told apart, until a right reading clears one") {
  WeighQuestion question = cake();
  question.steps = {weighed("the butter", 100), weighed("the sugar", 100), weighed("the flour", 230)};
  const WeighAnswer answer = check(question, {{2, 0.330}});
  CHECK(answer.verdict == WeighVerdict::kCannotTell);
  CHECK(answer.explanations.size() == 2);
  CHECK(weigh_words(question, answer) ==
        "100 g short: the scale cannot tell which of these: the butter left out or the sugar left out");
  const WeighAnswer cleared = check(question, {{0, 0.100}, {2, 0.330}});
  CHECK(cleared.verdict == WeighVerdict::kLikely);
  CHECK(best(cleared) == std::vector<Slip>{{SlipKind::kLeftOut, 1}});
}

TEST_CASE("two readings off by the same clear the step between them") {
  WeighQuestion question = cake();
  question.steps = {weighed("the butter", 100), weighed("the sugar", 230), weighed("the flour", 100)};
  const WeighAnswer answer = check(question, {{1, 0.230}, {2, 0.330}});
  CHECK(answer.verdict == WeighVerdict::kLikely);
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 0}});
}

TEST_CASE("what was put right in between is not held against the last reading") {
  const WeighAnswer answer = check(cake(), {{0, 0.180}, {4, 0.695}, {5, 0.759}});
  CHECK(answer.verdict == WeighVerdict::kAllThere);
}

TEST_CASE("a slip that was put right does not confuse a later one") {
  const WeighAnswer answer = check(cake(), {{0, 0.0}, {1, 0.390}, {4, 0.695}});
  CHECK(answer.verdict == WeighVerdict::kLikely);
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 4}});
}

TEST_CASE("what is left out brings no uncertainty with it") {
  WeighQuestion question = cake();
  question.steps = {weighed("the butter", 180), {"two cups of flour", 0.250, 0.025}, {"the milk", 0.230, 0.005}};
  // Without the flour 410 g to 5 g, without the milk 430 g to 25 g.
  const WeighAnswer answer = check(question, {{2, 0.432}});
  CHECK(answer.verdict == WeighVerdict::kLikely);
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 2}});
}

TEST_CASE("a right reading of rough cups lets a light step be seen after it") {
  WeighQuestion question = cake();
  question.steps = {{"two cups of flour", 0.250, 0.025}, weighed("the salt", 8)};
  CHECK(check(question, {{1, 0.268}}).verdict == WeighVerdict::kAllThere);  // the flour may well be 18 g more
  const WeighAnswer answer = check(question, {{0, 0.268}, {1, 0.268}});
  CHECK(answer.verdict == WeighVerdict::kLikely);
  CHECK(best(answer) == std::vector<Slip>{{SlipKind::kLeftOut, 1}});
}

TEST_CASE("what no slip makes is not explained") {
  const WeighAnswer answer = check(cake(), {{1, 0.390 + 0.055}});
  CHECK(answer.verdict == WeighVerdict::kNothingExplains);
  CHECK(weigh_words(cake(), answer) ==
        "55 g too much, and no slip with these weights explains it: weigh again, and look at the amounts");
}

TEST_CASE("five grams to a division see less than one") {
  WeighQuestion question = cake();
  question.steps.back() = weighed("the yeast", 7);
  CHECK(best(check(question, {{5, 0.757}})) == std::vector<Slip>{{SlipKind::kLeftOut, 5}});
  question.resolution = 5e-3;
  const WeighAnswer coarse = check(question, {{5, 0.755}});
  CHECK(coarse.verdict == WeighVerdict::kAllThere);
  CHECK(coarse.unseen == std::vector<std::size_t>{5});
}

TEST_CASE("questions that cannot be are refused with their place") {
  const auto place = [](const auto& spoil, ProblemCode code) {
    WeighQuestion question = cake();
    question.readings = {{1, 0.39}, {2, 0.5}};
    spoil(question);
    const auto answer = weigh_check(question);
    REQUIRE_FALSE(static_cast<bool>(answer));
    CHECK(answer.problem().code == code);
    return answer.problem().place;
  };
  using enum ProblemCode;
  using Q = WeighQuestion;
  CHECK(place([](Q& q) { q.steps[3].mass = 0.0; }, kOutOfRange) == "steps[3].mass");
  CHECK(place([](Q& q) { q.steps[0].uncertainty = std::nan(""); }, kOutOfRange) == "steps[0].uncertainty");
  CHECK(place([](Q& q) { q.resolution = 0.0; }, kOutOfRange) == "resolution");
  CHECK(place([](Q& q) { q.bowl = -1.0; }, kOutOfRange) == "bowl");
  CHECK(place([](Q& q) { q.is_tared = false; }, kMissing) == "bowl");
  CHECK(place([](Q& q) { q.readings.clear(); }, kMissing) == "readings");
  CHECK(place([](Q& q) { q.readings[1].after = 6; }, kOutOfRange) == "readings[1]");
  CHECK(place([](Q& q) { q.readings[1].after = 0; }, kOutOfRange) == "readings[1]");
  CHECK(place([](Q& q) { q.readings[0].mass = std::nan(""); }, kOutOfRange) == "readings[0]");
}

}  // namespace tinwright
