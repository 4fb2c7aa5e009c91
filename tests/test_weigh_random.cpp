// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The weigh check against chance: recipes, errors and slips drawn at random.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/weigh.h"
#include "tests/dice.h"

namespace tinwright {
namespace {

WeighAnswer check(WeighQuestion question, std::vector<ScaleReading> readings) {
  question.readings = std::move(readings);
  const auto answer = weigh_check(question);
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

std::vector<Slip> best(const WeighAnswer& answer) {
  return answer.explanations.front().slips;
}

/// A recipe of random weights, 15 g to 400 g, a third of them measured by cup or spoon.
WeighQuestion random_recipe(Dice& dice, double resolution) {
  WeighQuestion question;
  question.resolution = resolution;
  const std::size_t count = 4 + dice.below(6);
  for (std::size_t i = 0; i < count; ++i) {
    const double mass = 0.015 * std::pow(400.0 / 15.0, dice.between(0.0, 1.0));
    const bool by_cup = dice.below(3) == 0;
    question.steps.push_back({"step " + std::to_string(i), mass,
                              by_cup ? measured_uncertainty(mass, true) : weighed_uncertainty(mass, resolution)});
  }
  return question;
}

/// What the scale would show after each step, were these the slips: every error drawn at random.
std::vector<double> shown(const WeighQuestion& question, const std::vector<Slip>& slips, Dice& dice) {
  std::vector<double> readings;
  double sum = 0.0;
  for (std::size_t i = 0; i < question.steps.size(); ++i) {
    const WeighStep& step = question.steps[i];
    const auto helping = [&] { return step.mass + step.uncertainty * dice.normal(); };
    double added = helping();
    for (const Slip& slip : slips) {
      if (slip.step != i) continue;
      if (slip.kind == SlipKind::kLeftOut) added = 0.0;
      if (slip.kind == SlipKind::kTwice) added += helping();
      if (slip.kind == SlipKind::kHalf) added *= 0.5;
    }
    sum += added;
    const double off = scale_uncertainty(sum, question.resolution) * dice.normal();
    readings.push_back(std::round((sum + off) / question.resolution) * question.resolution);
  }
  return readings;
}

/// Whether no other single slip up to `last` changes the last reading by nearly as much (five deviations away).
bool stands_alone(const WeighQuestion& question, const Slip& slip, std::size_t last, double uncertainty) {
  const auto change = [&](SlipKind kind, std::size_t step) {
    const double share = kind == SlipKind::kLeftOut ? -1.0 : kind == SlipKind::kTwice ? 1.0 : -0.5;
    return share * question.steps[step].mass;
  };
  const double own = change(slip.kind, slip.step);
  if (std::abs(own) < 5.0 * uncertainty) return false;
  for (std::size_t i = 0; i <= last; ++i) {
    for (const SlipKind kind : {SlipKind::kLeftOut, SlipKind::kTwice, SlipKind::kHalf}) {
      if ((kind != slip.kind || i != slip.step) && std::abs(change(kind, i) - own) < 5.0 * uncertainty) return false;
    }
  }
  return true;
}

}  // namespace

TEST_CASE("slips made at random are found again where they can be told, at 1 g and at 5 g a division") {
  for (const double resolution : {1e-3, 5e-3}) {
    Dice dice(resolution < 2e-3 ? 11u : 12u);
    int told = 0, found = 0, wrong = 0, tried = 0;
    while (tried < 1500) {
      WeighQuestion question = random_recipe(dice, resolution);
      const std::size_t last = question.steps.size() - 1;
      const Slip slip{static_cast<SlipKind>(dice.below(3)), dice.below(last + 1)};
      const std::vector<double> readings = shown(question, {slip}, dice);
      ++tried;
      const WeighAnswer answer = check(question, {{last, readings[last]}});
      const bool is_found = answer.verdict == WeighVerdict::kLikely && best(answer) == std::vector<Slip>{slip};
      if (answer.verdict == WeighVerdict::kLikely && !is_found) ++wrong;
      if (!stands_alone(question, slip, last, answer.uncertainty)) continue;
      ++told;
      if (is_found) ++found;
    }
    MESSAGE("resolution ", resolution, ": of ", tried, " slips ", told, " stand alone, ", found, " of these found, ",
            wrong, " answers wrong in all");
    CHECK(told > 100);
    CHECK(found >= 0.95 * told);
    CHECK(wrong < 0.05 * tried);
  }
}

TEST_CASE("with nothing wrong it keeps silent, after every step of two hundred recipes") {
  Dice dice(21);
  int asked = 0, alarms = 0;
  for (int round = 0; round < 200; ++round) {
    const WeighQuestion question = random_recipe(dice, 1e-3);
    const std::vector<double> readings = shown(question, {}, dice);
    std::vector<ScaleReading> so_far;
    for (std::size_t i = 0; i < readings.size(); ++i) {
      so_far.push_back({i, readings[i]});
      ++asked;
      if (check(question, so_far).verdict != WeighVerdict::kAllThere) ++alarms;
    }
  }
  MESSAGE(alarms, " false alarms in ", asked, " readings");
  CHECK(alarms < 0.01 * asked);
}

TEST_CASE("the uncertainty told is that of readings taken at random") {
  Dice dice(31);
  double worst = 0.0;
  for (int round = 0; round < 5; ++round) {
    const WeighQuestion question = random_recipe(dice, 1e-3);
    const std::size_t last = question.steps.size() - 1;
    double sum = 0.0, told = 0.0;
    for (int i = 0; i < 400; ++i) {
      const WeighAnswer answer = check(question, {{last, shown(question, {}, dice)[last]}});
      sum += answer.difference * answer.difference;
      told = answer.uncertainty;
    }
    worst = std::max(worst, std::abs(std::log(std::sqrt(sum / 400.0) / told)));
  }
  CHECK(worst < 0.15);  // 400 draws tell a deviation to 3.5 % (one deviation of that); rounding comes in twice
}

}  // namespace tinwright
