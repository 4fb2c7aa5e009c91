// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See lining.h.
#include "geometry/lining.h"

#include <algorithm>
#include <optional>

#include "geometry/checks.h"
#include "geometry/limits.h"
#include "geometry/offset_profile.h"

namespace tinwright {
namespace {

/// The part of `cavity` above the height where its walls have met; nothing when they meet all the way up.
std::optional<Pan> open_part(Pan cavity) {
  const double top = depth(cavity);
  if (rim_area(cavity) < kSmallestSize * kSmallestSize) return std::nullopt;
  if (!is_closed_at(cavity, 0.0)) return cavity;
  double closed = 0.0;
  double open = top;
  while (open - closed > kLengthTolerance) {
    const double middle = 0.5 * (closed + open);
    (is_closed_at(cavity, middle) ? closed : open) = middle;
  }
  if (top - open < kLengthTolerance) return std::nullopt;
  cavity.wall = cavity.wall.between(open, top);
  if (cavity.core) cavity.core->wall = cavity.core->wall.between(open, top);
  return cavity;
}

std::optional<Pan> cavity_of(const Pan& pan, const Lining& lining) {
  GEOMETRY_ASSERT(lining.floor >= 0.0 && lining.wall >= 0.0 && lining.height > 0.0);
  const double top = std::min(lining.height, depth(pan));
  if (lining.floor >= top - kLengthTolerance) return std::nullopt;
  Pan cavity = pan;
  cavity.wall = offset_profile(pan.wall, lining.wall, lining.floor, top);
  if (pan.core) cavity.core->wall = offset_profile(pan.core->wall, lining.wall, lining.floor, top);
  return open_part(cavity);
}

}  // namespace

Result<Pan> line_pan(const Pan& pan, const Lining& lining) {
  if (auto problem = check_size_or_zero(lining.floor, "lining's floor thickness", "lining.floor")) return *problem;
  if (auto problem = check_size_or_zero(lining.wall, "lining's wall thickness", "lining.wall")) return *problem;
  if (auto problem = check_size(lining.height, "lining's height", "lining.height")) return *problem;
  if (lining.height > depth(pan) + kLengthTolerance) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a crust " + mm_text(lining.height) + " high stands over the pan's rim; it can be at most " +
                       at_most_text(depth(pan)),
                   "lining.height"};
  }
  if (lining.floor >= lining.height - kLengthTolerance) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a floor " + mm_text(lining.floor) + " thick in a crust " + mm_text(lining.height) +
                       " high leaves nothing to fill; make the floor thinner or the crust higher",
                   "lining.floor"};
  }
  auto cavity = cavity_of(pan, lining);
  if (!cavity) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a wall lining " + mm_text(lining.wall) + " thick fills the whole pan; make it thinner",
                   "lining.wall"};
  }
  return *cavity;
}

double lining_volume(const Pan& pan, const Lining& lining) {
  const double all = volume(pan, std::min(lining.height, depth(pan)));
  const auto cavity = cavity_of(pan, lining);
  return cavity ? all - brim_volume(*cavity) : all;
}

}  // namespace tinwright
