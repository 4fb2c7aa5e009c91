// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A plan as the JSON answer of `tinwright plan` and `tinwright match`, and as text for a terminal.
#pragma once

#include <string>
#include <vector>

#include "app/command/answers.h"
#include "app/plan/plan_clock.h"
#include "app/plan/plan_weigh.h"
#include "app/plan/plan_words.h"

namespace tinwright {

/// Lengths in mm, volumes in ml, masses in g, times in min, temperatures in °C; amounts of a pan are for all its
/// cavities, heights and thicknesses for each.
Json json_of(const Job& job, const Plan& plan, const std::vector<PanBake>& baked, const PlanWords& words,
             const ClockPlan* clock);

/// {"proven", "sets": [{"pans": [{name, count, fill_height_mm, volume_ml}], "left_ml", "all_in", "cost", "words"}]}
Json json_of(const PanMatch& match, UnitChoice units);

/// {part, after, expected_g, reads_g, difference_g, verdict, explanations: [{slips: [{what, how}], probability,
/// change_g}], words}
Json json_of(const Job& job, const WeighQuestion& question, const WeighAnswer& answer, std::size_t part);

/// Section by section, with headings.
std::string text_of(const PlanWords& words);

}  // namespace tinwright
