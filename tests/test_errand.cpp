// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Errands: that they answer what a direct question does, come through as bytes, and take anything.
#include <random>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/files/json_tree.h"
#include "app/plan/bench_document.h"
#include "app/plan/demos.h"
#include "app/plan/desk.h"
#include "app/plan/errand.h"
#include "app/plan/examples.h"
#include "app/plan/job_baking.h"
#include "app/plan/paper.h"

using namespace tinwright;

namespace {

void check_same(const Report& a, const Report& b) {
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    CHECK(a[i].kind == b[i].kind);
    CHECK(a[i].label == b[i].label);
    CHECK(a[i].value == b[i].value);
    CHECK(a[i].detail == b[i].detail);
  }
}

void check_same(const OvenAnswer& a, const OvenAnswer& b) {
  CHECK(a.sentence == b.sentence);
  check_same(a.report, b.report);
  check_same(a.cautions, b.cautions);
  REQUIRE(a.curve.size() == b.curve.size());
  for (std::size_t i = 0; i < a.curve.size(); ++i) {
    CHECK(a.curve[i].time == b.curve[i].time);
    CHECK(a.curve[i].air == b.curve[i].air);
    CHECK(a.curve[i].core == b.curve[i].core);
    CHECK(a.curve[i].mean == b.curve[i].mean);
  }
  CHECK(a.oven_ends == b.oven_ends);
  CHECK(a.early == b.early);
  CHECK(a.late == b.late);
  REQUIRE(a.patches.size() == b.patches.size());
  for (std::size_t i = 0; i < a.patches.size(); ++i) {
    CHECK(a.patches[i].x == b.patches[i].x);
    CHECK(a.patches[i].y == b.patches[i].y);
    CHECK(a.patches[i].width == b.patches[i].width);
    CHECK(a.patches[i].height == b.patches[i].height);
    CHECK(a.patches[i].is_dough == b.patches[i].is_dough);
  }
  CHECK(a.frame_times == b.frame_times);
  CHECK(a.frames == b.frames);
  CHECK(a.coldest_shown == b.coldest_shown);
  CHECK(a.warmest_shown == b.warmest_shown);
  CHECK(a.problems == b.problems);
}

void check_same(const PlanWords& a, const PlanWords& b) {
  check_same(a.pans, b.pans);
  REQUIRE(a.parts.size() == b.parts.size());
  for (std::size_t i = 0; i < a.parts.size(); ++i) {
    CHECK(a.parts[i].title == b.parts[i].title);
    CHECK(a.parts[i].factor == b.parts[i].factor);
    CHECK(a.parts[i].total == b.parts[i].total);
    check_same(a.parts[i].notes, b.parts[i].notes);
    REQUIRE(a.parts[i].items.size() == b.parts[i].items.size());
    for (std::size_t k = 0; k < a.parts[i].items.size(); ++k) {
      CHECK(a.parts[i].items[k].food == b.parts[i].items[k].food);
      CHECK(a.parts[i].items[k].amount == b.parts[i].items[k].amount);
      CHECK(a.parts[i].items[k].detail == b.parts[i].items[k].detail);
      CHECK(a.parts[i].items[k].is_open == b.parts[i].items[k].is_open);
    }
  }
  REQUIRE(a.in_pans.size() == b.in_pans.size());
  for (std::size_t i = 0; i < a.in_pans.size(); ++i) {
    CHECK(a.in_pans[i].title == b.in_pans[i].title);
    check_same(a.in_pans[i].lines, b.in_pans[i].lines);
    CHECK(a.in_pans[i].oven == b.in_pans[i].oven);
    CHECK(a.in_pans[i].oven_detail == b.in_pans[i].oven_detail);
    check_same(a.in_pans[i].oven_lines, b.in_pans[i].oven_lines);
  }
  check_same(a.left_over, b.left_over);
  check_same(a.open, b.open);
  check_same(a.clock, b.clock);
  check_same(a.cautions, b.cautions);
}

JsonNode tree(std::string_view text) {
  const auto read = read_json(text);
  REQUIRE(read);
  return *read;
}

/// There and back as bytes, as between page and worker.
Outcome sent(LastErrand& last, const Errand& errand) {
  const auto arrived = unpacked<Errand>(packed(errand));
  REQUIRE(arrived.has_value());
  const auto back = unpacked<Outcome>(packed(run_errand(last, *arrived)));
  REQUIRE(back.has_value());
  CHECK(back->kind == errand.kind);
  CHECK(back->edition == errand.edition);
  return *back;
}

}  // namespace

TEST_CASE("errand: every pan of a job is baked as by a direct question, whatever else is asked between") {
  LastErrand last;
  for (const Demo& demo : demo_jobs()) {
    CAPTURE(demo.name);
    const JsonNode document = tree(demo.text);
    JobAnswer direct = answer_job(document, UnitChoice::kUs);
    REQUIRE(direct.plan.has_value());
    Errand errand{ErrandKind::kBake, 7, UnitChoice::kUs, errand_document(document)};
    while (direct.is_baking()) {
      errand.pan = direct.ovens.size();
      bake_next(direct);
      const Outcome outcome = sent(last, errand);
      CHECK(outcome.refusal.empty());
      check_same(outcome.oven, direct.ovens.back());
      check_same(outcome.words, direct.words);
      CHECK(outcome.problems == direct.problems);
    }
    errand.kind = ErrandKind::kSaveCard;
    CHECK(sent(last, errand).text == bench_card(direct));
    errand.kind = ErrandKind::kCsv;
    CHECK(sent(last, errand).text == amounts_csv(direct));
    errand.kind = ErrandKind::kMarkdown;
    CHECK(sent(last, errand).text == amounts_markdown(direct));
  }
}

