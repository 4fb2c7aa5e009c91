// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Somebody else's recipe from whatever the cook has of it: recipe data (JSON-LD), a saved page, or pasted text.
#pragma once

#include <cstddef>
#include <string_view>

#include "app/recipe/draft.h"
#include "geometry/problem.h"

namespace tinwright {

/// Beyond this a file is no recipe. Saved pages are about a megabyte.
inline constexpr std::size_t kLongestRecipe = 10U << 20U;  // [bytes]

/// The recipe as a draft for the cook to look over. Takes any bytes; linear in their number; all that comes out is
/// plain text, without marks, control characters and direction marks. Failure: kTooMuch for more than kLongestRecipe;
/// kMissing where there is no text, or neither ingredients nor steps were found in it; kUnreadable, with its line, for
/// data that is no JSON.
Result<RecipeDraft> read_recipe(std::string_view text);

}  // namespace tinwright
