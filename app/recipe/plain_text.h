// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Makes plain text of whatever was pasted or saved: always UTF-8, without control characters, marks of writing
// direction and invisible letters; and the few things every reader of recipes does with letters.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

/// The text as UTF-8 with '\n' as its only control character. UTF-16 with a byte order mark is converted; a byte that
/// is not UTF-8 is taken for Windows-1252, which is what old pages are written in. Spaces of every width become ' '.
std::string clean_text(std::string_view bytes);

/// Trimmed, and with every run of spaces and line ends as one space.
std::string one_line(std::string_view text);

/// Without spaces at both ends.
std::string_view trimmed(std::string_view text);

/// ASCII letters small; all others as they are.
std::string lower_case(std::string_view text);

bool starts_with(std::string_view text, std::string_view beginning);
bool ends_with(std::string_view text, std::string_view ending);
bool contains(std::string_view text, std::string_view part);

/// Whether `word` stands in `text` with no letter or digit on either side. Both in small letters.
bool has_word(std::string_view text, std::string_view word);
/// The same for any of `words`, which are separated by '|'.
bool has_any_word(std::string_view text, std::string_view words);
/// Whether `word` is one of `words`, which are separated by '|'.
bool is_one_of(std::string_view word, std::string_view words);

/// The lines of a text, trimmed; empty ones stay.
std::vector<std::string> lines_of(std::string_view text);

/// At most `longest` bytes of the text, not cut within a character, with "..." where something was left out.
std::string shortened(std::string_view text, std::size_t longest);

}  // namespace tinwright
