// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page a cook sees: its state, and how a frame of it is drawn.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "app/plan/job_answer.h"
#include "app/plan/workspace.h"
#include "app/view/host.h"
#include "app/view/views.h"

namespace tinwright::view {

/// What takes too long to be worked out at every keystroke: it is, once the cook has paused.
struct Pending {
  enum class State { kUnasked, kWaiting, kDone } state = State::kUnasked;
  double due = 0.0;  // [s] on the viewport's clock, while waiting
};

struct Page {
  Page();

  Workspace workspace;    // everything entered; the members below follow it
  bool shows_job = true;  // the whole recipe; else the single pan

  Bench bench;
  BenchAnswer answer;  // always of the bench as it stands
  OvenAnswer oven;     // of the bench as it stood when it was last worked out
  OvenLook oven_look;
  int example = 0;  // the worked example last opened
  Pending oven_pending;

  JobAnswer job;  // its oven as far as it has been worked out
  JobForms job_forms;
  std::vector<OvenLook> job_looks;  // of each of its pans
  int job_piece = 0;                // shown on a narrow page: plan, recipe, cupboard, scale
  Pending job_pending;
  std::string message;       // of the last file, link or recipe taken in
  long message_edition = 0;  // of the workspace it was said at; an edit takes it away
  bool is_refusal = false;   // it says why it was not

  std::vector<Wish> wishes;  // for the host to take after a frame

  /// [min] since 1970 in UTC, from the host; 0 without one.
  std::int64_t (*utc_minutes)() = [] { return std::int64_t{0}; };
};

/// Draws one frame on the current surface and takes in what the cook did since the last one.
void draw_page(Page& page);

/// Takes a text in. Where it is refused, the page stays as it was and says why.
void take_in(Page& page, Source source, std::string_view text);

/// The document as it is kept and shared: short, without blanks.
const std::string& kept_text(const Page& page);

}  // namespace tinwright::view
