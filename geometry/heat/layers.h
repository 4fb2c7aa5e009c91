// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The layers both kinds of grid are made of. Each layer is upright and stands where the slanted wall is on average, so
// that its volume is exact; neighbours are shifted against each other, and heat passes between them where they overlap.
// No cell is ever cut.
#pragma once

#include <vector>

#include "geometry/heat/grid.h"

namespace tinwright {

/// Where the cells of a stretch are finer: heat comes in there.
enum class Finer { kNowhere, kAtStart, kAtBothEnds };

/// A stretch of one layer, going inwards from the rim line: [from, to] in inset [m], of one part, in `cells` cells.
struct Stretch {
  double from = 0.0, to = 0.0;
  Part part = Part::kFill;
  int cells = 1;
  Finer finer = Finer::kNowhere;
  double from_lean = 0.0, to_lean = 0.0;  // [-] how far each end runs inwards for each metre down
};

/// Bound `i` of `count` cells over [from, to].
double graded(double from, double to, int i, int count, Finer finer);

/// [-] Walls that lean further, as near the bottom of a bowl, are treated as leaning so much: what they add is stiff
/// and small.
inline constexpr double kFurthestLean = 2.0;

struct Layer {
  double z0 = 0.0, z1 = 0.0;  // [m] above the pan's floor
  std::vector<Stretch>
      stretches;  // from the wall inwards; the last ends at the middle, at the core, or at the crust's inside
  bool reaches_middle = true;  // false for a crust above the filling
  double height() const { return z1 - z0; }
};

/// What make_layers works from: profiles of the bare pan and of the cavity, both by height above the pan's floor.
struct LayerPlan {
  std::vector<Layer> layers;  // upwards
  double fill_top = 0.0;      // [m] above the pan's floor
  double cavity_floor = 0.0;  // [m]; 0 without a lining
  Pan cavity;                 // the pan itself without a lining
};

Result<LayerPlan> make_layers(const FilledPan& asked, const GridFineness& fineness);

/// One cell of a layer, going inwards. A crust above the filling leaves a gap between two of them.
struct Ring {
  double from = 0.0, to = 0.0;  // [m] inset
  Part part = Part::kFill;
  double lean = 0.0;  // [-] of `from`: how far it runs inwards for each metre down
  double width() const { return to - from; }
};
std::vector<Ring> rings_of(const Layer& layer);

}  // namespace tinwright
