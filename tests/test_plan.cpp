// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Plans against closed forms of upright round tins: floor π r², wall lining π (r² − (r − t)²)(h − t), filling π (r −
// t)² z.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "tests/jobs.h"

namespace tinwright {
namespace {

constexpr double kPi = std::numbers::pi;

/// {"version": 1, "recipe": {parts, pan?}, "cupboard": [mine], "plan": plan}
std::string job_text(const std::string& parts, const std::string& recipe_pan, const std::string& cupboard,
                     const std::string& plan) {
  return R"({"version": 1, "recipe": {)" + (recipe_pan.empty() ? "" : R"("pan": )" + recipe_pan + ", ") +
         R"("parts": [)" + parts + R"(]}, "cupboard": [)" + cupboard + R"(], "plan": {)" + plan + "}}";
}

std::string own(const std::string& name, const std::string& pan, int count = 1) {
  return R"({"name": ")" + name + R"(", "count": )" + std::to_string(count) + R"(, "pan": )" + pan + "}";
}

const std::string kBatter = R"({"name": "Batter", "role": "filling", "mass": "600 g", "density": "1 g/ml"})";
const std::string kUseMine = R"("pans": [{"name": "mine"}])";

/// [m³] of a lining t thick in an upright tin.
double lining(double r, double h, double t) {
  return kPi * r * r * t + kPi * (r * r - (r - t) * (r - t)) * (h - t);
}

TEST_CASE("a batter goes by the area of the tin where the depth is the same") {
  const Worked worked = work_out(job_text(kBatter, round_tin(20, 5), own("mine", round_tin(24, 5)), kUseMine));
  REQUIRE(worked.plan);
  CHECK(worked.plan->parts[0].factor == doctest::Approx(1.44).epsilon(1e-9));
  CHECK(worked.plan->recipe.fill_height == doctest::Approx(600e-6 / (kPi * 0.01)).epsilon(1e-9));
  CHECK(worked.plan->pans[0].fill_height == doctest::Approx(worked.plan->recipe.fill_height).epsilon(1e-9));
  CHECK(worked.plan->parts[0].left == doctest::Approx(0.0));
}

TEST_CASE("two tins' worth for one tin like the recipe's is half of it") {
  const std::string text = R"({"version": 1, "recipe": {"fills": "2", "pan": )" + round_tin(20, 5) + R"(, "parts": [)" +
                           kBatter + R"(]}, "cupboard": [)" + own("mine", round_tin(20, 5)) + R"(], "plan": {)" +
                           kUseMine + "}}";
  const Worked worked = work_out(text);
  REQUIRE(worked.plan);
  CHECK(worked.plan->parts[0].factor == doctest::Approx(0.5).epsilon(1e-9));
}

TEST_CASE("a lining goes by surface times thickness, not by volume") {
  const std::string dough =
      R"({"name": "Crust", "role": "lining", "density": "1.2 g/ml", "mass": "300 g", "thickness": "4 mm"})";
  const Worked worked =
      work_out(job_text(dough + ", " + kBatter, round_tin(20, 5), own("mine", round_tin(26, 3)), kUseMine));
  REQUIRE(worked.plan);
  CHECK(worked.plan->parts[0].factor == doctest::Approx(lining(0.13, 0.03, 0.004) * 1200 / 0.3).epsilon(1e-9));
  const double level = worked.plan->recipe.level;
  CHECK(level == doctest::Approx(600e-6 / (kPi * 0.096 * 0.096) / 0.046).epsilon(1e-9));
  CHECK(worked.plan->pans[0].fill_height == doctest::Approx(level * 0.026).epsilon(1e-9));
  CHECK(worked.plan->pans[0].below_rim == doctest::Approx((1 - level) * 0.026).epsilon(1e-9));
  CHECK(worked.plan->parts[1].factor == doctest::Approx(kPi * 0.126 * 0.126 * level * 0.026 / 600e-6).epsilon(1e-9));
}

TEST_CASE("without a thickness the dough is as thick as it comes out in the recipe's pan") {
  const std::string dough = R"({"name": "Crust", "role": "lining", "density": "1 g/ml", "mass": "300 g"})";
  const Worked worked = work_out(job_text(dough, round_tin(20, 5), own("mine", round_tin(24, 5)), kUseMine));
  REQUIRE(worked.plan);
  const double t = worked.plan->recipe.shell.lining;
  CHECK(lining(0.10, 0.05, t) == doctest::Approx(300e-6).epsilon(1e-9));
  CHECK(worked.plan->parts[0].mass == doctest::Approx(1000 * lining(0.12, 0.05, t)).epsilon(1e-9));
}

TEST_CASE("a base goes by floor area and a topping by the surface under it") {
  const std::string base = R"({"name": "Base", "role": "base", "density": "1 g/ml", "mass": "200 g"})";
  const std::string top = R"({"name": "Top", "role": "topping", "mass": "90 g"})";
  const Worked worked =
      work_out(job_text(base + ", " + kBatter + ", " + top, round_tin(20, 6), own("mine", round_tin(10, 6), 3),
                        R"("pans": [{"name": "mine", "count": 3}])"));
  REQUIRE(worked.plan);
  CHECK(worked.plan->parts[0].factor == doctest::Approx(0.75).epsilon(1e-9));
  CHECK(worked.plan->parts[2].factor == doctest::Approx(0.75).epsilon(1e-9));
  CHECK(worked.plan->recipe.shell.base == doctest::Approx(200e-6 / (kPi * 0.01)).epsilon(1e-9));
}

TEST_CASE("crumbs follow the part they go into, and count in its weight after the bake loss") {
  const std::string parts =
      R"({"name": "Slab", "role": "crumbled", "into": "Base", "mass": "220 g", "bake_loss": "10 %", "density": "1 g/ml",
          "thickness": "5 mm", "tray": {"outline": {"kind": "rectangle", "length": "20 cm", "width": "20 cm"}, "profile": {"depth": "2 cm"}}},
         {"name": "Base", "role": "base", "density": "1 g/ml", "ingredients": [{"food": "butter", "amount": "52 g"}]})";
  const Worked worked = work_out(job_text(parts, round_tin(20, 6), own("mine", round_tin(24, 6)), kUseMine));
  REQUIRE(worked.plan);
  CHECK(worked.job->parts[1].mass == doctest::Approx(0.198 + 0.052));
  CHECK(worked.plan->parts[1].factor == doctest::Approx(1.44).epsilon(1e-9));
  CHECK(worked.plan->parts[0].factor == doctest::Approx(1.44).epsilon(1e-9));
  REQUIRE(worked.plan->parts[0].on_tray);  // 316.8 ml at 5 mm on 400 cm²: more than the tray takes
  CHECK(worked.plan->parts[0].on_tray->reaches_edges);
  const Worked less = work_out(job_text(parts, round_tin(20, 6), own("mine", round_tin(16, 6)), kUseMine));
  REQUIRE(less.plan);
  CHECK(less.plan->parts[0].on_tray->coverage == doctest::Approx(0.64 * 220e-6 / 0.005 / 0.04).epsilon(1e-9));
}

