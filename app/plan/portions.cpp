// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See portions.h.
#include "app/plan/portions.h"

#include <algorithm>
#include <cmath>

#include "geometry/fill.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

constexpr double kThinnest = 1e-4;  // [m] below this a layer is no layer

bool has_filling(const Job& job) {
  return batch_volume(job, Role::kFilling) > 0.0;
}

/// [m³] of a role's dough at thickness t in all chosen pans; nothing where it does not fit one of them.
std::optional<double> dough_at(const Job& job, const std::vector<PanChoice>& chosen, Shell shell, Role role, double t) {
  (role == Role::kBase ? shell.base : shell.lining) = t;
  double sum = 0.0;
  for (const PanChoice& each : chosen) {
    const Pan& pan = job.cupboard[each.own].pan;
    if (!cavity_of(shell, pan)) return std::nullopt;
    sum += each.count * pan.count * (role == Role::kBase ? base_volume(shell, pan) : lining_dough(shell, pan));
  }
  return sum;
}

/// The common thickness that uses up `dough`; nothing where the thickest that fits does not.
std::optional<double> spread(const Job& job, const std::vector<PanChoice>& chosen, const Shell& shell, Role role,
                             double dough) {
  double high = 2e-4;
  std::optional<double> at_high = dough_at(job, chosen, shell, role, high);
  double low = kThinnest;
  while (at_high && *at_high < dough) {
    low = high;
    high *= 1.2;
    at_high = dough_at(job, chosen, shell, role, high);
  }
  if (!at_high) return std::nullopt;
  const auto excess = [&](double t) { return dough_at(job, chosen, shell, role, t).value_or(dough) - dough; };
  if (excess(low) > 0.0) return low;
  return find_root(excess, low, high);
}

/// Thickness of fixed dough; where the recipe says how thick, only as far as that reaches.
bool settle_thickness(FieldReader& reader, const Job& job, const std::vector<PanChoice>& chosen, Shell& shell,
                      Role role, double& coverage) {
  const auto dough = fixed_dough(job, role);
  if (!dough) return true;
  const bool is_given = std::any_of(job.parts.begin(), job.parts.end(),
                                    [&](const RecipePart& part) { return part.role == role && part.thickness; });
  double& thickness = role == Role::kBase ? shell.base : shell.lining;
  if (is_given && role == Role::kBase) {
    const auto needed = dough_at(job, chosen, shell, role, thickness);
    if (needed && *needed > 0.0) coverage = std::min(1.0, *dough / *needed);
    return true;
  }
  const auto solved = spread(job, chosen, shell, role, *dough);
  if (solved) {
    thickness = *solved;
    return true;
  }
  reader.fault(ProblemCode::kTooMuch, "plan.pans",
               "these pans do not take that much dough; choose larger ones, or make less");
  return false;
}

void note_fill(PanPlan& pan, double rise) {
  const auto answer = fill_cavity(pan.cavity, {.amount = pan.filling, .level = std::nullopt, .rise = rise});
  if (!answer) return;
  pan.fill_height = answer->height;
  pan.below_rim = answer->below_rim;
  pan.level = answer->level;
  pan.overflow = answer->overflow;
  pan.risen_below_rim = answer->risen_below_rim;
}

/// Fills all pans to a common height, each no higher than it may be.
void fill_to_depth(std::vector<PanPlan>& pans, double height, const FillLimit& limit) {
  for (PanPlan& pan : pans) {
    pan.filling = volume(pan.cavity, std::min(height, highest_fill(pan.cavity, limit)));
  }
}

double poured(const Job& job, const std::vector<PanPlan>& pans) {
  double sum = 0.0;
  for (const PanPlan& pan : pans) sum += pan.cavities(job) * pan.filling;
  return sum;
}

/// The common depth at which the pans take `amount`; as deep as they go where they take less.
void share_out(const Job& job, std::vector<PanPlan>& pans, double amount, const FillLimit& limit) {
  double deepest = 0.0;
  for (const PanPlan& pan : pans) deepest = std::max(deepest, highest_fill(pan.cavity, limit));
  fill_to_depth(pans, deepest, limit);
  if (poured(job, pans) <= amount) return;
  const auto excess = [&](double height) {
    fill_to_depth(pans, height, limit);
    return poured(job, pans) - amount;
  };
  fill_to_depth(pans, find_root(excess, 0.0, deepest), limit);
}

/// [m³] of filling made where that is fixed.
std::optional<double> fixed_filling(const Job& job) {
  if (job.makes_batch) return job.batches * batch_volume(job, Role::kFilling);
  double sum = 0.0;
  for (const RecipePart& part : job.parts) {
    if (part.role != Role::kFilling) continue;
    if (!part.factor) return std::nullopt;
    sum += *part.factor * part.mass / part.density;
  }
  return sum;
}

/// [m²] under a topping in all my pans, and in all the recipe's.
std::optional<double> topping_factor(const Job& job, const RecipeShape& recipe, const std::vector<PanPlan>& pans) {
  if (!recipe.cavity) return std::nullopt;
  double mine = 0.0;
  for (const PanPlan& pan : pans) mine += pan.cavities(job) * pan.top_area;
  const double height = recipe.level > 0.0 ? recipe.fill_height : depth(*recipe.cavity);
  const double theirs = job.fills * recipe.cavity->count * surface_area(*recipe.cavity, height);
  return theirs > 0.0 ? std::optional<double>(mine / theirs) : std::nullopt;
}

