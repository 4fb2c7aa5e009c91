// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See press.h.
#include "geometry/press.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include <glm/common.hpp>

#include "geometry/limits.h"
#include "geometry/lining.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

Problem more_than_fits(const Pan& pan, double dough, double most) {
  const long long over = std::max(1LL, std::llround(pan.count * (dough - most) * 1e6));
  return {ProblemCode::kTooMuch,
          "that is " + std::to_string(over) + " ml more dough than the pan takes this way; use less, or a bigger pan",
          "mass"};
}

std::optional<Problem> check_question(const Pan& pan, const PressQuestion& q) {
  if (!q.dough && !q.thickness) {
    return Problem{ProblemCode::kMissing, "say how much dough there is, or how thick it is to be", "mass"};
  }
  if (q.dough && !std::isfinite(*q.dough)) {
    return Problem{ProblemCode::kNotANumber, "the amount of dough is not a number", "mass"};
  }
  if (q.dough && *q.dough <= 0.0) return Problem{ProblemCode::kOutOfRange, "there has to be some dough", "mass"};
  if (q.thickness) {
    if (auto problem = check_size(*q.thickness, "thickness", "thickness")) return problem;
  }
  if (q.floor_thickness) {
    if (auto problem = check_size(*q.floor_thickness, "floor thickness", "floor_thickness")) return problem;
  }
  if (q.wall_to_floor && !(std::isfinite(*q.wall_to_floor) && *q.wall_to_floor > 0.0 && *q.wall_to_floor <= 20.0)) {
    return Problem{ProblemCode::kOutOfRange, "the wall's share of the floor's thickness is between 0 and 20",
                   "wall_to_floor"};
  }
  const int given = q.thickness.has_value() + q.floor_thickness.has_value() + q.wall_to_floor.has_value();
  if (given > 1) {
    return Problem{ProblemCode::kContradiction, "give one of thickness, floor thickness and wall share, not several",
                   "thickness"};
  }
  if (q.cover != Cover::kFloorAndWall && (q.floor_thickness || q.wall_to_floor || q.wall_height)) {
    return Problem{ProblemCode::kContradiction,
                   "floor thickness, wall share and wall height belong to a lining; press "
                   "over floor_and_wall, or leave them out",
                   q.wall_height       ? "wall_height"
                   : q.floor_thickness ? "floor_thickness"
                                       : "wall_to_floor"};
  }
  if (q.cover == Cover::kSlab && !q.thickness) {
    return Problem{ProblemCode::kMissing, "a slab needs the thickness it is pressed to, like 1/4 in", "thickness"};
  }
  if (q.wall_height) {
    if (auto problem = check_size(*q.wall_height, "wall height", "wall_height")) return problem;
    if (*q.wall_height > depth(pan) + kLengthTolerance) {
      return Problem{ProblemCode::kImpossibleShape,
                     "the wall is lower than that; the dough can go up to " + at_most_text(depth(pan)) + " at most",
                     "wall_height"};
    }
  }
  return std::nullopt;
}

/// Answers the question where a thickness was given, from what it takes and what the floor's share of it is.
PressAnswer compare(PressAnswer answer, const PressQuestion& q, double needed, double on_floor) {
  const double dough = q.dough.value_or(needed);
  answer.dough = dough;
  answer.thickness_was_given = true;
  answer.needed = needed;
  answer.left = std::max(0.0, dough - needed);
  answer.missing = std::max(0.0, needed - dough);
  answer.reaches_edges = dough >= needed * (1.0 - kAmountTolerance);
  if (answer.reaches_edges) answer.missing = 0.0;
  answer.coverage = answer.reaches_edges ? 1.0 : std::min(1.0, dough / on_floor);
  return answer;
}

std::optional<Problem> thicker_than_deep(const Pan& pan, double thickness) {
  if (thickness <= depth(pan) + kLengthTolerance) return std::nullopt;
  return Problem{
      ProblemCode::kImpossibleShape,
      "dough " + mm_text(thickness) + " thick stands over the rim; it can be at most " + at_most_text(depth(pan)),
      "thickness"};
}

Result<PressAnswer> press_floor(const Pan& pan, const PressQuestion& q) {
  if (q.thickness) {
    if (auto problem = thicker_than_deep(pan, *q.thickness)) return *problem;
    const double needed = volume(pan, std::min(*q.thickness, depth(pan)));
    return compare({.floor_thickness = *q.thickness}, q, needed, needed);
  }
  const auto thickness = fill_height(pan, *q.dough);
  if (!thickness) return more_than_fits(pan, *q.dough, brim_volume(pan));
  return PressAnswer{.floor_thickness = *thickness, .dough = *q.dough, .needed = *q.dough};
}

Result<PressAnswer> press_slab(const Pan& pan, const PressQuestion& q) {
  const double on_floor = floor_area(pan) * *q.thickness;
  if (on_floor <= 0.0) {
    return Problem{ProblemCode::kImpossibleShape, "this pan has no flat floor for a slab", "pan"};
  }
  if (auto problem = thicker_than_deep(pan, *q.thickness)) return *problem;
  return compare({.floor_thickness = *q.thickness}, q, on_floor, on_floor);
}

