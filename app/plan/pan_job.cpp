// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See pan_job.h.
#include "app/plan/pan_job.h"

#include <cmath>

#include "app/files/pan_reader.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

/// [-] A depth changed by less than this bakes as the recipe says, near enough.
constexpr double kSameDepth = 0.10;

std::string each(const Pan& pan) {
  return pan.count > 1 ? "each of " + std::to_string(pan.count) : "";
}

double all(const Pan& pan, double one) {
  return pan.count * one;
}

}  // namespace

PanSwap swap_pans(const Pan& recipe, const Pan& mine) {
  const auto surface = [](const Pan& pan) { return floor_area(pan) + wall_area(pan, depth(pan)); };
  PanSwap swap;
  swap.filling = all(mine, brim_volume(mine)) / all(recipe, brim_volume(recipe));
  swap.lining = all(mine, surface(mine)) / all(recipe, surface(recipe));
  if (floor_area(recipe) > 0.0 && floor_area(mine) > 0.0) {
    swap.base = all(mine, floor_area(mine)) / all(recipe, floor_area(recipe));
  }
  swap.depth = depth(mine) / depth(recipe);
  return swap;
}

std::optional<PanJob> read_pan_job(FieldReader& reader) {
  auto pan = read_pan(reader, "");
  std::optional<Pan> recipe_pan;
  if (reader.has("instead_of")) {
    recipe_pan = read_pan(reader, "instead_of.");
    if (!recipe_pan) return std::nullopt;
  }
  if (!pan) return std::nullopt;
  return PanJob{*pan, recipe_pan};
}

Report describe_capacity(const Pan& pan, UnitChoice choice) {
  const double holds = brim_volume(pan);
  Report report{figure("Holds to the brim", format_both_volumes(holds, choice), each(pan))};
  if (pan.count > 1) report.push_back(figure("All together", format_both_volumes(all(pan, holds), choice)));
  return report;
}

Report describe_pan(const Pan& pan, UnitChoice choice) {
  Report report = describe_capacity(pan, choice);
  report.push_back(figure("Depth", format_both_lengths(depth(pan), choice)));
  report.push_back(figure("Flat floor", format_both_areas(floor_area(pan), choice)));
  report.push_back(figure("Wall", format_both_areas(wall_area(pan, depth(pan)), choice)));
  report.push_back(figure("Opening", format_both_areas(rim_area(pan), choice)));
  add_pan_cautions(report, pan);
  return report;
}

Report describe_swap(const Pan& recipe, const Pan& mine, UnitChoice choice) {
  const PanSwap swap = swap_pans(recipe, mine);
  Report report;
  report.push_back(figure("Filling or batter, make", format_factor(swap.filling),
                          format_both_volumes(all(mine, brim_volume(mine)), choice) + " to the brim, against " +
                              format_both_volumes(all(recipe, brim_volume(recipe)), choice)));
  report.push_back(figure("Dough for floor and wall, make", format_factor(swap.lining), "for the same thickness"));
  if (swap.base) {
    report.push_back(figure("Dough for the floor only, make", format_factor(*swap.base), "for the same thickness"));
  }
  const double change = swap.depth - 1.0;
  if (std::abs(change) <= kSameDepth) {
    report.push_back(remark("Both are about as deep: filled as high, they bake about as long."));
  } else {
    report.push_back(
        remark("Filled to the same share, mine is " + format_percent(std::abs(change)) +
               (change > 0.0 ? " deeper: it bakes longer. Start looking at the recipe's time and go on by "
                               "what you see."
                             : " shallower: it bakes faster. Start looking well before the recipe's time.")));
  }
  add_pan_cautions(report, mine);
  return report;
}

}  // namespace tinwright
