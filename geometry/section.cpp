// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See section.h.
#include "geometry/section.h"

#include <algorithm>
#include <cmath>

namespace tinwright {
namespace {

constexpr int kArcSteps = 30;

}  // namespace

Loop wall_line(const Profile& wall, double height) {
  Loop line;
  for (const WallPiece& piece : wall.pieces()) {
    if (piece.z0 >= height) break;
    const double top = std::min(piece.z1, height);
    const int steps = piece.is_arc() ? kArcSteps : 1;
    for (int i = 0; i <= steps; ++i) {
      const double share = static_cast<double>(i) / steps;
      // Arcs start flat: crowd the points towards their lower end.
      const double z = piece.z0 + (top - piece.z0) * (piece.is_arc() ? share * share : share);
      line.emplace_back(inset_at(piece, z), z);
    }
  }
  return line;
}

Loop section_half(const Pan& pan, double height) {
  Loop shape;
  if (height <= 0.0) return shape;
  const double half = 0.5 * pan.outline.length;
  const auto wall = wall_line(pan.wall, height);
  const double core_radius = pan.core ? 0.5 * pan.core->outline.length : 0.0;
  if (!pan.core) shape.emplace_back(0.0, 0.0);
  for (const glm::dvec2 p : wall) shape.emplace_back(std::max(0.0, half - p.x), p.y);
  if (!pan.core) {
    shape.emplace_back(0.0, wall.back().y);
    return shape;
  }
  const auto core = wall_line(pan.core->wall, height);
  for (auto p = core.rbegin(); p != core.rend(); ++p) shape.emplace_back(core_radius + p->x, p->y);
  return shape;
}

}  // namespace tinwright
