// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See commands.h.
#include "app/command/commands.h"

#include <ctime>

#include "app/command/paper_answers.h"
#include "app/command/plan_answers.h"
#include "app/files/pan_reader.h"
#include "app/plan/desk.h"
#include "app/plan/job_baking.h"
#include "app/plan/paper_job.h"
#include "app/plan/plan_match.h"
#include "app/plan/words.h"
#include "app/quantity/parse.h"

namespace tinwright {
namespace {

std::optional<Answer> answer_pan(FieldReader& reader, const Request& request) {
  const auto job = read_pan_job(reader);
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  Report report = describe_pan(job->pan, request.units);
  if (job->recipe_pan) {
    const Report swap = describe_swap(*job->recipe_pan, job->pan, request.units);
    report.insert(report.begin(), swap.begin(), swap.end());
  }
  return Answer{json_of(*job), report, "", false};
}

std::optional<Answer> answer_press(FieldReader& reader, const Request& request) {
  const auto job = read_press_job(reader, "", read_pan(reader, "pan."));
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  const auto answer = solve_press(reader, *job, "");
  if (!answer) return std::nullopt;
  return Answer{json_of(*job, *answer), describe_press(*job, *answer, request.units), "", false};
}

std::optional<Answer> answer_fill(FieldReader& reader, const Request& request) {
  const auto job = read_fill_job(reader, "", read_pan(reader, "pan."));
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  const auto answer = solve_fill(reader, *job, "");
  if (!answer) return std::nullopt;
  return Answer{json_of(*job, *answer), describe_fill(*job, *answer, request.units), "", false};
}

std::optional<Answer> answer_bake(FieldReader& reader, const Request& request) {
  const auto job = read_bake_job(reader);
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  const auto answer = solve_bake(reader, *job);
  if (!answer) return std::nullopt;
  return Answer{json_of(*job, *answer), describe_bake(*job, *answer, request.units), "", false};
}

std::optional<Answer> answer_match(FieldReader& reader, const Request& request) {
  const auto job = read_job(reader);
  if (!job) return std::nullopt;
  const auto recipe = shape_of_recipe(reader, *job);
  if (!recipe) return std::nullopt;
  const auto match = match_cupboard(reader, *job, *recipe);
  if (!match) return std::nullopt;
  Plan plan;
  plan.match = match;
  return Answer{json_of(*match, request.units), describe_match(*job, plan, request.units), "", false};
}

/// Now, in UTC: the stamp of a calendar.
CivilTime time_now() {
  return civil_from_minutes(static_cast<std::int64_t>(std::time(nullptr) / 60));
}

/// Job, plan and oven; nothing, with faults noted, where something is wrong.
std::optional<JobAnswer> work_out(FieldReader& reader, const Request& request) {
  JobAnswer answer;
  answer.units = request.units;
  answer.job = read_job(reader);
  if (!answer.job) return std::nullopt;
  answer.plan = make_plan(reader, *answer.job);
  if (!answer.plan) return std::nullopt;
  answer.baked = bake_plan(reader, *answer.job, *answer.plan);
  if (!reader.faults().empty()) return std::nullopt;
  if (const auto problem = describe_job(answer)) {
    reader.fault(*problem, "");
    return std::nullopt;
  }
  return answer;
}

std::optional<Answer> answer_plan(FieldReader& reader, const Request& request) {
  const auto answer = work_out(reader, request);
  if (!answer) return std::nullopt;
  const ClockPlan* clock = answer->clock ? &*answer->clock : nullptr;
  return Answer{
      json_of(*answer->job, *answer->plan, answer->baked, answer->words, clock), {}, text_of(answer->words), false};
}

/// The file -o asks for, by its suffix; HTML where there is none.
std::optional<Answer> answer_card(FieldReader& reader, const Request& request) {
  const auto answer = work_out(reader, request);
  if (!answer) return std::nullopt;
  const std::string target = request.option("-o");
  if (target.ends_with(".csv")) return Answer{{}, {}, amounts_csv(*answer), true};
  if (target.ends_with(".md")) return Answer{{}, {}, amounts_markdown(*answer), true};
  if (!target.ends_with(".ics")) return Answer{{}, {}, bench_card(*answer), true};
  if (!answer->clock) {
    reader.fault(ProblemCode::kMissing, "plan.table_at",
                 "a calendar needs to know when it is on the table, like \"2026-12-24 18:00\"");
    return std::nullopt;
  }
  const auto calendar = clock_calendar(*answer->job, *answer->clock, time_now());
  if (calendar) return Answer{{}, {}, *calendar, true};
  reader.fault(calendar.problem(), "");
  return std::nullopt;
}

/// The place of an option's word among `names`; a word that is none of them is a fault.
std::optional<std::size_t> choose(FieldReader& reader, const Request& request, const std::string& option,
                                  const std::vector<std::string_view>& names, std::size_t otherwise) {
  const std::string word = request.option(option);
  if (word.empty()) return otherwise;
  std::string all;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (word == names[i]) return i;
    all += (all.empty() ? "" : ", ") + std::string(names[i]);
  }
  reader.fault(ProblemCode::kUnknown, option, "one of these has to follow it: " + all);
  return std::nullopt;
}

std::optional<Answer> answer_paper(FieldReader& reader, const Request& request) {
  auto order = read_paper_order(reader);
  const std::size_t usual = request.units == UnitChoice::kUs ? 1 : 0;
  const auto size = choose(reader, request, "--paper", paper_size_names(), usual);
  const auto wish = choose(reader, request, "--pieces", paper_wish_names(), 0);
  if (!order || !size || !wish) return std::nullopt;
  order->size = static_cast<PaperSize>(*size);
  order->wish = static_cast<PaperWish>(*wish);
  order->units = request.units;
  const auto sheets = paper_sheets(*order);
  if (!sheets) {
    reader.fault(sheets.problem(), "");
    return std::nullopt;
  }
  Answer answer;
  if (request.as_json) answer.json = json_of(*order, sheets->size());
  const std::string target = request.option("-o");
  if (!target.empty()) {
    answer.files = paper_files(*order, *sheets, target);
    answer.report = describe_paper(*order, sheets->size());
  } else if (!request.as_json) {
    answer.text = paper_page(*order, *sheets);
  }
  return answer;
}

std::optional<Answer> answer_weigh(FieldReader& reader, const Request& request) {
  const auto job = read_job(reader);
  if (!job) return std::nullopt;
  const auto plan = make_plan(reader, *job);
  if (!plan) return std::nullopt;
  auto bowls = bowls_of(*job, *plan);
  const auto refuse = [&](const Problem& problem, const std::string& option) -> std::optional<Answer> {
    reader.fault(problem.code, option, problem.message);
    return std::nullopt;
  };
  const auto place = find_place(*job, bowls, request.option("--after"), request.option("--part"));
  if (!place) return refuse(place.problem(), "--" + place.problem().place);
  const auto reads = parse_quantity(request.option("--reads"), Dimension::kMass);
  if (!reads) return refuse(reads.problem(), "--reads");
  Bowl& bowl = bowls[place->bowl];
  bowl.question.readings = {{place->after, *reads}};
  const auto answer = weigh_check(bowl.question);
  if (!answer) return refuse(answer.problem(), "--reads");
  Report report{figure("After " + bowl.question.steps[place->after].label,
                       format_grams(answer->expected) + " expected, " + format_grams(*reads) + " read"),
                remark(weigh_words(bowl.question, *answer))};
  return Answer{json_of(*job, bowl.question, *answer, bowl.part), report, "", false};
}

}  // namespace

Command find_command(const std::string& name) {
  if (name == "pan") return answer_pan;
  if (name == "press") return answer_press;
  if (name == "fill") return answer_fill;
  if (name == "bake") return answer_bake;
  if (name == "match") return answer_match;
  if (name == "plan") return answer_plan;
  if (name == "card") return answer_card;
  if (name == "paper") return answer_paper;
  if (name == "weigh") return answer_weigh;
  return nullptr;
}

}  // namespace tinwright
