// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the heat solver knows of a pan: cells with volumes, faces between them, and faces to the outside. It is a plain
// list; which shape it came from does not matter to the solver.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "geometry/lining.h"
#include "geometry/pan.h"

namespace tinwright {

/// What a cell is made of.
enum class Part : std::uint8_t { kFill, kDough };

/// What a face to the outside looks at.
enum class Side : std::uint8_t { kTop, kWall, kBase };

struct HeatGrid {
  /// Which neighbour along each axis: before and after; -1 where there is none, or the middle of the food.
  using Neighbours = std::array<std::array<int, 2>, 3>;
  struct Cell {
    double volume = 0.0;  // [m³]
    Part part = Part::kFill;
    /// [m] Middle and size along x, y, z; x and y count from the food's middle, and in rings x is the distance from
    /// where the parallel curves close (y and its size are 0).
    std::array<double, 3> middle{}, size{};
    Neighbours neighbours{{{-1, -1}, {-1, -1}, {-1, -1}}};
  };
  /// Two cells that touch; half distances run from each cell's middle to the face.
  struct Face {
    int a = 0, b = 0;
    double area = 0.0;                  // [m²]
    double half_a = 0.0, half_b = 0.0;  // [m]
    /// Of a link across a corner: where in the list the link across the same corner the other way stands, one on (1) or
    /// one back (-1). One of the two has a negative area.
    int partner = 0;
  };
  struct OuterFace {
    int cell = 0;
    Side side = Side::kTop;
    double area = 0.0;  // [m²]
    double half = 0.0;  // [m] from the cell's middle to the surface, at right angles to it
  };

  std::vector<Cell> cells;
  std::vector<Face> faces;
  std::vector<OuterFace> outer;
  bool is_round = false;  // x = 0 is an axis, not a plane
};

/// A cell's or face's number, as the grid keeps it, as a place in a vector.
inline std::size_t index(int i) {
  return static_cast<std::size_t>(i);
}

/// How finely to cut. The defaults hold the accuracy that the tests state.
struct GridFineness {
  int across = 28;        // cells from the wall to the middle of the filling
  int across_box = 16;    // the same along each half side of a rectangle
  int up = 32;            // layers of the filling
  int through_dough = 3;  // cells through a crust
};

/// Cells enough for the accuracy that the tests state, for the Biot number of the filling: largest surface coefficient
/// times half its height over its conductivity. Ovens have 0.5 to 3. The error grows with the Biot number, the time
/// with the cells.
GridFineness fineness_for(double biot);

/// What is baked in one cavity: a lined or bare pan, filled to a height above the cavity's floor.
struct FilledPan {
  Pan pan;
  bool is_lined = false;
  Lining lining;             // when is_lined
  double fill_height = 0.0;  // [m] above the cavity's floor
};

/// Cells for one cavity. Rectangles, unless wide and shallow, are cut in a quarter (x, y, z), the other outlines in
/// rings between parallel curves of the outline (s, z): exact for round pans, good for ovals and flutes, whose heat
/// flows nearly along s. The cells' volumes add up to the food's within 1e-9. Problem (place "fill.height", "lining.…")
/// when the filling does not fit or is nothing.
Result<HeatGrid> make_grid(const FilledPan& filled, const GridFineness& fineness = {});

}  // namespace tinwright
