// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See solid.h. A body's surface is a path through the pan's half section, each point of which stands for a loop round
// the pan: up the outer wall, over the rim, down the inner one.
#include "app/plan/solid.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/plan/rim_tracks.h"

namespace tinwright {
namespace {

constexpr int kPoints = 112;  // round a rim
constexpr int kFewestPoints = 24;
constexpr double kArcSteps = 0.5;         // of a whole circle, for each point round a rim
constexpr double kFewestArcSteps = 0.07;  // of any arc, likewise
constexpr int kMostNodes = 48;            // of a wall given by many points
constexpr double kMetal = 0.01;           // [-] of the pan's length: thickness of its walls, as they are drawn
constexpr double kSameNode = 1e-7;        // [m]

/// A place in the half section, standing for a loop.
struct Node {
  double inset = 0.0, z = 0.0;  // [m]
  bool is_core = false;
};
using Path = std::vector<Node>;

struct Body {
  SolidPart part;
  Path path;
  RingPath kind;
  double shrink = 1.0;  // [-] of its loops about the middle
};

/// A wall from its floor to its top.
Path wall_path(const Profile& wall, bool is_core, const std::vector<double>& bends, int points) {
  Path path;
  const auto put = [&](double inset, double z) {
    const bool is_new = path.empty() || std::abs(path.back().inset - inset) + std::abs(path.back().z - z) > kSameNode;
    if (is_new) path.push_back({inset, z, is_core});
  };
  for (const WallPiece& piece : wall.pieces()) {
    put(piece.d0, piece.z0);
    if (piece.is_arc()) {
      const auto angle = [&](double z) {
        return std::asin(std::clamp((z - piece.centre_z) / piece.radius, -1.0, 1.0));
      };
      const double from = angle(piece.z0);
      const double to = angle(piece.z1);
      const double angle_share = (to - from) / (2.0 * std::numbers::pi);
      const double steps = std::ceil(std::max(kArcSteps * angle_share, kFewestArcSteps) * points);
      for (int i = 1; i < steps; ++i) {
        const double z = piece.centre_z + piece.radius * std::sin(from + (to - from) * i / steps);
        put(inset_at(piece, z), z);
      }
    } else if (!is_core) {
      for (auto d = bends.rbegin(); d != bends.rend(); ++d) {
        if (*d >= piece.d0 || *d <= piece.d1) continue;
        put(*d, piece.z0 + piece.height() * (*d - piece.d0) / (piece.d1 - piece.d0));
      }
    }
    put(piece.d1, piece.z1);
  }
  const std::size_t stride = path.size() / static_cast<std::size_t>(points) + 1;
  if (stride == 1) return path;
  Path thinned;
  for (std::size_t i = 0; i < path.size(); i += stride) thinned.push_back(path[i]);
  thinned.back() = path.back();
  return thinned;
}

Path raised(Path path, double by) {
  for (Node& node : path) node.z += by;
  return path;
}

Path operator+(Path path, const Path& more) {
  path.insert(path.end(), more.begin(), more.end());
  return path;
}

Path reversed(const Path& path) {
  return {path.rbegin(), path.rend()};
}

/// The paths of the pan and of what is in it.
class Sections {
 public:
  Sections(const BenchAnswer& answer, const RimTracks& tracks, int points)
      : answer_(answer), pan_(*answer.my_pan), bends_(tracks.bends()), points_(points) {
    add_metal();
    const double floor = answer.press ? add_dough() : 0.0;
    if (answer.fill && answer.fill_job && answer.fill->height > kSameNode) {
      add_full(SolidPart::kFilling, answer.fill_job->cavity, answer.fill->height, floor);
    }
  }

  const std::vector<Body>& bodies() const { return bodies_; }

 private:
  Path path(const Profile& wall, bool is_core) const { return wall_path(wall, is_core, bends_, points_); }

