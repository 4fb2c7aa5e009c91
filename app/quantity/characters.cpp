// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The look-alikes are the ones that word processors and phone keyboards put in place of the plain signs.
#include "app/quantity/characters.h"

#include <utility>

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

constexpr char32_t kReplacement = 0xFFFD;
constexpr std::size_t kLongestShown = 16;  // characters of the cook's text quoted in a message

bool is_space(char32_t c) {
  return c == U' ' || c == U'\t' || c == 0xA0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F ||
         c == 0x3000;
}

char32_t plain_form(char32_t c) {
  if (is_space(c)) return U' ';
  switch (c) {
    case 0x2010:  // hyphen
    case 0x2011:  // non-breaking hyphen
    case 0x2012:  // figure dash
    case 0x2013:  // en dash
    case 0x2212:  // minus sign
      return U'-';
    case 0x2044:  // fraction slash
    case 0x2215:  // division slash
      return U'/';
    case 0x2033:  // double prime
    case 0x201D:  // closing quotation mark, typed for it
      return U'"';
    case 0x2032:  // prime
    case 0x2019:  // apostrophe, typed for it
      return U'\'';
    case 0x00BA:  // ordinal sign, typed for the degree sign
    case 0x02DA:  // ring above, the same
      return 0x00B0;
    case 0x212A:  // kelvin sign
      return U'K';
    case 0x22C5:  // dot operator
    case 0x2219:  // bullet operator, typed for it
      return 0x00B7;
    case 0x00D7:  // multiplication sign
      return U'x';
    case 0:  // 0 means the end to a Cursor
      return kReplacement;
    default:
      return c;
  }
}

bool is_unprintable(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c < 0xA0) || (c >= 0x200B && c <= 0x200F) || (c >= 0x2028 && c <= 0x202E) ||
         (c >= 0x2060 && c <= 0x206F) || c == 0xFEFF || c == kReplacement;
}

}  // namespace

Problem problem_at(ProblemCode code, int column, std::string message) {
  return {code, std::move(message), column > 0 ? "column " + std::to_string(column) : std::string()};
}

Result<std::vector<Character>> read_characters(std::string_view text) {
  std::vector<Character> characters;
  int column = 0;
  for (std::size_t at = 0; at < text.size();) {
    if (static_cast<std::size_t>(++column) > kLongestQuantity) {
      return problem_at(ProblemCode::kNotANumber, 0,
                        "this is too long to be one quantity; write a number with its unit, like 24 cm or 1 1/2 cups");
    }
    const auto [code, bytes] = first_character(text.substr(at));
    at += bytes;
    if (bytes == 0) {
      return problem_at(ProblemCode::kUnreadable, column,
                        "a character here is damaged (the text is not UTF-8); type the quantity again, like 24 cm");
    }
    const bool degrees_celsius = code == 0x2103, degrees_fahrenheit = code == 0x2109;
    if (degrees_celsius || degrees_fahrenheit) {
      characters.push_back({0x00B0, column});
      characters.push_back({degrees_celsius ? U'C' : U'F', column});
    } else {
      characters.push_back({plain_form(code), column});
    }
  }
  return characters;
}

int Cursor::column() const {
  if (!at_end()) return (*text_)[at_].column;
  return text_->empty() ? 1 : text_->back().column + 1;
}

void Cursor::skip_spaces() {
  while (peek() == U' ') advance();
}

std::string Cursor::shown() const {
  std::string out;
  for (std::size_t i = 0; peek(i) != 0 && peek(i) != U' '; ++i) {
    if (i == kLongestShown) return out + "...";
    append_utf8(out, is_unprintable(peek(i)) ? U'?' : peek(i));
  }
  return out;
}

}  // namespace tinwright