TEST_CASE("a batch shared out over unlike pans stands at one depth and nothing is lost") {
  const std::string cupboard = own("mine", round_tin(18, 6)) + ", " + own("small", round_tin(9, 4), 2);
  const Worked worked = work_out(
      job_text(kBatter, round_tin(20, 5), cupboard,
               R"("make": "batch", "batches": "2", "pans": [{"name": "mine"}, {"name": "small", "count": 2}])"));
  REQUIRE(worked.plan);
  const auto& pans = worked.plan->pans;
  const double area = kPi * (0.09 * 0.09 + 2 * 0.045 * 0.045);
  CHECK(pans[0].fill_height == doctest::Approx(1200e-6 / area).epsilon(1e-9));
  CHECK(pans[1].fill_height == doctest::Approx(1200e-6 / area).epsilon(1e-9));
  CHECK(pans[0].filling + 2 * pans[1].filling + worked.plan->filling_left == doctest::Approx(1200e-6).epsilon(1e-9));
  SUBCASE("and what does not fit is left over") {
    const Worked brimful = work_out(job_text(kBatter, round_tin(20, 5), own("mine", round_tin(10, 4)),
                                             R"("make": "batch", "pans": [{"name": "mine"}])"));
    REQUIRE(brimful.plan);
    const double holds = kPi * 0.05 * 0.05 * 0.04;
    CHECK(brimful.plan->filling_left == doctest::Approx(600e-6 - holds).epsilon(1e-9));
    CHECK(brimful.plan->pans[0].below_rim == doctest::Approx(0.0));
  }
}

