// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A scaled item as a cook weighs, measures or counts it.
#pragma once

#include <string>

#include "app/plan/plan.h"
#include "app/quantity/print.h"

namespace tinwright {

/// What to take, and what rounding to kitchen measures does to it.
struct ItemWords {
  std::string amount;   // "310 g", "2 + 24 g of another", "as the recipe says"
  std::string measure;  // "1¼ cups"; empty where there is none to offer
  std::string off;      // "2 % over"; empty where the measure is right within a per cent
};

ItemWords words_for_item(const RecipeItem& item, const ItemPlan& plan, double factor, UnitChoice units);

/// "3", "2½", "0.37": a number of pieces.
std::string format_pieces(double pieces);

}  // namespace tinwright
