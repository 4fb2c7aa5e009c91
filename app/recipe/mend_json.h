// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// JSON as it is found in pages is often not quite JSON: wrapped in comments, with raw line ends in its strings, a comma
// too many, a field given twice, or its end missing. This makes a text of it that the strict reader takes, and says
// what it did.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

struct MendedJson {
  std::string text;
  std::vector<std::string> notes;  // what was mended, for the cook; each kind once
};

/// Never fails; where there is no JSON at all the text comes out empty, and where brackets are nested beyond all sense.
/// Of a field given twice the last one counts, as for most readers (RFC 8259, section 4). Linear in the text's length.
MendedJson mend_json(std::string_view text);

}  // namespace tinwright
