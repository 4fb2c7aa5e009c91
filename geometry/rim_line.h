// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// An outline walked along once, with what a wall needs to be unrolled: how far along, which way it heads, and how far
// in the wall can come before it meets another part of the wall (the mitre of a corner, the crease under a flute).
// The way a wall's straight pieces run down at right angles to the outline follows from it being moved inwards evenly:
// it has the same slope everywhere, and such a surface can be unrolled (do Carmo, Differential Geometry of Curves and
// Surfaces, 3-5).
#pragma once

#include <vector>

#include "geometry/outline.h"

namespace tinwright {

struct RimPoint {
  double along = 0.0;    // [m] from where the walk starts
  double heading = 0.0;  // [rad] of travel, counter-clockwise round the pan, not cut back at 2π
  double reach = 0.0;    // [m] inset at which the wall below this point ends
};

/// The outline moved inwards by `upper` [m], from a seam round to itself, counter-clockwise, the seam on a flat part
/// where there is one. A sharp corner is two points at the same place; an inward corner many. Points stand where the
/// reach is `lower` - `upper`, so that an edge at `lower` can be drawn without loss. Chords leave the curve by at most
/// `tolerance` [m]; lengths and headings are those of the curve itself. 0 <= upper <= lower. Empty when nothing is left
/// at `upper`.
std::vector<RimPoint> walk_rim(const Outline& outline, double upper, double lower, double tolerance);

}  // namespace tinwright
