// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A pan by itself, and my pan instead of the recipe's.
#pragma once

#include <optional>

#include "app/files/fields.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"
#include "geometry/pan.h"

namespace tinwright {

/// How much of a recipe my pan takes, by what each part needs. All are shares of the recipe's amount [-].
struct PanSwap {
  double filling = 1.0;        // to the same share of the brim: volumes of all cavities
  std::optional<double> base;  // pressed on the floor to the same thickness: floor areas; nothing where one has none
  double lining = 1.0;         // on floor and wall to the same thickness: floor and wall areas
  double depth = 1.0;          // depth of mine over the recipe's
};

PanSwap swap_pans(const Pan& recipe, const Pan& mine);

struct PanJob {
  Pan pan;
  std::optional<Pan> recipe_pan;  // "instead_of"
};

/// Reads {outline, profile, …, instead_of?: {pan}}.
std::optional<PanJob> read_pan_job(FieldReader& reader);

/// Holds, depth, surfaces and cautions.
Report describe_pan(const Pan& pan, UnitChoice choice);
/// Only what it holds.
Report describe_capacity(const Pan& pan, UnitChoice choice);
Report describe_swap(const Pan& recipe, const Pan& mine, UnitChoice choice);

}  // namespace tinwright
