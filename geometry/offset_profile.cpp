// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See offset_profile.h.
#include "geometry/offset_profile.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "geometry/limits.h"

namespace tinwright {
namespace {

/// Heights closer than this are one break of the envelope [m].
constexpr double kBreakTolerance = 1e-12;

/// A quarter disc of dough round a point of the wall, the upper half of its circle.
WallPiece bend_at(double z, double d, double thickness) {
  return arc_piece({z, d}, thickness, +1, z, z + thickness);
}

void add_straight(std::vector<WallPiece>& out, const WallPiece& piece, double thickness, bool lowest) {
  const double fall = (piece.d1 - piece.d0) / piece.height();
  const double along = std::sqrt(1.0 + fall * fall);
  const double up = -fall * thickness / along;
  const double in = thickness / along;
  WallPiece moved = straight_piece(piece.z0 + up, piece.d0 + in, piece.z1 + up, piece.d1 + in);
  if (lowest && up > 0.0) moved = straight_piece(piece.z0, piece.d0 + in - fall * up, moved.z1, moved.d1);
  out.push_back(moved);
}

void add_arc(std::vector<WallPiece>& out, const WallPiece& piece, double thickness) {
  const double radius = piece.radius + piece.side * thickness;
  if (radius <= kLengthTolerance) return;
  const auto moved = [&](double z) { return piece.centre_z + (z - piece.centre_z) * radius / piece.radius; };
  out.push_back(arc_piece({piece.centre_z, piece.centre_d}, radius, piece.side, moved(piece.z0), moved(piece.z1)));
}

std::vector<WallPiece> candidates(const Profile& wall, double thickness) {
  std::vector<WallPiece> out;
  const auto& pieces = wall.pieces();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const WallPiece& piece = pieces[i];
    if (piece.is_arc()) {
      add_arc(out, piece, thickness);
    } else {
      add_straight(out, piece, thickness, i == 0);
    }
    const bool bare_bottom = i == 0 && !piece.is_arc();
    if (!bare_bottom) out.push_back(bend_at(piece.z0, piece.d0, thickness));
    out.push_back(bend_at(piece.z1, piece.d1, thickness));
  }
  return out;
}

/// Heights where two pieces cross, both taken as whole lines or circles.
void add_crossings(std::vector<double>& breaks, const WallPiece& a, const WallPiece& b) {
  if (a.is_arc() && b.is_arc()) {
    const double dz = b.centre_z - a.centre_z;
    const double dd = b.centre_d - a.centre_d;
    const double between = std::hypot(dz, dd);
    if (between < kLengthTolerance) return;
    const double foot = (between * between + a.radius * a.radius - b.radius * b.radius) / (2.0 * between);
    const double half = std::sqrt(std::max(0.0, a.radius * a.radius - foot * foot));
    breaks.push_back(a.centre_z + (foot * dz - half * dd) / between);
    breaks.push_back(a.centre_z + (foot * dz + half * dd) / between);
  } else if (a.is_arc()) {
    add_crossings(breaks, b, a);
  } else {
    const double fall = (a.d1 - a.d0) / a.height();
    if (!b.is_arc()) {
      const double other = (b.d1 - b.d0) / b.height();
      if (fall != other) breaks.push_back((b.d0 - other * b.z0 - a.d0 + fall * a.z0) / (fall - other));
      return;
    }
    const double offset = a.d0 + fall * (b.centre_z - a.z0) - b.centre_d;  // of the line at the centre's height
    const double square = 1.0 + fall * fall;
    const double root = std::sqrt(std::max(0.0, square * b.radius * b.radius - offset * offset));
    breaks.push_back(b.centre_z + (-fall * offset - root) / square);
    breaks.push_back(b.centre_z + (-fall * offset + root) / square);
  }
}

}  // namespace

Profile offset_profile(const Profile& wall, double thickness, double low, double high) {
  if (thickness <= 0.0) return wall.between(low, high);
  const std::vector<WallPiece> pieces = candidates(wall, thickness);
  std::vector<double> breaks{low, high};
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    breaks.push_back(pieces[i].z0);
    breaks.push_back(pieces[i].z1);
    for (std::size_t j = i + 1; j < pieces.size(); ++j) add_crossings(breaks, pieces[i], pieces[j]);
  }
  std::erase_if(breaks, [&](double z) { return !(z >= low && z <= high); });
  std::sort(breaks.begin(), breaks.end());

  std::vector<WallPiece> envelope;
  const WallPiece* last = nullptr;
  double from = low;
  for (const double to : breaks) {
    if (to - from < kBreakTolerance) continue;
    const double middle = 0.5 * (from + to);
    const WallPiece* furthest = nullptr;
    double inset = -std::numeric_limits<double>::infinity();
    for (const WallPiece& piece : pieces) {
      if (piece.z0 > middle || piece.z1 < middle) continue;
      const double d = inset_at(piece, middle);
      if (d > inset) {
        inset = d;
        furthest = &piece;
      }
    }
    if (furthest != nullptr && furthest == last) {
      envelope.back() = cut_piece(*furthest, envelope.back().z0, to);
    } else if (furthest != nullptr) {
      envelope.push_back(cut_piece(*furthest, from, to));
    }
    last = furthest;
    from = to;
  }
  return Profile(envelope).between(low, high);
}

}  // namespace tinwright
