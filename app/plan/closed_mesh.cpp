// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See closed_mesh.h. Lids are triangulated by cutting off ears (Meisters 1975); cuts join up by the edges they cross,
// not by places, so that rounding opens no gap.
#include "app/plan/closed_mesh.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <glm/common.hpp>
#include <glm/geometric.hpp>

#include "geometry/plane.h"

namespace tinwright {
namespace {

constexpr double kSamePlace = 1e-6;  // [-] of the body's size: points nearer than this are one
constexpr double kNoTurn = 1e-12;    // [-] of a polygon's size squared: a corner that does not turn

void add(ClosedMesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c, std::size_t strip) {
  mesh.triangles.emplace_back(a, b, c);
  mesh.strips.push_back(static_cast<std::uint16_t>(strip));
}

/// The lid over the loop of `count` points from `first` on.
void add_lid(ClosedMesh& mesh, std::uint32_t first, std::uint32_t count, bool faces_up, bool is_star) {
  const auto strip = static_cast<std::size_t>(ClosedMesh::kFlat + (faces_up ? 1 : 0));
  const auto add_faced = [&](std::uint32_t a, std::uint32_t b, std::uint32_t c) {
    faces_up ? add(mesh, a, b, c, strip) : add(mesh, a, c, b, strip);
  };
  if (is_star) {
    const auto middle = static_cast<std::uint32_t>(mesh.points.size());
    mesh.points.emplace_back(0.0, 0.0, mesh.points[first].z);
    for (std::uint32_t i = 0; i < count; ++i) add_faced(middle, first + i, first + (i + 1) % count);
    return;
  }
  Loop loop;
  for (std::uint32_t i = first; i < first + count; ++i) loop.emplace_back(mesh.points[i]);
  for (const glm::uvec3 t : triangulate(loop)) add_faced(first + t.x, first + t.y, first + t.z);
}

class EarCutter {
 public:
  explicit EarCutter(const Loop& polygon) : p_(polygon) {
    glm::dvec2 low = p_.front();
    glm::dvec2 high = low;
    for (std::uint32_t i = 0; i < p_.size(); ++i) {
      left_.push_back(i);
      low = glm::min(low, p_[i]);
      high = glm::max(high, p_[i]);
    }
    no_turn_ = kNoTurn * glm::dot(high - low, high - low);
  }

  std::vector<glm::uvec3> cut() {
    std::vector<glm::uvec3> triangles;
    std::size_t at = 0;
    while (left_.size() > 2) {
      std::size_t tried = 0;
      while (!is_ear(at) && tried < left_.size()) {
        ++tried;
        at = (at + 1) % left_.size();
      }
      // A polygon that touches itself may have no ear that is clear of it; then any corner will do.
      triangles.emplace_back(corner(at, -1), left_[at], corner(at, 1));
      left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(at));
      // Leaving out the next one keeps ears from fanning out from one corner.
      at = (at + 1) % left_.size();
    }
    return triangles;
  }

 private:
  std::uint32_t corner(std::size_t at, int step) const {
    return left_[(at + left_.size() + static_cast<std::size_t>(step)) % left_.size()];
  }

  double turn(std::size_t at) const {
    const glm::dvec2 middle = p_[left_[at]];
    return cross(middle - p_[corner(at, -1)], p_[corner(at, 1)] - middle);
  }

  bool is_ear(std::size_t at) const {
    const double turned = turn(at);
    if (std::abs(turned) <= no_turn_) return true;
    if (turned < 0.0) return false;
    const glm::dvec2 a = p_[corner(at, -1)], b = p_[left_[at]], c = p_[corner(at, 1)];
    const auto is_within = [&](glm::dvec2 q) {
      return cross(b - a, q - a) > no_turn_ && cross(c - b, q - b) > no_turn_ && cross(a - c, q - c) > -no_turn_ &&
             q != a && q != c;
    };
    return std::none_of(left_.begin(), left_.end(), [&](std::uint32_t i) { return is_within(p_[i]); });
  }

