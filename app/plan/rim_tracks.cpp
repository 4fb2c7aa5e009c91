// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See rim_tracks.h. A freeform outline's points move at right angles to their side; once sides vanish or islands part,
// each goes on to the nearest point of what is left.
#include "app/plan/rim_tracks.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <glm/geometric.hpp>

#include "geometry/lobes.h"
#include "geometry/plane.h"

namespace tinwright {
namespace {

using std::numbers::pi;

constexpr double kNearlyClosed = 1.0 - 1e-7;  // [-] of the closing inset: the last loop there is
constexpr int kLobeBends = 16;                // of up to kUsualPoints; more with more of them
constexpr int kFreeformBends = 24;            // likewise
constexpr int kUsualPoints = 112;
constexpr int kFewestBends = 4;
constexpr int kManyLobes = 240;        // from here on, a point at each crest and hollow has to do
constexpr double kLongestMitre = 3.0;  // [-] of a corner moved outwards
constexpr double kStraight = 2e-3;  // [-] of the inset: nearer than this to where it was to go, a point went straight

Loop circle(double radius, int points) {
  Loop loop;
  for (int i = 0; i < points; ++i) {
    const double angle = 2.0 * pi * i / points;
    loop.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
  }
  return loop;
}

Loop loop_at(const Round& round, double inset, int points) {
  return circle(0.5 * round.diameter - inset, points);
}

int corner_points(const Rectangle& rectangle, int points) {
  return rectangle.corner_radius > 0.0 ? std::max(3, points / 12) : 1;
}

Loop loop_at(const Rectangle& rectangle, double inset, int points) {
  const double radius = std::max(0.0, rectangle.corner_radius - inset);
  const glm::dvec2 centre(0.5 * rectangle.length - inset - radius, 0.5 * rectangle.width - inset - radius);
  const int count = corner_points(rectangle, points);
  Loop loop;
  for (int corner = 0; corner < 4; ++corner) {
    const glm::dvec2 side(corner == 0 || corner == 3 ? 1.0 : -1.0, corner < 2 ? 1.0 : -1.0);
    for (int i = 0; i < count; ++i) {
      const double angle = 0.5 * pi * (corner + (count > 1 ? double(i) / (count - 1) : 0.5));
      loop.push_back(side * centre + radius * glm::dvec2(std::cos(angle), std::sin(angle)));
    }
  }
  return loop;
}

HalfLobe lobe_of(const Oval& oval) {
  return oval_lobe(0.5 * std::max(oval.length, oval.width), 0.5 * std::min(oval.length, oval.width));
}

HalfLobe lobe_of(const Fluted& fluted) {
  return fluted_lobe(fluted.diameter, fluted.flutes, fluted.flute_depth);
}

int points_of_half(const HalfLobe& lobe, int points) {
  return 1 + std::max(lobe.copies < kManyLobes ? 2 : 1, points / lobe.copies);
}

Loop loop_at(const Oval& oval, double inset, int points) {
  const HalfLobe lobe = lobe_of(oval);
  Loop loop = lobe_loop(lobe, inset, points_of_half(lobe, points));
  if (oval.length < oval.width) {
    for (glm::dvec2& p : loop) p = glm::dvec2(-p.y, p.x);
  }
  return loop;
}

Loop loop_at(const Fluted& fluted, double inset, int points) {
  // A flute is bent four times as much as a plain rim of the same number of points.
  const HalfLobe lobe = lobe_of(fluted);
  return lobe_loop(lobe, inset, points_of_half(lobe, 4 * points));
}

glm::dvec2 inward(glm::dvec2 from, glm::dvec2 to) {
  const glm::dvec2 along = glm::normalize(to - from);
  return {-along.y, along.x};
}

glm::dvec2 nearest_on(const Loops& loops, glm::dvec2 p) {
  glm::dvec2 nearest = p;
  double least = std::numeric_limits<double>::infinity();
  for (const Loop& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const glm::dvec2 from = loop[i];
      const glm::dvec2 side = loop[(i + 1) % loop.size()] - from;
      const double square = glm::dot(side, side);
      const double share = square > 0.0 ? std::clamp(glm::dot(p - from, side) / square, 0.0, 1.0) : 0.0;
      const glm::dvec2 foot = from + share * side;
      const double distance = glm::dot(p - foot, p - foot);
      if (distance < least) {
        least = distance;
        nearest = foot;
      }
    }
  }
  return nearest;
}

/// Where each point of a rim is, and how it moves per inset, inwards and outwards, until sides vanish.
struct Movers {
  Loop from, inwards, outwards;

