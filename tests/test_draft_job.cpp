// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A recipe that was read, as a job: what is put in, what is left to settle, and that it works out once there are pans.
#include <doctest/doctest.h>

#include "app/recipe/draft_job.h"
#include "app/recipe/read_recipe.h"
#include "tests/jobs.h"

namespace tinwright {
namespace {

constexpr const char* kSlice = R"(Almond slice

For the pastry
225 g plain flour
115 g butter

For the filling
125 g butter
125 g caster sugar
2 eggs, beaten
125 g ground almonds

Method
1. Line a 20 x 30 cm swiss roll tin with the pastry. Chill for 30 minutes.
2. Fill, and bake at 190 C for 30-35 minutes. Switch the oven off and leave it in for 10 minutes.
)";

JsonNode job_with_pan(const char* recipe) {
  const auto draft = read_recipe(recipe);
  REQUIRE(draft);
  JsonNode job = job_of(*draft);
  JsonNode own = make_object(), pan = make_object();
  put_text(pan, "catalogue", "square-9");
  put_text(own, "name", "mine");
  put(own, "pan", pan);
  put(job, "cupboard.0", own);
  return job;
}

TEST_CASE("a pan whose depth is not said gets a usual one, and the cook is told") {
  const JsonNode job = job_with_pan(kSlice);
  CHECK(text_at(job, "recipe.pan.profile.depth") == "2.5 cm");
  CHECK(text_at(job, "recipe.unread.0").find("taken as 2.5 cm") != std::string::npos);
}

TEST_CASE("a recipe that was read works out once the cupboard has a pan") {
  const Worked worked = work_out(write_json(job_with_pan(kSlice)));
  for (const Fault& fault : worked.faults) MESSAGE(fault.place, ": ", fault.message);
  REQUIRE(worked.plan);
  CHECK(worked.plan->parts.size() == 2);
  CHECK(worked.job->parts[0].role == Role::kLining);
  CHECK(worked.job->has_oven);
  CHECK(worked.job->rests.size() == 1);
}

TEST_CASE("a new recipe keeps the cupboard and forgets which pans the old one used") {
  JsonNode job = job_with_pan(kSlice);
  put(job, "plan.pans", make_array());
  put_text(job, "plan.make", "batch");
  const auto draft =
      read_recipe("Plain loaf\n\n300 g flour\n200 ml water\n\nBake in a loaf tin at 200 C for 40 minutes.\n");
  REQUIRE(draft);
  put_recipe(job, *draft);
  CHECK(text_at(job, "name") == "Plain loaf");
  CHECK(count_at(job, "cupboard") == 1);
  CHECK(node_at(job, "plan.pans") == nullptr);
  CHECK(text_at(job, "plan.make") == "batch");
}

}  // namespace
}  // namespace tinwright
