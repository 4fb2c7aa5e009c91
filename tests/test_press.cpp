// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pressing against elementary solids and as the inverse of lining.
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "geometry/lining.h"
#include "geometry/press.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;
using std::numbers::pi;

PressAnswer press(const Pan& pan, const PressQuestion& question) {
  const auto answer = press_dough(pan, question);
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

std::string refused(const Pan& pan, const PressQuestion& question) {
  const auto answer = press_dough(pan, question);
  REQUIRE_FALSE(static_cast<bool>(answer));
  CHECK_FALSE(answer.problem().message.empty());
  return answer.problem().place;
}

const Pan& tart_ring() {
  static const Pan pan = shapes::pan(Round{0.24}, StraightWall{0.03, 0.0, 0.0});
  return pan;
}

}  // namespace

TEST_CASE("on the floor of an upright tin the thickness is volume over area") {
  const PressAnswer answer = press(tart_ring(), {.dough = 300e-6, .cover = Cover::kFloor});
  CHECK(relative_error(answer.floor_thickness, 300e-6 / (pi * 0.0144)) < 1e-9);
  CHECK(answer.coverage == 1.0);
  CHECK(answer.reaches_edges);
}

TEST_CASE("an even lining of an upright tin solves its cubic") {
  // V = π(R²H - (R - t)²(H - t))
  const double t = 0.0045, radius = 0.12, height = 0.03;
  const double dough = pi * (radius * radius * height - (radius - t) * (radius - t) * (height - t));
  const PressAnswer answer = press(tart_ring(), {.dough = dough, .cover = Cover::kFloorAndWall});
  CHECK(relative_error(answer.floor_thickness, t) < 1e-9);
  CHECK(relative_error(answer.wall_thickness, t) < 1e-9);
}

TEST_CASE("what is pressed is what the lining takes: all four ways return their dough") {
  const Pan fluted = shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.03, 0.005, 0.0});
  const Pan tube = shapes::ring(0.25, 0.05, StraightWall{0.10, 0.015, 0.01}, 0.01);
  for (const Pan& pan : {tart_ring(), fluted, tube}) {
    const double dough = 0.25 * brim_volume(pan);
    const double high = 0.8 * depth(pan);
    const std::vector<PressQuestion> questions{
        {.dough = dough, .cover = Cover::kFloorAndWall},
        {.dough = dough, .cover = Cover::kFloorAndWall, .wall_height = high},
        {.dough = dough, .cover = Cover::kFloorAndWall, .wall_to_floor = 0.6},
        {.dough = dough, .cover = Cover::kFloorAndWall, .wall_to_floor = 1.7, .wall_height = high},
        {.dough = dough, .cover = Cover::kFloorAndWall, .floor_thickness = 0.004}};
    for (const PressQuestion& question : questions) {
      const PressAnswer answer = press(pan, question);
      const Lining lining{answer.floor_thickness, answer.wall_thickness, answer.wall_height};
      CHECK(relative_error(lining_volume(pan, lining), dough) < 1e-9);
      if (question.wall_to_floor) {
        CHECK(relative_error(answer.wall_thickness, *question.wall_to_floor * answer.floor_thickness) < 1e-12);
      }
    }
    CHECK(relative_error(volume(pan, press(pan, {.dough = dough, .cover = Cover::kFloor}).floor_thickness), dough) <
          1e-9);
  }
}

TEST_CASE("a given thickness says what it takes and what is left or missing") {
  const double needed = pi * 0.0144 * 0.006;
  const PressAnswer plenty = press(tart_ring(), {.dough = needed + 50e-6, .cover = Cover::kFloor, .thickness = 0.006});
  CHECK(relative_error(plenty.needed, needed) < 1e-9);
  CHECK(relative_error(plenty.left, 50e-6) < 1e-6);
  CHECK(plenty.missing == 0.0);
  const PressAnswer scant = press(tart_ring(), {.dough = 0.75 * needed, .cover = Cover::kFloor, .thickness = 0.006});
  CHECK(scant.left == 0.0);
  CHECK(relative_error(scant.missing, 0.25 * needed) < 1e-9);
  CHECK_FALSE(scant.reaches_edges);
  CHECK(relative_error(scant.coverage, 0.75) < 1e-9);
}

TEST_CASE("430 g of dough a quarter inch thick does not reach the edges of a quarter sheet tray") {
  // Common practice, no source: a home batch pressed 1/4 in thick stops short of a quarter sheet's rim.
  const double in = 0.0254;
  const Pan tray = shapes::pan(Rectangle{12.5 * in, 9.0 * in, 0.0}, StraightWall{in, 0.0, 0.0});
  const double dough = 0.430 / 1200;
  const PressAnswer answer = press(tray, {.dough = dough, .cover = Cover::kSlab, .thickness = 0.25 * in});
  CHECK_FALSE(answer.reaches_edges);
  CHECK(relative_error(answer.coverage, dough / (0.25 * in) / (12.5 * 9 * in * in)) < 1e-9);
  const SlabExtent extent = slab_extent(tray, answer.coverage);
  CHECK(relative_error(extent.length * extent.width * 0.25 * in, dough) < 1e-9);
  CHECK(relative_error(extent.length / extent.width, 12.5 / 9) < 1e-9);
  CHECK(relative_error(extent.length_full_width * 9 * in * 0.25 * in, dough) < 1e-9);
}

