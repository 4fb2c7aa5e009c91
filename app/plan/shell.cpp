// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See shell.h.
#include "app/plan/shell.h"

#include <algorithm>

#include "geometry/press.h"

namespace tinwright {
namespace {

/// The first part of that role.
std::optional<std::size_t> first_of(const Job& job, Role role) {
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    if (job.parts[i].role == role) return i;
  }
  return std::nullopt;
}

/// How thick all the dough of a role comes out in the recipe's pan; as one of its parts says, where it does.
std::optional<double> thickness_of(FieldReader& reader, const Job& job, Role role) {
  double given = 0.0;
  for (const RecipePart& part : job.parts) {
    if (part.role == role) given += part.thickness.value_or(0.0);
  }
  const auto first = first_of(job, role);
  if (!first || given > 0.0) return given;
  if (!job.recipe_pan) {
    reader.fault(ProblemCode::kMissing, part_path(*first, "thickness"),
                 "say how thick \"" + job.parts[*first].name + "\" is, or which pan the recipe is for");
    return std::nullopt;
  }
  PressQuestion question;
  question.dough = batch_volume(job, role) / (job.fills * job.recipe_pan->count);
  question.cover = role == Role::kBase ? Cover::kFloor : Cover::kFloorAndWall;
  question.wall_height = role == Role::kBase ? std::nullopt : job.parts[*first].wall_height;
  const auto pressed = press_dough(*job.recipe_pan, question);
  if (pressed) return pressed->floor_thickness;
  reader.fault(pressed.problem().code, part_path(*first, "mass"),
               "in the recipe's own pan this dough does not work: " + pressed.problem().message);
  return std::nullopt;
}

void fill_recipe(const Job& job, RecipeShape& shape) {
  double level = 0.0;
  for (const RecipePart& part : job.parts) {
    if (part.role == Role::kFilling && part.level) level = std::max(level, *part.level);
  }
  if (!shape.cavity) {
    shape.is_level_assumed = level == 0.0;
    shape.level = level > 0.0 ? level : kUsualLevel;
    return;
  }
  const double each = shape.filling / (job.fills * shape.cavity->count);
  const auto height = fill_height(*shape.cavity, each);
  shape.overfills = !height;
  shape.fill_height = height ? *height : depth(*shape.cavity);
  shape.level = level > 0.0 ? level : shape.fill_height / depth(*shape.cavity);
}

}  // namespace

std::string part_path(std::size_t part, const std::string& field) {
  return "recipe.parts." + std::to_string(part) + "." + field;
}

double batch_volume(const Job& job, Role role) {
  double sum = 0.0;
  for (const RecipePart& part : job.parts) {
    if (part.role == role && part.density > 0.0) sum += part.mass / part.density;
  }
  return sum;
}

double batch_mass(const Job& job, Role role) {
  double sum = 0.0;
  for (const RecipePart& part : job.parts) sum += part.role == role ? part.mass : 0.0;
  return sum;
}

double batch_density(const Job& job, Role role) {
  const double volume = batch_volume(job, role);
  return volume > 0.0 ? batch_mass(job, role) / volume : 0.0;
}

Lining lining_of(const Shell& shell, const Pan& pan) {
  const double height = std::min(shell.wall_height.value_or(depth(pan)), depth(pan));
  return {shell.base + shell.lining, shell.lining, shell.lining > 0.0 ? height : depth(pan)};
}

Result<Pan> cavity_of(const Shell& shell, const Pan& pan) {
  if (!shell.is_there()) return pan;
  return line_pan(pan, lining_of(shell, pan));
}

double base_volume(const Shell& shell, const Pan& pan) {
  if (shell.base <= 0.0) return 0.0;
  return lining_volume(pan, {shell.base, 0.0, depth(pan)});
}

double lining_dough(const Shell& shell, const Pan& pan) {
  if (shell.lining <= 0.0) return 0.0;
  return lining_volume(pan, lining_of(shell, pan)) - base_volume(shell, pan);
}

std::optional<RecipeShape> shape_of_recipe(FieldReader& reader, const Job& job) {
  RecipeShape shape;
  const auto base = thickness_of(reader, job, Role::kBase);
  const auto lining = thickness_of(reader, job, Role::kLining);
  if (!base || !lining) return std::nullopt;
  shape.shell = {*base, *lining, std::nullopt};
  if (const auto first = first_of(job, Role::kLining)) shape.shell.wall_height = job.parts[*first].wall_height;
  shape.filling = batch_volume(job, Role::kFilling);
  if (job.recipe_pan) {
    const auto cavity = cavity_of(shape.shell, *job.recipe_pan);
    if (!cavity) {
      const auto at = first_of(job, Role::kLining).value_or(first_of(job, Role::kBase).value_or(0));
      reader.fault(cavity.problem().code, part_path(at, "thickness"),
                   "in the recipe's own pan this crust does not work: " + cavity.problem().message);
      return std::nullopt;
    }
    shape.cavity = *cavity;
  }
  if (shape.filling > 0.0) fill_recipe(job, shape);
  return shape;
}

}  // namespace tinwright
