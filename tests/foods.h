// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Foods for tests.
#pragma once

#include <doctest/doctest.h>

#include "geometry/heat/composition.h"

namespace tinwright::foods {

inline constexpr double kZero = 273.15;  // [K] 0 °C

/// A food that has to be possible.
inline Composition made(const Composition& asked) {
  const auto food = make_composition(asked);
  REQUIRE(static_cast<bool>(food));
  return *food;
}

}  // namespace tinwright::foods
