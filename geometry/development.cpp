// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See development.h. Unrolling keeps lengths and angles: where the outline turns by dθ, the strip turns by sin β dθ, β
// the wall's lean from the upright; at a sharp corner, where two faces meet, by 2 atan(sin β tan(θ/2)).
#include "geometry/development.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>

#include "geometry/checks.h"
#include "geometry/limits.h"
#include "geometry/plane.h"
#include "geometry/rim_line.h"

namespace tinwright {
namespace {

using glm::dvec2;
using std::numbers::pi;

constexpr double kFull = 1.0 - 1e-9;       // [-] of the slope: as good as at the foot
constexpr double kSamePlace = 1e-8;        // [m] edges of a mitre meet within this
constexpr double kCornerHeading = 0.05;    // [rad] sharper than any chord of a curve
constexpr double kTabTaper = 0.12;         // [-] of a tab's width, taken off on either side so that tabs do not crowd
constexpr double kMostTaper = 0.45;        // [-] of the same, at a corner
constexpr double kShortestTabbed = 0.003;  // [m]

dvec2 direction(double angle) {
  return {std::cos(angle), std::sin(angle)};
}

dvec2 left_of(double heading) {
  return direction(heading + 0.5 * pi);
}

/// One point of the strip while it is unrolled.
struct Unrolled {
  dvec2 upper, lower;
  double heading = 0.0;
  double share = 1.0;      // [-] of the slope that the wall reaches down here
  bool is_corner = false;  // a crease of an upright wall starts here
};

struct LowerPoint {
  dvec2 at;
  bool is_full = false, is_corner = false;
};

/// How much the strip turns between two neighbours of the walk.
double turn_between(const RimPoint& a, const RimPoint& b, double lean) {
  const double turn = b.heading - a.heading;
  if (turn > 0.0 && b.along - a.along < kLengthTolerance) return 2.0 * std::atan(lean * std::tan(0.5 * turn));
  return lean * turn;
}

/// A straight upright wall has no fans below inward corners: only the corner.
std::vector<RimPoint> without_fans(const std::vector<RimPoint>& walk) {
  std::vector<RimPoint> plain;
  for (const RimPoint& p : walk) {
    const std::size_t n = plain.size();
    const auto same = [&](std::size_t k) { return std::abs(plain[k].along - p.along) < kLengthTolerance; };
    if (n > 1 && same(n - 1) && same(n - 2)) plain.pop_back();
    plain.push_back(p);
  }
  return plain;
}

/// Without points that lie on the line between their neighbours, to a nanometre.
template <class Point, class At, class Keep>
std::vector<Point> straightened(const std::vector<Point>& points, const At& at, const Keep& keep) {
  std::vector<Point> kept;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i > 0 && i + 1 < points.size() && !keep(i)) {
      const dvec2 a = at(kept.back()), p = at(points[i]), b = at(points[i + 1]);
      const double length = glm::distance(a, b);
      const bool is_between = glm::dot(p - a, b - p) >= 0.0;
      if (is_between && (length == 0.0 || std::abs(cross(b - a, p - a)) <= kLengthTolerance * length)) continue;
    }
    kept.push_back(points[i]);
  }
  return kept;
}

Loop straightened(const Loop& line) {
  return straightened(
      line, [](dvec2 p) { return p; }, [](std::size_t) { return false; });
}

/// The lower edge with mitres closed: where it runs up to a corner and back along the same line, that is a crease.
std::vector<LowerPoint> close_mitres(const std::vector<LowerPoint>& edge, Loops& folds) {
  std::vector<LowerPoint> closed;
  for (const LowerPoint& p : edge) {
    const std::size_t n = closed.size();
    if (n > 0 && glm::distance(closed.back().at, p.at) < kLengthTolerance) {
      closed.back().is_full |= p.is_full;
      closed.back().is_corner |= p.is_corner;
    } else if (n > 1 && !closed[n - 1].is_full && glm::distance(closed[n - 2].at, p.at) < kSamePlace) {
      folds.push_back({closed[n - 2].at, closed[n - 1].at});
      closed.pop_back();
      closed.back().is_corner = true;
    } else {
      closed.push_back(p);
    }
  }
  return closed;
}

