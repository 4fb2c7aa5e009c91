// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See examples.h. All amounts are invented for the example.
#include "app/plan/examples.h"

namespace tinwright {
namespace {

Bench pie_into_fluted_ring() {
  Bench bench;
  bench.recipe_pan.catalogue = "pie-9x1-1-4";
  bench.my_pan.catalogue = "ring-fluted-24cm";
  bench.dough = {"sweet-pastry", Cover::kFloorAndWall, {{"mass", "380 g"}}};
  bench.filling = {"nut-syrup", {{"amount", "900 g"}, {"level", "75 %"}}};
  bench.oven = {{{0, {{"air", "200 C"}, {"for", "15 min"}}}, {0, {{"air", "175 C"}, {"for", "30 min"}}}},
                {{"recipe_depth", "24 mm"}, {"rack", "3 h"}},
                2};
  return bench;
}

Bench slab_on_tray() {
  Bench bench;
  bench.units = UnitChoice::kUs;
  bench.recipe_pan.catalogue = "rectangle-11x7";
  bench.my_pan.catalogue = "quarter-sheet";
  bench.dough = {"cookie-slab", Cover::kSlab, {{"mass", "430 g"}, {"thickness", "1/4 in"}}};
  bench.oven = {{{0, {{"air", "350 F"}, {"for", "16 min"}}}}, {}, 0};
  return bench;
}

Bench shell_to_three_quarters() {
  Bench bench;
  bench.recipe_pan.catalogue = "springform-26cm";
  bench.my_pan.catalogue = "springform-23cm";
  bench.dough = {"pressed-biscuit-crumb", Cover::kFloorAndWall, {{"thickness", "6 mm"}, {"wall_height", "4.5 cm"}}};
  bench.filling = {"baked-cheesecake", {{"amount", "1.4 kg"}, {"level", "3/4"}}};
  bench.oven = {{{0, {{"air", "160 C"}, {"for", "55 min"}}}}, {{"recipe_depth", "32 mm"}, {"rack", "1 h 30 min"}}, 1};
  return bench;
}

}  // namespace

const std::vector<Example>& worked_examples() {
  static const std::vector<Example> examples{
      {"fluted", "A pie for a fluted ring",
       "The recipe is for a 9 inch pie tin; there is only a 24 cm fluted ring. 380 g of pastry is in the refrigerator.",
       pie_into_fluted_ring()},
      {"slab", "Cookie dough on a tray",
       "430 g of dough pressed a quarter inch thick: does it reach the edges of a quarter sheet tray?", slab_on_tray()},
      {"shell", "A shell filled to three quarters",
       "A crumb crust 6 mm thick in a 23 cm springform, filled to three quarters: how far below its top, and what is "
       "left?",
       shell_to_three_quarters()},
  };
  return examples;
}

}  // namespace tinwright