TEST_CASE("a batch that rises is poured no higher than lets it stay inside, unless the recipe itself goes higher") {
  const auto batter = [](const std::string& mass) {
    return R"({"name": "Batter", "role": "filling", "mass": ")" + mass + R"(", "density": "1 g/ml", "rise": "2"})";
  };
  const std::string plan = R"("make": "batch", "pans": [{"name": "mine"}])";
  const Worked low = work_out(job_text(batter("600 g"), round_tin(20, 5), own("mine", round_tin(14, 5)), plan));
  REQUIRE(low.plan);  // 38 % of the recipe's tin, and more than half of mine
  CHECK(low.plan->pans[0].level == doctest::Approx(0.5).epsilon(1e-9));
  CHECK(low.plan->pans[0].overflow == doctest::Approx(0.0));
  CHECK(low.plan->filling_left == doctest::Approx(600e-6 - kPi * 0.07 * 0.07 * 0.025).epsilon(1e-6));
  const Worked high = work_out(job_text(batter("1 kg"), round_tin(20, 5), own("mine", round_tin(20, 5)), kUseMine));
  REQUIRE(high.plan);
  CHECK(high.plan->parts[0].factor == doctest::Approx(1.0).epsilon(1e-9));
  CHECK(high.plan->pans[0].overflow > 0.0);
}

TEST_CASE("counted eggs offer the factors that make them whole") {
  const std::string batter = R"({"name": "Batter", "role": "filling", "density": "1 g/ml", "ingredients": [
      {"food": "eggs", "amount": "4", "size": "large"}, {"food": "sugar", "amount": "400 g"}]})";
  // A tin of 0.62 of the recipe's floor: 2.48 eggs.
  const double diameter = 20 * std::sqrt(0.62);
  const Worked worked = work_out(job_text(batter, round_tin(20, 5), own("mine", round_tin(diameter, 5)), kUseMine));
  REQUIRE(worked.plan);
  const PartPlan& part = worked.plan->parts[0];
  CHECK(part.items[0].amount == doctest::Approx(2.48).epsilon(1e-6));
  REQUIRE(part.whole.size() == 2);
  CHECK(part.whole[0].factor == doctest::Approx(0.5));
  CHECK(part.whole[0].pieces == 2);
  CHECK(part.whole[1].factor == doctest::Approx(0.75));
  CHECK(part.whole[1].pieces == 3);
  SUBCASE("and the factor chosen is made, with what is left over") {
    std::string text = job_text(batter, round_tin(20, 5), own("mine", round_tin(diameter, 5)), kUseMine);
    text.insert(text.find(R"("density")"), R"("factor": "0.75", )");
    const Worked chosen = work_out(text);
    REQUIRE(chosen.plan);
    CHECK(chosen.plan->parts[0].factor == doctest::Approx(0.75));
    CHECK(chosen.plan->parts[0].items[0].amount == doctest::Approx(3.0));
    CHECK(chosen.plan->parts[0].left == doctest::Approx(0.13 * 0.6).epsilon(1e-6));
    CHECK(chosen.plan->parts[0].whole.empty());
  }
}

