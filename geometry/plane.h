// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The one product of the plane that GLM has for three dimensions only.
#pragma once

#include <glm/vec2.hpp>

namespace tinwright {

/// Twice the signed area of the triangle 0, a, b; positive when b lies to the left of a.
inline double cross(glm::dvec2 a, glm::dvec2 b) {
  return a.x * b.y - a.y * b.x;
}

}  // namespace tinwright
