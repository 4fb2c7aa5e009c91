// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The whole job in figures: which of my pans, how much of each part, how thick and how high, what is left over, what
// goes on the scale. The oven is worked out apart (plan_oven.h): it takes longer. Words are in plan_words.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/match.h"
#include "app/plan/shell.h"
#include "app/recipe/job.h"
#include "geometry/press.h"

namespace tinwright {

/// One kind of my pans, `count` of them, with the same in each. Volumes and masses are for one cavity.
struct PanPlan {
  std::size_t own = 0;  // in the cupboard
  int count = 1;
  Shell shell;
  Pan cavity;                                   // what the shell leaves
  double base_dough = 0.0, lining_dough = 0.0;  // [m³]
  double coverage = 1.0;                        // [-] of the floor, when base dough was fixed and thin
  double filling = 0.0;                         // [m³]
  double fill_height = 0.0;                     // [m] above the cavity's floor
  double below_rim = 0.0;                       // [m] of the crust where lined, else of the pan
  double level = 0.0;                           // [-] of the cavity's depth
  double risen_below_rim = 0.0;                 // [m]
  double overflow = 0.0;                        // [m³] that would run over once risen
  double top_area = 0.0;                        // [m²] under a topping

  int cavities(const Job& job) const { return count * job.cupboard[own].pan.count; }
};

/// One item of a part, scaled.
struct ItemPlan {
  double amount = 0.0;  // in the item's own measure: [kg], [m³] or pieces; 0: not given
  double mass = 0.0;    // [kg] 0: not known
};

/// A factor near the wanted one that makes a counted item whole.
struct WholeFactor {
  double factor = 0.0;
  std::string food;
  int pieces = 0;
};

struct PartPlan {
  double needed = 1.0;  // [-] of the recipe's amount: what the pans take
  double factor = 1.0;  // [-] what is made: `needed`, or as the cook chose
  double mass = 0.0;    // [kg] made
  double left = 0.0;    // [kg] made beyond what the pans take; below 0: short
  std::vector<ItemPlan> items;
  std::vector<WholeFactor> whole;      // nearest below and above, where counted items do not come out whole
  std::optional<PressAnswer> on_tray;  // of a crumbled part with my tray
};

/// What is left of a piece that was opened or parted: the whites of eggs of which only yolks were used.
struct ByProduct {
  std::string food;
  double mass = 0.0;    // [kg]
  double pieces = 0.0;  // 0: not counted
  std::string keeps;    // how long, in words
};

/// The cupboard as a question to match_pans; `own` is the pan of the cupboard behind each of its kinds.
struct PanMatch {
  MatchQuestion question;
  MatchAnswer answer;
  std::vector<std::size_t> own;
};

struct Plan {
  RecipeShape recipe;
  std::vector<PanPlan> pans;
  std::vector<PartPlan> parts;  // as in the job
  double filling_left = 0.0;    // [m³] of the filling made, that no pan takes
  std::vector<ByProduct> by_products;
  std::optional<PanMatch> match;  // when the pans were not chosen
  double depth_factor = 1.0;      // filling depth in the first pan over the recipe's; 1 where that is not known
};

/// Nothing, with faults noted at their places, where it cannot work.
std::optional<Plan> make_plan(FieldReader& reader, const Job& job);

/// The cupboard as a question, for job.batches of the recipe. Nothing, with a fault noted, where no pan can be asked.
std::optional<PanMatch> ask_cupboard(FieldReader& reader, const Job& job, const RecipeShape& recipe);

/// The same, with the best sets.
std::optional<PanMatch> match_cupboard(FieldReader& reader, const Job& job, const RecipeShape& recipe);

/// How high pans may be filled: so that the filling stays inside once risen, but up to the recipe's own share of the
/// depth in any case, for what works in its pan works in mine, and the rise is only what is usual.
struct FillLimit {
  double rise = 1.0;   // [-]
  double level = 0.0;  // [-] the recipe's; 0 where it is not known
};
FillLimit fill_limit(const Job& job, const RecipeShape& recipe);

/// The height [m] above the cavity's floor.
double highest_fill(const Pan& cavity, const FillLimit& limit);

/// The greatest rise of the job's fillings [-].
double rise_of_filling(const Job& job);

}  // namespace tinwright
