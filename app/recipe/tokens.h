// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A line of a recipe cut into numbers, words and signs, each with its place in the line, so that what is not taken can
// be put together again as it was written.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

struct Token {
  enum class Kind { kNumber, kWord, kSign };

  Kind kind = Kind::kSign;
  std::string text = {};   // number: as read_number takes it, "1 1/2"; word: small letters; sign: one plain character
  std::string as_is = {};  // as it stands in the line
  double value = 0.0;      // of a number
  bool is_bad = false;     // a number that can be read in two ways or not at all: "1,500"
  std::size_t begin = 0, end = 0;  // bytes in the line

  bool is_number() const { return kind == Kind::kNumber; }
  bool is_word() const { return kind == Kind::kWord; }
  bool is_word(std::string_view word) const { return kind == Kind::kWord && text == word; }
  bool is_sign(char sign) const { return kind == Kind::kSign && text.size() == 1 && text[0] == sign; }
};

/// The tokens of a line. A number is a whole number, a decimal or a fraction with its mixed forms; typographic dashes,
/// quotes, slashes and multiplication signs come as '-', '"', '\'', '/' and 'x'. Linear in the line's length.
std::vector<Token> tokens_of(std::string_view line);

/// The number with at most three decimals, as read_number takes it: "12", "0.5". 0 or more, at most 1e9.
std::string number_text(double value);

}  // namespace tinwright
