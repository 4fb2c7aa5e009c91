// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The two builders behind make_grid.
#pragma once

#include "geometry/heat/grid.h"
#include "geometry/heat/layers.h"

namespace tinwright {

HeatGrid make_ring_grid(const Pan& pan, const LayerPlan& plan);
/// For a rectangle.
HeatGrid make_box_grid(const Pan& pan, const LayerPlan& plan);

}  // namespace tinwright
