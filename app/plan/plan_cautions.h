// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a plan warns of, and what it leaves to the cook to settle.
#pragma once

#include <vector>

#include "app/plan/plan_oven.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"

namespace tinwright {

/// Everything to take care of, each once: pans, filling, leavening and salt, raw dough, the oven's.
Report plan_cautions(const Job& job, const Plan& plan, const std::vector<PanBake>& baked, UnitChoice units);

/// Lines that were not understood, foods whose weight is not known, fields nobody asked for.
Report describe_open(const Job& job);

}  // namespace tinwright
