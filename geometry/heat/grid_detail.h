// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The two builders behind make_grid.
#pragma once

#include "geometry/heat/grid.h"
#include "geometry/heat/layers.h"

namespace tinwright {

/// Conductances (for a conductivity of 1 [m]) round one corner of four cells: across in the lower and the upper layer,
/// up in the outer and the inner column.
struct CornerLinks {
  double across_below = 0.0, across_above = 0.0, up_outer = 0.0, up_inner = 0.0;
};

/// [m] `corner` made no larger in size than the links round it can carry: a negative link across a corner must not
/// outweigh the two ways round it, or heat would flow uphill. Each of those links serves two corners, so half of it
/// counts.
double bounded_corner(double corner, const CornerLinks& links);

HeatGrid make_ring_grid(const Pan& pan, const LayerPlan& plan);
/// For a rectangle.
HeatGrid make_box_grid(const Pan& pan, const LayerPlan& plan);

}  // namespace tinwright
