// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bake time in my pan: what has to hold whatever the oven is like. How it compares with rules of thumb is in
// test_bake_rules.cpp, how with measurements in test_experiments.cpp.
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "tests/bake_cases.h"

namespace tinwright {
namespace {

using bake_cases::answer;
using bake_cases::mixture;
using bake_cases::question;
using bake_cases::rectangle;
using bake_cases::round;
using bake_cases::stage;
using foods::kZero;
using heat_cases::lined;

BakeTimeQuestion cake(const FilledPan& recipe, const FilledPan& mine, const std::vector<Stage>& stages) {
  const Substance batter = mixture("layer-cake");
  return question(recipe, mine, stages, batter, batter);
}

/// A springform lined with biscuit crumb, filled with cheesecake.
FilledPan springform(double diameter, double fill) {
  const Pan pan = shapes::pan(Round{diameter}, StraightWall{0.08, 0.0, 0.0});
  return lined(pan, {0.006, 0.005, fill + 0.01}, fill);
}

BakeTimeQuestion cheesecake(const FilledPan& recipe, const FilledPan& mine, const std::vector<Stage>& stages) {
  return question(recipe, mine, stages, mixture("baked-cheesecake"), mixture("pressed-biscuit-crumb"));
}

double width(const BakeBand& band) {
  return band.late - band.early;
}

/// A recipe that is followed by the door being opened and the oven switched off.
Stage switched_off(double from_c, double minutes) {
  Stage off = stage(20, minutes);
  off.air_before = from_c + kZero;
  off.lag = kOvenLagShut;
  return off;
}

}  // namespace

TEST_CASE("the recipe's own pan takes the recipe's own time, to the second") {
  struct Case {
    std::string name;
    BakeTimeQuestion q;
    bool ends_at_boil = false;
  };
  const FilledPan tin = round(0.20, 0.04);
  const FilledPan crust = springform(0.23, 0.03);
  const FilledPan ring = heat_cases::bare(shapes::ring(0.24, 0.07, StraightWall{0.08, 0.01, 0.0}, 0.005), 0.05);
  const FilledPan tartlet =
      lined(shapes::pan(Fluted{0.10, 24, 0.004}, StraightWall{0.02, 0.003, 0.0}), {0.003, 0.003, 0.02}, 0.014);
  BakeTimeQuestion bath = cheesecake(crust, crust, {stage(160, 55)});
  bath.stages[0].around = bath.mine[0] = surroundings_in(Place::kOven, Material::kTinnedSteel, kUsualBath);
  Stage ramp = stage(150, 20);
  ramp.air_before = 200 + kZero;
  const std::vector<Case> cases{
      {"round, one stage", cake(tin, tin, {stage(175, 35)})},
      {"round, two stages", cake(tin, tin, {stage(190, 12), stage(165, 22)})},
      {"shallow round, its middle at the boil", cake(round(0.20, 0.02), round(0.20, 0.02), {stage(175, 45)}), true},
      {"two stages, its middle at the boil",
       cake(round(0.20, 0.02), round(0.20, 0.02), {stage(190, 8), stage(170, 40)}), true},
      {"ring with a fan", cake(ring, ring, {stage(170, 35, Place::kFanOven)})},
      {"lined springform, three stages",
       cheesecake(crust, crust, {stage(200, 12), stage(140, 20), switched_off(140, 15)})},
      {"lined springform in a bath", bath},
      {"lined springform in an oven that falls evenly", cheesecake(crust, crust, {stage(200, 12), ramp})},
      {"lined fluted tartlet", cheesecake(tartlet, tartlet, {stage(180, 15), stage(150, 8)})},
  };
  for (const Case& each : cases) {
    CAPTURE(each.name);
    const BakeTime found = answer(each.q);
    double recipe_time = 0.0;
    REQUIRE(found.stage_times.size() == each.q.stages.size());
    for (std::size_t i = 0; i < each.q.stages.size(); ++i) {
      recipe_time += each.q.stages[i].duration;
      CHECK(std::abs(found.stage_times[i] - each.q.stages[i].duration) < 1.0);
    }
    CHECK(found.reached);
    CHECK(std::abs(found.time - recipe_time) < 1.0);
    CHECK((found.hold_at_boil > 60.0) == each.ends_at_boil);
    CHECK(found.band.early <= found.time);
    CHECK(found.time <= found.band.late);
    // The two runs differ in their steps, which keep a bake within 0.25 K.
    CHECK(std::abs(found.my_end.mean - found.recipe_end.mean) < 0.25);
    CHECK(std::abs(found.my_end.rim - found.recipe_end.rim) < 0.25);
  }
}

TEST_CASE("a deeper filling takes longer, at eight depths") {
  double before = 0.0;
  for (const double depth : {0.02, 0.025, 0.03, 0.035, 0.045, 0.05, 0.06, 0.07}) {
    CAPTURE(depth);
    const BakeTime found = answer(cake(round(0.22, 0.04), round(0.22, depth), {stage(175, 32)}));
    CHECK(found.reached);
    CHECK(found.time > before);
    before = found.time;
  }
}

TEST_CASE("a wider pan takes longer while it is deep") {
  double before = 0.0;
  for (const double diameter : {0.10, 0.13, 0.17, 0.22}) {
    CAPTURE(diameter);
    const BakeTime found = answer(cake(round(0.20, 0.05), round(diameter, 0.07), {stage(170, 45)}));
    CHECK(found.time > before);
    before = found.time;
  }
}

TEST_CASE("what bakes longer in the recipe bakes longer in my pan") {
  double before = 0.0;
  for (const double minutes : {15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0}) {
    CAPTURE(minutes);
    const BakeTime found = answer(cake(round(0.20, 0.035), round(0.18, 0.045), {stage(175, minutes)}));
    CHECK(found.time > before);
    before = found.time;
  }
}

TEST_CASE("stages are carried over by the food's state: mean at a change, middle at the end") {
  const std::vector<Stage> stages{stage(200, 12), stage(150, 25)};
  const FilledPan recipe = springform(0.23, 0.03);
  const FilledPan mine = springform(0.20, 0.04);
  const BakeTime found = answer(cheesecake(recipe, mine, stages));
  const BakeState change = answer(cheesecake(recipe, mine, {stages[0]})).recipe_end;
  REQUIRE(found.mine.stage_ends.size() == 2);
  CHECK(std::abs(found.mine.stage_ends[0].mean - change.mean) < 0.01);
  CHECK(std::abs(found.my_end.coldest - found.recipe_end.coldest) < 0.01);
  CHECK(found.stage_times[0] > stages[0].duration);
  CHECK(found.stage_times[1] > stages[1].duration);
  CHECK(found.stage_times[0] + found.stage_times[1] == doctest::Approx(found.time));
}

TEST_CASE("the band is wider for a much different depth than for the recipe's own pan") {
  const auto band_of = [](double depth) {
    return answer(cake(round(0.20, 0.03), round(0.20, depth), {stage(175, 22)}));
  };
  const BakeTime same = band_of(0.03);
  for (const double depth : {0.045, 0.065}) {
    const BakeTime other = band_of(depth);
    CHECK(other.band.early < other.time);
    CHECK(other.time < other.band.late);
    CHECK(width(other.band) > width(same.band));
    CHECK(width(other.band) / other.time < 0.5);
  }
}

TEST_CASE("other ways the batter might be widen the band") {
  BakeTimeQuestion q = cake(round(0.20, 0.03), round(0.20, 0.06), {stage(175, 22)});
  const BakeTime narrow = answer(q);
  const Substance lighter = mixture("whisked-sponge");
  q.substances_else.push_back({lighter, lighter});
  const BakeTime wide = answer(q);
  CHECK(wide.time == narrow.time);
  CHECK(width(wide.band) > width(narrow.band));
  CHECK(wide.runs == narrow.runs + 2);
}

TEST_CASE("to the same middle, a hotter oven takes less time in both pans") {
  double recipe_before = 1e9;
  double mine_before = 1e9;
  for (const double air : {150.0, 165.0, 180.0, 200.0}) {
    CAPTURE(air);
    BakeTimeQuestion q = cake(round(0.20, 0.035), round(0.20, 0.05), {stage(air, 120)});
    const HeatProblem recipe{heat_cases::grid_of(q.recipe_pan), q.substances};
    const auto run = bake(recipe, {.start = q.start, .stages = q.stages, .until_coldest = kZero + 92.0});
    REQUIRE(static_cast<bool>(run));
    q.stages[0].duration = run->time;
    const BakeTime found = answer(q);
    CHECK(run->time < recipe_before);
    CHECK(found.time < mine_before);
    recipe_before = run->time;
    mine_before = found.time;
  }
}

TEST_CASE("a pan that never gets there says so, and soon") {
  BakeTimeQuestion q = cake(round(0.20, 0.03), round(0.20, 0.03), {stage(175, 30)});
  q.mine[0] = surroundings_in(Place::kOven, Material::kTinnedSteel, kZero + 40.0);
  q.mine[0].top.coefficient = q.mine[0].top.emissivity = q.mine[0].top.drying = 0.0;
  const BakeTime found = answer(q);
  CHECK_FALSE(found.reached);
  CHECK(found.time <= kLongestBake + 1.0);
  CHECK(found.my_end.coldest < kZero + 41.0);
  CHECK(found.runs == 2);
}

TEST_CASE("what still trembles in the middle shrinks as the bake goes on, and is carried over") {
  const FilledPan recipe = springform(0.23, 0.035);
  double before = 0.12;
  for (const double minutes : {25.0, 30.0, 35.0, 40.0}) {
    CAPTURE(minutes);
    BakeTimeQuestion q = cheesecake(recipe, recipe, {stage(160, minutes)});
    q.sets_at = kZero + 65.0;
    const BakeTime found = answer(q);
    CHECK(found.my_end.wobble < before);
    CHECK(std::abs(found.my_end.wobble - found.recipe_end.wobble) < 1e-4);
    CHECK((found.my_end.wobble > 0.0) == (found.my_end.coldest < *q.sets_at - 1.0));
    before = found.my_end.wobble;
  }
}

TEST_CASE("a much deeper filling asks for a cooler oven, takes longer in it and spares its rim") {
  const BakeTimeQuestion q = cake(round(0.23, 0.03), round(0.23, 0.06), {stage(175, 28)});
  const BakeTime same = answer(q);
  const auto change = oven_change(q, same);
  REQUIRE(static_cast<bool>(change));
  CHECK(change->rim_over > kSameRim);
  CHECK(change->by < 0.0);
  CHECK(change->by >= -kMostOvenChange);
  REQUIRE(change->then.has_value());
  CHECK(change->then->reached);
  CHECK(change->then->time > same.time);
  CHECK(change->then->my_end.rim < same.my_end.rim);
  CHECK(std::abs(change->then->my_end.rim - change->then->recipe_end.rim) <= kSameRim);
  CHECK(std::abs(change->then->my_end.coldest - same.my_end.coldest) < 0.1);
}

TEST_CASE("about the same depth asks for no other oven") {
  const BakeTimeQuestion q = cake(round(0.23, 0.03), round(0.21, 0.031), {stage(175, 28)});
  const auto change = oven_change(q, answer(q));
  REQUIRE(static_cast<bool>(change));
  CHECK(change->by == 0.0);
  CHECK_FALSE(change->then.has_value());
}

TEST_CASE("the middle goes on warming on the rack for some minutes, to less than the mean was") {
  const FilledPan pan = springform(0.23, 0.03);
  const HeatProblem problem{heat_cases::grid_of(pan), {mixture("baked-cheesecake"), mixture("pressed-biscuit-crumb")}};
  Stage oven = stage(160, 120);
  oven.ends_when = Ending{Ending::Measure::kColdest, kZero + 65.0};
  BakeQuestion question{.start = 20.0 + kZero, .stages = {oven}, .report_every = 60.0};
  const BakeAnswer out = bake_cases::run(problem, question);
  // On the rack the coldest point of all soon is the surface, so the place that was coldest in the oven is watched.
  question.watched_cell = out.coldest_cell;
  question.stages.push_back(stage(20, 60, Place::kRack));
  const BakeAnswer rack = bake_cases::run(problem, question);
  BakeRow peak;
  for (const BakeRow& row : rack.history) {
    if (row.watched > peak.watched) peak = row;
  }
  CHECK(peak.watched > out.coldest + 0.5);  // a thermometer would show it
  CHECK(peak.watched < out.mean);           // heat only leaves on the rack
  CHECK(peak.time > out.time + 60.0);
  CHECK(peak.time < out.time + 1800.0);
  CHECK(rack.history.back().watched < peak.watched);
}

TEST_CASE("impossible bakes are refused, the recipe's under its own name") {
  const auto place = [](const BakeTimeQuestion& q) {
    const auto found = bake_time(q);
    REQUIRE_FALSE(static_cast<bool>(found));
    CHECK_FALSE(found.problem().message.empty());
    return found.problem().place;
  };
  const BakeTimeQuestion good = cake(round(0.20, 0.03), round(0.20, 0.03), {stage(175, 30)});
  BakeTimeQuestion q = good;
  q.stages.clear();
  q.mine.clear();
  CHECK(place(q) == "recipe.stages");
  q = good;
  q.recipe_pan.fill_height = 0.2;
  CHECK(place(q) == "recipe.fill.height");
  q = good;
  q.my_pan.fill_height = 0.0;
  CHECK(place(q) == "fill.height");
  q = good;
  q.recipe_pan.is_lined = true;
  q.recipe_pan.lining = {0.005, 0.15, 0.03};
  CHECK(place(q).substr(0, 15) == "recipe.lining.w");
  q = good;
  q.start = std::nan("");
  CHECK(place(q) == "recipe.start");
  q = good;
  q.stages[0].duration = 0.0;
  CHECK(place(q) == "recipe.stages.0.for");
  q = good;
  q.stages[0].air = 5000.0;
  CHECK(place(q) == "recipe.stages.0.air");
  q = good;
  q.mine[0].wall.coefficient = -1.0;
  CHECK(place(q) == "stages.0.wall");
}

}  // namespace tinwright
