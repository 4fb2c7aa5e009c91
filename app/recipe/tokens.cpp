// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Only where a number begins and ends is decided here; its value comes from read_number.
#include "app/recipe/tokens.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "app/quantity/number.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongestNumberText = 30;  // bytes; longer runs of digits are not numbers of a kitchen

struct Plain {
  std::string_view sign;
  std::string_view plain;
};

// Fraction signs come with a gap in front, so that "1½" is one and a half whatever stands between.
constexpr std::array kPlainForms{
    Plain{"\u2010", "-"},       Plain{"\u2011", "-"},       Plain{"\u2012", "-"},    Plain{"\u2013", "-"},
    Plain{"\u2014", "-"},       Plain{"\u2212", "-"},       Plain{"\u2044", "/"},    Plain{"\u2215", "/"},
    Plain{"\u2032", "'"},       Plain{"\u2019", "'"},       Plain{"\u2018", "'"},    Plain{"\u2033", "\""},
    Plain{"\u201C", "\""},      Plain{"\u201D", "\""},      Plain{"\u00D7", "x"},    Plain{"\u2715", "x"},
    Plain{"\u00BA", "\u00B0"},  Plain{"\u02DA", "\u00B0"},  Plain{"\u00BC", " 1/4"}, Plain{"\u00BD", " 1/2"},
    Plain{"\u00BE", " 3/4"},    Plain{"\u2150", " 1/7"},    Plain{"\u2151", " 1/9"}, Plain{"\u2152", " 1/10"},
    Plain{"\u2153", " 1/3"},    Plain{"\u2154", " 2/3"},    Plain{"\u2155", " 1/5"}, Plain{"\u2156", " 2/5"},
    Plain{"\u2157", " 3/5"},    Plain{"\u2158", " 4/5"},    Plain{"\u2159", " 1/6"}, Plain{"\u215A", " 5/6"},
    Plain{"\u215B", " 1/8"},    Plain{"\u215C", " 3/8"},    Plain{"\u215D", " 5/8"}, Plain{"\u215E", " 7/8"},
    Plain{"\u2103", "\u00B0C"}, Plain{"\u2109", "\u00B0F"},
};

bool is_digit_char(char c) {
  return c >= '0' && c <= '9';
}

bool is_high(char c) {
  return static_cast<unsigned char>(c) >= 0x80;
}

bool is_letter_char(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// The line in plain signs, and for each byte of it where it stood.
struct PlainLine {
  std::string text;
  std::vector<std::size_t> from;
  std::vector<bool> is_sign;  // beyond ASCII and no letter
};

std::size_t bytes_of_letter(char lead) {
  const auto byte = static_cast<unsigned char>(lead);
  return byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : byte >= 0xC0 ? 2 : 1;
}

PlainLine plain_line(std::string_view line) {
  PlainLine plain;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t length = std::min(bytes_of_letter(line[at]), line.size() - at);
    std::string_view put = line.substr(at, length);
    bool is_sign = false;
    if (length > 1) {
      const auto* form =
          std::find_if(kPlainForms.begin(), kPlainForms.end(), [put](const Plain& p) { return p.sign == put; });
      if (form != kPlainForms.end()) put = form->plain;
      // Latin-1's signs, general punctuation, arrows to symbols and dingbats are no letters.
      const std::string_view first_two = put.substr(0, 2);
      is_sign =
          is_high(put[0]) && (put[0] == '\xE2' || (put[0] == '\xC2') || first_two == "\xC3\x97" || put[0] == '\xF0');
    }
    for (const char c : put) {
      plain.text += c;
      plain.from.push_back(at);
      plain.is_sign.push_back(is_sign);
    }
    at += length;
  }
  plain.from.push_back(line.size());
  return plain;
}

class Cutter {
 public:
  explicit Cutter(std::string_view line) : line_(line), plain_(plain_line(line)) {}

  std::vector<Token> cut() {
    const std::string& text = plain_.text;
    while (at_ < text.size()) {
      const char c = text[at_];
      if (c == ' ' || c == '\n') {
        ++at_;
      } else if (starts_number_at(at_)) {
        take_number();
      } else if (is_letter_char(c) || (is_high(c) && !plain_.is_sign[at_])) {
        take_word();
      } else {
        const std::size_t length = is_high(c) ? bytes_of_letter(c) : 1;
        add(Token::Kind::kSign, at_, std::min(at_ + length, text.size()), text.substr(at_, length));
      }
    }
    return std::move(tokens_);
  }

 private:
  char at(std::size_t i) const { return i < plain_.text.size() ? plain_.text[i] : '\0'; }

  bool starts_number_at(std::size_t i) const {
    if (is_digit_char(at(i))) return true;
    const bool is_point = at(i) == '.' || at(i) == ',';
    return is_point && is_digit_char(at(i + 1)) &&
           (i == 0 || (at(i - 1) == ' ' || at(i - 1) == '(' || at(i - 1) == '-'));
  }