/// Feet and the notches between them.
std::vector<StripEdge> edges_of(const std::vector<LowerPoint>& points) {
  std::vector<StripEdge> edges;
  if (points.size() == 1) edges.push_back({{points.front().at}, false});  // a cone's tip
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const bool is_foot = points[i].is_full && points[i + 1].is_full;
    if (edges.empty() || edges.back().is_foot != is_foot || points[i].is_corner) {
      edges.push_back({{points[i].at}, is_foot});
    }
    edges.back().line.push_back(points[i + 1].at);
  }
  return edges;
}

/// Area, lengths and edges from the walk: `lean` is sin β, below 0 where the wall spreads downwards.
Strip unroll(const std::vector<RimPoint>& walk, double run, double slope, double lean) {
  Strip strip;
  std::vector<Unrolled> points;
  double heading = 0.0;
  for (std::size_t i = 1; i < walk.size(); ++i) heading -= 0.5 * turn_between(walk[i - 1], walk[i], lean);
  dvec2 at(0.0);
  for (std::size_t i = 0; i < walk.size(); ++i) {
    bool is_corner = false;
    const double share = run > 0.0 ? std::min(1.0, walk[i].reach / run) : 1.0;
    if (i > 0) {
      const double ahead = walk[i].along - walk[i - 1].along, turn = turn_between(walk[i - 1], walk[i], lean);
      const double chord = std::abs(turn) > 1e-9 ? ahead * std::sin(0.5 * turn) / (0.5 * turn) : ahead;
      at += chord * direction(heading + 0.5 * turn);
      heading += turn;
      const double a = slope * points.back().share, b = slope * share;
      strip.area += 0.5 * ahead * (a + b) - turn * (a * a + a * b + b * b) / 6.0;
      strip.upper_length += ahead;
      if (points.back().share >= kFull && share >= kFull) strip.lower_length += ahead - slope * turn;
      is_corner =
          ahead < kLengthTolerance && run == 0.0 && std::abs(walk[i].heading - walk[i - 1].heading) > kCornerHeading;
    }
    points.push_back({at, at + slope * share * left_of(heading), heading, share, is_corner});
  }
  strip.end_heading = heading;
  std::vector<LowerPoint> lower;
  for (const Unrolled& p : points) {
    strip.upper.push_back(p.upper);
    lower.push_back({p.lower, p.share >= kFull, p.is_corner});
    if (p.is_corner) strip.folds.push_back({p.lower, p.upper});
  }
  strip.upper = straightened(strip.upper);
  const auto place = [](const LowerPoint& p) { return p.at; };
  lower = straightened(lower, place, [&](std::size_t i) {
    return lower[i].is_corner || lower[i].is_full != lower[i - 1].is_full || lower[i].is_full != lower[i + 1].is_full;
  });
  strip.lower = edges_of(close_mitres(lower, strip.folds));
  return strip;
}

std::vector<Strip> unroll_in_parts(const std::vector<RimPoint>& walk, double run, double slope, double lean) {
  if (walk.size() < 2) return {};
  double bent = 0.0;
  for (std::size_t i = 1; i < walk.size(); ++i) bent += std::abs(turn_between(walk[i - 1], walk[i], lean));
  if (bent <= pi) return {unroll(walk, run, slope, lean)};
  // In the middle, but where the wall goes all the way down, so that the halves can be joined.
  const double whole = walk.back().along;
  const auto unfit = [&](const RimPoint& p) {
    return std::abs(p.along - 0.5 * whole) + (run > 0.0 ? std::max(0.0, 1.0 - p.reach / run) * whole : 0.0);
  };
  const auto middle = std::min_element(walk.begin() + 1, walk.end() - 1,
                                       [&](const RimPoint& a, const RimPoint& b) { return unfit(a) < unfit(b); });
  return {unroll({walk.begin(), middle + 1}, run, slope, lean), unroll({middle, walk.end()}, run, slope, lean)};
}

