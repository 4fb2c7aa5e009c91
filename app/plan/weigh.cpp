// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See weigh.h.
#include "app/plan/weigh.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tinwright {
namespace {

using Readings = std::span<const ScaleReading>;

double squared(double value) {
  return value * value;
}

/// How much a slip adds to its step's own mass, in parts of it, and how often the step's uncertainty comes in.
double added_share(SlipKind kind) {
  return kind == SlipKind::kLeftOut ? -1.0 : kind == SlipKind::kTwice ? 1.0 : -0.5;
}

double variance_share(SlipKind kind) {
  return kind == SlipKind::kLeftOut ? 0.0 : kind == SlipKind::kTwice ? 2.0 : 0.25;
}

double prior_of(const Slip& slip) {
  switch (slip.kind) {
    case SlipKind::kLeftOut:
      return kPriorLeftOut;
    case SlipKind::kTwice:
      return kPriorTwice;
    case SlipKind::kHalf:
      return kPriorHalf;
    case SlipKind::kBowl:
      break;
  }
  return kPriorBowl;
}

/// Change of the reading after step `after` [kg].
double change_of(const WeighQuestion& question, const std::vector<Slip>& slips, std::size_t after) {
  double change = 0.0;
  for (const Slip& slip : slips) {
    if (slip.kind == SlipKind::kBowl) {
      change += question.is_tared ? *question.bowl : -*question.bowl;
    } else if (slip.step <= after) {
      change += added_share(slip.kind) * question.steps[slip.step].mass;
    }
  }
  return change;
}

/// Variance of what is in the bowl after step `after` [kg²].
double contents_variance(const WeighQuestion& question, const std::vector<Slip>& slips, std::size_t after) {
  double variance = 0.0;
  for (std::size_t i = 0; i <= after; ++i) {
    double share = 1.0;
    for (const Slip& slip : slips) {
      if (slip.kind != SlipKind::kBowl && slip.step == i) share = variance_share(slip.kind);
    }
    variance += share * squared(question.steps[i].uncertainty);
  }
  return variance;
}

double scale_variance(const WeighQuestion& question, const ScaleReading& reading) {
  const double hidden = question.is_tared ? question.bowl.value_or(0.0) : 0.0;
  return squared(scale_uncertainty(std::abs(reading.mass) + hidden, question.resolution));
}

struct Fit {
  double log_likelihood = 0.0;  // without the constant that all explanations share
  double misfit = 0.0;          // the largest of the independent residuals [1]
};

/// How the readings fit an explanation: Cholesky's factor of their covariance, row by row, and the residuals it makes
/// independent.
Fit fit_of(const WeighQuestion& question, const std::vector<double>& expected, Readings readings,
           const std::vector<Slip>& slips) {
  const std::size_t n = readings.size();
  std::vector<double> factor(n * n, 0.0), residual(n);
  Fit fit;
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t after = readings[i].after;
    double value = readings[i].mass - expected[after] - change_of(question, slips, after);
    for (std::size_t j = 0; j <= i; ++j) {
      // What was in the bowl at the earlier reading is in it at both.
      double covariance = contents_variance(question, slips, readings[j].after);
      if (i == j) covariance += scale_variance(question, readings[i]);
      for (std::size_t k = 0; k < j; ++k) covariance -= factor[i * n + k] * factor[j * n + k];
      factor[i * n + j] = i == j ? std::sqrt(covariance) : covariance / factor[j * n + j];
      if (j < i) value -= factor[i * n + j] * residual[j];
    }
    residual[i] = value / factor[i * n + i];
    fit.log_likelihood -= 0.5 * squared(residual[i]) + std::log(factor[i * n + i]);
    fit.misfit = std::max(fit.misfit, std::abs(residual[i]));
  }
  return fit;
}

/// Everything that could explain readings up to step `last`; the first is that nothing is wrong.
std::vector<std::vector<Slip>> thinkable(const WeighQuestion& question, std::size_t last) {
  std::vector<std::vector<Slip>> all{{}};
  if (question.bowl) all.push_back({{SlipKind::kBowl, 0}});
  for (std::size_t i = 0; i <= last; ++i) {
    for (const SlipKind kind : {SlipKind::kLeftOut, SlipKind::kTwice, SlipKind::kHalf}) all.push_back({{kind, i}});
    for (std::size_t j = 0; j <= last; ++j) {
      if (j > i) all.push_back({{SlipKind::kLeftOut, i}, {SlipKind::kLeftOut, j}});
      if (j != i) all.push_back({{SlipKind::kLeftOut, i}, {SlipKind::kTwice, j}});
    }
  }
  return all;
}

