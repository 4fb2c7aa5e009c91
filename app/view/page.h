// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page a cook sees: its state, and how a frame of it is drawn.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "app/plan/errand.h"
#include "app/plan/job_answer.h"
#include "app/plan/workspace.h"
#include "app/view/host.h"
#include "app/view/view_grips.h"
#include "app/view/views.h"

namespace tinwright::view {

/// What takes too long to be worked out at every keystroke: it is, once the cook has paused, elsewhere.
struct Pending {
  enum class State {
    kUnasked,
    kWaiting,  // for the pause
    kAway,     // being worked out
    kDone,
    kStopped,  // by the cook
    kFailed    // nobody is there to work it out
  } state = State::kUnasked;
  double due = 0.0;       // [s] on the viewport's clock, while waiting
  double shown_at = 0.0;  // [s] likewise: when it is away for so long that it shows
  double done = 0.0;      // [-] while away
  bool goes_on = false;   // a piece has come back and the next one goes away at once
  long edition = 0;       // of the errand it is away as
};

struct Page {
  Page();

  Workspace workspace;    // everything entered; the members below follow it
  bool shows_job = true;  // the whole recipe; else the single pan

  Bench bench;
  BenchAnswer answer;  // always of the bench as it stands
  OvenAnswer oven;     // of the bench as it stood when it was last worked out
  OvenLook oven_look;
  SolidLook solid_look;
  GripLook grip_look;
  int example = 0;  // the worked example last opened
  Pending oven_pending;

  JobAnswer job;           // its oven as far as it has been worked out
  std::string job_errand;  // what its oven hangs on, see errand_document
  JobForms job_forms;
  std::vector<OvenLook> job_looks;  // of each of its pans
  std::vector<SolidLook> job_solids;
  int job_piece = 0;  // shown on a narrow page: plan, recipe, cupboard, scale
  Pending job_pending;
  std::string message;       // of the last file, link or recipe taken in
  long message_edition = 0;  // of the workspace it was said at; an edit takes it away
  bool is_refusal = false;   // it says why it was not

  std::vector<Wish> wishes;         // for the host to take after a frame
  std::vector<SentErrand> errands;  // likewise
  long errands_sent = 0;
  std::string recipe_text;  // that is being read

  /// [min] since 1970 in UTC, from the host; 0 without one.
  std::int64_t (*utc_minutes)() = [] { return std::int64_t{0}; };
};

/// How much larger than usual the cook wants all letters, and with them everything [-].
float text_scale(const Page& page);

/// Draws one frame on the current surface and takes in what the cook did since the last one.
void draw_page(Page& page);

/// Takes a text in. Where it is refused, the page stays as it was and says why; of a recipe that is known later.
void take_in(Page& page, Source source, std::string_view text);

/// What became of an errand, how far the one that is running has come, and that there is nobody to do them.
void take_outcome(Page& page, std::string_view bytes);
void take_progress(Page& page, double done);
void errands_failed(Page& page);

/// The document as it is kept and shared: short, without blanks.
const std::string& kept_text(const Page& page);

}  // namespace tinwright::view
