// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pans from files: every shape of the format, and every fault with its place and line.
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/files/pan_reader.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;
using std::numbers::pi;

Pan pan_from(const std::string& json) {
  const auto tree = read_json(json);
  REQUIRE(static_cast<bool>(tree));
  const Fields fields = fields_of(*tree);
  FieldReader reader(fields);
  const auto pan = read_pan(reader, "");
  reader.refuse_unread();
  for (const Fault& fault : reader.faults()) FAIL_CHECK(fault.place << ": " << fault.message);
  REQUIRE(static_cast<bool>(pan));
  return *pan;
}

std::vector<Fault> faults_of(const std::string& json) {
  const auto tree = read_json(json);
  REQUIRE(static_cast<bool>(tree));
  const Fields fields = fields_of(*tree);
  FieldReader reader(fields);
  const auto pan = read_pan(reader, "");
  reader.refuse_unread();
  CHECK_FALSE(reader.faults().empty());
  for (const Fault& fault : reader.faults()) CHECK_FALSE(fault.message.empty());
  return reader.faults();
}

std::string with_profile(const std::string& profile) {
  return "{\"outline\": {\"kind\": \"round\", \"diameter\": \"24 cm\"},\n\"profile\": " + profile + "}";
}

std::string with_outline(const std::string& outline) {
  return "{\"outline\": " + outline + ",\n\"profile\": {\"depth\": \"5 cm\"}}";
}

}  // namespace

TEST_CASE("every outline of the format is read in any unit") {
  CHECK(relative_error(rim_area(pan_from(with_outline(R"({"kind": "round", "diameter": "9 in"})"))),
                       pi * std::pow(0.2286 / 2, 2)) < 1e-12);
  CHECK(
      relative_error(rim_area(pan_from(with_outline(
                         R"({"kind": "rectangle", "length": "13 in", "width": "22.86 cm", "corner_radius": "0 mm"})"))),
                     0.3302 * 0.2286) < 1e-12);
  CHECK(relative_error(rim_area(pan_from(with_outline(R"({"kind": "oval", "length": "30 cm", "width": "20 cm"})"))),
                       pi * 0.15 * 0.10) < 1e-9);
  CHECK(relative_error(rim_area(pan_from(with_outline(R"({"kind": "polygon", "sides": 6, "across_flats": "20 cm"})"))),
                       6 * std::tan(pi / 6) * 0.01) < 1e-12);
  // Area inside r = D/2 - a/2 + (a/2) cos nθ: π (mean² + (a/2)²/2).
  CHECK(relative_error(rim_area(pan_from(with_outline(
                           R"({"kind": "fluted", "diameter": "24 cm", "flutes": 40, "flute_depth": "6 mm"})"))),
                       pi * (0.117 * 0.117 + 0.5 * 0.003 * 0.003)) < 1e-9);
  CHECK(relative_error(rim_area(pan_from(
                           with_outline(R"({"kind": "ring", "outer_diameter": "24 cm", "inner_diameter": "8 cm"})"))),
                       pi * (0.0144 - 0.0016)) < 1e-12);
  CHECK(relative_error(
            rim_area(pan_from(with_outline(
                R"({"kind": "freeform", "points": [["0 cm", "0 cm"], ["30 cm", "0 cm"], ["0 cm", "20 cm"]]})"))),
            0.03) < 1e-12);
}

TEST_CASE("every profile of the format is read") {
  const Pan tapered = pan_from(with_profile(R"({"depth": "3 cm", "base_inset": "1 cm"})"));
  CHECK(relative_error(floor_area(tapered), pi * 0.11 * 0.11) < 1e-12);
  const Pan by_angle = pan_from(with_profile(R"({"depth": "3 cm", "wall_angle": "45 deg"})"));
  CHECK(relative_error(floor_area(by_angle), pi * 0.09 * 0.09) < 1e-12);
  const Pan bowl = pan_from(with_profile(R"({"kind": "bowl", "depth": "8 cm"})"));
  CHECK(floor_area(bowl) == 0.0);
  const Pan stepped = pan_from(with_profile(R"({"points": [["0 cm", "1 cm"], ["3 cm", "0 cm"]]})"));
  CHECK(relative_error(brim_volume(stepped), brim_volume(tapered)) < 1e-12);
  const Pan tube = pan_from(R"({"outline": {"kind": "ring", "outer_diameter": "25 cm", "inner_diameter": "5 cm"},
    "profile": {"depth": "10 cm", "base_inset": "15 mm", "core_inset": "1 cm"}, "material": "silicone", "count": 2})");
  CHECK(relative_error(floor_area(tube), pi * (0.11 * 0.11 - 0.035 * 0.035)) < 1e-12);
  CHECK(tube.material == Material::kSilicone);
  CHECK(tube.count == 2);
}

TEST_CASE("a pan may be named by its id in the catalogue") {
  CHECK(relative_error(depth(pan_from(R"({"catalogue": "quarter-sheet"})")), 0.0254) < 1e-12);
  CHECK(faults_of(R"({"catalogue": "no-such-pan"})").front().place == "catalogue");
}