/// The lining the question asks for at a trial thickness t, which stands for whatever is being solved.
Lining trial(const PressQuestion& q, double t, double height) {
  if (q.floor_thickness) return {*q.floor_thickness, t, height};
  return {t, q.wall_to_floor.value_or(1.0) * t, height};
}

Result<PressAnswer> press_lining(const Pan& pan, const PressQuestion& q) {
  const double height = std::min(q.wall_height.value_or(depth(pan)), depth(pan));
  const double most = volume(pan, height);
  const auto thinner_than_crust = [&](double floor, const std::string& place) -> std::optional<Problem> {
    if (floor < height - kLengthTolerance) return std::nullopt;
    return Problem{ProblemCode::kImpossibleShape,
                   "a floor " + mm_text(floor) + " thick is no lower than the crust's top at " + mm_text(height),
                   place};
  };
  if (q.thickness) {
    if (auto problem = thinner_than_crust(*q.thickness, "thickness")) return *problem;
    const Lining lining{*q.thickness, *q.thickness, height};
    if (!line_pan(pan, lining)) {
      return Problem{ProblemCode::kImpossibleShape,
                     "dough " + mm_text(*q.thickness) + " thick all round fills the whole pan; make it thinner",
                     "thickness"};
    }
    return compare({.floor_thickness = lining.floor, .wall_thickness = lining.wall, .wall_height = height}, q,
                   lining_volume(pan, lining), volume(pan, lining.floor));
  }
  const double dough = *q.dough;
  if (dough > most * (1.0 - kAmountTolerance)) return more_than_fits(pan, dough, most);
  if (q.floor_thickness) {
    if (auto problem = thinner_than_crust(*q.floor_thickness, "floor_thickness")) return *problem;
    const double on_floor = volume(pan, *q.floor_thickness);
    if (dough <= on_floor) {  // nothing is left for the wall
      return PressAnswer{.floor_thickness = *q.floor_thickness,
                         .wall_height = height,
                         .coverage = dough / on_floor,
                         .reaches_edges = dough >= on_floor * (1.0 - kAmountTolerance),
                         .dough = dough,
                         .needed = dough,
                         .missing = on_floor - dough};
    }
  }
  const double thickest =
      std::max(height, pan.outline.curve.closes_at()) / std::min(1.0, q.wall_to_floor.value_or(1.0));
  const double t = find_root([&](double x) { return lining_volume(pan, trial(q, x, height)) - dough; }, 0.0, thickest);
  const Lining lining = trial(q, t, height);
  return PressAnswer{.floor_thickness = lining.floor,
                     .wall_thickness = lining.wall,
                     .wall_height = height,
                     .dough = dough,
                     .needed = dough};
}

}  // namespace

Result<PressAnswer> press_dough(const Pan& pan, const PressQuestion& question) {
  if (auto problem = check_question(pan, question)) return *problem;
  switch (question.cover) {
    case Cover::kFloor:
      return press_floor(pan, question);
    case Cover::kSlab:
      return press_slab(pan, question);
    case Cover::kFloorAndWall:
      break;
  }
  return press_lining(pan, question);
}

SlabExtent slab_extent(const Pan& pan, double coverage) {
  const double covered = std::clamp(coverage, 0.0, 1.0) * floor_area(pan);
  if (pan.core) {  // a band round the core
    const double foot = 0.5 * pan.core->outline.length + pan.core->wall.floor_inset();
    const double across = 2.0 * std::sqrt(covered / std::numbers::pi + foot * foot);
    return {across, across, 0.0};
  }
  const double inset = pan.wall.floor_inset();
  glm::dvec2 low(std::numeric_limits<double>::infinity());
  glm::dvec2 high = -low;
  for (const Loop& loop : outline_loops(pan.outline, inset)) {
    for (const glm::dvec2 p : loop) {
      low = glm::min(low, p);
      high = glm::max(high, p);
    }
  }
  const double shrink = std::sqrt(std::clamp(coverage, 0.0, 1.0));
  SlabExtent extent{(high.x - low.x) * shrink, (high.y - low.y) * shrink, 0.0};
  if (const auto* rectangle = std::get_if<Rectangle>(&pan.outline.shape)) {
    // Pressed from one end, where two rounded corners take (2 - π/2) ρ² away.
    const double longer = std::max(rectangle->length, rectangle->width) - 2.0 * inset;
    const double shorter = std::min(rectangle->length, rectangle->width) - 2.0 * inset;
    const double corner = std::max(0.0, rectangle->corner_radius - inset);
    const double along = (covered + (2.0 - 0.5 * std::numbers::pi) * corner * corner) / shorter;
    if (along >= corner && along <= longer - corner) extent.length_full_width = along;
  }
  return extent;
}

}  // namespace tinwright