  const Loop& p_;
  std::vector<std::uint32_t> left_;
  double no_turn_ = 0.0;
};

glm::dvec3 face_of(const ClosedMesh& mesh, glm::uvec3 t) {
  const glm::dvec3 a = mesh.points[t.x];
  return glm::cross(mesh.points[t.y] - a, mesh.points[t.z] - a);
}

/// A triangle's passage through the cutting plane.
struct Passage {
  std::uint64_t in, out;  // the edges where it comes in and goes out
};

std::uint32_t value_at(const std::vector<SortKey>& keys, std::uint64_t key) {
  return std::lower_bound(keys.begin(), keys.end(), key, [](const SortKey& a, std::uint64_t k) { return a.key < k; })
      ->value;
}

/// Lids over the loops that the passages make of points of `mesh`.
void close_cut(ClosedMesh& mesh, const std::vector<Passage>& passages, const std::vector<SortKey>& crossings) {
  constexpr auto kNone = std::numeric_limits<std::uint32_t>::max();
  std::vector<std::uint32_t> next(mesh.points.size(), kNone);
  for (const Passage& passage : passages) next[value_at(crossings, passage.in)] = value_at(crossings, passage.out);
  for (const SortKey& start : crossings) {
    std::vector<std::uint32_t> loop;
    Loop places;
    for (std::uint32_t at = start.value; next[at] != kNone;) {
      loop.push_back(at);
      places.emplace_back(mesh.points[at].x, mesh.points[at].z);
      const std::uint32_t following = next[at];
      next[at] = kNone;
      at = following;
    }
    if (loop.size() < 3) continue;
    for (const glm::uvec3 t : triangulate(places)) add(mesh, loop[t.x], loop[t.y], loop[t.z], ClosedMesh::kFlat + 2);
  }
}

}  // namespace

void sort_keys(std::vector<SortKey>& keys) {
  const auto comes_before = [](const SortKey& a, const SortKey& b) {
    return a.key != b.key ? a.key < b.key : a.value < b.value;
  };
  // On the page this takes a third of the room of std::sort.
  std::make_heap(keys.begin(), keys.end(), comes_before);
  std::sort_heap(keys.begin(), keys.end(), comes_before);
}

std::uint64_t edge_key(std::uint32_t a, std::uint32_t b) {
  return static_cast<std::uint64_t>(std::min(a, b)) << 32 | std::max(a, b);
}

std::vector<glm::uvec3> triangulate(const Loop& polygon) {
  return EarCutter(polygon).cut();
}

ClosedMesh mesh_of(std::vector<glm::dvec3> points, std::uint32_t count, LoopPath path, bool is_star) {
  ClosedMesh mesh;
  mesh.points = std::move(points);
  const auto all = static_cast<std::uint32_t>(mesh.points.size());
  const std::uint32_t last = path == LoopPath::kClosed ? all : all - count;
  for (std::uint32_t low = 0; low < last; low += count) {
    const std::uint32_t high = (low + count) % all;
    for (std::uint32_t i = 0; i < count; ++i) {
      const std::uint32_t j = (i + 1) % count;
      add(mesh, low + i, low + j, high + j, low / count);
      add(mesh, low + i, high + j, high + i, low / count);
    }
  }
  if (path == LoopPath::kOpen) {
    add_lid(mesh, 0, count, false, is_star);
    add_lid(mesh, last, count, true, is_star);
  }
  return mesh;
}

