// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a recipe does in its own pan: how thick its base and lining are, how high its filling stands. Everything that my
// pans need is asked of this.
#pragma once

#include <optional>

#include "app/recipe/job.h"
#include "geometry/lining.h"

namespace tinwright {

/// Thicknesses [m] of the dough in a pan; 0 where there is none.
struct Shell {
  double base = 0.0;                  // on the floor, of parts that lie there only
  double lining = 0.0;                // on floor and wall
  std::optional<double> wall_height;  // [m] of the lining above the pan's floor; else up to the rim

  bool is_there() const { return base > 0.0 || lining > 0.0; }
};

/// The shell as the lining of `pan`: floor base + lining, wall lining, up to the wall height or the pan's depth.
Lining lining_of(const Shell& shell, const Pan& pan);

/// What is left of `pan` for a filling; its Problem where the shell leaves nothing.
Result<Pan> cavity_of(const Shell& shell, const Pan& pan);

/// [m³] for one cavity of the pan: dough of all base parts together, and of all linings.
double base_volume(const Shell& shell, const Pan& pan);
double lining_dough(const Shell& shell, const Pan& pan);

/// The recipe in its own pan.
struct RecipeShape {
  Shell shell;
  std::optional<Pan> cavity;      // of the recipe's pan
  double filling = 0.0;           // [m³] of all fillings, for the whole batch
  double level = 0.0;             // [-] of its cavity's depth; 0: there is no filling, or no pan to judge it by
  double fill_height = 0.0;       // [m] above the cavity's floor
  bool overfills = false;         // the recipe's filling does not fit the recipe's own pans
  bool is_level_assumed = false;  // no pan and no level given: three quarters, common practice
};

/// Notes a fault where a part says neither how thick it is nor, with the recipe's pan, lets it be worked out.
std::optional<RecipeShape> shape_of_recipe(FieldReader& reader, const Job& job);

/// [m³] of dough and filling all the parts of one role make in one batch.
double batch_volume(const Job& job, Role role);
double batch_mass(const Job& job, Role role);
/// [kg/m³] of all parts of that role together; 0 where there are none.
double batch_density(const Job& job, Role role);

/// The field a fault of that part's is shown at: "recipe.parts.2.thickness".
std::string part_path(std::size_t part, const std::string& field);

/// How far a cavity is filled where nobody says: common practice, no source.
inline constexpr double kUsualLevel = 0.75;

}  // namespace tinwright
