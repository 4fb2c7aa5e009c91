// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See demos.h.
#include "app/plan/demos.h"

namespace tinwright {

extern const std::string_view kVillageSupperJson;
extern const std::string_view kMarketTartletsJson;
extern const std::string_view kGingerSlabJson;
extern const std::string_view kFrozenPlumPieJson;

const std::vector<Demo>& demo_jobs() {
  static const std::vector<Demo> demos{
      {"supper", "Squash tart for the village supper", "Two tins' worth, one tart tin",
       "The card makes two pie tins of squash tart; the village supper needs one, in a 28 cm tart tin.",
       kVillageSupperJson},
      {"tartlets", "Almond tartlets for the Saturday stall", "A large tart as tartlets",
       "A neighbour's almond tart, but for sixteen 8 cm rings on Saturday's stall.", kMarketTartletsJson},
      {"slab", "Cheesecake on a ginger base, from a slab on a sheet tray", "A cheesecake on crumbled ginger slab",
       "The slab is pressed out and baked on a sheet tray smaller than the recipe's, crumbled, and becomes the base.",
       kGingerSlabJson},
      {"freezer", "Plum pies for the freezer", "Plum pies for the freezer",
       "One deep pie shared out over what is in the cupboard, cooled and frozen.", kFrozenPlumPieJson},
  };
  return demos;
}

}  // namespace tinwright