ClosedMesh back_half(const ClosedMesh& mesh) {
  ClosedMesh half;
  half.points = mesh.points;
  const auto is_kept = [&](std::uint32_t i) { return mesh.points[i].y >= 0.0; };
  std::vector<SortKey> crossings;
  for (const glm::uvec3 t : mesh.triangles) {
    for (int i = 0; i < 3; ++i) {
      const std::uint32_t a = t[i], b = t[(i + 1) % 3];
      if (a < b && is_kept(a) != is_kept(b)) crossings.push_back({edge_key(a, b), 0});
    }
  }
  sort_keys(crossings);
  for (SortKey& crossing : crossings) {
    const glm::dvec3 a = mesh.points[crossing.key >> 32];
    const glm::dvec3 b = mesh.points[crossing.key & 0xffffffff];
    crossing.value = static_cast<std::uint32_t>(half.points.size());
    half.points.push_back(a + (b - a) * (a.y / (a.y - b.y)));
    half.points.back().y = 0.0;
  }
  std::vector<Passage> passages;
  for (std::size_t n = 0; n < mesh.triangles.size(); ++n) {
    const glm::uvec3 t = mesh.triangles[n];
    std::uint32_t kept[4];
    std::size_t count = 0;
    Passage passage{0, 0};
    for (int i = 0; i < 3; ++i) {
      const std::uint32_t a = t[i], b = t[(i + 1) % 3];
      if (is_kept(a)) kept[count++] = a;
      if (is_kept(a) == is_kept(b)) continue;
      kept[count++] = value_at(crossings, edge_key(a, b));
      (is_kept(a) ? passage.out : passage.in) = edge_key(a, b);
    }
    if (count >= 3) add(half, kept[0], kept[1], kept[2], mesh.strips[n]);
    if (count == 4) add(half, kept[0], kept[2], kept[3], mesh.strips[n]);
    if (passage.in != 0 || passage.out != 0) passages.push_back(passage);
  }
  close_cut(half, passages, crossings);
  return half;
}

void join_points(ClosedMesh& mesh) {
  if (mesh.points.empty()) return;
  glm::dvec3 low = mesh.points.front();
  glm::dvec3 high = low;
  for (const glm::dvec3& p : mesh.points) {
    low = glm::min(low, p);
    high = glm::max(high, p);
  }
  const glm::dvec3 extent = high - low;
  const double cell = kSamePlace * std::max(extent.x, std::max(extent.y, extent.z));
  if (cell <= 0.0) return;
  std::vector<bool> is_used(mesh.points.size(), false);
  for (const glm::uvec3 t : mesh.triangles) is_used[t.x] = is_used[t.y] = is_used[t.z] = true;
  std::vector<SortKey> keys;
  for (std::uint32_t i = 0; i < mesh.points.size(); ++i) {
    if (!is_used[i]) continue;
    const glm::dvec3 place = glm::round((mesh.points[i] - low) / cell);
    keys.push_back({static_cast<std::uint64_t>(place.x) << 42 | static_cast<std::uint64_t>(place.y) << 21 |
                        static_cast<std::uint64_t>(place.z),
                    i});
  }
  sort_keys(keys);
  std::vector<std::uint32_t> place_of(mesh.points.size());
  std::vector<glm::dvec3> points;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (i == 0 || keys[i].key != keys[i - 1].key) points.push_back(mesh.points[keys[i].value]);
    place_of[keys[i].value] = static_cast<std::uint32_t>(points.size() - 1);
  }
  mesh.points = points;
  std::size_t kept = 0;
  for (std::size_t n = 0; n < mesh.triangles.size(); ++n) {
    const glm::uvec3 t = mesh.triangles[n];
    const glm::uvec3 joined(place_of[t.x], place_of[t.y], place_of[t.z]);
    if (joined.x == joined.y || joined.y == joined.z || joined.z == joined.x) continue;
    mesh.triangles[kept] = joined;
    mesh.strips[kept++] = mesh.strips[n];
  }
  mesh.triangles.resize(kept);
  mesh.strips.resize(kept);
}

double volume_of(const ClosedMesh& mesh) {
  double six = 0.0;
  for (const glm::uvec3 t : mesh.triangles) {
    const glm::dvec3 from = mesh.points.front();
    six += glm::dot(mesh.points[t.x] - from, face_of(mesh, {t.x, t.y, t.z}));
  }
  return six / 6.0;
}

}  // namespace tinwright