double dough_factor(const Job& job, const std::vector<PanPlan>& pans, Role role) {
  double taken = 0.0;
  for (const PanPlan& pan : pans) {
    taken += pan.cavities(job) * (role == Role::kBase ? pan.coverage * pan.base_dough : pan.lining_dough);
  }
  const double batch = batch_volume(job, role);
  return batch > 0.0 ? taken / batch : 0.0;
}

}  // namespace

std::optional<double> fixed_dough(const Job& job, Role role) {
  const bool by_batch = job.makes_batch && !has_filling(job);
  double sum = 0.0;
  bool is_fixed = false;
  for (const RecipePart& part : job.parts) {
    if (part.role != role) continue;
    if (!part.factor && !by_batch) return std::nullopt;
    sum += part.factor.value_or(job.batches) * part.mass / part.density;
    is_fixed = true;
  }
  return is_fixed ? std::optional<double>(sum) : std::nullopt;
}

double rise_of_filling(const Job& job) {
  double rise = 1.0;
  for (const RecipePart& part : job.parts) {
    if (part.role == Role::kFilling) rise = std::max(rise, part.rise);
  }
  return rise;
}

FillLimit fill_limit(const Job& job, const RecipeShape& recipe) {
  return {rise_of_filling(job), recipe.is_level_assumed ? 0.0 : recipe.level};
}

double highest_fill(const Pan& cavity, const FillLimit& limit) {
  const auto height = fill_height(cavity, brim_volume(cavity) / limit.rise);
  return std::max(height ? *height : depth(cavity), limit.level * depth(cavity));
}

std::optional<std::vector<PanPlan>> line_chosen(FieldReader& reader, const Job& job, const RecipeShape& recipe,
                                                const std::vector<PanChoice>& chosen) {
  Shell shell = recipe.shell;
  double coverage = 1.0, no_matter = 1.0;
  if (!settle_thickness(reader, job, chosen, shell, Role::kBase, coverage) ||
      !settle_thickness(reader, job, chosen, shell, Role::kLining, no_matter)) {
    return std::nullopt;
  }
  std::vector<PanPlan> pans;
  for (const PanChoice& each : chosen) {
    const Pan& own = job.cupboard[each.own].pan;
    PanPlan pan;
    pan.own = each.own;
    pan.count = each.count;
    pan.shell = shell;
    pan.coverage = coverage;
    const auto cavity = cavity_of(shell, own);
    if (!cavity) {
      reader.fault(cavity.problem().code, "plan.pans",
                   "the crust does not work in \"" + job.cupboard[each.own].name + "\": " + cavity.problem().message);
      return std::nullopt;
    }
    pan.cavity = *cavity;
    pan.base_dough = base_volume(shell, own);
    pan.lining_dough = lining_dough(shell, own);
    pans.push_back(std::move(pan));
  }
  return pans;
}

double pour(const Job& job, const RecipeShape& recipe, std::vector<PanPlan>& pans) {
  const FillLimit limit = fill_limit(job, recipe);
  if (has_filling(job)) {
    for (PanPlan& pan : pans) {
      pan.filling = volume(pan.cavity, std::min(recipe.level * depth(pan.cavity), highest_fill(pan.cavity, limit)));
    }
    const auto fixed = fixed_filling(job);
    const bool is_short = fixed && *fixed < poured(job, pans);
    if (fixed && (job.makes_batch || is_short)) share_out(job, pans, *fixed, limit);
    for (PanPlan& pan : pans) note_fill(pan, limit.rise);
  }
  for (PanPlan& pan : pans) pan.top_area = surface_area(pan.cavity, has_filling(job) ? pan.fill_height : 0.0);
  return poured(job, pans);
}

std::vector<PartPlan> portion(const Job& job, const RecipeShape& recipe, const std::vector<PanPlan>& pans,
                              double filling_taken) {
  const double filling = recipe.filling > 0.0 ? filling_taken / recipe.filling : 0.0;
  const double base = dough_factor(job, pans, Role::kBase);
  const double lining = dough_factor(job, pans, Role::kLining);
  const double usual = filling > 0.0 ? filling : lining > 0.0 ? lining : base > 0.0 ? base : 1.0;
  std::vector<PartPlan> parts(job.parts.size());
  const auto settle = [&](std::size_t i, double needed) {
    const RecipePart& part = job.parts[i];
    const bool is_batch =
        job.makes_batch && (part.role == Role::kFilling || (!has_filling(job) && part.role != Role::kCrumbled));
    parts[i].needed = needed;
    parts[i].factor = part.factor ? *part.factor : is_batch ? job.batches : needed;
    parts[i].mass = parts[i].factor * part.mass;
    parts[i].left = (parts[i].factor - needed) * part.mass;
  };
  for (std::size_t i = 0; i < parts.size(); ++i) {
    switch (job.parts[i].role) {
      case Role::kBase:
        settle(i, base);
        break;
      case Role::kLining:
        settle(i, lining);
        break;
      case Role::kFilling:
        settle(i, filling);
        break;
      case Role::kTopping:
        settle(i, topping_factor(job, recipe, pans).value_or(usual));
        break;
      case Role::kCrumbled:
        break;
    }
  }
  for (std::size_t i = 0; i < parts.size(); ++i) {  // crumbs follow what they go into
    if (job.parts[i].role == Role::kCrumbled) settle(i, parts[job.parts[i].into.value_or(0)].factor);
  }
  return parts;
}

}  // namespace tinwright
