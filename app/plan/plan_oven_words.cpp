// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The oven's part of a plan in words; see plan_words.h. Apart from the rest, so that a program that has no oven need
// not carry it.
#include <algorithm>
#include <utility>

#include "app/plan/plan_cautions.h"
#include "app/plan/plan_words.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

void add_to_pan(PanWords& words, const PanBake& baked, const Report& report, UnitChoice units) {
  if (!baked.solved) {
    if (!baked.why_not.empty()) words.oven_lines.push_back(remark(baked.why_not));
    return;
  }
  words.oven = bake_sentence(*baked.job, *baked.solved, units);
  for (const ReportLine& line : report) {
    if (line.kind == ReportLine::Kind::kCaution) continue;
    if (line.label == kInMyPan) {
      const std::size_t rest = line.detail.find("; ");  // the sentence says what stands before it
      words.oven_detail = rest == std::string::npos ? line.detail : line.detail.substr(rest + 2);
    } else {
      words.oven_lines.push_back(line);
    }
  }
}

/// One that does not hold for all pans names its own.
Report cautions_of(const std::vector<Report>& each, const Job& job, const Plan& plan) {
  Report report;
  for (std::size_t i = 0; i < each.size(); ++i) {
    for (ReportLine line : each[i]) {
      const bool is_common =
          std::all_of(each.begin(), each.end(), [&](const Report& other) { return is_said(other, line); });
      if (!is_common) line.value = "In " + job.cupboard[plan.pans[i].own].name + ": " + line.value;
      report.push_back(std::move(line));
    }
  }
  return report;
}

}  // namespace

void add_oven_words(PlanWords& words, const Job& job, const Plan& plan, const std::vector<PanBake>& baked,
                    UnitChoice units) {
  std::vector<Report> each;
  for (std::size_t i = 0; i < baked.size(); ++i) {
    each.push_back(baked[i].solved ? describe_bake(*baked[i].job, *baked[i].solved, units) : Report{});
    add_to_pan(words.in_pans[i], baked[i], each.back(), units);
  }
  add_cautions(words.cautions, cautions_of(each, job, plan));
}

}  // namespace tinwright
