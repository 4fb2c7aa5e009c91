// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// schema.org/Recipe in JSON-LD (https://schema.org/Recipe), in the shapes in which it is found: typed by word, list or
// full address, within @graph, arrays or other things, with instructions as text, lists, steps and sections.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/recipe/read_text.h"
#include "geometry/problem.h"

namespace tinwright {

/// The recipe of a JSON-LD text (clean_text was used on it); of several the fullest. Texts come out plain, without
/// marks. Failure: kUnreadable where it is no JSON even after mending, kMissing where it holds no recipe.
Result<ListedRecipe> list_linked_data(std::string_view json);

}  // namespace tinwright
