// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Sizes that do not make a pan come back as a Problem with its place and what would be right.
#include <cmath>
#include <cstdlib>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "geometry/pan.h"

namespace tinwright {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

struct Refusal {
  std::string why;
  OutlineShape outline;
  WallShape wall;
  ProblemCode code;
  std::string place;
};

}  // namespace

TEST_CASE("impossible pans are refused with code, place and advice") {
  const StraightWall wall{0.05, 0.0, 0.0};
  const Round round{0.2};
  const std::vector<Refusal> refusals{
      {"zero diameter", Round{0.0}, wall, ProblemCode::kOutOfRange, "outline.diameter"},
      {"negative diameter", Round{-0.2}, wall, ProblemCode::kOutOfRange, "outline.diameter"},
      {"NaN diameter", Round{kNan}, wall, ProblemCode::kNotANumber, "outline.diameter"},
      {"infinite diameter", Round{kInfinity}, wall, ProblemCode::kNotANumber, "outline.diameter"},
      {"10 km diameter", Round{1e4}, wall, ProblemCode::kOutOfRange, "outline.diameter"},
      {"a nanometre", Round{1e-9}, wall, ProblemCode::kOutOfRange, "outline.diameter"},
      {"zero depth", round, StraightWall{0.0, 0.0, 0.0}, ProblemCode::kOutOfRange, "profile.depth"},
      {"10 km depth", round, StraightWall{1e4, 0.0, 0.0}, ProblemCode::kOutOfRange, "profile.depth"},
      {"taper closes before the floor", round, StraightWall{0.05, 0.12, 0.0}, ProblemCode::kImpossibleShape,
       "profile.base_inset"},
      {"negative taper", round, StraightWall{0.05, -0.01, 0.0}, ProblemCode::kOutOfRange, "profile.base_inset"},
      {"floor radius over the wall", round, StraightWall{0.03, 0.0, 0.031}, ProblemCode::kImpossibleShape,
       "profile.floor_radius"},
      {"floor radius over the floor", Round{0.05}, StraightWall{0.08, 0.0, 0.03}, ProblemCode::kImpossibleShape,
       "profile.floor_radius"},
      {"NaN floor radius", round, StraightWall{0.03, 0.0, kNan}, ProblemCode::kNotANumber, "profile.floor_radius"},
      {"corner radius over half the width", Rectangle{0.3, 0.2, 0.11}, wall, ProblemCode::kImpossibleShape,
       "outline.corner_radius"},
      {"zero width", Rectangle{0.3, 0.0, 0.0}, wall, ProblemCode::kOutOfRange, "outline.width"},
      {"two sides", RegularPolygon{2, 0.2}, wall, ProblemCode::kOutOfRange, "outline.sides"},
      {"a million sides", RegularPolygon{1000000, 0.2}, wall, ProblemCode::kOutOfRange, "outline.sides"},
      {"no flutes", Fluted{0.24, 0, 0.006}, wall, ProblemCode::kOutOfRange, "outline.flutes"},
      {"flutes as deep as the pan", Fluted{0.24, 12, 0.12}, wall, ProblemCode::kImpossibleShape, "outline.flute_depth"},
      {"bowl over half a ball", round, BowlWall{0.11}, ProblemCode::kImpossibleShape, "profile.depth"},
      {"wall points from above the floor", round, SteppedWall{{{0.01, 0.02}, {0.05, 0.0}}},
       ProblemCode::kImpossibleShape, "profile.points"},
      {"wall points that end inside the rim", round, SteppedWall{{{0.0, 0.02}, {0.05, 0.01}}},
       ProblemCode::kImpossibleShape, "profile.points"},
      {"wall points that overhang", round, SteppedWall{{{0.0, 0.01}, {0.02, 0.02}, {0.05, 0.0}}},
       ProblemCode::kImpossibleShape, "profile.points"},
      {"a step at the very rim", round, SteppedWall{{{0.0, 0.02}, {0.03, 0.01}, {0.03, 0.0}}},
       ProblemCode::kImpossibleShape, "profile.points"},
      {"one wall point", round, SteppedWall{{{0.0, 0.0}}}, ProblemCode::kMissing, "profile.points"},
      {"a wall without height", round, SteppedWall{{{0.0, 0.01}, {0.0, 0.0}}}, ProblemCode::kOutOfRange,
       "profile.points"},
  };
  for (const Refusal& refusal : refusals) {
    CAPTURE(refusal.why);
    PanShape shape;
    shape.outline = refusal.outline;
    shape.wall = refusal.wall;
    const auto pan = make_pan(shape);
    REQUIRE_FALSE(static_cast<bool>(pan));
    CHECK(pan.problem().code == refusal.code);
    CHECK(pan.problem().place == refusal.place);
    CHECK(pan.problem().message.size() > 15);
    CHECK(pan.problem().message.find("nan") == std::string::npos);
  }
}

