// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reading jobs: what is taken, what is refused and where, and pans gauged by water.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "app/plan/demos.h"
#include "tests/jobs.h"

namespace tinwright {
namespace {

std::string with_recipe(const std::string& recipe, const std::string& rest = "") {
  return R"({"version": 1, "recipe": {)" + recipe + R"(}, "cupboard": [{"name": "mine", "pan": )" + round_tin(20, 5) +
         "}]" + rest + "}";
}

std::string with_item(const std::string& item) {
  return with_recipe(
      R"("parts": [{"name": "A", "role": "filling", "density": "1 g/ml", "level": "1/2", "ingredients": [{"food": "sugar", "amount": "100 g"}, )" +
      item + "]}]");
}

std::string with_own(const std::string& own) {
  return R"({"version": 1, "recipe": {"parts": [{"role": "filling", "mass": "500 g", "level": "1/2"}]}, "cupboard": [)" +
         own + "]}";
}

TEST_CASE("masses, volumes, pieces and ranges are weighed") {
  const auto item = [](const std::string& text) {
    const Worked worked = work_out(with_item(text));
    REQUIRE(worked.job);
    return worked.job->parts[0].items[1];
  };
  CHECK(item(R"({"food": "butter", "amount": "4 oz"})").mass == doctest::Approx(0.11339809).epsilon(1e-6));
  // USDA FoodData Central SR Legacy 20081: a cup of plain flour weighs 125 g.
  CHECK(item(R"({"food": "plain flour", "amount": "2 cup"})").mass == doctest::Approx(0.250).epsilon(1e-6));
  // USDA FoodData Central SR Legacy 01123: a large egg without its shell weighs 50 g.
  CHECK(item(R"({"food": "eggs", "amount": "3", "size": "large"})").mass == doctest::Approx(0.150).epsilon(1e-6));
  const RecipeItem range = item(R"({"food": "milk", "amount": "100 g", "up_to": "150 g"})");
  CHECK(range.mass == doctest::Approx(0.125));
  CHECK(range.most == doctest::Approx(0.150));
  CHECK(item(R"({"food": "plums", "amount": "2", "size": "tin", "each": "400 g"})").mass == doctest::Approx(0.8));
  const RecipeItem unknown = item(R"({"food": "moon dust", "amount": "1 cup"})");
  CHECK(unknown.is_taken_as_water);
  CHECK(unknown.known == nullptr);
  CHECK(item(R"({"food": "moon dust", "amount": "3"})").mass == 0.0);
  const RecipeItem pinch = item(R"({"food": "salt", "amount": "1", "size": "pinch"})");
  CHECK(pinch.mass > 2e-4);
  CHECK(pinch.mass < 6e-4);
  CHECK(item(R"({"food": "salt", "remark": "to taste"})").measure == Measure::kNone);
  CHECK(item(R"({"food": "sugar", "known": "none", "amount": "1 cup"})").is_taken_as_water);
}

TEST_CASE("what is wrong in a job is said at its place") {
  const auto faulty = [](const std::string& text, const std::string& place) {
    CAPTURE(text);
    CAPTURE(place);
    const Worked worked = work_out(text);
    CHECK(!worked.job);
    CHECK(worked.has_fault(place));
  };
  faulty("{}", "version");
  faulty(R"({"version": 2, "recipe": {"parts": []}})", "version");
  faulty(R"({"version": 1})", "recipe");
  faulty(with_recipe(""), "recipe.parts");
  faulty(with_recipe(R"("parts": [{"name": "A"}])"), "recipe.parts.0.role");
  faulty(with_recipe(R"("parts": [{"role": "filling"}])"), "recipe.parts.0.mass");
  faulty(with_recipe(R"("parts": [{"role": "crumbled", "mass": "1 kg"}])"), "recipe.parts.0.into");
  faulty(
      with_recipe(
          R"("parts": [{"name": "A", "role": "filling", "mass": "1 kg"}, {"name": "A", "role": "base", "mass": "1 kg"}])"),
      "recipe.parts.1.name");
  faulty(with_recipe(R"("parts": [{"role": "filling", "mass": "1"}])"), "recipe.parts.0.mass");
  faulty(with_item(R"({"amount": "100 g"})"), "recipe.parts.0.ingredients.1.food");
  faulty(with_item(R"({"food": "flour", "amount": "some"})"), "recipe.parts.0.ingredients.1.amount");
  faulty(with_item(R"({"food": "flour", "amount": "-3 g"})"), "recipe.parts.0.ingredients.1.amount");
  faulty(with_item(R"({"food": "flour", "amount": "9999 kg"})"), "recipe.parts.0.ingredients.1.amount");
  faulty(with_item(R"({"food": "flour", "amount": "100 g", "up_to": "50 g"})"), "recipe.parts.0.ingredients.1.up_to");
  faulty(with_item(R"({"food": "flour", "known": "unobtainium", "amount": "50 g"})"),
         "recipe.parts.0.ingredients.1.known");
  faulty(with_recipe(R"("parts": [{"role": "filling", "mass": "1 kg", "mixture": "nothing"}])"),
         "recipe.parts.0.mixture");
  faulty(with_recipe(R"("parts": [{"role": "filling", "mass": "1 kg"}], "fills": "0")"), "recipe.fills");
  faulty(with_recipe(R"("parts": [{"role": "filling", "mass": "1 kg"}], "steps": [{"part": "B"}])"),
         "recipe.steps.0.part");
  faulty(with_recipe(R"("parts": [{"role": "filling", "mass": "1 kg"}])", R"(, "plan": {"pans": [{"name": "yours"}]})"),
         "plan.pans.0.name");
  faulty(with_recipe(R"("parts": [{"role": "filling", "mass": "1 kg"}])",
                     R"(, "plan": {"pans": [{"name": "mine", "count": 2}]})"),
         "plan.pans.0.count");
  faulty(with_own(R"({"name": "x"})"), "cupboard.0.pan");
  faulty(with_own(R"({"name": "x", "pan": {"catalogue": "nothing"}})"), "cupboard.0.pan.catalogue");
  faulty(
      with_own(R"({"name": "x", "pan": )" + round_tin(20, 5) + R"(}, {"name": "x", "pan": )" + round_tin(20, 5) + "}"),
      "cupboard.1.name");
}

TEST_CASE("fields nobody knows are named and do not stop the job") {
  const Worked worked =
      work_out(with_recipe(R"("parts": [{"role": "filling", "mass": "500 g", "level": "1/2", "colour": "red"}])"));
  REQUIRE(worked.job);
  REQUIRE(worked.job->not_known.size() == 1);
  CHECK(worked.job->not_known[0] == "recipe.parts.0.colour");
}

TEST_CASE("water to the brim solves the size that was left out") {
  const auto own_pan = [](const std::string& text) {
    const Worked worked = work_out(with_own(text));
    REQUIRE(worked.job);
    return worked.job->cupboard.front();
  };
  const double water = 998.2;  // [kg/m³]
  const double upright = std::numbers::pi * 0.01 * 0.05;
  const auto grams = [&](double volume) { return std::to_string(volume * water * 1e3) + " g"; };
  const OwnPan deep = own_pan(R"({"name": "x", "water": ")" + grams(upright) +
                              R"(", "pan": {"outline": {"kind": "round", "diameter": "20 cm"}, "profile": {}}})");
  CHECK(depth(deep.pan) == doctest::Approx(0.05).epsilon(1e-6));
  CHECK(deep.remark.find("50 mm") != std::string::npos);
  const OwnPan wide = own_pan(R"({"name": "x", "water": ")" + grams(upright) +
                              R"(", "pan": {"outline": {"kind": "round"}, "profile": {"depth": "5 cm"}}})");
  CHECK(rim_area(wide.pan) == doctest::Approx(std::numbers::pi * 0.01).epsilon(1e-6));
  // A frustum of 20 cm at the rim and 16 cm at the floor: V = π h (R² + R r + r²) / 3.
  const double frustum = std::numbers::pi * 0.05 * (0.01 + 0.008 + 0.0064) / 3.0;
  const OwnPan tapered =
      own_pan(R"({"name": "x", "water": ")" + grams(frustum) + R"(", "pan": )" + round_tin(20, 5) + "}");
  CHECK(floor_area(tapered.pan) == doctest::Approx(std::numbers::pi * 0.0064).epsilon(1e-6));
  SUBCASE("or says that the measures contradict each other") {
    const OwnPan wrong =
        own_pan(R"({"name": "x", "water": ")" + grams(1.2 * upright) + R"(", "pan": )" + round_tin(20, 5) + "}");
    CHECK(wrong.remark.find("contradict") != std::string::npos);
    CHECK(brim_volume(wrong.pan) == doctest::Approx(upright));
    const OwnPan right =
        own_pan(R"({"name": "x", "water": ")" + grams(1.01 * upright) + R"(", "pan": )" + round_tin(20, 5) + "}");
    CHECK(right.remark.find("agrees") != std::string::npos);
  }
  SUBCASE("or that no size does") {
    const Worked none = work_out(with_own(
        R"({"name": "x", "water": "400 kg", "pan": {"outline": {"kind": "round", "diameter": "2 cm"}, "profile": {}}})"));
    CHECK(none.has_fault("cupboard.0.water"));
  }
  SUBCASE("shared by the cavities of a tin") {
    const OwnPan tin =
        own_pan(R"({"name": "x", "water": ")" + grams(6 * upright) +
                R"(", "pan": {"outline": {"kind": "round", "diameter": "20 cm"}, "profile": {}, "count": 6}})");
    CHECK(depth(tin.pan) == doctest::Approx(0.05).epsilon(1e-6));
  }
}

