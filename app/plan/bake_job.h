// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A filled pan through a programme of stages: how warm it gets inside, and when. Conduction and freezing; what
// evaporates is not counted yet.
#pragma once

#include <optional>

#include "app/files/fields.h"
#include "app/plan/report.h"
#include "app/quantity/print.h"
#include "geometry/heat/bake.h"

namespace tinwright {

struct BakeJob {
  HeatProblem problem;
  BakeQuestion question;
  bool is_dry = true;  // all substances are constants, so that nothing can evaporate
};

/// Reads {pan, lining?: {floor, wall, height, substance}, fill: {height, substance}, start, stages: [{air, for}],
/// transfer?: {top, wall, base}, until?: {core}, report_every?}. A substance is raw {conductivity, density,
/// heat_capacity} or a composition {water, protein, fat, carbohydrate, fibre, ash: mass fractions, air: by volume}.
std::optional<BakeJob> read_bake_job(FieldReader& reader);

std::optional<BakeAnswer> solve_bake(FieldReader& reader, const BakeJob& job);

Report describe_bake(const BakeJob& job, const BakeAnswer& answer, UnitChoice choice);

}  // namespace tinwright
