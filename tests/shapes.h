// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Short ways to say a pan in tests. All sizes in metres.
#pragma once

#include <doctest/doctest.h>

#include <cmath>

#include "geometry/pan.h"

namespace tinwright::shapes {

/// A pan that has to be possible.
inline Pan pan(const OutlineShape& outline, const WallShape& wall) {
  PanShape shape;
  shape.outline = outline;
  shape.wall = wall;
  const auto made = make_pan(shape);
  REQUIRE(static_cast<bool>(made));
  return *made;
}

inline Pan ring(double outer, double inner, const WallShape& wall, double core_inset = 0.0) {
  PanShape shape;
  shape.outline = Round{outer};
  shape.wall = wall;
  shape.core = CoreShape{inner, core_inset};
  const auto made = make_pan(shape);
  REQUIRE(static_cast<bool>(made));
  return *made;
}

/// The area curve of an outline that has to be possible.
inline AreaCurve curve_of(const OutlineShape& shape) {
  const auto outline = make_outline(shape);
  REQUIRE(static_cast<bool>(outline));
  return outline->curve;
}

/// |a - b| as a share of b; doctest's Approx adds 1 to the scale, which would hide errors of small SI numbers.
inline double relative_error(double a, double b) {
  return std::abs(a - b) / std::abs(b);
}

}  // namespace tinwright::shapes
