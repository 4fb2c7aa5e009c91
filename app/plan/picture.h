// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The lines of the drawings, in metres: my pan from above and cut through its middle, with what was put into it.
#pragma once

#include "app/plan/fill_job.h"
#include "app/plan/press_job.h"
#include "geometry/outline.h"

namespace tinwright {

struct Picture {
  double length = 0.0, width = 0.0, depth = 0.0;  // [m] of the pan at its rim
  double wall_run = 0.0;                          // [m] how far the wall comes in

  // From above, about the pan's middle.
  Loops rim, floor, core;
  Loops dough_above;  // what of the floor the dough covers

  // Cut through: the right-hand half; x from the pan's middle, y from its floor.
  Loops pan_edge;                // open lines: wall, floor, core
  Loops dough, filling;          // filled where inside an odd number of loops
  double tray = 0.0;             // [m] how far out the tray under a bottomless ring is drawn; 0 without
  double floor_thickness = 0.0;  // [m] of the dough; 0 without
  double top = 0.0, level = 0.0, risen_level = 0.0;  // [m] of the crust or pan, the filling (0 without), and once risen
};

/// The loops and their mirror images, the other half of the pan.
Loops mirrored(const Loops& loops);

/// `press` and `fill` may be null.
Picture draw_picture(const Pan& pan, const PressJob* press_job, const PressAnswer* press, const FillJob* fill_job,
                     const FillAnswer* fill);

}  // namespace tinwright
