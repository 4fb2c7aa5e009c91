// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See rim_line.h. Each shape is walked at its rim; moving the walk inwards by d takes d times the turn off its length.
#include "geometry/rim_line.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <glm/geometric.hpp>

#include "geometry/checks.h"
#include "geometry/limits.h"
#include "geometry/lobes.h"
#include "geometry/numerics.h"
#include "geometry/plane.h"

namespace tinwright {
namespace {

using glm::dvec2;
using std::numbers::pi;

constexpr double kFar = std::numeric_limits<double>::max();
constexpr int kMostSteps = 2000;           // pairs, of one arc or half lobe
constexpr int kFewestSteps = 4;            // of the same
constexpr double kCreaseTolerance = 3e-4;  // [-] of the inset, in where a wall ends under a crest
constexpr int kCreaseDepth = 8;            // halvings of a step there
constexpr int kSideSteps = 64;             // of a freeform side, where its reach has no closed form
constexpr double kSameHeading = 1e-12;     // [rad]

/// What the walk needs to know besides the shape.
struct Wanted {
  double upper, lower, tolerance;
};

int arc_steps(double radius, double angle, double tolerance) {
  const double step = std::sqrt(8.0 * tolerance / std::max(radius, tolerance));  // sagitta = r φ²/8
  // Even, so that an arc can be halved.
  return 2 * std::clamp(static_cast<int>(std::ceil(0.5 * std::abs(angle) / step)), kFewestSteps, kMostSteps);
}

/// A walk by straight sides and arcs whose reach is known.
class Walk {
 public:
  explicit Walk(const Wanted& wanted) : wanted_(wanted) {}

  /// A side of length `side` between x = from and to on it; reach(x) rises from both ends at `slope`, from `first` on,
  /// up to `most`.
  void side(double length, double from, double to, double first, double slope, double most) {
    std::vector<double> places{from, to, 0.5 * length};
    for (const double d : {wanted_.upper, wanted_.lower}) {
      const double x = (d - first) / slope;
      places.push_back(x);
      places.push_back(length - x);
    }
    places.erase(std::remove_if(places.begin(), places.end(), [&](double x) { return x < from || x > to; }),
                 places.end());
    std::sort(places.begin(), places.end());
    for (const double x : places) {
      points_.push_back({along_ + x - from, heading_, std::min(most, first + slope * std::min(x, length - x))});
    }
    along_ += to - from;
  }

  void arc(double radius, double angle, double reach) {
    const int steps = arc_steps(radius, angle, wanted_.tolerance);
    for (int i = 0; i <= steps; ++i) {
      const double turned = angle * i / steps;
      points_.push_back({along_ + radius * turned, heading_ + turned, reach});
    }
    along_ += radius * angle;
    heading_ += angle;
  }

  void turn(double angle) { heading_ += angle; }

  std::vector<RimPoint> take() { return std::move(points_); }

