// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card: the plan on paper, as one HTML page made for print, on A4 and US Letter alike.
#pragma once

#include <string>
#include <vector>

#include "app/plan/plan_words.h"

namespace tinwright {

/// A whole HTML page without scripts and without anything from elsewhere; every text in it is escaped. Well formed as
/// XML too. `baked` may hold fewer pans than the plan: the others have no oven yet.
std::string card_html(const Job& job, const Plan& plan, const std::vector<PanBake>& baked, const PlanWords& words,
                      UnitChoice units);

}  // namespace tinwright
