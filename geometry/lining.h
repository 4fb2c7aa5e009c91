// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A pan lined with dough is a pan again: its floor raised by the floor's thickness, its wall moved inwards by the
// wall's thickness at right angles. So the dough is the difference of two volumes and every filling question is
// asked of the cavity.
#pragma once

#include "geometry/pan.h"

namespace tinwright {

struct Lining {
  double floor = 0.0;   // [m] thickness on the floor
  double wall = 0.0;    // [m] thickness on the wall, at right angles to it
  double height = 0.0;  // [m] top of the crust above the pan's floor, at most the pan's depth
};

/// The cavity inside the crust: a pan whose top is the crust's and whose floor lies on the dough. Where a thick
/// wall closes the lowest part, the cavity starts above it. Problem (place "lining.<field>") when a size is
/// impossible, the crust is taller than the pan, or nothing is left to fill.
Result<Pan> line_pan(const Pan& pan, const Lining& lining);

/// [m³] The dough of a lining in one cavity; all of the pan up to the crust's top when it leaves no room.
/// Thicknesses must be at least 0 and the height in (0, depth].
double lining_volume(const Pan& pan, const Lining& lining);

}  // namespace tinwright