 private:
  Wanted wanted_;
  double along_ = 0.0, heading_ = 0.0;
  std::vector<RimPoint> points_;
};

std::vector<RimPoint> walk(const Round& round, const Wanted& wanted) {
  Walk line(wanted);
  line.arc(0.5 * round.diameter, 2.0 * pi, 0.5 * round.diameter);
  return line.take();
}

std::vector<RimPoint> walk(const Rectangle& rectangle, const Wanted& wanted) {
  const double c = rectangle.corner_radius;
  const double most = 0.5 * std::min(rectangle.length, rectangle.width);
  const double a = std::max(0.0, rectangle.length - 2.0 * c), b = std::max(0.0, rectangle.width - 2.0 * c);
  Walk line(wanted);
  const auto corner = [&] { c > 0.0 ? line.arc(c, 0.5 * pi, c) : line.turn(0.5 * pi); };
  line.side(a, 0.5 * a, a, c, 1.0, most);
  corner();
  for (const double length : {b, a, b}) {
    line.side(length, 0.0, length, c, 1.0, most);
    corner();
  }
  line.side(a, 0.0, 0.5 * a, c, 1.0, most);
  return line.take();
}

std::vector<RimPoint> walk(const RegularPolygon& polygon, const Wanted& wanted) {
  const double inner = 0.5 * polygon.across_flats, half_turn = pi / polygon.sides;
  const double length = 2.0 * inner * std::tan(half_turn), slope = 1.0 / std::tan(half_turn);
  Walk line(wanted);
  for (int i = 0; i <= polygon.sides; ++i) {
    line.side(length, i == 0 ? 0.5 * length : 0.0, i == polygon.sides ? 0.5 * length : length, 0.0, slope, inner);
    line.turn(2.0 * half_turn);
  }
  return line.take();
}

/// How far in along the normal at t the crest's mirror line lies.
double crest_reach(const HalfLobe& lobe, double t) {
  const LobePoint p = lobe.at(t);
  const dvec2 tangent = glm::normalize(p.first);
  if (t == 0.0) return std::pow(glm::length(p.first), 3) / cross(p.first, p.second);  // the limit: radius of curvature
  return tangent.x < 0.0 && p.position.y > 0.0 ? p.position.y / -tangent.x : kFar;
}

/// From straight up at an oval's crest to the left; that the angle jumps there must not show.
double heading_at(const HalfLobe& lobe, double t) {
  const dvec2 way = lobe.at(t).first;
  return 0.5 * pi + std::atan2(-way.x, way.y);
}

/// Places between `from` and `to` where the wall's end under them bends: what lies between two points of the walk is
/// taken to be straight, by its length and by its turn.
void refine_crease(const HalfLobe& lobe, double from, double to, double lower, int depth, std::vector<double>& places) {
  const double middle = 0.5 * (from + to);
  const auto end = [&](double t) { return std::min(crest_reach(lobe, t), lower); };
  const double a = end(from), b = end(to), at = end(middle);
  const double turn = heading_at(lobe, to) - heading_at(lobe, from);
  const double share = turn != 0.0 ? (heading_at(lobe, middle) - heading_at(lobe, from)) / turn : 0.5;
  const double off = std::max(std::abs(at - 0.5 * (a + b)), std::abs(turn * (at - a - share * (b - a))));
  if (depth == 0 || off < kCreaseTolerance * lower) return;
  places.push_back(middle);
  refine_crease(lobe, from, middle, lower, depth - 1, places);
  refine_crease(lobe, middle, to, lower, depth - 1, places);
}

/// Half a lobe from its crest, `along` and heading counted from there.
std::vector<RimPoint> half_lobe(const HalfLobe& lobe, const Wanted& wanted) {
  const auto speed = [&](double t) { return glm::length(lobe.at(t).first); };
  double sharpest = 0.0, length = 0.0;
  constexpr int kProbes = 64;
  for (int i = 0; i < kProbes; ++i) {
    const LobePoint p = lobe.at(lobe.end * i / kProbes);
    sharpest = std::max(sharpest, std::abs(cross(p.first, p.second)) / std::pow(glm::length(p.first), 3));
    length += integrate(speed, lobe.end * i / kProbes, lobe.end * (i + 1) / kProbes);
  }
  const int steps = arc_steps(1.0 / sharpest, length * sharpest, wanted.tolerance);
  std::vector<double> places;
  for (int i = 0; i <= steps; ++i) places.push_back(lobe.end * i / steps);
  for (const double d : {wanted.upper, wanted.lower}) {
    const auto over = [&](double t) { return std::min(crest_reach(lobe, t), lobe.closes_at * 2.0) - d; };
    if (over(0.0) < 0.0 && over(lobe.end) > 0.0) places.push_back(find_root(over, 0.0, lobe.end));
  }
  std::sort(places.begin(), places.end());
  if (wanted.lower > crest_reach(lobe, 0.0)) {
    const auto coarse = places;
    for (std::size_t i = 0; i + 1 < coarse.size(); ++i) {
      refine_crease(lobe, coarse[i], coarse[i + 1], wanted.lower, kCreaseDepth, places);
    }
    std::sort(places.begin(), places.end());
  }
  std::vector<RimPoint> points;
  double along = 0.0, before = 0.0;
  for (const double t : places) {
    along += integrate(speed, before, t);
    points.push_back({along, heading_at(lobe, t), crest_reach(lobe, t)});
    before = t;
  }
  return points;
}

/// Lobe after lobe, from a hollow or flat side: half lobes backwards and forwards in turn.
std::vector<RimPoint> walk_lobes(const HalfLobe& lobe, const Wanted& wanted) {
  const auto half = half_lobe(lobe, wanted);
  const double length = half.back().along, sector = 2.0 * pi / lobe.copies;
  std::vector<RimPoint> points;
  for (int copy = 1; copy <= lobe.copies; ++copy) {
    const bool mirrored = copy % 2 == 1;
    for (std::size_t i = 0; i < half.size(); ++i) {
      const RimPoint& p = mirrored ? half[half.size() - 1 - i] : half[i];
      const double turned = (mirrored ? copy + 1 : copy) * sector;
      points.push_back({(copy - 1) * length + (mirrored ? length - p.along : p.along),
                        mirrored ? turned + pi - p.heading : turned + p.heading, p.reach});
    }
  }
  return points;
}

std::vector<RimPoint> walk(const Oval& oval, const Wanted& wanted) {
  const double a = 0.5 * std::max(oval.length, oval.width), b = 0.5 * std::min(oval.length, oval.width);
  if (a - b < kLengthTolerance) return walk(Round{2.0 * a}, wanted);
  return walk_lobes(oval_lobe(a, b), wanted);
}

std::vector<RimPoint> walk(const Fluted& fluted, const Wanted& wanted) {
  return walk_lobes(fluted_lobe(fluted.diameter, fluted.flutes, fluted.flute_depth), wanted);
}

/// A freeform outline's sides; the wall below a point ends where another side is as near as its own.
class Sides {
 public:
  explicit Sides(const Loop& corners) : corners_(corners) {}

