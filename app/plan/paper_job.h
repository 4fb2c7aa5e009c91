// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The question `tinwright paper` answers: a pan, or {"pan", "lining"?, "fill"?} for the marks on its stick.
#pragma once

#include <optional>

#include "app/files/fields.h"
#include "app/plan/paper.h"

namespace tinwright {

/// Reads {outline, profile, …, name?} or {catalogue}, or {pan: {…}, lining?, fill?}. `fill` is {height}, above the
/// crust where lined, or an amount as a fill question has it, which may also stand beside `pan`. Paper, wish and units
/// are left as they are. Nothing, with faults noted, where something is wrong.
std::optional<PaperOrder> read_paper_order(FieldReader& reader);

}  // namespace tinwright
