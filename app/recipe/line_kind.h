// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a single line of a pasted recipe is by its words and its look.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "app/recipe/read_text.h"

namespace tinwright {

enum class TextSection { kTop, kIngredients, kSteps, kEquipment, kRest };

/// A line of more bytes is no ingredient but a sentence.
inline constexpr std::size_t kLongestIngredientLine = 160;

/// Without the marks of headings and emphasis at both ends.
std::string bare(std::string_view line);

/// The section that a heading opens; nothing where the line opens none.
std::optional<TextSection> section_of(const std::string& line);

/// "Serves 8", "Prep time: 20 minutes": a fact about the whole, put into the recipe; says whether it was one.
bool take_fact(const std::string& line, ListedRecipe& recipe);

bool has_bullet(const std::string& line);

/// "1." or "1)" or "Step 1" in front.
bool has_step_number(const std::string& line);

/// "Mix", "Preheat": what a step begins with.
bool begins_with_verb(const std::string& line);

/// Short, with an amount or a bullet in front, and no sentence.
bool looks_like_ingredient(const std::string& line);

}  // namespace tinwright
