// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The solver works on cells that follow each other several at once. Which ones those are hangs on how the grid numbers
// them, so the same grid numbered at random is worked out in quite another order: cell by cell where the links of a
// block go every way.
#include <algorithm>
#include <numeric>
#include <random>

#include "geometry/heat/kitchen.h"
#include "tests/foods.h"
#include "tests/heat_cases.h"

namespace tinwright {
namespace {

using heat_cases::grid_of;
using heat_cases::lined;
using heat_cases::raw;

/// Cell i of the grid becomes place[i].
HeatGrid renumbered(const HeatGrid& grid, const std::vector<int>& place) {
  const auto at = [&](int cell) { return cell < 0 ? cell : place[static_cast<std::size_t>(cell)]; };
  HeatGrid other = grid;
  for (std::size_t i = 0; i < grid.cells.size(); ++i) {
    HeatGrid::Cell& cell = other.cells[static_cast<std::size_t>(place[i])];
    cell = grid.cells[i];
    for (auto& axis : cell.neighbours) {
      for (int& neighbour : axis) neighbour = at(neighbour);
    }
  }
  for (HeatGrid::Face& face : other.faces) {
    face.a = at(face.a);
    face.b = at(face.b);
  }
  for (HeatGrid::OuterFace& face : other.outer) face.cell = at(face.cell);
  return other;
}

std::vector<int> shuffled(std::size_t cells) {
  std::vector<int> place(cells);
  std::iota(place.begin(), place.end(), 0);
  std::mt19937 random(7);
  for (std::size_t i = cells; i-- > 1;) std::swap(place[i], place[random() % (i + 1)]);
  return place;
}

BakeAnswer baked(const HeatGrid& grid, const std::array<Substance, 2>& substances) {
  std::vector<Stage> stages{{463.15, 720.0}, {438.15, 1200.0}, {255.15, 3600.0}};
  for (Stage& stage : stages) {
    const Place place = stage.air > 273.15 ? Place::kOven : Place::kFreezer;
    stage.around = surroundings_in(place, Material::kDarkSteel);
  }
  const auto answer = bake({grid, substances}, {.start = 293.15, .stages = stages, .keeps_fields_to = 1e9});
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

}  // namespace

TEST_CASE("how a grid numbers its cells changes no temperature by more than rounding") {
  const auto filling = make_substance(foods::made({.water = 0.55, .protein = 0.06, .fat = 0.2, .carbohydrate = 0.19}));
  const auto crust = make_substance(foods::made({.water = 0.1, .fat = 0.3, .carbohydrate = 0.6, .air = 0.2}));
  REQUIRE(static_cast<bool>(filling));
  REQUIRE(static_cast<bool>(crust));
  const FilledPan pan = lined(shapes::pan(Round{0.22}, StraightWall{0.045, 0.012, 0.0}), {0.005, 0.004, 0.04}, 0.025);
  for (const bool is_food : {false, true}) {
    CAPTURE(is_food);
    const std::array<Substance, 2> substances =
        is_food ? std::array<Substance, 2>{*filling, *crust}
                : std::array<Substance, 2>{raw(0.45, 1060, 3400), raw(0.25, 1200, 2300)};
    const HeatGrid grid = grid_of(pan, {13, 9, 11, 2});
    const std::vector<int> place = shuffled(grid.cells.size());
    const BakeAnswer straight = baked(grid, substances);
    const BakeAnswer mixed = baked(renumbered(grid, place), substances);
    REQUIRE(straight.fields.size() == mixed.fields.size());
    double apart = 0.0;
    for (std::size_t row = 0; row < straight.fields.size(); ++row) {
      for (std::size_t i = 0; i < grid.cells.size(); ++i) {
        apart =
            std::max(apart, std::abs(straight.fields[row][i] - mixed.fields[row][static_cast<std::size_t>(place[i])]));
      }
    }
    CHECK(apart < 1e-6);  // [K]; the surface is found to 1e-4 K by a search that a last bit may end a turn sooner
    CHECK(straight.stages == mixed.stages);
    CHECK(std::abs(straight.water_lost - mixed.water_lost) < 1e-9);
  }
}

}  // namespace tinwright
