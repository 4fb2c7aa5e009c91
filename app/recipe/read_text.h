// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A recipe pasted as plain text: which line is the title, a heading, an ingredient, a step.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "app/recipe/draft.h"

namespace tinwright {

/// Lines of ingredients under one heading, before they are read.
struct ListedPart {
  std::string heading;
  std::vector<std::string> lines;
};

/// What a text or a page's data holds, still in lines.
struct ListedRecipe {
  std::string name, language, yield, prep_time, cook_time, total_time;  // times as they stand
  std::vector<ListedPart> parts;
  std::vector<std::string> steps;
  std::vector<std::string> equipment;  // lines that name pans and tools
  std::vector<std::string> unread;
  std::size_t left_out = 0;  // lines beyond what any recipe has
};

/// Sorts the lines of a text, cleaned by clean_text. Headings may be marked with "#" as markup.h's pages mark them.
ListedRecipe list_text(std::string_view text);

/// Adds a line of ingredients to the last part, or begins a new part if the line is a heading.
void add_listed(std::vector<ListedPart>& parts, const std::string& line);

/// "1. Mix. 2. Bake." as two; any other line as it is.
std::vector<std::string> numbered_steps(const std::string& line);

/// One step without its number: "2. Mix" -> "Mix". Empty for a number alone.
std::string without_number(std::string_view step);

}  // namespace tinwright
