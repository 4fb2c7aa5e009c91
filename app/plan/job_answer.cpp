// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See job_answer.h.
#include "app/plan/job_answer.h"

#include "app/plan/plan_picture.h"

namespace tinwright {
namespace {

void note_problems(Texts& problems, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) problems.emplace(fault.place, fault.message);
}

void describe(JobAnswer& answer) {
  answer.words = describe_plan(*answer.job, *answer.plan, answer.baked, answer.units);
  const auto clock = clock_plan(*answer.job, answer.baked);
  if (!clock) {
    answer.problems.emplace(clock.problem().place, clock.problem().message);
  } else if (*clock) {
    answer.clock = **clock;
    answer.words.clock = describe_clock(**clock);
  }
}

}  // namespace

JobAnswer answer_job(const JsonNode& document, UnitChoice units) {
  JobAnswer answer;
  answer.units = units;
  answer.fields = fields_of(document);
  FieldReader reader(answer.fields);
  answer.job = read_job(reader);
  if (answer.job) answer.plan = make_plan(reader, *answer.job);
  note_problems(answer.problems, reader.faults());
  if (!answer.plan) return answer;
  for (const PanPlan& pan : answer.plan->pans) answer.pictures.push_back(picture_of(*answer.job, pan));
  describe(answer);
  return answer;
}

void bake_next(JobAnswer& answer) {
  FieldReader reader(answer.fields);
  answer.baked.push_back(bake_pan(reader, *answer.job, *answer.plan, answer.plan->pans[answer.baked.size()]));
  const PanBake& last = answer.baked.back();
  answer.ovens.push_back(last.solved ? pictures_of(*last.solved) : OvenAnswer{});
  note_problems(answer.problems, reader.faults());
  describe(answer);
}

}  // namespace tinwright
