// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See pan.h.
#include "geometry/pan.h"

#include <algorithm>
#include <cmath>

#include "geometry/checks.h"
#include "geometry/limits.h"
#include "geometry/numerics.h"
#include "geometry/sweep.h"

namespace tinwright {
namespace {

/// Wall and core of a ring share the room between them: the core's wall for each kind of pan wall.
Result<Core> make_core(const PanShape& shape, double outer_diameter) {
  const CoreShape& core = *shape.core;
  if (auto problem = check_size(core.diameter, "inner diameter", "outline.inner_diameter")) return *problem;
  if (auto problem = check_size_or_zero(core.inset, "core inset", "profile.core_inset")) return *problem;
  if (core.diameter >= outer_diameter - kSmallestSize) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a core of " + mm_text(core.diameter) + " leaves no room in the ring; its diameter can be at most " +
                       at_most_text(outer_diameter - kSmallestSize),
                   "outline.inner_diameter"};
  }
  auto outline = make_outline(Round{core.diameter});
  if (!outline) return outline.problem();

  const double gap = 0.5 * (outer_diameter - core.diameter);
  WallShape wall = shape.wall;
  if (auto* straight = std::get_if<StraightWall>(&wall)) {
    straight->base_inset = core.inset;
  } else if (auto* stepped = std::get_if<SteppedWall>(&wall)) {
    if (!stepped->points.empty()) wall = StraightWall{stepped->points.back().x, core.inset, 0.0};
  } else if (core.inset > 0.0) {
    return Problem{ProblemCode::kContradiction, "a bowl's arc shapes the core too; leave the core inset out",
                   "profile.core_inset"};
  }
  const double reach = std::holds_alternative<BowlWall>(wall) ? 0.5 * gap : gap;
  auto profile = make_profile(wall, reach);
  if (!profile) {
    Problem problem = profile.problem();
    if (problem.place == "profile.base_inset") problem.place = "profile.core_inset";
    return problem;
  }
  return Core{*outline, *profile};
}

/// Wall and core come towards each other by more than the room between them.
Problem no_room_between_walls(const Pan& pan, const PanShape& shape) {
  const double gap = ring_gap(pan);
  const auto* straight = std::get_if<StraightWall>(&shape.wall);
  const double run = straight != nullptr ? straight->base_inset : pan.wall.floor_inset();
  if (straight != nullptr && straight->floor_radius > 0.0 && run + shape.core->inset < gap) {
    const double rounding = pan.wall.floor_inset() - run + pan.core->wall.floor_inset() - shape.core->inset;
    return {ProblemCode::kImpossibleShape,
            "a floor corner rounded by " + mm_text(straight->floor_radius) +
                " on both sides leaves no floor between wall and core; it can be at most " +
                at_most_text((gap - run - shape.core->inset) * straight->floor_radius / rounding),
            "profile.floor_radius"};
  }
  return {ProblemCode::kImpossibleShape,
          "wall and core of the ring meet before the floor; together they can come in at most " + at_most_text(gap),
          shape.core->inset > 0.0 ? "profile.core_inset"
          : straight != nullptr   ? "profile.base_inset"
                                  : "profile.points"};
}

}  // namespace

Result<Pan> make_pan(const PanShape& shape) {
  if (shape.count < 1 || shape.count > kMostCavities) {
    return Problem{ProblemCode::kOutOfRange, "a tin has 1 to 400 cavities", "count"};
  }
  auto outline = make_outline(shape.outline);
  if (!outline) return outline.problem();

  Pan pan;
  pan.outline = *outline;
  pan.material = shape.material;
  pan.bottomless = shape.bottomless;
  pan.count = shape.count;
  double reach = pan.outline.curve.closes_at();
  if (shape.core) {
    const Round* round = std::get_if<Round>(&shape.outline);
    GEOMETRY_ASSERT(round != nullptr);
    auto core = make_core(shape, round->diameter);
    if (!core) return core.problem();
    reach -= 0.5 * shape.core->diameter;
    if (std::holds_alternative<BowlWall>(shape.wall)) reach *= 0.5;
    pan.core = *core;
  }
  auto wall = make_profile(shape.wall, reach);
  if (!wall) return wall.problem();
  pan.wall = *wall;
  if (pan.core && pan.wall.floor_inset() + pan.core->wall.floor_inset() > ring_gap(pan) + kLengthTolerance) {
    return no_room_between_walls(pan, shape);
  }
  if (pan.bottomless && floor_area(pan) <= 0.0) {
    return Problem{ProblemCode::kContradiction, "a pan that closes at the bottom cannot be a ring without one",
                   "bottomless"};
  }
  return pan;
}

double depth(const Pan& pan) {
  return pan.wall.depth();
}

double volume(const Pan& pan, double height) {
  GEOMETRY_ASSERT(height >= 0.0 && height <= depth(pan) + kLengthTolerance);
  double inside = swept_volume(pan.outline.curve, pan.wall, Lean::kInwards, height);
  if (pan.core) inside -= swept_volume(pan.core->outline.curve, pan.core->wall, Lean::kOutwards, height);
  return std::max(0.0, inside);
}

double brim_volume(const Pan& pan) {
  return volume(pan, depth(pan));
}

double wall_area(const Pan& pan, double height) {
  double area = swept_surface(pan.outline.curve, pan.wall, Lean::kInwards, height);
  if (pan.core) area += swept_surface(pan.core->outline.curve, pan.core->wall, Lean::kOutwards, height);
  return area;
}

double surface_area(const Pan& pan, double height) {
  double area = pan.outline.curve.area(pan.wall.inset(height));
  if (pan.core) area -= pan.core->outline.curve.area(-pan.core->wall.inset(height));
  return std::max(0.0, area);
}

double floor_area(const Pan& pan) {
  if (is_closed_at(pan, 0.0)) return 0.0;
  double area = pan.outline.curve.area(pan.wall.floor_inset());
  if (pan.core) area -= pan.core->outline.curve.area(-pan.core->wall.floor_inset());
  return std::max(0.0, area);
}

double rim_area(const Pan& pan) {
  double area = pan.outline.curve.area(pan.wall.top_inset());
  if (pan.core) area -= pan.core->outline.curve.area(-pan.core->wall.top_inset());
  return std::max(0.0, area);
}

Result<double> fill_height(const Pan& pan, double filling) {
  if (!std::isfinite(filling)) return Problem{ProblemCode::kNotANumber, "the amount is not a number", "volume"};
  if (filling < 0.0) return Problem{ProblemCode::kOutOfRange, "the amount cannot be less than nothing", "volume"};
  const double most = brim_volume(pan);
  if (filling > most * (1.0 + kAmountTolerance)) {
    const long long over_ml = std::max(1LL, std::llround((filling - most) * 1e6));
    return Problem{ProblemCode::kTooMuch, "that is " + std::to_string(over_ml) + " ml more than it holds", "volume"};
  }
  if (filling >= most) return depth(pan);
  return find_root([&](double h) { return volume(pan, h) - filling; }, 0.0, depth(pan));
}

double ring_gap(const Pan& pan) {
  return 0.5 * (pan.outline.length - pan.core->outline.length);
}

bool is_closed_at(const Pan& pan, double height) {
  const double inset = pan.wall.inset(height);
  if (!pan.core) return inset >= pan.outline.curve.closes_at() - kLengthTolerance;
  const double gap = ring_gap(pan);
  return inset + pan.core->wall.inset(height) >= gap - kLengthTolerance;
}

}  // namespace tinwright
