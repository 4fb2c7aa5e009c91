// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Bodies made ready for drawing: at each corner the direction the surface faces there, smooth along walls and broken
// at edges, and the edges as lines.
#include <algorithm>
#include <cmath>
#include <cstddef>

#include <glm/geometric.hpp>

#include "app/plan/solid.h"

namespace tinwright {
namespace {

constexpr double kEdgeBetweenWalls = 0.906;  // [-] cosine of 25°: walls that meet at more make an edge
constexpr double kNoFace = 1e-9;             // [-] of the longest side squared: too thin to face anywhere

/// The faces of a mesh, each with its direction times twice its area [m²].
class Faces {
 public:
  Faces(const SolidBody& body) : mesh_(body.mesh), edge_cosine_(body.edge_cosine) {
    for (std::size_t n = 0; n < mesh_.triangles.size(); ++n) {
      const glm::uvec3 t = mesh_.triangles[n];
      const glm::dvec3 a = mesh_.points[t.x], b = mesh_.points[t.y], c = mesh_.points[t.z];
      const glm::dvec3 across = glm::cross(b - a, c - a);
      const double longest = std::max(glm::dot(b - a, b - a), glm::dot(c - a, c - a));
      areas_.push_back(across);
      const double size = glm::length(across);
      ways_.push_back(size > kNoFace * longest ? across / size : flat_way(mesh_.strips[n]));
    }
  }

  bool is_edge(std::size_t a, std::size_t b) const {
    const bool is_one_wall = mesh_.strips[a] == mesh_.strips[b];
    return glm::dot(ways_[a], ways_[b]) < (is_one_wall ? edge_cosine_ : kEdgeBetweenWalls) + 1e-6;
  }

  glm::dvec3 area(std::size_t n) const { return areas_[n]; }
  glm::dvec3 way(std::size_t n) const { return ways_[n]; }

 private:
  /// Of thin triangles in a lid or a cut, whose plane is known.
  static glm::dvec3 flat_way(std::uint16_t strip) {
    constexpr glm::dvec3 kWays[] = {{0.0, 0.0, -1.0}, {0.0, 0.0, 1.0}, {0.0, -1.0, 0.0}};
    return strip >= ClosedMesh::kFlat ? kWays[strip - ClosedMesh::kFlat] : glm::dvec3(0.0);
  }

  const ClosedMesh& mesh_;
  double edge_cosine_;
  std::vector<glm::dvec3> areas_, ways_;
};

/// The triangles at each point: those of point i are list[start[i]] to list[start[i + 1]].
struct Around {
  std::vector<std::uint32_t> start, list;

  explicit Around(const ClosedMesh& mesh) : start(mesh.points.size() + 2), list(3 * mesh.triangles.size()) {
    for (const glm::uvec3 t : mesh.triangles) {
      for (int i = 0; i < 3; ++i) ++start[t[i] + 2];
    }
    for (std::size_t i = 2; i < start.size(); ++i) start[i] += start[i - 1];
    for (std::uint32_t n = 0; n < mesh.triangles.size(); ++n) {
      for (int i = 0; i < 3; ++i) list[start[mesh.triangles[n][i] + 1]++] = n;
    }
  }
};

void add_corners(Solid& solid, const SolidBody& body, const Faces& faces) {
  const ClosedMesh& mesh = body.mesh;
  const Around around(mesh);
  for (std::uint32_t n = 0; n < mesh.triangles.size(); ++n) {
    for (int i = 0; i < 3; ++i) {
      const std::uint32_t at = mesh.triangles[n][i];
      glm::dvec3 sum(0.0);
      for (std::uint32_t k = around.start[at]; k < around.start[at + 1]; ++k) {
        if (!faces.is_edge(n, around.list[k])) sum += faces.area(around.list[k]);
      }
      const double size = glm::length(sum);
      const glm::dvec3 normal = size > 0.0 ? sum / size : glm::dvec3(0.0, 0.0, 1.0);
      solid.corners.push_back({glm::vec3(mesh.points[at]), glm::vec3(normal), static_cast<float>(body.part)});
    }
  }
}

void add_edges(Solid& solid, const ClosedMesh& mesh, const Faces& faces) {
  std::vector<SortKey> sides;
  for (std::uint32_t n = 0; n < mesh.triangles.size(); ++n) {
    const glm::uvec3 t = mesh.triangles[n];
    for (int i = 0; i < 3; ++i) sides.push_back({edge_key(t[i], t[(i + 1) % 3]), n});
  }
  sort_keys(sides);
  for (std::size_t k = 0; k + 1 < sides.size(); ++k) {
    if (sides[k].key != sides[k + 1].key || !faces.is_edge(sides[k].value, sides[k + 1].value)) continue;
    solid.edges.push_back(
        {glm::vec3(mesh.points[sides[k].key >> 32]), glm::vec3(mesh.points[sides[k].key & 0xffffffff])});
  }
}

}  // namespace

std::shared_ptr<const Solid> make_solid(const BenchAnswer& answer, bool is_cut) {
  if (!answer.my_pan) return nullptr;
  auto solid = std::make_shared<Solid>();
  for (const SolidBody& body : solid_bodies(answer, {is_cut})) {
    const Faces faces(body);
    add_corners(*solid, body, faces);
    add_edges(*solid, body.mesh, faces);
    for (const glm::dvec3& p : body.mesh.points) {
      solid->radius = std::max(solid->radius, static_cast<float>(std::hypot(p.x, p.y)));
      solid->height = std::max(solid->height, static_cast<float>(p.z));
    }
  }
  return solid;
}

std::shared_ptr<const Solid> solid_of(BenchAnswer& answer, bool is_cut) {
  auto& kept = answer.solids[is_cut ? 1 : 0];
  if (!kept) kept = make_solid(answer, is_cut);
  return kept;
}

}  // namespace tinwright
