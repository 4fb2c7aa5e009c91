// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// UTF-8, once: by the Unicode Standard's table 3-7 (well-formed UTF-8 byte sequences), so that overlong forms,
// surrogates and what is beyond U+10FFFF are no characters.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace tinwright {

struct Utf8Character {
  char32_t code = 0;
  std::size_t bytes = 0;  // 0: there is none
};

/// The character at the start of `text`; none where the text is empty or does not begin with well-formed UTF-8.
Utf8Character first_character(std::string_view text);

/// Adds a code point below 0x110000.
void append_utf8(std::string& out, char32_t code);

/// What stands for bytes that are no character, U+FFFD, as UTF-8.
inline constexpr std::string_view kReplacementCharacter = "\xEF\xBF\xBD";

}  // namespace tinwright
