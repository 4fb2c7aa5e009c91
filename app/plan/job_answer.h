// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A job's document answered: the plan at once; the oven is added by job_baking.h.
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
  std::vector<OvenAnswer> ovens;      // the pictures of these; on the page those of before, too, see keep_ovens
  std::size_t fresh = 0;              // so many of `ovens`, and of the words on them, are of this job as it stands
  std::optional<ClockPlan> clock;     // where the job says when it is to be ready
  PlanWords words;
  Texts problems;  // by path: "recipe.parts.0.ingredients.2.amount"; "plan" and "cupboard" for a whole
  UnitChoice units = UnitChoice::kMetric;

  bool is_baking() const { return job && plan && job->has_oven && fresh < plan->pans.size(); }
};

/// Everything but the oven.
JobAnswer answer_job(const JsonNode& document, UnitChoice units);

/// Takes over what `before` knew of the oven: as it is where it `still_holds`, else as what was there before, shown
/// until something better comes; pans that have changed lose it.
void keep_ovens(JobAnswer& answer, JobAnswer before, bool still_holds);

/// Puts in the next pan's oven with the words and problems that came with it.
void take_oven(JobAnswer& answer, OvenAnswer oven, PlanWords words, const Texts& problems);

/// Where the reading after that item of a bowl stands in the document.
std::string reading_path(const Bowl& bowl, std::size_t item);

/// Where a path leads, for a cook: "Crust, ingredient 2, amount".
std::string place_in_words(const Fields& fields, const std::string& path);

}  // namespace tinwright
