// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Smooth outlines made of mirror images of one half lobe: the oval (a quarter ellipse, four times) and the
// fluted rim (half a flute, 2n times). Moved inwards beyond the smallest radius of curvature their parallel
// curve folds over itself at the crest; what is left is the unfolded part, cut where it meets the mirror line.
// That cut is found exactly, so no polygon stands between the pan and its area.
#pragma once

#include <functional>
#include <vector>

#include <glm/vec2.hpp>

#include "geometry/area_curve.h"

namespace tinwright {

struct LobePoint {
  glm::dvec2 position;  // [m]
  glm::dvec2 first;     // derivative by the parameter
  glm::dvec2 second;    // second derivative by the parameter
};

/// One half lobe: parameter 0 is the crest, on the positive x axis, where curvature is greatest; `end` lies on the
/// next mirror line through the origin. `copies` of it make the whole outline. `closes_at` [m] is the distance
/// of the nearest point from the origin.
struct HalfLobe {
  std::function<LobePoint(double)> at;
  double end = 0.0;
  int copies = 0;
  double closes_at = 0.0;
};

HalfLobe oval_lobe(double half_length, double half_width);              // [m], half_length >= half_width
HalfLobe fluted_lobe(double diameter, int flutes, double flute_depth);  // [m]

/// Area and perimeter at every inset: exact by Steiner's formula up to the crest's radius of curvature, beyond it
/// interpolated to kAreaTolerance.
AreaCurve erode_lobes(const HalfLobe& lobe);

/// `count` points of one half lobe moved inwards by `inset`, from the crest's cut to the end. For drawing.
std::vector<glm::dvec2> lobe_points(const HalfLobe& lobe, double inset, int count);

/// The whole outline moved inwards: the half lobe of `count` points, its mirror image in the line at its end, and so on
/// round the origin; copies * (count - 1) points.
std::vector<glm::dvec2> lobe_loop(const HalfLobe& lobe, double inset, int count);

}  // namespace tinwright
