// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See press.h.
#include "geometry/press.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "geometry/limits.h"
#include "geometry/lining.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

Problem more_than_fits(double dough, double most) {
  return {ProblemCode::kTooMuch,
          "that is " + std::to_string(std::llround(dough * 1e6)) + " ml of dough, and the pan takes at most " +
              std::to_string(std::llround(most * 1e6)) + " ml this way; use less, or a bigger pan",
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
                     "the wall is only " + mm_text(depth(pan)) + " high; press the dough up to that at most",
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
  answer.reaches_edges = dough >= needed - kVolumeTolerance;
  answer.coverage = answer.reaches_edges ? 1.0 : std::min(1.0, dough / on_floor);
  return answer;
}

Result<PressAnswer> press_floor(const Pan& pan, const PressQuestion& q) {
  if (q.thickness) {
    if (*q.thickness > depth(pan) + kLengthTolerance) {
      return Problem{ProblemCode::kImpossibleShape,
                     "the pan is only " + mm_text(depth(pan)) + " deep; the dough can be that thick at most",
                     "thickness"};
    }
    const double needed = volume(pan, std::min(*q.thickness, depth(pan)));
    return compare({.floor_thickness = *q.thickness}, q, needed, needed);
  }
  const auto thickness = fill_height(pan, *q.dough);
  if (!thickness) return more_than_fits(*q.dough, brim_volume(pan));
  return PressAnswer{.floor_thickness = *thickness, .dough = *q.dough, .needed = *q.dough};
}

Result<PressAnswer> press_slab(const Pan& pan, const PressQuestion& q) {
  const double on_floor = floor_area(pan) * *q.thickness;
  if (on_floor <= 0.0) {
    return Problem{ProblemCode::kImpossibleShape, "this pan has no flat floor for a slab", "pan"};
  }
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
    return compare({.floor_thickness = lining.floor, .wall_thickness = lining.wall, .wall_height = height}, q,
                   lining_volume(pan, lining), volume(pan, lining.floor));
  }
  const double dough = *q.dough;
  if (dough > most - kVolumeTolerance) return more_than_fits(dough, most);
  if (q.floor_thickness) {
    if (auto problem = thinner_than_crust(*q.floor_thickness, "floor_thickness")) return *problem;
    const double on_floor = volume(pan, *q.floor_thickness);
    if (dough <= on_floor) {  // nothing is left for the wall
      return PressAnswer{.floor_thickness = *q.floor_thickness,
                         .wall_height = height,
                         .coverage = dough / on_floor,
                         .reaches_edges = dough >= on_floor - kVolumeTolerance,
                         .dough = dough,
                         .needed = dough};
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
  const double inset = pan.wall.floor_inset();
  const double length = std::max(0.0, pan.outline.length - 2.0 * inset);
  const double width = std::max(0.0, pan.outline.width - 2.0 * inset);
  const double shrink = std::sqrt(std::clamp(coverage, 0.0, 1.0));
  SlabExtent extent{length * shrink, width * shrink, 0.0};
  if (std::holds_alternative<Rectangle>(pan.outline.shape)) {
    extent.length_full_width = floor_area(pan) * coverage / width;
    if (width > length) extent.length_full_width = floor_area(pan) * coverage / length;
  }
  return extent;
}

}  // namespace tinwright
