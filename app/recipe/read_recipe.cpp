// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
#include "app/recipe/read_recipe.h"
namespace tinwright {
Result<RecipeDraft> read_recipe(std::string_view) {
  return Problem{ProblemCode::kUnreadable, "not yet", ""};
}
}  // namespace tinwright
