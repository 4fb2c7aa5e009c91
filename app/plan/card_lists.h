// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card's lists: figures, ingredients of each part, steps and rests, with boxes to tick.
#pragma once

#include <string>
#include <vector>

#include "app/plan/plan_weigh.h"
#include "app/plan/plan_words.h"

namespace tinwright {

/// A report's lines as a list of that class, remarks and cautions after the figures; empty for an empty report.
std::string figures_html(const Report& report, const std::string& list_class);

std::string parts_section(const PlanWords& words, const std::vector<Bowl>& bowls);

/// The recipe's steps with what goes in and what the scale then shows.
std::string steps_section(const Job& job, const PlanWords& words, const std::vector<Bowl>& bowls);

std::string rests_section(const Job& job);

}  // namespace tinwright
