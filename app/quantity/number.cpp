// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Digits are gathered in a 64-bit whole number and scaled once by a power of ten that a double holds exactly
// (W. D. Clinger, How to read floating point numbers accurately, 1990, the fast path). The library's own
// readers are not used: one follows the locale, the other is absent on the oldest target.
#include "app/quantity/number.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace tinwright {
namespace {

constexpr std::int64_t kLargestWhole = 1'000'000'000;  // same bound as kLargestNumber
constexpr int kDigitsKept = 18;                        // what an int64 surely holds; the rest is below 1e-17

struct Fraction {
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
};

struct FractionSign {
  char32_t sign;
  Fraction value;
};

// The vulgar fractions of the Unicode blocks Latin-1 Supplement and Number Forms.
constexpr std::array<FractionSign, 19> kFractionSigns{{
    {0x00BC, {1, 4}},  {0x00BD, {1, 2}}, {0x00BE, {3, 4}}, {0x2150, {1, 7}}, {0x2151, {1, 9}},
    {0x2152, {1, 10}}, {0x2153, {1, 3}}, {0x2154, {2, 3}}, {0x2155, {1, 5}}, {0x2156, {2, 5}},
    {0x2157, {3, 5}},  {0x2158, {4, 5}}, {0x2159, {1, 6}}, {0x215A, {5, 6}}, {0x215B, {1, 8}},
    {0x215C, {3, 8}},  {0x215D, {5, 8}}, {0x215E, {7, 8}}, {0x2189, {0, 3}},
}};

const Fraction* fraction_sign(char32_t c) {
  const auto* found =
      std::find_if(kFractionSigns.begin(), kFractionSigns.end(), [c](const FractionSign& f) { return f.sign == c; });
  return found == kFractionSigns.end() ? nullptr : &found->value;
}

Problem not_a_number(int column, std::string message) {
  return problem_at(ProblemCode::kNotANumber, column, std::move(message));
}

Problem too_large(int column) {
  return problem_at(ProblemCode::kOutOfRange, column,
                    "this number is larger than any kitchen needs; write at most 1000000000, in a larger unit");
}

/// Digits with points and commas between, as they stand.
struct Run {
  std::string text;
  int column = 0;
  std::size_t points = 0;
  std::size_t commas = 0;
  std::size_t digits = 0;
  std::size_t digits_behind = 0;  // behind the last point or comma
  bool is_whole() const { return points + commas == 0; }
};

Run read_run(Cursor& cursor) {
  Run run;
  run.column = cursor.column();
  for (; is_digit(cursor.peek()) || cursor.peek() == U'.' || cursor.peek() == U','; cursor.advance()) {
    const char c = static_cast<char>(cursor.peek());
    run.text.push_back(c);
    if (is_digit(cursor.peek())) {
      ++run.digits;
      ++run.digits_behind;
    } else {
      ++(c == '.' ? run.points : run.commas);
      run.digits_behind = 0;
    }
  }
  return run;
}

std::string without_commas(std::string text) {
  text.erase(std::remove(text.begin(), text.end(), ','), text.end());
  return text;
}

/// Why the run cannot be read as one number; nothing if it can.
std::optional<Problem> fault_of(const Run& run) {
  if (run.digits == 0) return not_a_number(run.column, "a number is wanted here, like 24 or 9 1/2");
  if (run.points > 1) return not_a_number(run.column, "'" + run.text + "' has two decimal points; write one, like 9.5");
  if (run.commas > 1 || (run.commas == 1 && run.points == 1)) {
    return not_a_number(run.column, "'" + run.text +
                                        "' could be read in two ways; write it without commas between thousands "
                                        "and with a point for the decimals, like 1250.5");
  }
  if (run.digits_behind == 0) {
    return not_a_number(run.column, "'" + run.text + "' ends in a point or comma; write the decimals, like 9.5, or 9");
  }
  if (run.commas == 1 && run.digits_behind == 3) {
    std::string as_decimal = run.text;
    std::replace(as_decimal.begin(), as_decimal.end(), ',', '.');
    return not_a_number(run.column, "'" + run.text + "' could be thousands or decimals; write " +
                                        without_commas(run.text) + " or " + as_decimal);
  }
  return std::nullopt;
}

double value_of(const Run& run) {
  std::int64_t digits = 0;
  int kept = 0, scale = 0;
  bool behind = false;
  for (const char c : run.text) {
    if (c == '.' || c == ',') {
      behind = true;
    } else if (kept < kDigitsKept) {
      digits = digits * 10 + (c - '0');
      if (digits != 0) ++kept;
      if (behind) --scale;
    } else if (!behind) {
      ++scale;
    }
  }
  constexpr std::array<double, 23> kTens{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                         1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
  double value = static_cast<double>(digits);
  while (scale != 0) {
    const int step = std::min(scale < 0 ? -scale : scale, 22);
    value = scale < 0 ? value / kTens[static_cast<std::size_t>(step)] : value * kTens[static_cast<std::size_t>(step)];
    scale += scale < 0 ? step : -step;
  }
  return value;
}

/// A run of plain digits as a whole number; more than kLargestWhole is refused.
Result<std::int64_t> read_whole(Cursor& cursor) {
  const int column = cursor.column();
  std::int64_t whole = 0;
  for (; is_digit(cursor.peek()); cursor.advance()) {
    whole = whole * 10 + static_cast<std::int64_t>(cursor.peek() - U'0');
    if (whole > kLargestWhole) return too_large(column);
  }
  return whole;
}

bool at_slash(Cursor cursor) {
  cursor.skip_spaces();
  return cursor.peek() == U'/';
}

/// With the cursor before a slash: the fraction of numerator over the whole number that follows.
Result<Fraction> read_denominator(Cursor& cursor, std::int64_t numerator) {
  cursor.skip_spaces();
  cursor.advance();
  cursor.skip_spaces();
  const int column = cursor.column();
  if (!is_digit(cursor.peek())) {
    return not_a_number(column, "a fraction needs a whole number below the line, like 1/4 or 2 1/2");
  }
  const Result<std::int64_t> denominator = read_whole(cursor);
  if (!denominator) return denominator.problem();
  if (*denominator == 0) return not_a_number(column, "nothing can be divided by 0; write a fraction like 1/4");
  if (cursor.peek() == U'.' || cursor.peek() == U',') {
    return not_a_number(column, "write a fraction with whole numbers, like 3/8, or with decimals alone, like 0.375");
  }
  return Fraction{numerator, *denominator};
}

/// Whether the word "and" stands at the cursor, with a gap behind it.
bool at_and(const Cursor& cursor) {
  constexpr std::u32string_view kAnd = U"and";
  for (std::size_t i = 0; i < kAnd.size(); ++i) {
    const char32_t c = cursor.peek(i);
    if (c != kAnd[i] && c + (U'a' - U'A') != kAnd[i]) return false;
  }
  return cursor.peek(kAnd.size()) == U' ';
}

/// Behind a whole number: the fraction part of a mixed number ("2 1/2", "2-1/2", "2½", "2 and 1/2"), if there is one.
Result<std::optional<Fraction>> read_fraction_part(Cursor& cursor) {
  Cursor ahead = cursor;
  if (ahead.peek() == U'-') {
    ahead.advance();
  } else {
    ahead.skip_spaces();
    if (at_and(ahead)) {
      ahead.advance(3);
      ahead.skip_spaces();
    }
  }
  const int column = ahead.column();
  std::optional<Fraction> part;
  if (const Fraction* sign = fraction_sign(ahead.peek())) {
    ahead.advance();
    part = *sign;
  } else if (is_digit(ahead.peek())) {
    const Result<std::int64_t> numerator = read_whole(ahead);
    if (!numerator) return numerator.problem();
    if (!at_slash(ahead)) return std::optional<Fraction>();
    const Result<Fraction> fraction = read_denominator(ahead, *numerator);
    if (!fraction) return fraction.problem();
    part = *fraction;
  }
  if (!part) return part;
  if (part->numerator >= part->denominator) {
    return not_a_number(column, "the fraction behind a whole number must be less than one, like 2 1/2");
  }
  cursor = ahead;
  return part;
}

bool at_exponent(const Cursor& cursor) {
  if (cursor.peek() != U'e' && cursor.peek() != U'E') return false;
  const bool is_signed = cursor.peek(1) == U'+' || cursor.peek(1) == U'-';
  return is_digit(cursor.peek(is_signed ? 2 : 1));
}

/// What must not stand behind a complete number.
std::optional<Problem> fault_behind(const Cursor& cursor, bool is_zero) {
  if (at_exponent(cursor)) {
    return not_a_number(cursor.column(), "write the number out in full, like 1000 instead of 1e3");
  }
  Cursor next = cursor;
  const bool touches_x = next.peek() == U'x' || next.peek() == U'X';
  next.skip_spaces();
  const int column = next.column();
  if (starts_number(next)) {
    const bool is_group = is_digit(next.peek()) && is_digit(next.peek(1)) && is_digit(next.peek(2));
    return not_a_number(column, is_group ? "there is a gap in this number; write it in one piece, like 1000 g"
                                         : "two numbers stand side by side; write one, like 12 or 1 1/2");
  }
  if (next.peek() == U'/') {
    return not_a_number(column, "write a fraction as one whole number over another, like 3/8");
  }
  const char32_t sign = next.peek();
  if (sign != U'-' && sign != U'x' && sign != U'X') return std::nullopt;
  next.advance();
  next.skip_spaces();
  if (!starts_number(next)) return std::nullopt;
  if (sign == U'-') return not_a_number(column, "this reads as a range; write one number, like 2 or 2 1/2");
  if (touches_x && is_zero) return not_a_number(column, "write the number with the digits 0 to 9 alone, like 16");
  return not_a_number(column, "this reads as two sizes; write one at a time, like 33 cm");
}

Result<double> read_unchecked(Cursor& cursor) {
  if (const Fraction* sign = fraction_sign(cursor.peek())) {
    cursor.advance();
    return static_cast<double>(sign->numerator) / static_cast<double>(sign->denominator);
  }
  Cursor digits = cursor;
  const Run run = read_run(cursor);
  if (std::optional<Problem> fault = fault_of(run)) return *std::move(fault);
  if (!run.is_whole()) {
    const double value = value_of(run);
    if (value > kLargestNumber) return too_large(run.column);
    return value;
  }
  const Result<std::int64_t> whole = read_whole(digits);
  if (!whole) return whole.problem();
  if (at_slash(cursor)) {
    const Result<Fraction> fraction = read_denominator(cursor, *whole);
    if (!fraction) return fraction.problem();
    return static_cast<double>(fraction->numerator) / static_cast<double>(fraction->denominator);
  }
  const Result<std::optional<Fraction>> part = read_fraction_part(cursor);
  if (!part) return part.problem();
  if (!*part) return static_cast<double>(*whole);
  // One rounding only while the numerator stays below 2^53, which holds for any fraction a ruler has.
  const Fraction& fraction = **part;
  return static_cast<double>(*whole * fraction.denominator + fraction.numerator) /
         static_cast<double>(fraction.denominator);
}

}  // namespace

bool starts_number(const Cursor& cursor) {
  const char32_t c = cursor.peek();
  if (c == U'.' || c == U',') return is_digit(cursor.peek(1));
  return is_digit(c) || fraction_sign(c) != nullptr;
}

Result<double> read_number(Cursor& cursor) {
  if (!starts_number(cursor)) {
    return not_a_number(cursor.column(),
                        cursor.at_end() ? "a number is missing here; write one, like 24 or 9 1/2"
                                        : "'" + cursor.shown() + "' is not a number; write digits, like 24 or 9 1/2");
  }
  Result<double> value = read_unchecked(cursor);
  if (!value) return value;
  if (std::optional<Problem> fault = fault_behind(cursor, *value <= 0)) return *std::move(fault);
  return value;
}

}  // namespace tinwright
