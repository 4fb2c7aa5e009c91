// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A set of pans in words a cook understands: what each term of its cost means at the oven.
#pragma once

#include <string>
#include <vector>

#include "app/plan/match.h"
#include "app/quantity/print.h"

namespace tinwright {

/// Depths nearer than this are the same to a cook [m].
inline constexpr double kSameDepth = 1e-3;

/// Bake scales nearer than this factor are the same to a cook; a cake is looked at for longer than that.
inline constexpr double kSameBake = 1.15;

/// Less than a tablespoon left over [m³] stays on the spatula.
inline constexpr double kSpatula = 15e-6;

/// "one 20 cm springform and 2 × 9 cm tartlet tin".
std::string set_name(const MatchQuestion& question, const PanSet& set);

/// One sentence for each thing worth knowing, in the order depth, what is full early, left over, unlike bakes, pans:
///     "2 cm shallower than the recipe (3 cm instead of 5 cm): done sooner"
///     "140 ml left over: one 9 cm tartlet tin takes it"
/// The pans for what is left over are looked for here, among those the set does not use.
std::vector<std::string> match_words(const MatchQuestion& question, const PanSet& set, UnitChoice choice);

}  // namespace tinwright
