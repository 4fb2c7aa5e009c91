// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One line of a recipe's list of ingredients.
#pragma once

#include <string>
#include <string_view>

#include "app/recipe/draft.h"

namespace tinwright {

struct IngredientLine {
  IngredientDraft draft;
  bool is_understood = true;  // false: a number stands in the line that was not read; its amount is then empty
  std::string doubt;          // what may be meant in two ways, for the cook; empty if nothing
};

/// Reads one line, of clean text (see clean_text). Its `amount`, `up_to` and `each` are texts that parse_quantity reads
/// as a mass or a volume, or plain numbers of pieces, or empty. Never refuses: what is no amount is food.
IngredientLine read_ingredient(std::string_view line);

/// The line without bullet, tick box, dash or list number in front of it.
std::string without_bullet(std::string_view line);

}  // namespace tinwright
