// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See limits.h.
#include "geometry/limits.h"

#include <cmath>

namespace tinwright {

std::string mm_text(double metres) {
  const long long tenths = std::llround(metres * 1e4);
  std::string text = (tenths < 0 ? "-" : "") + std::to_string(std::llabs(tenths) / 10);
  if (tenths % 10 != 0) text += "." + std::to_string(std::llabs(tenths) % 10);
  return text + " mm";
}

std::string at_most_text(double metres) {
  constexpr double kTenth = 1e-4;
  return mm_text(std::floor((metres + kLengthTolerance) / kTenth) * kTenth);
}

std::optional<Problem> check_size(double size, const std::string& what, const std::string& place) {
  if (!std::isfinite(size)) return Problem{ProblemCode::kNotANumber, "the " + what + " is not a number", place};
  if (size <= 0.0) {
    return Problem{ProblemCode::kOutOfRange, "the " + what + " has to be more than nothing, like 24 cm", place};
  }
  if (size < kSmallestSize) {
    return Problem{ProblemCode::kOutOfRange, "the " + what + " is under a tenth of a millimetre; check its unit",
                   place};
  }
  if (size > kLargestSize) {
    return Problem{ProblemCode::kOutOfRange, "the " + what + " is over 5 m; check its unit", place};
  }
  return std::nullopt;
}

std::optional<Problem> check_size_or_zero(double size, const std::string& what, const std::string& place) {
  if (size == 0.0) return std::nullopt;
  if (std::isfinite(size) && size < 0.0) {
    return Problem{ProblemCode::kOutOfRange, "the " + what + " cannot be less than nothing; give 0 mm or more", place};
  }
  if (size > 0.0 && size < kSmallestSize) return std::nullopt;
  return check_size(size, what, place);
}

}  // namespace tinwright