TEST_CASE("without an amount, a thickness says what it takes") {
  const PressAnswer answer = press(tart_ring(), {.cover = Cover::kFloor, .thickness = 0.006});
  CHECK(relative_error(answer.dough, pi * 0.0144 * 0.006) < 1e-9);
  CHECK(answer.left == 0.0);
  CHECK(answer.reaches_edges);
  CHECK(refused(tart_ring(), {.cover = Cover::kFloor}) == "mass");
}

TEST_CASE("too little dough for the floor leaves none for the wall and says how far it reaches") {
  const double floor = pi * 0.0144 * 0.005;
  const PressAnswer answer =
      press(tart_ring(), {.dough = 0.6 * floor, .cover = Cover::kFloorAndWall, .floor_thickness = 0.005});
  CHECK(answer.wall_thickness == 0.0);
  CHECK_FALSE(answer.reaches_edges);
  CHECK(relative_error(answer.coverage, 0.6) < 1e-9);
}

TEST_CASE("impossible and contradictory questions are refused with their place") {
  const Pan& pan = tart_ring();
  const double dough = 300e-6;
  CHECK(refused(pan, {.dough = 0.0}) == "mass");
  CHECK(refused(pan, {.dough = -1.0}) == "mass");
  CHECK(refused(pan, {.dough = std::nan("")}) == "mass");
  CHECK(refused(pan, {.dough = 1.0, .cover = Cover::kFloor}) == "mass");
  CHECK(refused(pan, {.dough = 1.0, .cover = Cover::kFloorAndWall}) == "mass");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kSlab}) == "thickness");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloor, .thickness = 0.031}) == "thickness");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloorAndWall, .thickness = 0.03}) == "thickness");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloorAndWall, .thickness = 0.003, .floor_thickness = 0.003}) ==
        "thickness");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloorAndWall, .floor_thickness = 0.04}) == "floor_thickness");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloorAndWall, .wall_to_floor = 0.0}) == "wall_to_floor");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloorAndWall, .wall_height = 0.05}) == "wall_height");
  CHECK(refused(pan, {.dough = dough, .cover = Cover::kFloor, .wall_height = 0.02}) == "wall_height");
}

TEST_CASE("a slab on a pan without a flat floor is refused") {
  const Pan bowl = shapes::pan(Round{0.2}, BowlWall{0.08});
  CHECK(refused(bowl, {.dough = 1e-4, .cover = Cover::kSlab, .thickness = 0.005}) == "pan");
}

TEST_CASE("a wall at 45° that just closes leaves no floor for a slab") {
  const Pan cone = shapes::pan(Round{0.2}, StraightWall{0.1, 0.1 * std::tan(pi / 4), 0.0});
  CHECK(floor_area(cone) == 0.0);
  CHECK(refused(cone, {.dough = 1e-4, .cover = Cover::kSlab, .thickness = 0.005}) == "pan");
}

TEST_CASE("a full slab is as large as the floor, whatever its shape") {
  const Pan triangle = shapes::pan(RegularPolygon{3, 0.2}, StraightWall{0.05, 0.03, 0.0});
  CHECK(relative_error(slab_extent(triangle, 1.0).length, 2 * 0.07 * std::sqrt(3.0)) < 1e-9);
  CHECK(relative_error(slab_extent(triangle, 1.0).width, 3 * 0.07) < 1e-9);
  const Pan ring = shapes::ring(0.24, 0.08, StraightWall{0.05, 0.0, 0.0});
  CHECK(relative_error(slab_extent(ring, 1.0).length, 0.24) < 1e-9);
  CHECK(slab_extent(ring, 0.3).length > 0.08);
}

TEST_CASE("a slab is pressed from one end only where that end is straight") {
  const Pan tray = shapes::pan(Rectangle{0.3, 0.2, 0.1}, StraightWall{0.03, 0.0, 0.0});
  CHECK(slab_extent(tray, 0.1).length_full_width == 0.0);
  const Pan rounded = shapes::pan(Rectangle{0.3, 0.2, 0.02}, StraightWall{0.03, 0.0, 0.0});
  const double along = slab_extent(rounded, 0.5).length_full_width;
  CHECK(relative_error(0.2 * along - (2 - pi / 2) * 0.02 * 0.02, 0.5 * floor_area(rounded)) < 1e-9);
}

TEST_CASE("dough thicker than the pan is deep or wide is refused") {
  const Pan narrow = shapes::pan(Round{0.03}, StraightWall{0.05, 0.0, 0.0});
  CHECK(refused(narrow, {.dough = 1e-5, .cover = Cover::kFloorAndWall, .thickness = 0.02}) == "thickness");
  CHECK(refused(tart_ring(), {.dough = 1e-4, .cover = Cover::kSlab, .thickness = 0.2}) == "thickness");
}

}  // namespace tinwright