TEST_CASE("faults of files carry code, place and line") {
  struct Case {
    std::string json;
    ProblemCode code;
    std::string place;
    int line;
  };
  const std::vector<Case> cases{
      {"{}", ProblemCode::kMissing, "outline", 1},
      {with_outline(R"({"diameter": "9 in"})"), ProblemCode::kMissing, "outline.kind", 1},
      {with_outline(R"({"kind": "circle", "diameter": "9 in"})"), ProblemCode::kUnknown, "outline.kind", 1},
      {with_outline(R"({"kind": "round"})"), ProblemCode::kMissing, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": 24})"), ProblemCode::kMissingUnit, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": "24"})"), ProblemCode::kMissingUnit, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": "24 g"})"), ProblemCode::kWrongUnit, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": "-24 cm"})"), ProblemCode::kOutOfRange, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": "0 cm"})"), ProblemCode::kOutOfRange, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": ["24 cm"]})"), ProblemCode::kNotANumber, "outline.diameter", 1},
      {with_outline(R"({"kind": "round", "diameter": "24 cm", "widht": "1 cm"})"), ProblemCode::kUnknown,
       "outline.widht", 1},
      {with_outline(R"({"kind": "polygon", "sides": "six", "across_flats": "20 cm"})"), ProblemCode::kNotANumber,
       "outline.sides", 1},
      {with_outline(R"({"kind": "polygon", "sides": 6.5, "across_flats": "20 cm"})"), ProblemCode::kNotANumber,
       "outline.sides", 1},
      {with_outline(
           R"({"kind": "freeform", "points": [["0 cm", "0 cm", "1 cm"], ["1 cm", "0 cm"], ["0 cm", "1 cm"]]})"),
       ProblemCode::kContradiction, "outline.points.0", 1},
      {with_outline(R"({"kind": "freeform", "points": [["0 cm", "0"], ["9 cm", "0 cm"], ["0 cm", "9 cm"]]})"),
       ProblemCode::kMissingUnit, "outline.points.0.1", 1},
      {with_outline(R"({"kind": "ring", "outer_diameter": "0 cm", "inner_diameter": "5 cm"})"),
       ProblemCode::kOutOfRange, "outline.outer_diameter", 1},
      {with_profile(R"({})"), ProblemCode::kMissing, "profile.depth", 2},
      {with_profile(R"({"depth": "5 cm", "base_inset": "1 cm", "wall_angle": "10 deg"})"), ProblemCode::kContradiction,
       "profile.wall_angle", 2},
      {with_profile(R"({"depth": "5 cm", "wall_angle": "90 deg"})"), ProblemCode::kOutOfRange, "profile.wall_angle", 2},
      {with_profile(R"({"depth": "5 cm", "wall_angle": "80 deg"})"), ProblemCode::kImpossibleShape,
       "profile.wall_angle", 2},
      {with_profile(R"({"depth": "5 cm", "base_inset": "13 cm"})"), ProblemCode::kImpossibleShape, "profile.base_inset",
       2},
      {with_profile("{\"depth\": \"5 cm\"}, \"material\":\n\"gold\""), ProblemCode::kUnknown, "material", 2},
      {with_profile("{\"depth\": \"5 cm\"}, \"count\": 0"), ProblemCode::kOutOfRange, "count", 2},
      {with_profile("{\"depth\": \"5 cm\"}, \"bottomless\": \"yes\""), ProblemCode::kUnknown, "bottomless", 2},
  };
  for (const Case& c : cases) {
    CAPTURE(c.json);
    const auto faults = faults_of(c.json);
    CHECK(faults.front().code == c.code);
    CHECK(faults.front().place == c.place);
    CHECK(faults.front().line == c.line);
  }
}

TEST_CASE("a member that is null counts as left out, a corner that is null as missing") {
  CHECK(pan_from(with_profile(R"({"depth": "3 cm", "base_inset": null})")).wall.floor_inset() == 0.0);
  CHECK(faults_of(R"({"catalogue": null})").front().place == "outline");
  CHECK(faults_of(
            with_outline(
                R"({"kind": "freeform", "points": [["0 cm","0 cm"],["9 cm","0 cm"],["9 cm",null],["0 cm","9 cm"]]})"))
            .front()
            .place == "outline.points.2.1");
}

TEST_CASE("names with dots, without letters or with control characters are not taken for fields") {
  CHECK(faults_of(R"({"outline.kind": "round", "outline.diameter": "24 cm", "profile.depth": "3 cm"})").front().place ==
        "outline");
  const auto faults = faults_of("{\"a\\nb\\u001b[31m\": 5, \"\": 6, \"x\\u202ey\": 7}");
  for (const Fault& fault : faults) {
    CHECK((fault.place + fault.message).find_first_of("\n\x1b") == std::string::npos);
    CHECK((fault.place + fault.message).find("\xe2\x80") == std::string::npos);
  }
}

TEST_CASE("one fault does not bring others that only follow from it") {
  CHECK(faults_of(with_outline(R"({"kind": "circle", "diameter": "9 in"})")).size() == 1);
  CHECK(faults_of(R"({"profile": {"depth": "5 cm"}, "material": "glass"})").size() == 1);
}

TEST_CASE("a file of thousands of unknown fields is refused in a few lines") {
  std::string json = "{";
  for (int i = 0; i < 20000; ++i) json += "\"k" + std::to_string(i) + "\": 1, ";
  CHECK(faults_of(json + "\"z\": 1}").size() < 30);
}

TEST_CASE("all faults of a file are told at once") {
  const auto faults = faults_of(R"({"outline": {"kind": "rectangle", "length": "a", "width": "9"},
    "profile": {"depth": "-1 cm"}, "colour": "blue"})");
  CHECK(faults.size() == 4);
}

}  // namespace tinwright
