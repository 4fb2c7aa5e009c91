// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Bodies for drawing: closed, and of the volumes that geometry has from areas. A closed mesh's volume is by the
// divergence theorem (any text on vector analysis), which knows nothing of outlines and profiles.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include <glm/geometric.hpp>

#include "app/plan/solid.h"
#include "geometry/limits.h"
#include "tests/dice.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;

/// [-] Of the volume: what chords take from round rims and corners at the fineness of a drawing.
constexpr double kSampling = 2e-3;
/// The same for walls that are one arc from rim to floor, of which chords take more.
constexpr double kBowlSampling = 6e-3;
/// The same for pans at random, among them shallow bowls and rims of many flutes, which have to do with fewer points.
constexpr double kRandomSampling = 3e-2;

struct Filled {
  std::string name;
  Pan pan;
  PressQuestion press;
  double level = 0.0;  // [-] of the cavity; 0: no filling
};

BenchAnswer answer_of(const Filled& filled) {
  BenchAnswer answer;
  answer.my_pan = filled.pan;
  Pan cavity = filled.pan;
  const auto press = press_dough(filled.pan, filled.press);
  if (press) {
    answer.press_job = PressJob{filled.pan, 1200.0, filled.press};
    answer.press = *press;
    const auto crust = crust_of(*answer.press_job, *press);
    const auto lined = crust ? line_pan(filled.pan, *crust) : Result<Pan>(filled.pan);
    if (lined) cavity = *lined;
  }
  if (filled.level > 0.0) {
    FillJob job;
    job.pan = filled.pan;
    job.cavity = cavity;
    job.question.level = filled.level;
    answer.fill_job = job;
    answer.fill = *fill_cavity(cavity, job.question);
  }
  return answer;
}

const SolidBody* part_of(const std::vector<SolidBody>& bodies, SolidPart part) {
  const auto found = std::find_if(bodies.begin(), bodies.end(), [&](const SolidBody& b) { return b.part == part; });
  return found == bodies.end() ? nullptr : &*found;
}

/// How many edges are not passed exactly once each way.
std::size_t open_edges(const ClosedMesh& mesh) {
  std::map<std::pair<unsigned, unsigned>, int> passed;
  for (const glm::uvec3 t : mesh.triangles) {
    for (int i = 0; i < 3; ++i) ++passed[{t[i], t[(i + 1) % 3]}];
  }
  std::size_t open = 0;
  for (const auto& [edge, times] : passed) {
    const auto back = passed.find({edge.second, edge.first});
    if (times != 1 || back == passed.end() || back->second != 1) ++open;
  }
  return open;
}

/// The same where bodies may touch themselves: as often one way as the other.
std::size_t unbalanced_edges(const ClosedMesh& mesh) {
  std::map<std::pair<unsigned, unsigned>, int> balance;
  for (const glm::uvec3 t : mesh.triangles) {
    for (int i = 0; i < 3; ++i) {
      const unsigned a = t[i], b = t[(i + 1) % 3];
      balance[{std::min(a, b), std::max(a, b)}] += a < b ? 1 : -1;
    }
  }
  return static_cast<std::size_t>(
      std::count_if(balance.begin(), balance.end(), [](const auto& edge) { return edge.second != 0; }));
}

PressQuestion lined(double thickness) {
  PressQuestion question;
  question.cover = Cover::kFloorAndWall;
  question.thickness = thickness;
  return question;
}

Pan bottomless(Pan pan) {
  pan.bottomless = true;
  return pan;
}

const Freeform kAngle{{{0, 0}, {0.3, 0}, {0.3, 0.1}, {0.1, 0.1}, {0.1, 0.25}, {0, 0.25}}};

std::vector<Filled> filled_pans() {
  return {
      {"round", shapes::pan(Round{0.24}, StraightWall{0.04, 0.01, 0.0}), lined(0.004), 0.7},
      {"round, rounded floor", shapes::pan(Round{0.24}, StraightWall{0.05, 0.006, 0.01}), lined(0.005), 0.8},
      {"bowl", shapes::pan(Round{0.2}, BowlWall{0.08}), lined(0.006), 0.6},
      {"steps", shapes::pan(Round{0.22}, SteppedWall{{{0.0, 0.03}, {0.02, 0.02}, {0.02, 0.01}, {0.05, 0.0}}}),
       lined(0.003), 0.9},
      {"tray", shapes::pan(Rectangle{0.32, 0.23, 0.02}, StraightWall{0.03, 0.008, 0.0}), lined(0.005), 0.75},
      {"box", shapes::pan(Rectangle{0.25, 0.11, 0.0}, StraightWall{0.07, 0.01, 0.0}), lined(0.006), 0.75},
      {"oval", shapes::pan(Oval{0.2, 0.28}, StraightWall{0.05, 0.01, 0.008}), lined(0.005), 0.7},
      {"hexagon", shapes::pan(RegularPolygon{6, 0.2}, StraightWall{0.06, 0.01, 0.0}), lined(0.005), 0.7},
      {"fluted", shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.03, 0.005, 0.0}), lined(0.004), 0.8},
      {"ring", shapes::ring(0.24, 0.08, StraightWall{0.08, 0.01, 0.01}, 0.012), lined(0.006), 0.7},
      {"savarin", shapes::ring(0.22, 0.08, BowlWall{0.03}), lined(0.004), 0.7},
      {"freeform", shapes::pan(kAngle, StraightWall{0.05, 0.01, 0.0}), lined(0.005), 0.7},
      {"bottomless", bottomless(shapes::pan(Round{0.22}, StraightWall{0.05, 0.0, 0.0})), lined(0.004), 0.6},
  };
}

}  // namespace

