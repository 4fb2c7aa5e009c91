// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Gores, floors and sheets of dough of development.h.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>

#include "geometry/checks.h"
#include "geometry/development.h"
#include "geometry/limits.h"
#include "geometry/plane.h"

namespace tinwright {
namespace {

using glm::dvec2;
using std::numbers::pi;

constexpr int kGoreSteps = 48;         // down one piece of wall
constexpr double kTurnStep = pi / 90;  // [rad] round a corner of a sheet of dough

/// A place on the way down a wall.
struct Station {
  double down = 0.0;    // [m] along the slope
  double radius = 0.0;  // [m]
};

/// What a wall piece does to a round pan: points down it, its length, and the area it sweeps.
struct Meridian {
  std::vector<Station> stations;
  double length = 0.0;
  double area = 0.0;
};

double angle_up(const WallPiece& piece, double z) {
  return std::acos(std::clamp((piece.centre_z - z) / piece.radius, -1.0, 1.0));
}

double piece_length(const WallPiece& piece) {
  if (!piece.is_arc()) return std::hypot(piece.height(), piece.d0 - piece.d1);
  return piece.radius * (angle_up(piece, piece.z1) - angle_up(piece, piece.z0));
}

/// Goes down `piece` from its top; `sign` is -1 on a pan's wall, +1 on a core's.
void go_down(const WallPiece& piece, double rim, double sign, Meridian& way) {
  const auto station = [&](double down, double inset) {
    way.stations.push_back({way.length + down, std::max(0.0, rim + sign * inset)});
  };
  const double length = piece_length(piece);
  if (!piece.is_arc()) {
    station(0.0, piece.d1);
    station(length, piece.d0);
    way.area += 2.0 * pi * (rim + sign * 0.5 * (piece.d0 + piece.d1)) * length;
  } else {
    // On the arc d = centre ± r sin φ: the area is 2π ∫ (rim + sign d) r dφ in closed form (Pappus).
    const double high = angle_up(piece, piece.z1), low = angle_up(piece, piece.z0);
    for (int i = 0; i <= kGoreSteps; ++i) {
      const double angle = high + (low - high) * i / kGoreSteps;
      station(piece.radius * (high - angle), piece.centre_d + piece.side * piece.radius * std::sin(angle));
    }
    way.area += 2.0 * pi * piece.radius *
                ((rim + sign * piece.centre_d) * (high - low) +
                 sign * piece.side * piece.radius * (std::cos(low) - std::cos(high)));
  }
  way.length += length;
}

void go_down(const Profile& profile, double rim, double sign, Meridian& way) {
  for (auto piece = profile.pieces().rbegin(); piece != profile.pieces().rend(); ++piece) {
    go_down(*piece, rim, sign, way);
  }
}

Loop convex_hull(Loop points) {
  const auto is_before = [](dvec2 a, dvec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); };
  std::sort(points.begin(), points.end(), is_before);
  Loop hull;
  for (int side = 0; side < 2; ++side) {  // Andrew's monotone chain
    const std::size_t first = hull.size();
    for (const dvec2 p : points) {
      while (hull.size() >= first + 2 && cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0.0) {
        hull.pop_back();
      }
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

/// A convex loop moved outwards by `reach`, round at its corners (Steiner's formula gives the area).
DoughSheet grown(const Loop& hull, double reach) {
  DoughSheet sheet;
  double around = 0.0;
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const dvec2 a = hull[i], b = hull[(i + 1) % hull.size()], c = hull[(i + 2) % hull.size()];
    around += glm::distance(a, b);
    const dvec2 in = b - a, out = c - b;
    const double from = std::atan2(in.y, in.x) - 0.5 * pi;
    const double turn = std::atan2(cross(in, out), glm::dot(in, out));
    const int steps = std::max(1, static_cast<int>(std::ceil(turn / kTurnStep)));
    for (int k = 0; k <= steps; ++k) {
      const double angle = from + turn * k / steps;
      sheet.edge.push_back(b + reach * dvec2(std::cos(angle), std::sin(angle)));
    }
  }
  sheet.area = loop_area(hull) + around * reach + pi * reach * reach;
  return sheet;
}

}  // namespace

Gore develop_gore(double rim, const Profile& profile, bool grows, int count, const Core* beyond) {
  GEOMETRY_ASSERT(count > 0);
  Meridian way;
  go_down(profile, rim, grows ? 1.0 : -1.0, way);
  if (beyond != nullptr) {
    Meridian up;
    go_down(beyond->wall, 0.5 * beyond->outline.length, 1.0, up);
    for (auto s = up.stations.rbegin(); s != up.stations.rend(); ++s) {
      way.stations.push_back({way.length + up.length - s->down, s->radius});
    }
    way.length += up.length;
    way.area += up.area;
  }
  Gore gore;
  gore.area = way.area / count;
  const auto half = [&](const Station& s) { return pi * s.radius / count; };
  for (const Station& s : way.stations) {
    gore.width = std::max(gore.width, 2.0 * half(s));
    gore.edge.emplace_back(half(s), s.down);
  }
  for (auto s = way.stations.rbegin(); s != way.stations.rend(); ++s) gore.edge.emplace_back(-half(*s), s->down);
  return gore;
}

double wall_length(const Profile& profile, double height) {
  double length = 0.0, below = profile.floor_inset();
  for (const WallPiece& piece : profile.pieces()) {
    if (piece.z0 >= height) break;
    length +=
        std::abs(below - piece.d0) + piece_length(piece.z1 <= height ? piece : cut_piece(piece, piece.z0, height));
    below = piece.d1;
  }
  return length;
}

Loop circle_loop(double radius, double tolerance) {
  const int count = std::max(24, static_cast<int>(std::ceil(2.0 * pi * std::sqrt(radius / (8.0 * tolerance)))));
  Loop loop;
  for (int i = 0; i < count; ++i) {
    const double angle = 2.0 * pi * i / count;
    loop.push_back(radius * dvec2(std::cos(angle), std::sin(angle)));
  }
  return loop;
}

Loops floor_loops(const Pan& pan) {
  if (is_closed_at(pan, 0.0)) return {};
  const double inset = pan.wall.floor_inset();
  const bool is_round = std::holds_alternative<Round>(pan.outline.shape);
  Loops loops = is_round ? Loops{circle_loop(0.5 * pan.outline.length - inset)} : outline_loops(pan.outline, inset);
  if (pan.core) loops.push_back(circle_loop(0.5 * pan.core->outline.length + pan.core->wall.floor_inset()));
  return loops;
}

DoughSheet dough_sheet(const Outline& outline, double floor_inset, double reach) {
  if (std::holds_alternative<Round>(outline.shape)) {
    const double radius = std::max(0.0, 0.5 * outline.length - floor_inset) + reach;
    return {circle_loop(radius), pi * radius * radius};
  }
  const double nearly_closed = outline.curve.closes_at() * (1.0 - 1e-6);
  Loop all;
  for (const Loop& loop : outline_loops(outline, std::min(floor_inset, nearly_closed)))
    all.insert(all.end(), loop.begin(), loop.end());
  return all.size() < 3 ? DoughSheet{} : grown(convex_hull(all), reach);
}

}  // namespace tinwright
