// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan.h. How much each part needs is in portions.cpp, whole pieces and by-products in pieces.cpp.
#include "app/plan/plan.h"

#include <algorithm>
#include <cmath>

#include "app/plan/pieces.h"
#include "app/plan/portions.h"
#include "geometry/press.h"

namespace tinwright {
namespace {

/// The pan as a kind to choose from: its cavity with the recipe's shell, up to where it may be filled; nothing where
/// the shell does not work in it.
std::optional<PanKind> kind_of(const OwnPan& own, const Shell& shell, const FillLimit& fill) {
  const auto cavity = cavity_of(shell, own.pan);
  if (!cavity || own.count < 1) return std::nullopt;
  const double cavities = own.pan.count;
  const auto table =
      make_depth_table([&](double h) { return cavities * volume(*cavity, h); },
                       [&](double h) { return cavities * wall_area(*cavity, h); }, highest_fill(*cavity, fill));
  if (!table) return std::nullopt;
  return PanKind{own.name, own.count, *table};
}

/// Depth and bake scale of what is shared out, in the recipe's own pan.
void compare_with_recipe(const Job& job, const RecipeShape& recipe, MatchQuestion& question) {
  if (recipe.cavity && recipe.fill_height > 0.0) {
    const double each = recipe.filling / (job.fills * recipe.cavity->count);
    question.depth = recipe.fill_height;
    question.bake_scale = bake_scale(recipe.fill_height, each, wall_area(*recipe.cavity, recipe.fill_height));
    return;
  }
  // Without the recipe's pan: as deep as the largest pan of the cupboard at the recipe's level.
  for (const PanKind& kind : question.pans) {
    question.depth = std::max(question.depth, recipe.level * depth_limit(kind.table));
  }
}

}  // namespace

std::optional<PanMatch> ask_cupboard(FieldReader& reader, const Job& job, const RecipeShape& recipe) {
  PanMatch match;
  if (job.cupboard.empty()) {
    reader.fault(ProblemCode::kMissing, "cupboard", "there are no pans in the cupboard; put the ones you have there");
    return std::nullopt;
  }
  const bool is_dough = recipe.filling <= 0.0;  // then the bare pans are asked
  for (std::size_t i = 0; i < job.cupboard.size(); ++i) {
    if (auto kind = kind_of(job.cupboard[i], is_dough ? Shell{} : recipe.shell, fill_limit(job, recipe))) {
      match.question.pans.push_back(std::move(*kind));
      match.own.push_back(i);
    }
  }
  if (match.question.pans.empty()) {
    reader.fault(ProblemCode::kImpossibleShape, "cupboard", "the recipe's crust works in none of the cupboard's pans");
    return std::nullopt;
  }
  match.question.volume = job.batches * (is_dough ? batch_volume(job, Role::kBase) : recipe.filling);
  if (match.question.volume <= 0.0) {
    reader.fault(ProblemCode::kMissing, "plan.pans",
                 "a lining alone does not say which pan it is for: choose the pans under plan.pans");
    return std::nullopt;
  }
  if (is_dough) {
    match.question.depth = recipe.shell.base;
  } else {
    compare_with_recipe(job, recipe, match.question);
  }
  match.question.recipe_pans = std::max(1, static_cast<int>(std::lround(job.fills * job.batches)));
  return match;
}

std::optional<PanMatch> match_cupboard(FieldReader& reader, const Job& job, const RecipeShape& recipe) {
  auto match = ask_cupboard(reader, job, recipe);
  if (!match) return std::nullopt;
  const auto answer = match_pans(match->question);
  if (!answer) {
    reader.fault(answer.problem(), "cupboard.");
    return std::nullopt;
  }
  match->answer = *answer;
  return match;
}

std::optional<Plan> make_plan(FieldReader& reader, const Job& job) {
  Plan plan;
  const auto recipe = shape_of_recipe(reader, job);
  if (!recipe) return std::nullopt;
  plan.recipe = *recipe;
  std::vector<PanChoice> chosen = job.chosen;
  if (chosen.empty()) {
    plan.match = match_cupboard(reader, job, plan.recipe);
    if (!plan.match) return std::nullopt;
    for (const ChosenPan& pan : plan.match->answer.sets.front().pans) {
      chosen.push_back({plan.match->own[pan.kind], pan.count});
    }
  }
  auto pans = line_chosen(reader, job, plan.recipe, chosen);
  if (!pans) return std::nullopt;
  plan.pans = std::move(*pans);
  const double taken = pour(job, plan.recipe, plan.pans);
  plan.parts = portion(job, plan.recipe, plan.pans, taken);
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    scale_items(job.parts[i], plan.parts[i]);
    if (job.parts[i].role != Role::kFilling) continue;
    plan.filling_left += std::max(0.0, plan.parts[i].left) / job.parts[i].density;
  }
  press_on_trays(job, plan);
  plan.by_products = find_by_products(job, plan.parts);
  if (plan.recipe.fill_height > 0.0) plan.depth_factor = plan.pans.front().fill_height / plan.recipe.fill_height;
  return plan;
}

}  // namespace tinwright
