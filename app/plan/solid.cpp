// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See solid.h. A body's surface is a path through the pan's half section, each point of which stands for a loop round
// the pan: up the outer wall, over the rim, down the inner one.
#include "app/plan/solid.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "app/plan/rim_tracks.h"

namespace tinwright {
namespace {

constexpr int kPoints = 112;  // round a rim
constexpr int kFewestPoints = 24;
constexpr double kArcSteps = 0.08;        // [1/rad] for each point round a rim
constexpr double kFewestArcSteps = 0.07;  // of any arc, likewise
constexpr double kMetal = 0.01;           // [-] of the pan's length: thickness of its walls, as they are drawn
constexpr double kLeastStep = 0.5;        // [-] of the depth over the points round a rim
constexpr double kSameNode = 1e-7;        // [m]

/// A place in the half section, standing for a loop.
struct Node {
  double inset = 0.0, z = 0.0;  // [m]
  bool is_core = false;
};
using Path = std::vector<Node>;

/// How a wall is gone along.
struct Along {
  bool is_core = false;
  bool goes_down = false;
  double foot = 0.0;   // [m] height of the wall's own floor
  double metal = 0.0;  // [m] by which the path runs outside the wall
  double fall = 0.0;   // [m] by which it runs lower at the floor, and less above
};

class Bodies {
 public:
  Bodies(const BenchAnswer& answer, const RimTracks& tracks, int points)
      : answer_(answer), pan_(*answer.my_pan), tracks_(tracks), points_(points) {
    add_metal();
    const double floor = answer.press ? add_dough() : 0.0;
    if (answer.fill && answer.fill_job && answer.fill->height > kSameNode) {
      add_full(SolidPart::kFilling, answer.fill_job->cavity, answer.fill->height, floor);
    }
  }

  std::vector<SolidBody> take() { return std::move(bodies_); }

 private:
  void go(const Profile& wall, const Along& along) {
    const auto start = static_cast<std::ptrdiff_t>(path_.size());
    const double top = wall.depth();
    const double least = std::max(kSameNode, kLeastStep * top / points_);
    double last_inset = -1.0, last_z = -1.0;
    const auto put = [&](double inset, double z) {
      if (std::abs(last_inset - inset) + std::abs(last_z - z) <= least) {
        if (z < top) return;
        path_.pop_back();  // the top is kept exactly
      }
      last_inset = inset;
      last_z = z;
      path_.push_back({inset - along.metal, along.foot + z - along.fall * (1.0 - z / top), along.is_core});
    };
    for (const WallPiece& piece : wall.pieces()) {
      put(piece.d0, piece.z0);
      if (piece.is_arc()) {
        put_arc(piece, put);
      } else if (!along.is_core) {
        for (auto d = tracks_.bends().rbegin(); d != tracks_.bends().rend(); ++d) {
          if (*d >= piece.d0 || *d <= piece.d1) continue;
          put(*d, piece.z0 + piece.height() * (*d - piece.d0) / (piece.d1 - piece.d0));
        }
      }
      put(piece.d1, piece.z1);
    }
    if (along.goes_down) std::reverse(path_.begin() + start, path_.end());
  }

  template <class Put>
  void put_arc(const WallPiece& piece, const Put& put) const {
    const auto angle = [&](double z) { return std::asin(std::clamp((z - piece.centre_z) / piece.radius, -1.0, 1.0)); };
    const double from = angle(piece.z0);
    const double turn = angle(piece.z1) - from;
    const double steps = std::ceil(std::max(kArcSteps * turn, kFewestArcSteps) * points_);
    for (int i = 1; i < steps; ++i) {
      const double z = piece.centre_z + piece.radius * std::sin(from + turn * i / steps);
      put(inset_at(piece, z), z);
    }
  }

  /// Makes a body of the path gone; `shrink` [-]: of its loops about the middle.
  void finish(SolidPart part, bool is_closed, double shrink = 1.0) {
    std::vector<glm::dvec3> points;
    std::uint32_t count = 0;
    for (const Node& node : path_) {
      // A core's loops are of as many points as the rim, which is round too.
      const double size = node.is_core ? (pan_.core->outline.length + 2.0 * node.inset) / pan_.outline.length : shrink;
      const Loop loop = tracks_.at(node.is_core ? 0.0 : node.inset);
      count = static_cast<std::uint32_t>(loop.size());
      for (const glm::dvec2 p : loop) points.emplace_back(size * p, node.z);
    }
    path_.clear();
    bodies_.push_back(
        {part, mesh_of(std::move(points), count, is_closed ? LoopPath::kClosed : LoopPath::kOpen, tracks_.is_star()),
         tracks_.edge_cosine()});
  }