  std::size_t size() const { return corners_.size(); }
  dvec2 corner(std::size_t i) const { return corners_[i % size()]; }
  dvec2 way(std::size_t i) const { return glm::normalize(corner(i + 1) - corner(i)); }
  double length(std::size_t i) const { return glm::distance(corner(i), corner(i + 1)); }
  double turn(std::size_t i) const {  // from side i to the next
    const dvec2 a = way(i), b = way(i + 1);
    return std::atan2(cross(a, b), glm::dot(a, b));
  }

  /// From a point of side i going `in`, or from the inward corner after it. Sides that meet at an inward corner do not
  /// end each other's wall.
  double reach(dvec2 p, dvec2 in, std::size_t i) const {
    const std::size_t before = (i + size() - 1) % size(), after = (i + 1) % size();
    double nearest = kFar;
    for (std::size_t j = 0; j < size(); ++j) {
      if (j == i || (j == before && turn(before) < 0.0) || (j == after && turn(i) < 0.0)) continue;
      nearest = std::min(nearest, std::min(to_side(p, in, j), to_corner(p, in, corner(j))));
    }
    return nearest;
  }

 private:
  double to_side(dvec2 p, dvec2 in, std::size_t j) const {
    const dvec2 along = way(j), inward(-along.y, along.x);
    const double away = glm::dot(p - corner(j), inward), closing = 1.0 - glm::dot(in, inward);
    if (away < -kLengthTolerance || closing < 1e-12) return kFar;
    const double t = std::max(0.0, away) / closing;
    const double foot = glm::dot(p + t * in - corner(j), along);
    return foot < -kLengthTolerance || foot > length(j) + kLengthTolerance ? kFar : t;
  }
  static double to_corner(dvec2 p, dvec2 in, dvec2 corner) {
    const double towards = glm::dot(in, corner - p);
    return towards < 1e-12 ? kFar : glm::dot(corner - p, corner - p) / (2.0 * towards);
  }

