// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See html_text.h.
#include "app/plan/html_text.h"

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

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
    const auto [code, length] = first_character(text.substr(at));
    if (length == 0 || (code & 0xFFFE) == 0xFFFE) {  // the latter are for ever no characters
      safe += kReplacementCharacter;
      ++at;
      continue;
    }
    const std::string_view bytes = text.substr(at, length);
    at += length;
    if (ends_line(code)) {
      safe += ' ';
    } else if (is_unseen(code)) {
      continue;
    } else if (code == '&') {
      safe += "&amp;";
    } else if (code == '<') {
      safe += "&lt;";
    } else if (code == '>') {
      safe += "&gt;";
    } else if (code == '"') {
      safe += "&quot;";
    } else if (code == '\'') {
      safe += "&#39;";
    } else {
      safe += bytes;
    }
  }
  return safe;
}

std::string foreign_text(std::string_view text) {
  return "<bdi>" + html_text(text) + "</bdi>";
}

}  // namespace tinwright
