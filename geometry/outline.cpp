// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See outline.h. Areas of moved outlines: Steiner's formula for parallel curves (Santaló, Integral Geometry and
// Geometric Probability, I.1), elementary for polygons.
#include "geometry/outline.h"

#include <cmath>
#include <numbers>
#include <string>

#include "geometry/freeform.h"
#include "geometry/limits.h"
#include "geometry/lobes.h"

namespace tinwright {
namespace {

using std::numbers::pi;

constexpr int kFewestSides = 3;
constexpr int kMostSides = 60;
constexpr int kMostFlutes = 200;
constexpr int kRoundPoints = 480;     // of a whole loop made of lobes
constexpr int kFewestLobePoints = 9;  // of half a flute
constexpr int kArcPoints = 24;

Result<Outline> make(const Round& round) {
  if (auto problem = check_size(round.diameter, "diameter", "outline.diameter")) return *problem;
  const double r = 0.5 * round.diameter;
  return Outline{round, AreaCurve({{0.0, pi * r * r, -2.0 * pi * r, pi, 0.0}}, r), round.diameter, round.diameter};
}

Result<Outline> make(const Rectangle& rectangle) {
  const auto& [a, b, c] = rectangle;
  if (auto problem = check_size(a, "length", "outline.length")) return *problem;
  if (auto problem = check_size(b, "width", "outline.width")) return *problem;
  if (auto problem = check_size_or_zero(c, "corner radius", "outline.corner_radius")) return *problem;
  const double half = 0.5 * std::min(a, b);
  if (c > half + kLengthTolerance) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a corner radius of " + mm_text(c) + " does not fit a side of " + mm_text(2.0 * half) +
                       "; it can be at most half the shorter side, " + at_most_text(half),
                   "outline.corner_radius"};
  }
  std::vector<AreaCurve::Piece> pieces;
  if (c > 0.0) {
    pieces.push_back({0.0, a * b - (4.0 - pi) * c * c, -(2.0 * (a + b) - 2.0 * (4.0 - pi) * c), pi, 0.0});
  }
  if (c < half) {
    const double a1 = a - 2.0 * c;
    const double b1 = b - 2.0 * c;
    pieces.push_back({c, a1 * b1, -2.0 * (a1 + b1), 4.0, 0.0});
  }
  return Outline{rectangle, AreaCurve(pieces, half), a, b};
}

Result<Outline> make(const Oval& oval) {
  if (auto problem = check_size(oval.length, "length", "outline.length")) return *problem;
  if (auto problem = check_size(oval.width, "width", "outline.width")) return *problem;
  const double longer = std::max(oval.length, oval.width);
  const double shorter = std::min(oval.length, oval.width);
  return Outline{oval, erode_lobes(oval_lobe(0.5 * longer, 0.5 * shorter)), oval.length, oval.width};
}

Result<Outline> make(const RegularPolygon& polygon) {
  if (polygon.sides < kFewestSides || polygon.sides > kMostSides) {
    return Problem{ProblemCode::kOutOfRange, "a pan with straight sides has 3 to 60 of them", "outline.sides"};
  }
  if (auto problem = check_size(polygon.across_flats, "size across the flats", "outline.across_flats")) {
    return *problem;
  }
  const double r = 0.5 * polygon.across_flats;
  const double area_per_r2 = polygon.sides * std::tan(pi / polygon.sides);
  Outline outline{polygon, AreaCurve({{0.0, area_per_r2 * r * r, -2.0 * area_per_r2 * r, area_per_r2, 0.0}}, r), 0, 0};
  double left = 0, right = 0, low = 0, high = 0;
  const auto rim = outline_loops(outline, 0.0);
  for (const glm::dvec2 p : rim.front()) {
    left = std::min(left, p.x);
    right = std::max(right, p.x);
    low = std::min(low, p.y);
    high = std::max(high, p.y);
  }
  outline.length = right - left;
  outline.width = high - low;
  return outline;
}

