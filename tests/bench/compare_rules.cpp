// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bake time beside what common practice would say (no source for any of the rules): with the square of
// the depth, in proportion to the volume in a pan, or to the pan's area. Build the target compare_rules and run it;
// nothing here is asserted.
#include <cmath>
#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include "app/files/catalogue.h"
#include "geometry/heat/bake_time.h"

namespace tinwright {
namespace {

constexpr double kZero = 273.15;     // [K] 0 °C
constexpr double kMinute = 60.0;     // [s]
constexpr double kFreeboard = 0.02;  // [m] of wall above the batter

FilledPan filled(const OutlineShape& outline, double height) {
  PanShape shape;
  shape.outline = outline;
  shape.wall = StraightWall{height + kFreeboard, 0.0, 0.0};
  FilledPan pan;
  pan.pan = *make_pan(shape);
  pan.fill_height = height;
  return pan;
}

double content(const FilledPan& pan) {
  return volume(pan.pan, pan.fill_height);
}

/// The pan filled with as much as `other` has, shared among `count`.
FilledPan with_the_batter_of(const FilledPan& other, const OutlineShape& outline, int count = 1) {
  const double area = content(filled(outline, 0.01)) / 0.01;
  return filled(outline, content(other) / (count * area));
}

struct Change {
  std::string name, batter;
  double air, minutes;  // [°C], [min] of the recipe
  FilledPan recipe, mine;
};

std::vector<Change> changes() {
  const FilledPan round20 = filled(Round{0.20}, 0.04);
  const FilledPan round23 = filled(Round{0.23}, 0.03);
  const FilledPan square20 = filled(Rectangle{0.20, 0.20, 0.0}, 0.035);
  const FilledPan loaf = filled(Rectangle{0.23, 0.11, 0.0}, 0.05);
  const auto cake = [](const char* name, double minutes, const FilledPan& recipe, const FilledPan& mine) {
    return Change{name, "layer-cake", 175.0, minutes, recipe, mine};
  };
  return {
      cake("round 20 -> 23 cm, same batter", 38, round20, with_the_batter_of(round20, Round{0.23})),
      cake("round 20 -> 23 cm, same depth", 38, round20, filled(Round{0.23}, 0.04)),
      cake("round 20 -> 15 cm, same batter", 38, round20, with_the_batter_of(round20, Round{0.15})),
      cake("round 20 -> 15 cm, same depth", 38, round20, filled(Round{0.15}, 0.04)),
      cake("round 23 cm, 1.5 x as deep", 28, round23, filled(Round{0.23}, 0.045)),
      cake("round 23 cm, 1/1.5 as deep", 28, round23, filled(Round{0.23}, 0.02)),
      {"square 20 cm -> loaf 23 x 11, same batter", "pound-cake", 170.0, 40, square20,
       with_the_batter_of(square20, Rectangle{0.23, 0.11, 0.0})},
      {"loaf 23 x 11 -> 23 x 8 cm, same depth", "pound-cake", 170.0, 55, loaf,
       filled(Rectangle{0.23, 0.08, 0.0}, 0.05)},
      {"square 20 -> 24 cm, same depth", "pound-cake", 170.0, 40, square20, filled(Rectangle{0.24, 0.24, 0.0}, 0.035)},
      cake("round 20 cm -> 12 muffins 7 cm, same batter", 38, round20, with_the_batter_of(round20, Round{0.07}, 12)),
      cake("round 20 cm -> sheet 33 x 23, same batter", 38, round20,
           with_the_batter_of(round20, Rectangle{0.33, 0.23, 0.0})),
      {"custard round 24 -> 8 tartlets 9 cm, same", "egg-custard", 160.0, 40, filled(Round{0.24}, 0.025),
       with_the_batter_of(filled(Round{0.24}, 0.025), Round{0.09}, 8)},
  };
}

void print_rule(double rule, double ours) {
  // Adding 0 turns -0 into 0.
  std::printf(" %6.0f (%+4.0f %%)", rule, std::round(100.0 * (rule / ours - 1.0)) + 0.0);
}

void print(const Change& change) {
  const Substance batter = *make_substance(*find_mixture(change.batter)->composition);
  Stage oven;
  oven.air = change.air + kZero;
  oven.duration = change.minutes * kMinute;
  oven.around = surroundings_in(Place::kOven, Material::kDarkSteel);
  const auto found =
      bake_time({change.recipe, change.mine, {batter, batter}, 20.0 + kZero, {oven}, {*oven.around}, {}, {}});
  if (!found) {
    std::printf("%-44s %s\n", change.name.c_str(), found.problem().message.c_str());
    return;
  }
  const double deeper = change.mine.fill_height / change.recipe.fill_height;
  const double more = content(change.mine) / content(change.recipe);
  const double ours = found->time / kMinute;
  std::printf("%-44s %3.0f > %3.0f mm %4.0f %5.0f (%3.0f - %3.0f)", change.name.c_str(),
              1e3 * change.recipe.fill_height, 1e3 * change.mine.fill_height, change.minutes, ours,
              found->band.early / kMinute, found->band.late / kMinute);
  print_rule(change.minutes * deeper * deeper, ours);
  print_rule(change.minutes * more, ours);
  print_rule(change.minutes * more / deeper, ours);
  std::printf("\n");
}

}  // namespace
}  // namespace tinwright

int main() {
  std::printf("Dark tins in a still oven; minutes. Beside each rule, how far it is from the time worked out here.\n");
  std::printf("%-44s %12s %6s %17s %15s %15s %15s\n", "", "depth", "recipe", "here (band)", "depth squared",
              "by volume", "by pan area");
  for (const auto& change : tinwright::changes()) tinwright::print(change);
}
