// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A job's document answered for the page: the plan at once, the oven pan by pan, for each takes some tenths of a
// second.
#pragma once

#include <optional>
#include <vector>

#include "app/files/document.h"
#include "app/plan/bench.h"
#include "app/plan/oven.h"
#include "app/plan/plan_clock.h"
#include "app/plan/plan_weigh.h"
#include "app/plan/plan_words.h"

namespace tinwright {

struct JobAnswer {
  Fields fields;  // of the document
  std::optional<Job> job;
  std::optional<Plan> plan;
  std::vector<std::string> holds;     // of each pan of the cupboard, what it holds in a sentence
  std::vector<Bowl> bowls;            // of the plan
  std::vector<BowlCheck> checks;      // of each bowl, by the readings under page.readings
  std::vector<BenchAnswer> pictures;  // of each pan
  std::vector<PanBake> baked;         // of the first pans, up to all of them
  std::vector<OvenAnswer> ovens;      // the pictures of these
  std::optional<ClockPlan> clock;     // where the job says when it is to be ready
  PlanWords words;
  Texts problems;  // by path: "recipe.parts.0.ingredients.2.amount"; "plan" and "cupboard" for a whole
  UnitChoice units = UnitChoice::kMetric;

  bool is_baking() const { return job && plan && job->has_oven && baked.size() < plan->pans.size(); }
};

/// Puts what job, plan and baked come to into words and on the clock. A Problem, at "plan.table_at", where the clock
/// cannot be; the words are there all the same.
std::optional<Problem> describe_job(JobAnswer& answer);

/// Everything but the oven.
JobAnswer answer_job(const JsonNode& document, UnitChoice units);

/// Where the reading after that item of a bowl stands in the document.
std::string reading_path(const Bowl& bowl, std::size_t item);

/// Where a path leads, for a cook: "Crust, ingredient 2, amount".
std::string place_in_words(const Fields& fields, const std::string& path);

/// Bakes the next pan; only while is_baking().
void bake_next(JobAnswer& answer);

}  // namespace tinwright
