// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The oven's part of a plan: every kind of pan in it is baked by the heat solver, against the recipe's own pan where
// that is known.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/bake_job.h"
#include "app/plan/plan.h"

namespace tinwright {

/// One kind of my pans in the oven. Without `solved`, `why_not` says why in a sentence.
struct PanBake {
  std::optional<BakeJob> job;
  std::optional<BakeJobAnswer> solved;
  std::string why_not;
};

/// One of plan.pans. Faults of the recipe's programme are noted at "recipe.oven.…".
PanBake bake_pan(FieldReader& reader, const Job& job, const Plan& plan, const PanPlan& pan,
                 const Progress& progress = {});

/// One for each of plan.pans, up to the first fault.
std::vector<PanBake> bake_plan(FieldReader& reader, const Job& job, const Plan& plan);

/// The food of one of the plan's pans, as the solver takes it; nothing, with `why` set, where there is nothing to bake.
std::optional<BakePans> bake_pans(const Job& job, const Plan& plan, const PanPlan& pan, std::string& why);

/// The part that is the filling of the solver: the heaviest one, else the base or lining itself.
std::size_t baked_part(const Job& job);

}  // namespace tinwright
