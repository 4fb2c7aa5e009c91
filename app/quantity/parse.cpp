// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A quantity is [sign] number unit {[and] number unit}, spaces free; a density has a second unit behind a slash, and
// the units of heat flow stand whole in the table. Products and quotients are written as in the SI Brochure, 5.4, and
// NIST SP 811, 6.1.5 and 6.1.6 (from memory); "mK" for "m K" and a second slash are against their rules, but common.
#include "app/quantity/parse.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/quantity/characters.h"
#include "app/quantity/number.h"

namespace tinwright {
namespace {

constexpr char32_t kDegreeSign = 0x00B0;
constexpr char32_t kMiddleDot = 0x00B7;
constexpr char32_t kSuperscriptTwo = 0x00B2;
constexpr char32_t kSuperscriptThree = 0x00B3;
constexpr std::size_t kWordsInAUnit = 3;       // "imperial fl oz"
constexpr std::size_t kFactorsBelowALine = 2;  // "m² K"

std::string text_of(std::string_view view) {
  return std::string(view);
}

/// Power behind a length's letters: "3" of m3, m^3 or m³ (and 2, so that m2 is refused as one word); empty if none.
std::string read_power(Cursor& cursor, std::string_view word) {
  if (find_unit(Dimension::kLength, word) == nullptr) return {};
  const std::size_t caret = cursor.peek() == U'^' ? 1 : 0;
  const char32_t power = cursor.peek(caret);
  const bool is_two = power == U'2' || power == kSuperscriptTwo;
  const bool is_three = power == U'3' || power == kSuperscriptThree;
  const char32_t behind = cursor.peek(caret + 1);
  if ((!is_two && !is_three) || is_digit(behind) || behind == U'.' || behind == U'/') return {};
  cursor.advance(caret + 1);
  return is_two ? "2" : "3";
}

/// The point of "in." or "fl. oz."; one before a digit belongs to a number.
void skip_point(Cursor& cursor) {
  if (cursor.peek() == U'.' && !is_digit(cursor.peek(1))) cursor.advance();
}

/// One word of a unit: letters, or one of the signs ° " ' '' %. Empty where no unit can start.
std::string read_word(Cursor& cursor) {
  const char32_t first = cursor.peek();
  if (first == kDegreeSign) {
    cursor.advance();
    return "deg";
  }
  if (first == U'\'' && cursor.peek(1) == U'\'') {
    cursor.advance(2);
    return "\"";
  }
  if (first == U'"' || first == U'\'' || first == U'%') {
    cursor.advance();
    return std::string(1, static_cast<char>(first));
  }
  std::string word;
  for (; is_letter(cursor.peek()) || (cursor.peek() == U'_' && !word.empty()); cursor.advance()) {
    word.push_back(static_cast<char>(cursor.peek()));
  }
  if (word.empty()) return word;
  word += read_power(cursor, word);
  skip_point(cursor);
  return word;
}

bool is_joining_word(std::string_view word) {
  return word == "and" || word == "per";
}

/// Steps over "/" or "per" between two units; says whether it stood there.
bool skip_over_sign(Cursor& cursor) {
  Cursor ahead = cursor;
  ahead.skip_spaces();
  if (ahead.peek() == U'/') {
    ahead.advance();
  } else if (read_word(ahead) != "per") {
    return false;
  }
  cursor = ahead;
  return true;
}

/// A unit's possible spellings at the cursor, shortest first, with the place behind each.
struct Candidate {
  std::string spelling;
  Cursor behind;
};

/// Letters with a 2 behind them or not: "kg", "m2" of m2, m^2 or m². Empty where no letter stands.
std::string read_factor(Cursor& cursor) {
  std::string factor;
  for (; is_letter(cursor.peek()); cursor.advance()) factor.push_back(static_cast<char>(cursor.peek()));
  const std::size_t caret = cursor.peek() == U'^' ? 1 : 0;
  const char32_t power = cursor.peek(caret);
  if (factor.empty() || (power != U'2' && power != kSuperscriptTwo)) return factor;
  cursor.advance(caret + 1);
  return factor + "2";
}

/// What joins two factors below a line, as the table spells it: "_" for a gap or a middle dot, "/", or nothing.
std::string read_product_sign(Cursor& cursor, bool is_bracketed) {
  if (!is_bracketed && skip_over_sign(cursor)) {
    cursor.skip_spaces();
    return "/";
  }
  const int column = cursor.column();
  cursor.skip_spaces();
  if (cursor.peek() == kMiddleDot) cursor.advance();
  cursor.skip_spaces();
  return cursor.column() == column ? "" : "_";
}

/// Adds the spellings of a quotient such as "W/mK", "J/(kg K)" or "W/m²·K"; `above` is the word before the slash.
void add_quotients(Candidate above, std::vector<Candidate>& candidates) {
  auto& [spelling, cursor] = above;
  if (!skip_over_sign(cursor)) return;
  spelling += "/";
  cursor.skip_spaces();
  const bool is_bracketed = cursor.peek() == U'(';
  if (is_bracketed) {
    cursor.advance();
    cursor.skip_spaces();
  }
  for (std::size_t i = 0; i < kFactorsBelowALine; ++i) {
    const std::string factor = read_factor(cursor);
    if (factor.empty()) return;
    spelling += factor;
    Cursor behind = cursor;
    if (is_bracketed) behind.skip_spaces();
    const bool is_closed = is_bracketed && behind.peek() == U')';
    if (is_closed) behind.advance();
    skip_point(behind);
    if (is_closed || !is_bracketed) candidates.push_back({spelling, behind});
    if (is_closed) return;
    spelling += read_product_sign(cursor, is_bracketed);
  }
}

std::vector<Candidate> unit_candidates(Cursor cursor) {
  std::vector<Candidate> candidates;
  std::string spelling;
  while (candidates.size() < kWordsInAUnit) {
    const std::string word = read_word(cursor);
    if (word.empty() || is_joining_word(word)) break;
    spelling += (spelling.empty() ? "" : "_") + word;
    candidates.push_back({spelling, cursor});
    cursor.skip_spaces();
  }
  if (!candidates.empty()) add_quotients(candidates.front(), candidates);
  return candidates;
}

Problem missing_unit(int column, Dimension dimension) {
  const DimensionWords& words = words_for(dimension);
  return problem_at(ProblemCode::kMissingUnit, column,
                    "the unit is missing: " + text_of(words.kind) + " is wanted, in " + text_of(words.units) +
                        ", like " + text_of(words.example));
}

Problem other_dimension(int column, const std::string& shown, Dimension found, Dimension wanted) {
  std::string message = "'" + shown + "' is " + text_of(words_for(found).kind) + "; " +
                        text_of(words_for(wanted).kind) + " is wanted, like " + text_of(words_for(wanted).example);
  const Unit* unit = find_unit(found, shown);
  if (wanted == Dimension::kVolume && unit != nullptr && unit->name == "oz") {
    message += " (an ounce of liquid is written fl oz)";
  }
  return problem_at(ProblemCode::kWrongUnit, column, std::move(message));
}

Problem unknown_unit(int column, const std::string& shown, Dimension wanted) {
  const DimensionWords& words = words_for(wanted);
  return problem_at(ProblemCode::kWrongUnit, column,
                    "'" + shown + "' is no unit for " + text_of(words.kind) + "; write " +
                        nearest_units(wanted, shown) + ", like " + text_of(words.example));
}

/// A spelling for a message: gaps as spaces, and the degree sign if that is what was typed.
std::string as_typed(std::string spelling, const Cursor& cursor) {
  if (cursor.peek() == kDegreeSign) return cursor.shown();
  std::replace(spelling.begin(), spelling.end(), '_', ' ');
  return spelling;
}

/// Reads a unit of the dimension. `asked` is the dimension of the whole quantity, which messages speak of.
Result<const Unit*> read_unit(Cursor& cursor, Dimension dimension, Dimension asked) {
  if (cursor.peek() == U'-' && is_letter(cursor.peek(1))) cursor.advance();  // "9-inch"
  cursor.skip_spaces();
  const int column = cursor.column();
  if (cursor.at_end()) return missing_unit(column, asked);
  const std::vector<Candidate> candidates = unit_candidates(cursor);
  for (std::size_t i = candidates.size(); i-- > 0;) {
    if (const Unit* unit = find_unit(dimension, candidates[i].spelling)) {
      cursor = candidates[i].behind;
      return unit;
    }
  }
  for (std::size_t i = candidates.size(); i-- > 0;) {
    if (const Unit* unit = find_unit(candidates[i].spelling)) {
      return other_dimension(column, as_typed(candidates[i].spelling, cursor), unit->dimension, asked);
    }
  }
  return unknown_unit(column, cursor.shown(), dimension);
}

Problem leftover(const Cursor& cursor, Dimension dimension) {
  const std::string example = text_of(words_for(dimension).example);
  if (cursor.peek() == U'x' || cursor.peek() == U'X') {
    return problem_at(ProblemCode::kNotANumber, cursor.column(),
                      "this reads as two sizes; write one at a time, like " + example);
  }
  return problem_at(ProblemCode::kNotANumber, cursor.column(),
                    "'" + cursor.shown() + "' does not belong here; write nothing but the quantity, like " + example);
}

/// Nothing if only spaces are left.
std::optional<Problem> fault_at_end(Cursor cursor, Dimension dimension) {
  cursor.skip_spaces();
  if (cursor.at_end()) return std::nullopt;
  return leftover(cursor, dimension);
}

bool may_have_parts(Dimension dimension) {
  return !words_for(dimension).parts.empty();
}

/// Steps over "+", "," or "and" between two parts.
void skip_joint(Cursor& cursor) {
  cursor.skip_spaces();
  Cursor ahead = cursor;
  if (ahead.peek() == U'+' || ahead.peek() == U',') {
    ahead.advance();
  } else if (read_word(ahead) != "and") {
    return;
  }
  ahead.skip_spaces();
  if (starts_number(ahead)) cursor = ahead;
}

/// "1 lb 4 oz": parts of one dimension, each unit smaller than the one before.
Result<double> read_parts(Cursor& cursor, Dimension dimension) {
  double total = 0;
  const Unit* previous = nullptr;
  while (true) {
    const Result<double> number = read_number(cursor);
    if (!number) return number.problem();
    Cursor at_unit = cursor;
    at_unit.skip_spaces();
    const Result<const Unit*> unit = read_unit(cursor, dimension, dimension);
    if (!unit) return unit.problem();
    if (previous != nullptr && to_si(1, **unit) >= to_si(1, *previous)) {
      return problem_at(ProblemCode::kWrongUnit, at_unit.column(),
                        "write the larger unit first and each unit once, like " + text_of(words_for(dimension).parts));
    }
    total += to_si(*number, **unit);
    previous = *unit;
    if (dimension == Dimension::kMass && skip_over_sign(cursor)) {
      return other_dimension(at_unit.column(), at_unit.shown(), Dimension::kDensity, dimension);
    }
    if (!may_have_parts(dimension)) return total;
    skip_joint(cursor);
    if (!starts_number(cursor)) return total;
  }
}

/// "1.2 g/ml", "240 g per cup".
Result<double> read_density(Cursor& cursor) {
  const Result<double> number = read_number(cursor);
  if (!number) return number.problem();
  cursor.skip_spaces();
  const int column = cursor.column();
  const Result<const Unit*> mass = read_unit(cursor, Dimension::kMass, Dimension::kDensity);
  if (!mass) return mass.problem();
  if (!skip_over_sign(cursor)) {
    return other_dimension(column, text_of((*mass)->name), Dimension::kMass, Dimension::kDensity);
  }
  const Result<const Unit*> volume = read_unit(cursor, Dimension::kVolume, Dimension::kDensity);
  if (!volume) return volume.problem();
  return *number * ((*mass)->numerator * (*volume)->denominator) / ((*mass)->denominator * (*volume)->numerator);
}

/// "0.75", "3/4", "75 %".
Result<double> read_ratio(Cursor& cursor) {
  const Result<double> number = read_number(cursor);
  if (!number) return number;
  cursor.skip_spaces();
  if (cursor.at_end()) return number;
  const Result<const Unit*> unit = read_unit(cursor, Dimension::kRatio, Dimension::kRatio);
  if (!unit) return unit.problem();
  return to_si(*number, **unit);
}

/// "-18 C": the sign belongs to the number before the scale is shifted.
Result<double> read_temperature(Cursor& cursor, bool is_negative, int sign_column) {
  const Result<double> number = read_number(cursor);
  if (!number) return number;
  const Result<const Unit*> unit = read_unit(cursor, Dimension::kTemperature, Dimension::kTemperature);
  if (!unit) return unit.problem();
  const double kelvin = to_si(is_negative ? -*number : *number, **unit);
  if (kelvin < 0) {
    return problem_at(ProblemCode::kOutOfRange, sign_column,
                      "nothing is colder than -273.15 C (-459.67 F); write a temperature like -18 C");
  }
  return kelvin;
}

Result<double> read_unsigned(Cursor& cursor, Dimension dimension) {
  if (dimension == Dimension::kDensity) return read_density(cursor);
  if (dimension == Dimension::kRatio) return read_ratio(cursor);
  return read_parts(cursor, dimension);
}

}  // namespace

Result<double> parse_quantity(std::string_view text, Dimension dimension) {
  const Result<std::vector<Character>> characters = read_characters(text);
  if (!characters) return characters.problem();
  Cursor cursor(*characters);
  cursor.skip_spaces();
  const std::string example = text_of(words_for(dimension).example);
  if (cursor.at_end()) {
    return problem_at(ProblemCode::kNotANumber, 0,
                      "nothing is written here; write " + text_of(words_for(dimension).kind) +
                          (dimension == Dimension::kRatio ? ", like " : " with its unit, like ") + example);
  }
  const int sign_column = cursor.column();
  const bool is_negative = cursor.peek() == U'-';
  if (is_negative || cursor.peek() == U'+') {
    cursor.advance();
    cursor.skip_spaces();
  }
  const Result<double> value = dimension == Dimension::kTemperature ? read_temperature(cursor, is_negative, sign_column)
                                                                    : read_unsigned(cursor, dimension);
  if (!value) return value;
  if (std::optional<Problem> fault = fault_at_end(cursor, dimension)) return *std::move(fault);
  if (is_negative && dimension != Dimension::kTemperature) {
    return problem_at(ProblemCode::kOutOfRange, sign_column,
                      text_of(words_for(dimension).kind) +
                          " cannot be less than nothing; write it without the minus, like " + example);
  }
  return value;
}

}  // namespace tinwright
