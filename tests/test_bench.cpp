// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The whole bench: the worked examples, cautions, and problems at the field they are about.
#include <algorithm>
#include <string>

#include <doctest/doctest.h>

#include "app/plan/bench.h"
#include "app/plan/examples.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using shapes::relative_error;

const Bench& example(const std::string& key) {
  const auto& all = worked_examples();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Example& e) { return e.key == key; });
  REQUIRE(found != all.end());
  return found->bench;
}

bool says(const Report& report, const std::string& words) {
  return std::any_of(report.begin(), report.end(), [&](const ReportLine& line) {
    return (line.label + " " + line.value + " " + line.detail).find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("every worked example answers without a problem") {
  for (const Example& each : worked_examples()) {
    CAPTURE(each.key);
    const BenchAnswer answer = answer_bench(each.bench);
    CHECK(answer.problems.empty());
    CHECK(static_cast<bool>(answer.my_pan));
    CHECK_FALSE(answer.swap.empty());
    CHECK_FALSE(answer.dough.empty());
    CHECK_FALSE(answer.cautions.empty());
  }
}

TEST_CASE("a 9 in pie tin swapped for a 24 cm fluted ring: factors are ratios of volume and surface") {
  const BenchAnswer answer = answer_bench(example("fluted"));
  const PanSwap swap = swap_pans(*answer.recipe_pan, *answer.my_pan);
  CHECK(relative_error(swap.filling, brim_volume(*answer.my_pan) / brim_volume(*answer.recipe_pan)) < 1e-12);
  CHECK(swap.filling == doctest::Approx(1.247).epsilon(0.002));
  CHECK(says(answer.swap, "× 1.25"));
  CHECK(says(answer.swap, "no bottom"));
  REQUIRE(static_cast<bool>(answer.press));
  CHECK(relative_error(answer.press->dough * answer.press_job->density, 0.380) < 1e-9);
}

TEST_CASE("the slab does not reach the edges of the quarter sheet tray, and the sizes it makes are its area") {
  const BenchAnswer answer = answer_bench(example("slab"));
  REQUIRE(static_cast<bool>(answer.press));
  CHECK_FALSE(answer.press->reaches_edges);
  CHECK(answer.press->coverage > 0.6);
  CHECK(answer.press->coverage < 0.95);
  CHECK(says(answer.dough, "of the floor"));
  CHECK(says(answer.dough, "a rectangle of"));
  CHECK_FALSE(static_cast<bool>(answer.fill));
}

TEST_CASE("the shell filled to three quarters adds up: filling poured and left make what there was") {
  const BenchAnswer answer = answer_bench(example("shell"));
  REQUIRE(static_cast<bool>(answer.fill));
  const double density = *answer.fill_job->density;
  CHECK(relative_error((answer.fill->volume + answer.fill->left) * density, 1.4) < 1e-9);
  CHECK(relative_error(answer.fill->height + answer.fill->below_rim, 0.045 - 0.006) < 1e-9);
  CHECK(answer.fill->level == 0.75);
  CHECK(says(answer.filling, "below the crust's top"));
  CHECK(says(answer.filling, "Left over"));
}

TEST_CASE("egg and dairy fillings, glass, silicone and raw dough bring their cautions, each once") {
  Bench bench = example("shell");
  bench.my_pan.catalogue = "pie-glass-9-1-2";
  bench.dough.texts = {{"thickness", "4 mm"}};
  bench.filling.texts = {{"level", "75 %"}};
  const BenchAnswer glass = answer_bench(bench);
  CHECK(says(glass.cautions, "egg or dairy"));
  CHECK(says(glass.cautions, "local food-safety rules"));
  CHECK(says(glass.cautions, "Glass"));
  CHECK(says(glass.cautions, "Raw dough"));
  CHECK(std::count_if(glass.cautions.begin(), glass.cautions.end(),
                      [](const ReportLine& line) { return line.value.find("Glass") != std::string::npos; }) == 1);
  bench.my_pan.catalogue = "silicone-half-spheres-6";
  CHECK(says(answer_bench(bench).cautions, "Silicone"));
}

TEST_CASE("a wrong text is told at its field and leaves the other answers standing") {
  Bench bench = example("fluted");
  bench.filling.texts["amount"] = "900";
  const BenchAnswer answer = answer_bench(bench);
  CHECK(answer.problems.size() == 1);
  CHECK(answer.problems.count("filling.amount") == 1);
  CHECK(static_cast<bool>(answer.press));
  CHECK_FALSE(static_cast<bool>(answer.fill));
}

TEST_CASE("own sizes start from the catalogue pan and give the same answer until changed") {
  for (const char* id : {"pie-9x1-1-4", "tube-10x4", "savarin-24cm", "bombe-18cm", "hexagon-20cm", "tartlet-6"}) {
    CAPTURE(id);
    Bench bench;
    bench.has_recipe_pan = false;
    bench.my_pan.catalogue = id;
    const BenchAnswer before = answer_bench(bench);
    take_own_sizes(bench.my_pan);
    CHECK(bench.my_pan.catalogue.empty());
    const BenchAnswer after = answer_bench(bench);
    CHECK(after.problems.empty());
    REQUIRE(static_cast<bool>(after.my_pan));
    CHECK(relative_error(brim_volume(*after.my_pan), brim_volume(*before.my_pan)) < 1e-12);
    CHECK(after.my_pan->count == before.my_pan->count);
    CHECK(after.my_pan->material == before.my_pan->material);
  }
}

TEST_CASE("corners and wall points typed as text make the pan, and a slip is told at their field") {
  Bench bench;
  bench.has_recipe_pan = false;
  bench.my_pan.outline = 6;  // freeform
  bench.my_pan.wall = WallEntry::kMeasured;
  bench.my_pan.texts = {{"outline.points", "0 cm, 0 cm; 30 cm, 0 cm; 30 cm, 20 cm; 0 cm, 20 cm"},
                        {"profile.points", "0 cm, 0 cm; 5 cm, 0 cm"}};
  const BenchAnswer answer = answer_bench(bench);
  REQUIRE(static_cast<bool>(answer.my_pan));
  CHECK(relative_error(brim_volume(*answer.my_pan), 0.3 * 0.2 * 0.05) < 1e-9);
  bench.my_pan.texts["outline.points"] = "0 cm, 0 cm; 30 cm; 30 cm, 20 cm";
  CHECK(answer_bench(bench).problems.count("my_pan.outline.points") == 1);
}

TEST_CASE("against a pan without a flat floor there is no factor for a base") {
  Bench bench = example("shell");
  bench.recipe_pan.catalogue = "bombe-18cm";
  const BenchAnswer answer = answer_bench(bench);
  CHECK_FALSE(static_cast<bool>(swap_pans(*answer.recipe_pan, *answer.my_pan).base));
  CHECK_FALSE(says(answer.swap, "floor only"));
}

TEST_CASE("an amount of filling is a weight or a volume, as it is written") {
  Bench bench = example("shell");
  bench.dough.texts.clear();
  bench.filling.texts = {{"amount", "4 cups"}};
  const BenchAnswer by_volume = answer_bench(bench);
  REQUIRE(static_cast<bool>(by_volume.fill));
  CHECK(relative_error(by_volume.fill->volume, 4 * 236.5882365e-6) < 1e-9);
  bench.filling.texts = {{"amount", "1 kg"}};
  const BenchAnswer by_mass = answer_bench(bench);
  REQUIRE(static_cast<bool>(by_mass.fill));
  CHECK(relative_error(by_mass.fill->volume, 1.0 / 1050) < 1e-9);
}

}  // namespace tinwright