Result<Outline> make(const Fluted& fluted) {
  if (auto problem = check_size(fluted.diameter, "diameter", "outline.diameter")) return *problem;
  if (auto problem = check_size(fluted.flute_depth, "flute depth", "outline.flute_depth")) return *problem;
  if (fluted.flutes < kFewestSides || fluted.flutes > kMostFlutes) {
    return Problem{ProblemCode::kOutOfRange, "a fluted rim has 3 to 200 flutes", "outline.flutes"};
  }
  if (fluted.flute_depth > 0.25 * fluted.diameter) {
    return Problem{ProblemCode::kImpossibleShape,
                   "flutes " + mm_text(fluted.flute_depth) + " deep leave no pan of " + mm_text(fluted.diameter) +
                       "; they can be at most a quarter of the diameter, " + at_most_text(0.25 * fluted.diameter),
                   "outline.flute_depth"};
  }
  const AreaCurve curve = erode_lobes(fluted_lobe(fluted.diameter, fluted.flutes, fluted.flute_depth));
  return Outline{fluted, curve, fluted.diameter, fluted.diameter};
}

Result<Outline> make(const Freeform& freeform) {
  return make_freeform(freeform);
}

void add_arc(Loop& loop, glm::dvec2 centre, double radius, double from, double to, int points) {
  for (int i = 0; i < points; ++i) {
    const double angle = from + (to - from) * i / (points - 1);
    loop.push_back(centre + radius * glm::dvec2(std::cos(angle), std::sin(angle)));
  }
}

Loop whole_loop(const HalfLobe& lobe, double inset) {
  return lobe_loop(lobe, inset, std::max(kFewestLobePoints, kRoundPoints / lobe.copies));
}

Loops loops(const Round& round, double inset) {
  Loop loop;
  add_arc(loop, {0, 0}, 0.5 * round.diameter - inset, 0.0, 2.0 * pi * (1.0 - 1.0 / 180), 180);
  return {loop};
}

Loops loops(const Rectangle& rectangle, double inset) {
  const double x = 0.5 * rectangle.length - inset;
  const double y = 0.5 * rectangle.width - inset;
  const double r = std::max(0.0, rectangle.corner_radius - inset);
  if (r == 0.0) return {{{x, y}, {-x, y}, {-x, -y}, {x, -y}}};
  Loop loop;
  add_arc(loop, {x - r, y - r}, r, 0.0, 0.5 * pi, kArcPoints);
  add_arc(loop, {r - x, y - r}, r, 0.5 * pi, pi, kArcPoints);
  add_arc(loop, {r - x, r - y}, r, pi, 1.5 * pi, kArcPoints);
  add_arc(loop, {x - r, r - y}, r, 1.5 * pi, 2.0 * pi, kArcPoints);
  return {loop};
}

Loops loops(const Oval& oval, double inset) {
  const bool lies_along_x = oval.length >= oval.width;
  const double a = 0.5 * std::max(oval.length, oval.width);
  const double b = 0.5 * std::min(oval.length, oval.width);
  Loop loop = whole_loop(oval_lobe(a, b), inset);
  if (!lies_along_x) {
    for (glm::dvec2& p : loop) p = glm::dvec2(-p.y, p.x);
  }
  return {loop};
}

Loops loops(const RegularPolygon& polygon, double inset) {
  const double corner = (0.5 * polygon.across_flats - inset) / std::cos(pi / polygon.sides);
  Loop loop;
  for (int i = 0; i < polygon.sides; ++i) {
    const double angle = -0.5 * pi + (2 * i + 1) * pi / polygon.sides;  // one flat faces the cook
    loop.emplace_back(corner * std::cos(angle), corner * std::sin(angle));
  }
  return {loop};
}

Loops loops(const Fluted& fluted, double inset) {
  return {whole_loop(fluted_lobe(fluted.diameter, fluted.flutes, fluted.flute_depth), inset)};
}

Loops loops(const Freeform& freeform, double inset) {
  return freeform_loops(freeform, inset);
}

}  // namespace

Result<Outline> make_outline(const OutlineShape& shape) {
  return std::visit([](const auto& s) { return make(s); }, shape);
}

Loops outline_loops(const Outline& outline, double inset) {
  if (inset >= outline.curve.closes_at()) return {};
  return std::visit([&](const auto& s) { return loops(s, inset); }, outline.shape);
}

}  // namespace tinwright
