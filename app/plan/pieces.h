// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What goes into the bowl of each part: items scaled, counted ones made whole, what is left of opened ones.
#pragma once

#include <vector>

#include "app/plan/plan.h"

namespace tinwright {

/// A count this near a whole number is one: nobody parts an egg for a fiftieth.
inline constexpr double kWholePiece = 0.02;

/// [kg] Lighter pieces (a pinch, a drop) are counted by halves and quarters, not made whole and not weighed.
inline constexpr double kSmallestPiece = 0.002;

/// Fills plan.items and plan.whole from the part's items and plan.factor.
void scale_items(const RecipePart& part, PartPlan& plan);

/// How far crumbled parts reach on the trays they are baked on.
void press_on_trays(const Job& job, Plan& plan);

/// Whites of parted eggs, the rest of an opened tin, part of an egg: over all parts together.
std::vector<ByProduct> find_by_products(const Job& job, const std::vector<PartPlan>& parts);

}  // namespace tinwright
