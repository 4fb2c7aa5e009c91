// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A language's words from a file: a JSON object {"English": "other", …}.
#pragma once

#include <string_view>

#include "app/quantity/say.h"
#include "geometry/problem.h"

namespace tinwright {

/// kUnreadable for what is no such object.
Result<WordTable> read_words(std::string_view text);

}  // namespace tinwright
