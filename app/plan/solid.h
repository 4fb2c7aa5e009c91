// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan as a body: its metal, the dough and the filling in it, in triangles for drawing in three dimensions. Of a tin
// with several cavities, one.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <vector>

#include <glm/vec3.hpp>

#include "app/plan/bench.h"
#include "app/plan/closed_mesh.h"

namespace tinwright {

enum class SolidPart : std::uint8_t { kPan, kDough, kFilling };

struct SolidBody {
  SolidPart part = SolidPart::kPan;
  ClosedMesh mesh;
  double edge_cosine = 1.0;  // [-] of the angle from which two faces of one wall meet in an edge one sees
};

struct SolidQuestion {
  bool is_cut = false;  // the front half (y < 0) is taken away
  int fineness = 1;     // points and steps as a multiple of what drawing takes
};

/// The bodies of the pan and of what `answer` says is in it, z upwards from the pan's floor; none without a pan.
std::vector<SolidBody> solid_bodies(const BenchAnswer& answer, const SolidQuestion& question);

/// A corner of a triangle as a graphics card takes it.
struct SolidCorner {
  glm::vec3 at, normal;  // [m], [-]
  float part = 0.0f;     // a SolidPart
};

struct Solid {
  std::vector<SolidCorner> corners;             // three for each triangle
  std::vector<std::array<glm::vec3, 2>> edges;  // [m] where walls meet
  float radius = 0.0f, height = 0.0f;           // [m] of the upright cylinder all of it lies in, standing at z = 0
};

/// The most triangles of a picture.
inline constexpr std::size_t kMostTriangles = 20000;

/// Null where there is no pan.
std::shared_ptr<const Solid> make_solid(const BenchAnswer& answer, bool is_cut);

/// The same, made once for an answer.
std::shared_ptr<const Solid> solid_of(BenchAnswer& answer, bool is_cut);

}  // namespace tinwright
