// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How much: from tokens such as "2-3 tbsp", "1 (14-ounce) can", "115g/4oz" or "half a" to texts that parse_quantity
// reads.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/quantity/units.h"
#include "app/recipe/tokens.h"

namespace tinwright {

/// A number or a range of numbers; `next` is the token behind it.
struct SaidCount {
  std::string text = {}, up_to = {};  // "1 1/2"; up_to is empty where there is no range
  double value = 0.0, up_to_value = 0.0;
  bool is_bad = false;  // can be read in two ways
  std::size_t next = 0;
};

/// Digits or words ("half a", "a dozen") at token `at`; nothing where no number stands.
std::optional<SaidCount> read_count(const std::vector<Token>& tokens, std::size_t at);

/// A mass, a volume or a length: "2 tbsp", "1 lb 4 oz".
struct SaidMeasure {
  std::string text = {}, up_to = {};
  Dimension dimension = Dimension::kMass;
  bool is_metric = false;
  bool is_ounce = false;  // an ounce without "fluid"
  double si = 0.0;
  std::string hedge = {};           // "heaped"
  std::size_t begin = 0, next = 0;  // tokens
};

/// A measure at token `at`, with ranges, and with sums of two units ("6 tbsp plus 1 tsp").
std::optional<SaidMeasure> read_measure(const std::vector<Token>& tokens, std::size_t at);

struct SaidAmount {
  std::string amount = {}, up_to = {}, size = {}, each = {};  // as in IngredientDraft
  std::string said = {};                                      // the words it was read from, without remarks
  std::vector<std::string> remarks = {};
  std::string doubt = {};  // what may be meant in two ways; empty if nothing
  bool is_bad = false;     // there is a number, but nobody can say what it means
  bool is_piece = false;   // the amount counts pieces
  bool is_ounce = false;
  std::size_t next = 0;  // the token behind it
};

/// The amount at token `at` of `line`; nothing where none stands there.
std::optional<SaidAmount> read_amount(std::string_view line, const std::vector<Token>& tokens, std::size_t at);

/// Lets a second measure, said behind the first ("(120 g)"), speak too: of a mass, a metric volume and any other volume
/// the first wins, and the other becomes a remark. For pieces it is what each weighs, where the words leave no doubt.
void add_measure(SaidAmount& amount, const SaidMeasure& second, std::string_view words);

}  // namespace tinwright
