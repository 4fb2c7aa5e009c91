// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
#pragma once
#include <string_view>
#include "app/recipe/draft.h"
#include "geometry/problem.h"
namespace tinwright {
Result<RecipeDraft> read_recipe(std::string_view text);
}  // namespace tinwright
