// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Bodies of triangles without a gap: every edge belongs to two triangles that pass it in opposite directions. Made by
// spanning walls between loops of as many points, and cut by a plane.
#pragma once

#include <cstdint>
#include <vector>

#include <glm/vec3.hpp>

#include "geometry/outline.h"

namespace tinwright {

struct ClosedMesh {
  std::vector<glm::dvec3> points;     // [m]
  std::vector<glm::uvec3> triangles;  // of points, counter-clockwise seen from outside
  std::vector<std::uint16_t> strips;  // of each triangle: which wall it is of; from kFlat on, a plane
  static constexpr std::uint16_t kFlat = 0x8000;
};

/// The body whose surface goes from loop to loop, each of `count` of the points, counter-clockwise seen from above: up
/// on its outside, down within. A closed one goes on from the last to the first; an open one ends in flat lids at the
/// first, facing down, and the last, facing up.
enum class LoopPath { kOpen, kClosed };
/// `is_star`: the loops of the lids can be seen whole from the z axis, which makes evener triangles.
ClosedMesh mesh_of(std::vector<glm::dvec3> points, std::uint32_t count, LoopPath path, bool is_star);

/// What of the body lies at y >= 0, closed by a plane.
ClosedMesh back_half(const ClosedMesh& mesh);

/// Joins points that lie on one another and leaves out the triangles that vanish and the points of none.
void join_points(ClosedMesh& mesh);

/// [m³] By the divergence theorem: the sum of the tetrahedra from one point to all triangles.
double volume_of(const ClosedMesh& mesh);

/// Triangles of a polygon, which may touch itself: as many as it has corners, less two.
std::vector<glm::uvec3> triangulate(const Loop& polygon);

/// A number to sort by, and what it is of.
struct SortKey {
  std::uint64_t key = 0;
  std::uint32_t value = 0;
};
void sort_keys(std::vector<SortKey>& keys);
/// The same for both directions of an edge between two points.
std::uint64_t edge_key(std::uint32_t a, std::uint32_t b);

}  // namespace tinwright
