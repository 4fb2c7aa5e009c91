// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The side of a pan: how far its wall stands inside the rim line at each height, inset(z), from the floor
// (z = 0) to the top. It never grows with height. Kept as straight pieces and circular arcs, which is what pans
// are bent from, so that volumes and wall areas need no sampling.
#pragma once

#include <utility>
#include <variant>
#include <vector>

#include <glm/vec2.hpp>

#include "geometry/problem.h"

namespace tinwright {

/// One piece of wall over heights [z0, z1], with insets d0 >= d1 there [m].
/// A straight piece has radius 0. An arc lies on the circle about (centre_d, centre_z): on the rim's side of the
/// centre when `side` is -1 (the hollow of a floor corner or a bowl), on the middle's side when +1 (a bend).
struct WallPiece {
  double z0 = 0.0, z1 = 0.0;
  double d0 = 0.0, d1 = 0.0;
  double radius = 0.0;
  double centre_z = 0.0, centre_d = 0.0;
  int side = -1;

  bool is_arc() const { return radius > 0.0; }
  double height() const { return z1 - z0; }
};

WallPiece straight_piece(double z0, double d0, double z1, double d1);
WallPiece arc_piece(glm::dvec2 centre_zd, double radius, int side, double z0, double z1);
/// [m] Inset of the piece at height z within [z0, z1].
double inset_at(const WallPiece& piece, double z);
/// The piece between heights `low` and `high`, which must lie within it.
WallPiece cut_piece(const WallPiece& piece, double low, double high);

class Profile {
 public:
  Profile() = default;
  /// `pieces` upwards without gaps in z from 0; a step inwards going down (a ledge) may lie between two.
  explicit Profile(std::vector<WallPiece> pieces) : pieces_(std::move(pieces)) {}

  const std::vector<WallPiece>& pieces() const { return pieces_; }
  double depth() const { return pieces_.empty() ? 0.0 : pieces_.back().z1; }         // [m]
  double floor_inset() const { return pieces_.empty() ? 0.0 : pieces_.front().d0; }  // [m]
  double top_inset() const { return pieces_.empty() ? 0.0 : pieces_.back().d1; }     // [m]

  /// [m] Inset at height z in [0, depth]; on a ledge, that of the wall above it.
  double inset(double z) const;

  /// The part between two heights, its floor moved to z = 0.
  Profile between(double low, double high) const;

 private:
  std::vector<WallPiece> pieces_;
};

/// A straight wall whose line meets the floor plane `base_inset` inside the rim [m], with the corner rounded by
/// `floor_radius` [m], tangent to wall and floor.
struct StraightWall {
  double depth = 0.0;
  double base_inset = 0.0;
  double floor_radius = 0.0;
};

/// One arc from rim to middle: a spherical cap for a round pan, half a torus or less for a ring.
struct BowlWall {
  double depth = 0.0;
};

/// Measured points of the wall, from the floor up to the rim: x = height [m], y = inset [m].
struct SteppedWall {
  std::vector<glm::dvec2> points;
};

using WallShape = std::variant<StraightWall, BowlWall, SteppedWall>;

/// The profile, or what is wrong (place "profile.<field>"). `reach` [m] is the inset at which the outline has
/// closed: no wall may come further in.
Result<Profile> make_profile(const WallShape& wall, double reach);

}  // namespace tinwright
