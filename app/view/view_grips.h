// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The sizes of the single pan as grips on its drawings. How it is drawn stays as it was when a drag began, so that the
// line keeps under the finger; the figures follow at once.
#pragma once

#include "app/plan/grips.h"
#include "app/view/controls.h"

namespace tinwright::view {

/// What is being dragged: no part of the question.
struct GripLook {
  std::string held;  // key of the grip a finger is on; empty: none
  GripState from;    // as it stood when the drag began
  Bench before;      // likewise, to go back to where the finger came from
  long steps = 0;    // grows with every drag and key, so that each can be taken back by itself
  double px_per_m[3] = {},
         shown = 0.0;  // the scales then: of the cut, its edge, from above; and what of the edge is shown
};
enum class Drawn { kCut, kEdge, kAbove };

/// The single pan's drawings while they can be dragged.
class Grips {
 public:
  Grips(Bench& bench, const BenchAnswer& answer, GripLook& look) : bench_(bench), answer_(answer), look_(look) {}
  ~Grips();
  Grips(const Grips&) = delete;
  Grips& operator=(const Grips&) = delete;

  /// True once a size was moved.
  bool changed() const { return changed_; }
  bool is_holding() const { return !look_.held.empty(); }
  /// The scale [px/m] to draw at where `fitting` would fit: not larger than when the drag began.
  double scale(Drawn drawn, double fitting);
  /// The same for how much of the edge is shown [m].
  double shown(double fitting);

  /// Puts one on the drawing, its middle at that place of the content; `outwards` is the way it moves to be larger.
  enum class Way { kUp, kDown, kRight };
  void put(Key key, Grip grip, const std::string& aside, float x, float y, Way outwards, double px_per_m);

 private:
  Bench& bench_;
  const BenchAnswer& answer_;
  GripLook& look_;
  bool changed_ = false;
};

}  // namespace tinwright::view
