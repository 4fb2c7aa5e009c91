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

Json json_of(const BakeJob& job, const BakeAnswer& answer) {
  Json history = Json::array();
  for (const BakeRow& row : answer.history) {
    history.push_back({{"t_min", minutes(row.time)},
                       {"core_c", celsius(row.coldest)},
                       {"mean_c", celsius(row.mean)},
                       {"air_c", celsius(row.air)}});
  }
  return {{"time_min", minutes(answer.time)},
          {"reached", answer.reached},
          {"core_c", celsius(answer.coldest)},
          {"mean_c", celsius(answer.mean)},
          {"hottest_c", celsius(answer.hottest)},
          {"lost_g", job.is_dry ? Json(0.0) : Json(nullptr)},  // evaporation is not computed yet
          {"energy_balance", answer.energy_imbalance},
          {"history", history}};
}

}  // namespace tinwright
