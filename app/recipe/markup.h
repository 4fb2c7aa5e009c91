// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Plain text out of marked-up text. Nothing is interpreted, run or loaded: a mark is left out or becomes a line end.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

/// Character references ("&frac12;", "&#189;", "&#xBD;") as the letters they stand for, once. An unknown one stays.
std::string decode_entities(std::string_view text);

/// Whether the text looks as if it were HTML rather than something with a '<' in it.
bool looks_like_markup(std::string_view text);

/// The text without marks and with entities decoded once; block marks become line ends. Never holds anything that a
/// browser would take for a mark, whatever stood there before.
std::string without_markup(std::string_view text);

/// A saved page taken apart.
struct SavedPage {
  std::vector<std::string> linked_data;  // what stands in script blocks of type application/ld+json, not decoded
  std::string title;                     // of the page, plain
  std::string language;                  // of <html lang>
  std::string text;  // plain lines: headings begin with "# ", items of a list with "- ", of a numbered list with "1. "
};

/// Linear in the length of `html`; anything may stand there.
SavedPage read_page(std::string_view html);

}  // namespace tinwright