  void add(glm::dvec2 at, glm::dvec2 way_in, glm::dvec2 way_out) {
    from.push_back(at);
    inwards.push_back(way_in);
    outwards.push_back(way_out);
  }
};

/// Corners that point outwards stay sharp, the others become arcs; sides are parted where longer than `longest` [m].
Movers movers_of(const Loop& corners, double arc_step, double longest) {
  Movers movers;
  const std::size_t count = corners.size();
  for (std::size_t i = 0; i < count; ++i) {
    const glm::dvec2 at = corners[i];
    const glm::dvec2 next = corners[(i + 1) % count];
    const glm::dvec2 before = inward(corners[(i + count - 1) % count], at);
    const glm::dvec2 after = inward(at, next);
    const glm::dvec2 mitre = (before + after) / std::max(1e-6, 1.0 + glm::dot(before, after));
    const glm::dvec2 out = mitre * std::min(1.0, kLongestMitre / glm::length(mitre));
    const double turn = std::atan2(cross(before, after), glm::dot(before, after));
    if (turn >= 0.0) {
      movers.add(at, mitre, out);
    } else {
      const int steps = 1 + static_cast<int>(-turn / arc_step);
      for (int k = 0; k <= steps; ++k) {
        const double angle = std::atan2(before.y, before.x) + turn * k / steps;
        movers.add(at, {std::cos(angle), std::sin(angle)}, out);
      }
    }
    const int parts = static_cast<int>(std::ceil(glm::length(next - at) / longest));
    for (int k = 1; k < parts; ++k) movers.add(at + (next - at) * (double(k) / parts), after, after);
  }
  return movers;
}

Loop moved(const Loop& from, const Loop& ways, double by) {
  Loop loop = from;
  for (std::size_t i = 0; i < loop.size(); ++i) loop[i] += by * ways[i];
  return loop;
}

/// Each point on the nearest of `left`; whether that is where it was, to `tolerance` [m].
bool settle(Loop& points, const Loops& left, double tolerance) {
  bool stayed = true;
  for (glm::dvec2& p : points) {
    const glm::dvec2 foot = nearest_on(left, p);
    if (glm::distance(foot, p) <= tolerance) continue;
    p = foot;
    stayed = false;
  }
  return stayed;
}

}  // namespace

RimTracks::RimTracks(const Outline& outline, double deepest, int points) : outline_(&outline), points_(points) {
  const double closes = outline.curve.closes_at();
  if (const auto* rectangle = std::get_if<Rectangle>(&outline.shape)) bends_ = {rectangle->corner_radius};
  if (const auto* polygon = std::get_if<RegularPolygon>(&outline.shape)) edge_cosine_ = std::cos(pi / polygon->sides);
  if (std::holds_alternative<Fluted>(outline.shape)) edge_cosine_ = 0.25;
  const auto& pieces = outline.curve.pieces();
  if ((std::holds_alternative<Fluted>(outline.shape) || std::holds_alternative<Oval>(outline.shape)) &&
      pieces.size() > 1) {
    // From here on the crests fold away.
    const int count = std::max(kFewestBends, kLobeBends * points / kUsualPoints);
    for (int i = 0; i <= count; ++i) {
      const double share = double(i) / count;
      bends_.push_back(pieces[1].start + (closes - pieces[1].start) * share * share);
    }
  }
  if (const auto* freeform = std::get_if<Freeform>(&outline.shape)) {
    edge_cosine_ = 0.95;
    follow_freeform(*freeform, std::clamp(deepest, 1e-6 * closes, kNearlyClosed * closes), points);
  }
}

void RimTracks::follow_freeform(const Freeform& freeform, double deepest, int points) {
  const double arc_step = 4.0 * pi / points;
  Movers movers = movers_of(freeform.corners, arc_step, std::numeric_limits<double>::infinity());
  Loop end = moved(movers.from, movers.inwards, deepest);
  if (settle(end, outline_loops(*outline_, deepest), kStraight * deepest)) {
    bends_ = {deepest};
    followed_ = {movers.from, end};
    outwards_ = movers.outwards;
    return;
  }
  const double longest = outline_->curve.perimeter(0.0) / points;
  movers = movers_of(freeform.corners, arc_step, longest);
  outwards_ = movers.outwards;
  followed_ = {movers.from};
  std::vector<bool> is_straight(movers.from.size(), true);
  const int levels = std::max(kFewestBends, kFreeformBends * points / kUsualPoints);
  for (int k = 1; k <= levels; ++k) {
    const double inset = deepest * k / levels;
    const Loops left = outline_loops(*outline_, inset);
    Loop loop = moved(movers.from, movers.inwards, inset);
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const glm::dvec2 foot = nearest_on(left, is_straight[i] ? loop[i] : followed_.back()[i]);
      is_straight[i] = is_straight[i] && glm::distance(foot, loop[i]) <= kStraight * inset;
      loop[i] = is_straight[i] ? foot : nearest_on(left, followed_.back()[i]);
    }
    bends_.push_back(inset);
    followed_.push_back(loop);
  }
}

Loop RimTracks::at(double inset) const {
  if (followed_.empty()) {
    const double kept = std::min(inset, kNearlyClosed * outline_->curve.closes_at());
    const OutlineShape& shape = outline_->shape;
    if (const auto* round = std::get_if<Round>(&shape)) return loop_at(*round, kept, points_);
    if (const auto* rectangle = std::get_if<Rectangle>(&shape)) return loop_at(*rectangle, kept, points_);
    if (const auto* oval = std::get_if<Oval>(&shape)) return loop_at(*oval, kept, points_);
    if (const auto* fluted = std::get_if<Fluted>(&shape)) return loop_at(*fluted, kept, points_);
    return outline_loops(*outline_, kept).front();  // straight sides: their corners
  }
  if (inset <= 0.0) return moved(followed_.front(), outwards_, inset);
  const double place = std::min(inset / bends_.back(), 1.0) * static_cast<double>(bends_.size());
  const auto below = std::min(static_cast<std::size_t>(place), bends_.size() - 1);
  Loop loop = followed_[below];
  for (std::size_t i = 0; i < loop.size(); ++i) {
    loop[i] += (followed_[below + 1][i] - loop[i]) * (place - static_cast<double>(below));
  }
  return loop;
}

}  // namespace tinwright
