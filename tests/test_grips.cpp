// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Sizes that are dragged: they land on whole millimetres or sixteenths, the forms' texts say what the drawing shows,
// and nothing is dragged into what is no pan.
#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "app/plan/examples.h"
#include "app/plan/grips.h"

namespace tinwright {
namespace {

Bench round_bench(const std::string& diameter, const std::string& depth) {
  Bench bench;
  bench.has_recipe_pan = false;
  bench.my_pan.texts = {{"outline.diameter", diameter}, {"profile.depth", depth}};
  return bench;
}

GripState state_of(const Bench& bench, Grip grip) {
  const auto state = grip_state(bench, answer_bench(bench), grip);
  REQUIRE(state);
  return *state;
}

bool move(Bench& bench, Grip grip, int to) {
  return move_grip(bench, answer_bench(bench), grip, to);
}

}  // namespace

TEST_CASE("a dragged size lands on whole millimetres, or sixteenths of an inch, and reads back as exactly that") {
  Bench bench = round_bench("24 cm", "5 cm");
  CHECK(move(bench, Grip::kLength, 237));
  CHECK(bench.my_pan.texts["outline.diameter"] == "23.7 cm");
  CHECK(answer_bench(bench).my_pan->outline.length == doctest::Approx(0.237).epsilon(1e-12));
  CHECK(move(bench, Grip::kDepth, 18));
  CHECK(bench.my_pan.texts["profile.depth"] == "18 mm");
  bench.units = UnitChoice::kUs;
  CHECK(move(bench, Grip::kLength, 9 * 16 + 7));
  CHECK(answer_bench(bench).my_pan->outline.length == doctest::Approx((9.0 + 7.0 / 16.0) * 0.0254).epsilon(1e-12));
  CHECK(state_of(bench, Grip::kLength).at == 9 * 16 + 7);
}

TEST_CASE("every step of every size comes back as the step it was moved to") {
  for (const UnitChoice units : {UnitChoice::kMetric, UnitChoice::kUs}) {
    Bench bench = round_bench("24 cm", "5 cm");
    bench.units = units;
    bench.filling.texts = {{"level", "50 %"}};
    for (const Grip grip : {Grip::kLength, Grip::kDepth, Grip::kLevel}) {
      const GripState range = state_of(bench, grip);
      for (int step = range.first; step <= range.last; ++step) {
        move(bench, grip, step);
        CAPTURE(step);
        REQUIRE(state_of(bench, grip).at == step);
      }
      move(bench, grip, range.at);
    }
  }
}

TEST_CASE("a rim is pulled on one side and grows on both; the same way back is where it was") {
  const GripState from = state_of(round_bench("24 cm", "5 cm"), Grip::kLength);
  CHECK(dragged_to(from, Grip::kLength, 0.0, UnitChoice::kMetric) == 240);
  CHECK(dragged_to(from, Grip::kLength, 0.0052, UnitChoice::kMetric) == 250);
  CHECK(dragged_to(from, Grip::kLength, -0.0052, UnitChoice::kMetric) == 230);
  CHECK(dragged_to(from, Grip::kLength, -9.0, UnitChoice::kMetric) == from.first);
  const GripState deep = state_of(round_bench("24 cm", "5 cm"), Grip::kDepth);
  CHECK(dragged_to(deep, Grip::kDepth, 0.0104, UnitChoice::kMetric) == 60);
}

TEST_CASE("a size between two steps is dragged from what it is") {
  const GripState from = state_of(round_bench("9 in", "2 in"), Grip::kLength);  // 22.86 cm
  CHECK(dragged_to(from, Grip::kLength, 0.0001, UnitChoice::kMetric) == 229);
  CHECK(dragged_to(from, Grip::kLength, -0.0001, UnitChoice::kMetric) == 228);
}

TEST_CASE("a catalogue pan that is dragged has sizes of its own, the others as they were") {
  Bench bench = round_bench("24 cm", "5 cm");
  bench.my_pan.catalogue = "quarter-sheet";
  const Pan before = *answer_bench(bench).my_pan;
  CHECK(move(bench, Grip::kWidth, 200));
  CHECK(bench.my_pan.catalogue.empty());
  const Pan after = *answer_bench(bench).my_pan;
  CHECK(after.outline.width == doctest::Approx(0.200).epsilon(1e-12));
  CHECK(after.outline.length == before.outline.length);
  CHECK(depth(after) == depth(before));
}

TEST_CASE("where a level is given, the fill line moves the level, and what is left over follows") {
  Bench bench = round_bench("20 cm", "6 cm");
  bench.filling.texts = {{"amount", "1.5 l"}, {"level", "75 %"}, {"density", "1 g/ml"}};
  const GripState from = state_of(bench, Grip::kLevel);
  CHECK(from.words.find("below the rim") != std::string::npos);
  CHECK(from.at == 44);  // 15 mm below the rim, of 59 that hold something
  CHECK(move(bench, Grip::kLevel, from.at - 15));
  CHECK(bench.filling.texts["level"] == "50 %");
  CHECK(bench.filling.texts["amount"] == "1.5 l");
  const BenchAnswer answer = answer_bench(bench);
  CHECK(answer.fill->below_rim == doctest::Approx(0.03).epsilon(1e-4));
  CHECK(answer.fill->left == doctest::Approx(1.5e-3 - 0.25 * 3.14159265 * 0.04 * 0.03).epsilon(1e-4));
}

TEST_CASE("the fill line rises no higher than there is filling for") {
  Bench bench = round_bench("20 cm", "6 cm");  // a centimetre holds 314 ml
  bench.filling.texts = {{"amount", "1 l"}, {"level", "25 %"}, {"density", "1 g/ml"}};
  const GripState from = state_of(bench, Grip::kLevel);
  CHECK(from.last == 59 - 29);  // 31.8 mm high, so 29 mm below the rim is the first whole one
  CHECK(move(bench, Grip::kLevel, 59));
  CHECK(answer_bench(bench).fill->below_rim == doctest::Approx(0.029).epsilon(1e-3));
  CHECK(answer_bench(bench).fill->missing < 1e-9);
}

TEST_CASE("where only an amount is given, the fill line moves the amount, in the unit it was typed in") {
  Bench bench = round_bench("20 cm", "6 cm");
  bench.filling.texts = {{"amount", "1 l"}, {"density", "1.1 g/ml"}};
  const double half = 0.25 * 3.14159265 * 0.04 * 0.03;  // [m³] to 30 mm below the rim
  const auto below = [&] { return answer_bench(bench).fill->below_rim; };
  CHECK(move(bench, Grip::kLevel, 59 - 30));
  CHECK(bench.filling.texts["amount"] == format_number(1e3 * half, 3) + " l");
  CHECK(below() == doctest::Approx(0.03).epsilon(1e-3));
  bench.filling.texts["amount"] = "2 lb 3 oz";
  CHECK(move(bench, Grip::kLevel, 59 - 30));
  CHECK(bench.filling.texts["amount"] == format_number(1100.0 * half / 0.028349523125, 2) + " oz");
  CHECK(below() == doctest::Approx(0.03).epsilon(1e-3));
  bench.filling.texts["amount"] = "2½ cups";
  CHECK(move(bench, Grip::kLevel, 59 - 30));
  CHECK(bench.filling.texts["amount"] == format_number(1e6 * half, 1) + " ml");
  CHECK(below() == doctest::Approx(0.03).epsilon(1e-3));
  CHECK(text_of(bench.filling.texts, "level").empty());
}

TEST_CASE("in a lined shell the fill line is told from the crust's top") {
  for (const Example& example : worked_examples()) {
    if (example.key != "shell") continue;
    Bench bench = example.bench;
    const GripState from = state_of(bench, Grip::kLevel);
    CHECK(from.words.find("below the crust's top") != std::string::npos);
    CHECK(move(bench, Grip::kLevel, from.at - 4));
    const BenchAnswer answer = answer_bench(bench);
    CHECK(std::abs(answer.fill->below_rim * 1e3 - std::round(answer.fill->below_rim * 1e3)) < 0.01);
  }
}

TEST_CASE("walls that would meet stop the drag while it is still a pan") {
  Bench bench = round_bench("10 cm", "5 cm");
  bench.my_pan.texts["profile.base_inset"] = "4 cm";
  CHECK(move(bench, Grip::kLength, 20));  // of which the walls alone take 8 cm
  const BenchAnswer answer = answer_bench(bench);
  REQUIRE(answer.my_pan);
  CHECK(answer.my_pan->outline.length < 0.1);
  CHECK(answer.my_pan->outline.length >= 0.08);
}

TEST_CASE("what has no such size has no grip for it") {
  Bench bench = round_bench("24 cm", "5 cm");
  const auto has = [&](Grip grip) { return grip_state(bench, answer_bench(bench), grip).has_value(); };
  CHECK_FALSE(has(Grip::kWidth));
  CHECK_FALSE(has(Grip::kLevel));
  bench.my_pan.wall = WallEntry::kMeasured;
  bench.my_pan.texts["profile.points"] = "0 cm, 1 cm; 5 cm, 0 cm";
  CHECK_FALSE(has(Grip::kDepth));
  CHECK(has(Grip::kLength));
  bench.my_pan.texts["outline.diameter"] = "wide";
  CHECK_FALSE(has(Grip::kLength));
}

}  // namespace tinwright
