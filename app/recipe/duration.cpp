// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// ISO 8601-1:2019, 5.5.2: P[nW] or P[nD][T[nH][nM][nS]], a comma or a point before a fraction (from memory).
#include "app/recipe/duration.h"

#include <cmath>
#include <cstdint>

#include "app/quantity/parse.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr double kLongest = 10.0 * 365.0 * 86400.0;  // [s]

Problem no_duration(ProblemCode code) {
  return {code, "this is no time a recipe can take; write it like PT1H30M or 1 h 30 min", ""};
}

/// Seconds in one of the unit, and its place in the order they have to stand in; 0 where the letter is none.
struct DurationUnit {
  double seconds = 0.0;
  int order = 0;
};

DurationUnit unit_called(char letter, bool is_behind_t) {
  switch (letter) {
    case 'W':
      return is_behind_t ? DurationUnit{} : DurationUnit{7.0 * 86400.0, 1};
    case 'D':
      return is_behind_t ? DurationUnit{} : DurationUnit{86400.0, 2};
    case 'H':
      return {3600.0, 3};
    case 'M':
      return is_behind_t ? DurationUnit{60.0, 4} : DurationUnit{};
    case 'S':
      return {1.0, 5};
    default:
      return {};
  }
}

char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

}  // namespace

Result<double> read_duration(std::string_view text) {
  text = trimmed(text);
  if (text.size() < 3 || text.size() > 60 || upper(text[0]) != 'P') return no_duration(ProblemCode::kNotANumber);
  double total = 0.0;
  int order = 0;
  bool is_behind_t = false, has_number = false;
  for (std::size_t at = 1; at < text.size();) {
    if (upper(text[at]) == 'T' && !is_behind_t) {
      is_behind_t = true;
      ++at;
      continue;
    }
    double number = 0.0, place = 0.0;
    const std::size_t begin = at;
    for (; at < text.size(); ++at) {
      const char c = text[at];
      if ((c == '.' || c == ',') && place <= 0.0 && at > begin) {
        place = 1.0;
      } else if (c >= '0' && c <= '9') {
        number = number * 10.0 + (c - '0');
        place *= 10.0;
      } else {
        break;
      }
    }
    if (at == begin || at >= text.size()) return no_duration(ProblemCode::kNotANumber);
    const char letter = upper(text[at++]);
    const DurationUnit unit = unit_called(letter, is_behind_t);
    const bool is_calendar = !is_behind_t && (letter == 'Y' || letter == 'M');
    if (is_calendar && number > 0.0) return no_duration(ProblemCode::kOutOfRange);
    if (is_calendar) continue;  // "P0Y0M0DT1H"
    if (unit.order <= order) return no_duration(ProblemCode::kNotANumber);
    order = unit.order;
    has_number = true;
    total += number / (place > 1.0 ? place : 1.0) * unit.seconds;
    if (!(total <= kLongest)) return no_duration(ProblemCode::kOutOfRange);
  }
  if (!has_number) return no_duration(ProblemCode::kNotANumber);
  return total;
}

std::string time_text(double seconds) {
  const auto whole = static_cast<std::int64_t>(std::llround(seconds));
  const std::int64_t hours = whole / 3600, minutes = whole / 60 % 60, rest = whole % 60;
  std::string text;
  const auto add = [&text](std::int64_t number, const char* unit) {
    if (number > 0) text += (text.empty() ? "" : " ") + std::to_string(number) + unit;
  };
  add(hours, " h");
  add(minutes, " min");
  add(rest, " s");
  return text.empty() ? "0 min" : text;
}

Result<std::string> duration_in_words(std::string_view text) {
  auto seconds = read_duration(text);
  if (!seconds) {
    const Problem problem = seconds.problem();
    seconds = parse_quantity(trimmed(text), Dimension::kDuration);
    if (!seconds || *seconds > kLongest) return problem;
  }
  return time_text(*seconds);
}

}  // namespace tinwright