TEST_CASE("yolks leave their whites, and whites used elsewhere are taken off") {
  const auto with_whites = [](const std::string& whites) {
    return job_text(R"({"name": "Custard", "role": "filling", "density": "1 g/ml", "ingredients": [
        {"food": "egg yolks", "amount": "5"}, {"food": "milk", "amount": "500 ml"})" +
                        whites + "]}",
                    round_tin(20, 5), own("mine", round_tin(20, 5)), kUseMine);
  };
  const Worked worked = work_out(with_whites(""));
  REQUIRE(worked.plan);
  REQUIRE(worked.plan->by_products.size() == 1);
  CHECK(worked.plan->by_products[0].pieces == doctest::Approx(5.0));
  CHECK(worked.plan->by_products[0].mass == doctest::Approx(5 * 0.033).epsilon(0.01));  // USDA: a large white is 33 g
  CHECK(!worked.plan->by_products[0].keeps.empty());
  const Worked fewer = work_out(with_whites(R"(, {"food": "egg whites", "amount": "2"})"));
  REQUIRE(fewer.plan);
  REQUIRE(fewer.plan->by_products.size() == 1);
  CHECK(fewer.plan->by_products[0].pieces == doctest::Approx(3.0));
}

TEST_CASE("a tin opened for part of it leaves the rest") {
  const Worked worked =
      work_out(job_text(R"({"name": "Filling", "role": "filling", "density": "1 g/ml", "ingredients": [
      {"food": "condensed milk", "amount": "1", "size": "tin", "each": "397 g"}]})",
                        round_tin(20, 5), own("mine", round_tin(20 * std::sqrt(0.6), 5)), kUseMine));
  REQUIRE(worked.plan);
  REQUIRE(worked.plan->by_products.size() == 1);
  CHECK(worked.plan->by_products[0].mass == doctest::Approx(0.4 * 0.397).epsilon(1e-6));
}

TEST_CASE("the recipe's own pan is the best set of a cupboard that has it") {
  const std::string cupboard =
      own("large", round_tin(30, 5)) + ", " + own("same", round_tin(20, 5)) + ", " + own("small", round_tin(8, 5), 4);
  const Worked worked = work_out(job_text(kBatter, round_tin(20, 5), cupboard, ""));
  REQUIRE(worked.plan);
  REQUIRE(worked.plan->pans.size() == 1);
  CHECK(worked.job->cupboard[worked.plan->pans[0].own].name == "same");
  CHECK(worked.plan->parts[0].factor == doctest::Approx(1.0).epsilon(1e-9));
  CHECK(worked.plan->depth_factor == doctest::Approx(1.0).epsilon(1e-9));
}

TEST_CASE("dough alone made as a whole batch spreads over the pans") {
  const std::string slab = R"({"name": "Slab", "role": "base", "density": "1.2 g/ml", "mass": "430 g")";
  const std::string tray =
      R"({"outline": {"kind": "rectangle", "length": "30 cm", "width": "20 cm"}, "profile": {"depth": "2 cm"}})";
  const std::string plan = R"("make": "batch", "pans": [{"name": "mine"}])";
  const Worked even = work_out(job_text(slab + "}", tray, own("mine", tray), plan));
  REQUIRE(even.plan);
  CHECK(even.plan->pans[0].shell.base == doctest::Approx(0.430 / 1200 / 0.06).epsilon(1e-9));
  const Worked thick = work_out(job_text(slab + R"(, "thickness": "1/4 in"})", tray, own("mine", tray), plan));
  REQUIRE(thick.plan);
  CHECK(thick.plan->pans[0].coverage == doctest::Approx(0.430 / 1200 / 0.06 / 0.00635).epsilon(1e-9));
}

TEST_CASE("a plan that cannot be says where") {
  CHECK(work_out(job_text(kBatter, round_tin(20, 5), "", "")).has_fault("cupboard"));
  CHECK(work_out(job_text(R"({"name": "Crust", "role": "lining", "density": "1 g/ml", "mass": "300 g"})", "",
                          own("mine", round_tin(20, 5)), kUseMine))
            .has_fault("recipe.parts.0.thickness"));
  CHECK(
      work_out(
          job_text(R"({"name": "Crust", "role": "lining", "density": "1 g/ml", "mass": "300 g", "thickness": "6 cm"})",
                   "", own("mine", round_tin(10, 5)), kUseMine))
          .has_fault("plan.pans"));
}

}  // namespace
}  // namespace tinwright
