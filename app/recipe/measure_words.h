// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The words that stand between a number and a food: units in all their spellings, things a number counts, sizes, and
// words that say "about".
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "app/quantity/units.h"
#include "app/recipe/tokens.h"

namespace tinwright {

/// A unit as it stands in a line: our name for it and how many tokens it takes, a hyphen in front included.
struct UnitWords {
  const Unit* unit = nullptr;
  std::string name;  // as parse_quantity reads it: "fl oz"
  std::size_t tokens = 0;
};

/// The unit of mass or volume at token `at`, at most three words long.
std::optional<UnitWords> unit_at(const std::vector<Token>& tokens, std::size_t at);
/// The same for lengths: "inch", "cm", "\"".
std::optional<UnitWords> length_unit_at(const std::vector<Token>& tokens, std::size_t at);

/// Whether the unit is one of the metric system, so that it is the same everywhere.
bool is_metric(const Unit& unit);

/// "tins" -> "tin": a thing that holds or is one piece of a food; empty where the word is none.
std::string piece_word(const std::string& word);
/// Whether the piece is a packing with a weight printed on it: tin, can, packet.
bool is_packing(const std::string& piece);
/// "large", "extra large" (two tokens); empty where no size stands at `at`.
std::string size_at(const std::vector<Token>& tokens, std::size_t& at);
/// "about", "heaped", "scant": says something of the number and changes nothing.
bool is_hedge(const std::string& word);
/// "one" to "twelve", "a", "half": the number a word stands for; 0 where it is none.
double number_word(const std::string& word);

}  // namespace tinwright
