// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is left of a polygon moved inwards by d: every point at least d from all sides. Its border consists of
// parts of the sides' parallel lines and of arcs about the inward corners; which parts, follows from taking away,
// on each line and arc, whatever lies nearer than d to another side. No topology is built, no arc is cut into
// chords: area and length are exact to rounding.
#pragma once

#include <vector>

#include <glm/vec2.hpp>

#include "geometry/area_curve.h"

namespace tinwright {

/// One part of the border, interior on its left. Straight when radius is 0, else an arc about `centre` from
/// `angle0` down to `angle1` [rad] (clockwise: it bulges into the area that is left).
struct BorderPart {
  glm::dvec2 from, to;
  double radius = 0.0;
  glm::dvec2 centre;
  double angle0 = 0.0, angle1 = 0.0;
};

/// Border of the polygon with `corners` (counter-clockwise, simple) moved inwards by `inset` > 0 [m]; empty when
/// nothing is left. Time grows with the square of the number of corners.
std::vector<BorderPart> eroded_border(const std::vector<glm::dvec2>& corners, double inset);

/// Area and length enclosed by a border (Green's theorem).
AreaCurve::Sample measure_border(const std::vector<BorderPart>& border, double inset);

/// The border joined into closed loops, arcs in chords, for drawing.
std::vector<std::vector<glm::dvec2>> border_loops(std::vector<BorderPart> border);

}  // namespace tinwright
