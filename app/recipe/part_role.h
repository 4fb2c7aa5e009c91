// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Headings of a recipe, and what their words tell of a part: whether it lines the pan, fills it or lies on top.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

/// "base", "lining", "filling", "topping" or "crumbled" by the words of a heading; empty where they do not tell. For a
/// crust the steps tell whether it goes up the wall of the pan.
std::string role_of(std::string_view heading, const std::vector<std::string>& steps);

/// The heading without "For the", colons and marks: "For the crust:" -> "Crust"; empty for "Ingredients" alone.
std::string part_name(std::string_view heading);

/// Whether a line of a list of ingredients is a heading and no ingredient: "For the filling:", "Topping", "CRUST".
bool is_part_heading(std::string_view line);

}  // namespace tinwright
