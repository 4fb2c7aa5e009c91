// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See freeform.h.
#include "geometry/freeform.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include <glm/common.hpp>
#include <glm/geometric.hpp>

#include "geometry/erosion.h"
#include "geometry/limits.h"
#include "geometry/plane.h"
#include "geometry/polygon_erosion.h"

namespace tinwright {
namespace {

using glm::dvec2;
double signed_area(const Loop& corners) {
  double twice = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    twice += cross(corners[i] - corners[0], corners[(i + 1) % corners.size()] - corners[0]);
  }
  return 0.5 * twice;
}

double distance_to_side(dvec2 p, dvec2 a, dvec2 b) {
  const double share = std::clamp(glm::dot(p - a, b - a) / glm::dot(b - a, b - a), 0.0, 1.0);
  return glm::distance(p, glm::mix(a, b, share));
}

/// Whether sides ab and cd cross, or come nearer than any two sides of a real pan. Corners that lie on the other side's
/// line, to rounding, do not count as beyond it: the distance decides.
bool touch(dvec2 a, dvec2 b, dvec2 c, dvec2 d) {
  const auto beyond = [](dvec2 from, dvec2 to, dvec2 p) {
    const double off = cross(to - from, p - from) / glm::distance(from, to);
    return std::abs(off) < kLengthTolerance ? 0 : off > 0.0 ? 1 : -1;
  };
  if (beyond(a, b, c) * beyond(a, b, d) < 0 && beyond(c, d, a) * beyond(c, d, b) < 0) return true;
  const double nearest = std::min(std::min(distance_to_side(a, c, d), distance_to_side(b, c, d)),
                                  std::min(distance_to_side(c, a, b), distance_to_side(d, a, b)));
  return nearest < kLengthTolerance;
}

bool crosses_itself(const Loop& corners) {
  const std::size_t n = corners.size();
  const auto corner = [&](std::size_t i) { return corners[i % n]; };
  for (std::size_t i = 0; i < n; ++i) {
    if (distance_to_side(corner(i + 2), corner(i), corner(i + 1)) < kLengthTolerance ||
        distance_to_side(corner(i), corner(i + 1), corner(i + 2)) < kLengthTolerance) {
      return true;  // the side runs back along its neighbour
    }
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j == n - 1) continue;
      if (touch(corner(i), corner(i + 1), corner(j), corner(j + 1))) return true;
    }
  }
  return false;
}

/// Without repeated corners, about the middle of the extent.
Loop tidied(const Loop& corners, dvec2 middle) {
  Loop tidy;
  for (const dvec2 p : corners) {
    if (tidy.empty() || glm::distance(p - middle, tidy.back()) > kLengthTolerance) tidy.push_back(p - middle);
  }
  while (tidy.size() > 1 && glm::distance(tidy.front(), tidy.back()) <= kLengthTolerance) tidy.pop_back();
  return tidy;
}

AreaCurve measure_curve(const Loop& corners) {
  const auto measure = [&](double inset) { return measure_border(eroded_border(corners, inset), inset); };
  AreaCurve::Sample rim{0.0, signed_area(corners), 0.0};
  for (std::size_t i = 0; i < corners.size(); ++i) {
    rim.perimeter += glm::distance(corners[i], corners[(i + 1) % corners.size()]);
  }
  double open = 0.0;
  double closed = 1.001 * std::sqrt(rim.area / std::numbers::pi);
  while (closed - open > 1e-12 * closed) {
    const double middle = 0.5 * (open + closed);
    (eroded_border(corners, middle).empty() ? closed : open) = middle;
    if (middle == open && middle == closed) break;
  }
  AreaCurve::Sample last = measure(open * (1.0 - 1e-9));
  last.inset = open;
  last.area = 0.0;
  AreaCurve curve;
  append_measured(curve, measure, rim, rim, last);
  return curve;
}

}  // namespace

Result<Outline> make_freeform(const Freeform& freeform) {
  const std::string place = "outline.points";
  if (freeform.corners.size() < 3) {
    return Problem{ProblemCode::kMissing, "a freeform outline needs at least 3 corners", place};
  }
  if (freeform.corners.size() > kMostCorners) {
    return Problem{ProblemCode::kOutOfRange, "a freeform outline can have at most 200 corners", place};
  }
  dvec2 low = freeform.corners.front();
  dvec2 high = low;
  for (const dvec2 p : freeform.corners) {
    if (!std::isfinite(p.x) || !std::isfinite(p.y)) {
      return Problem{ProblemCode::kNotANumber, "a corner is not a number", place};
    }
    low = glm::min(low, p);
    high = glm::max(high, p);
  }
  const dvec2 extent = high - low;
  if (auto problem = check_size(extent.x, "outline's extent to the side", place)) return *problem;
  if (auto problem = check_size(extent.y, "outline's extent to the back", place)) return *problem;

  Freeform tidy{tidied(freeform.corners, 0.5 * (low + high))};
  if (tidy.corners.size() < 3 || crosses_itself(tidy.corners) ||
      std::abs(signed_area(tidy.corners)) < kSmallestSize * kSmallestSize) {
    return Problem{ProblemCode::kImpossibleShape,
                   "the sides cross or touch each other, or enclose nothing; give the corners in order round the rim",
                   place};
  }
  if (signed_area(tidy.corners) < 0.0) std::reverse(tidy.corners.begin(), tidy.corners.end());
  return Outline{tidy, measure_curve(tidy.corners), extent.x, extent.y};
}

Loops freeform_loops(const Freeform& freeform, double inset) {
  if (inset <= 0.0) return {freeform.corners};
  return border_loops(eroded_border(freeform.corners, inset));
}

}  // namespace tinwright
