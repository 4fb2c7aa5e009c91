// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The JSON reader: lines, refusals, limits.
#include <string>

#include <doctest/doctest.h>

#include "app/files/json_tree.h"

namespace tinwright {
namespace {

Problem refused(const std::string& text) {
  const auto tree = read_json(text);
  REQUIRE_FALSE(static_cast<bool>(tree));
  CHECK(tree.problem().code == ProblemCode::kUnreadable);
  CHECK_FALSE(tree.problem().message.empty());
  return tree.problem();
}

}  // namespace

TEST_CASE("every field knows the line it stands on") {
  const auto tree = read_json("{\n  \"a\": \"x\",\n  \"b\": {\n    \"c\": 12\n  },\n\n  \"d\": [1,\n   2]\n}\n");
  REQUIRE(static_cast<bool>(tree));
  CHECK(tree->line == 1);
  CHECK(tree->items[0].line == 2);
  CHECK(tree->items[1].line == 3);
  CHECK(tree->items[1].items[0].line == 4);
  CHECK(tree->items[1].items[0].text == "12");
  CHECK(tree->items[2].line == 7);
}

TEST_CASE("texts keep their characters, numbers their writing") {
  const auto tree = read_json(R"({"size": "2½ in", "quote": "1/4\"", "n": 1.50, "t": true, "z": null})");
  REQUIRE(static_cast<bool>(tree));
  CHECK(tree->items[0].text == "2½ in");
  CHECK(tree->items[1].text == "1/4\"");
  CHECK(tree->items[2].text == "1.50");
  CHECK(tree->items[3].kind == JsonNode::Kind::kBoolean);
  CHECK(tree->items[4].kind == JsonNode::Kind::kNull);
}

TEST_CASE("what is not JSON is refused with the line where it stops being it") {
  CHECK(refused("").place == "line 1");
  CHECK(refused("{\"a\": 1,}").place == "line 1");
  CHECK(refused("{\n\"a\": \"x\"\n\"b\": 1\n}").place == "line 3");
  CHECK(refused("{\"a\": 1} x").place == "line 1");
  CHECK(refused("{\"a\": NaN}").place == "line 1");
  CHECK(refused("{\"a\": \"\xff\"}").place == "line 1");
  refused("{\"a\": 1e999}");
}

TEST_CASE("a number at the end of a line stands on that line") {
  const auto tree = read_json("[\n1,\n2\n,\n3\n]");
  REQUIRE(static_cast<bool>(tree));
  CHECK(tree->items[1].line == 3);
  CHECK(tree->items[2].line == 5);
}

TEST_CASE("a text with a NUL byte is no text") {
  refused(std::string("{}\0", 3));
}

TEST_CASE("a field given twice is refused") {
  CHECK(refused("{\"a\": 1,\n\"a\": 2}").message.find("twice") != std::string::npos);
}

TEST_CASE("bottomless nesting is refused, not followed") {
  refused(std::string(100000, '['));
  refused(std::string(100000, '[') + std::string(100000, ']'));
}

}  // namespace tinwright
