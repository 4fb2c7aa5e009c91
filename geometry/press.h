// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pressing dough into a pan: the inverse of lining. Either a thickness is wanted and the dough it takes follows, or
// there is so much dough and its thickness is solved.
#pragma once

#include <optional>

#include "geometry/pan.h"

namespace tinwright {

enum class Cover {
  kFloor,         // an even layer on the floor, out to the wall
  kFloorAndWall,  // a lining
  kSlab,          // a loose slab of given thickness that need not reach the wall
};

struct PressQuestion {
  std::optional<double> dough = std::nullopt;  // [m³] for one cavity; without it, what a given thickness takes
  Cover cover = Cover::kFloor;
  std::optional<double> thickness = std::nullopt;        // [m] wanted everywhere; needed for a slab
  std::optional<double> floor_thickness = std::nullopt;  // [m] lining only: the rest goes up the wall
  std::optional<double> wall_to_floor = std::nullopt;    // [-] lining only: wall thickness as a multiple of the floor's
  std::optional<double> wall_height = std::nullopt;      // [m] lining only: above the pan's floor; default its depth
};

struct PressAnswer {
  double floor_thickness = 0.0;  // [m]
  double wall_thickness = 0.0;   // [m] at right angles to the wall; 0 unless a lining
  double wall_height = 0.0;      // [m] above the pan's floor; 0 unless a lining
  double coverage = 1.0;         // [-] of the floor, 0 to 1
  bool reaches_edges = true;
  bool thickness_was_given = false;
  double dough = 0.0;    // [m³] as asked, or as needed
  double needed = 0.0;   // [m³] what the given thickness takes; else the dough itself
  double left = 0.0;     // [m³] dough over
  double missing = 0.0;  // [m³] dough short
};

/// Solves how the dough lies in one cavity of `pan`. Thickness within 1e-9 of exact. Problem (place
/// "mass", "thickness", …) when the dough is more than the pan holds or two sizes contradict each other.
Result<PressAnswer> press_dough(const Pan& pan, const PressQuestion& question);

/// The extent of a loose slab that covers `coverage` (0–1) of the floor; round a ring's core it is a band.
struct SlabExtent {
  double length = 0.0;             // [m] keeping the floor's shape: the floor shrunk towards its middle
  double width = 0.0;              // [m]
  double length_full_width = 0.0;  // [m] pressed from one end at full width; 0 where that is no straight edge
};
SlabExtent slab_extent(const Pan& pan, double coverage);

}  // namespace tinwright
