// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See sweep.h. A piece is parametrised by height (straight) or by the angle up from its circle's lowest point
// (arc: z = zc - r cos φ, d = dc ± r sin φ), and split where the area curve changes its polynomial.
#include "geometry/sweep.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/numerics.h"

namespace tinwright {
namespace {

/// What the integrands need at one place of the wall.
struct WallPoint {
  double inset = 0.0;
  double rise = 0.0;   // dz by the parameter
  double slope = 0.0;  // length along the wall by the parameter
};

double angle_at_height(const WallPiece& piece, double z) {
  return std::acos(std::clamp((piece.centre_z - z) / piece.radius, -1.0, 1.0));
}

/// The angle at which an arc has inset d, on the half where insets fall with height.
double angle_at_inset(const WallPiece& piece, double d) {
  const double angle = std::asin(std::clamp(piece.side * (d - piece.centre_d) / piece.radius, -1.0, 1.0));
  return piece.side < 0 ? angle : std::numbers::pi - angle;
}

WallPoint point_at(const WallPiece& piece, double t) {
  if (piece.is_arc()) {
    return {piece.centre_d + piece.side * piece.radius * std::sin(t), piece.radius * std::sin(t), piece.radius};
  }
  const double fall = (piece.d1 - piece.d0) / piece.height();
  return {piece.d0 + fall * (t - piece.z0), 1.0, std::sqrt(1.0 + fall * fall)};
}

/// Integrates f(WallPoint) over `piece`, splitting where the inset passes a start of the curve's pieces.
template <class Function>
double integrate_piece(const AreaCurve& curve, const WallPiece& piece, double sign, const Function& f) {
  const double from = piece.is_arc() ? angle_at_height(piece, piece.z0) : piece.z0;
  const double to = piece.is_arc() ? angle_at_height(piece, piece.z1) : piece.z1;
  const auto part = [&](double a, double b) {
    return integrate([&](double t) { return f(point_at(piece, t)); }, a, b);
  };
  double sum = 0.0;
  double begin = from;
  const auto& pieces = curve.pieces();
  for (auto knot = pieces.rbegin(); knot != pieces.rend(); ++knot) {  // insets fall as the parameter grows
    const double d = sign * knot->start;
    if (d >= piece.d0 || d <= piece.d1) continue;
    const double t =
        piece.is_arc() ? angle_at_inset(piece, d) : piece.z0 + piece.height() * (piece.d0 - d) / (piece.d0 - piece.d1);
    const double end = std::clamp(t, begin, to);
    if (end > begin) sum += part(begin, end);
    begin = end;
  }
  return to > begin ? sum + part(begin, to) : sum;
}

double sign_of(Lean lean) {
  return lean == Lean::kInwards ? 1.0 : -1.0;
}

}  // namespace

double swept_volume(const AreaCurve& curve, const Profile& profile, Lean lean, double height) {
  const double sign = sign_of(lean);
  double volume = 0.0;
  for (const WallPiece& piece : profile.pieces()) {
    if (piece.z0 >= height) break;
    const WallPiece part = piece.z1 <= height ? piece : cut_piece(piece, piece.z0, height);
    volume +=
        integrate_piece(curve, part, sign, [&](const WallPoint& p) { return curve.area(sign * p.inset) * p.rise; });
  }
  return volume;
}

double swept_surface(const AreaCurve& curve, const Profile& profile, Lean lean, double height) {
  const double sign = sign_of(lean);
  double surface = 0.0;
  double below = profile.floor_inset();
  for (const WallPiece& piece : profile.pieces()) {
    if (piece.z0 >= height) break;
    surface += std::abs(curve.area(sign * piece.d0) - curve.area(sign * below));
    const WallPiece part = piece.z1 <= height ? piece : cut_piece(piece, piece.z0, height);
    surface += integrate_piece(curve, part, sign,
                               [&](const WallPoint& p) { return curve.perimeter(sign * p.inset) * p.slope; });
    below = piece.d1;
  }
  return surface;
}

double surface_between(const AreaCurve& curve, const Profile& profile, Lean lean, double low, double high) {
  return swept_surface(curve, profile, lean, high) - swept_surface(curve, profile, lean, low);
}

}  // namespace tinwright
