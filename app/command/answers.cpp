// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See answers.h. Lengths in mm, volumes in ml, masses in g; amounts are for all cavities of the pan together.
#include "app/command/answers.h"

namespace tinwright {
namespace {

double mm(double metres) {
  return metres * 1e3;
}
double ml(double cubic_metres) {
  return cubic_metres * 1e6;
}
double cm2(double square_metres) {
  return square_metres * 1e4;
}
double grams(double kilograms) {
  return kilograms * 1e3;
}

double minutes(double seconds) {
  return seconds / 60.0;
}
double celsius(double kelvin) {
  return kelvin - 273.15;
}

}  // namespace

Json json_of(const PanJob& job) {
  const Pan& pan = job.pan;
  Json json{{"brim_volume_ml", ml(brim_volume(pan))},
            {"floor_area_cm2", cm2(floor_area(pan))},
            {"wall_area_cm2", cm2(wall_area(pan, depth(pan)))},
            {"rim_area_cm2", cm2(rim_area(pan))},
            {"depth_mm", mm(depth(pan))},
            {"count", pan.count}};
  if (job.recipe_pan) {
    const PanSwap swap = swap_pans(*job.recipe_pan, pan);
    json["instead_of"] = {{"brim_volume_ml", ml(brim_volume(*job.recipe_pan))},
                          {"count", job.recipe_pan->count},
                          {"filling_factor", swap.filling},
                          {"lining_factor", swap.lining},
                          {"base_factor", swap.base ? Json(*swap.base) : Json(nullptr)},
                          {"depth_factor", swap.depth}};
  }
  return json;
}

Json json_of(const PressJob& job, const PressAnswer& answer) {
  const double all = job.pan.count;
  Json json{{"floor_thickness_mm", mm(answer.floor_thickness)},
            {"wall_thickness_mm", mm(answer.wall_thickness)},
            {"dough_volume_ml", ml(all * answer.dough)},
            {"mass_g", grams(all * answer.dough * job.density)},
            {"coverage", answer.coverage},
            {"reaches_edges", answer.reaches_edges},
            {"count", job.pan.count}};
  if (job.question.cover == Cover::kFloorAndWall) json["wall_height_mm"] = mm(answer.wall_height);
  if (answer.thickness_was_given) {
    json["mass_needed_g"] = grams(all * answer.needed * job.density);
    json["mass_left_g"] = grams(all * answer.left * job.density);
    json["mass_short_g"] = grams(all * answer.missing * job.density);
  }
  if (job.question.cover == Cover::kSlab) {
    const SlabExtent extent = slab_extent(job.pan, answer.coverage);
    json["slab_length_mm"] = mm(extent.length);
    json["slab_width_mm"] = mm(extent.width);
    if (extent.length_full_width > 0.0) json["slab_length_at_full_width_mm"] = mm(extent.length_full_width);
  }
  return json;
}

Json json_of(const FillJob& job, const FillAnswer& answer) {
  const double all = job.pan.count;
  const auto mass = [&](double one) { return job.density ? Json(grams(all * one * *job.density)) : Json(nullptr); };
  Json json{{"fill_height_mm", mm(answer.height)},
            {"below_rim_mm", mm(answer.below_rim)},
            {"volume_ml", ml(all * answer.volume)},
            {"mass_g", mass(answer.volume)},
            {"cavity_volume_ml", ml(brim_volume(job.cavity))},
            {"lining_volume_ml", job.lining ? ml(lining_volume(job.pan, *job.lining)) : 0.0},
            {"level", answer.level},
            {"overflow_ml", ml(all * answer.overflow)},
            {"risen_below_rim_mm", mm(answer.risen_below_rim)},
            {"count", job.pan.count}};
  if (job.question.amount && job.question.level) {
    json["left_ml"] = ml(all * answer.left);
    json["left_g"] = mass(answer.left);
    json["short_ml"] = ml(all * answer.missing);
  }
  return json;
}

Json json_of(const BakeJob& job, const BakeJobAnswer& answer) {
  const BakeAnswer& run = answer.run;
  const auto or_null = [](const std::optional<double>& time) { return time ? Json(minutes(*time)) : Json(nullptr); };
  Json history = Json::array();
  for (const BakeRow& row : run.history) {
    history.push_back({{"t_min", minutes(row.time)},
                       {"core_c", celsius(row.coldest)},
                       {"mean_c", celsius(row.mean)},
                       {"air_c", celsius(row.air)}});
  }
  Json json{{"time_min", minutes(run.time)},          {"reached", run.reached},
            {"core_c", celsius(run.coldest)},         {"mean_c", celsius(run.mean)},
            {"hottest_c", celsius(run.hottest)},      {"lost_g", grams(run.water_lost * job.mine.pan.count)},
            {"energy_balance", run.energy_imbalance}, {"history", history}};
  if (answer.timing) {
    const BakeTime& timing = *answer.timing;
    json["reached"] = timing.reached;
    json["early_min"] = timing.reached ? Json(minutes(timing.band.early)) : Json(nullptr);
    json["late_min"] = timing.reached && !timing.band.is_open ? Json(minutes(timing.band.late)) : Json(nullptr);
    json["recipe_core_c"] = celsius(timing.recipe_end.coldest);
    json["stages"] = Json::array();
    for (const Stage& stage : answer.my_stages) {
      json["stages"].push_back({{"air_c", celsius(stage.air)}, {"min", minutes(stage.duration)}});
    }
    json["oven_change_c"] = answer.change ? answer.change->by : 0.0;
    json["time_then_min"] =
        answer.change && answer.change->then ? Json(minutes(answer.change->then->time)) : Json(nullptr);
  }
  if (job.fill.mixture != nullptr && job.fill.mixture->sets_at && !run.stage_ends.empty()) {
    json["trembles_mm"] = mm(2.0 * answer.wobble);
  }
  if (answer.cooling) {
    json["cooling"] = {{"room_min", or_null(answer.cooling->room)},
                       {"cold_min", or_null(answer.cooling->cold)},
                       {"frozen_min", or_null(answer.cooling->frozen)},
                       {"from_57_to_21_min", or_null(answer.cooling->to_21)},
                       {"from_21_to_5_min", or_null(answer.cooling->to_5)},
                       {"carry_over_c", celsius(answer.cooling->carried_over)},
                       {"carry_over_at_min", minutes(answer.cooling->carried_over_at)}};
  }
  return json;
}

}  // namespace tinwright
