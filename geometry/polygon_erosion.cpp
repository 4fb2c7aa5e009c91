// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See polygon_erosion.h.
#include "geometry/polygon_erosion.h"
#include "geometry/plane.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include <glm/common.hpp>
#include <glm/geometric.hpp>

namespace tinwright {
namespace {

using glm::dvec2;
using std::numbers::pi;

/// Parts of a border shorter than this share of the inset are rounding [-].
constexpr double kShortestPart = 1e-11;

dvec2 direction(double angle) {
  return {std::cos(angle), std::sin(angle)};
}

struct Side {
  dvec2 from, to, along, inward;
  double length;
};

struct Interval {
  double low, high;
};

std::vector<Side> sides_of(const std::vector<dvec2>& corners) {
  std::vector<Side> sides;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const dvec2 a = corners[i];
    const dvec2 b = corners[(i + 1) % corners.size()];
    const dvec2 along = glm::normalize(b - a);
    sides.push_back({a, b, along, dvec2(-along.y, along.x), glm::distance(a, b)});
  }
  return sides;
}

double distance_to(const Side& side, dvec2 p) {
  const double u = std::clamp(glm::dot(p - side.from, side.along), 0.0, side.length);
  return glm::distance(p, side.from + u * side.along);
}

/// What is left of [low, high] after taking away `gone`.
std::vector<Interval> remaining(double low, double high, std::vector<Interval> gone, double shortest) {
  std::sort(gone.begin(), gone.end(), [](const Interval& a, const Interval& b) { return a.low < b.low; });
  std::vector<Interval> left;
  double from = low;
  for (const Interval& g : gone) {
    if (g.low - from > shortest) left.push_back({from, std::min(g.low, high)});
    from = std::max(from, g.high);
    if (from >= high) return left;
  }
  if (high - from > shortest) left.push_back({from, high});
  return left;
}

/// Where the line p + u·t comes nearer than r to `side`: one interval, since that neighbourhood is convex.
/// Discs about the side's ends count only where asked: a line is tangent to those of its own side's neighbours.
std::optional<Interval> near_on_line(dvec2 p, dvec2 t, const Side& side, double r, bool from_disc, bool to_disc) {
  std::optional<Interval> near;
  const auto add = [&](double low, double high) {
    if (low < high) near = near ? Interval{std::min(near->low, low), std::max(near->high, high)} : Interval{low, high};
  };
  const auto add_disc = [&](dvec2 centre) {
    const double middle = glm::dot(centre - p, t);
    const double off = cross(t, centre - p);
    if (std::abs(off) < r) {
      const double half = std::sqrt((r - off) * (r + off));
      add(middle - half, middle + half);
    }
  };
  if (from_disc) add_disc(side.from);
  if (to_disc) add_disc(side.to);

  // The rectangle along the side: 0 < v < length and |w| < r, each linear in u.
  double low = -1e300;
  double high = 1e300;
  const auto clip = [&](double at_zero, double by_u, double bound_low, double bound_high) {
    if (std::abs(by_u) < 1e-14) {
      if (at_zero <= bound_low || at_zero >= bound_high) high = low;
      return;
    }
    const double a = (bound_low - at_zero) / by_u;
    const double b = (bound_high - at_zero) / by_u;
    low = std::max(low, std::min(a, b));
    high = std::min(high, std::max(a, b));
  };
  clip(glm::dot(p - side.from, side.along), glm::dot(t, side.along), 0.0, side.length);
  clip(glm::dot(p - side.from, side.inward), glm::dot(t, side.inward), -r, r);
  add(low, high);
  return near;
}

/// Angles about `centre`, within [low, high], at which the circle of radius r comes nearer than r to `side`.
void near_on_circle(std::vector<Interval>& near, dvec2 centre, double low, double high, const Side& side, double r) {
  std::vector<double> breaks{low, high};
  const auto add = [&](double angle) {
    while (angle < low) angle += 2.0 * pi;
    while (angle - 2.0 * pi > low) angle -= 2.0 * pi;
    if (angle < high) breaks.push_back(angle);
  };
  const auto add_line = [&](dvec2 normal, double offset) {  // normal · (centre + r·direction) = offset
    const double c = (offset - glm::dot(normal, centre)) / r;
    if (std::abs(c) > 1.0) return;
    const double base = std::atan2(normal.y, normal.x);
    add(base + std::acos(c));
    add(base - std::acos(c));
  };
  for (const dvec2 end : {side.from, side.to}) {
    const double apart = glm::distance(end, centre);
    if (apart > 0.0 && apart < 2.0 * r) {
      const double base = std::atan2(end.y - centre.y, end.x - centre.x);
      add(base + std::acos(0.5 * apart / r));
      add(base - std::acos(0.5 * apart / r));
    }
    add_line(side.along, glm::dot(side.along, end));
  }
  add_line(side.inward, glm::dot(side.inward, side.from) + r);
  add_line(side.inward, glm::dot(side.inward, side.from) - r);
  std::sort(breaks.begin(), breaks.end());
  for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
    const dvec2 middle = centre + r * direction(0.5 * (breaks[i] + breaks[i + 1]));
    if (distance_to(side, middle) < r) near.push_back({breaks[i], breaks[i + 1]});
  }
}