dvec2 place_on(const Loop& line, double along) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = glm::distance(line[i], line[i + 1]);
    if (along <= length) return length > 0.0 ? line[i] + (along / length) * (line[i + 1] - line[i]) : line[i];
    along -= length;
  }
  return line.back();
}

/// The foot's tabs, from its end back to its beginning.
void add_tabs(const Loop& foot, const StripExtras& extras, Loop& outline) {
  const double length = line_length(foot);
  const int count = std::max(1, static_cast<int>(std::ceil(length / extras.tab_width)));
  // Next to a corner tabs are mitred: folded in, two of them meet there.
  const double corner_taper = std::clamp(extras.tab * count / length, kTabTaper, kMostTaper);
  for (int i = count; i > 0; --i) {
    const dvec2 end = place_on(foot, length * i / count), begin = place_on(foot, length * (i - 1) / count);
    const dvec2 along = end - begin;
    const dvec2 out = extras.tab * glm::normalize(dvec2(-along.y, along.x));
    outline.push_back(end);
    outline.push_back(end + out - (i == count ? corner_taper : kTabTaper) * along);
    outline.push_back(begin + out + (i == 1 ? corner_taper : kTabTaper) * along);
  }
  outline.push_back(foot.front());
}

/// Without points that repeat the one before.
Loop tidied(const Loop& loop) {
  Loop tidy;
  for (const dvec2 p : loop) {
    if (tidy.empty() || glm::distance(tidy.back(), p) > kLengthTolerance) tidy.push_back(p);
  }
  while (tidy.size() > 1 && glm::distance(tidy.front(), tidy.back()) <= kLengthTolerance) tidy.pop_back();
  return tidy;
}

}  // namespace

std::vector<Strip> develop_wall(const Outline& outline, double top, double bottom, double height, double tolerance) {
  const double run = bottom - top, slope = std::hypot(run, height);
  GEOMETRY_ASSERT(run >= 0.0 && slope > 0.0);
  auto walk = walk_rim(outline, top, bottom, tolerance);
  if (run == 0.0) walk = without_fans(walk);
  return unroll_in_parts(walk, run, slope, run / slope);
}

std::vector<Strip> develop_core(double top, double bottom, double height, double tolerance) {
  const double run = bottom - top, slope = std::hypot(run, height);
  GEOMETRY_ASSERT(run >= 0.0 && slope > 0.0 && top > 0.0);
  const auto core = make_outline(Round{2.0 * top});
  if (!core) return {};
  return unroll_in_parts(walk_rim(*core, 0.0, 0.0, tolerance), 0.0, slope, -run / slope);
}

Loop strip_outline(const Strip& strip, const StripExtras& extras) {
  Loop outline = strip.upper;
  if (strip.lower.empty()) return outline;
  const dvec2 lower_end = strip.lower.back().line.back();
  if (extras.lap > 0.0) {
    const dvec2 lap = extras.lap * direction(strip.end_heading);
    outline.push_back(strip.upper.back() + lap);
    outline.push_back(lower_end + lap);
  }
  for (auto edge = strip.lower.rbegin(); edge != strip.lower.rend(); ++edge) {
    if (edge->is_foot && extras.tab > 0.0 && line_length(edge->line) >= kShortestTabbed) {
      add_tabs(edge->line, extras, outline);
    } else {
      outline.insert(outline.end(), edge->line.rbegin(), edge->line.rend());
    }
  }
  return tidied(outline);
}

double loop_area(const Loop& loop) {
  double twice = 0.0;
  for (std::size_t i = 1; i + 1 < loop.size(); ++i) twice += cross(loop[i] - loop[0], loop[i + 1] - loop[0]);
  return 0.5 * twice;
}

double line_length(const Loop& line) {
  double length = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) length += glm::distance(line[i], line[i + 1]);
  return length;
}

}  // namespace tinwright
