// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Freeform outlines: a polygon of measured corners. Moved inwards it keeps sharp outward corners, rounds its
// inward ones and may fall apart into islands.
#pragma once

#include <vector>

#include <glm/vec2.hpp>

#include "geometry/outline.h"

namespace tinwright {

/// The outline of a polygon, its corners recentred on the middle of its extent and turned counter-clockwise.
/// Refuses fewer than 3 or more than kMostCorners corners, no area, and sides that cross or touch.
Result<Outline> make_freeform(const Freeform& freeform);

/// The islands left after moving the polygon (counter-clockwise) inwards by `inset` [m].
Loops freeform_loops(const Freeform& freeform, double inset);

}  // namespace tinwright
