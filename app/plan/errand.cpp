// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See errand.h.
#include "app/plan/errand.h"

#include "app/files/json_tree.h"
#include "app/plan/bench_document.h"
#include "app/plan/civil_time.h"
#include "app/plan/desk.h"
#include "app/plan/job_baking.h"
#include "app/plan/paper.h"
#include "app/recipe/draft_job.h"
#include "app/recipe/read_recipe.h"

namespace tinwright {
namespace {

constexpr const char* kNotPossible = "What is marked has to be settled first.";

/// The tree of a text that this program wrote itself; an empty one should it be anything else.
JsonNode tree_of(const std::string& text) {
  const auto tree = read_json(text);
  return tree ? *tree : make_object();
}

Bench bench_in(const Errand& errand) {
  Bench bench = bench_of(tree_of(errand.document));
  bench.units = errand.units;
  return bench;
}

void run_oven(Outcome& outcome, const Errand& errand, const Progress& progress) {
  const Bench bench = bench_in(errand);
  outcome.oven = answer_oven(bench, answer_bench(bench), progress);
}

JobAnswer& answer_of(LastErrand& last, const Errand& errand) {
  if (last.document != errand.document || last.units != errand.units) {
    last = {errand.document, errand.units, answer_job(tree_of(errand.document), errand.units)};
  }
  return last.answer;
}

void run_bake(LastErrand& last, Outcome& outcome, const Errand& errand, const Progress& progress) {
  JobAnswer& answer = answer_of(last, errand);
  while (answer.is_baking() && answer.ovens.size() <= errand.pan) bake_next(answer, progress);
  if (errand.pan >= answer.ovens.size()) {
    outcome.refusal = kNotPossible;
    return;
  }
  outcome.oven = answer.ovens[errand.pan];
  outcome.words = answer.words;
  outcome.problems = answer.problems;
}

void run_recipe(Outcome& outcome, const Errand& errand) {
  const auto draft = read_recipe(errand.text);
  if (!draft) {
    const Problem& problem = draft.problem();
    outcome.refusal = problem.message + (problem.place.empty() ? "" : " (" + problem.place + ")");
    return;
  }
  JsonNode document = tree_of(errand.document);
  put_recipe(document, *draft);
  outcome.text = write_compact_json(document);
}

void run_file(LastErrand& last, Outcome& outcome, const Errand& errand, const Progress& progress) {
  JobAnswer& answer = answer_of(last, errand);
  while (answer.is_baking()) bake_next(answer, progress);
  if (!answer.plan) {
    outcome.refusal = kNotPossible;
    return;
  }
  switch (errand.kind) {
    case ErrandKind::kPrintCard:
    case ErrandKind::kSaveCard:
      outcome.text = bench_card(answer);
      break;
    case ErrandKind::kCsv:
      outcome.text = amounts_csv(answer);
      break;
    case ErrandKind::kMarkdown:
      outcome.text = amounts_markdown(answer);
      break;
    default: {
      if (!answer.clock) {
        outcome.refusal = kNotPossible;
        return;
      }
      const auto calendar = clock_calendar(*answer.job, *answer.clock, civil_from_minutes(errand.utc_minutes));
      if (calendar) {
        outcome.text = *calendar;
      } else {
        outcome.refusal = calendar.problem().message + ".";
      }
    }
  }
}

void run_paper(LastErrand& last, Outcome& outcome, const Errand& errand) {
  // Where inches come first, so does their paper.
  const PaperSize size = errand.units == UnitChoice::kUs ? PaperSize::kLetter : PaperSize::kA4;
  std::optional<PaperOrder> order;
  if (errand.kind == ErrandKind::kPanPaper) {
    order = paper_order(answer_bench(bench_in(errand)), size, errand.units);
  } else {
    const JobAnswer& answer = answer_of(last, errand);
    if (answer.plan && errand.pan < answer.plan->pans.size()) {
      order = paper_order(*answer.job, answer.plan->pans[errand.pan], size, errand.units);
    }
  }
  if (!order) {
    outcome.refusal = kNotPossible;
    return;
  }
  const auto page = paper_html(*order);
  if (page) {
    outcome.text = *page;
  } else {
    outcome.refusal = page.problem().message + ".";
  }
}

}  // namespace

Outcome run_errand(LastErrand& last, const Errand& errand, const Progress& progress) {
  Outcome outcome;
  outcome.kind = errand.kind;
  outcome.edition = errand.edition;
  outcome.pan = errand.pan;
  switch (errand.kind) {
    case ErrandKind::kOven:
      run_oven(outcome, errand, progress);
      break;
    case ErrandKind::kBake:
      run_bake(last, outcome, errand, progress);
      break;
    case ErrandKind::kRecipe:
      run_recipe(outcome, errand);
      break;
    case ErrandKind::kPaper:
    case ErrandKind::kPanPaper:
      run_paper(last, outcome, errand);
      break;
    default:
      run_file(last, outcome, errand, progress);
  }
  return outcome;
}

std::string errand_document(const JsonNode& document) {
  JsonNode copy = document;
  take_away(copy, "page");
  return write_compact_json(copy);
}

}  // namespace tinwright
