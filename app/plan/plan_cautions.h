// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a plan warns of, and what it leaves to the cook to settle.
#pragma once

#include "app/plan/plan.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"

namespace tinwright {

/// Everything to take care of before the oven, each once: pans, filling, leavening and salt, raw dough.
Report plan_cautions(const Job& job, const Plan& plan, UnitChoice units);

/// Adds those of the lines that are cautions and not said yet.
void add_cautions(Report& report, const Report& lines);

/// Lines that were not understood, foods whose weight is not known, fields nobody asked for.
Report describe_open(const Job& job);

}  // namespace tinwright
