// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the page has done elsewhere (app/plan/errand.h): when it is sent away, what is shown until it comes back, and
// where its outcome goes. An outcome of anything but the page as it stands is dropped.
#include <utility>

#include "app/plan/bench_document.h"
#include "app/plan/calendar.h"
#include "app/plan/desk.h"
#include "app/view/page_parts.h"

namespace tinwright::view {
namespace {

constexpr double kPause = 0.35;       // [s] without a change until what takes long is worked out
constexpr double kFirstShown = 0.05;  // [s] the page is shown before it is for the first time
constexpr double kQuick = 0.2;        // [s] what takes no longer needs no progress and no stopping

double now() {
  return surface().viewport().time;
}

void send(Page& page, Errand& errand, bool replaces) {
  errand.edition = ++page.errands_sent;
  errand.units = page.bench.units;
  page.errands.push_back({packed(errand), replaces});
}

void give_file(Page& page, WishKind kind, const std::string& suffix, const std::string& type, std::string text) {
  page.wishes.push_back({kind, file_name(page.workspace.document) + suffix, type, std::move(text)});
}

void refuse(Page& page, const std::string& sentence) {
  page.is_refusal = true;
  page.message = sentence;
  page.message_edition = page.workspace.edition;
}

void take_file(Page& page, Outcome& outcome) {
  if (!outcome.refusal.empty()) return refuse(page, "There is no file yet: " + outcome.refusal);
  switch (outcome.kind) {
    case ErrandKind::kPaper:
    case ErrandKind::kPanPaper:
    case ErrandKind::kPrintCard:
      return give_file(page, WishKind::kPrint, "", "text/html", std::move(outcome.text));
    case ErrandKind::kSaveCard:
      return give_file(page, WishKind::kSaveFile, ".html", "text/html", std::move(outcome.text));
    case ErrandKind::kCsv:
      return give_file(page, WishKind::kSaveFile, ".csv", "text/csv", std::move(outcome.text));
    case ErrandKind::kMarkdown:
      return give_file(page, WishKind::kSaveFile, ".md", "text/markdown", std::move(outcome.text));
    default:
      return give_file(page, WishKind::kSaveFile, ".ics", std::string(kCalendarMediaType), std::move(outcome.text));
  }
}

void send_recipe(Page& page) {
  Errand errand{.kind = ErrandKind::kRecipe, .document = page.workspace.text, .text = page.recipe_text};
  errand.pan = static_cast<std::size_t>(page.workspace.edition);
  send(page, errand, false);
}

void take_recipe(Page& page, const Outcome& outcome) {
  if (!outcome.refusal.empty()) {
    return refuse(page, "This recipe cannot be read: " + outcome.refusal + ". What was here before is still here.");
  }
  if (outcome.pan != static_cast<std::size_t>(page.workspace.edition)) return send_recipe(page);  // edited meanwhile
  auto document = read_json(outcome.text);
  if (!document) return refuse(page, "This recipe cannot be read. What was here before is still here.");
  page.workspace.document = std::move(*document);
  note_edit(page.workspace, "");
  follow_document(page);
  page.recipe_text.clear();
  page.is_refusal = false;
  page.message = "The recipe is read: look it through, and settle what is marked.";
  page.message_edition = page.workspace.edition;
}

bool is_away(const Pending& pending) {
  return pending.state == Pending::State::kAway || pending.goes_on;
}

/// True for what is away and was not overtaken.
bool is_wanted(const Pending& pending, const Outcome& outcome) {
  return pending.state == Pending::State::kAway && pending.edition == outcome.edition;
}

}  // namespace

void put_off(Pending& pending, bool changed) {
  const bool is_first = pending.state == Pending::State::kUnasked;
  if (changed) pending.goes_on = false;
  if (changed || is_first) {
    pending.due = now() + (changed ? kPause : pending.goes_on ? 0.0 : kFirstShown);
    pending.state = Pending::State::kWaiting;
  }
  if (pending.state == Pending::State::kWaiting) surface().ask_frame_in(pending.due - now());
  if (is_away(pending) && now() < pending.shown_at) surface().ask_frame_in(pending.shown_at - now());
}

bool is_due(const Pending& pending) {
  return pending.state == Pending::State::kWaiting && now() >= pending.due;
}

void send_away(Page& page, Pending& pending, Errand errand) {
  send(page, errand, true);
  // Only the latest is done: what the other view waits for is asked anew when it is looked at again.
  for (Pending* other : {&page.oven_pending, &page.job_pending}) {
    if (other != &pending && other->state == Pending::State::kAway) other->state = Pending::State::kUnasked;
  }
  pending.state = Pending::State::kAway;
  if (!pending.goes_on) {
    pending.shown_at = now() + kQuick;
    pending.done = 0.0;
  }
  pending.goes_on = false;
  pending.edition = errand.edition;
}

void send_for_file(Page& page, ErrandKind kind, std::size_t pan) {
  Errand errand{.kind = kind, .document = page.job_errand, .pan = pan, .utc_minutes = page.utc_minutes()};
  if (kind == ErrandKind::kPanPaper) errand.document = write_compact_json(document_of(page.bench));
  send(page, errand, false);
}

void take_in_recipe(Page& page, std::string_view text) {
  page.recipe_text = text;
  send_recipe(page);
  page.message = "Reading the recipe…";
}

void draw_pending(Page& page, const std::string& key, Pending& pending) {
  const auto again = [&](Text why, Text label) {
    note(key + "/note", NoteKind::kPlain, why);
    if (button(key + "/again", label)) pending.state = Pending::State::kUnasked;
  };
  if (is_away(pending)) {
    if (now() < pending.shown_at) return;
    progress(key, "Working out the oven's time", pending.done);
    if (!button(key + "/stop", "Stop", ButtonLook::kQuiet)) return;
    pending.state = Pending::State::kStopped;
    pending.goes_on = false;
    page.errands.push_back({"", true});
    return;
  }
  switch (pending.state) {
    case Pending::State::kStopped:
      return again("The oven's time was not worked out: you stopped it.", "Work it out");
    case Pending::State::kFailed:
      return again("The oven's time could not be worked out: a part of the page did not start. Check the connection.",
                   "Try again");
    default:
      return;
  }
}

void answer_anew(Page& page) {
  JobAnswer before = std::exchange(page.job, answer_job(page.workspace.document, page.bench.units));
  std::string errand = errand_document(page.workspace.document);
  const bool still_holds = errand == page.job_errand;
  keep_ovens(page.job, std::move(before), still_holds);
  if (still_holds) return;
  page.job_errand = std::move(errand);
  put_off(page.job_pending, true);
}

void take_outcome(Page& page, std::string_view bytes) {
  auto outcome = unpacked<Outcome>(bytes);
  if (!outcome) return errands_failed(page);
  switch (outcome->kind) {
    case ErrandKind::kOven:
      if (!is_wanted(page.oven_pending, *outcome)) return;
      page.oven = std::move(outcome->oven);
      page.oven_look = {.shows_cooling = page.oven_look.shows_cooling};
      page.oven_pending.state = Pending::State::kDone;
      return;
    case ErrandKind::kBake:
      if (!is_wanted(page.job_pending, *outcome)) return;
      if (outcome->refusal.empty()) {
        take_oven(page.job, std::move(outcome->oven), std::move(outcome->words), outcome->problems);
      }
      page.job_pending.goes_on = page.job.is_baking() && outcome->refusal.empty();
      page.job_pending.state = page.job_pending.goes_on ? Pending::State::kUnasked : Pending::State::kDone;
      return;
    case ErrandKind::kRecipe:
      return take_recipe(page, *outcome);
    default:
      return take_file(page, *outcome);
  }
}

void take_progress(Page& page, double done) {
  if (page.oven_pending.state == Pending::State::kAway) page.oven_pending.done = done;
  if (page.job_pending.state != Pending::State::kAway || !page.job.plan) return;
  const double pans = static_cast<double>(page.job.plan->pans.size());
  page.job_pending.done = (static_cast<double>(page.job.fresh) + done) / pans;
}

void errands_failed(Page& page) {
  for (Pending* pending : {&page.oven_pending, &page.job_pending}) {
    if (pending->state == Pending::State::kAway) pending->state = Pending::State::kFailed;
  }
  const bool was_asked = !page.recipe_text.empty();
  page.recipe_text.clear();
  if (was_asked) refuse(page, "The recipe could not be read: a part of the page did not start. Check the connection.");
}

}  // namespace tinwright::view
