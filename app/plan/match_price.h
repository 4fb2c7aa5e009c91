// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What one set of pans costs: its common depth, what is left over, and the four terms of match.h. This is the only
// place that knows the price; the search only knows what a price cannot be below.
#pragma once

#include <span>

#include "app/plan/match.h"

namespace tinwright {

/// `count` pans of `kind`, an index into MatchQuestion::pans.
struct PanCount {
  std::size_t kind = 0;
  int count = 0;
};

/// The term of match.h for so many pans (>= 1).
double pans_cost(const MatchQuestion& question, int pans);

/// The set at the cheapest of its candidate depths. At least one pan; kinds all different.
PanSet price_set(const MatchQuestion& question, std::span<const PanCount> pans);

}  // namespace tinwright
