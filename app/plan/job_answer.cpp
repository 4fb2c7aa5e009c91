// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See job_answer.h.
#include "app/plan/job_answer.h"

#include <algorithm>

#include "app/plan/plan_picture.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

void note_problems(Texts& problems, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) problems.emplace(fault.place, fault.message);
}

/// The cupboard's pans and the bowls on the scale.
void look_at_kitchen(JobAnswer& answer, const JsonNode& document) {
  for (const OwnPan& own : answer.job->cupboard) {
    answer.holds.push_back("Holds " + format_both_volumes(own.pan.count * brim_volume(own.pan), answer.units) + ", " +
                           format_both_lengths(depth(own.pan), answer.units) + " deep.");
  }
  if (!answer.plan) return;
  answer.bowls = bowls_of(*answer.job, *answer.plan);
  for (const Bowl& bowl : answer.bowls) {
    std::vector<std::string> typed;
    for (std::size_t i = 0; i < bowl.items.size(); ++i) typed.push_back(text_at(document, reading_path(bowl, i)));
    answer.checks.push_back(check_bowl(bowl, typed));
  }
}

}  // namespace

std::string reading_path(const Bowl& bowl, std::size_t item) {
  return "page.readings." + std::to_string(bowl.part) + "." + std::to_string(item);
}

JobAnswer answer_job(const JsonNode& document, UnitChoice units) {
  JobAnswer answer;
  answer.units = units;
  answer.fields = fields_of(document);
  FieldReader reader(answer.fields);
  answer.job = read_job(reader);
  if (answer.job) answer.plan = make_plan(reader, *answer.job);
  note_problems(answer.problems, reader.faults());
  if (answer.job) look_at_kitchen(answer, document);
  if (!answer.plan) return answer;
  for (const PanPlan& pan : answer.plan->pans) answer.pictures.push_back(picture_of(*answer.job, pan));
  answer.words = describe_plan(*answer.job, *answer.plan, units);
  const auto clock = clock_plan(*answer.job, {});
  if (!clock) {
    answer.problems.emplace(clock.problem().place, clock.problem().message);
    return answer;
  }
  answer.clock = *clock;
  if (answer.clock) answer.words.clock = describe_clock(*answer.clock);
  return answer;
}

void keep_ovens(JobAnswer& answer, JobAnswer before, bool still_holds) {
  if (!answer.plan || !before.plan) return;
  if (still_holds) {
    answer.words = std::move(before.words);
    answer.ovens = std::move(before.ovens);
    answer.fresh = before.fresh;
    answer.problems.insert(before.problems.begin(), before.problems.end());
    return;
  }
  if (!answer.job->has_oven) return;
  for (std::size_t i = 0; i < std::min(answer.words.in_pans.size(), before.ovens.size()); ++i) {
    PanWords& words = answer.words.in_pans[i];
    PanWords& old = before.words.in_pans[i];
    if (words.title != old.title) break;
    words.oven = std::move(old.oven);
    words.oven_detail = std::move(old.oven_detail);
    words.oven_lines = std::move(old.oven_lines);
    answer.ovens.push_back(std::move(before.ovens[i]));
  }
}

void take_oven(JobAnswer& answer, OvenAnswer oven, PlanWords words, const Texts& problems) {
  if (!answer.is_baking() || words.in_pans.size() != answer.words.in_pans.size()) return;
  if (answer.ovens.size() == answer.fresh) answer.ovens.emplace_back();
  answer.ovens[answer.fresh++] = std::move(oven);
  for (std::size_t i = answer.fresh; i < answer.ovens.size(); ++i)
    words.in_pans[i] = std::move(answer.words.in_pans[i]);
  answer.words = std::move(words);
  answer.problems.insert(problems.begin(), problems.end());
}

std::string place_in_words(const Fields& fields, const std::string& path) {
  std::string words, walked;
  for (std::size_t at = 0; at <= path.size();) {
    const std::size_t dot = std::min(path.find('.', at), path.size());
    std::string name = path.substr(at, dot - at);
    walked += (walked.empty() ? "" : ".") + name;
    at = dot + 1;
    const auto own = fields.find(walked + ".name");
    const bool is_number = !name.empty() && name.find_first_not_of("0123456789") == std::string::npos;
    if (own != fields.end() && !own->second.text.empty() && walked != "recipe") {
      name = own->second.text;
    } else if (is_number) {
      name = std::to_string(std::stoul(name.substr(0, 6)) + 1);
    } else if (name == "parts" || name == "recipe" || name == "outline" || name == "profile" || name == "pan") {
      continue;  // what follows says it
    }
    std::replace(name.begin(), name.end(), '_', ' ');
    words += (words.empty() ? "" : is_number && own == fields.end() ? " " : ", ") + name;
  }
  return words.empty() ? "The job" : words;
}

}  // namespace tinwright
