// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One of a plan's pans as the bench has it, so that it is drawn the same way.
#pragma once

#include "app/plan/bench.h"
#include "app/plan/plan.h"

namespace tinwright {

/// The pan with its dough, its filling and its picture; words are left empty.
BenchAnswer picture_of(const Job& job, const PanPlan& pan);

}  // namespace tinwright
