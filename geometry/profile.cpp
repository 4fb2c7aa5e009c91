// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See profile.h.
#include "geometry/profile.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "geometry/checks.h"
#include "geometry/limits.h"

namespace tinwright {
namespace {

Problem closed_before_floor(double inset, double reach, const std::string& place) {
  return {ProblemCode::kImpossibleShape,
          "a wall that comes in " + mm_text(inset) + " closes before it reaches the floor; it can come in at most " +
              at_most_text(reach) + " here",
          place};
}

Result<Profile> make(const StraightWall& wall, double reach) {
  const auto& [depth, run, radius] = wall;
  if (auto problem = check_size(depth, "depth", "profile.depth")) return *problem;
  if (auto problem = check_size_or_zero(run, "base inset", "profile.base_inset")) return *problem;
  if (auto problem = check_size_or_zero(radius, "floor radius", "profile.floor_radius")) return *problem;
  if (run > reach + kLengthTolerance) return closed_before_floor(run, reach, "profile.base_inset");
  if (radius == 0.0) return Profile({straight_piece(0.0, run, depth, 0.0)});

  // The corner between floor and wall opens by 90° + lean; the arc touches both at the same distance from it.
  const double lean = std::atan2(run, depth);
  const double touch = radius / std::tan(0.5 * (0.5 * std::numbers::pi + lean));
  const double wall_length = std::hypot(run, depth);
  const double most = std::min(wall_length, reach - run);
  if (touch > most + kLengthTolerance) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a floor corner rounded by " + mm_text(radius) +
                       " does not fit the wall and the floor; it can be at most " + at_most_text(most * radius / touch),
                   "profile.floor_radius"};
  }
  const double arc_top = std::min(touch * std::cos(lean), depth);
  std::vector<WallPiece> pieces{arc_piece({radius, run + touch}, radius, -1, 0.0, arc_top)};
  if (depth - arc_top > kLengthTolerance) {
    pieces.push_back(straight_piece(arc_top, run - touch * std::sin(lean), depth, 0.0));
  }
  return Profile(pieces);
}

Result<Profile> make(const BowlWall& wall, double reach) {
  if (auto problem = check_size(wall.depth, "depth", "profile.depth")) return *problem;
  if (wall.depth > reach + kLengthTolerance) {
    return Problem{ProblemCode::kImpossibleShape,
                   "a bowl " + mm_text(wall.depth) + " deep would lean over its own rim; half a ball is the deepest, " +
                       at_most_text(reach),
                   "profile.depth"};
  }
  const double radius = (reach * reach + wall.depth * wall.depth) / (2.0 * wall.depth);
  return Profile({arc_piece({radius, reach}, radius, -1, 0.0, wall.depth)});
}

Result<Profile> make(const SteppedWall& wall, double reach) {
  const std::string place = "profile.points";
  const auto& points = wall.points;
  if (points.size() < 2) {
    return Problem{ProblemCode::kMissing, "a measured wall needs at least 2 points, at the floor and at the rim",
                   place};
  }
  if (points.size() > static_cast<std::size_t>(kMostCorners)) {
    return Problem{ProblemCode::kOutOfRange, "a measured wall can have at most 200 points", place};
  }
  for (const glm::dvec2 p : points) {
    if (auto problem = check_size_or_zero(p.x, "height of a wall point", place)) return *problem;
    if (auto problem = check_size_or_zero(p.y, "inset of a wall point", place)) return *problem;
  }
  if (points.front().x != 0.0) {
    return Problem{ProblemCode::kImpossibleShape, "the first wall point is at the floor: its height is 0", place};
  }
  if (points.back().y != 0.0) {
    return Problem{ProblemCode::kImpossibleShape, "the last wall point is at the rim: its inset is 0", place};
  }
  if (points.size() > 2 && points[points.size() - 2].x == points.back().x) {
    return Problem{ProblemCode::kImpossibleShape,
                   "the wall steps outwards at the very rim; the rim is where its last upright part ends", place};
  }
  if (points.front().y > reach + kLengthTolerance) return closed_before_floor(points.front().y, reach, place);
  std::vector<WallPiece> pieces;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const glm::dvec2 a = points[i];
    const glm::dvec2 b = points[i + 1];
    if (b.x < a.x || b.y > a.y) {
      return Problem{ProblemCode::kImpossibleShape,
                     "going up, wall points must rise and never come further in (no overhang)", place};
    }
    if (b.x - a.x > kLengthTolerance) pieces.push_back(straight_piece(a.x, a.y, b.x, b.y));
  }
  if (pieces.empty()) return Problem{ProblemCode::kOutOfRange, "the wall has no height", place};
  return Profile(pieces);
}

/// The same wall with its first piece starting at z = 0 and every z moved alike.
WallPiece lowered(WallPiece piece, double by) {
  piece.z0 -= by;
  piece.z1 -= by;
  piece.centre_z -= by;
  return piece;
}

}  // namespace

WallPiece straight_piece(double z0, double d0, double z1, double d1) {
  return {.z0 = z0, .z1 = z1, .d0 = d0, .d1 = d1};
}

WallPiece arc_piece(glm::dvec2 centre_zd, double radius, int side, double z0, double z1) {
  WallPiece piece{.z0 = z0, .z1 = z1, .radius = radius, .centre_z = centre_zd.x, .centre_d = centre_zd.y, .side = side};
  piece.d0 = inset_at(piece, z0);
  piece.d1 = inset_at(piece, z1);
  return piece;
}

double inset_at(const WallPiece& piece, double z) {
  if (piece.is_arc()) {
    const double dz = z - piece.centre_z;
    return piece.centre_d + piece.side * std::sqrt(std::max(0.0, (piece.radius - dz) * (piece.radius + dz)));
  }
  return piece.d0 + (piece.d1 - piece.d0) * (z - piece.z0) / piece.height();
}

WallPiece cut_piece(const WallPiece& piece, double low, double high) {
  WallPiece part = piece;
  part.z0 = low;
  part.z1 = high;
  part.d0 = inset_at(piece, low);
  part.d1 = inset_at(piece, high);
  return part;
}

double Profile::inset(double z) const {
  GEOMETRY_ASSERT(!pieces_.empty());
  const auto above = std::upper_bound(pieces_.begin(), pieces_.end(), z,
                                      [](double height, const WallPiece& piece) { return height < piece.z1; });
  const WallPiece& piece = above == pieces_.end() ? pieces_.back() : *above;
  return inset_at(piece, std::clamp(z, piece.z0, piece.z1));
}

Profile Profile::between(double low, double high) const {
  std::vector<WallPiece> parts;
  for (const WallPiece& piece : pieces_) {
    const double z0 = std::max(low, piece.z0);
    const double z1 = std::min(high, piece.z1);
    if (z1 - z0 > 0.0) parts.push_back(lowered(cut_piece(piece, z0, z1), low));
  }
  return Profile(parts);
}

Result<Profile> make_profile(const WallShape& wall, double reach) {
  return std::visit([&](const auto& w) { return make(w, reach); }, wall);
}

}  // namespace tinwright
