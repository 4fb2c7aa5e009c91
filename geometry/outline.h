// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The closed line of a pan's rim seen from above, by inside sizes. make_outline checks the sizes and works out
// how its area shrinks inwards (AreaCurve); nothing else in the project needs to know the shape.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include <glm/vec2.hpp>

#include "geometry/area_curve.h"
#include "geometry/problem.h"

namespace tinwright {

struct Round {
  double diameter = 0.0;  // [m]
};

struct Rectangle {
  double length = 0.0;         // [m] along x
  double width = 0.0;          // [m] along y
  double corner_radius = 0.0;  // [m] up to half the shorter side
};

/// An ellipse.
struct Oval {
  double length = 0.0;  // [m] along x
  double width = 0.0;   // [m] along y
};

struct RegularPolygon {
  int sides = 0;              // 3 to 60
  double across_flats = 0.0;  // [m] twice the radius of the inscribed circle
};

/// r(θ) = D/2 - a/2 + (a/2) cos nθ: the diameter is the largest one, the flute depth runs from crest to hollow.
struct Fluted {
  double diameter = 0.0;     // [m] D
  int flutes = 0;            // n, 3 to 200
  double flute_depth = 0.0;  // [m] a, at most a quarter of D
};

/// Straight sides between measured corners, in either direction round; must not cross itself.
struct Freeform {
  std::vector<glm::dvec2> corners;  // [m]
};

/// A closed line: its last point joins its first. [m]
using Loop = std::vector<glm::dvec2>;
using Loops = std::vector<Loop>;

using OutlineShape = std::variant<Round, Rectangle, Oval, RegularPolygon, Fluted, Freeform>;

struct Outline {
  OutlineShape shape;
  AreaCurve curve;
  double length = 0.0;  // [m] extent along x at the rim
  double width = 0.0;   // [m] extent along y at the rim
};

/// The outline, or what is wrong with its sizes (place "outline.<field>").
Result<Outline> make_outline(const OutlineShape& shape);

/// The closed loops left after moving the outline inwards by `inset` [m], centred on the rim's own middle, for
/// drawing: [m], counter-clockwise, curves in chords of at most about 1/200 of the length. Empty when closed.
Loops outline_loops(const Outline& outline, double inset);

}  // namespace tinwright
