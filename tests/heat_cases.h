// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Short ways to say a heat problem in tests. SI units.
#pragma once

#include <doctest/doctest.h>

#include "geometry/heat/bake.h"
#include "tests/shapes.h"

namespace tinwright::heat_cases {

inline ThermalTable raw(double conductivity, double density, double heat_capacity) {
  const auto table = make_thermal_table(Properties{conductivity, density, heat_capacity});
  REQUIRE(static_cast<bool>(table));
  return *table;
}

inline HeatGrid grid_of(const FilledPan& filled, const GridFineness& fineness = {}) {
  const auto grid = make_grid(filled, fineness);
  REQUIRE(static_cast<bool>(grid));
  return *grid;
}

inline FilledPan bare(const Pan& pan, double height) {
  FilledPan filled;
  filled.pan = pan;
  filled.fill_height = height;
  return filled;
}

inline FilledPan lined(const Pan& pan, const Lining& lining, double height) {
  FilledPan filled = bare(pan, height);
  filled.is_lined = true;
  filled.lining = lining;
  return filled;
}

}  // namespace tinwright::heat_cases
