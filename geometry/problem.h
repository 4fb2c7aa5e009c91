// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How a question that cannot be answered comes back. Nothing in this project throws: a function that can
// refuse its input returns Result<T>, which holds either the value or a Problem written for a cook.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace tinwright {

/// What kind of fault it is; tests and views branch on this, never on the text.
enum class ProblemCode {
  kNotANumber,       // NaN, infinity, or text where a number was expected
  kMissingUnit,      // a bare number where a quantity was asked for
  kWrongUnit,        // an unknown unit, or one of another kind (grams for a length)
  kOutOfRange,       // negative, zero or absurd size
  kMissing,          // a field that has to be there
  kUnknown,          // a name or field nobody knows
  kContradiction,    // two fields that cannot both hold
  kImpossibleShape,  // sizes that do not make a pan
  kTooMuch,          // more dough or filling than fits
  kUnreadable,       // not JSON, not UTF-8, file missing
};

/// A refusal. `place` is the field it is about, as a dotted path ("pan.outline.diameter"); empty when it
/// concerns the whole input. `message` says what is wrong and what would be right.
struct Problem {
  ProblemCode code = ProblemCode::kNotANumber;
  std::string message;
  std::string place;
};

/// Either a value or a Problem. Test it before use: `if (!r) return r.problem();`
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  Result(Problem problem) : state_(std::in_place_index<1>, std::move(problem)) {}

  explicit operator bool() const { return state_.index() == 0; }
  T& operator*() { return *std::get_if<0>(&state_); }
  const T& operator*() const { return *std::get_if<0>(&state_); }
  T* operator->() { return std::get_if<0>(&state_); }
  const T* operator->() const { return std::get_if<0>(&state_); }
  const Problem& problem() const { return *std::get_if<1>(&state_); }

 private:
  std::variant<T, Problem> state_;
};

}  // namespace tinwright
