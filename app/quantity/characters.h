// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The letters of a typed quantity: UTF-8 is decoded strictly, look-alikes (thin spaces, typographic minus,
// primes, fraction slash) become their plain form, and every letter remembers the column a cook would count.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/problem.h"

namespace tinwright {

/// Longest text taken for one quantity, in characters. Nothing a cook writes comes near; it bounds all work.
inline constexpr std::size_t kLongestQuantity = 100;

struct Character {
  char32_t code = 0;  // never 0 in decoded text, so 0 can stand for the end
  int column = 0;     // 1-based, in characters of what was typed
};

/// The text as characters. Refused: more than kLongestQuantity characters (kNotANumber, place empty) and
/// bytes that are not UTF-8 (kUnreadable, with the column).
Result<std::vector<Character>> read_characters(std::string_view text);

/// A reading position in decoded text.
class Cursor {
 public:
  explicit Cursor(const std::vector<Character>& text) : text_(&text) {}

  char32_t peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_->size() ? (*text_)[at_ + ahead].code : U'\0';
  }
  bool at_end() const { return at_ >= text_->size(); }
  void advance(std::size_t count = 1) { at_ += count; }
  /// Column of the next character; one past the last at the end.
  int column() const;
  void skip_spaces();
  /// The word or sign at the cursor up to the next space, shortened and made safe for a one-line message.
  std::string shown() const;

 private:
  const std::vector<Character>* text_;
  std::size_t at_ = 0;
};

/// A Problem at a column; column 0 leaves the place empty (the whole text).
Problem problem_at(ProblemCode code, int column, std::string message);

constexpr bool is_digit(char32_t c) {
  return c >= U'0' && c <= U'9';
}
constexpr bool is_letter(char32_t c) {
  return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z');
}

}  // namespace tinwright
