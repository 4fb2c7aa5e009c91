// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_cautions.h.
#include "app/plan/plan_cautions.h"

#include <algorithm>
#include <cmath>

#include "app/plan/words.h"

namespace tinwright {
namespace {

constexpr double kMuchDeeper =
    1.3;                           // [-] from here leavening no longer follows the amount (common practice, no source)
constexpr double kMuchMore = 2.0;  // [-] and from here salt and spice are better tasted first
constexpr double kSlopMargin = 0.003;   // [m]
constexpr double kWorthSaying = 5e-6;   // [m³]
constexpr std::size_t kMostNamed = 20;  // fields nobody asked for

/// Whether anything in the job has that mark.
bool any_item(const Job& job, bool Ingredient::*mark) {
  return std::any_of(job.parts.begin(), job.parts.end(), [&](const RecipePart& part) {
    return std::any_of(part.items.begin(), part.items.end(),
                       [&](const RecipeItem& item) { return item.known != nullptr && item.known->*mark; });
  });
}

/// [-] the largest change of amount among the parts, as a factor of at least 1.
double largest_change(const Plan& plan) {
  double largest = 1.0;
  for (const PartPlan& part : plan.parts) {
    if (part.factor > 0.0) largest = std::max(largest, std::max(part.factor, 1.0 / part.factor));
  }
  return largest;
}

/// [m²] to grease or line, of all pans.
double surface(const Pan& pan) {
  return floor_area(pan) + wall_area(pan, depth(pan));
}

void warn_of_scaling(Report& report, const Job& job, const Plan& plan) {
  const double deeper = std::max(plan.depth_factor, 1.0 / plan.depth_factor);
  if (any_item(job, &Ingredient::leavening) && deeper > kMuchDeeper) {
    report.push_back(caution(
        plan.depth_factor > 1.0 ? "The layer is much deeper than the recipe's: with all of the scaled baking powder, "
                                  "soda or yeast it may rise too fast and sink; many bakers take a little less."
                                : "The layer is much shallower than the recipe's: it needs no more baking powder, soda "
                                  "or yeast than scaled, and dries out sooner."));
  }
  if (any_item(job, &Ingredient::salt) && largest_change(plan) > kMuchMore) {
    report.push_back(
        caution("Salt and spices seldom scale quite evenly over so large a change: add most of it, taste "
                "what is safe to taste, then the rest."));
  }
  if (!job.recipe_pan) return;
  double mine = 0.0;
  for (const PanPlan& pan : plan.pans) mine += pan.cavities(job) * surface(job.cupboard[pan.own].pan);
  const double theirs = job.fills * job.recipe_pan->count * surface(*job.recipe_pan);
  if (theirs > 0.0 && std::abs(mine / theirs - 1.0) > 0.1) {
    report.push_back(remark("Butter, flour or paper for the pans goes by their surface: " +
                            format_factor(mine / theirs) + " of the recipe's."));
  }
}

void warn_of_filling(Report& report, const Job& job, const Plan& plan, UnitChoice units) {
  for (const PanPlan& pan : plan.pans) {
    const std::string& name = job.cupboard[pan.own].name;
    if (pan.filling <= 0.0) continue;
    if (pan.overflow > kWorthSaying) {
      report.push_back(caution("In " + name + " the filling would run over by " +
                               format_both_volumes(pan.overflow, units) + " in each: fill less."));
    } else if (pan.below_rim < kSlopMargin) {
      report.push_back(caution("In " + name +
                               " the filling is nearly brimful and slops on the way to the oven: put the "
                               "pan on a tray in the oven first, then pour the last of it."));
    }
  }
  if (plan.recipe.overfills) {
    report.push_back(
        caution("By its own amounts the recipe's filling does not fit the recipe's own pan: check how many "
                "pans it fills, and their sizes."));
  }
  if (plan.recipe.is_level_assumed) {
    report.push_back(
        remark("The recipe's pan is not known, so shells and pans are filled to three quarters (common "
               "practice, no source)."));
  }
}

}  // namespace

void add_cautions(Report& report, const Report& lines) {
  for (const ReportLine& line : lines) {
    if (line.kind == ReportLine::Kind::kCaution && !is_said(report, line)) report.push_back(line);
  }
}

Report plan_cautions(const Job& job, const Plan& plan, UnitChoice units) {
  Report report;
  warn_of_filling(report, job, plan, units);
  warn_of_scaling(report, job, plan);
  Report usual;
  for (const PanPlan& pan : plan.pans) add_pan_cautions(usual, job.cupboard[pan.own].pan);
  const bool has_dough = batch_mass(job, Role::kBase) + batch_mass(job, Role::kLining) > 0.0;
  if (has_dough || any_item(job, &Ingredient::egg)) add_raw_dough_caution(usual);
  const bool keeps_badly = std::any_of(job.parts.begin(), job.parts.end(), [](const RecipePart& part) {
    return part.role == Role::kFilling && part.mixture != nullptr && part.mixture->egg_or_dairy;
  });
  const bool has_filling = batch_mass(job, Role::kFilling) > 0.0;
  if (keeps_badly || (has_filling && (any_item(job, &Ingredient::egg) || any_item(job, &Ingredient::dairy))))
    add_filling_caution(usual);
  add_cautions(report, usual);
  return report;
}

Report describe_open(const Job& job) {
  Report report;
  for (const RecipePart& part : job.parts) {
    for (const RecipeItem& item : part.items) {
      const std::string which = "\"" + (item.said.empty() ? item.food : item.said) + "\" in " + part.name;
      if (item.is_taken_as_water) {
        report.push_back(remark(which +
                                " is measured by volume and is not in the catalogue: it is weighed as water. Give "
                                "its weight, or say which ingredient it is."));
      } else if (item.measure == Measure::kPieces && item.piece <= 0.0) {
        report.push_back(remark(which + ": nobody knows what one piece weighs, so it is scaled but not in the part's "
                                        "weight. Give the weight of one."));
      } else if (item.measure == Measure::kNone && item.remark.empty()) {
        report.push_back(remark(which + " has no amount; it is passed on as it is."));
      }
    }
  }
  for (const std::string& line : job.unread) report.push_back(remark("In the recipe: " + line));
  for (std::size_t i = 0; i < job.not_known.size() && i < kMostNamed; ++i) {
    report.push_back(remark("Nothing here uses the field " + job.not_known[i] + "; it is kept. Check its spelling."));
  }
  for (const OwnPan& own : job.cupboard) {
    if (!own.remark.empty()) report.push_back(remark(own.name + ": " + own.remark));
  }
  return report;
}

}  // namespace tinwright