TEST_CASE("rings whose core leaves no room are refused") {
  const auto place = [](double inner, double core_inset, const WallShape& wall) {
    PanShape shape;
    shape.outline = Round{0.2};
    shape.wall = wall;
    shape.core = CoreShape{inner, core_inset};
    const auto pan = make_pan(shape);
    REQUIRE_FALSE(static_cast<bool>(pan));
    return pan.problem().place;
  };
  CHECK(place(0.2, 0.0, StraightWall{0.05, 0.0, 0.0}) == "outline.inner_diameter");
  CHECK(place(0.3, 0.0, StraightWall{0.05, 0.0, 0.0}) == "outline.inner_diameter");
  CHECK(place(0.0, 0.0, StraightWall{0.05, 0.0, 0.0}) == "outline.inner_diameter");
  CHECK(place(0.1, 0.06, StraightWall{0.05, 0.0, 0.0}) == "profile.core_inset");
  CHECK(place(0.1, 0.03, StraightWall{0.05, 0.03, 0.0}) == "profile.core_inset");
  CHECK(place(0.1, 0.0, StraightWall{0.05, 0.06, 0.0}) == "profile.base_inset");
  CHECK(place(0.1, 0.0, StraightWall{0.05, 0.0, 0.04}) == "profile.floor_radius");
  CHECK(place(0.1, 0.01, BowlWall{0.02}) == "profile.core_inset");
  CHECK(place(0.1, 0.0, BowlWall{0.03}) == "profile.depth");
}

TEST_CASE("the most that is advised is not refused") {
  // The number in "at most N mm" is tried in its turn.
  const auto advised = [](const Problem& problem) {
    const std::size_t at = problem.message.find("at most ") != std::string::npos
                               ? problem.message.find("at most ") + 8
                               : problem.message.find("deepest, ") + 9;
    return 1e-3 * std::strtod(problem.message.c_str() + at, nullptr);
  };
  const auto refusal = [](const OutlineShape& outline, const WallShape& wall) {
    PanShape shape;
    shape.outline = outline;
    shape.wall = wall;
    const auto pan = make_pan(shape);
    REQUIRE_FALSE(static_cast<bool>(pan));
    return pan.problem();
  };
  const auto accepted = [](const OutlineShape& outline, const WallShape& wall) {
    PanShape shape;
    shape.outline = outline;
    shape.wall = wall;
    return static_cast<bool>(make_pan(shape));
  };
  for (int i = 0; i < 200; ++i) {
    const double size = 0.02 + 0.0013 * i + 1e-5 * (i % 7);
    const Round round{size};
    CHECK(accepted(round, StraightWall{0.05, advised(refusal(round, StraightWall{0.05, size, 0.0})), 0.0}));
    CHECK(accepted(round, BowlWall{advised(refusal(round, BowlWall{size}))}));
    const StraightWall rounded{0.03, 0.1 * size, size};
    CHECK(accepted(round, StraightWall{0.03, 0.1 * size, advised(refusal(round, rounded))}));
    const Rectangle corners{0.4, size, size};
    CHECK(accepted(Rectangle{0.4, size, advised(refusal(corners, StraightWall{0.05, 0.0, 0.0}))},
                   StraightWall{0.05, 0.0, 0.0}));
  }
}

TEST_CASE("a bowl cannot be a ring without a bottom") {
  PanShape shape;
  shape.outline = Round{0.2};
  shape.wall = BowlWall{0.08};
  shape.bottomless = true;
  const auto pan = make_pan(shape);
  REQUIRE_FALSE(static_cast<bool>(pan));
  CHECK(pan.problem().place == "bottomless");
}

TEST_CASE("a tin has at least one cavity and not more than a tray can hold") {
  PanShape shape;
  shape.outline = Round{0.07};
  shape.wall = StraightWall{0.03, 0.005, 0.0};
  for (const int count : {0, -1, 1000}) {
    shape.count = count;
    const auto pan = make_pan(shape);
    REQUIRE_FALSE(static_cast<bool>(pan));
    CHECK(pan.problem().place == "count");
  }
  shape.count = 12;
  CHECK(static_cast<bool>(make_pan(shape)));
}

}  // namespace tinwright