  void add_metal() {
    const double metal = kMetal * pan_.outline.length;
    const double fall = pan_.bottomless ? 0.0 : metal;
    go(pan_.wall, {.metal = metal, .fall = fall});
    go(pan_.wall, {.goes_down = true});
    if (pan_.core) {
      go(pan_.core->wall, {.is_core = true});
      const double thin = std::min(metal, 0.25 * pan_.core->outline.length);
      go(pan_.core->wall, {.is_core = true, .goes_down = true, .metal = thin, .fall = fall});
    }
    finish(SolidPart::kPan, pan_.core || pan_.bottomless);
  }

  /// What fills `pan` to `height` above its floor, which lies at `floor`.
  void add_full(SolidPart part, const Pan& pan, double height, double floor) {
    go(pan.wall.between(0.0, height), {.foot = floor});
    if (pan.core) go(pan.core->wall.between(0.0, height), {.is_core = true, .goes_down = true, .foot = floor});
    finish(part, pan.core.has_value());
  }

  void add_slab() {
    const PressAnswer& press = *answer_.press;
    const double thick = press.floor_thickness;
    if (pan_.core) {  // a band round the core
      const double reach = 0.5 * (pan_.outline.length - slab_extent(pan_, press.coverage).length);
      const double core = pan_.core->wall.floor_inset();
      path_ = {{reach, 0.0}, {reach, thick}, {core, thick, true}, {core, 0.0, true}};
    } else {
      path_ = {{pan_.wall.floor_inset(), 0.0}, {pan_.wall.floor_inset(), thick}};
    }
    finish(SolidPart::kDough, pan_.core.has_value(), pan_.core ? 1.0 : std::sqrt(press.coverage));
  }

  /// The height of the cavity's floor above the pan's [m].
  double add_dough() {
    const PressAnswer& press = *answer_.press;
    const auto crust = crust_of(*answer_.press_job, press);
    if (!crust) {
      if (press.floor_thickness > kSameNode && press.coverage > 0.0) add_slab();
      return 0.0;
    }
    const auto cavity = line_pan(pan_, *crust);
    const double floor = cavity ? crust->height - depth(*cavity) : 0.0;
    if (!cavity || crust->wall <= kSameNode) {
      add_full(SolidPart::kDough, pan_, cavity ? crust->floor : crust->height, 0.0);
      return floor;
    }
    go(pan_.wall.between(0.0, crust->height), {});
    go(cavity->wall, {.goes_down = true, .foot = floor});
    if (pan_.core) {
      go(cavity->core->wall, {.is_core = true, .foot = floor});
      go(pan_.core->wall.between(0.0, crust->height), {.is_core = true, .goes_down = true});
    }
    finish(SolidPart::kDough, pan_.core.has_value());
    return floor;
  }

  const BenchAnswer& answer_;
  const Pan& pan_;
  const RimTracks& tracks_;
  int points_;
  Path path_;
  std::vector<SolidBody> bodies_;
};

/// [m] How far in the pan's wall, or that of a cavity in it, comes.
double deepest_inset(const BenchAnswer& answer) {
  double deepest = answer.my_pan->wall.floor_inset();
  const auto take = [&](const Pan& cavity) { deepest = std::max(deepest, cavity.wall.floor_inset()); };
  if (answer.fill_job) take(answer.fill_job->cavity);
  const auto crust = answer.press ? crust_of(*answer.press_job, *answer.press) : std::nullopt;
  if (!crust) return deepest;
  const auto cavity = line_pan(*answer.my_pan, *crust);
  if (cavity) take(*cavity);
  return deepest;
}

std::vector<SolidBody> bodies_of(const BenchAnswer& answer, int points) {
  const RimTracks tracks(answer.my_pan->outline, deepest_inset(answer), points);
  return Bodies(answer, tracks, points).take();
}

std::size_t triangles_of(const std::vector<SolidBody>& bodies) {
  std::size_t count = 0;
  for (const SolidBody& body : bodies) count += body.mesh.triangles.size();
  return count;
}

}  // namespace

std::vector<SolidBody> solid_bodies(const BenchAnswer& answer, const SolidQuestion& question) {
  if (!answer.my_pan) return {};
  int points = kPoints * question.fineness;
  const std::size_t most = kMostTriangles * static_cast<std::size_t>(question.fineness * question.fineness);
  std::vector<SolidBody> bodies = bodies_of(answer, points);
  while (triangles_of(bodies) > most && points > kFewestPoints) {
    points = points * 3 / 4;
    bodies = bodies_of(answer, points);
  }
  for (SolidBody& body : bodies) {
    if (question.is_cut) body.mesh = back_half(body.mesh);
    join_points(body.mesh);
  }
  return bodies;
}

}  // namespace tinwright
