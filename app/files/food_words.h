// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The words of a food in a form that can be compared: "2 Crème Fraîches" and "creme fraiche" are the same.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

/// Small letters a-z, digits and single spaces: accents and apostrophes are dropped, everything else parts words.
std::string plain_letters(std::string_view text);

/// The words in one spelling (British) and in the singular, without numbers; a percentage stays ("70%"). Any bytes may
/// be given.
std::vector<std::string> plain_words(std::string_view text);

/// A wording as a recipe has it: what the cook may choose among ("butter or margarine"), each in clauses, the food
/// first and remarks after it ("butter, softened"). No clause is empty.
using FoodClauses = std::vector<std::vector<std::string>>;
std::vector<FoodClauses> food_choices(std::string_view text);

/// Words that say how much, how large, in what state or how prepared, but not what food: "large", "softened".
bool is_silent(std::string_view word);
/// Words that make it something a little different: "reduced", "dark".
bool is_changing(std::string_view word);
/// Words that make it something else altogether: "vegan".
bool is_foreign(std::string_view word);

}  // namespace tinwright