/// Whether `side` keeps more than `distance` from the segment ab, by their extents.
bool is_far(dvec2 a, dvec2 b, const Side& side, double distance) {
  const dvec2 gap =
      glm::max(glm::min(side.from, side.to) - glm::max(a, b), glm::min(a, b) - glm::max(side.from, side.to));
  return gap.x > distance || gap.y > distance;
}

void add_line_parts(std::vector<BorderPart>& border, const std::vector<Side>& sides, std::size_t i, double inset) {
  const Side& own = sides[i];
  const dvec2 p = own.from + inset * own.inward;
  std::vector<Interval> gone;
  for (std::size_t j = 0; j < sides.size(); ++j) {
    if (j == i || is_far(own.from, own.to, sides[j], 2.0 * inset)) continue;
    const bool follows = j == (i + 1) % sides.size();
    const bool leads = i == (j + 1) % sides.size();
    if (const auto near = near_on_line(p, own.along, sides[j], inset, !follows, !leads)) gone.push_back(*near);
  }
  for (const Interval& part : remaining(0.0, own.length, gone, kShortestPart * inset)) {
    border.push_back({.from = p + part.low * own.along, .to = p + part.high * own.along, .centre = {}});
  }
}

/// The arc about the corner between sides i and i + 1, where it points inwards.
void add_arc_parts(std::vector<BorderPart>& border, const std::vector<Side>& sides, std::size_t i, double inset) {
  const std::size_t next = (i + 1) % sides.size();
  if (cross(sides[i].along, sides[next].along) >= 0.0) return;
  const dvec2 corner = sides[i].to;
  const double high = std::atan2(sides[i].inward.y, sides[i].inward.x);
  double low = std::atan2(sides[next].inward.y, sides[next].inward.x);
  if (low > high) low -= 2.0 * pi;
  std::vector<Interval> gone;
  for (std::size_t j = 0; j < sides.size(); ++j) {
    if (j != i && j != next && !is_far(corner, corner, sides[j], 2.0 * inset))
      near_on_circle(gone, corner, low, high, sides[j], inset);
  }
  for (const Interval& part : remaining(low, high, gone, kShortestPart)) {
    border.push_back({.from = corner + inset * direction(part.high),
                      .to = corner + inset * direction(part.low),
                      .radius = inset,
                      .centre = corner,
                      .angle0 = part.high,
                      .angle1 = part.low});
  }
}

}  // namespace

std::vector<BorderPart> eroded_border(const std::vector<dvec2>& corners, double inset) {
  const std::vector<Side> sides = sides_of(corners);
  std::vector<BorderPart> border;
  for (std::size_t i = 0; i < sides.size(); ++i) {
    add_line_parts(border, sides, i, inset);
    add_arc_parts(border, sides, i, inset);
  }
  return border;
}

AreaCurve::Sample measure_border(const std::vector<BorderPart>& border, double inset) {
  AreaCurve::Sample sample{inset, 0.0, 0.0};
  for (const BorderPart& part : border) {
    sample.area += 0.5 * cross(part.from, part.to);
    if (part.radius > 0.0) {
      // The segment between arc and chord, which a clockwise arc takes away.
      const double turn = part.angle0 - part.angle1;
      sample.area -= 0.5 * part.radius * part.radius * (turn - std::sin(turn));
      sample.perimeter += part.radius * turn;
    } else {
      sample.perimeter += glm::distance(part.from, part.to);
    }
  }
  sample.area = std::max(0.0, sample.area);
  return sample;
}

std::vector<std::vector<dvec2>> border_loops(std::vector<BorderPart> border) {
  constexpr double kChordAngle = pi / 60;
  std::vector<std::vector<dvec2>> loops;
  while (!border.empty()) {
    std::vector<dvec2> loop;
    BorderPart part = border.back();
    border.pop_back();
    const dvec2 start = part.from;
    while (true) {
      const int chords = part.radius > 0.0 ? 1 + static_cast<int>((part.angle0 - part.angle1) / kChordAngle) : 1;
      loop.push_back(part.from);
      for (int i = 1; i < chords; ++i) {
        loop.push_back(part.centre + part.radius * direction(std::lerp(part.angle0, part.angle1, double(i) / chords)));
      }
      const auto next = std::min_element(border.begin(), border.end(), [&](const BorderPart& a, const BorderPart& b) {
        return glm::distance(a.from, part.to) < glm::distance(b.from, part.to);
      });
      if (next == border.end() || glm::distance(start, part.to) <= glm::distance(next->from, part.to)) break;
      part = *next;
      border.erase(next);
    }
    loops.push_back(loop);
  }
  return loops;
}

}  // namespace tinwright
