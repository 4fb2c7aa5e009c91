// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page a cook sees: its state, and how a frame of it is drawn.
#pragma once

#include "app/view/views.h"

namespace tinwright::view {

struct Page {
  Page();

  Bench bench;
  BenchAnswer answer;  // always of the bench as it stands
  OvenAnswer oven;     // of the bench as it stood when it was last worked out
  OvenLook oven_look;
  int example = 0;  // the worked example last opened

  /// The oven takes too long to be worked out at every keystroke: it is, once the cook has paused.
  enum class OvenState { kUnasked, kWaiting, kDone } oven_state = OvenState::kUnasked;
  double oven_due = 0.0;  // [s] on the viewport's clock, while waiting
};

/// Draws one frame on the current surface and takes in what the cook did since the last one.
void draw_page(Page& page);

}  // namespace tinwright::view