  /// Behind a fraction "3/4" that begins at i; i where there is none.
  std::size_t behind_fraction(std::size_t i) const {
    std::size_t end = i;
    while (is_digit_char(at(end))) ++end;
    if (end == i || end - i > 3) return i;
    std::size_t below = end;
    while (at(below) == ' ') ++below;
    if (at(below) != '/') return i;
    ++below;
    while (at(below) == ' ') ++below;
    end = below;
    while (is_digit_char(at(end))) ++end;
    // "115g/4oz" has a unit before its slash; "1/2lb" is a fraction; "1/250" is none.
    return end == below || end - below > 2 ? i : end;
  }

  void take_number() {
    const std::size_t begin = at_;
    std::size_t end = behind_fraction(begin);
    if (end == begin) {
      while (is_digit_char(at(end)) || ((at(end) == '.' || at(end) == ',') && is_digit_char(at(end + 1)))) ++end;
      std::size_t part = end;
      while (at(part) == ' ') ++part;
      if (at(part) == '&' || (at(part) == '-' && part == end)) {
        ++part;
        while (at(part) == ' ') ++part;
      } else if (plain_.text.compare(part, 4, "and ") == 0) {
        part += 4;
        while (at(part) == ' ') ++part;
      }
      const std::size_t behind = part > end ? behind_fraction(part) : part;
      if (behind > part && is_less_than_one(part, behind)) {
        add_mixed(begin, end, part, behind);
        return;
      }
    }
    add_number(begin, end, plain_.text.substr(begin, end - begin));
  }

  bool is_less_than_one(std::size_t begin, std::size_t end) const {
    const auto fraction = value_of(plain_.text.substr(begin, end - begin));
    return fraction >= 0.0 && fraction < 1.0;
  }

  static double value_of(const std::string& text) {
    if (text.size() > kLongestNumberText) return -1.0;
    const auto characters = read_characters(text);
    if (!characters) return -1.0;
    Cursor cursor(*characters);
    cursor.skip_spaces();
    const auto value = read_number(cursor);
    cursor.skip_spaces();
    return value && cursor.at_end() ? *value : -1.0;
  }

  void add_mixed(std::size_t begin, std::size_t end, std::size_t part, std::size_t behind) {
    std::string text = plain_.text.substr(begin, end - begin) + " " + plain_.text.substr(part, behind - part);
    add_number(begin, behind, text);
  }

  void add_number(std::size_t begin, std::size_t end, std::string text) {
    text.erase(0, text.find_first_not_of(' '));
    const std::size_t slash = text.find('/');
    if (slash != std::string::npos) {  // "1 / 2"
      while (slash > 0 && text.find(" /") != std::string::npos) text.erase(text.find(" /"), 1);
      while (text.find("/ ") != std::string::npos) text.erase(text.find("/ ") + 1, 1);
    }
    const double value = value_of(text);
    std::replace(text.begin(), text.end(), ',', '.');
    if (text.front() == '.') text.insert(0, 1, '0');
    add(Token::Kind::kNumber, begin, end, text);
    tokens_.back().value = std::max(value, 0.0);
    tokens_.back().is_bad = value < 0.0;
  }

  void take_word() {
    std::size_t end = at_;
    const auto is_inside = [this](std::size_t i) {
      if (is_high(at(i))) return !plain_.is_sign[i];
      return is_letter_char(at(i)) || is_digit_char(at(i));
    };
    const bool is_glued =
        at_ > 0 && is_digit_char(at(at_ - 1));  // "20cm": letters only, what follows is another number
    while (end < plain_.text.size() && (is_inside(end) || (at(end) == '\'' && is_letter_char(at(end + 1)))) &&
           !(is_glued && is_digit_char(at(end)))) {
      ++end;
    }
    // "9x13", "20cmx30cm", "eggs x2"
    const bool is_times = (at(at_) == 'x' || at(at_) == 'X') && is_digit_char(at(at_ + 1));
    if (is_times) end = at_ + 1;
    const bool ends_in_times = is_glued && end - at_ > 1 && (at(end - 1) == 'x' || at(end - 1) == 'X');
    if (ends_in_times && is_digit_char(at(end))) --end;
    std::string word = plain_.text.substr(at_, end - at_);
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    add(Token::Kind::kWord, at_, end, word);
  }

  void add(Token::Kind kind, std::size_t begin, std::size_t end, std::string text) {
    Token token{.kind = kind, .text = std::move(text), .begin = plain_.from[begin], .end = plain_.from[end]};
    token.as_is = std::string(line_.substr(token.begin, token.end - token.begin));
    tokens_.push_back(std::move(token));
    at_ = end;
  }

  std::string_view line_;
  PlainLine plain_;
  std::size_t at_ = 0;
  std::vector<Token> tokens_;
};

}  // namespace

std::vector<Token> tokens_of(std::string_view line) {
  return Cutter(line).cut();
}

std::string number_text(double value) {
  std::string text = std::to_string(std::llround(value * 1000.0));
  while (text.size() < 4) text.insert(0, 1, '0');
  text.insert(text.size() - 3, 1, '.');
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace tinwright
