// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Temperatures and times as they stand in a sentence of a recipe.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "app/recipe/tokens.h"

namespace tinwright {

/// A sentence: its tokens and its words as they stand.
struct Sentence {
  std::string text;
  std::vector<Token> tokens;
};

/// The sentences of a step. An abbreviation's point ends none: what follows it begins with a small letter.
std::vector<Sentence> sentences_of(const std::string& step);

/// One way of saying how hot. unit is 'C', 'F', 'G' for a gas mark, or ' ' where only degrees are said.
struct OvenHeat {
  double value = 0.0;
  char unit = ' ';
  bool is_fan = false;
  bool is_range = false;  // value is its lower end
  std::size_t next = 0;   // the token behind
};

/// A temperature at token `at`; bare numbers only where `may_be_bare`.
std::optional<OvenHeat> read_heat(const std::vector<Token>& tokens, std::size_t at, bool may_be_bare);

/// The temperature and its equivalents behind it: "180C/160C fan/gas 4".
std::vector<OvenHeat> read_heats(const std::vector<Token>& tokens, std::size_t at, bool may_be_bare);

/// How long, as parse_quantity reads it: "35 min", "1 h 15 min"; up_to is the later end of a range.
struct SaidTime {
  std::string text = {}, up_to = {};
  double seconds = 0.0;
  std::size_t next = 0;
};

std::optional<SaidTime> read_time(const std::vector<Token>& tokens, std::size_t at);

/// A gas mark as degrees Fahrenheit; 0 where there is no such mark. Common practice, no single standard.
double gas_mark_fahrenheit(double mark);

}  // namespace tinwright
