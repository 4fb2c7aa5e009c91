// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Filling a pan or a lined shell: how far below the rim to stop, and what is left.
#pragma once

#include <optional>
#include <string>

#include "app/files/fields.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"
#include "geometry/fill.h"
#include "geometry/lining.h"

namespace tinwright {

struct FillJob {
  Pan pan;
  std::optional<Lining> lining;
  Pan cavity;                     // the pan, or what the lining leaves of it
  std::optional<double> density;  // [kg/m³]
  FillQuestion question;          // for one cavity
  bool egg_or_dairy = false;
};

/// Reads {lining?: {floor, wall, height}, mass | volume | level, density | filling, rise?} under `prefix`; "filling"
/// names a mixture of the catalogue, which brings density and rise where they are not given. Amounts are shared by all
/// cavities of `pan`; without a pan the fields are only looked at for faults. `crust` replaces the lining when the
/// dough has been solved.
std::optional<FillJob> read_fill_job(FieldReader& reader, const std::string& prefix, const std::optional<Pan>& pan,
                                     const std::optional<Lining>& crust = std::nullopt);

std::optional<FillAnswer> solve_fill(FieldReader& reader, const FillJob& job, const std::string& prefix);

Report describe_fill(const FillJob& job, const FillAnswer& answer, UnitChoice choice);

}  // namespace tinwright
