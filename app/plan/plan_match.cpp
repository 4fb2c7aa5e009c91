// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_match.h.
#include "app/plan/plan_match.h"

#include <algorithm>

#include "app/plan/match_words.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

constexpr std::size_t kOthersSaid = 2;  // sets beside the best one that are offered

std::string sentences(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& each : words) text += (text.empty() ? "" : "; ") + each;
  return text;
}

/// The cupboard without the plan's pans, and what is left as the batch.
std::optional<MatchQuestion> ask_for_leftover(const Job& job, const Plan& plan) {
  const Fields nothing;
  FieldReader nobody(nothing);  // faults here were noted when the plan was made
  auto match = plan.match ? plan.match : ask_cupboard(nobody, job, plan.recipe);
  if (!match) return std::nullopt;
  for (const PanPlan& pan : plan.pans) {
    for (std::size_t k = 0; k < match->own.size(); ++k) {
      if (match->own[k] == pan.own) match->question.pans[k].count -= pan.count;
    }
  }
  match->question.volume = plan.filling_left;
  match->question.answers = 1;
  return std::move(match->question);
}

}  // namespace

Report describe_match(const Job& job, const Plan& plan, UnitChoice units) {
  Report report;
  if (!plan.match) {
    std::string list;
    for (const PanPlan& pan : plan.pans) {
      list += (list.empty() ? "" : ", ") + counted(pan.count, job.cupboard[pan.own].name);
    }
    report.push_back(figure("Pans", list, "chosen by you"));
    return report;
  }
  const auto& sets = plan.match->answer.sets;
  for (std::size_t i = 0; i < sets.size() && i <= kOthersSaid; ++i) {
    report.push_back(figure(i == 0 ? "Pans" : "Or", set_name(plan.match->question, sets[i]),
                            sentences(match_words(plan.match->question, sets[i], units))));
  }
  if (!plan.match->answer.proven) {
    report.push_back(remark("The cupboard is so full that not every set was looked at; there may be a better one."));
  }
  return report;
}

std::vector<std::string> small_pans_for(const Job& job, const Plan& plan, UnitChoice units) {
  if (plan.filling_left < kSpatula) return {};
  const auto question = ask_for_leftover(job, plan);
  if (!question) return {};
  const auto answer = match_pans(*question);
  if (!answer) return {};
  const PanSet& best = answer->sets.front();
  const std::string rest = best.all_in() ? "" : "; " + format_both_volumes(best.leftover, units) + " is still over";
  return {"From your cupboard, " + set_name(*question, best) + " takes it" + rest + "."};
}

}  // namespace tinwright
