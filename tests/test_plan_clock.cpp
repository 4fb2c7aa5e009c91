// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A plan on the clock and on the scale.
#include <doctest/doctest.h>

#include "app/plan/demos.h"
#include "app/plan/plan_clock.h"
#include "app/plan/plan_weigh.h"
#include "tests/jobs.h"

namespace tinwright {
namespace {

std::string job_text(const std::string& rests, const std::string& table_at) {
  return R"({"version": 1, "recipe": {"pan": )" + round_tin(20, 5) +
         R"(, "parts": [{"name": "Crust", "role": "lining", "mass": "350 g", "density": "1.2 g/ml"},
             {"name": "Filling", "role": "filling", "mass": "500 g", "density": "1 g/ml"}], "rests": [)" +
         rests + R"(]}, "cupboard": [{"name": "mine", "pan": )" + round_tin(20, 5) +
         R"(}], "plan": {"pans": [{"name": "mine"}], "table_at": ")" + table_at + R"("}})";
}

ClockPlan clock_of(const std::string& text) {
  const Worked worked = work_out(text);
  REQUIRE(worked.job);
  const auto clock = clock_plan(*worked.job, {});
  REQUIRE(clock);
  REQUIRE(*clock);
  return **clock;
}

TEST_CASE("everything ends at the table, each task after the one before it") {
  const ClockPlan clock = clock_of(job_text(R"({"what": "Dough rests", "for": "1 h", "where": "refrigerator"},
      {"what": "Cools", "for": "2 h", "when": "after_oven"})",
                                            "2026-12-24 18:00"));
  REQUIRE(clock.times.size() == clock.tasks.size());
  CHECK(format_civil_time(clock.times.back().end) == "2026-12-24 18:00");
  for (std::size_t i = 1; i < clock.times.size(); ++i) {
    CHECK(minutes_from_civil(clock.times[i].start) >= minutes_from_civil(clock.times[i - 1].end));
  }
  // 15 min crust, 1 h rest, 15 min filling, 20 min pans, 2 h cooling.
  CHECK(format_civil_time(clock.times.front().start) == "2026-12-24 14:10");
}

TEST_CASE("what sets overnight is made the day before, and nobody works at night") {
  const ClockPlan clock = clock_of(
      job_text(R"({"what": "Sets", "for": "8 h", "where": "refrigerator", "when": "after_oven", "keeps": "1 d"})",
               "2026-12-24 10:00"));
  for (const ScheduledTask& task : clock.times) CHECK(!task.is_at_night);
  CHECK(clock.times.front().days_before == 1);
  CHECK(clock.times.front().start.day == 23);
}

TEST_CASE("a table time that is none is refused at its field") {
  const Worked worked = work_out(job_text("", "2026-02-30 18:00"));
  REQUIRE(worked.job);
  const auto clock = clock_plan(*worked.job, {});
  REQUIRE(!clock);
  CHECK(clock.problem().place == "plan.table_at");
}

TEST_CASE("bowls fill in the order of the recipe's steps, then of its list") {
  const Worked worked = work_out(std::string(demo_jobs().front().text));
  REQUIRE(worked.plan);
  const auto bowls = bowls_of(*worked.job, *worked.plan);
  REQUIRE(bowls.size() == 2);
  CHECK(bowls[0].question.steps.front().label == "the plain flour");
  const BowlCheck check = check_bowl(bowls[0], {});
  REQUIRE(check.expected.size() == bowls[0].items.size());
  CHECK(check.words.empty());
  // The bowl weighs 640 g; flour is 350 g times the crust's factor.
  const double first = 0.640 + 0.350 * worked.plan->parts[0].factor;
  CHECK(expected_readings(bowls[0].question).front() == doctest::Approx(first));
  CHECK(check_bowl(bowls[0], {std::to_string(first * 1e3) + " g"}).is_fine);
  const auto counted = find_place(*worked.job, bowls, "2", "Filling");
  REQUIRE(counted);
  CHECK(counted->bowl == 1);
  CHECK(counted->after == 1);
  const auto by_step = find_place(*worked.job, bowls, "3", "");
  REQUIRE(by_step);
  CHECK(by_step->bowl == 1);
  CHECK(bowls[1].question.steps[by_step->after].label == "the eggs");
  const auto by_name = find_place(*worked.job, bowls, "caster sugar", "");
  REQUIRE(by_name);
  CHECK(by_name->bowl == 0);
  CHECK(!find_place(*worked.job, bowls, "5", ""));
  CHECK(!find_place(*worked.job, bowls, "99", "Crust"));
  const BowlCheck wrong = check_bowl(bowls[0], {"about so"});
  CHECK(!wrong.wrong[0].empty());
  CHECK(wrong.words.empty());
}

}  // namespace
}  // namespace tinwright
