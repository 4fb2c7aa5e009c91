// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Texts of anyone's, made safe to stand in HTML, in SVG within it, and in attributes in double quotes.
#pragma once

#include <string>
#include <string_view>

namespace tinwright {

/// The text as characters only: markup and quotes escaped; control characters, marks that change the direction of
/// writing and invisible ones left out, or a space where they end a line; what is not UTF-8 as U+FFFD.
std::string html_text(std::string_view text);

/// The same, kept apart from the direction of the text around it. Not for attributes.
std::string foreign_text(std::string_view text);

}  // namespace tinwright