TEST_CASE("bodies of every kind of pan are closed, whole and cut") {
  for (const Filled& filled : filled_pans()) {
    CAPTURE(filled.name);
    for (const bool is_cut : {false, true}) {
      CAPTURE(is_cut);
      const auto bodies = solid_bodies(answer_of(filled), {is_cut});
      CHECK(bodies.size() == 3);
      for (const SolidBody& body : bodies) {
        CAPTURE(static_cast<int>(body.part));
        CHECK(open_edges(body.mesh) == 0);
        CHECK(volume_of(body.mesh) > 0.0);
      }
    }
  }
}

TEST_CASE("dough and filling take the volumes that geometry has from areas") {
  for (const Filled& filled : filled_pans()) {
    CAPTURE(filled.name);
    const BenchAnswer answer = answer_of(filled);
    const auto bodies = solid_bodies(answer, {});
    const double dough = volume_of(part_of(bodies, SolidPart::kDough)->mesh);
    const double filling = volume_of(part_of(bodies, SolidPart::kFilling)->mesh);
    const Lining crust = *crust_of(*answer.press_job, *answer.press);
    const double tolerance = filled.name == "bowl" || filled.name == "savarin" ? kBowlSampling : kSampling;
    CHECK(relative_error(dough, lining_volume(filled.pan, crust)) < 2 * tolerance);
    CHECK(relative_error(filling, answer.fill->volume) < tolerance);
  }
}

TEST_CASE("twice as many points make a quarter of the error") {
  for (const Filled& filled : filled_pans()) {
    const bool is_straight_sided = filled.name == "box" || filled.name == "hexagon";
    if (is_straight_sided) continue;  // nothing is left out there
    CAPTURE(filled.name);
    const BenchAnswer answer = answer_of(filled);
    const auto error = [&](int fineness) {
      const auto bodies = solid_bodies(answer, {.is_cut = false, .fineness = fineness});
      return answer.fill->volume - volume_of(part_of(bodies, SolidPart::kFilling)->mesh);
    };
    const double coarse = error(1), fine = error(2), finer = error(4);
    CAPTURE(coarse);
    CAPTURE(fine);
    CAPTURE(finer);
    CHECK(std::abs(finer) < 0.4 * std::abs(fine) + 1e-7 * answer.fill->volume);
    CHECK(std::abs(finer) < 0.12 * std::abs(coarse) + 1e-7 * answer.fill->volume);
  }
}

TEST_CASE("straight sides need no sampling") {
  for (const Filled& filled : filled_pans()) {
    if (filled.name != "box" && filled.name != "hexagon") continue;
    CAPTURE(filled.name);
    const BenchAnswer answer = answer_of(filled);
    const auto bodies = solid_bodies(answer, {});
    CHECK(relative_error(volume_of(part_of(bodies, SolidPart::kFilling)->mesh), answer.fill->volume) < 1e-5);
  }
}

TEST_CASE("the half that is left of a pan with a mirror plane is half of it, and nothing stands before the cut") {
  for (const Filled& filled : filled_pans()) {
    if (filled.name == "freeform") continue;
    CAPTURE(filled.name);
    const BenchAnswer answer = answer_of(filled);
    const auto whole = solid_bodies(answer, {});
    const auto half = solid_bodies(answer, {true});
    for (std::size_t i = 0; i < whole.size(); ++i) {
      CHECK(relative_error(2 * volume_of(half[i].mesh), volume_of(whole[i].mesh)) < 1e-6);
      const auto& points = half[i].mesh.points;
      CHECK(std::all_of(points.begin(), points.end(), [](const glm::dvec3& p) { return p.y >= -1e-9; }));
    }
  }
}

TEST_CASE("a slab that stops short of the edge is drawn with its own volume") {
  const Pan tray = shapes::pan(Rectangle{0.4, 0.3, 0.02}, StraightWall{0.025, 0.005, 0.0});
  const Pan tube = shapes::ring(0.24, 0.08, StraightWall{0.08, 0.01, 0.0}, 0.012);
  for (const Pan& pan : {tray, tube}) {
    PressQuestion question;
    question.cover = Cover::kSlab;
    question.thickness = 0.006;
    question.dough = 0.5 * 0.006 * floor_area(pan);
    const auto bodies = solid_bodies(answer_of({"slab", pan, question}), {});
    const SolidBody* dough = part_of(bodies, SolidPart::kDough);
    REQUIRE(dough != nullptr);
    CHECK(open_edges(dough->mesh) == 0);
    // The floor's rounded corners are scaled with it; round a core the band's inner line leans by the core's slope.
    CHECK(relative_error(volume_of(dough->mesh), *question.dough) < kSampling);
  }
}

