// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bytes 0x80 to 0x9F of Windows-1252 follow the WHATWG Encoding Standard's index of that name (from memory).
#include "app/recipe/plain_text.h"

#include <algorithm>
#include <array>

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

char32_t from_windows_1252(unsigned char byte) {
  constexpr std::array<char16_t, 32> kHigh{0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                           0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                           0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                           0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};
  return byte >= 0x80 && byte < 0xA0 ? kHigh[byte - 0x80u] : byte;
}

bool is_wide_space(char32_t c) {
  return c == 0xA0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F || c == 0x3000;
}

/// Control characters, direction marks, joiners, variation selectors, tags, private and unassigned specials.
bool is_invisible(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0xAD || c == 0x61C || c == 0x180E ||
         (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) ||
         (c >= 0xFE00 && c <= 0xFE0F) || c == 0xFEFF || (c >= 0xFFF0 && c <= 0xFFFF) ||
         (c >= 0xE0000 && c <= 0xE0FFF) || (c & 0xFFFE) == 0xFFFE;
}

void put(std::string& out, char32_t c) {
  if (c == '\n' || c == 0x85 || c == 0x2028 || c == 0x2029 || c == 0x0B || c == 0x0C) {
    out += '\n';
  } else if (c == ' ' || c == '\t' || is_wide_space(c)) {
    out += ' ';
  } else if (!is_invisible(c)) {
    append_utf8(out, c);
  }
}

std::string from_utf16(std::string_view bytes, bool is_big_endian) {
  std::string out;
  char32_t high = 0;
  for (std::size_t i = 2; i + 1 < bytes.size(); i += 2) {
    const auto first = static_cast<unsigned char>(bytes[i]), second = static_cast<unsigned char>(bytes[i + 1]);
    const char32_t unit = is_big_endian ? first * 256u + second : second * 256u + first;
    if (unit >= 0xD800 && unit < 0xDC00) {
      high = unit;
      continue;
    }
    if (unit >= 0xDC00 && unit < 0xE000) {
      if (high != 0) append_utf8(out, 0x10000 + ((high - 0xD800) << 10) + (unit - 0xDC00));
    } else {
      append_utf8(out, unit);
    }
    high = 0;
  }
  return out;
}

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) >= 0x80;
}

template <class Test>
bool any_of_list(std::string_view words, const Test& test) {
  while (true) {
    const std::size_t bar = words.find('|');
    if (test(words.substr(0, bar))) return true;
    if (bar == std::string_view::npos) return false;
    words.remove_prefix(bar + 1);
  }
}

}  // namespace

std::string clean_text(std::string_view bytes) {
  if (starts_with(bytes, "\xFF\xFE")) return clean_text(from_utf16(bytes, false));
  if (starts_with(bytes, "\xFE\xFF")) return clean_text(from_utf16(bytes, true));
  std::string out;
  out.reserve(bytes.size());
  for (std::size_t at = 0; at < bytes.size();) {
    if (bytes[at] == '\r') {  // of "\r\n", or alone on old machines
      ++at;
      if (at >= bytes.size() || bytes[at] != '\n') out += '\n';
      continue;
    }
    const auto [code, length] = first_character(bytes.substr(at));
    put(out, length > 0 ? code : from_windows_1252(static_cast<unsigned char>(bytes[at])));
    at += std::max<std::size_t>(length, 1);
  }
  return out;
}

std::string one_line(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool is_gap = c == ' ' || c == '\n' || c == '\t';
    if (!is_gap) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \n\t");
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(" \n\t") - begin + 1);
}

std::string lower_case(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

bool starts_with(std::string_view text, std::string_view beginning) {
  return text.substr(0, beginning.size()) == beginning;
}

bool ends_with(std::string_view text, std::string_view ending) {
  return text.size() >= ending.size() && text.substr(text.size() - ending.size()) == ending;
}

bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

bool has_word(std::string_view text, std::string_view word) {
  if (word.empty()) return false;
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    const bool is_begun = at == 0 || !is_letter_or_digit(text[at - 1]);
    if (is_begun && (end == text.size() || !is_letter_or_digit(text[end]))) return true;
  }
  return false;
}

bool has_any_word(std::string_view text, std::string_view words) {
  return any_of_list(words, [text](std::string_view word) { return has_word(text, word); });
}

bool is_one_of(std::string_view word, std::string_view words) {
  return any_of_list(words, [word](std::string_view known) { return known == word; });
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (true) {
    const std::size_t end = text.find('\n');
    lines.push_back(one_line(text.substr(0, end)));
    if (end == std::string_view::npos) return lines;
    text.remove_prefix(end + 1);
  }
}

std::string shortened(std::string_view text, std::size_t longest) {
  if (text.size() <= longest) return std::string(text);
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u) --end;
  return std::string(text.substr(0, end)) + "...";
}

}  // namespace tinwright
