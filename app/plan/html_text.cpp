// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See html_text.h.
#include "app/plan/html_text.h"

namespace tinwright {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD
constexpr char32_t kNotUtf8 = 0xFFFD;

struct Letter {
  char32_t code = kNotUtf8;
  std::size_t bytes = 1;
};

/// The letter at `at`: overlong forms, surrogates and broken ends are one byte that is no letter.
Letter letter_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t more = lead < 0xC2 ? 0 : lead < 0xE0 ? 1 : lead < 0xF0 ? 2 : lead < 0xF5 ? 3 : 0;
  if (more == 0 || at + more >= text.size()) return {};
  char32_t code = lead & (0x3Fu >> more);
  for (std::size_t i = 1; i <= more; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80u) return {};
    code = (code << 6) | (byte(at + i) & 0x3Fu);
  }
  const bool is_overlong = (more == 2 && code < 0x800) || (more == 3 && code < 0x10000);
  const bool is_none = (code >= 0xD800 && code < 0xE000) || code > 0x10FFFF || (code & 0xFFFE) == 0xFFFE;
  if (is_overlong || is_none) return {};
  return {code, more + 1};
}

bool ends_line(char32_t c) {
  return (c >= 0x9 && c <= 0xD) || c == 0x85 || c == 0x2028 || c == 0x2029;
}

/// Controls, marks of direction, and letters without width; the joiners stay, scripts need them.
bool is_unseen(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0xAD || c == 0x61C || c == 0x200B || c == 0x200E || c == 0x200F ||
         (c >= 0x202A && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) || c == 0xFEFF || (c >= 0xFFF9 && c <= 0xFFFB) ||
         (c >= 0xE0000 && c <= 0xE007F);
}

}  // namespace

std::string html_text(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    const std::string_view bytes = text.substr(at, letter.bytes);
    at += letter.bytes;
    if (ends_line(letter.code)) {
      safe += ' ';
    } else if (is_unseen(letter.code)) {
      continue;
    } else if (letter.code == '&') {
      safe += "&amp;";
    } else if (letter.code == '<') {
      safe += "&lt;";
    } else if (letter.code == '>') {
      safe += "&gt;";
    } else if (letter.code == '"') {
      safe += "&quot;";
    } else if (letter.code == '\'') {
      safe += "&#39;";
    } else {
      safe += letter.code == kNotUtf8 ? kReplacement : bytes;
    }
  }
  return safe;
}

std::string foreign_text(std::string_view text) {
  return "<bdi>" + html_text(text) + "</bdi>";
}

}  // namespace tinwright