namespace {

/// A star-shaped polygon of up to 12 corners.
Freeform random_freeform(Dice& dice) {
  Freeform freeform;
  const int corners = 3 + dice.up_to(9);
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * (i + dice.between(-0.3, 0.3)) / corners;
    const double radius = dice.between(0.05, 0.15);
    freeform.corners.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
  }
  return freeform;
}

OutlineShape random_outline(Dice& dice) {
  const double size = dice.between(0.04, 0.5);
  const double other = size * dice.between(0.3, 1.0);
  const double share = dice.uniform();
  switch (dice.below(6)) {
    case 0:
      return Round{size};
    case 1:
      return Rectangle{size, other, 0.5 * other * share};
    case 2:
      return Oval{other, size};
    case 3:
      return RegularPolygon{3 + dice.up_to(10), size};
    case 4:
      return Fluted{size, 3 + dice.up_to(60), 0.05 * size * share};
    default:
      return random_freeform(dice);
  }
}

}  // namespace

TEST_CASE("pans at random: closed, with volumes, directions of length one, within the budget of triangles") {
  Dice dice(5);
  int drawn = 0;
  for (int i = 0; i < 400; ++i) {
    CAPTURE(i);
    PanShape shape;
    shape.outline = random_outline(dice);
    const auto outline = make_outline(shape.outline);
    if (!outline) continue;
    const double reach = outline->curve.closes_at();
    const double depth = dice.between(0.1, 1.0) * reach;
    const double run = dice.between(0.0, 0.9) * reach;
    const double corner = dice.between(0.0, 0.3) * std::min(depth, reach - run);
    shape.wall = dice.uniform() < 0.2 ? WallShape(BowlWall{depth}) : WallShape(StraightWall{depth, run, corner});
    if (std::holds_alternative<Round>(shape.outline) && dice.uniform() < 0.3) shape.core = CoreShape{0.6 * reach, 0.0};
    const auto pan = make_pan(shape);
    if (!pan) continue;
    PressQuestion press = lined(dice.between(0.02, 0.3) * depth);
    press.wall_height = dice.between(0.5, 1.0) * depth;
    CAPTURE(shape.outline.index());
    CAPTURE(std::holds_alternative<BowlWall>(shape.wall));
    const BenchAnswer answer = answer_of({"random", *pan, press, dice.between(0.1, 1.0)});
    for (const bool is_cut : {false, true}) {
      CAPTURE(is_cut);
      const auto bodies = solid_bodies(answer, {is_cut});
      for (const SolidBody& body : bodies) {
        CAPTURE(static_cast<int>(body.part));
        CHECK(unbalanced_edges(body.mesh) == 0);
        CHECK(volume_of(body.mesh) >= 0.0);
      }
      const SolidBody* filling = part_of(bodies, SolidPart::kFilling);
      if (filling != nullptr && !is_cut) {
        CHECK(std::abs(volume_of(filling->mesh) - answer.fill->volume) < kRandomSampling * answer.fill->volume);
      }
      const auto solid = make_solid(answer, is_cut);
      CHECK(solid->corners.size() <= 3 * kMostTriangles);
      bool is_sound = true;
      for (const SolidCorner& corner_of : solid->corners) {
        is_sound = is_sound && std::abs(glm::length(corner_of.normal) - 1.0f) < 1e-5f &&
                   std::isfinite(glm::length(corner_of.at));
      }
      CHECK(is_sound);
    }
    ++drawn;
  }
  CHECK(drawn > 200);
}

TEST_CASE("every polygon that does not cross itself is filled by its triangles, also with points in line") {
  const Loop comb{{0, 0}, {1, 0}, {2, 0},   {3, 0},     {3, 2},   {2.5, 2}, {2.5, 0.5}, {2, 0.5},
                  {2, 2}, {1, 2}, {1, 0.5}, {0.5, 0.5}, {0.5, 2}, {0, 2},   {0, 1}};
  double area = 0.0;
  const auto triangles = triangulate(comb);
  CHECK(triangles.size() == comb.size() - 2);
  for (const glm::uvec3 t : triangles) {
    const glm::dvec2 a = comb[t.y] - comb[t.x], b = comb[t.z] - comb[t.x];
    const double twice = a.x * b.y - a.y * b.x;
    CHECK(twice >= -1e-9);
    area += 0.5 * twice;
  }
  CHECK(area == doctest::Approx(3 * 0.5 + 1.5 * (0.5 + 1.0 + 0.5)));
}

}  // namespace tinwright
