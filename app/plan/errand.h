// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the page has done elsewhere, because it takes too long for the thread that draws or is not needed for the first
// answer: the oven, reading recipes, files for print. A second program takes an Errand as bytes and gives an Outcome.
#pragma once

#include <cstdint>
#include <string>

#include "app/files/pack.h"
#include "app/plan/job_answer.h"

namespace tinwright {

enum class ErrandKind : int {
  kOven,    // the single pan's
  kBake,    // one pan of a job
  kRecipe,  // somebody's recipe, read into a job
  kPrintCard,
  kSaveCard,
  kCsv,
  kMarkdown,
  kCalendar,
  kPaper,    // templates for one pan of a job
  kPanPaper  // for the single pan
};

struct Errand {
  ErrandKind kind = ErrandKind::kOven;
  long edition = 0;  // whatever the page calls its state by; the outcome brings it back
  UnitChoice units = UnitChoice::kMetric;
  std::string document = {};     // JSON: of the job; of the bench for kOven and kPanPaper
  std::string text = {};         // of kRecipe: the recipe
  std::size_t pan = 0;           // of kBake and kPaper: which of the plan's
  std::int64_t utc_minutes = 0;  // of kCalendar: now, since 1970
};

struct Outcome {
  ErrandKind kind = ErrandKind::kOven;
  long edition = 0;
  std::size_t pan = 0;
  OvenAnswer oven;      // of kOven and kBake
  PlanWords words;      // of kBake: with all that is known of the oven up to this pan
  Texts problems;       // of kBake: by path, likewise
  std::string text;     // of kRecipe: the document with the recipe in it; of the files: the file
  std::string refusal;  // a sentence; empty where all went well
};

template <class Bytes>
void exchange(Bytes& bytes, ReportLine& line) {
  bytes(line.kind, line.label, line.value, line.detail);
}
template <class Bytes>
void exchange(Bytes& bytes, CurvePoint& point) {
  bytes(point.time, point.air, point.core, point.mean);
}
template <class Bytes>
void exchange(Bytes& bytes, Patch& patch) {
  bytes(patch.x, patch.y, patch.width, patch.height, patch.is_dough);
}
template <class Bytes>
void exchange(Bytes& bytes, OvenAnswer& oven) {
  bytes(oven.sentence, oven.report, oven.cautions, oven.curve, oven.oven_ends, oven.early, oven.late, oven.patches,
        oven.frame_times, oven.frames, oven.coldest_shown, oven.warmest_shown, oven.problems);
}
template <class Bytes>
void exchange(Bytes& bytes, ItemLine& item) {
  bytes(item.food, item.amount, item.detail, item.is_open);
}
template <class Bytes>
void exchange(Bytes& bytes, PartWords& part) {
  bytes(part.title, part.factor, part.total, part.items, part.notes);
}
template <class Bytes>
void exchange(Bytes& bytes, PanWords& pan) {
  bytes(pan.title, pan.lines, pan.oven, pan.oven_detail, pan.oven_lines);
}
template <class Bytes>
void exchange(Bytes& bytes, PlanWords& words) {
  bytes(words.pans, words.parts, words.in_pans, words.left_over, words.open, words.clock, words.cautions);
}
template <class Bytes>
void exchange(Bytes& bytes, Errand& errand) {
  bytes(errand.kind, errand.edition, errand.units, errand.document, errand.text, errand.pan, errand.utc_minutes);
}
template <class Bytes>
void exchange(Bytes& bytes, Outcome& outcome) {
  bytes(outcome.kind, outcome.edition, outcome.pan, outcome.oven, outcome.words, outcome.problems, outcome.text,
        outcome.refusal);
}

/// What the last errand left, so that the next one on the same job need not begin anew.
struct LastErrand {
  std::string document;
  UnitChoice units = UnitChoice::kMetric;
  JobAnswer answer;
};

/// Does it. Anything may stand in the errand's texts.
Outcome run_errand(LastErrand& last, const Errand& errand, const Progress& progress = {});

/// What of a job's document its oven and its files hang on: all but what only the page needs.
std::string errand_document(const JsonNode& document);

}  // namespace tinwright