/// Whether a reading is right by itself.
bool is_right(const WeighQuestion& question, const std::vector<double>& expected, const ScaleReading& reading) {
  return fit_of(question, expected, Readings(&reading, 1), {}).misfit <= kPoorFit;
}

/// The readings that count for the last one, in order: the last right one before it; and, unless it is right itself,
/// those in between.
std::vector<ScaleReading> readings_that_count(const WeighQuestion& question, const std::vector<double>& expected) {
  const ScaleReading& last = question.readings.back();
  std::vector<ScaleReading> counting{last};
  const bool ends_right = is_right(question, expected, last);
  for (std::size_t i = question.readings.size() - 1; i-- > 0;) {
    const ScaleReading& reading = question.readings[i];
    const bool was_right = is_right(question, expected, reading);
    if (was_right || !ends_right) counting.insert(counting.begin(), reading);
    if (was_right) break;
  }
  return counting;
}

/// All explanations, likeliest first, their probabilities adding up to 1.
std::vector<Explanation> ranked(const WeighQuestion& question, const std::vector<double>& expected) {
  const std::vector<ScaleReading> readings = readings_that_count(question, expected);
  const std::size_t last = readings.back().after;
  std::vector<Explanation> ranked;
  double best = -std::numeric_limits<double>::infinity();
  for (std::vector<Slip>& slips : thinkable(question, last)) {
    const Fit fit = fit_of(question, expected, readings, slips);
    double log_prior = 0.0;
    for (const Slip& slip : slips) log_prior += std::log(prior_of(slip));
    const double change = change_of(question, slips, last);
    ranked.push_back({std::move(slips), change, fit.log_likelihood + log_prior, fit.misfit});
    best = std::max(best, ranked.back().probability);
  }
  double sum = 0.0;
  for (Explanation& explanation : ranked) {
    explanation.probability = std::exp(explanation.probability - best);
    sum += explanation.probability;
  }
  for (Explanation& explanation : ranked) explanation.probability /= sum;
  std::stable_sort(ranked.begin(), ranked.end(),
                   [](const Explanation& a, const Explanation& b) { return a.probability > b.probability; });
  return ranked;
}

WeighVerdict verdict_of(const std::vector<Explanation>& ranked) {
  const Explanation& best = ranked.front();
  if (best.misfit > kPoorFit) return WeighVerdict::kNothingExplains;
  if (best.slips.empty()) return WeighVerdict::kAllThere;
  const bool is_clear = best.probability >= kClearRatio * ranked[1].probability;
  return is_clear ? WeighVerdict::kLikely : WeighVerdict::kCannotTell;
}

}  // namespace

double scale_uncertainty(double load, double resolution) {
  const double divisions = load / resolution;
  const double limit = 2.0 * (divisions <= 500.0 ? 0.5 : divisions <= 2000.0 ? 1.0 : 1.5) * resolution;
  return std::sqrt((squared(limit) + squared(0.5 * resolution)) / 3.0);  // variances of even spreads of that half width
}

double weighed_uncertainty(double mass, double resolution) {
  return scale_uncertainty(mass, resolution);
}

double measured_uncertainty(double mass, bool is_liquid) {
  return (is_liquid ? 0.05 : 0.10) * mass;
}

std::vector<double> expected_readings(const WeighQuestion& question) {
  std::vector<double> expected;
  double sum = question.is_tared ? 0.0 : question.bowl.value_or(0.0);
  for (const WeighStep& step : question.steps) expected.push_back(sum += step.mass);
  return expected;
}

Result<WeighAnswer> weigh_check(const WeighQuestion& question) {
  Problem fault = weigh_fault(question);
  if (!fault.message.empty()) return fault;
  const std::vector<double> expected = expected_readings(question);
  const ScaleReading& reading = question.readings.back();
  WeighAnswer answer;
  answer.expected = expected[reading.after];
  answer.difference = reading.mass - answer.expected;
  answer.uncertainty = std::sqrt(contents_variance(question, {}, reading.after) + scale_variance(question, reading));
  for (std::size_t i = 0; i <= reading.after; ++i) {
    if (question.steps[i].mass <= kPoorFit * answer.uncertainty) answer.unseen.push_back(i);
  }
  answer.explanations = ranked(question, expected);
  answer.verdict = verdict_of(answer.explanations);
  const double least = answer.explanations.front().probability / kClearRatio;
  std::size_t count = std::min(kMostExplanations, answer.explanations.size());
  if (answer.verdict == WeighVerdict::kCannotTell) {
    while (answer.explanations[count - 1].probability <= least) --count;
  }
  answer.explanations.resize(count);
  return answer;
}

}  // namespace tinwright
