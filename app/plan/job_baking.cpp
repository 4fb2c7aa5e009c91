// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See job_baking.h.
#include "app/plan/job_baking.h"

namespace tinwright {

std::optional<Problem> describe_job(JobAnswer& answer) {
  answer.words = describe_plan(*answer.job, *answer.plan, answer.units);
  add_oven_words(answer.words, *answer.job, *answer.plan, answer.baked, answer.units);
  const auto clock = clock_plan(*answer.job, answer.baked);
  if (!clock) return clock.problem();
  answer.clock = *clock;
  if (answer.clock) answer.words.clock = describe_clock(*answer.clock);
  return std::nullopt;
}

void bake_next(JobAnswer& answer, const Progress& progress) {
  FieldReader reader(answer.fields);
  const PanPlan& pan = answer.plan->pans[answer.baked.size()];
  answer.baked.push_back(bake_pan(reader, *answer.job, *answer.plan, pan, progress));
  const PanBake& last = answer.baked.back();
  answer.ovens.push_back(last.solved ? pictures_of(*last.solved) : OvenAnswer{});
  answer.fresh = answer.ovens.size();
  for (const Fault& fault : reader.faults()) answer.problems.emplace(fault.place, fault.message);
  if (const auto problem = describe_job(answer)) answer.problems.emplace(problem->place, problem->message);
}

}  // namespace tinwright