  /// The same moved by the metal's thickness away from the inside, at the floor down as well.
  Path outside(Path wall) const {
    const double metal = kMetal * pan_.outline.length;
    const double top = wall.back().z;
    for (Node& node : wall) {
      node.inset -= node.is_core ? std::min(metal, 0.25 * pan_.core->outline.length) : metal;
      if (!pan_.bottomless) node.z -= metal * (1.0 - node.z / top);
    }
    return wall;
  }

  void add_metal() {
    const Path wall = path(pan_.wall, false);
    Path all = outside(wall) + reversed(wall);
    if (pan_.core) {
      const Path core = path(pan_.core->wall, true);
      all = all + core + reversed(outside(core));
    }
    bodies_.push_back({SolidPart::kPan, all, pan_.core || pan_.bottomless ? RingPath::kClosed : RingPath::kOpen});
  }

  /// What fills `pan` to `height` above its floor, which lies at `floor`.
  void add_full(SolidPart part, const Pan& pan, double height, double floor) {
    const double top = std::min(height, depth(pan));
    Path all = path(pan.wall.between(0.0, top), false);
    if (pan.core) all = all + reversed(path(pan.core->wall.between(0.0, top), true));
    bodies_.push_back({part, raised(all, floor), pan.core ? RingPath::kClosed : RingPath::kOpen});
  }

  void add_slab() {
    const PressAnswer& press = *answer_.press;
    const double foot = pan_.wall.floor_inset();
    if (!pan_.core) {
      const Path wall{{foot, 0.0}, {foot, press.floor_thickness}};
      bodies_.push_back({SolidPart::kDough, wall, RingPath::kOpen, std::sqrt(press.coverage)});
      return;
    }
    const double reach = 0.5 * (pan_.outline.length - slab_extent(pan_, press.coverage).length);
    const double core = pan_.core->wall.floor_inset();
    const Path band{
        {reach, 0.0}, {reach, press.floor_thickness}, {core, press.floor_thickness, true}, {core, 0.0, true}};
    bodies_.push_back({SolidPart::kDough, band, RingPath::kClosed});
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
    if (!cavity || crust->wall <= kSameNode) {
      add_full(SolidPart::kDough, pan_, cavity ? crust->floor : crust->height, 0.0);
      return cavity ? crust->height - depth(*cavity) : 0.0;
    }
    const double floor = crust->height - depth(*cavity);
    Path all = path(pan_.wall.between(0.0, crust->height), false) + reversed(raised(path(cavity->wall, false), floor));
    if (pan_.core) {
      all = all + raised(path(cavity->core->wall, true), floor) +
            reversed(path(pan_.core->wall.between(0.0, crust->height), true));
    }
    bodies_.push_back({SolidPart::kDough, all, pan_.core ? RingPath::kClosed : RingPath::kOpen});
    return floor;
  }

  const BenchAnswer& answer_;
  const Pan& pan_;
  const std::vector<double>& bends_;
  int points_;
  std::vector<Body> bodies_;
};

Ring ring_of(const Node& node, const Pan& pan, const RimTracks& tracks, double shrink) {
  Loop loop = tracks.at(node.is_core ? 0.0 : node.inset);
  if (node.is_core) {  // of as many points as the rim, which is round too
    shrink = (0.5 * pan.core->outline.length + node.inset) / (0.5 * pan.outline.length);
  }
  for (glm::dvec2& p : loop) p *= shrink;
  return {loop, node.z};
}

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
  const Pan& pan = *answer.my_pan;
  const double deepest = deepest_inset(answer);
  const RimTracks tracks(pan.outline, deepest, points);
  const Sections sections(answer, tracks, points);
  std::vector<SolidBody> bodies;
  for (const Body& body : sections.bodies()) {
    std::vector<Ring> rings;
    for (const Node& node : body.path) rings.push_back(ring_of(node, pan, tracks, body.shrink));
    ClosedMesh mesh = mesh_of(rings, body.kind, tracks.is_star());
    bodies.push_back({body.part, std::move(mesh), tracks.edge_cosine()});
  }
  return bodies;
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