  const Loop& corners_;
};

/// The side from x = from to `to`, with points where its reach passes upper and lower.
void walk_side(const Sides& sides, std::size_t i, double from, double to, double along, double heading,
               const Wanted& wanted, std::vector<RimPoint>& points) {
  const dvec2 way = sides.way(i), in(-way.y, way.x);
  const auto reach = [&](double x) { return sides.reach(sides.corner(i) + x * way, in, i); };
  const int steps = wanted.lower > 0.0 ? kSideSteps : 1;
  double before = from;
  for (int k = 0; k <= steps; ++k) {
    const double x = from + (to - from) * k / steps;
    std::vector<double> places{x};
    for (const double d : {wanted.upper, wanted.lower}) {
      const auto over = [&](double at) { return std::min(reach(at), 2.0 * d + 1.0) - d; };
      if (k > 0 && d > 0.0 && over(before) * over(x) < 0.0) places.push_back(find_root(over, before, x));
    }
    std::sort(places.begin(), places.end());
    for (const double at : places) points.push_back({along + at - from, heading, reach(at)});
    before = x;
  }
}

std::vector<RimPoint> walk(const Freeform& freeform, const Wanted& wanted) {
  const Sides sides(freeform.corners);
  std::vector<RimPoint> points;
  const double half = 0.5 * sides.length(0);
  double along = 0.0, heading = 0.0;
  for (std::size_t i = 0; i <= sides.size(); ++i) {
    const std::size_t side = i % sides.size();
    const double from = i == 0 ? half : 0.0, to = i == sides.size() ? half : sides.length(side);
    walk_side(sides, side, from, to, along, heading, wanted, points);
    along += to - from;
    const double turn = sides.turn(side);
    if (turn < 0.0 && i < sides.size()) {  // the wall fans out below an inward corner
      const int steps = arc_steps(std::max(wanted.lower, kSmallestSize), turn, wanted.tolerance);
      const dvec2 way = sides.way(side);
      for (int k = 1; k < steps; ++k) {
        const double turned = turn * k / steps, c = std::cos(turned), s = std::sin(turned);
        const dvec2 in(-way.x * s - way.y * c, way.x * c - way.y * s);
        points.push_back({along, heading + turned, sides.reach(sides.corner(side + 1), in, side)});
      }
    }
    heading += turn;
  }
  return points;
}

/// Leaves out what has ended above `upper`, and of corners all but their two sides.
std::vector<RimPoint> moved_inwards(const std::vector<RimPoint>& rim, double upper) {
  std::vector<RimPoint> moved;
  double along = 0.0;
  const RimPoint* last = nullptr;
  for (const RimPoint& p : rim) {
    const bool ends_above = p.reach < upper - kLengthTolerance;
    if (last != nullptr && !ends_above && last->reach >= upper - kLengthTolerance) {
      along += std::max(0.0, p.along - last->along - upper * (p.heading - last->heading));
    }
    last = &p;
    if (ends_above) continue;
    const RimPoint here{along, p.heading, std::max(0.0, p.reach - upper)};
    const std::size_t n = moved.size();
    const auto is_turn = [](const RimPoint& a, const RimPoint& b) {
      return b.along - a.along < kLengthTolerance && b.heading - a.heading > kSameHeading;
    };
    if (n > 1 && is_turn(moved[n - 2], moved[n - 1]) && is_turn(moved[n - 1], here)) moved.pop_back();
    moved.push_back(here);
  }
  return moved;
}

}  // namespace

std::vector<RimPoint> walk_rim(const Outline& outline, double upper, double lower, double tolerance) {
  GEOMETRY_ASSERT(upper >= 0.0 && lower >= upper && tolerance > 0.0);
  if (upper >= outline.curve.closes_at()) return {};
  const Wanted wanted{upper, lower, tolerance};
  return moved_inwards(std::visit([&](const auto& shape) { return walk(shape, wanted); }, outline.shape), upper);
}

}  // namespace tinwright
