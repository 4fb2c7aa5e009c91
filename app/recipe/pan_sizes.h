// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The words around a pan's name, sorted: its lengths, its other sizes, how many there are.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "app/recipe/tokens.h"

namespace tinwright {

/// One length as said, "9 in", with its value [m].
struct SaidLength {
  std::string text;
  double metres = 0.0;
};

struct NamedPan {
  std::string said;   // the words, from the first that belongs to the pan to the last
  std::string words;  // small letters, for has_word
  std::vector<std::vector<SaidLength>>
      groups;           // lengths joined by "x" or "by": {9 in, 13 in}; equivalents are groups too
  std::string depth;    // "3 in deep"
  double pounds = 0.0;  // "2lb loaf tin"
  int holes = 0;        // "12-hole"
  int count = 1;
};

/// All pans of a sentence's tokens.
std::vector<NamedPan> find_pans(const std::string& text, const std::vector<Token>& tokens);

}  // namespace tinwright
