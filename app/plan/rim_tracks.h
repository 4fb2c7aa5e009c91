// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Points round a pan's rim, and where each goes when the outline is moved inwards or outwards: loops with as many
// points at every inset, so that two of them span a wall. For drawing in three dimensions; figures come from areas
// alone.
#pragma once

#include <vector>

#include "geometry/outline.h"

namespace tinwright {

class RimTracks {
 public:
  /// About `points` points (more where the outline needs them), followed inwards as far as `deepest` [m].
  RimTracks(const Outline& outline, double deepest, int points);

  /// The points at an inset up to the deepest [m], counter-clockwise about the rim's own middle; beyond where the
  /// outline closes, where it does. Below 0: outside the rim.
  Loop at(double inset) const;

  /// Insets between which every point moves straight, or nearly so; in rising order.
  const std::vector<double>& bends() const { return bends_; }

  /// [-] Cosine of the angle from which two walls side by side meet in an edge one sees.
  double edge_cosine() const { return edge_cosine_; }

  /// Whether every loop can be seen whole from its middle.
  bool is_star() const { return followed_.empty(); }

 private:
  void follow_freeform(const Freeform& freeform, double deepest, int points);

  const Outline* outline_;
  int points_;
  std::vector<double> bends_;
  double edge_cosine_ = 0.75;
  // Freeform only.
  Loop outwards_;               // [-] the way of each point per inset outside the rim
  std::vector<Loop> followed_;  // at 0 and at each bend [m]
};

}  // namespace tinwright
