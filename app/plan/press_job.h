// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// So much dough of a kind into a pan: how thick, how far, how much is left.
#pragma once

#include <optional>

#include "app/files/fields.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"
#include "geometry/lining.h"
#include "geometry/press.h"

namespace tinwright {

struct PressJob {
  Pan pan;
  double density = 0.0;    // [kg/m³]
  PressQuestion question;  // for one cavity
};

/// Reads {mass?, density | dough, cover, thickness?, floor_thickness?, wall_height?, wall_to_floor?} under `prefix`;
/// "dough" names a mixture of the catalogue. The mass is shared by all cavities of `pan`; without a pan the fields are
/// only looked at for faults.
std::optional<PressJob> read_press_job(FieldReader& reader, const std::string& prefix, const std::optional<Pan>& pan);

/// Solves the job, noting a Problem as a fault.
std::optional<PressAnswer> solve_press(FieldReader& reader, const PressJob& job, const std::string& prefix);

/// The crust that was pressed, as a lining to fill; nothing for a slab or where it does not cover the floor.
std::optional<Lining> crust_of(const PressJob& job, const PressAnswer& answer);

Report describe_press(const PressJob& job, const PressAnswer& answer, UnitChoice choice);

}  // namespace tinwright
