// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How a picture in three dimensions is asked of whoever has the graphics card: views say what is to be seen and from
// where, and get a texture to show.
#pragma once

#include <array>
#include <cstdint>
#include <memory>

#include <glm/mat3x3.hpp>
#include <glm/mat4x4.hpp>

#include "app/plan/solid.h"
#include "app/view/theme.h"

namespace tinwright::view {

struct SolidScene {
  std::uint32_t id = 0;  // of the picture: one keeps one texture
  std::shared_ptr<const Solid> solid;
  glm::mat3 facing{1.0f};     // from the body's directions to those before the eye
  glm::mat4 clip{1.0f};       // from the body's metres to the picture's cube
  int width = 0, height = 0;  // [device px]
  float line = 1.0f;          // [device px] thickness of edges
  float hatch = 0.0f;         // [m] from one line across the dough to the next
  Colour background, ink;
  std::array<Colour, 3> parts;  // by SolidPart

  bool operator==(const SolidScene&) const = default;
};

/// The texture with the scene, its first row at the bottom; 0 when the device cannot. It stays for this frame.
using DrawSolid = std::uintptr_t (*)(const SolidScene& scene);

}  // namespace tinwright::view
