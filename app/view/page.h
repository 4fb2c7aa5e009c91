// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page a cook sees: its state, and how a frame of it is drawn.
#pragma once

#include "app/plan/bench.h"

namespace tinwright::view {

struct Page {
  Page();

  Bench bench;
  BenchAnswer answer;  // always of the bench as it stands
  int example = 0;     // the worked example last opened
};

/// Draws one frame on the current surface and takes in what the cook did since the last one.
void draw_page(Page& page);

}  // namespace tinwright::view
