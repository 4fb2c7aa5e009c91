// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See fill.h.
#include "geometry/fill.h"

#include <algorithm>
#include <cmath>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// [-] Nothing baked rises further than this: a meringue or a soufflé triples at most.
constexpr double kMostRise = 5.0;

std::optional<Problem> check_question(const FillQuestion& q) {
  if (!q.amount && !q.level) {
    return Problem{ProblemCode::kMissing, "say how much filling there is, or to what level to fill", "volume"};
  }
  if (q.amount && !std::isfinite(*q.amount)) {
    return Problem{ProblemCode::kNotANumber, "the amount of filling is not a number", "volume"};
  }
  if (q.amount && *q.amount <= 0.0) {
    return Problem{ProblemCode::kOutOfRange, "there has to be some filling", "volume"};
  }
  if (q.level && !(*q.level > 0.0 && *q.level <= 1.0)) {
    return Problem{ProblemCode::kOutOfRange, "a level is more than 0 and at most 1, like 0.75 for three quarters",
                   "level"};
  }
  if (!(q.rise >= 1.0 && q.rise <= kMostRise)) {
    return Problem{ProblemCode::kOutOfRange, "a rise is between 1 (stays as it is) and 5, like 1.5", "rise"};
  }
  return std::nullopt;
}

double height_of(const Pan& cavity, double filling) {
  const auto height = fill_height(cavity, std::min(filling, brim_volume(cavity)));
  GEOMETRY_ASSERT(static_cast<bool>(height));
  return *height;
}

}  // namespace

Result<FillAnswer> fill_cavity(const Pan& cavity, const FillQuestion& question) {
  if (auto problem = check_question(question)) return *problem;
  const double deep = depth(cavity);
  const double holds = brim_volume(cavity);

  FillAnswer answer;
  if (question.level) {
    const double wanted = volume(cavity, *question.level * deep);
    answer.volume = question.amount ? std::min(*question.amount, wanted) : wanted;
    answer.left = question.amount ? std::max(0.0, *question.amount - wanted) : 0.0;
    answer.missing = wanted - answer.volume;
    answer.height = answer.missing > 0.0 ? height_of(cavity, answer.volume) : *question.level * deep;
  } else {
    answer.volume = *question.amount;
    answer.height = height_of(cavity, answer.volume);
  }
  answer.below_rim = deep - answer.height;
  const bool as_wanted = question.level && answer.missing <= 0.0;
  answer.level = as_wanted ? *question.level : answer.height / deep;

  const double risen = answer.volume * question.rise;
  answer.overflow = std::max(0.0, risen - holds);
  answer.risen_height = question.rise > 1.0 ? height_of(cavity, risen) : answer.height;
  answer.risen_below_rim = deep - answer.risen_height;
  return answer;
}

}  // namespace tinwright
