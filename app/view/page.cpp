// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See page.h. The single pan is in page_bench.cpp, the whole recipe in page_job.cpp, what is done elsewhere in
// page_errands.cpp.
#include "app/view/page.h"

#include "app/plan/bench_document.h"
#include "app/plan/demos.h"
#include "app/plan/examples.h"
#include "app/view/page_parts.h"

namespace tinwright::view {
namespace {

constexpr float kLeastColumn = 19.0f;  // [em] narrower columns make the forms cramped
constexpr int kMostColumns = 3;
constexpr long kExampleEdition = 1;  // of the workspace, as the constructor leaves it

constexpr const char* kLarge = "large";  // under page.size in the document

void draw_heading(Page& page, int columns) {
  heading("title", "Tinwright", 1);
  paragraph("purpose",
            "Somebody else's recipe, your own pans: how much to make, how thick it presses, how far up to pour, how "
            "long to bake.");
  begin_columns(columns);
  int shown = page.shows_job ? 0 : 1;
  if (segments("shows", "What to work out", shown, {"A whole recipe", "One pan"})) {
    page.shows_job = shown == 0;
    put_text(page.workspace.document, "page.shows", page.shows_job ? "" : "pan");
    note_edit(page.workspace, "page.shows");
  }
  next_column();
  int units = static_cast<int>(page.bench.units);
  if (segments("units", "Measures first in", units, {"Metric", "US"})) {
    page.bench.units = static_cast<UnitChoice>(units);
    page.answer = answer_bench(page.bench);
    page.job = answer_job(page.workspace.document, page.bench.units);
    page.oven_pending.state = page.job_pending.state = Pending::State::kUnasked;
    put(page.workspace.document, "page.bench", document_of(page.bench));
    note_edit(page.workspace, "page.units");
  }
  end_columns();
  bool is_large = text_scale(page) > 1.0f;
  if (toggle("size", "Large, for reading from a metre away", is_large)) {
    put_text(page.workspace.document, "page.size", is_large ? kLarge : "");
    note_edit(page.workspace, "page.size");
  }
}

std::string sentence_of(const Problem& problem) {
  return problem.message + (problem.place.empty() ? "" : " (" + problem.place + ")");
}

}  // namespace

void follow_document(Page& page) {
  const JsonNode& document = page.workspace.document;
  page.shows_job = text_at(document, "page.shows") != "pan";
  const JsonNode* bench = node_at(document, "page.bench");
  const UnitChoice units = page.bench.units;
  page.bench = bench != nullptr ? bench_of(*bench) : worked_examples().front().bench;
  if (bench == nullptr) page.bench.units = units;
  page.answer = answer_bench(page.bench);
  page.oven = {};
  page.oven_look = {};
  page.job = answer_job(document, page.bench.units);
  page.job_errand = errand_document(document);
  page.job_looks.clear();
  page.job_forms.edition = -1;
  page.oven_pending.state = page.job_pending.state = Pending::State::kUnasked;
}

Page::Page() {
  take_in(*this, Source::kJobFile, demo_jobs().front().text);
  message.clear();
}

namespace {

/// Opens a job from wherever it comes, or says why not.
void open_job(Page& page, Source source, std::string_view text) {
  const bool is_example = page.workspace.edition == kExampleEdition;
  const auto opened = open_document(page.workspace, text);
  if (!opened) {
    page.is_refusal = true;
    const char* const what[] = {"This file cannot be opened: ", "",
                                "What this device had kept cannot be opened: ", "This link cannot be opened: "};
    page.message =
        what[static_cast<int>(source)] + sentence_of(opened.problem()) + ". What was here before is still here.";
    return;
  }
  // What was kept takes the place of the example, which nobody asked for and nobody goes back to.
  if (source == Source::kKept && is_example) page.workspace.past.clear();
  if (source == Source::kJobFile) page.message = "The job is open.";
  if (source == Source::kLink) page.message = "The job in the link is open; take it back to return to yours.";
  follow_document(page);
}

}  // namespace

void take_in(Page& page, Source source, std::string_view text) {
  page.is_refusal = false;
  page.message.clear();
  if (source == Source::kRecipe) {
    take_in_recipe(page, text);
  } else {
    open_job(page, source, text);
  }
  page.message_edition = page.workspace.edition;
}

const std::string& kept_text(const Page& page) {
  return page.workspace.text;
}

float text_scale(const Page& page) {
  return text_at(page.workspace.document, "page.size") == kLarge ? kLargeText : 1.0f;
}

void draw_page(Page& page) {
  const int columns = columns_that_fit(kLeastColumn, kMostColumns);
  draw_heading(page, columns);
  draw_desk(page);
  if (page.shows_job) {
    draw_job(page, columns);
  } else {
    draw_bench(page, columns);
  }
}

}  // namespace tinwright::view
