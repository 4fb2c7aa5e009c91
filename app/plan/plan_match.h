// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The choice of pans in words: which set, why, and what else would do; and small pans for what is left.
#pragma once

#include <string>
#include <vector>

#include "app/plan/plan.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"

namespace tinwright {

/// Which pans are used and, where they were found, what is said for and against the best sets.
Report describe_match(const Job& job, const Plan& plan, UnitChoice units);

/// One sentence for each small pan that takes what is left of the filling.
std::vector<std::string> small_pans_for(const Job& job, const Plan& plan, UnitChoice units);

}  // namespace tinwright
