// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See layers.h.
#include "geometry/heat/layers.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "geometry/limits.h"
#include "geometry/numerics.h"
#include "geometry/sweep.h"

namespace tinwright {
namespace {

/// [-] Cells at a finer end are 1 - this of the even size, those at the other end 1 + this.
constexpr double kGrading = 0.42;

/// The inset at which an upright layer between two heights has the volume of the slanted one.
double mean_inset(const AreaCurve& curve, const Profile& wall, Lean lean, double z0, double z1) {
  const double sign = lean == Lean::kInwards ? 1.0 : -1.0;
  const double low = wall.inset(z1);
  const double high = wall.inset(z0);
  if (high - low < kLengthTolerance) return 0.5 * (low + high);
  const double area = (swept_volume(curve, wall, lean, z1) - swept_volume(curve, wall, lean, z0)) / (z1 - z0);
  const auto excess = [&](double d) { return curve.area(sign * d) - area; };
  if ((excess(low) < 0.0) == (excess(high) < 0.0)) return 0.5 * (low + high);
  return find_root(excess, low, high);
}

/// Where the layer's walls stand: of the outline, and of a ring's core counted from the outline's rim.
struct Walls {
  double outer = 0.0, inner = 0.0;            // [m]
  double outer_lean = 0.0, inner_lean = 0.0;  // [-]
};

Walls walls_of(const Pan& pan, double z0, double z1) {
  const auto lean = [&](const Profile& wall) {
    return std::min(kFurthestLean, (wall.inset(z0) - wall.inset(z1)) / (z1 - z0));
  };
  Walls walls{.outer = mean_inset(pan.outline.curve, pan.wall, Lean::kInwards, z0, z1),
              .inner = pan.outline.curve.closes_at(),
              .outer_lean = lean(pan.wall),
              .inner_lean = 0.0};
  if (!pan.core) return walls;
  const double growth = mean_inset(pan.core->outline.curve, pan.core->wall, Lean::kOutwards, z0, z1);
  walls.inner = ring_gap(pan) - growth;
  walls.inner_lean = -lean(pan.core->wall);
  return walls;
}

/// Heights that cut [low, high] into `count` layers, appended to `lines` but for the first.
void add_lines(std::vector<double>& lines, double low, double high, int count, Finer finer) {
  for (int i = 1; i <= count; ++i) lines.push_back(graded(low, high, i, count, finer));
}

Layer make_layer(const FilledPan& filled, const LayerPlan& plan, double z0, double z1, const GridFineness& fine) {
  Layer layer{.z0 = z0, .z1 = z1, .stretches = {}};
  const double middle = 0.5 * (z0 + z1);
  const Finer finer = filled.pan.core ? Finer::kAtBothEnds : Finer::kAtStart;
  const Walls pan = walls_of(filled.pan, z0, z1);
  if (!filled.is_lined) {
    layer.stretches.push_back({pan.outer, pan.inner, Part::kFill, fine.across, finer, pan.outer_lean, pan.inner_lean});
    return layer;
  }
  if (middle < plan.cavity_floor) {
    layer.stretches.push_back({pan.outer, pan.inner, Part::kDough, fine.across, finer, pan.outer_lean, pan.inner_lean});
    return layer;
  }
  const Walls cavity = walls_of(plan.cavity, z0 - plan.cavity_floor, z1 - plan.cavity_floor);
  const bool has_wall = cavity.outer - pan.outer > kLengthTolerance;
  if (has_wall) {
    layer.stretches.push_back({pan.outer, cavity.outer, Part::kDough, fine.through_dough, Finer::kNowhere,
                               pan.outer_lean, cavity.outer_lean});
  }
  layer.reaches_middle = middle < plan.fill_top;
  if (layer.reaches_middle) {
    layer.stretches.push_back(
        {cavity.outer, cavity.inner, Part::kFill, fine.across, finer, cavity.outer_lean, cavity.inner_lean});
  }
  if (pan.inner - cavity.inner > kLengthTolerance) {
    layer.stretches.push_back({cavity.inner, pan.inner, Part::kDough, fine.through_dough, Finer::kNowhere,
                               cavity.inner_lean, pan.inner_lean});
  }
  return layer;
}

/// Dough too thin to have a temperature of its own counts as filling.
FilledPan without_films(FilledPan filled) {
  if (!filled.is_lined) return filled;
  if (filled.lining.wall < kSmallestSize) filled.lining.wall = 0.0;
  if (filled.lining.floor < kSmallestSize) {
    filled.fill_height += filled.lining.floor;
    filled.lining.floor = 0.0;
  }
  filled.is_lined = filled.lining.wall > 0.0 || filled.lining.floor > 0.0;
  return filled;
}

}  // namespace

double graded(double from, double to, int i, int count, Finer finer) {
  const double even = static_cast<double>(i) / count;
  double share = even;
  if (finer == Finer::kAtStart) share = even - kGrading * std::sin(std::numbers::pi * even) / std::numbers::pi;
  if (finer == Finer::kAtBothEnds) {
    share = even - kGrading * std::sin(2.0 * std::numbers::pi * even) / (2.0 * std::numbers::pi);
  }
  if (i == count) return to;
  return from + (to - from) * share;
}

Result<LayerPlan> make_layers(const FilledPan& asked, const GridFineness& fineness) {
  const FilledPan filled = without_films(asked);
  LayerPlan plan;
  plan.cavity = filled.pan;
  if (filled.is_lined) {
    auto cavity = line_pan(filled.pan, filled.lining);
    if (!cavity) return cavity.problem();
    plan.cavity = *cavity;
    plan.cavity_floor = filled.lining.height - depth(*cavity);
  }
  if (auto problem = check_size(filled.fill_height, "filling's height", "fill.height")) return *problem;
  if (filled.fill_height > depth(plan.cavity) + kLengthTolerance) {
    return Problem{ProblemCode::kTooMuch,
                   "a filling " + mm_text(filled.fill_height) + " high does not fit; it can be at most " +
                       at_most_text(depth(plan.cavity)),
                   "fill.height"};
  }
  plan.fill_top = std::min(plan.cavity_floor + filled.fill_height, plan.cavity_floor + depth(plan.cavity));
  const double food_top = filled.is_lined && filled.lining.wall > 0.0 ? filled.lining.height : plan.fill_top;

  std::vector<double> lines{0.0};
  if (plan.cavity_floor > 0.0) add_lines(lines, 0.0, plan.cavity_floor, fineness.through_dough, Finer::kNowhere);
  add_lines(lines, plan.cavity_floor, plan.fill_top, fineness.up, Finer::kAtBothEnds);
  const double collar = food_top - plan.fill_top;
  if (collar > kSmallestSize) {
    const double layer = (plan.fill_top - plan.cavity_floor) / fineness.up;
    add_lines(lines, plan.fill_top, food_top, std::clamp(static_cast<int>(collar / layer + 0.5), 1, fineness.up),
              Finer::kNowhere);
  }
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    plan.layers.push_back(make_layer(filled, plan, lines[i], lines[i + 1], fineness));
  }
  return plan;
}

std::vector<Ring> rings_of(const Layer& layer) {
  std::vector<Ring> rings;
  for (const Stretch& stretch : layer.stretches) {
    const auto bound = [&](int i) { return graded(stretch.from, stretch.to, i, stretch.cells, stretch.finer); };
    const double length = stretch.to - stretch.from;
    for (int i = 0; i < stretch.cells; ++i) {
      const double share = length > 0.0 ? (bound(i) - stretch.from) / length : 0.0;
      rings.push_back({bound(i), bound(i + 1), stretch.part, std::lerp(stretch.from_lean, stretch.to_lean, share)});
    }
  }
  return rings;
}

}  // namespace tinwright
