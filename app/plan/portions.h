// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How much of each part my pans take: the geometry of a plan.
#pragma once

#include <vector>

#include "app/plan/plan.h"

namespace tinwright {

/// The chosen pans with the recipe's shell in them and nothing poured yet. Notes a fault at "plan.pans" where the shell
/// does not work in one.
std::optional<std::vector<PanPlan>> line_chosen(FieldReader& reader, const Job& job, const RecipeShape& recipe,
                                                const std::vector<PanChoice>& chosen);

/// Pours into all pans: up to the recipe's level, or to one common depth for the amount made. Answers what the pans
/// take [m³] of all fillings.
double pour(const Job& job, const RecipeShape& recipe, std::vector<PanPlan>& pans);

/// The factor each part needs and what is made of it, in the order of the job's parts.
std::vector<PartPlan> portion(const Job& job, const RecipeShape& recipe, const std::vector<PanPlan>& pans,
                              double filling_taken);

/// [m³] of dough made of one role where it is fixed, by the cook's factor or by making whole batches of a recipe
/// without a filling; nothing where the pans decide.
std::optional<double> fixed_dough(const Job& job, Role role);

}  // namespace tinwright