TEST_CASE("a part's own composition is the mean of its ingredients") {
  const Worked worked = work_out(with_recipe(R"("parts": [{"role": "filling", "level": "1/2", "ingredients": [
      {"food": "sugar", "amount": "100 g"}, {"food": "water", "amount": "300 g"}]}])"));
  REQUIRE(worked.job);
  REQUIRE(worked.job->parts[0].composition);
  const Composition& own = *worked.job->parts[0].composition;
  CHECK(own.water == doctest::Approx(0.75).epsilon(0.002));
  CHECK(own.carbohydrate == doctest::Approx(0.25).epsilon(0.002));
  CHECK(own.sugar.value_or(0.0) == doctest::Approx(0.25).epsilon(0.002));
}

TEST_CASE("all demo jobs work out without a fault and with nothing left to settle but gauged pans") {
  REQUIRE(demo_jobs().size() >= 3);
  bool has_role[5] = {};
  for (const Demo& demo : demo_jobs()) {
    CAPTURE(demo.key);
    const Worked worked = work_out(std::string(demo.text));
    for (const Fault& fault : worked.faults) MESSAGE(fault.place, ": ", fault.message);
    REQUIRE(worked.plan);
    CHECK(worked.job->name == demo.name);
    CHECK(worked.job->not_known.empty());
    CHECK(worked.job->unread.empty());
    CHECK(!worked.plan->recipe.overfills);
    for (const RecipePart& part : worked.job->parts) {
      has_role[static_cast<std::size_t>(part.role)] = true;
      for (const RecipeItem& item : part.items) {
        CAPTURE(item.food);
        CHECK((item.measure == Measure::kNone || item.mass > 0.0));
        CHECK(!item.is_taken_as_water);
      }
    }
    for (const PanPlan& pan : worked.plan->pans) CHECK(pan.overflow == doctest::Approx(0.0));
  }
  for (const bool is_used : has_role) CHECK(is_used);
}

}  // namespace
}  // namespace tinwright
