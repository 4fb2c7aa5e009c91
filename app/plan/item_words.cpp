// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See item_words.h.
#include "app/plan/item_words.h"

#include <cmath>

#include "app/plan/pieces.h"
#include "app/quantity/kitchen_measure.h"

namespace tinwright {
namespace {

constexpr double kNoticeable = 0.01;  // [-] of an amount: what rounding may do unsaid

std::string grams(double mass, UnitChoice units) {
  return units == UnitChoice::kMetric ? format_mass(mass, units)
                                      : format_grams(mass) + " (" + format_mass(mass, units) + ")";
}

/// "2 % over", "3 % short".
std::string off_by(double share) {
  if (std::abs(share) < kNoticeable) return "";
  return format_percent(std::abs(share)) + (share > 0.0 ? " over" : " short");
}

void say_volume(const ItemPlan& plan, UnitChoice units, ItemWords& words) {
  const RoundedText rounded = kitchen_measure(plan.amount);
  words.measure = rounded.text;
  words.off = rounded.value > 0.0 ? off_by(rounded.value / plan.amount - 1.0) : "";
  words.amount = plan.mass > 0.0 ? grams(plan.mass, units) : format_volume(plan.amount, UnitChoice::kMetric);
}

void say_pieces(const RecipeItem& item, const ItemPlan& plan, UnitChoice units, ItemWords& words) {
  const double whole = std::round(plan.amount);
  const std::string size = item.size.empty() ? "" : " " + item.size;
  if (std::abs(plan.amount - whole) <= kWholePiece) {
    words.amount = format_number(whole, 0) + size;
  } else if (item.piece < kSmallestPiece) {
    words.amount = format_pieces(plan.amount) + size;
  } else {
    const double full = std::floor(plan.amount);
    const std::string part = grams((plan.amount - full) * item.piece, units);
    words.amount = full > 0.0 ? format_number(full, 0) + size + " and " + part + " of another" : part + ", part of 1";
  }
  if (plan.mass > 0.0) words.measure = grams(plan.mass, units);
}

}  // namespace

std::string format_pieces(double pieces) {
  const double quarters = std::round(4.0 * pieces);
  const bool is_near = std::abs(quarters / 4.0 - pieces) <= kWholePiece;
  return is_near && quarters > 0.0 ? format_parts(static_cast<std::int64_t>(quarters), 4) : format_number(pieces, 2);
}

ItemWords words_for_item(const RecipeItem& item, const ItemPlan& plan, double factor, UnitChoice units) {
  ItemWords words;
  switch (item.measure) {
    case Measure::kNone:
      words.amount = item.remark.empty() ? "as the recipe says" : item.remark;
      return words;
    case Measure::kMass:
      words.amount = grams(plan.mass, units);
      if (item.known != nullptr && item.known->cup_density && units == UnitChoice::kUs) {
        const double volume = plan.mass / *item.known->cup_density;
        const RoundedText rounded = kitchen_measure(volume);
        words.measure = rounded.text;
        if (rounded.value > 0.0) words.off = off_by(rounded.value / volume - 1.0);
      }
      break;
    case Measure::kVolume:
      say_volume(plan, units, words);
      break;
    case Measure::kPieces:
      say_pieces(item, plan, units, words);
      break;
  }
  if (item.most > item.least && item.measure != Measure::kPieces && item.amount > 0.0) {
    const double low = plan.mass * item.least / item.amount, high = plan.mass * item.most / item.amount;
    if (plan.mass > 0.0) words.amount = grams(low, units) + " to " + grams(high, units);
  } else if (item.most > item.least) {
    words.amount = format_pieces(factor * item.least) + " to " + format_pieces(factor * item.most);
  }
  return words;
}

}  // namespace tinwright