TEST_CASE("errand: paper for every pan of a job and for the single pan") {
  LastErrand last;
  for (const Demo& demo : demo_jobs()) {
    const JsonNode document = tree(demo.text);
    const JobAnswer direct = answer_job(document, UnitChoice::kUs);
    for (std::size_t i = 0; i < direct.plan->pans.size(); ++i) {
      const Outcome outcome = sent(last, {ErrandKind::kPaper, 0, UnitChoice::kUs, errand_document(document), "", i});
      const auto wanted =
          paper_html(paper_order(*direct.job, direct.plan->pans[i], PaperSize::kLetter, UnitChoice::kUs));
      REQUIRE(wanted);
      CHECK(outcome.text == *wanted);
    }
  }
  const Bench& bench = worked_examples().front().bench;
  const Errand errand{ErrandKind::kPanPaper, 0, UnitChoice::kMetric, write_compact_json(document_of(bench))};
  CHECK(sent(last, errand).text == *paper_html(*paper_order(answer_bench(bench), PaperSize::kA4, UnitChoice::kMetric)));
}

TEST_CASE("errand: progress goes from nothing to nearly all and never back") {
  LastErrand last;
  std::vector<double> told;
  Errand errand{ErrandKind::kBake, 0, UnitChoice::kMetric, errand_document(tree(demo_jobs().front().text))};
  run_errand(last, errand, [&](double done) { told.push_back(done); });
  REQUIRE(told.size() > 5);
  CHECK(told.front() < 0.2);
  CHECK(told.back() > 0.7);
  CHECK(told.back() <= 1.0);
  for (std::size_t i = 1; i < told.size(); ++i) CHECK(told[i] >= told[i - 1]);
}

TEST_CASE("errand: the single pan's oven") {
  LastErrand last;
  int with_curve = 0;
  for (const Example& example : worked_examples()) {
    CAPTURE(example.key);
    const Errand errand{ErrandKind::kOven, 3, example.bench.units, write_compact_json(document_of(example.bench))};
    const Outcome outcome = sent(last, errand);
    check_same(outcome.oven, answer_oven(example.bench, answer_bench(example.bench)));
    with_curve += outcome.oven.curve.empty() ? 0 : 1;
  }
  CHECK(with_curve > 0);
}

TEST_CASE("errand: a recipe is read into the document, and one that cannot be read says why") {
  LastErrand last;
  Errand errand{ErrandKind::kRecipe, 0, UnitChoice::kMetric, std::string(demo_jobs().front().text),
                "Oat slab\n\n200 g oats\n100 g butter\n"};
  const JsonNode read = tree(sent(last, errand).text);
  CHECK(text_at(read, "recipe.parts.0.ingredients.1.food") == "butter");
  CHECK(count_at(read, "cupboard") == count_at(tree(std::string(demo_jobs().front().text)), "cupboard"));
  errand.text = " \n ";
  const Outcome refused = sent(last, errand);
  CHECK(refused.text.empty());
  CHECK(!refused.refusal.empty());
}

TEST_CASE("errand: a job without a plan has no oven and no card, and says so") {
  LastErrand last;
  for (const std::string_view document :
       {std::string_view("{}"), std::string_view("{\"version\": 1}"), std::string_view("[1"), std::string_view()}) {
    for (const ErrandKind kind : {ErrandKind::kBake, ErrandKind::kSaveCard, ErrandKind::kCsv, ErrandKind::kMarkdown,
                                  ErrandKind::kCalendar, ErrandKind::kPaper, ErrandKind::kPanPaper}) {
      const Outcome outcome = sent(last, {kind, 0, UnitChoice::kMetric, std::string(document)});
      CHECK(outcome.text.empty());
      CHECK(!outcome.refusal.empty());
    }
  }
}

TEST_CASE("errand: what only the page keeps is left out, so that a reading of the scale bakes nothing anew") {
  JsonNode document = tree(demo_jobs().front().text);
  const std::string before = errand_document(document);
  put_text(document, "page.readings.0.0", "312 g");
  CHECK(errand_document(document) == before);
  put_text(document, "recipe.name", "Another");
  CHECK(errand_document(document) != before);
}

TEST_CASE("pack: bytes that were cut, or mean nothing, are refused and never asked for more than they hold") {
  const std::string whole = packed(Errand{ErrandKind::kRecipe, 5, UnitChoice::kUs, "document", "text", 3, 9});
  REQUIRE(unpacked<Errand>(whole).has_value());
  for (std::size_t length = 0; length < whole.size(); ++length) {
    CHECK(!unpacked<Errand>(std::string_view(whole).substr(0, length)).has_value());
  }
  CHECK(!unpacked<Errand>(whole + "x").has_value());
  std::mt19937_64 random(5);
  for (int round = 0; round < 2000; ++round) {
    std::string noise(random() % 400, '\0');
    for (char& c : noise) c = static_cast<char>(random() % 3 == 0 ? random() : 0);
    unpacked<Outcome>(noise);
  }
}
